"""Outlines and obstacles on the canvas by real mouse and keys: reshaped, traced, dragged, undone."""

import pytest
from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu

from gardenplot.drawing.handles import Grip, Handle
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.edits import remove_planting
from gardenplot.units import CM, M
from gardenplot.window.document import Document
from gardenplot.window.hand_lines import hand_lines
from gardenplot.window.main import MainWindow
from tests.gestures.shaped import ELL, box, ell, places, written
from tests.journeys.person import plain
from tests.layout.ground import nm
from tests.window.mouse import Mouse
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier


@pytest.fixture
def shaped(window: MainWindow) -> MainWindow:
    """The window with the L, which is selected by a click on its name."""
    window.document.start(ell())
    click_name(window)
    return window


def point(window: MainWindow, place: str, bed: str = "b1") -> QPointF:
    """Where a place like "3 m by 50 cm" is on the canvas."""
    x, y = (nm(part) for part in place.split(" by "))
    return window.canvas.places.point_of(bed, x, y)


def click_name(window: MainWindow, bed: str = "b1") -> None:
    click(window, point(window, "0 m by 10 cm", bed) - QPointF(80, 0))


def click(window: MainWindow, at: QPointF) -> None:
    QTest.mouseClick(window.canvas.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, at.toPoint())


def take(window: MainWindow, at: QPointF) -> None:
    QTest.mousePress(window.canvas.viewport(), Qt.MouseButton.LeftButton, Keys.NoModifier, at.toPoint())


