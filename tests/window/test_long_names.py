"""Names of 300 letters, in one word or in many, move nothing out of sight in a small window."""

from attrs import evolve
from PySide6.QtWidgets import QApplication, QScrollArea

from gardenplot.plan.edits import change_bed, change_place
from tests.plans import metric_plan
from tests.window.conftest import closed, made
from tests.window.walk import is_whole, settle

WORD, WORDS = "W" * 300, "The long bed behind the old glasshouse " * 8


def test_names_of_300_letters_leave_fields_buttons_and_counts_in_sight(dressed: QApplication) -> None:
    shown = made(change_bed(change_place(metric_plan(), name=WORD), "b1", name=WORDS), (1024, 700))
    settle(shown)
    assert is_whole(shown.header.sheet)
    assert is_whole(shown.inspector.plan.form.fields["place"])
    counts = shown.ledger.counts
    assert sum(counts.columnWidth(at) for at in range(counts.columnCount())) <= counts.viewport().width()
    shown.sight.select("b1")
    settle(shown)
    assert is_whole(shown.inspector.bed.form.fields["name"])
    first, *others = shown.document.plan.crops
    shown.document.change("Rename", evolve(shown.document.plan, crops=(evolve(first, name=WORD), *others)))
    shown.sight.select("b1", "p1")
    settle(shown)
    area = shown.inspector.currentWidget()
    assert isinstance(area, QScrollArea)
    assert shown.inspector.planting.width() <= area.viewport().width()
    closed(shown, dressed)
