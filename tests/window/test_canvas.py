"""The canvas by mouse: blocks dragged and drawn longer, crops dropped, the view zoomed."""

from datetime import date

import pytest
from attrs import evolve
from PySide6.QtCore import QEvent, QMimeData, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.gestures.kept import layout_in
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.catalogue import entries
from gardenplot.plan.edits import change_place, remove_planting
from gardenplot.units import CM, MM, M
from gardenplot.window.canvas_paint import lines_under
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.mime import with_crop
from tests.gestures.hand import planted
from tests.plans import metric_plan
from tests.window.mouse import Mouse
from tests.window.shared_window import window

__all__ = ["window"]

Keys = Qt.KeyboardModifier


def start_of(plan: Plan, planting: str) -> int:
    return layout_in(plan, planting).start


def selected(window: MainWindow) -> tuple[str | None, str | None]:
    """Bed and planting that are selected."""
    return window.sight.bed, window.sight.planting


def carried(document: Document) -> QMimeData:
    """The plan's leek, as the shelf hands it over."""
    return with_crop(document.plan.crops[1])


def test_a_drag_moves_a_block_by_one_step(window: MainWindow, document: Document, mouse: Mouse) -> None:
    before = document.plan
    mouse.drag("b1", "5 m", "6 m")
    assert start_of(document.plan, "p1") == 130 * CM
    assert document.stack.count() == 1
    assert document.stack.text(0) == "Move Pak choi"
    assert selected(window) == ("b1", "p1")
    document.stack.undo()
    assert document.plan is before


