"""Where the place lies and when it freezes, typed into the plan's panel; families of earlier seasons into a bed's."""

import pytest

from gardenplot.findings import Kind, find_all
from gardenplot.plan import MonthDay, bed_of
from gardenplot.plan.edits import change_crop
from gardenplot.season import dates_of
from gardenplot.window.document import Document
from gardenplot.window.fields import Typed
from gardenplot.window.main import MainWindow
from tests.window.shared_window import window
from tests.window.test_panels import finish

__all__ = ["window"]


@pytest.fixture
def fields(window: MainWindow) -> dict[str, Typed]:
    """The fields of the place, with nothing selected."""
    window.sight.select(None)
    return window.inspector.plan.place.fields


def test_what_is_typed_about_the_place_is_the_plans_and_undone_step_by_step(
    document: Document, fields: dict[str, Typed]
) -> None:
    before = document.plan
    typed = {"latitude": "44.8 N", "longitude": "85.6 W", "time_zone": "America/Detroit", "family_gap": "2"}
    freezes = {"last_freeze_50": "18 May", "last_freeze_10": "06-01", "last_hard_freeze_50": "Apr 24"}
    for name, text in (typed | freezes | {"first_freeze_50": "4 October"}).items():
        finish(fields[name], text)
    place = document.plan.place
    assert (place.latitude, place.longitude, place.time_zone, place.family_gap) == (44.8, -85.6, "America/Detroit", 2)
    assert [day for _share, day in place.last_freeze] == [MonthDay(5, 18), MonthDay(6, 1)]
    assert [day for _share, day in place.last_hard_freeze] == [MonthDay(4, 24)]
    assert [day for _share, day in place.first_freeze] == [MonthDay(10, 4)]
    assert fields["last_freeze_10"].text() == "1 Jun"
    while document.stack.canUndo():
        document.stack.undo()
    assert document.plan is before


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("time_zone", "Mars/Olympus", "no time zone"),
        ("latitude", "95", "does not lie between"),
        ("last_freeze_50", "spring", "no day of the year"),
        ("first_freeze_10", "31 Sep", "the year has no"),
    ],
)
def test_what_a_place_cannot_have_is_told_at_its_field(
    document: Document, fields: dict[str, Typed], name: str, text: str, says: str
) -> None:
    finish(fields[name], text)
    assert says in fields[name].complaint.text()
    assert fields[name].text() == text
    assert document.stack.count() == 0


def test_short_days_can_be_made_to_count(window: MainWindow, document: Document) -> None:
    window.sight.select(None)
    document.start(change_crop(document.plan, "leek", field_days=300))
    leek, form = document.plan.plantings[1], window.inspector.plan.place
    later = dates_of(document.plan, leek).ready
    assert form.short_days.currentText() == "do not count"
    form.short_days.setCurrentText("count as others do")
    form.short_days.activated.emit(form.short_days.currentIndex())
    assert document.plan.place.short_days_count
    earlier = dates_of(document.plan, leek).ready
    assert later is not None
    assert earlier is not None
    assert earlier < later
    document.stack.undo()
    assert form.short_days.currentText() == "do not count"


def test_a_family_that_comes_back_too_soon_is_found_once_the_bed_remembers_it(
    window: MainWindow, document: Document
) -> None:
    document.start(change_crop(document.plan, "pak-choi", family="Brassicaceae"))
    window.sight.select("b1")
    field = window.inspector.bed.form.fields["history"]
    finish(field, "Brassicaceae")
    assert "no season with a family" in field.complaint.text()
    finish(field, "2025 Brassicaceae, 2024 Solanaceae (tomato)")
    assert [(past.season, past.family, past.crop) for past in bed_of(document.plan, "b1").history] == [
        (2025, "Brassicaceae", ""),
        (2024, "Solanaceae", "tomato"),
    ]
    found = [one for one in find_all(document.plan) if one.kind is Kind.FAMILY]
    assert [(one.bed, one.planting, one.amount) for one in found] == [("b1", "p1", 1)]
    assert document.stack.count() == 1
