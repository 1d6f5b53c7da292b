"""Copies and several plantings at once on the season map, and the maps of all beds in small, by mouse and keys."""

from datetime import date

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt, QTimer
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from gardenplot.gestures.kept import layout_in
from gardenplot.plan import crop_of, planting_of
from gardenplot.window.main import MainWindow
from gardenplot.window.mime import with_crop
from tests.layout.ground import Fields, nm
from tests.window.season_mouse import BedsMouse, SeasonMouse
from tests.window.shared_window import window
from tests.window.test_season_hand import SPRING, SUMMER, days_of, hand, lines_of, plan_with, readings_of, within

__all__ = ["window"]

__all__ = ["hand"]
Keys, Key = Qt.KeyboardModifier, Qt.Key
OTHER: Fields = {"id": "r", "bed": "c", "crop": "kale", "from": "1 m", "length": "2 m", "in_ground": "2027-05-01",
                 "out": "2027-07-20"}  # fmt: skip
BESIDE: Fields = SUMMER | {"from": "7 m"}


@pytest.fixture
def small(window: MainWindow, hand: SeasonMouse, qtbot: QtBot) -> BedsMouse:
    """A mouse over the maps of all beds in small: greens then beans in the first, kale in the second."""
    window.document.start(plan_with(SPRING, SUMMER, OTHER))
    assert hand.axes.season.bed == "b"
    window.season_maps.switch.setChecked(True)
    qtbot.waitUntil(window.season_maps.beds.isVisible)
    QApplication.processEvents()
    return BedsMouse(window.season_maps.beds, "b")


def test_with_ctrl_a_copy_is_left_in_the_same_ground_as_one_step(window: MainWindow, hand: SeasonMouse) -> None:
    window.document.start(plan_with(SPRING))
    before = window.document.plan
    hand.press("4 m", date(2027, 5, 1))
    hand.move("4 m", date(2027, 6, 22), Keys.ControlModifier)
    figures, *said = lines_of(window)
    assert figures.startswith("Spring greens   25 May – 14 Jul 2027, 50 days   2.00 – 6.00 m")
    assert "a copy   the day A Spring greens is out   reading as it was" in said
    hand.release()
    copy = window.sight.planting
    assert copy == "p-2"
    assert days_of(window, copy) == (date(2027, 5, 25), date(2027, 7, 14))
    assert readings_of(window, copy) == readings_of(window, "p") == (nm("2 m"), nm("6 m"))
    assert window.document.stack.count() == 1
    assert window.document.stack.undoText() == "Copy Spring greens"
    window.document.stack.undo()
    assert window.document.plan is before


def test_ctrl_counts_from_when_it_is_pressed_and_escape_gives_back_what_was(
    window: MainWindow, hand: SeasonMouse
) -> None:
    before = window.document.plan
    hand.press("4 m", date(2027, 4, 25))
    hand.move("9 m", date(2027, 4, 30))
    assert window.canvas.stage.trial is not None
    assert not window.canvas.stage.trial.copies
    QTest.keyPress(window.season, Key.Key_Control)
    assert window.canvas.stage.trial.copies
    QTest.keyClick(window.season, Key.Key_Escape)
    hand.release()
    assert window.document.plan is before
    assert window.document.stack.count() == 0


def test_what_is_chosen_with_ctrl_moves_together_and_stays_chosen(window: MainWindow, hand: SeasonMouse) -> None:
    window.document.start(plan_with(SPRING, BESIDE))
    before = window.document.plan
    hand.click_at(hand.block("q").center())
    hand.click_at(hand.block("p").center(), Keys.ControlModifier)
    assert window.sight.chosen == ("p", "q")
    assert window.season.accessibleDescription().startswith("2 plantings")
    hand.press_at(hand.block("q").center())
    hand.move_to(hand.block("q").center() + QPointF(0, 20 * hand.axes.each))
    assert lines_of(window)[0].startswith("2 plantings   ")
    hand.release()
    shift = (days_of(window, "p")[0] or date.min) - date(2027, 4, 5)
    assert shift.days >= 15
    assert (days_of(window, "q")[0] or date.min) - date(2027, 6, 10) == shift
    assert set(window.sight.chosen) == {"p", "q"}
    assert window.document.stack.undoText() == "Move 2 plantings"
    assert window.document.stack.count() == 1
    window.document.stack.undo()
    assert window.document.plan is before


