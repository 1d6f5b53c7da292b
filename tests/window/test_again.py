"""Planning again in the window: reached where it shows, both deviations of S6 together, drawn, taken or left."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from attrs import evolve
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gardenplot.drawing.again_table import GOES_AS_PLANNED
from gardenplot.drawing.letters import looks
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.file import read_plan
from gardenplot.units import parse_length
from gardenplot.window import again_dialog
from gardenplot.window.again_dialog import AgainDialog
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.journeys.person import plain, rows_of
from tests.scenarios.again_plans import SCENARIOS, late_and_short, two_deviate
from tests.window.shared_window import window
from tests.window.test_ways_out import blocks, click, hover, press, tried

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
Opened = Callable[..., AgainDialog]
"""Opens a plan, with another loss from tray to bed than 5 % where one is given."""


def shown(window: MainWindow) -> AgainDialog:
    """The dialog that is open."""
    (dialog,) = (one for one in window.findChildren(AgainDialog) if one.isVisible())
    return dialog


def ticked(dialog: AgainDialog) -> list[bool]:
    """Which of what deviates are answered together."""
    table = dialog.all.table
    items = [table.topLevelItem(number) for number in range(table.topLevelItemCount())]
    return [item is not None and item.checkState(0) == Qt.CheckState.Checked for item in items]


def retype(qtbot: QtBot, dialog: AgainDialog, text: str) -> None:
    """Type another loss and finish it with Return, which takes nothing."""
    dialog.activateWindow()
    dialog.loss.setFocus()
    qtbot.waitUntil(dialog.loss.hasFocus)
    dialog.loss.selectAll()
    QTest.keyClicks(dialog.loss, text)
    QTest.keyClick(dialog.loss, Key.Key_Return)
    assert dialog.isVisible()


@pytest.fixture
def again(window: MainWindow, document: Document, qtbot: QtBot) -> Opened:
    """Opens a plan on 21 April 2025, plans again by key and types the loss from tray to bed."""

    def opened(plan: Plan, loss: str = "5 %") -> AgainDialog:
        QSettings().remove("again/loss")
        document.today = lambda: date(2025, 4, 21)
        document.start(plan)
        window.canvas.setFocus()
        QTest.keyClick(window.canvas, Key.Key_A, Keys.ControlModifier | Keys.ShiftModifier)
        dialog = shown(window)
        retype(qtbot, dialog, loss)
        return dialog

    return opened


def test_s6_with_both_deviations_has_the_numbers_worked_by_hand(again: Opened) -> None:
    dialog = again(late_and_short(), "5 %")
    assert dialog.windowTitle() == "Plan again on Mon 21 Apr 2025"
    assert dialog.view.says.text() == (
        "Bulb fennel: 161 of 256 cells usable (63 %), 152 to set out, 16 short of 168"
    )  # fmt: skip
    assert "10 days late" in dialog.view.more.text()
    assert "45 days old when set out, too old" in dialog.view.more.text()
    heading = [dialog.view.table.headerItem().text(column) for column in range(dialog.view.table.columnCount())]
    assert heading == ["answer", "takes", "to sell", "set out", "ready", "market", "bed left", "stakes"]
    late = ["22 May (+10 days)", "21 Jul (+10 days)", "26 Jul (+14 days)"]
    assert [list(map(plain, row)) for row in rows_of(dialog.view.table)] == [
        ["Buy in", "+16 plants", "151", *late, "94 cm", "none"],
        ["Plant short", "", "136 (−14)", *late, "2.19 m", "1"],
        ["Spread out", "29 cm in the row", "136 (−14)", *late, "15 cm", "1"],
        ["Sow again today", "+28 cells", "151", "26 May (+14 days)", "25 Jul (+14 days)", late[2], "69 cm", "2"],
    ]  # fmt: skip
    click(dialog, "Sow again today")
    price = plain(dialog.view.price.text())
    assert "Sow 28 cells again today for 17 plants, or 20 cells with two seeds each (40 seeds)" in price
    assert "costs no market day" in price
    assert "Field bed: A Bulb fennel ends 14.15 m → 12.90 m" in price


def test_without_the_late_bed_sowing_again_costs_two_market_days(again: Opened) -> None:
    dialog = again(late_and_short(is_late=False), "5 %")
    sown = next(row for row in rows_of(dialog.view.table) if row[0] == "Sow again today")
    assert sown[3:6] == ["26 May (+14 days)", "25 Jul (+14 days)", "26 Jul (+14 days)"]
    short = next(row for row in rows_of(dialog.view.table) if row[0] == "Plant short")
    assert short[3:6] == ["12 May", "11 Jul", "12 Jul"]
    click(dialog, "Sow again today")
    assert "costs 2 market days" in dialog.view.price.text()


def test_an_answer_is_drawn_on_its_day_and_taken_in_one_step(
    window: MainWindow, document: Document, again: Opened
) -> None:
    dialog = again(late_and_short(), "5 %")
    hover(dialog, "Plant short")
    assert tried(window) == ["A Bulb fennel 0.15 – 12.90 m 2 × 51 + 50"]
    click(dialog, "Sow again today")
    assert str(window.sight.day) == "2025-05-26"
    QTest.keyClick(dialog.view.table, Key.Key_Return)
    assert not dialog.isVisible()
    assert document.stack.undoText() == "Bulb fennel: Sow again today"
    assert blocks(document.plan) == [
        "A Bulb fennel 0.15 – 12.90 m 2 × 51 + 50", "B Bulb fennel 12.90 – 14.40 m 6 + 2 × 5",
    ]  # fmt: skip
    new = next(one for one in document.plan.plantings if one.id != "p1")
    assert (new.sow, new.in_ground) == (date(2025, 4, 21), date(2025, 5, 26))
    document.stack.undo()
    assert document.plan == late_and_short()


def test_leaving_leaves_the_plan(window: MainWindow, document: Document, again: Opened) -> None:
    day = window.sight.day
    dialog = again(late_and_short(), "5 %")
    click(dialog, "Spread out")
    press(dialog.leave)
    assert window.canvas.stage.trial is None
    assert (document.plan, document.stack.count()) == (late_and_short(), 0)
    assert window.sight.day != day or day is None


def test_the_loss_is_kept_and_one_that_leaves_no_plant_is_told(
    window: MainWindow, qtbot: QtBot, again: Opened
) -> None:
    dialog = again(late_and_short(), "5 %")
    retype(qtbot, dialog, "100 %")
    assert "leaves no plant" in dialog.loss.complaint.text()
    assert "152 to set out" in dialog.view.says.text()
    QTest.keyClick(dialog.loss, Key.Key_Escape)
    QTest.keyClick(dialog, Key.Key_Escape)
    window.again.open()
    assert shown(window).loss.text() == "5 %"
    assert "152 to set out" in shown(window).view.says.text()


def test_what_is_bought_in_is_recorded_and_not_asked_for_again(
    window: MainWindow, document: Document, again: Opened
) -> None:
    dialog = again(late_and_short(is_late=False), "5 %")
    click(dialog, "Buy in")
    assert plain(dialog.view.price.text()).endswith("Nothing is marked anew.")
    press(dialog.take)
    (planting,) = document.plan.plantings
    assert planting.actual is not None
    assert planting.actual.bought == 16
    assert document.stack.text(0).startswith("Bulb fennel: Buy in")
    QTest.keyClick(window.canvas, Key.Key_A, Keys.ControlModifier | Keys.ShiftModifier)
    assert shown(window).view.says.text() == GOES_AS_PLANNED


def test_a_stand_count_and_a_late_bed_that_are_typed_offer_to_plan_again(
    window: MainWindow, document: Document
) -> None:
    document.today = lambda: date(2025, 4, 21)
    document.start(read_plan(SCENARIOS / "s6.gardenplot").plan)
    window.sight.select("f1", "p1")
    panel = window.inspector.planting
    assert panel.again.isHidden()
    line = panel.form.fields["actual_stand"]
    line.setFocus()
    QTest.keyClicks(line, "161")
    QTest.keyClick(line, Key.Key_Tab)
    assert not panel.again.isHidden()
    press(panel.again)
    assert "161 of" in shown(window).view.says.text()
    shown(window).reject()
    window.sight.select("f1")
    bed = window.inspector.bed
    assert bed.again.isHidden()
    line = bed.form.fields["usable_from"]
    line.setFocus()
    QTest.keyClicks(line, "2025-05-22")
    QTest.keyClick(line, Key.Key_Tab)
    assert not bed.again.isHidden()
    press(bed.again)
    assert "10 days late" in shown(window).view.more.text()


def test_a_finding_leads_to_its_own_planting_and_another_is_chosen_above(
    window: MainWindow, document: Document
) -> None:
    document.today = lambda: date(2025, 4, 21)
    document.start(two_deviate())
    window.ledger.go_to(window.ledger.findings)
    table = window.ledger.findings
    number = next(at for at, row in enumerate(rows_of(table)) if "10 days before" in row[2] and "Second" in row[1])
    item = table.topLevelItem(number)
    assert item is not None
    QTest.mouseClick(
        table.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, table.visualItemRect(item).center()
    )
    press(window.ledger.of_findings.again)
    dialog = shown(window)
    there = dialog.all.table
    assert there.topLevelItemCount() == 2
    assert there.selectedItems()[0].text(0) == "B Bulb fennel in Second bed"
    assert ticked(dialog) == [False, True], "only what was asked about is answered"
    assert rows_of(dialog.view.table)[0][0] == "Set out late"
    there.setFocus()
    QTest.keyClick(there, Key.Key_Up)
    assert "161 of 256" in dialog.view.says.text()


def test_a_plan_that_goes_as_planned_says_so(window: MainWindow, document: Document, again: Opened) -> None:
    dialog = again(read_plan(SCENARIOS / "s6.gardenplot").plan, "5 %")
    assert dialog.view.says.text().startswith("Nothing to plan again")
    assert not dialog.take.isEnabled()
    dialog.reject()
    document.start(Plan())
    QTest.keyClick(window.canvas, Key.Key_A, Keys.ControlModifier | Keys.ShiftModifier)
    assert "Nothing is planted yet" in window.statusBar().currentMessage()


def test_a_large_plan_is_planned_again_in_a_process_of_its_own(
    again: Opened, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, document: Document
) -> None:
    monkeypatch.setattr(again_dialog, "_FEW", 0)
    dialog = again(late_and_short(), "5 %")
    qtbot.waitUntil(lambda: dialog.view.trouble is not None, timeout=20_000)
    click(dialog, "Plant short")
    press(dialog.take)
    one = planting_of(document.plan, "p1")
    assert (one.plants, one.in_ground) == (152, date(2025, 5, 12) + timedelta(days=10))


def test_what_is_sown_again_leaves_the_letters_of_what_stands(document: Document, again: Opened) -> None:
    """The fennel of S6 is A and what stands behind it B; what is sown again between them does not make that C."""
    plan = late_and_short(is_late=False)
    fennel = plan.plantings[0]
    behind = evolve(fennel, id="q", start=parse_length("14.6 m"), order=None, plants=3, actual=None)
    dialog = again(evolve(plan, plantings=(fennel, behind)), "5 %")
    click(dialog, "Sow again today")
    QTest.keyClick(dialog.view.table, Key.Key_Return)
    letters = {name: look.letter for name, look in looks(document.plan).items()}
    assert letters == {"p1": "A", "q": "B", "p1-2": "C"}