def test_the_plan_stays_as_it_is_while_the_hand_is_on_its_way(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    before, shown = document.plan, window.canvas.viewport().grab().toImage()
    mouse.press("b1", "5 m")
    mouse.move("b1", "6 m")
    assert document.plan is before
    assert window.canvas.stage.trial is not None
    assert start_of(window.canvas.stage.trial.plan, "p1") == 130 * CM
    assert window.canvas.viewport().grab().toImage() != shown
    mouse.release()


def test_a_press_that_hardly_moves_only_selects(window: MainWindow, document: Document, mouse: Mouse) -> None:
    mouse.press("b2", "3 m")
    mouse.move_to(mouse.point("b2", "3 m") + QPointF(2, 1))
    mouse.release()
    assert selected(window) == ("b2", "p2")
    assert document.stack.count() == 0


def test_a_block_goes_to_another_bed(document: Document, mouse: Mouse) -> None:
    document.change("Remove Pak choi", remove_planting(document.plan, "p1"))
    mouse.drag("b2", "14 m", "3 m", to="b1")
    assert planting_of(document.plan, "p3").bed == "b1"
    assert start_of(document.plan, "p3") == 200 * CM


def test_escape_during_a_drag_shows_the_plan_again(window: MainWindow, document: Document, mouse: Mouse) -> None:
    before = document.plan
    mouse.press("b1", "5 m")
    mouse.move("b1", "5 m")
    selected = window.canvas.viewport().grab().toImage()
    mouse.move("b1", "6 m")
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    assert window.canvas.stage.trial is None
    assert window.canvas.viewport().grab().toImage() == selected
    mouse.release()
    assert document.plan is before
    assert document.stack.count() == 0


@pytest.mark.parametrize("lost", [QEvent.Type.WindowDeactivate, QEvent.Type.Hide])
def test_a_drag_ends_where_window_or_screen_are_taken_away(
    window: MainWindow, document: Document, mouse: Mouse, lost: QEvent.Type
) -> None:
    """As when another window comes to the front, or the screen is unplugged, with the button down."""
    before = document.plan
    mouse.press("b1", "5 m")
    mouse.move("b1", "6 m")
    assert window.canvas.stage.trial is not None
    QApplication.sendEvent(window.canvas, QEvent(lost))
    assert window.canvas.stage.trial is None
    mouse.move("b1", "7 m")
    mouse.release()
    assert document.plan is before
    assert document.stack.count() == 0


def test_escape_ends_a_drag_for_good(window: MainWindow, document: Document, mouse: Mouse) -> None:
    """The hand that moves on with its button still down must not begin another one."""
    mouse.press("b1", "5 m")
    mouse.move("b1", "6 m")
    QTest.keyClick(window.canvas, Qt.Key.Key_Escape)
    mouse.move("b1", "7 m")
    mouse.release()
    assert document.stack.count() == 0


def test_a_drag_is_given_up_when_the_plan_changes_under_it(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    begun = document.plan
    document.change("Name of the place", change_place(begun, name="Sill"))
    mouse.press("b1", "5 m")
    mouse.move("b1", "6 m")
    document.stack.undo()
    assert window.canvas.stage.trial is None
    mouse.release()
    assert document.plan is begun
    assert document.stack.index() == 0


def test_a_place_that_is_taken_is_refused_and_the_reason_said(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    before = document.plan
    mouse.drag("b2", "14 m", "8 m")
    assert document.plan is before
    assert "Leek" in window.statusBar().currentMessage()


@pytest.mark.parametrize(("keys", "starts"), [(Keys.NoModifier, {30}), (Keys.AltModifier, set(range(47, 54)))])
def test_alt_suspends_the_pull_of_the_head_margin(
    document: Document, mouse: Mouse, keys: Qt.KeyboardModifier, starts: set[int]
) -> None:
    mouse.press("b1", "5 m")
    mouse.move("b1", "5.20 m", keys)
    mouse.release()
    assert start_of(document.plan, "p1") / CM in starts


def test_an_end_of_the_selected_block_is_drawn_by_whole_ranks(document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "5 m")
    mouse.release()
    mouse.drag("b1", "10.30 m", "8.32 m")
    block = layout_in(document.plan, "p1")
    assert (block.start, block.end, block.plants) == (30 * CM, 830 * CM, 96)
    assert document.stack.undoText() == "Resize Pak choi"


def test_the_head_end_moves_alone(document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "5 m")
    mouse.release()
    mouse.drag("b1", "30 cm", "1.33 m")
    block = layout_in(document.plan, "p1")
    assert (block.start, block.end, block.plants) == (130 * CM, 1030 * CM, 108)


def test_a_crop_from_the_shelf_is_shown_under_the_hand_and_dropped_as_one_step(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    before, crop = document.plan, carried(document)
    assert mouse.enter(crop, "b1", "10 m").isAccepted()
    mouse.carry(crop, "b1", "10.60 m")
    trial = window.canvas.stage.trial
    assert trial is not None
    assert not trial.against
    assert document.plan is before
    assert mouse.drop(crop, "b1", "10.60 m").isAccepted()
    assert document.plan == trial.plan
    assert document.stack.undoText() == "Place Leek"
    assert window.sight.planting == planted(trial)
    assert start_of(document.plan, planted(trial)) == 1030 * CM
    document.stack.undo()
    assert document.plan is before


def test_a_crop_that_leaves_the_canvas_leaves_nothing_behind(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    crop = carried(document)
    mouse.enter(crop, "b1", "11 m")
    mouse.carry(crop, "b1", "11 m")
    mouse.leave()
    assert window.canvas.stage.trial is None
    assert not mouse.drop(crop, "b1", "11 m").isAccepted()
    assert document.stack.count() == 0


def test_a_crop_of_the_catalogue_comes_into_the_plan_with_its_planting(document: Document, mouse: Mouse) -> None:
    known = {crop.id for crop in document.plan.crops}
    crop = next(entry.crop for entry in entries() if entry.crop.id not in known)
    mouse.enter(with_crop(crop), "b1", "12 m")
    mouse.carry(with_crop(crop), "b1", "12 m")
    mouse.drop(with_crop(crop), "b1", "12 m")
    assert document.plan.crops[-1] == crop
    assert document.plan.plantings[-1].crop == crop.id


def test_what_is_no_crop_is_not_taken(window: MainWindow, mouse: Mouse) -> None:
    text = QMimeData()
    text.setText("leek")
    assert not mouse.enter(text, "b1", "11 m").isAccepted()
    assert window.canvas.stage.trial is None


@pytest.mark.parametrize("steps", [1, 5, -2])
def test_the_wheel_with_ctrl_zooms_and_keeps_the_place_under_the_pointer(
    window: MainWindow, mouse: Mouse, steps: int
) -> None:
    window.canvas.view.zoom(4)
    window.canvas.view.zoom_to(8 * M, 14 * M)
    point, along = mouse.point("b2", "11 m"), window.canvas.view.along
    mouse.roll(point, Keys.ControlModifier, steps)
    assert window.canvas.view.along == pytest.approx(along * 1.2**steps)
    found = window.canvas.places.under(point)
    assert found is not None
    assert abs(found.x - 11 * M) <= 1.5 / window.canvas.view.along * MM


def test_the_whole_length_is_in_sight_again_after_zooming(window: MainWindow) -> None:
    along = window.canvas.view.along
    window.canvas.view.zoom(7)
    assert window.canvas.horizontalScrollBar().maximum() > 0
    window.canvas.view.fit()
    assert window.canvas.view.along == along
    assert window.canvas.horizontalScrollBar().maximum() == 0


def test_the_middle_button_pulls_the_drawing_along(window: MainWindow, mouse: Mouse) -> None:
    window.canvas.view.zoom(5)
    begun, point = window.canvas.horizontalScrollBar().value(), mouse.point("b1", "10 m")
    mouse.press("b1", "10 m", Qt.MouseButton.MiddleButton)
    mouse.move_to(QPointF(point.toPoint()) + QPointF(-60, 0))
    mouse.release(Qt.MouseButton.MiddleButton)
    assert window.canvas.horizontalScrollBar().value() == begun + 60
    assert window.document.stack.count() == 0


def test_what_is_not_in_the_ground_on_the_day_shown_cannot_be_taken_hold_of(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    window.sight.show_day(document.plan.plantings[1].in_ground)
    mouse.press("b1", "5 m")
    mouse.release()
    assert selected(window) == ("b1", "p1")
    window.sight.show_day(document.plan.plantings[0].out)
    mouse.press("b1", "5 m")
    mouse.release()
    assert selected(window) == ("b1", None)


def test_with_ctrl_a_crop_from_the_shelf_waits_until_its_ground_is_free(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    before, leek = document.plan, carried(document)
    taken = before.plantings[0]
    reading = f"{layout_in(before, taken.id).start / M + 1} m"
    mouse.enter(leek, taken.bed, reading)
    mouse.carry(leek, taken.bed, reading)
    trial = window.canvas.stage.trial
    assert trial is not None
    assert not trial.can_be
    lines = [words for words, _ink in lines_under(window.canvas._scene())]
    assert lines[1].endswith("; free from Fri 28 May 2027")
    assert lines[2] == "hold Ctrl to set it out then"
    mouse.carry(leek, taken.bed, reading, Qt.KeyboardModifier.ControlModifier)
    scene = window.canvas._scene()
    assert "set out on Fri 28 May 2027, when the ground is free" in [words for words, _ink in lines_under(scene)]
    assert scene.day == date(2027, 5, 28)
    mouse.drop(leek, taken.bed, reading)
    assert document.plan.plantings[-1].in_ground == date(2027, 5, 28)
    assert window.sight.day == date(2027, 5, 28)
    document.stack.undo()
    assert document.plan is before


@pytest.mark.own_window
def test_a_further_click_on_the_same_spot_goes_to_the_next_block_there(window: MainWindow, mouse: Mouse) -> None:
    """With all days shown, blocks that follow one another in the year lie on one another."""
    plan = metric_plan()
    first = planting_of(plan, "p1")
    later = evolve(first, id="p9", in_ground=date(2027, 7, 1), out=date(2027, 8, 1))
    window.document.start(evolve(plan, plantings=(*plan.plantings, later)))
    window.sight.show_day(None)
    clicked = []
    for _time in range(3):
        mouse.press("b1", "5 m")
        mouse.release()
        clicked.append(window.sight.planting)
    assert clicked[0] == clicked[2]
    assert set(clicked) == {"p1", "p9"}
    assert window.statusBar().currentMessage().endswith(": 1 of 2 here")
    mouse.press("b1", "4 m")
    mouse.release()
    assert window.sight.planting == clicked[2], "another spot: what is selected stays"
    mouse.drag("b1", "4 m", "4.5 m")
    assert window.sight.planting == clicked[2], "a drag takes hold of what is selected"
