"""The canvas by keys: choose, nudge, resize, remove; the shelf by keys and by its search."""

import pytest
from attrs import evolve
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gardenplot.gestures.kept import layout_in
from gardenplot.plan.catalogue import entries
from gardenplot.units import CM, parse_length
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.plans import feet_plan
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier


def press(window: MainWindow, *keys: Qt.Key, held: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    for key in keys:
        QTest.keyClick(window.canvas, key, held)


def placed(document: Document, planting: str) -> tuple[float, float, int]:
    """Start and end in centimetres, and plants."""
    block = layout_in(document.plan, planting)
    return block.start / CM, block.end / CM, block.plants


def test_up_and_down_go_from_block_to_block_and_round_again(window: MainWindow) -> None:
    chosen = []
    for key in (Key.Key_Down, Key.Key_Down, Key.Key_Down, Key.Key_Down, Key.Key_Up):
        press(window, key)
        chosen.append(window.sight.planting)
    assert chosen == ["p1", "p2", "p3", "p1", "p3"]


def test_arrows_move_by_a_stride_and_with_shift_by_a_grain_all_in_one_step(
    window: MainWindow, document: Document
) -> None:
    before = document.plan
    press(window, Key.Key_Down, Key.Key_Right, Key.Key_Right, Key.Key_Right)
    assert placed(document, "p1") == (45, 1045, 120)
    press(window, Key.Key_Left, held=Keys.ShiftModifier)
    assert placed(document, "p1") == (44, 1044, 120)
    assert document.stack.count() == 1
    document.stack.undo()
    assert document.plan is before


def test_ctrl_and_arrows_take_ranks_off_and_add_them(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Down)
    press(window, Key.Key_Left, Key.Key_Left, Key.Key_Left, held=Keys.ControlModifier)
    assert placed(document, "p1") == (30, 955, 111)
    press(window, Key.Key_Right, held=Keys.ControlModifier)
    assert placed(document, "p1") == (30, 980, 114)
    assert document.stack.count() == 1


def test_a_nudge_out_of_the_zone_is_refused_and_the_reason_said(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Down, Key.Key_Left)
    assert document.stack.count() == 0
    assert "head margin" in window.statusBar().currentMessage()
    press(window, Key.Key_Right)
    assert document.stack.count() == 1
    assert window.statusBar().currentMessage() == ""


def test_delete_removes_the_chosen_block_and_nothing_else(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Delete)
    assert document.stack.count() == 0
    press(window, Key.Key_Down, Key.Key_Down, Key.Key_Delete)
    assert [one.id for one in document.plan.plantings] == ["p1", "p3"]
    assert document.stack.undoText() == "Remove Leek"


def test_escape_lets_go_of_the_block_and_then_of_the_bed(window: MainWindow) -> None:
    press(window, Key.Key_Down, Key.Key_Escape)
    assert (window.sight.bed, window.sight.planting) == ("b1", None)
    press(window, Key.Key_Escape)
    assert window.sight.bed is None


def test_enter_on_the_shelf_places_a_crop_in_the_first_gap_of_the_selected_bed(
    window: MainWindow, document: Document
) -> None:
    window.sight.select("b1")
    window.shelf.search.setText("leek")
    window.shelf.list.setCurrentIndex(window.shelf.model.index(0))
    QTest.keyClick(window.shelf.list, Key.Key_Return)
    assert placed(document, "leek") == (1030, 1465, 87)
    assert window.sight.planting == "leek"


@pytest.mark.parametrize("key", [Key.Key_Return, Key.Key_Enter, Key.Key_Down])
def test_from_the_search_a_key_leads_to_the_first_crop_that_is_found(
    window: MainWindow, document: Document, key: Qt.Key
) -> None:
    window.sight.select("b1")
    window.shelf.search.setFocus()
    window.shelf.search.setText("leek")
    QTest.keyClick(window.shelf.search, key)
    assert window.focusWidget() is window.shelf.list
    assert [index.row() for index in window.shelf.list.selectedIndexes()] == [0]
    QTest.keyClick(window.shelf.list, Key.Key_Return)
    assert placed(document, "leek") == (1030, 1465, 87)
    window.shelf.search.setFocus()
    window.shelf.search.setText("no such crop")
    QTest.keyClick(window.shelf.search, key)
    assert window.focusWidget() is window.shelf.search


def test_what_was_looked_for_does_not_hide_the_crops_of_another_plan(window: MainWindow, document: Document) -> None:
    window.shelf.search.setText("no such crop")
    document.start(feet_plan())
    assert window.shelf.search.text() == ""
    assert window.shelf.model.rowCount() > 0


def test_a_bed_without_a_gap_says_so(window: MainWindow, document: Document) -> None:
    window.plantings.place(document.plan.crops[1])
    plan = document.plan
    window.plantings.place(document.plan.crops[1])
    assert document.plan is plan
    later = (
        "it has one from Fri 28 May 2027 on: choose that day above the drawing, or place it when the ground is free"
    )
    assert window.statusBar().currentMessage() == f"Tunnel, east has no gap for Leek; {later}"


def test_by_key_a_crop_waits_until_a_gap_is_free(window: MainWindow, document: Document) -> None:
    window.plantings.place(document.plan.crops[1])
    window.shelf.choose(document.plan.crops[1])
    QTest.keyClick(window, Key.Key_Return, Keys.ControlModifier | Keys.ShiftModifier)
    assert str(document.plan.plantings[-1].in_ground) == "2027-05-28"
    assert str(window.sight.day) == "2027-05-28"
    assert window.statusBar().currentMessage() == "Leek: set out on Fri 28 May 2027, when the ground is free"


def test_the_shelf_shows_the_plan_s_own_crops_first_and_each_once(window: MainWindow, document: Document) -> None:
    shown = window.shelf.model.crops
    assert shown[:2] == document.plan.crops
    assert len({crop.id for crop in shown}) == len(shown)
    assert {entry.crop.id for entry in entries()} <= {crop.id for crop in shown}


def test_the_shelf_keeps_what_is_chosen_while_the_search_still_finds_it(
    window: MainWindow, document: Document
) -> None:
    window.shelf.list.setCurrentIndex(window.shelf.model.index(1))
    window.shelf.search.setText("leek")
    assert window.shelf.chosen() == document.plan.crops[1]
    window.shelf.search.setText("pak choi")
    assert window.shelf.chosen() is None
    window.shelf.search.setText("no such crop")
    assert window.shelf.model.rowCount() == 0


def test_the_shelf_follows_a_change_of_its_crop(window: MainWindow, document: Document) -> None:
    plan = document.plan
    wider = evolve(plan.crops[1], in_row=parse_length("20 cm"))
    document.change("Crop Leek", evolve(plan, crops=(plan.crops[0], wider)))
    window.shelf.search.setText("leek")
    assert window.shelf.model.data(window.shelf.model.index(0)) == "Leek, 20\u2009×\u200930\u2009cm · set out"


@pytest.mark.parametrize(
    ("keys", "focused"),
    [
        ((Key.Key_F, Keys.ControlModifier), "search"),
        ((Key.Key_F2, Keys.NoModifier), "plants"),
        ((Key.Key_F6, Keys.NoModifier), "canvas"),
    ],
)
def test_keys_lead_to_shelf_panel_and_drawing(
    window: MainWindow, qtbot: QtBot, keys: tuple[Qt.Key, Qt.KeyboardModifier], focused: str
) -> None:
    window.sight.select("b1", "p1")
    window.ledger.setFocus()
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window.ledger, *keys)
    places = {
        "search": window.shelf.search,
        "plants": window.inspector.planting.form.fields["plants"],
        "canvas": window.canvas,
    }
    assert places[focused].hasFocus()


def test_tab_from_the_search_shows_that_the_first_crop_is_chosen(window: MainWindow, qtbot: QtBot) -> None:
    shelf = window.shelf
    qtbot.waitUntil(window.isActiveWindow)
    shelf.search.setFocus()
    QTest.keyClicks(shelf.search, "le")
    assert len(shelf.model.crops) > 1
    QTest.keyClick(shelf.search, Key.Key_Tab)
    assert [one.row() for one in shelf.list.selectedIndexes()] == [0]
    QTest.keyClick(shelf.list, Key.Key_Down)
    assert [one.row() for one in shelf.list.selectedIndexes()] == [1]
