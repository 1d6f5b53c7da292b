"""The view of the ground by real mouse and keys: beds moved, turned, chosen, and their strips gone to."""

import warnings
from fractions import Fraction

import pytest
from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, QSettings, Qt
from PySide6.QtGui import QAction, QDragMoveEvent, QDropEvent, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from gardenplot.drawing.covers import Layer
from gardenplot.drawing.ground_under import handle_at
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, Tunnel, edits
from gardenplot.plan.ground import frames_of
from gardenplot.units import CM, MM, M, parse_degrees, parse_length
from gardenplot.window.document import Document
from gardenplot.window.ground_view import GroundView
from gardenplot.window.layers import Layers
from gardenplot.window.main import MainWindow
from gardenplot.window.mime import with_crop
from gardenplot.window.theme import magnified
from tests.plans import metric_plan
from tests.window.shared_window import window
from tests.window.test_dialogs import Answers

__all__ = ["window"]

Keys = Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton


class GroundMouse:
    """A mouse over the view of the ground, told where to go by bed and tape reading or by distances on the ground."""

    def __init__(self, view: GroundView) -> None:
        self.view = view

    def on_bed(self, bed: str, reading: str) -> QPointF:
        """Where a tape reading is, in the middle of a bed."""
        one = self.view.eye.figure.bed_of(bed)
        assert one is not None
        x, y = one.frame.to_ground(parse_length(reading).nm, one.laid.bed.width.nm / 2)
        return QPointF(*self.view.eye.eye.pixels((x / MM, y / MM))) * magnified()

    def handle(self, bed: str) -> QPointF:
        """Where the handle that turns a bed is."""
        one = self.view.eye.figure.bed_of(bed)
        assert one is not None
        return QPointF(*handle_at(one, self.view.eye.eye)) * magnified()

    def press(self, at: QPointF, button: Qt.MouseButton = _LEFT, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Press a button."""
        QTest.mousePress(self.view, button, keys, at.toPoint())

    def click(self, at: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Press and let go where the mouse is."""
        self.press(at, keys=keys)
        QTest.mouseRelease(self.view, _LEFT, keys, at.toPoint())

    def move(self, at: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move with the left button down."""
        there = QPointF(self.view.mapToGlobal(at.toPoint()))
        event = QMouseEvent(QEvent.Type.MouseMove, at, there, Qt.MouseButton.NoButton, _LEFT, keys)
        QApplication.sendEvent(self.view, event)

    def release(self, at: QPointF, button: Qt.MouseButton = _LEFT) -> None:
        """Let go."""
        QTest.mouseRelease(self.view, button, Keys.NoModifier, at.toPoint())

    def drag(self, start: QPointF, by: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Press, move and let go."""
        self.press(start)
        self.move(start + by / 2, keys)
        self.move(start + by, keys)
        self.release(start + by)

    def roll(self, at: QPointF, keys: Qt.KeyboardModifier, steps: int) -> None:
        """Turn the wheel."""
        turn, phase = QPoint(0, 120 * steps), Qt.ScrollPhase.NoScrollPhase
        there = QPointF(self.view.mapToGlobal(at.toPoint()))
        QApplication.sendEvent(
            self.view, QWheelEvent(at, there, QPoint(), turn, Qt.MouseButton.NoButton, keys, phase, False)
        )


@pytest.fixture
def mouse(window: MainWindow, qtbot: QtBot) -> GroundMouse:
    """A mouse over the ground, which the window shows."""
    action(window, "Beds on the &ground").trigger()
    qtbot.waitUntil(window.views.ground.isVisible)
    window.activateWindow()
    window.views.ground.setFocus()
    return GroundMouse(window.views.ground)


def action(window: MainWindow, words: str) -> QAction:
    """An action of the menus by its words."""
    return next(one for one in window.findChildren(QAction) if one.text() == words)


def spot(plan: Plan, bed: str) -> tuple[int, int]:
    """Where a bed lies."""
    frame = frames_of(plan)[bed]
    return frame.x, frame.y


def chosen_beds(window: MainWindow) -> list[str]:
    """The chosen beds, the one that leads first."""
    return list(window.sight.beds)


def salt_house(name: str) -> Tunnel:
    """A tunnel of a usual size."""
    x, y, length, width = (parse_length(text) for text in ("1 m", "2 m", "20 m", "5 m"))
    return Tunnel("t", name, x, y, length, width)


def test_the_ground_takes_the_place_of_the_strips_and_back(window: MainWindow) -> None:
    shown = action(window, "Beds on the &ground")
    assert window.canvas.isVisible()
    shown.trigger()
    assert window.views.ground.isVisible()
    assert not window.canvas.isVisible()
    assert window.scale.text().startswith("the ground · scale 1 : ")
    shown.trigger()
    assert window.canvas.isVisible()
    assert not shown.isChecked()
    assert "metres" in window.scale.text()


def test_a_drag_moves_a_bed_as_one_step_and_undo_brings_the_very_same_plan(
    window: MainWindow, document: Document, mouse: GroundMouse
) -> None:
    before, layouts = document.plan, lay_out_plan(document.plan)
    eye = mouse.view.eye.eye
    mouse.drag(mouse.on_bed("b1", "5 m"), QPointF(2000, 3000) * eye.scale * magnified())
    assert document.stack.count() == 1
    assert document.stack.text(0) == "Move bed Tunnel, east on the ground"
    x, y = spot(document.plan, "b1")
    assert abs(x - 3 * M) < 60 * CM
    assert abs(y - 4 * M) < 60 * CM
    assert spot(document.plan, "b2") == spot(before, "b2")
    assert all(one is other for one, other in zip(lay_out_plan(document.plan), layouts, strict=True))
    assert window.sight.bed == "b1"
    assert mouse.view.eye.eye == eye
    document.stack.undo()
    assert document.plan is before


def test_escape_in_a_drag_gives_back_the_very_same_plan(
    window: MainWindow, document: Document, mouse: GroundMouse
) -> None:
    before, start = document.plan, mouse.on_bed("b2", "5 m")
    mouse.press(start)
    mouse.move(start + QPointF(40, 60))
    assert mouse.view.stage.trial is not None
    shown = mouse.view.grab().toImage()
    QTest.keyClick(mouse.view, Qt.Key.Key_Escape)
    assert mouse.view.stage.trial is None
    assert mouse.view.grab().toImage() != shown
    mouse.move(start + QPointF(80, 90))
    mouse.release(start + QPointF(80, 90))
    assert document.plan is before
    assert document.stack.count() == 0
    assert window.sight.bed == "b2"


def test_alt_suspends_what_draws(document: Document, mouse: GroundMouse) -> None:
    y = spot(document.plan, "b2")[1]
    start = mouse.on_bed("b2", "9 m")
    step = QPointF(100, 3)
    mouse.drag(start, step, Keys.AltModifier)
    assert spot(document.plan, "b2")[1] != y
    document.stack.undo()
    mouse.drag(start, step)
    assert spot(document.plan, "b2")[1] == y


def test_the_handle_swings_a_bed_round_its_head(window: MainWindow, document: Document, mouse: GroundMouse) -> None:
    window.sight.select("b1")
    head = spot(document.plan, "b1")
    start = mouse.handle("b1")
    length = (start - mouse.on_bed("b1", "0 m")).x()
    mouse.drag(start, QPointF(-length, length))
    assert spot(document.plan, "b1") == head
    assert frames_of(document.plan)["b1"].turn == 90
    assert document.stack.text(0) == "Turn bed Tunnel, east on the ground"


def test_by_keyboard_a_bed_is_chosen_moved_turned_and_its_strip_gone_to(
    window: MainWindow, document: Document, mouse: GroundMouse
) -> None:
    x, y = spot(document.plan, "b2")
    for key, keys in (
        (Qt.Key.Key_BracketRight, Keys.NoModifier),
        (Qt.Key.Key_BracketRight, Keys.NoModifier),
        (Qt.Key.Key_Right, Keys.NoModifier),
        (Qt.Key.Key_Right, Keys.NoModifier),
        (Qt.Key.Key_Down, Keys.ShiftModifier),
    ):
        QTest.keyClick(mouse.view, key, keys)
    assert window.sight.bed == "b2"
    assert spot(document.plan, "b2") == (x + 10 * CM, y + CM)
    assert document.stack.count() == 1
    QTest.keyClick(mouse.view, Qt.Key.Key_Right, Keys.ControlModifier)
    QTest.keyClick(mouse.view, Qt.Key.Key_Left, Keys.ControlModifier | Keys.ShiftModifier)
    assert frames_of(document.plan)["b2"].turn == Fraction(14)
    assert document.stack.count() == 2
    QTest.keyClick(mouse.view, Qt.Key.Key_BracketLeft)
    assert window.sight.bed == "b1"
    QTest.keyClick(mouse.view, Qt.Key.Key_Return)
    assert window.canvas.isVisible()
    assert window.canvas.hasFocus()
    assert window.sight.bed == "b1"


def test_beds_are_chosen_together_by_mouse_and_go_together(
    window: MainWindow, document: Document, mouse: GroundMouse
) -> None:
    before = document.plan
    mouse.click(mouse.on_bed("b1", "5 m"))
    mouse.click(mouse.on_bed("b2", "5 m"), Keys.ControlModifier)
    assert chosen_beds(window) == ["b2", "b1"]
    mouse.drag(mouse.on_bed("b1", "5 m"), QPointF(60, 80))
    assert document.stack.text(0) == "Move 2 beds on the ground"
    by = [
        (spot(document.plan, bed)[0] - spot(before, bed)[0], spot(document.plan, bed)[1] - spot(before, bed)[1])
        for bed in ("b1", "b2")
    ]
    assert by[0] == by[1] != (0, 0)
    assert chosen_beds(window) == ["b1", "b2"]
    assert mouse.view.accessibleDescription().startswith("2 beds   Tunnel, east")
    document.stack.undo()
    assert document.plan is before
    mouse.click(mouse.on_bed("b1", "5 m"), Keys.ControlModifier)
    assert chosen_beds(window) == ["b2"]
    mouse.click(mouse.on_bed("b1", "5 m"), Keys.ControlModifier)
    mouse.click(mouse.on_bed("b2", "5 m"))
    assert chosen_beds(window) == ["b2"]


def test_beds_are_chosen_together_by_keyboard_turned_and_removed_in_one_step_each(
    window: MainWindow, document: Document, mouse: GroundMouse
) -> None:
    before = document.plan
    for key, keys in (
        (Qt.Key.Key_BracketRight, Keys.NoModifier),
        (Qt.Key.Key_BraceRight, Keys.ShiftModifier),
        (Qt.Key.Key_Right, Keys.ControlModifier),
    ):
        QTest.keyClick(mouse.view, key, keys)
    assert chosen_beds(window) == ["b2", "b1"]
    assert document.stack.text(0) == "Turn 2 beds on the ground"
    assert {frame.turn for frame in frames_of(document.plan).values()} == {15}
    action(window, "&Remove bed").trigger()
    assert document.plan.beds == ()
    assert document.stack.text(1) == "Remove 2 beds"
    assert chosen_beds(window) == []
    document.stack.setIndex(0)
    assert document.plan is before


def test_all_beds_are_chosen_on_the_ground_and_one_of_them_on_the_strips(
    window: MainWindow, mouse: GroundMouse
) -> None:
    mouse.click(mouse.on_bed("b2", "5 m"))
    QTest.keyClick(mouse.view, Qt.Key.Key_A, Keys.ControlModifier)
    assert chosen_beds(window) == ["b2", "b1"]
    assert mouse.view.hasFocus()
    QTest.keyClick(mouse.view, Qt.Key.Key_Return)
    assert window.canvas.isVisible()
    assert chosen_beds(window) == ["b2"]


def test_nudging_back_leaves_no_step(window: MainWindow, document: Document, mouse: GroundMouse) -> None:
    document.start(edits.place_beds(metric_plan()))
    window.sight.select("b1")
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Left):
        QTest.keyClick(mouse.view, key)
    assert document.stack.count() == 0


def test_a_double_click_goes_to_the_block_on_its_strip(window: MainWindow, mouse: GroundMouse) -> None:
    at = mouse.on_bed("b1", "5 m")
    QTest.mouseDClick(mouse.view, _LEFT, Keys.NoModifier, at.toPoint())
    assert window.canvas.isVisible()
    assert (window.sight.bed, window.sight.planting) == ("b1", "p1")


def test_the_wheel_zooms_at_the_pointer_and_pans(window: MainWindow, mouse: GroundMouse) -> None:
    eye, at = mouse.view.eye, mouse.on_bed("b1", "8 m")
    spot_there = eye.eye.spot(at.x() / magnified(), at.y() / magnified())
    scale = eye.eye.scale
    mouse.roll(at, Keys.ControlModifier, 3)
    assert eye.eye.scale == pytest.approx(scale * 1.2**3)
    assert eye.eye.spot(at.x() / magnified(), at.y() / magnified()) == pytest.approx(spot_there)
    top = eye.eye.top
    mouse.roll(at, Keys.NoModifier, -1)
    assert eye.eye.top == pytest.approx(top - 48)
    left = eye.eye.left
    mouse.roll(at, Keys.ShiftModifier, 1)
    assert eye.eye.left == pytest.approx(left + 48)
    action(window, "&Whole length").trigger()
    assert eye.eye.scale == pytest.approx(scale)
    action(window, "Zoom &in").trigger()
    assert eye.eye.scale == pytest.approx(scale * 1.25)
    window.sight.select("b1")
    action(window, "To the &selection").trigger()
    assert eye.eye.scale > scale * 1.25


def test_empty_ground_and_the_middle_button_move_the_view(window: MainWindow, mouse: GroundMouse) -> None:
    window.sight.select("b1")
    eye, away = mouse.view.eye, QPointF(6, 6)
    left = eye.eye.left
    mouse.drag(away, QPointF(50, 10))
    assert eye.eye.left == pytest.approx(left + 50 / magnified())
    assert window.sight.bed is None
    start = mouse.on_bed("b1", "5 m")
    mouse.press(start, Qt.MouseButton.MiddleButton)
    mouse.move(start + QPointF(20, 0))
    mouse.release(start + QPointF(20, 0), Qt.MouseButton.MiddleButton)
    assert eye.eye.left == pytest.approx(left + 70 / magnified(), abs=1)
    assert window.document.stack.count() == 0


def test_the_hand_is_told_where_it_is_and_what_is_wrong(window: MainWindow, mouse: GroundMouse) -> None:
    start = mouse.on_bed("b1", "5 m")
    mouse.move(start)
    assert window.pointed.text().startswith("Tunnel, east · tape 5.0")
    down = mouse.on_bed("b2", "5 m") - start
    mouse.drag(start, down)
    assert mouse.view.accessibleDescription().startswith("Tunnel, east   ")
    assert "into Field, upper on the ground" in mouse.view.accessibleDescription()
    assert "into Field, upper on the ground" in window.inspector.bed.findings.text()


def test_where_a_bed_lies_is_typed_in_its_panel(window: MainWindow, document: Document, mouse: GroundMouse) -> None:
    window.sight.select("b2")
    for name, text in (("x", "12.5 m"), ("turn", "45")):
        field = window.inspector.bed.form.fields[name]
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, text)
        QTest.keyClick(field, Qt.Key.Key_Return)
    assert spot(document.plan, "b2")[0] == 1250 * CM
    assert frames_of(document.plan)["b2"].turn == 45
    assert document.stack.count() == 2
    window.sight.select(None)
    north = window.inspector.plan.form.fields["north"]
    north.setFocus()
    QTest.keyClicks(north, "-20")
    QTest.keyClick(north, Qt.Key.Key_Return)
    assert str(document.plan.place.north) == "-20"
    assert mouse.view.grab().toImage().pixel(0, 0)


