"""Lengths are exact: units as they are defined, computed lengths that read back, and counts without floats."""

from math import floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout.across import rows_that_fit
from gardenplot.units import CM, FOOT, INCH, LONGEST, MM, Length, M, Units, length_of, parse_length, parse_place

NIST_SP_811_APPENDIX_B = [("1 in", "2.54 cm"), ("1 ft", "0.3048 m"), ("1 yd", "0.9144 m")]
"""The international inch, foot and yard, exact by definition (NIST Special Publication 811, appendix B.6 and B.8)."""


@pytest.mark.parametrize(("unit", "metric"), NIST_SP_811_APPENDIX_B)
def test_the_units_are_those_of_nist_sp_811(unit: str, metric: str) -> None:
    assert parse_length(unit).nm == parse_length(metric).nm


@pytest.mark.parametrize(
    ("typed", "nm"),
    [("1 in", 25_400_000), ("1/64 in", 396_875), ("0.01 ft", 3_048_000), ("1 mm", 1_000_000), ("1 yd", 914_400_000)],
)
def test_the_finest_marks_of_every_tape_are_whole_nanometres(typed: str, nm: int) -> None:
    assert parse_length(typed).nm == nm


def test_the_constants_agree_with_the_units() -> None:
    assert [parse_length(typed).nm for typed in ("1 mm", "1 cm", "1 m")] == [MM, CM, M]
    assert [parse_length(typed).nm for typed in ("1 in", "1 ft")] == [INCH, FOOT]


@pytest.mark.parametrize("units", Units)
@given(nm=st.integers(0, LONGEST) | st.integers(0, 400_000).map(lambda n: n * (INCH // 64)))
def test_a_computed_length_reads_back_to_the_same(units: Units, nm: int) -> None:
    length = length_of(nm, units)
    assert length.nm == nm
    assert parse_length(length.text) == length
    assert parse_place(length.text) == length
    beyond = length_of(-nm, units)
    assert beyond.nm == -nm
    assert parse_place(beyond.text) == beyond


@pytest.mark.parametrize(
    ("nm", "units", "text"),
    [
        (14_600 * MM, Units.METRIC, "14.6 m"),
        (75 * CM, Units.METRIC, "75 cm"),
        (75 * MM, Units.METRIC, "7.5 cm"),
        (M, Units.METRIC, "1 m"),
        (0, Units.METRIC, "0 cm"),
        (INCH, Units.METRIC, "2.54 cm"),
        (30 * INCH, Units.FEET_AND_INCHES, "2' 6\""),
        (30 * INCH + INCH // 2, Units.FEET_AND_INCHES, "2' 6 1/2\""),
        (12 * INCH + INCH // 2, Units.FEET_AND_INCHES, "1' 1/2\""),
        (2 * FOOT, Units.FEET_AND_INCHES, "2'"),
        (8 * INCH, Units.FEET_AND_INCHES, "8 in"),
        (INCH // 64, Units.FEET_AND_INCHES, "1/64 in"),
        (0, Units.FEET_AND_INCHES, "0 in"),
        (FOOT * 107 // 2, Units.DECIMAL_FEET, "53.5 ft"),
        (0, Units.DECIMAL_FEET, "0 ft"),
    ],
)
def test_a_computed_length_is_written_in_the_plans_units(nm: int, units: Units, text: str) -> None:
    assert length_of(nm, units) == Length(nm, text)


@pytest.mark.parametrize("units", [Units.FEET_AND_INCHES, Units.DECIMAL_FEET])
def test_a_length_with_no_exact_text_in_feet_is_written_in_millimetres(units: Units) -> None:
    assert length_of(14_600 * MM, units) == Length(14_600 * MM, "14600 mm")


def test_a_third_row_that_floats_lose_fits() -> None:
    width, edge, between = (parse_length(typed).nm for typed in ("1.20 m", "0.20 m", "0.40 m"))
    assert floor((1.20 - 0.40) / 0.40) + 1 == 2
    assert rows_that_fit(width, edge, between) == 3


def test_a_fourth_row_that_floats_lose_fits() -> None:
    width, edge, between = (parse_length(typed).nm for typed in ("0.75 m", "7.5 cm", "20 cm"))
    assert floor((0.75 - 0.15) / 0.20) + 1 == 3
    assert rows_that_fit(width, edge, between) == 4


@given(rows=st.integers(1, 60), edge=st.integers(0, 100), between=st.integers(1, 100))
def test_rows_that_just_fit_are_counted_and_a_nanometre_less_costs_one(rows: int, edge: int, between: int) -> None:
    width = (2 * edge + (rows - 1) * between) * CM
    assert rows_that_fit(width, edge * CM, between * CM) == rows
    assert rows_that_fit(width - 1, edge * CM, between * CM) == rows - 1
