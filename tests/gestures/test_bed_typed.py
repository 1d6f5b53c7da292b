"""A bed that is typed: usual sizes, units of their own, and what is wrong told at its answer."""

import pytest

from gardenplot.errors import PlanError
from gardenplot.gestures.bed_typed import SIZES, bed_from, type_bed
from gardenplot.units import Units, parse_length
from tests.gestures.hand import ground

NOTHING = {"name": "", "length": "", "width": "", "margin": "", "gap": ""}


@pytest.mark.parametrize("units", Units)
def test_what_is_left_empty_has_its_usual_size(units: Units) -> None:
    after, wrong = type_bed(ground(units=units), NOTHING)
    assert after is not None, wrong
    bed, size = after.beds[-1], SIZES[units]
    assert (bed.name, bed.length.text, bed.width.text) == (f"Bed {len(after.beds)}", size.length, size.width)
    assert (bed.head_margin, bed.foot_margin, bed.gap) == (None, None, None)


def test_a_number_alone_takes_the_unit_of_the_size_shown() -> None:
    after, wrong = type_bed(
        ground(units=Units.FEET_AND_INCHES), NOTHING | {"length": "40", "width": "30", "gap": "6"}
    )
    assert after is not None, wrong
    bed = after.beds[-1]
    assert (bed.length.text, bed.width.text, str(bed.gap)) == ("40 ft", "30 in", "6 in")


@pytest.mark.parametrize(
    ("texts", "told"),
    [
        ({"length": "long", "width": "wide"}, {"length": "“long” is no length", "width": "“wide” is no length"}),
        ({"length": "0"}, {"length": "a bed needs a size"}),
        ({"margin": "some"}, {"margin": "“some” is no length"}),
        ({"gap": "some"}, {"gap": "“some” is no length"}),
        ({"length": "1 m", "margin": "60 cm"}, {"margin": "the end margins leave nothing"}),
        ({"width": "0.5 mm"}, {"width": "too small"}),
    ],
)
def test_what_is_wrong_is_told_at_its_answer(texts: dict[str, str], told: dict[str, str]) -> None:
    after, wrong = type_bed(ground(), NOTHING | texts)
    assert after is None
    assert wrong.keys() == told.keys()
    assert all(words in wrong[name] and "beds[" not in wrong[name] for name, words in told.items())


def test_a_bed_is_made_from_typed_texts() -> None:
    bed = bed_from("New", {"length": "12 m", "width": "75", "margin": "30", "gap": ""}, ground())
    assert (bed.length.text, bed.width.text, bed.gap) == ("12 m", "75 cm", None)
    assert bed.head_margin == bed.foot_margin == parse_length("30 cm")
    with pytest.raises(PlanError, match="a length is needed"):
        bed_from("New", {"length": "12 m"}, ground())
