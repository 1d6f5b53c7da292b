"""Directions are read as people write them, and written so that they read back to the very same."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.errors import LengthError
from gardenplot.units import degrees_of, parse_degrees

READ = [
    ("0", 0),
    ("90", 90),
    ("90°", 90),
    ("22,5 deg", Fraction(45, 2)),
    ("-15 degrees", 345),
    ("−90°", 270),
    ("360", 0),
]


@pytest.mark.parametrize(("typed", "turn"), READ)
def test_a_direction_is_read_as_it_is_written(typed: str, turn: Fraction) -> None:
    assert parse_degrees(f" {typed} ").turn == turn
    assert parse_degrees(f" {typed} ").text == typed


@pytest.mark.parametrize("typed", ["", "north", "361", "400°", "1 000", "90 %", "1e2", "9" * 99, None, 90])
def test_what_is_no_direction_is_refused_with_an_example(typed: str) -> None:
    with pytest.raises(LengthError, match=r"22\.5°"):
        parse_degrees(typed)


@given(st.fractions(-1000, 1000, max_denominator=360))
def test_a_computed_direction_reads_back_to_the_very_same(turn: Fraction) -> None:
    written = degrees_of(turn)
    assert parse_degrees(written.text) == written
    assert 0 <= written.turn < 360
    assert abs((written.turn - turn + 180) % 360 - 180) <= Fraction(1, 2 * 10**6)
