"""The hand on the canvas with several blocks: chosen, moved, copied, pushed, measured, by mouse and by keys."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit

from gardenplot.drawing.letters import looks
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.stage import Measured
from gardenplot.plan import Plan
from gardenplot.units import CM, M, parse_length
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.main import MainWindow
from tests.gestures.hand import block, ground
from tests.window.mouse import Mouse
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton
ROW = ground(block("1 m", "1 m"), block("3 m", "1 m"), block("6 m", "2 m"), block("4 m", "3 m", bed="b2"))


@pytest.fixture(autouse=True)
def row(window: MainWindow) -> None:
    """Three blocks in the first bed and one in the second."""
    window.document.start(ROW)


def click(window: MainWindow, mouse: Mouse, bed: str, reading: str, keys: Qt.KeyboardModifier) -> None:
    QTest.mouseClick(window.canvas.viewport(), _LEFT, keys, mouse.point(bed, reading).toPoint())


def press_at(window: MainWindow, point: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    QTest.mousePress(window.canvas.viewport(), _LEFT, keys, point.toPoint())


def press(window: MainWindow, *keys: Qt.Key, held: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    for key in keys:
        QTest.keyClick(window.canvas, key, held)


def starts(plan: Plan) -> list[float]:
    """Where all plantings begin, in metres."""
    return [layout_in(plan, one.id).start / M for one in plan.plantings]


def chosen(window: MainWindow) -> tuple[str, ...]:
    """The plantings that are chosen, the first of which leads."""
    return window.sight.chosen


def held_measure(window: MainWindow) -> Measured:
    trial = window.canvas.stage.trial
    assert trial is not None
    assert trial.measured is not None
    return trial.measured


def test_ctrl_and_click_add_a_block_and_take_it_away(window: MainWindow, mouse: Mouse) -> None:
    click(window, mouse, "b1", "1.5 m", Keys.NoModifier)
    click(window, mouse, "b1", "6.5 m", Keys.ControlModifier)
    click(window, mouse, "b2", "5 m", Keys.ControlModifier)
    assert chosen(window) == ("p4", "p3", "p1")
    assert "3 plantings" in window.statusBar().currentMessage()
    assert "3 plantings" in window.canvas.accessibleDescription()
    click(window, mouse, "b1", "6.5 m", Keys.ControlModifier)
    assert chosen(window) == ("p4", "p1")
    click(window, mouse, "b1", "1.5 m", Keys.NoModifier)
    assert chosen(window) == ("p1",)
    assert window.document.stack.count() == 0


def test_a_drag_of_one_of_several_moves_them_all_as_one_step(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    click(window, mouse, "b1", "1.5 m", Keys.NoModifier)
    click(window, mouse, "b1", "3.5 m", Keys.ControlModifier)
    mouse.press("b1", "1.5 m")
    mouse.move("b1", "1.80 m")
    mouse.move("b1", "2.10 m")
    assert window.canvas.stage.trial is not None
    assert window.canvas.stage.trial.chosen == ("p1", "p2")
    assert document.plan is ROW
    mouse.release()
    assert starts(document.plan) == [1.6, 3.6, 6, 4]
    assert (document.stack.count(), document.stack.text(0)) == (1, "Move 2 plantings")
    assert chosen(window) == ("p1", "p2")
    document.stack.undo()
    assert document.plan is ROW


@pytest.mark.parametrize("held", [Keys.NoModifier, Keys.ShiftModifier, Keys.ControlModifier, Keys.AltModifier])
def test_escape_gives_back_the_very_same_plan(window: MainWindow, mouse: Mouse, held: Qt.KeyboardModifier) -> None:
    window.sight.choose(ROW, ("p1", "p2"))
    mouse.press("b1", "1.5 m")
    for reading in ("2 m", "5 m", "9 m"):
        mouse.move("b1", reading, held)
    QTest.keyClick(window.canvas, Key.Key_Escape)
    mouse.move("b1", "4 m", held)
    mouse.release()
    assert window.document.plan is ROW
    assert window.document.stack.count() == 0
    assert chosen(window) == ("p1", "p2")


def test_a_band_from_bare_soil_chooses_what_it_touches(window: MainWindow, mouse: Mouse) -> None:
    press_at(window, mouse.point("b1", "9.5 m"))
    mouse.move_to(mouse.point("b1", "3.5 m"))
    assert window.canvas.band.inside == ("p2", "p3")
    assert window.sight.planting is None
    mouse.release()
    assert set(chosen(window)) == {"p2", "p3"}
    assert window.canvas.band.rect is None


def test_a_band_from_beside_the_beds_with_ctrl_adds(window: MainWindow, mouse: Mouse) -> None:
    window.sight.select("b1", "p1")
    press_at(window, mouse.point("b2", "19.9 m") + QPointF(20, 90), Keys.ControlModifier)
    mouse.move_to(mouse.point("b2", "5 m"))
    mouse.release()
    assert chosen(window) == ("p1", "p4")


def test_escape_takes_a_band_away_and_leaves_what_was_chosen(window: MainWindow, mouse: Mouse) -> None:
    window.sight.select("b1", "p1")
    press_at(window, mouse.point("b1", "9.5 m"), Keys.ControlModifier)
    mouse.move_to(mouse.point("b1", "3.5 m"))
    QTest.keyClick(window.canvas, Key.Key_Escape)
    mouse.move_to(mouse.point("b1", "0.5 m"))
    mouse.release()
    assert chosen(window) == ("p1",)


def test_a_press_on_soil_that_hardly_moves_is_no_band(window: MainWindow, mouse: Mouse) -> None:
    press_at(window, mouse.point("b1", "9.5 m"))
    mouse.move_to(mouse.point("b1", "9.5 m") + QPointF(2, 1))
    mouse.release()
    assert (window.sight.bed, window.sight.chosen) == ("b1", ())


def test_keys_choose_several_move_and_remove_them(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Down)
    press(window, Key.Key_Down, held=Keys.ShiftModifier)
    assert chosen(window) == ("p2", "p1")
    press(window, Key.Key_Right, Key.Key_Right)
    assert starts(document.plan) == [1.1, 3.1, 6, 4]
    assert document.stack.count() == 1
    press(window, Key.Key_Delete)
    assert [one.id for one in document.plan.plantings] == ["p3", "p4"]
    assert document.stack.undoText() == "Remove 2 plantings"
    document.stack.undo()
    document.stack.undo()
    assert document.plan is ROW


def test_ctrl_a_chooses_all_of_the_bed_and_then_of_the_plan(window: MainWindow) -> None:
    press(window, Key.Key_Down)
    press(window, Key.Key_A, held=Keys.ControlModifier)
    assert chosen(window) == ("p1", "p2", "p3")
    press(window, Key.Key_A, held=Keys.ControlModifier)
    assert chosen(window) == ("p1", "p2", "p3", "p4")
    press(window, Key.Key_Escape)
    assert chosen(window) == ("p1",)


def test_ctrl_and_drag_leaves_a_copy(window: MainWindow, document: Document, mouse: Mouse) -> None:
    press_at(window, mouse.point("b1", "1.5 m"), Keys.ControlModifier)
    mouse.move("b1", "9 m", Keys.ControlModifier)
    mouse.move("b1", "9.6 m", Keys.ControlModifier)
    mouse.release()
    assert starts(document.plan) == [1, 3, 6, 4, 9.1]
    assert document.stack.undoText() == "Copy Chard"
    assert chosen(window) == ("p1-2",)


def test_ctrl_pressed_while_dragging_makes_a_copy_and_let_go_moves_again(window: MainWindow, mouse: Mouse) -> None:
    mouse.press("b1", "1.5 m")
    mouse.move("b1", "9 m")
    mouse.move("b1", "9.6 m")
    stage = window.canvas.stage
    assert stage.trial is not None
    assert not stage.trial.copies
    QTest.keyPress(window.canvas, Key.Key_Control)
    assert stage.trial.copies
    QTest.keyRelease(window.canvas, Key.Key_Control, Keys.ControlModifier)
    assert not stage.trial.copies
    QTest.keyPress(window.canvas, Key.Key_Control)
    mouse.release()
    assert len(window.document.plan.plantings) == 5


@pytest.mark.own_window
def test_copy_and_paste_plant_it_in_the_next_gap_that_holds_it(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_V, held=Keys.ControlModifier)
    assert "Copy a planting first" in window.statusBar().currentMessage()
    paste = window.registry.made("block.paste")
    assert not paste.isEnabled()
    press(window, Key.Key_Down)
    press(window, Key.Key_C, held=Keys.ControlModifier)
    assert paste.isEnabled()
    press(window, Key.Key_V, Key.Key_V, held=Keys.ControlModifier)
    assert starts(document.plan) == [1, 3, 6, 4, 4.2, 8.2]
    assert document.stack.count() == 2
    document.start(Plan(place=document.plan.place))
    assert not paste.isEnabled()


def test_shift_pushes_the_neighbours_along(window: MainWindow, document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "1.5 m")
    mouse.move("b1", "2.5 m", Keys.ShiftModifier)
    mouse.move("b1", "2.90 m", Keys.ShiftModifier)
    assert window.canvas.stage.trial is not None
    assert [one.planting for one in window.canvas.stage.trial.pushed] == ["p2"]
    mouse.release()
    assert starts(document.plan) == [2.4, 3.6, 6, 4]
    assert document.stack.count() == 1


def test_alt_and_arrows_push_and_home_and_end_butt_up(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Down, Key.Key_End)
    assert starts(document.plan) == [1.8, 3, 6, 4]
    press(window, Key.Key_Right, held=Keys.AltModifier)
    assert starts(document.plan) == [1.85, 3.05, 6, 4]
    assert "pushes B Chard 5" in window.statusBar().currentMessage()
    press(window, Key.Key_Home)
    assert starts(document.plan) == [0.3, 3.05, 6, 4]
    press(window, Key.Key_Right, held=Keys.ControlModifier | Keys.ShiftModifier)
    assert layout_in(document.plan, "p1").start == 70 * CM


def test_swap_split_and_join_from_the_menu_keys(window: MainWindow, document: Document) -> None:
    press(window, Key.Key_Down)
    press(window, Key.Key_End, held=Keys.AltModifier)
    assert starts(document.plan) == [3, 1, 6, 4]
    assert document.stack.undoText() == "Swap Chard with its neighbour"
    press(window, Key.Key_H, held=Keys.ControlModifier)
    assert starts(document.plan) == [3, 1, 6, 4, 3.6]
    assert "4 + 2 plants" in window.statusBar().currentMessage()
    press(window, Key.Key_J, held=Keys.ControlModifier)
    assert starts(document.plan) == [3, 1, 6, 4]
    assert layout_in(document.plan, "p1").plants == layout_in(ROW, "p1").plants
    press(window, Key.Key_J, held=Keys.ControlModifier)
    assert "do not touch" in window.statusBar().currentMessage()
    assert document.stack.count() == 3


def test_a_split_falls_where_the_pointer_is(window: MainWindow, document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "6.5 m")
    mouse.release()
    mouse.move("b1", "6.62 m")
    press(window, Key.Key_H, held=Keys.ControlModifier)
    assert starts(document.plan)[-1] == 6.6


@pytest.mark.parametrize(
    ("reason", "split"), [(QContextMenuEvent.Reason.Mouse, 6.6), (QContextMenuEvent.Reason.Keyboard, 6.9)]
)
def test_a_split_from_the_menu_falls_where_the_menu_was_opened(
    window: MainWindow,
    document: Document,
    mouse: Mouse,
    monkeypatch: pytest.MonkeyPatch,
    reason: QContextMenuEvent.Reason,
    split: float,
) -> None:
    """Opened by key, the menu has no place in the bed: the middle it is."""

    class Menu:
        def exec(self, _at: QPoint) -> None:
            QApplication.sendEvent(window.canvas.viewport(), QEvent(QEvent.Type.Leave))
            window.registry.made("block.split").trigger()

    monkeypatch.setattr(MainWindow, "_context_menu", lambda _window: Menu())
    mouse.press("b1", "6.5 m")
    mouse.release()
    mouse.hover(mouse.point("b1", "6.62 m"))
    at = mouse.point("b1", "6.62 m").toPoint()
    asked = QContextMenuEvent(reason, at, window.canvas.viewport().mapToGlobal(at))
    QApplication.sendEvent(window.canvas.viewport(), asked)
    assert starts(document.plan)[-1] == split
    assert window.canvas.menu_at is None


def test_measuring_by_mouse_changes_nothing(window: MainWindow, document: Document, mouse: Mouse) -> None:
    press(window, Key.Key_M, held=Keys.ControlModifier)
    mouse.drag("b1", "1.02 m", "6.03 m")
    found = held_measure(window)
    assert (found.start.x, found.end.x) == (1 * M, 6 * M)
    assert window.canvas.viewport().grab().toImage() is not None
    mouse.press("b2", "2 m")
    mouse.release()
    mouse.move("b2", "9 m")
    mouse.press("b2", "9 m")
    mouse.release()
    found = held_measure(window)
    assert (found.start.bed, found.end.x) == ("b2", 9 * M)
    press(window, Key.Key_Escape)
    assert window.canvas.stage.trial is None
    assert document.plan is ROW
    assert document.stack.count() == 0
    assert chosen(window) == ()


def test_what_is_measured_to_and_taken_away_is_no_longer_told(
    window: MainWindow, document: Document, mouse: Mouse
) -> None:
    window.sight.choose(ROW, ("p1",))
    press(window, Key.Key_C, held=Keys.ControlModifier)
    press(window, Key.Key_V, held=Keys.ControlModifier)
    copy = document.plan.plantings[-1].id
    assert chosen(window) == (copy,)
    block = layout_in(document.plan, copy)
    press(window, Key.Key_M, held=Keys.ControlModifier)
    mouse.drag(block.bed, f"{block.start / CM + 1} cm", f"{block.end / CM - 1} cm")
    assert "at an end of" in window.canvas.accessibleDescription()
    press(window, Key.Key_Z, held=Keys.ControlModifier)
    assert document.plan is ROW
    assert not window.canvas.stage.is_busy


def test_measuring_by_keys(window: MainWindow) -> None:
    press(window, Key.Key_Down)
    press(window, Key.Key_M, held=Keys.ControlModifier)
    press(window, Key.Key_Right)
    press(window, Key.Key_Down, held=Keys.ShiftModifier)
    press(window, Key.Key_Tab)
    press(window, Key.Key_Left, held=Keys.ControlModifier)
    found = held_measure(window)
    assert (found.start.x, found.end.x, found.end.y) == (30 * CM, 205 * CM, 1 * CM)
    assert "along 1.75" in window.canvas.accessibleDescription()
    bed = window.sight.bed
    press(window, Key.Key_Down, Key.Key_Down, held=Keys.ControlModifier)
    assert (window.sight.bed, held_measure(window).start.y > found.start.y) == (bed, True)
    assert window.canvas.hasFocus()
    press(window, Key.Key_Escape)
    assert not window.canvas.stage.is_busy
    assert window.canvas.accessibleDescription().startswith("Tunnel: A Chard")


def test_a_button_let_go_outside_the_window_ends_the_drag(window: MainWindow, mouse: Mouse) -> None:
    mouse.press("b1", "1.5 m")
    mouse.move("b1", "9.6 m")
    mouse.hover(mouse.point("b1", "9 m"))
    assert not window.canvas.stage.is_busy
    mouse.move("b1", "4 m")
    mouse.release()
    assert window.document.plan is ROW


def test_a_drag_far_out_of_the_window_and_back_is_one_drag(document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "1.5 m")
    for point in (QPointF(-5000, -5000), QPointF(90000, 90000), QPointF(300, -40)):
        mouse.move_to(point)
    mouse.release()
    assert document.plan is ROW
    mouse.press("b1", "1.5 m")
    mouse.move_to(QPointF(90000, 90000))
    mouse.move("b1", "9.6 m")
    mouse.release()
    assert starts(document.plan)[0] == 9.1


def test_a_bed_of_a_centimetre_beside_one_of_half_a_kilometre(window: MainWindow, document: Document) -> None:
    beds = [
        {"id": "b1", "name": "Long", "length": "500 m", "width": "75 cm"},
        {"id": "b2", "name": "Tiny", "length": "1 cm", "width": "1 cm"},
    ]
    plan = ground(block("1 m", "300 m"), block("400 m", "3 m"), beds=beds)
    document.start(plan)
    mouse = Mouse(window.canvas)
    window.sight.choose(plan, ("p1", "p2"))
    for reading, bed in (("100 m", "b1"), ("0 cm", "b2"), ("450 m", "b1")):
        mouse.press("b1", "50 m")
        mouse.move("b1", "60 m", Keys.ShiftModifier)
        mouse.move(bed, reading, Keys.ControlModifier | Keys.ShiftModifier)
        QTest.keyClick(window.canvas, Key.Key_Escape)
        mouse.release()
    assert document.plan is plan
    window.sight.select("b2")
    press(window, Key.Key_M, held=Keys.ControlModifier)
    press(window, Key.Key_Right, Key.Key_Left, Key.Key_Up, Key.Key_Tab, Key.Key_Right)
    assert held_measure(window).end.x <= 1 * CM
    assert window.canvas.viewport().grab().width() > 0
    assert parse_length("1 cm").nm == plan.beds[1].length.nm


def test_hundreds_of_beds_are_chosen_and_moved_together(window: MainWindow, document: Document) -> None:
    beds = [
        {"id": f"b{number}", "name": f"Bed {number}", "length": "20 m", "width": "75 cm"} for number in range(200)
    ]
    plan = ground(*(block("1 m", "2 m", bed=f"b{number}") for number in range(200)), beds=beds)
    document.start(plan)
    window.sight.select("b0", "p1")
    press(window, Key.Key_A, Key.Key_A, held=Keys.ControlModifier)
    assert len(window.sight.chosen) == 200
    press(window, Key.Key_Right)
    assert set(starts(document.plan)) == {1.05}
    assert document.stack.undoText() == "Move 200 plantings"
    document.stack.undo()
    assert document.plan is plan


def test_the_panel_says_that_more_are_chosen(window: MainWindow, document: Document) -> None:
    window.sight.choose(ROW, ("p1", "p2", "p3"))
    panel = window.inspector.planting
    named = panel.title.text().replace("  ", " ")
    assert panel.together.text().startswith(f"The fields below are those of {named} alone; 2 more are chosen\n")
    field = panel.form.fields["from"]
    field.setText("1.5 m + 20 cm")
    QTest.keyClick(field, Key.Key_Return)
    assert starts(document.plan) == [1.7, 3, 6, 4]
    assert "2 more are chosen" in panel.together.text()
    assert field.text() == "1.5 m + 20 cm"
    window.sight.choose(document.plan, ("p1",))
    assert panel.together.text() == ""
    assert panel.together.isHidden()


def test_the_panel_sums_up_what_is_chosen_on_the_day_that_is_shown(window: MainWindow, document: Document) -> None:
    spring: dict[str, object] = {"in_ground": "2027-03-01", "out": "2027-05-01"}
    plan = ground(
        block("30 cm", "1.5 m", **spring), block("3 m", "3 m", **spring), block("8 m", "1 m", in_ground="2027-04-01")
    )
    document.start(plan)
    window.sight.show_day(plan.plantings[0].in_ground)
    window.sight.choose(plan, ("p1", "p2"))
    said = window.inspector.planting.together
    assert (
        said.text()
        .replace("\u2009", " ")
        .endswith("Together: 30 plants · 0.30 – 6.00 m · 4.50 m of bed · 6.90 m left in 2 pieces on 1 Mar")
    )
    window.sight.show_day(plan.plantings[2].in_ground)
    assert said.text().replace("\u2009", " ").endswith("4.50 m of bed · 5.90 m left in 3 pieces on 1 Apr")


@pytest.mark.parametrize(
    ("name", "typed", "cm"),
    [("from", "2 m - 1' 6\"", 15428), ("to", "1 m + 1 m + 5 in", 21270), ("length", "1 + 0.5", 15000)],
)
def test_sums_are_typed_into_the_panel(
    window: MainWindow, document: Document, name: str, typed: str, cm: int
) -> None:
    window.sight.select("b1", "p1")
    field = window.inspector.planting.form.fields[name]
    field.setText(typed)
    QTest.keyClick(field, Key.Key_Return)
    block = layout_in(document.plan, "p1")
    found = {"from": block.start, "to": block.end, "length": block.length}[name]
    assert found == cm * CM // 100
    assert not field.complaint.text()


def test_a_sum_that_is_wrong_is_said_at_the_field_and_the_plan_stays(window: MainWindow, document: Document) -> None:
    window.sight.select("b1", "p1")
    field = window.inspector.planting.form.fields["length"]
    field.setText("2 m + 15 furlongs")
    QTest.keyClick(field, Key.Key_Return)
    assert "“15 furlongs” is no length" in field.complaint.text()
    assert document.plan is ROW
    QTest.keyClick(field, Key.Key_Escape)
    assert field.text() == "1 m"


def test_a_typed_reading_splits_the_block(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[str, dict[str, str]]] = []

    def answer(dialog: AskDialog) -> int:
        line = dialog.fields["at"]
        assert isinstance(line, QLineEdit)
        for text in ("9 m", "nonsense", "6 m + 60 cm"):
            line.setText(text)
            dialog._try()
            asked.append((text, {name: label.text() for name, label in dialog._complaints.items() if label.text()}))
        return 1

    monkeypatch.setattr(AskDialog, "exec", answer)
    window.sight.select("b1", "p3")
    press(window, Key.Key_H, held=Keys.ControlModifier | Keys.ShiftModifier)
    assert [bool(wrong) for _text, wrong in asked] == [True, True, False]
    assert "does not lie inside Chard" in asked[0][1]["at"]
    assert starts(document.plan)[-1] == 6.6
    assert document.stack.undoText() == "Split Chard"


def test_alt_with_up_and_down_moves_into_the_other_bed(window: MainWindow, document: Document) -> None:
    window.sight.choose(ROW, ("p1", "p3"))
    press(window, Key.Key_Down, held=Keys.AltModifier)
    assert document.plan is ROW
    assert "into" in window.statusBar().currentMessage()
    window.sight.choose(ROW, ("p1",))
    press(window, Key.Key_Down, held=Keys.AltModifier)
    assert [one.bed for one in document.plan.plantings] == ["b2", "b1", "b1", "b2"]
    assert starts(document.plan) == starts(ROW)
    press(window, Key.Key_Down, held=Keys.AltModifier)
    assert window.statusBar().currentMessage() == "Field: there is no bed there"
    press(window, Key.Key_Up, held=Keys.AltModifier)
    assert document.plan == ROW


def test_what_stands_up_against_its_neighbour_says_so(window: MainWindow, document: Document) -> None:
    window.sight.choose(ROW, ("p1",))
    press(window, Key.Key_End, Key.Key_End)
    assert window.statusBar().currentMessage() == "Chard stands up against it already"
    assert document.stack.count() == 1


def test_while_measuring_no_key_changes_the_plan(window: MainWindow, document: Document) -> None:
    window.sight.choose(ROW, ("p1",))
    press(window, Key.Key_M, held=Keys.ControlModifier)
    press(window, Key.Key_Delete, Key.Key_Backspace, Key.Key_Home, Key.Key_Insert, Key.Key_Return)
    assert document.plan is ROW
    assert window.canvas.stage.is_measuring


def test_a_pointer_left_behind_does_not_hinder_a_split(window: MainWindow, document: Document, mouse: Mouse) -> None:
    mouse.press("b1", "6.5 m")
    mouse.release()
    mouse.hover(mouse.point("b1", "6.1 m"))
    press(window, *[Key.Key_Right] * 10)
    press(window, Key.Key_H, held=Keys.ControlModifier)
    assert starts(document.plan)[2:] == [6.5, 4, 7.4]


def test_what_another_day_hides_is_no_longer_chosen_beside_the_first(window: MainWindow, document: Document) -> None:
    spring, summer = (
        {"in_ground": "2027-03-01", "out": "2027-05-01"},
        {"in_ground": "2027-06-01", "out": "2027-09-01"},
    )
    plan = ground(block("1 m", "1 m", **spring), block("3 m", "1 m", **summer), block("6 m", "1 m", **spring))
    document.start(plan)
    window.sight.show_day(None)
    window.sight.choose(plan, ("p1", "p2", "p3"))
    window.sight.show_day(plan.plantings[0].in_ground)
    assert chosen(window) == ("p1", "p3")


def test_letters_marks_and_colours_stay_while_a_block_is_dragged_past_another(
    window: MainWindow, mouse: Mouse
) -> None:
    before = looks(window.document.plan)
    mouse.press("b1", "1.5 m")
    mouse.move("b1", "9.5 m")
    assert window.canvas._scene().look == before
    mouse.release()
    assert looks(window.document.plan)["p1"].letter == "C"


def test_a_copy_in_the_hand_has_the_next_free_letter(window: MainWindow, mouse: Mouse) -> None:
    before = looks(window.document.plan)
    mouse.press("b1", "3.5 m")
    mouse.move("b1", "5.2 m", Keys.ControlModifier)
    trial = window.canvas.stage.trial
    assert trial is not None
    assert trial.planting is not None
    assert window.canvas._scene().look[trial.planting].letter == "E"
    assert {name: look for name, look in window.canvas._scene().look.items() if name in before} == before
    mouse.release()