def test_reshaping_and_tracing_happen_on_the_strips(window: MainWindow, mouse: GroundMouse) -> None:
    window.sight.select("b1")
    window.shapes.reshape()
    assert window.canvas.isVisible()
    window.views.show_ground(True)
    window.shapes.trace()
    assert window.canvas.isVisible()
    window.canvas.stage.give_up()
    assert not mouse.view.isVisible()


def test_a_ground_without_beds_says_what_to_do_and_keys_do_no_harm(window: MainWindow, mouse: GroundMouse) -> None:
    window.document.start(Plan())
    for key in (Qt.Key.Key_Right, Qt.Key.Key_BracketRight, Qt.Key.Key_Return, Qt.Key.Key_Escape):
        QTest.keyClick(mouse.view, key)
    mouse.drag(QPointF(50, 50), QPointF(20, 20))
    mouse.view.grab()
    assert window.document.plan == Plan()


def test_many_beds_of_all_sizes_names_and_turns_are_painted(window: MainWindow, mouse: GroundMouse) -> None:
    plan = metric_plan()
    plan = edits.change_bed(plan, "b1", name="N" * 300, length=parse_length("500 m"))
    for number in range(40):
        plan = edits.copy_bed(plan, "b2")
        plan = edits.turn_bed(plan, plan.beds[-1].id, parse_degrees(f"{9 * number}.5"))
    tunnel = salt_house("T" * 300)
    window.document.start(edits.add_tunnel(plan, tunnel))
    for factor in (1.0, 40.0, 0.0001, 1e9):
        mouse.view.eye.zoom(factor)
        assert not mouse.view.grab().isNull()


