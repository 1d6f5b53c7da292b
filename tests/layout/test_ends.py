"""What is kept free at the ends of a block: half a spacing, nothing for plants on the mark, or a margin."""

from itertools import count

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.layout.along import capacity, half_spacing, length_for
from gardenplot.plan import Pattern
from tests.layout.ground import Fields, laid_out, nm

BED: Fields = {"length": "100 ft", "width": "30 in"}


@pytest.mark.parametrize(
    ("ends", "plants", "first", "last"),
    [
        ({}, 10, "5 ft", "95 ft"),
        ({"end_margin": "0 ft"}, 11, "0 ft", "100 ft"),
        ({"end_margin": "10 ft"}, 9, "10 ft", "90 ft"),
    ],
)
def test_a_hundred_feet_at_ten_hold_ten_eleven_or_nine(ends: Fields, plants: int, first: str, last: str) -> None:
    """As for the posts of a fence of 100 ft at 10 ft, with a post at one end, at both or at neither.

    Source: "fencepost error", Free On-line Dictionary of Computing.
    """
    crop: Fields = {"in_row": "10 ft", "row_spacing": "30 in", "edge": "15 in"}
    (layout,) = laid_out(BED, crop, {"from": "0 ft", "length": "100 ft"} | ends).layouts
    assert (layout.plants, layout.first_plant, layout.last_plant) == (plants, nm(first), nm(last))


def test_an_order_on_the_mark_takes_one_spacing_less() -> None:
    crop: Fields = {"in_row": "25 cm", "row_spacing": "25 cm", "edge": "10 cm"}
    bed: Fields = {"length": "12 m", "width": "75 cm"}
    half, mark = (laid_out(bed, crop, {"plants": 45} | ends).layouts[0] for ends in ({}, {"end_margin": "0 cm"}))
    assert (half.length, mark.length) == (nm("3.75 m"), nm("3.5 m"))
    assert half.per_row == mark.per_row == (15, 15, 15)


patterns = st.sampled_from([Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR])


@settings(max_examples=500)
@given(patterns, st.integers(1, 6), st.integers(2, 60), st.integers(0, 400), st.integers(0, 70))
def test_rows_hold_what_counting_one_by_one_gives(
    pattern: Pattern, rows: int, in_row: int, length: int, margin: int
) -> None:
    counted = 0
    for row in range(rows):
        moved = in_row - in_row // 2 if pattern is not Pattern.STRAIGHT and row % 2 else 0
        for at in count(margin + moved, in_row):
            if at > length - margin:
                break
            counted += 1
    assert capacity(pattern, rows, in_row, length, (margin, margin)) == counted


@settings(max_examples=500)
@given(patterns, st.integers(1, 6), st.integers(2, 60), st.integers(1, 80), st.none() | st.integers(0, 70))
def test_the_length_for_so_many_is_the_least(
    pattern: Pattern, rows: int, in_row: int, plants: int, margin: int | None
) -> None:
    ends = half_spacing(in_row) if margin is None else (margin, margin)
    length = length_for(pattern, rows, in_row, plants, ends)
    assert capacity(pattern, rows, in_row, length, ends) >= plants
    assert length == 0 or capacity(pattern, rows, in_row, length - 1, ends) < plants
