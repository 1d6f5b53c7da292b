"""Spacings dimensioned in a block: those of the plants, in sight, and shown only from near."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.handles import Zoom
from gardenplot.drawing.shape_words import size_words
from gardenplot.drawing.spacings import spacings
from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.layout.positions import positions
from gardenplot.plan import Direction, Pattern, Plan
from gardenplot.plan.edits import change_planting
from gardenplot.units import CM, FOOT, MM, M, Units
from gardenplot.units.figures import apart, as_measured
from tests.drawing.hand_worked import plan_from
from tests.plans import metric_plan, plans


def bed_with(pattern: Pattern, direction: Direction = Direction.ALONG) -> LaidOut:
    return lay_out_plan(change_planting(metric_plan(), "p1", pattern=pattern, direction=direction))[0]


@pytest.mark.parametrize(
    ("pattern", "direction"),
    [(Pattern.STRAIGHT, Direction.ALONG), (Pattern.STAGGERED, Direction.ALONG), (Pattern.STRAIGHT, Direction.ACROSS)],
)
def test_from_near_a_spacing_in_the_row_and_one_between_rows_are_dimensioned(
    pattern: Pattern, direction: Direction
) -> None:
    laid = bed_with(pattern, direction)
    layout = laid.layout_of("p1")
    found = spacings(layout, Zoom(0.5, 0.5), (3 * M, 5 * M), (0, laid.bed.width.nm), Units.METRIC)
    assert [one.words for one in found] == [
        str(apart(layout.grid.in_row, Units.METRIC)),
        str(apart(layout.grid.between, Units.METRIC)),
    ]


def test_a_spacing_is_dimensioned_as_it_was_typed_and_one_that_no_tape_has_is_rounded() -> None:
    """In 29 13/16 in three rows 13 3/16 in apart lie 1.72 in from the edges; 5/64 in is nearest to an eighth."""
    place = {"units": "feet and inches"}
    bed = {"id": "b1", "name": "Bed", "length": "20 ft", "width": "29 13/16 in"}
    crop = {"id": "a", "name": "Fennel", "in_row": "7 3/16 in", "row_spacing": "13 3/16 in", "edge": "1 in"}
    beet = {"id": "b", "name": "Beet", "in_row": "6 5/64 in", "row_spacing": "13 in", "edge": "1 in"}
    plan = plan_from(place, beds=[bed], crops=[crop, beet], plantings=[
        {"id": "p1", "bed": "b1", "crop": "a", "from": "0 ft", "length": "9 ft"},
        {"id": "p2", "bed": "b1", "crop": "b", "from": "10 ft", "length": "9 ft"}])  # fmt: skip
    (laid,) = lay_out_plan(plan)
    told = [
        [plain(one.words) for one in spacings(layout, Zoom(1, 1), (x * FOOT, (x + 4) * FOOT), (0, laid.bed.width.nm),
                                              Units.FEET_AND_INCHES)]
        for layout, x in zip(laid.layouts, (2, 12), strict=True)
    ]  # fmt: skip
    assert told == [["7 3/16″", "13 3/16″"], ["6⅛″", "13″"]]
    assert plain(size_words(laid.bed, Units.FEET_AND_INCHES, as_measured)) == "20′ 0″ × 2′ 5 13/16″"


def plain(words: str) -> str:
    return words.replace("\u2009", " ")


@pytest.mark.parametrize("pattern", [Pattern.CELLS, Pattern.BROADCAST])
def test_what_has_no_plants_in_rows_has_no_spacings(pattern: Pattern) -> None:
    laid = bed_with(pattern)
    assert not spacings(laid.layout_of("p1"), Zoom(1, 1), (0, 20 * M), (0, laid.bed.width.nm), Units.METRIC)


def test_from_afar_and_beside_the_block_nothing_is_dimensioned() -> None:
    laid = bed_with(Pattern.STRAIGHT)
    layout, width = laid.layout_of("p1"), (0, laid.bed.width.nm)
    assert not spacings(layout, Zoom(0.05, 0.1), (0, 20 * M), width, Units.METRIC)
    assert not spacings(layout, Zoom(1, 1), (layout.end, layout.end + M), width, Units.METRIC)
    assert not spacings(layout, Zoom(1, 1), (0, 20 * M), (-2 * M, -M), Units.METRIC)


@settings(max_examples=60)
@given(plans(), st.floats(0, 1), st.integers(10, 400), st.floats(0.1, 3))
def test_what_is_dimensioned_is_in_sight_and_measures_what_it_says(
    plan: Plan, middle: float, reach: int, scale: float
) -> None:
    for laid in lay_out_plan(plan):
        at, across = round(middle * laid.bed.length.nm), (0, laid.bed.width.nm)
        along = at - reach * CM, at + reach * CM
        for layout in laid.layouts:
            for one in spacings(layout, Zoom(scale, scale), along, across, Units.METRIC):
                long = abs(one.end[0] - one.start[0]) + abs(one.end[1] - one.start[1])
                assert one.words == str(apart(long, Units.METRIC))
                assert long / MM * scale >= 40
                assert all(along[0] <= x <= along[1] for x, _y in (one.start, one.end))
            in_row = spacings(layout, Zoom(scale, scale), along, across, Units.METRIC)[:1]
            if in_row and in_row[0].feet != (in_row[0].start, in_row[0].end):
                places = {(int(x), int(y)) for x, y in positions(layout)}
                assert set(in_row[0].feet) <= places