def test_layers_are_shown_and_hidden_and_remembered_but_not_in_the_plan(
    window: MainWindow, document: Document
) -> None:
    plan = edits.change_bed(metric_plan(), "b1", drip_lines=(parse_length("30 cm"),))
    document.start(plan)
    shown = window.canvas.viewport().grab().toImage()
    drip = action(window, "&Drip lines")
    assert drip.isChecked()
    drip.trigger()
    assert window.canvas.viewport().grab().toImage() != shown
    assert Layer.DRIP_LINES not in Layers().shown
    assert document.plan is plan
    assert document.is_saved
    drip.trigger()
    assert window.canvas.viewport().grab().toImage() == shown
    assert QSettings().value("hidden layers") == ""


def test_the_menus_of_tunnels_and_covers_list_what_there_is(window: MainWindow, document: Document) -> None:
    tunnel = salt_house("Salt & Co")
    document.start(edits.add_tunnel(metric_plan(), tunnel))
    menu = QMenu()
    window.ground.fill_strips(menu)
    change, remove = menu.actions()
    assert change.text() == "Change Salt && Co …"
    remove.trigger()
    assert document.plan == metric_plan()
    assert document.stack.text(0) == "Remove Salt & Co"
    window.ground.fill_covers(menu)
    assert [(one.text(), one.isEnabled()) for one in menu.actions()] == [("none yet", False)]


