"""The index by keys and mouse: it finds actions, beds, plantings, fields and crops, and going to one selects it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from gardenplot.plan import Plan
from gardenplot.units import parse_length
from gardenplot.window.document import Document
from gardenplot.window.index_lines import IndexLine
from gardenplot.window.main import MainWindow
from tests.window.shared_window import window

__all__ = ["window"]

Key = Qt.Key


@pytest.fixture
def opened(window: MainWindow, qtbot: QtBot) -> MainWindow:
    """The window with its index open by its key."""
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window.canvas, Key.Key_F3)
    assert window.index.isVisible()
    assert window.index.line.hasFocus()
    return window


def ask(window: MainWindow, text: str) -> list[IndexLine]:
    window.index.line.clear()
    QTest.keyClicks(window.index.line, text)
    return window.index.model.lines


def go(window: MainWindow) -> None:
    QTest.keyClick(window.index.line, Key.Key_Return)


def test_a_bed_is_found_by_its_name_and_selected(opened: MainWindow) -> None:
    assert ask(opened, "field up")[0].kind == "Bed"
    go(opened)
    assert (opened.sight.bed, opened.sight.planting) == ("b2", None)
    assert not opened.index.isVisible()
    assert opened.canvas.hasFocus()


def test_a_planting_is_found_by_its_letter_and_by_its_crop(opened: MainWindow) -> None:
    assert ask(opened, "b leek")[0].sought.name.startswith("B  Leek")
    go(opened)
    assert (opened.sight.bed, opened.sight.planting) == ("b2", "p2")
    QTest.keyClick(opened.canvas, Key.Key_F3)
    assert [line.sought.name[0] for line in ask(opened, "pak choi") if line.kind == "Planting"] == ["A", "C"]


def test_a_crop_of_the_catalogue_is_chosen_on_the_shelf(opened: MainWindow) -> None:
    opened.shelf.search.setText("leek")
    assert ask(opened, "catalogue kohlr")[0].kind == "Crop"
    go(opened)
    crop = opened.shelf.chosen()
    assert crop is not None
    assert crop.name == "Kohlrabi"
    assert opened.shelf.list.hasFocus()


def test_an_action_is_found_by_a_synonym_and_its_menu_and_done(opened: MainWindow) -> None:
    lines = ask(opened, "view closer")
    assert (lines[0].sought.name, lines[0].sought.where, lines[0].keys) == ("Zoom in", "View", "Ctrl+=")
    before = opened.canvas.view.along
    go(opened)
    assert opened.canvas.view.along > before


def test_what_cannot_be_done_is_shown_with_its_reason_and_stays_undone(
    opened: MainWindow, document: Document
) -> None:
    line = ask(opened, "compare lay")[0]
    assert "Choose a planting first" in line.reason
    assert "Choose a planting first" in line.spoken()
    go(opened)
    assert opened.index.isVisible()
    assert "Choose a planting first" in opened.statusBar().currentMessage()
    assert document.stack.count() == 0


def test_arrows_choose_and_stop_at_the_ends(opened: MainWindow) -> None:
    row = opened.index.list.currentIndex
    ask(opened, "bed")
    for key, wanted in ((Key.Key_Up, 0), (Key.Key_Down, 1), (Key.Key_Down, 2), (Key.Key_PageUp, 0)):
        QTest.keyClick(opened.index.line, key)
        assert row().row() == wanted
    for _turn in range(40):
        QTest.keyClick(opened.index.line, Key.Key_PageDown)
    assert row().row() == opened.index.model.rowCount() - 1
    assert opened.index.line.accessibleDescription() == opened.index.model.lines[-1].spoken()


def test_escape_gives_the_keyboard_back_to_where_it_was(window: MainWindow, qtbot: QtBot) -> None:
    qtbot.waitUntil(window.isActiveWindow)
    window.shelf.search.setFocus()
    QTest.keyClick(window.shelf.search, Key.Key_F3)
    assert window.index.line.hasFocus()
    QTest.keyClick(window.index.line, Key.Key_Escape)
    assert not window.index.isVisible()
    assert window.shelf.search.hasFocus()


def test_a_click_goes_to_a_line_and_a_click_elsewhere_closes(opened: MainWindow) -> None:
    assert ask(opened, "tunnel east")[0].kind == "Bed"
    at = opened.index.list.visualRect(opened.index.model.index(0)).center()
    QTest.mouseClick(opened.index.list.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert opened.sight.bed == "b1"
    QTest.keyClick(opened.canvas, Key.Key_F3)
    opened.shelf.search.setFocus()
    assert not opened.index.isVisible()
    assert opened.shelf.search.hasFocus()


def test_a_field_of_what_is_selected_is_found_and_typed_into_at_once(
    window: MainWindow, document: Document, qtbot: QtBot
) -> None:
    qtbot.waitUntil(window.isActiveWindow)
    window.sight.select("b1", "p1")
    QTest.keyClick(window.canvas, Key.Key_F3)
    line = ask(window, "keep clear")[0]
    assert (line.kind, line.sought.name, line.sought.where) == ("Field", "Keep clear", "A  Pak choi")
    go(window)
    field = window.inspector.planting.form.fields["keep_clear"]
    assert field.hasFocus()
    QTest.keyClicks(field, "15 cm")
    QTest.keyClick(field, Key.Key_Return)
    assert document.plan.plantings[0].keep_clear == parse_length("15 cm")


def test_only_fields_that_are_shown_are_found(window: MainWindow, qtbot: QtBot) -> None:
    """Also those of the place, which stand in a form of their own; none of a pattern that is not chosen."""
    qtbot.waitUntil(window.isActiveWindow)
    window.index.open()
    assert [line.sought.name for line in ask(window, "field latitude")] == ["Latitude"]
    window.sight.select("b1", "p1")
    fields = dict(window.inspector.fields()[1])
    assert {"Plants", "Places of what follows", "Rows at, from the left edge"} & set(fields) == {"Plants"}


def test_the_keyboard_goes_back_by_way_of_no_other_field(opened: MainWindow) -> None:
    seen: list[QWidget | None] = []
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    app.focusChanged.connect(lambda _before, now: seen.append(now))
    QTest.keyClick(opened.index.line, Key.Key_Escape)
    assert seen == [opened.canvas]


@pytest.mark.parametrize(
    ("typed", "does", "keys"),
    [
        ("snap", "suspend the snaps while dragging", "Alt, held"),
        ("resize", "take a rank off it, add one", "Ctrl+Left, Ctrl+Right"),
        ("push", "push the neighbours along while dragging", "Shift, held"),
        ("rotate", "turn them", "Ctrl+Left, Ctrl+Right"),
    ],
)
def test_what_the_hand_does_with_keys_that_stay_is_found_and_told(
    opened: MainWindow, typed: str, does: str, keys: str
) -> None:
    line = next(one for one in ask(opened, typed) if one.kind == "Key")
    assert line.sought.name == does
    assert line.sought.where.startswith(f"{keys} · ")
    assert opened.index.model.lines.index(line) == 0 or typed == "snap"
    line.goes()
    assert opened.statusBar().currentMessage() == f"{keys}: {does}"


def test_the_list_of_steps_is_found_by_what_it_is_for(opened: MainWindow) -> None:
    assert "Steps" in [line.sought.name for line in ask(opened, "history")]


def test_a_switch_says_whether_it_is_on(opened: MainWindow) -> None:
    assert ask(opened, "magnifier")[0].sought.where == "View · off"
    assert ask(opened, "drip lines")[0].sought.where == "View ▸ Layers · on"
    go(opened)
    QTest.keyClick(opened.canvas, Key.Key_F3)
    assert ask(opened, "drip lines")[0].sought.where == "View ▸ Layers · off"


def test_without_a_result_it_says_so(opened: MainWindow) -> None:
    assert ask(opened, "moonberry") == []
    assert opened.index.none.isVisible()
    assert "moonberry" in opened.index.none.text()
    assert opened.index.none.alignment() & Qt.AlignmentFlag.AlignTop
    go(opened)
    assert opened.index.isVisible()


def test_it_follows_the_plan_whenever_it_opens(window: MainWindow, document: Document, qtbot: QtBot) -> None:
    document.start(Plan())
    qtbot.waitUntil(window.isActiveWindow)
    window.index.open()
    assert {line.kind for line in window.index.model.lines} == {"Do", "Field", "Key", "Crop"}


def test_it_stays_inside_a_window_that_becomes_small(opened: MainWindow) -> None:
    opened.resize(1024, 700)
    assert opened.rect().contains(opened.index.geometry())
