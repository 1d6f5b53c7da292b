"""The document: one door, one step for each change, the very same plans on the way back."""

from itertools import pairwise
from pathlib import Path

import pytest
from attrs import evolve
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication

from gardenplot.errors import FileError
from gardenplot.plan import Plan, Planting, planting_of
from gardenplot.plan.edits import change_place, move_planting
from gardenplot.plan.file import read_plan
from gardenplot.units import parse_length
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.plans import feet_plan, metric_plan


@pytest.fixture
def document() -> Document:
    """A document without a window."""
    fresh = Document()
    fresh.start(metric_plan())
    return fresh


def named(document: Document, name: str) -> Plan:
    return change_place(document.plan, name=name)


def moved(document: Document, start: str) -> Plan:
    return move_planting(document.plan, "p1", "b1", parse_length(start))


def planting(document: Document) -> Planting:
    return planting_of(document.plan, "p1")


def test_a_change_makes_one_step_by_its_name_and_tells_of_both_plans(document: Document) -> None:
    told: list[tuple[Plan, Plan]] = []
    document.changed.connect(lambda before, after: told.append((before, after)))
    before, after = document.plan, named(document, "Upper Sill, east")
    assert document.change("Name of the place", after)
    assert document.plan is after
    assert [document.stack.text(number) for number in range(document.stack.count())] == ["Name of the place"]
    assert len(told) == 1
    assert told[0][0] is before
    assert told[0][1] is after


def test_an_equal_plan_makes_no_step_and_takes_no_plan_s_place(document: Document) -> None:
    before = document.plan
    assert not document.change("Nothing", before)
    assert not document.change("Nothing", evolve(before, place=evolve(before.place)))
    assert document.plan is before
    assert document.stack.count() == 0


def test_a_thousand_steps_go_back_and_forth_over_the_very_same_plans(document: Document) -> None:
    plans = [document.plan]
    for number in range(1000):
        document.change(f"step {number}", named(document, f"place {number}"))
        plans.append(document.plan)
    assert document.stack.count() == 1000
    for plan in reversed(plans[:-1]):
        document.stack.undo()
        assert document.plan is plan
    for plan in plans[1:]:
        document.stack.redo()
        assert document.plan is plan
    assert all(before is not after for before, after in pairwise(plans))


def test_nudges_in_a_row_are_one_step(document: Document) -> None:
    begun = document.plan
    for start in ("40 cm", "50 cm", "60 cm"):
        document.change("Move Pak choi", moved(document, start), "nudge p1")
    last = document.plan
    assert document.stack.count() == 1
    document.stack.undo()
    assert document.plan is begun
    document.stack.redo()
    assert document.plan is last


def test_another_change_between_nudges_keeps_them_apart(document: Document) -> None:
    document.change("Move Pak choi", moved(document, "40 cm"), "nudge p1")
    document.change("Name of the place", named(document, "Sill"))
    document.change("Move Pak choi", moved(document, "50 cm"), "nudge p1")
    document.change("Move Leek", move_planting(document.plan, "p2", "b2", parse_length("40 cm")), "nudge p2")
    assert document.stack.count() == 4


def test_nudges_that_end_where_they_began_leave_no_step(document: Document) -> None:
    begun = planting(document)
    document.change("Move Pak choi", moved(document, "40 cm"), "nudge p1")
    document.change("Move Pak choi", moved(document, "30 cm"), "nudge p1")
    assert planting(document) == begun
    assert document.stack.count() == 0


def test_only_the_plan_that_was_saved_counts_as_saved(document: Document, tmp_path: Path) -> None:
    assert document.is_saved
    document.change("Name of the place", named(document, "Sill"))
    assert not document.is_saved
    document.save(tmp_path / "sill.gardenplot")
    assert document.is_saved
    document.stack.undo()
    assert not document.is_saved
    document.stack.redo()
    assert document.is_saved


def test_saving_tells_and_writes_what_is_read_back_equal(document: Document, tmp_path: Path) -> None:
    told: list[bool] = []
    document.saved.connect(lambda: told.append(document.is_saved))
    document.save(tmp_path / "sill.gardenplot")
    assert told == [True]
    assert document.path == tmp_path / "sill.gardenplot"
    assert read_plan(tmp_path / "sill.gardenplot").plan == document.plan


def test_opening_begins_anew_under_the_file_s_name(document: Document, tmp_path: Path) -> None:
    document.save(tmp_path / "sill.gardenplot")
    saved = document.plan
    document.start(feet_plan())
    document.change("Name of the place", named(document, ""))
    assert document.open(tmp_path / "sill.gardenplot") == ()
    assert document.plan == saved
    assert document.is_saved
    assert document.stack.count() == 0
    assert document.name == "Upper Sill"


def test_a_file_that_cannot_be_read_leaves_plan_and_steps(document: Document, tmp_path: Path) -> None:
    bad = tmp_path / "bad.gardenplot"
    bad.write_text('{"gardenplot": 1, "beds": [{"id": "b"}]}')
    document.change("Name of the place", named(document, "Sill"))
    plan = document.plan
    with pytest.raises(FileError, match=r"bad\.gardenplot: beds"):
        document.open(bad)
    assert document.plan is plan
    assert document.path is None
    assert document.stack.undoText() == "Name of the place"


def test_a_file_that_cannot_be_written_leaves_the_plan_unsaved(document: Document, tmp_path: Path) -> None:
    document.change("Name of the place", named(document, "Sill"))
    with pytest.raises(FileError, match="cannot be written"):
        document.save(tmp_path / "nowhere" / "sill.gardenplot")
    assert document.path is None
    assert not document.is_saved


def test_a_window_that_ends_with_steps_to_undo_says_no_more(dressed: QApplication) -> None:
    # What went wrong in a slot would fail this test.
    shown = MainWindow()
    shown.document.start(metric_plan())
    shown.show()
    for name in ("One", "Two"):
        shown.document.change(name, change_place(shown.document.plan, name=name))
    told: list[int] = []
    shown.document.stack.indexChanged.connect(told.append)
    shown.deleteLater()
    dressed.sendPostedEvents(shown, QEvent.Type.DeferredDelete)
    assert told == []
