"""The list of steps: by name, gone through by click and Return, the saved one marked, and none that does nothing."""

from itertools import pairwise
from pathlib import Path
from typing import Any

from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_place
from gardenplot.window.document import Document, Step
from gardenplot.window.main import MainWindow
from tests.plan.test_edits import ATTEMPTS
from tests.plans import metric_plan, plans


def words(window: MainWindow) -> list[str]:
    model = window.steps.model()
    return [str(model.index(row, 0).data()) for row in range(model.rowCount())]


def rename(document: Document, *names: str) -> None:
    for name in names:
        document.change(f"Name {name}", change_place(document.plan, name=name))


def dock(window: MainWindow) -> Any:
    return next(one for one in window.panels.docks if one.objectName() == "steps")


def test_it_is_closed_at_first_and_opens_from_the_menu(window: MainWindow) -> None:
    assert dock(window).isHidden()
    window.registry.made("view.steps").trigger()
    assert dock(window).isVisible()


def test_steps_stand_by_name_below_the_plan_as_it_was_opened(window: MainWindow, document: Document) -> None:
    rename(document, "a", "b")
    assert words(window) == ["The plan as it was opened", "Name a", "Name b"]
    assert window.steps.currentIndex().row() == 2


def test_a_click_goes_back_and_return_goes_forward_to_the_very_same_plans(
    window: MainWindow, document: Document
) -> None:
    begun = document.plan
    rename(document, "a", "b", "c")
    last = document.plan
    dock(window).show()
    model = window.steps.model()
    at = window.steps.visualRect(model.index(0, 0)).center()
    QTest.mouseClick(window.steps.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert document.plan is begun
    assert words(window)[1:] == ["Name a", "Name b", "Name c"]
    window.steps.setFocus()
    QTest.keyClick(window.steps, Qt.Key.Key_End)
    QTest.keyClick(window.steps, Qt.Key.Key_Return)
    assert document.plan is last


def test_the_saved_step_is_marked_wherever_one_goes(window: MainWindow, document: Document, tmp_path: Path) -> None:
    rename(document, "a", "b")
    document.save(tmp_path / "kept.gardenplot")
    rename(document, "c")
    assert words(window)[1:] == ["Name a", "Name b  ·  saved", "Name c"]
    document.stack.setIndex(0)
    assert words(window)[2] == "Name b  ·  saved"
    assert not document.is_saved
    document.stack.setIndex(2)
    assert document.is_saved
    document.stack.setIndex(1)
    rename(document, "d")
    assert words(window)[1:] == ["Name a", "Name d"]


def test_a_nudge_after_saving_is_a_step_of_its_own(document: Document, tmp_path: Path) -> None:
    document.change("Nudge", change_place(document.plan, name="a"), "nudge")
    document.save(tmp_path / "kept.gardenplot")
    document.change("Nudge", change_place(document.plan, name="b"), "nudge")
    assert document.stack.count() == 2
    document.stack.undo()
    assert document.is_saved


def test_nudges_that_end_where_they_began_leave_the_plan_saved(document: Document) -> None:
    name = document.plan.place.name
    document.change("Nudge", change_place(document.plan, name="a"), "nudge")
    document.change("Nudge", change_place(document.plan, name=name), "nudge")
    assert document.stack.count() == 0
    assert document.is_saved


@given(st.data(), plans())
def test_no_step_leaves_the_plan_as_it_was(data: st.DataObject, begun: Plan) -> None:
    """Random edits, merged or not, with steps back between them: each step that is left changes the plan."""
    document = Document()
    document.start(begun)
    for _turn in range(data.draw(st.integers(1, 6))):
        edit = data.draw(st.sampled_from([*ATTEMPTS, "undo", "redo"]))
        if edit in ("undo", "redo"):
            getattr(document.stack, edit)()
            continue
        try:
            after = ATTEMPTS[edit](document.plan, data)
        except PlanError:
            continue
        document.change(edit, after, data.draw(st.sampled_from(["", "a", "b"])))
    reached = document.plan
    document.stack.setIndex(0)
    for number in range(document.stack.count()):
        before = document.plan
        step = document.stack.command(number)
        assert isinstance(step, Step)
        document.stack.redo()
        assert document.plan != before, step.text()
    assert any(one == reached for one in _all_plans(document))


def _all_plans(document: Document) -> list[Plan]:
    found = []
    for number in range(document.stack.count() + 1):
        document.stack.setIndex(number)
        found.append(document.plan)
    return found


def test_the_hand_s_keys_leave_no_step_that_does_nothing(window: MainWindow, document: Document) -> None:
    """To and fro, ranks off and on, a field typed as it stands: nothing is left of any of it."""
    held = Qt.KeyboardModifier
    window.canvas.setFocus()
    QTest.keyClick(window.canvas, Qt.Key.Key_Down)
    for key, keys in (
        (Qt.Key.Key_Right, held.NoModifier),
        (Qt.Key.Key_Left, held.NoModifier),
        (Qt.Key.Key_Left, held.ControlModifier),
        (Qt.Key.Key_Right, held.ControlModifier),
    ):
        QTest.keyClick(window.canvas, key, keys)
    for field in window.inspector.planting.form.fields.values():
        if field.isVisible():
            shown = field.text()
            field.setFocus()
            field.selectAll()
            QTest.keyClicks(field, f"{shown} ")
            QTest.keyClick(field, Qt.Key.Key_Return)
    left = [document.stack.text(number) for number in range(document.stack.count())]
    seen = _all_plans(document)
    assert all(one != other for one, other in pairwise(seen)), left
    assert metric_plan() == seen[0]