def drag(window: MainWindow, mouse: Mouse, start: str, end: str, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    """Drag from one place of the first bed to another without letting go."""
    take(window, point(window, start))
    mouse.move_to(point(window, start) + QPointF(6, 6), keys)
    mouse.move_to(point(window, end), keys)


def press(window: MainWindow, *keys: Qt.Key, held: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    for key in keys:
        QTest.keyClick(window.canvas, key, held)


def under_hand(window: MainWindow) -> str:
    """What stands under the pointer."""
    trial = window.canvas.stage.trial
    assert trial is not None
    lines = hand_lines(window.document.plan, trial, window.sight.day)
    return " | ".join(words for words, _ink in lines).replace("\u2009", " ")


def choose(window: MainWindow, words: str) -> None:
    """Choose an action of the Bed menu."""
    menu = window.menuBar().actions()[2].menu()
    assert isinstance(menu, QMenu)
    (action,) = [one for one in menu.actions() if one.text().replace("&", "") == words]
    action.trigger()


def plants(plan: Plan) -> int:
    return sum(layout.plants for layout in lay_out_plan(plan)[0].layouts)


def selected(window: MainWindow) -> tuple[str | None, str | None, Handle | None]:
    return window.sight.bed, window.sight.planting, window.sight.handle


def message(window: MainWindow) -> str:
    return window.statusBar().currentMessage()


def test_a_corner_is_dragged_as_one_step_and_undone_to_the_very_same_plan(shaped: MainWindow, mouse: Mouse) -> None:
    document, before = shaped.document, shaped.document.plan
    drag(shaped, mouse, "8 m by 1 m", "7 m by 1.31 m")
    assert document.plan is before
    assert under_hand(shaped) == "tape 7.00 m, 130 cm from the base line   sides 1.64 m and 4.01 m"
    mouse.release()
    assert places(document.plan) == written(*ELL[:2], "7 m by 1.3 m", *ELL[3:])
    assert document.stack.undoText() == "Reshape bed North"
    assert document.stack.count() == 1
    assert shaped.sight.handle == Handle(Grip.CORNER, 2)
    document.stack.undo()
    assert document.plan is before


def test_a_corner_brought_far_below_its_bed_is_still_measured_in_it(window: MainWindow, mouse: Mouse) -> None:
    plan = ell()
    two = Plan(beds=(*plan.beds, *window.document.plan.beds[1:]))
    window.document.start(two)
    click_name(window)
    drag(window, mouse, "3 m by 2 m", "3 m by 3.2 m")
    mouse.release()
    assert places(window.document.plan)[4] == (3 * M, 320 * CM)


def test_an_outline_that_crosses_itself_is_refused_with_the_reason(shaped: MainWindow, mouse: Mouse) -> None:
    before = shaped.document.plan
    drag(shaped, mouse, "8 m by 1 m", "1 m by 1.7 m")
    assert under_hand(shaped).endswith("the outline crosses or touches itself")
    mouse.release()
    assert shaped.document.plan is before
    assert message(shaped) == "North: the outline crosses or touches itself"


def test_escape_gives_the_very_same_plan_and_ends_the_drag(shaped: MainWindow, mouse: Mouse) -> None:
    before = shaped.document.plan
    drag(shaped, mouse, "8 m by 1 m", "7 m by 1.3 m")
    press(shaped, Key.Key_Escape)
    mouse.move_to(point(shaped, "6 m by 1.2 m"))
    mouse.release()
    assert shaped.document.plan is before
    assert shaped.document.stack.count() == 0


def test_the_snap_is_named_and_alt_suspends_it(shaped: MainWindow, mouse: Mouse) -> None:
    drag(shaped, mouse, "8 m by 1 m", "3.04 m by 70 cm")
    assert under_hand(shaped).endswith("| a side straight across")
    mouse.move_to(point(shaped, "3.09 m by 70 cm"), Keys.AltModifier)
    trial = shaped.canvas.stage.trial
    assert trial is not None
    assert trial.sketch is not None
    assert trial.sketch.points[2][0] in range(307 * CM, 312 * CM)
    press(shaped, Key.Key_Escape)
    mouse.release()


def test_a_new_corner_is_drawn_out_of_a_side_and_one_dropped_on_its_neighbour_goes(
    shaped: MainWindow, mouse: Mouse
) -> None:
    drag(shaped, mouse, "4 m by 0 m", "4 m by 30 cm")
    mouse.release()
    assert places(shaped.document.plan) == written(ELL[0], "4 m by 30 cm", *ELL[1:])
    drag(shaped, mouse, "4 m by 30 cm", "8 m by 0 m")
    assert under_hand(shaped) == "takes the corner away"
    mouse.release()
    assert places(shaped.document.plan) == written(*ELL)


def test_a_rectangle_is_reshaped_only_when_that_is_asked_for(window: MainWindow, mouse: Mouse) -> None:
    document = window.document
    document.start(remove_planting(box(), "p1"))
    before = document.plan
    click_name(window)
    drag(window, mouse, "8 m by 1 m", "7 m by 80 cm")
    mouse.release()
    press(window, Key.Key_BracketRight, Key.Key_Right)
    assert document.plan is before
    assert "no corners" in message(window)
    choose(window, "Reshape the outline")
    assert places(document.plan) == written("0 m by 0 m", "8 m by 0 m", "8 m by 1 m", "0 m by 1 m")
    assert document.stack.undoText() == "Reshape bed North"
    drag(window, mouse, "8 m by 1 m", "7 m by 80 cm")
    mouse.release()
    assert places(document.plan)[2] == (7 * M, 80 * CM)
    document.stack.undo()
    document.stack.undo()
    assert document.plan is before


def test_reshape_without_a_bed_says_what_to_choose(window: MainWindow) -> None:
    choose(window, "Reshape the outline")
    assert "Choose a bed first: click its name, or Bed ▸ Next bed." in window.registry.made("bed.reshape").toolTip()


@pytest.mark.parametrize("stretched", [True, False])
def test_an_l_is_traced_by_clicks_and_closed_on_its_first_corner(window: MainWindow, stretched: bool) -> None:
    """Two corners are taken back on the way; the readings are right across as well, however the strips are drawn."""
    document, before = window.document, window.document.plan
    window.canvas.view.set_true_scale(not stretched)
    choose(window, "Trace a bed …")
    for corner in (*ELL[:3], "1 m by 3 m", "2 m by 3 m"):
        set_corner(window, corner)
    press(window, Key.Key_Backspace, Key.Key_Backspace)
    assert document.plan is before
    for corner in ELL[3:]:
        set_corner(window, corner)
    set_corner(window, ELL[0])
    assert places(document.plan, -1) == written(*ELL)
    assert document.plan.beds[:-1] == before.beds
    assert document.stack.undoText() == "Trace Bed 3"
    assert window.sight.bed == document.plan.beds[-1].id
    assert not window.canvas.view.has_ground
    document.stack.undo()
    assert document.plan is before


def test_an_l_is_traced_by_keys_alone(window: MainWindow) -> None:
    """By 5 cm, with Ctrl by 50 cm or in line with a corner; a corner too many is taken back."""
    document, before = window.document, window.document.plan
    choose(window, "Trace a bed …")
    press(window, Key.Key_Space)
    press(window, *[Key.Key_Right] * 16, held=Keys.ControlModifier)
    press(window, Key.Key_Space)
    press(window, *[Key.Key_Down] * 2, held=Keys.ControlModifier)
    assert plain(under_hand(window)).startswith("tape 8.00 m, 100 cm from the base line side 1.00 m")
    press(window, Key.Key_Space, Key.Key_Left, Key.Key_Space, Key.Key_Backspace)
    press(window, *[Key.Key_Left] * 99, Key.Key_Space)
    press(window, *[Key.Key_Down] * 2, held=Keys.ControlModifier)
    press(window, Key.Key_Space)
    press(window, Key.Key_Left, held=Keys.ControlModifier)
    press(window, Key.Key_Space)
    press(window, *[Key.Key_Up] * 2, held=Keys.ControlModifier)
    assert under_hand(window).startswith("closes the outline")
    assert document.plan is before
    press(window, Key.Key_Space)
    assert places(document.plan, -1) == written(*ELL)
    assert document.stack.undoText() == "Trace Bed 3"
    document.stack.undo()
    assert document.plan is before


def test_a_place_beyond_what_is_seen_is_scrolled_into_sight(window: MainWindow) -> None:
    choose(window, "Trace a bed …")
    press(window, *[Key.Key_Right] * 12, held=Keys.ControlModifier)
    window.canvas.view.zoom(6)
    press(window, Key.Key_Right)
    at = window.canvas.stage.at
    assert at is not None
    assert window.canvas.viewport().rect().contains(at.toPoint())
    press(window, Key.Key_Escape)


def set_corner(window: MainWindow, place: str) -> None:
    """Click at a place of the empty ground."""
    x, y = (nm(part) for part in place.split(" by "))
    click(window, window.canvas.places.ground_point(x, y))


def test_enter_closes_a_tracing_and_escape_gives_it_up(window: MainWindow, mouse: Mouse) -> None:
    document, before = window.document, window.document.plan
    choose(window, "Trace a bed …")
    for corner in ELL[:3]:
        set_corner(window, corner)
    mouse.move_to(window.canvas.places.ground_point(3 * M, M))
    assert under_hand(window).startswith("tape 3.00 m, 100 cm from the base line   side 5.00 m")
    press(window, Key.Key_Escape)
    assert document.plan is before
    assert not window.canvas.view.has_ground
    choose(window, "Trace a bed …")
    for corner in ELL[:2]:
        set_corner(window, corner)
    press(window, Key.Key_Return)
    assert message(window) == "an outline needs three corners or more"
    set_corner(window, ELL[2])
    press(window, Key.Key_Return)
    assert places(document.plan, -1) == written(*ELL[:3])


def test_clicks_on_the_beds_set_no_corner_and_select_nothing_while_tracing(window: MainWindow) -> None:
    choose(window, "Trace a bed …")
    window.canvas.verticalScrollBar().setValue(0)
    click(window, point(window, "3 m by 20 cm"))
    trial = window.canvas.stage.trial
    assert trial is None or trial.sketch is None
    assert window.sight.planting is None
    press(window, Key.Key_Escape)


def test_what_is_traced_is_not_drawn_over_the_bed_that_is_selected(shaped: MainWindow) -> None:
    choose(shaped, "Trace a bed …")
    shaped.canvas.verticalScrollBar().setValue(0)
    corner, far = point(shaped, "0 m by 0 m").toPoint(), point(shaped, "3 m by 2 m").toPoint()
    strip = QRect(corner, far).adjusted(-9, -9, 9, 9)
    before = shaped.canvas.viewport().grab(strip).toImage()  # the line under the pointer stays right of it
    shaped.canvas.verticalScrollBar().setValue(9999)
    for place in ELL[:3]:
        set_corner(shaped, place)
    shaped.canvas.verticalScrollBar().setValue(0)
    assert shaped.canvas.viewport().grab(strip).toImage() == before
    press(shaped, Key.Key_Escape)


def test_a_first_bed_is_traced_in_an_empty_plan(window: MainWindow, document: Document) -> None:
    document.start(Plan())
    choose(window, "Trace a bed …")
    for corner in ELL:
        set_corner(window, corner)
    press(window, Key.Key_Return)
    assert [bed.name for bed in document.plan.beds] == ["Bed 1"]
    assert places(document.plan) == written(*ELL)


def test_a_post_is_dragged_and_the_rows_fill_anew_under_the_hand(shaped: MainWindow, mouse: Mouse) -> None:
    document, before = shaped.document, shaped.document.plan
    shown = shaped.canvas.viewport().grab().toImage()
    drag(shaped, mouse, "5 m by 50 cm", "7.99 m by 1 m")
    trial = shaped.canvas.stage.trial
    assert trial is not None
    assert plants(trial.plan) > plants(before)
    assert under_hand(shaped).startswith(f"post at 8.00 m by 100 cm · {plants(trial.plan)} plants")
    assert shaped.canvas.viewport().grab().toImage() != shown
    mouse.release()
    assert document.plan == trial.plan
    assert document.stack.undoText() == "Move post in North"
    assert shaped.sight.handle == Handle(Grip.OBSTACLE, 0)
    document.stack.undo()
    assert document.plan is before


def test_a_post_is_placed_selected_nudged_and_removed(window: MainWindow) -> None:
    document = window.document
    document.start(box())
    before = document.plan
    click_name(window)
    choose(window, "Place a post")
    (post,) = document.plan.beds[0].obstacles
    assert window.sight.handle == Handle(Grip.OBSTACLE, 0)
    assert document.stack.undoText() == "Place post in North"
    assert window.statusBar().currentMessage().startswith("Drag the post to its place. Keys: arrows")
    press(window, Key.Key_Right, Key.Key_Right, Key.Key_Down)
    press(window, Key.Key_Up, held=Keys.ShiftModifier)
    (nudged,) = document.plan.beds[0].obstacles
    assert (nudged.x.nm - post.x.nm, nudged.y.nm - post.y.nm) == (10 * CM, 4 * CM)
    assert document.stack.count() == 2
    press(window, Key.Key_Delete)
    assert document.plan.beds[0].obstacles == ()
    assert plants(document.plan) == plants(before)
    for _step in range(3):
        document.stack.undo()
    assert document.plan is before


def test_a_click_chooses_a_post_under_a_planting(shaped: MainWindow) -> None:
    click(shaped, point(shaped, "1 m by 1 m"))
    assert shaped.sight.planting == "p1"
    click(shaped, point(shaped, "5 m by 50 cm"))
    assert selected(shaped) == ("b1", None, Handle(Grip.OBSTACLE, 0))


def test_corners_by_keys_alone_and_what_is_chosen_is_told(shaped: MainWindow) -> None:
    document, canvas, before = shaped.document, shaped.canvas, shaped.document.plan
    press(shaped, Key.Key_BracketRight, Key.Key_BracketRight, Key.Key_BracketRight)
    told = canvas.accessibleDescription().replace("\u2009", " ")
    assert told.startswith("North: corner 3 of 6, tape 8.00 m, 100 cm from the base line")
    press(shaped, Key.Key_Left, Key.Key_Down, Key.Key_Down)
    press(shaped, Key.Key_Right, held=Keys.ShiftModifier)
    assert places(document.plan)[2] == (796 * CM, 110 * CM)
    assert "7.96" in canvas.accessibleDescription()
    assert document.stack.count() == 1
    press(shaped, Key.Key_Insert)
    assert len(places(document.plan)) == 7
    assert shaped.sight.handle == Handle(Grip.CORNER, 3)
    press(shaped, Key.Key_Delete)
    assert len(places(document.plan)) == 6
    press(shaped, Key.Key_BracketLeft)
    assert canvas.accessibleDescription().replace("\u2009", " ") == "North: post at 5.00 m by 50 cm"
    press(shaped, Key.Key_Escape)
    assert selected(shaped) == ("b1", None, None)
    while document.stack.canUndo():
        document.stack.undo()
    assert document.plan is before


def test_a_corner_nudged_into_its_own_outline_is_refused(shaped: MainWindow) -> None:
    press(shaped, *[Key.Key_BracketRight] * 4)
    before = shaped.document.plan
    press(shaped, *[Key.Key_Up] * 20)
    assert places(shaped.document.plan)[3] == (3 * M, 5 * CM)
    assert "crosses or touches itself" in message(shaped)
    shaped.document.stack.undo()
    assert shaped.document.plan is before


def test_a_corner_taken_by_undo_is_no_longer_chosen(shaped: MainWindow) -> None:
    press(shaped, Key.Key_BracketRight, Key.Key_Insert)
    assert shaped.sight.handle == Handle(Grip.CORNER, 1)
    shaped.document.stack.undo()
    assert shaped.sight.handle is None


def test_a_chosen_corner_shows_its_dots_only_while_the_keyboard_is_here(shaped: MainWindow) -> None:
    press(shaped, Key.Key_BracketRight)
    with_dots = shaped.canvas.viewport().grab().toImage()
    shaped.shelf.search.setFocus()
    shaped.canvas.viewport().update()
    assert shaped.canvas.viewport().grab().toImage() != with_dots