def test_a_tunnel_is_made_and_changed_by_dialog_and_shown(window: MainWindow, document: Document) -> None:
    Answers({"name": "Glass", "x": "4 m", "y": "2 m", "length": "20 m", "width": "5 m", "cold_edge": "50"})
    action(window, "Add a t&unnel …").trigger()
    (tunnel,) = document.plan.tunnels
    assert (tunnel.name, str(tunnel.cold_edge)) == ("Glass", "50 cm")
    assert window.views.ground.isVisible()
    menu = QMenu()
    window.ground.fill_strips(menu)
    Answers({"width": "6 m", "turn": "90"})
    menu.actions()[0].trigger()
    assert (str(document.plan.tunnels[0].width), str(document.plan.tunnels[0].turn)) == ("6 m", "90")
    refused = Answers({"width": "wide"})
    menu.actions()[0].trigger()
    assert any("“wide” is no length" in words for words in refused.said)
    Answers({"name": "Cart way", "x": "1 m", "y": "9 m", "length": "20 m", "width": "2 m"})
    action(window, "Add a pat&h …").trigger()
    assert document.plan.paths[0].name == "Cart way"
    assert document.stack.count() == 3


def test_a_block_is_covered_by_dialog_and_its_cover_is_told_and_drawn(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    shown = window.canvas.viewport().grab().toImage()
    Answers({"off": "2027-05-10", "hoop_spacing": "1 m"})
    action(window, "Co&ver this block at night …").trigger()
    (cover,) = document.plan.covers
    assert (cover.bed, str(cover.start), str(cover.hoop_spacing)) == ("b1", "30 cm", "1 m")
    assert window.canvas.viewport().grab().toImage() != shown
    window.sight.select("b1")
    assert "hoops" in window.inspector.bed.covers.text()
    menu = QMenu()
    window.ground.fill_covers(menu)
    menu.actions()[1].trigger()
    assert document.plan.covers == ()
    assert window.inspector.bed.covers.text() == ""


def test_a_cover_needs_a_block_or_a_bed(window: MainWindow) -> None:
    window.sight.select(None)
    cover = action(window, "Co&ver this block at night …")
    assert not cover.isEnabled()
    assert cover.toolTip() == "Nothing is selected: click a bed's name or a block."


def test_a_crop_is_dropped_on_a_bed_that_lies_turned_as_it_is_on_its_strip(window: MainWindow) -> None:
    document, view = window.document, window.views.ground
    document.change("Turn", edits.turn_bed(edits.place_beds(document.plan), "b1", parse_degrees("90")))
    window.views.show_ground(True)
    view.eye.fit()
    QApplication.processEvents()
    hand, before = GroundMouse(view), document.plan
    carried = with_crop(before.crops[1])
    over = hand.on_bed("b1", "11 m")
    view.drops.eventFilter(view, drag_event(over, carried))
    trial = view.stage.trial
    assert trial is not None
    assert (trial.bed, document.plan) == ("b1", before)
    view.grab()
    view.drops.eventFilter(view, QDropEvent(over, Qt.DropAction.CopyAction, carried, _LEFT, Keys.NoModifier))
    assert window.sight.bed == "b1"
    assert len(document.plan.plantings) == len(before.plantings) + 1
    assert document.stack.count() == 2
    assert window.views.shows_ground


def test_a_crop_dropped_beside_all_beds_on_the_ground_does_nothing(window: MainWindow) -> None:
    document, view = window.document, window.views.ground
    window.views.show_ground(True)
    before, carried = document.plan, with_crop(document.plan.crops[1])
    view.drops.eventFilter(view, drag_event(QPointF(3, 3), carried))
    view.drops.eventFilter(view, QDropEvent(QPointF(3, 3), Qt.DropAction.CopyAction, carried, _LEFT, Keys.NoModifier))
    assert document.plan is before


def drag_event(at: QPointF, carried: QMimeData) -> QDragMoveEvent:
    """Something carried to a point."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        return QDragMoveEvent(at.toPoint(), Qt.DropAction.CopyAction, carried, _LEFT, Keys.NoModifier)
