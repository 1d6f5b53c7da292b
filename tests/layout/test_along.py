"""Plants along a row, how many a length holds, and the length that a number of plants needs."""

from fractions import Fraction
from itertools import cycle, islice
from math import floor

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from gardenplot.layout.along import capacity, first_in_row, is_shifted, length_for, share_out
from gardenplot.plan import Pattern
from gardenplot.units import CM, MM, M
from tests.layout.ground import ROW_PATTERNS, lengths, many, nm

patterns = st.sampled_from(ROW_PATTERNS)
rows = st.integers(1, 12)
spacings = lengths(MM, 1 * M)


def row_by_row(pattern: Pattern, row_count: int, in_row: int, length: int) -> list[int]:
    """Plants in each row by the rule: floor(l / s), and floor(l / s - 1/2) in a shifted row."""
    ranks = Fraction(length, in_row)
    half = Fraction(1, 2)
    return [max(0, floor(ranks - half if is_shifted(pattern, row) else ranks)) for row in range(row_count)]


def shared_out(pattern: Pattern, row_count: int, plants: int) -> list[int]:
    """What each row is given, from counts that rows have by turns."""
    return list(islice(cycle(share_out(pattern, row_count, plants)), row_count))


@many
@given(patterns, rows, spacings, lengths(0, 30 * M))
def test_a_length_holds_what_the_rule_says(pattern: Pattern, row_count: int, in_row: int, length: int) -> None:
    assert capacity(pattern, row_count, in_row, length) == sum(row_by_row(pattern, row_count, in_row, length))


@many
@given(patterns, rows, spacings, st.integers(1, 5000))
@example(Pattern.STAGGERED, 3, 2 * CM + 1, 137)
def test_the_length_for_some_plants_holds_them_and_a_nanometre_less_does_not(
    pattern: Pattern, row_count: int, in_row: int, plants: int
) -> None:
    length = length_for(pattern, row_count, in_row, plants)
    assert capacity(pattern, row_count, in_row, length) >= plants
    assert capacity(pattern, row_count, in_row, length - 1) < plants


@many
@given(patterns, rows, spacings, lengths(0, 20 * M), lengths(0, 2 * M))
def test_a_longer_block_never_holds_fewer(
    pattern: Pattern, row_count: int, in_row: int, length: int, more: int
) -> None:
    assert capacity(pattern, row_count, in_row, length) <= capacity(pattern, row_count, in_row, length + more)


@many
@given(patterns, rows, spacings, lengths(0, 20 * M))
def test_a_full_block_is_shared_out_as_each_row_holds(
    pattern: Pattern, row_count: int, in_row: int, length: int
) -> None:
    full = row_by_row(pattern, row_count, in_row, length)
    assert shared_out(pattern, row_count, sum(full)) == full


@many
@given(patterns, rows, spacings, st.integers(0, 5000))
def test_no_plant_is_lost_and_no_row_runs_over_when_plants_are_shared_out(
    pattern: Pattern, row_count: int, in_row: int, plants: int
) -> None:
    shared = shared_out(pattern, row_count, plants)
    room = row_by_row(pattern, row_count, in_row, length_for(pattern, row_count, in_row, plants))
    assert sum(shared) == plants
    assert all(count <= most for count, most in zip(shared, room, strict=True))


def test_no_plant_and_no_row_need_no_length() -> None:
    assert length_for(Pattern.STRAIGHT, 3, nm("20 cm"), 0) == 0
    assert length_for(Pattern.STRAIGHT, 0, nm("20 cm"), 50) == 0
    assert shared_out(Pattern.STRAIGHT, 0, 50) == []


def test_the_first_plant_stands_half_a_spacing_inside_and_a_shifted_one_a_whole_spacing() -> None:
    assert first_in_row(Pattern.STRAIGHT, 1, nm("40 cm")) == nm("20 cm")
    assert first_in_row(Pattern.STAGGERED, 0, nm("40 cm")) == nm("20 cm")
    assert first_in_row(Pattern.STAGGERED, 1, nm("40 cm")) == nm("40 cm")


def test_a_plant_more_fits_exactly_at_its_spacing() -> None:
    assert capacity(Pattern.STRAIGHT, 1, nm("20 cm"), nm("6.8 m")) == 34
    assert capacity(Pattern.STRAIGHT, 1, nm("20 cm"), nm("6.8 m") - 1) == 33


def test_210_plants_in_3_rows_at_8_inches_take_46_feet_8_inches() -> None:
    """Common practice, no source."""
    assert shared_out(Pattern.STRAIGHT, 3, 210) == [70, 70, 70]
    assert length_for(Pattern.STRAIGHT, 3, nm("8 in"), 210) == nm("46' 8\"")


@pytest.mark.parametrize(("usable", "plants"), [("19 m", [47, 47, 47]), ("18.8 m", [47, 46, 47])])
def test_a_staggered_row_loses_a_plant_only_where_half_a_spacing_is_missing(usable: str, plants: list[int]) -> None:
    held = capacity(Pattern.STAGGERED, 3, nm("40 cm"), nm(usable))
    assert shared_out(Pattern.STAGGERED, 3, held) == plants


def test_137_staggered_cabbages_leave_one_out_of_the_shifted_row() -> None:
    assert length_for(Pattern.STAGGERED, 3, nm("40 cm"), 137) == nm("18.4 m")
    assert shared_out(Pattern.STAGGERED, 3, 137) == [46, 45, 46]
