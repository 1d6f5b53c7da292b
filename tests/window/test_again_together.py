"""Several deviations answered in one plan: ticked, answered side by side, drawn together and taken in one step.

Worked by hand as S6: 152 of 168 in the one bed; in the other 120 of 256 cells, less 5 %, are 114 to set out.
"""

from datetime import date
from fractions import Fraction

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gardenplot.filling.together import answer_all, by_number
from gardenplot.window import again_dialog
from gardenplot.window.again_dialog import AgainDialog
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.journeys.person import plain, rows_of
from tests.scenarios.again_plans import both_short
from tests.window.test_again import Opened, again, ticked
from tests.window.test_ways_out import blocks, click, hover, press, tried

__all__ = ["again"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
LATE = "26 Jul (+14 days)"
SHORT = "A Bulb fennel 0.15 – 12.90 m 2 × 51 + 50"
AGAIN = "C Bulb fennel 12.90 – 14.40 m 6 + 2 × 5"
BOTH = [SHORT, AGAIN, "B Bulb fennel 0.15 – 9.65 m 3 × 38"]


def answers(dialog: AgainDialog) -> list[list[str]]:
    """What deviates, and what is chosen of it."""
    return [[plain(cell) for cell in row] for row in rows_of(dialog.all.table)]


def key(dialog: AgainDialog, *keys: Qt.Key) -> None:
    """Press keys in the table of what deviates."""
    dialog.all.table.setFocus()
    for one in keys:
        QTest.keyClick(dialog.all.table, one)


def test_each_has_its_answer_and_all_are_taken_in_one_step(
    document: Document, again: Opened, window: MainWindow
) -> None:
    dialog = again(both_short())
    assert answers(dialog) == [
        ["A Bulb fennel in Field bed", "Buy in", "+16 plants", "151", LATE, "none"],
        ["B Bulb fennel in Second bed", "Buy in", "+54 plants", "151", LATE, "none"],
    ]  # fmt: skip
    assert dialog.take.text() == "Take 2 answers"
    assert "All together: nothing short, no stake moved, 70 plants bought in" in dialog.view.price.text()
    click(dialog, "Sow again today")
    key(dialog, Key.Key_Down)
    assert "114 to set out, 54 short" in dialog.view.says.text()
    click(dialog, "Plant short")
    assert answers(dialog) == [
        ["A Bulb fennel in Field bed", "Sow again today", "+28 cells", "151", LATE, "2"],
        ["B Bulb fennel in Second bed", "Plant short", "", "102 (−48)", LATE, "1"],
    ]  # fmt: skip
    assert tried(window) == BOTH
    price = plain(dialog.view.price.text())
    assert price.startswith("All together: 48 units short, 3 stakes moved Plant short")
    assert "Field bed: C Bulb fennel begins none → 12.90 m" in price
    assert "Second bed: B Bulb fennel ends 14.15 m → 9.65 m" in price
    QTest.keyClick(dialog.view.table, Key.Key_Return)
    assert (blocks(document.plan), document.stack.undoText()) == (BOTH, "Plan again, 2 answers")
    document.stack.undo()
    assert (document.plan, document.stack.canUndo()) == (both_short(), False)


def test_a_tick_leaves_one_out_and_takes_it_in_again_by_mouse_and_by_key(document: Document, again: Opened) -> None:
    dialog = again(both_short())
    table = dialog.all.table
    item = table.topLevelItem(1)
    assert item is not None
    box = table.visualItemRect(item)
    tick = QPoint(table.columnViewportPosition(0) + 12, box.center().y())
    QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, tick)
    assert (ticked(dialog), answers(dialog)[1][1]) == ([True, False], "left as it is")
    assert dialog.take.text() == "Take 1 answer"
    assert "16 plants bought in" in dialog.view.price.text()
    key(dialog, Key.Key_Home, Key.Key_Space)
    assert (ticked(dialog), dialog.take.isEnabled()) == ([False, False], False)
    key(dialog, Key.Key_End, Key.Key_Space)
    assert (ticked(dialog), answers(dialog)[1][1]) == ([False, True], "Buy in")
    click(dialog, "Plant short")
    press(dialog.take)
    assert document.stack.undoText() == "Bulb fennel: Plant short"
    assert blocks(document.plan)[1] == "B Bulb fennel 0.15 – 9.65 m 3 × 38"


def test_the_one_under_the_mouse_is_drawn_and_what_is_chosen_comes_back(again: Opened, window: MainWindow) -> None:
    dialog = again(both_short())
    chosen = tried(window)
    hover(dialog, "Plant short")
    assert tried(window)[0] == SHORT
    dialog.view.table.looked.emit(0)
    assert tried(window) == chosen


def test_an_aim_answers_all_that_deviates(again: Opened) -> None:
    dialog = again(both_short())
    dialog.all.aim.setFocus()
    QTest.keyClick(dialog.all.aim, Key.Key_End)
    dialog.all.aim.activated.emit(dialog.all.aim.currentIndex())
    assert [row[1] for row in answers(dialog)] == ["Sow again today", "Sow again today"]
    assert "bought in" not in dialog.view.price.text()
    click(dialog, "Plant short")
    assert (dialog.all.aim.currentIndex(), answers(dialog)[0][1]) == (0, "Plant short")
    assert answers(dialog)[1][1] == "Sow again today"


@pytest.mark.parametrize("is_apart", [False, True])
def test_what_is_taken_is_what_the_command_would_write(
    document: Document, again: Opened, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot, *, is_apart: bool
) -> None:
    """The fourth answer to the first and the third to the second, also where they are found in another process."""
    if is_apart:
        monkeypatch.setattr(again_dialog, "_FEW", 0)
    dialog = again(both_short())
    for number, name in enumerate(("Sow again today", "Spread out")):
        qtbot.waitUntil(dialog.take.isEnabled, timeout=20_000)
        key(dialog, (Key.Key_Home, Key.Key_End)[number])
        click(dialog, name)
    qtbot.waitUntil(dialog.take.isEnabled, timeout=20_000)
    press(dialog.take)
    wanted = answer_all(both_short(), date(2025, 4, 21), Fraction(1, 20), by_number([4, 3]))
    assert blocks(document.plan) == blocks(dialog.as_taken(both_short(), wanted.plan))