def test_a_click_on_one_of_several_chooses_it_alone(window: MainWindow, hand: SeasonMouse) -> None:
    window.sight.choose(window.document.plan, ("p", "q"))
    hand.click_at(hand.block("q").center())
    assert window.sight.chosen == ("q",)
    hand.click_at(hand.block("q").center(), Keys.ControlModifier)
    assert window.sight.planting is None


def test_keys_choose_several_and_move_copy_and_remove_them(window: MainWindow, hand: SeasonMouse) -> None:
    window.document.start(plan_with(SPRING, BESIDE))
    before = window.document.plan
    assert hand.axes.season.bed == "b"
    window.season.setFocus()
    QTest.keyClick(window.season, Key.Key_Right)
    QTest.keyClick(window.season, Key.Key_Right, Keys.ShiftModifier)
    assert set(window.sight.chosen) == {"p", "q"}
    QTest.keyClick(window.season, Key.Key_Down, Keys.AltModifier | Keys.ShiftModifier)
    assert days_of(window, "p")[0] == date(2027, 4, 12)
    assert days_of(window, "q")[0] == date(2027, 6, 17)
    QTest.keyClick(window.season, Key.Key_Right, Keys.AltModifier | Keys.ShiftModifier)
    assert readings_of(window, "q")[0] == nm("7.01 m")
    QTest.keyClick(window.season, Key.Key_Escape)
    assert len(window.sight.chosen) == 1
    window.sight.select("b", "p")
    QTest.keyClick(window.season, Key.Key_Insert)
    assert days_of(window, "p-2")[0] == date(2027, 6, 1)
    assert window.sight.chosen == ("p-2",)
    QTest.keyClick(window.season, Key.Key_Right, Keys.ControlModifier)
    assert readings_of(window, "p-2")[1] == nm("6.21 m")
    QTest.keyClick(window.season, Key.Key_Delete)
    assert [one.id for one in window.document.plan.plantings] == ["p", "q"]
    while window.document.stack.canUndo():
        window.document.stack.undo()
    assert window.document.plan is before


def test_moved_there_and_back_by_key_there_is_no_step(window: MainWindow, hand: SeasonMouse) -> None:
    assert hand.axes.season.bed == "b"
    before = window.document.plan
    window.sight.select("b", "p")
    QTest.keyClick(window.season, Key.Key_Down, Keys.AltModifier)
    QTest.keyClick(window.season, Key.Key_Up, Keys.AltModifier)
    assert window.document.plan == before
    assert window.document.stack.count() == 0


def test_the_right_button_opens_the_menu_of_what_lies_under_it(window: MainWindow, hand: SeasonMouse) -> None:
    opened: list[str] = []

    def look() -> None:
        menu = QApplication.activePopupWidget()
        assert isinstance(menu, QMenu)
        opened.extend(one.text().replace("&", "") for one in menu.actions())
        menu.close()

    QTimer.singleShot(0, look)
    at = hand.block("q").center().toPoint()
    QTest.mousePress(window.season, Qt.MouseButton.RightButton, Keys.NoModifier, at)
    reason = QContextMenuEvent.Reason.Mouse
    QApplication.sendEvent(window.season, QContextMenuEvent(reason, at, window.season.mapToGlobal(at)))
    assert window.sight.planting == "q"
    assert any("Remove" in one for one in opened)


def test_with_ctrl_a_crop_from_the_shelf_waits_for_its_ground(window: MainWindow, hand: SeasonMouse) -> None:
    window.document.start(plan_with(SPRING))
    crop = crop_of(window.document.plan, "bean")
    hand.drop(with_crop(crop), "4 m", date(2027, 5, 1))
    assert len(window.document.plan.plantings) == 1
    assert "hold Ctrl to sow it then" in window.statusBar().currentMessage()
    hand.drop(with_crop(crop), "4 m", date(2027, 5, 1), Keys.ControlModifier)
    assert days_of(window, "bean")[0] == date(2027, 5, 25)


