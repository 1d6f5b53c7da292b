"""A new plan from four answers: all of them, none of them, and wrong ones."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.gestures.bed_typed import SIZES
from gardenplot.gestures.begun import begin
from gardenplot.layout import lay_out_plan
from gardenplot.plan import crop_of
from gardenplot.plan.catalogue import Entry, entries
from gardenplot.plan.valid import faults
from gardenplot.units import Units

NOTHING = {"name": "", "beds": "", "length": "", "width": "", "margin": ""}


@pytest.mark.parametrize("units", Units)
def test_no_answer_but_the_units_gives_beds_as_they_were_shown(units: Units) -> None:
    begun, wrong = begin(NOTHING, units, "")
    assert begun is not None
    assert not wrong
    size = SIZES[units]
    assert [(str(bed.length), str(bed.width)) for bed in begun.plan.beds] == [(size.length, size.width)] * 3
    assert begun.plan.place.units is units
    assert begun.planting is None


@given(st.sampled_from(Units), st.sampled_from(entries()))
def test_any_crop_of_the_catalogue_stands_in_a_first_bed_that_is_wide_enough(units: Units, entry: Entry) -> None:
    name = entry.crop.name
    begun, wrong = begin(NOTHING | {"width": "6 ft"}, units, name.upper())
    assert begun is not None, wrong
    (planting,) = begun.plan.plantings
    assert (planting.id, planting.bed) == (begun.planting, begun.plan.beds[0].id)
    assert crop_of(begun.plan, planting.crop).name == name
    assert lay_out_plan(begun.plan)[0].layouts[0].plants > 0
    assert not list(faults(begun.plan))


@pytest.mark.parametrize(
    ("texts", "crop", "field", "told"),
    [
        ({"beds": "none"}, "", "beds", "no whole number"),
        ({"beds": "0"}, "", "beds", "1 to 200 beds"),
        ({"beds": "201"}, "", "beds", "1 to 200 beds"),
        ({"length": "long"}, "", "length", "no length"),
        ({"width": "0 cm"}, "", "width", "a bed needs a size"),
        ({"margin": "some"}, "", "margin", "no length"),
        ({"length": "1 m", "margin": "60 cm"}, "", "margin", "margin"),
        ({}, "Moonberry", "crop", "“Moonberry” is no crop"),
        ({}, "Tomato, cordon", "crop", "needs 1.07\u2009m of width"),
        ({"length": "10 cm"}, "Leek", "crop", "no gap for Leek"),
    ],
)
def test_what_is_wrong_is_told_at_its_answer(texts: dict[str, str], crop: str, field: str, told: str) -> None:
    begun, wrong = begin(NOTHING | texts, Units.METRIC, crop)
    assert begun is None
    assert list(wrong) == [field]
    assert told in wrong[field]


@pytest.mark.parametrize(
    ("units", "sizes"),
    [
        (Units.METRIC, ("120 m", "75 cm", "20 cm")),
        (Units.FEET_AND_INCHES, ("120 ft", "75 in", "20 ft")),
        (Units.DECIMAL_FEET, ("120 ft", "75 ft", "20 ft")),
    ],
)
def test_a_number_alone_takes_the_unit_of_the_size_that_was_shown(units: Units, sizes: tuple[str, ...]) -> None:
    begun, wrong = begin(NOTHING | {"length": "120", "width": "75", "margin": "20"}, units, "")
    assert begun is not None, wrong
    bed = begun.plan.beds[0]
    assert (str(bed.length), str(bed.width), str(bed.head_margin)) == sizes


def test_several_wrong_answers_are_all_told() -> None:
    _begun, wrong = begin(NOTHING | {"beds": "x", "length": "y"}, Units.FEET_AND_INCHES, "z")
    assert set(wrong) == {"beds", "length", "crop"}