def test_in_small_a_planting_goes_to_another_day_in_its_bed(window: MainWindow, small: BedsMouse) -> None:
    before = window.document.plan
    small.press_at(small.block("p").center())
    small.move_to(small.block("p").center() - QPointF(0, 30 * small.axes.each))
    small.release()
    assert within(days_of(window)[0], date(2027, 3, 6), 4)
    assert readings_of(window) == (nm("2 m"), nm("6 m"))
    assert window.document.stack.count() == 1
    window.document.stack.undo()
    assert window.document.plan is before


def test_in_small_a_planting_goes_to_another_bed_and_keeps_its_days(window: MainWindow, small: BedsMouse) -> None:
    below = small.over("c")
    start = small.block("p").center()
    small.press_at(start)
    small.move_to(start + QPointF(60, below.axes.top - small.axes.top))
    assert lines_of(window)[0].startswith("Spring greens   5 Apr – 25 May 2027, 50 days   ")
    small.release()
    assert layout_in(window.document.plan, "p").bed == "c"
    assert days_of(window) == (date(2027, 4, 5), date(2027, 5, 25))
    assert window.sight.bed == "c"
    assert "p" in {one.planting for one in below.axes.season.blocks}


def test_in_small_taken_ground_is_refused_and_a_copy_is_left(window: MainWindow, small: BedsMouse) -> None:
    before, below = window.document.plan, small.over("c")
    down = below.axes.top - small.axes.top
    kale = below.block("r").center()
    small.press_at(small.block("p").center())
    small.move_to(QPointF(kale.x(), small.block("p").center().y() + down))
    small.release()
    assert window.document.plan is before
    assert "Curly kale" in window.statusBar().currentMessage()
    small.press_at(small.block("p").center())
    small.move_to(small.block("p").center() + QPointF(80, down), Keys.ControlModifier)
    small.release()
    assert planting_of(window.document.plan, "p") == planting_of(before, "p")
    assert layout_in(window.document.plan, "p-2").bed == "c"


def test_in_small_crops_are_dropped_and_keys_move_what_is_chosen(window: MainWindow, small: BedsMouse) -> None:
    crop = next(one for one in window.document.plan.crops if one.id == "bean")
    small.over("c").drop(with_crop(crop), "6 m", date(2027, 6, 1))
    assert planting_of(window.document.plan, "bean").bed == "c"
    beds = window.season_maps.beds
    window.sight.select("b", "p")
    QTest.keyClick(beds, Key.Key_Down, Keys.AltModifier)
    assert days_of(window) == (date(2027, 4, 6), date(2027, 5, 26))
    QTest.keyClick(beds, Key.Key_Down)
    assert (window.sight.bed, window.sight.planting) == ("c", None)
    QTest.keyClick(beds, Key.Key_Right)
    assert window.sight.planting == "r"


def test_in_small_escape_gives_back_what_was_and_a_name_chooses_its_bed(window: MainWindow, small: BedsMouse) -> None:
    before, day = window.document.plan, window.sight.day
    small.press_at(small.block("p").center())
    small.move_to(small.over("c").block("r").center() + QPointF(50, 3))
    QTest.keyClick(window.season_maps.beds, Key.Key_Escape)
    small.release()
    assert window.document.plan is before
    small.click_at(QPointF(20, small.over("c").axes.top - 15))
    assert (window.sight.bed, window.sight.planting) == ("c", None)
    assert window.sight.day == day


def test_the_list_of_beds_scrolls_on_to_where_the_hand_is(window: MainWindow, small: BedsMouse) -> None:
    maps = window.season_maps
    window.resizeDocks([window.docks[3]], [130], Qt.Orientation.Vertical)
    QApplication.processEvents()
    maps.scrolled.verticalScrollBar().setValue(0)
    small.press_at(small.block("p").center())
    small.move_to(QPointF(small.block("p").center().x(), maps.scrolled.viewport().height() - 2))
    assert maps.scrolled.verticalScrollBar().value() > 0
    QTest.keyClick(maps.beds, Key.Key_Escape)
    assert maps.beds.mapFrom(maps.scrolled.viewport(), QPoint(0, 0)).y() > 0
