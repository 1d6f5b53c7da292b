"""Triangular against square planting: what it gains without end, and what a narrow bed leaves of that."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout.across import triangular_between
from gardenplot.layout.positions import positions
from gardenplot.plan import Pattern
from gardenplot.units import M
from tests.layout.ground import Block, blocks, laid_out
from tests.published.cases import Case, cases, each

MOST_GAIN = 2 / sqrt(3)
HECTARE = 10_000


def planted(length: str, width: str, spacing: str, pattern: str) -> int:
    """Plants in a bed, half a spacing at its sides and ends."""
    crop = {"in_row": spacing, "row_spacing": spacing}
    return laid_out({"length": length, "width": width}, crop, {"pattern": pattern}).layouts[0].plants


@each("square_and_triangular", "T2-STAG")
def test_a_bed_holds_the_rows_that_were_counted_out(case: Case) -> None:
    inputs, expected = case.inputs, case.expected
    size = (f"{inputs['length']} in", f"{inputs['width']} in", f"{inputs['spacing']} in")
    assert planted(*size, "straight") == expected["square"]
    assert planted(*size, "triangular") == expected["staggered"]


def test_a_bed_of_4_by_8_feet_holds_32_plants_in_squares_and_30_in_triangles() -> None:
    (counted,) = [case for case in cases("square_and_triangular", "T2-STAG") if case.inputs["spacing"] == 12]
    square, triangular = (planted("8 ft", "4 ft", "1 ft", pattern) for pattern in ("straight", "triangular"))
    assert (square, triangular) == (32, 30) == (counted.expected["square"], counted.expected["staggered"])


@each("square_and_triangular", "T2-RATIO")
def test_rows_of_triangles_are_nearer_by_the_most_that_can_be_gained(case: Case) -> None:
    assert 1000 * M / triangular_between(1000 * M) == pytest.approx(case.expected, abs=case.within)


@each("square_and_triangular", "T2-FAO")
def test_rows_of_palms_are_as_far_apart_as_planters_peg_them(case: Case) -> None:
    between = triangular_between(case.inputs["spacing_m"] * M) / M
    assert between == pytest.approx(case.expected, abs=case.within)


@each("square_and_triangular", "T2-OCL")
def test_a_large_plantation_holds_the_published_palms_to_the_hectare(case: Case) -> None:
    plants = planted("5000 m", "5000 m", f"{case.inputs['spacing_m']} m", "triangular")
    assert plants / (5000 * 5000 / HECTARE) == pytest.approx(case.expected, abs=case.within)


@each("square_and_triangular", "T2-TRI-HA")
def test_triangles_hold_their_number_to_the_hectare(case: Case) -> None:
    spacing = round(case.inputs["spacing_m"] * M)
    per_hectare = HECTARE * M * M / (spacing * triangular_between(spacing))
    assert per_hectare == pytest.approx(case.expected, abs=case.within)


@given(st.integers(1, 400), st.integers(1, 400))
def test_on_whole_squares_triangles_never_gain_more_than_the_limit(long: int, wide: int) -> None:
    size = (f"{long * 10} cm", f"{wide * 10} cm", "10 cm")
    square = planted(*size, "straight")
    assert square == long * wide
    assert planted(*size, "triangular") <= MOST_GAIN * square


def test_the_gain_grows_with_the_bed_and_tends_to_15_47_percent() -> None:
    gains = []
    for side in (10, 100, 1000, 2500):
        size = (f"{side * 10} cm", f"{side * 10} cm", "10 cm")
        gains.append(100 * (planted(*size, "triangular") / planted(*size, "straight") - 1))
    assert gains == sorted(gains)
    assert gains[-1] == pytest.approx(15.47, abs=0.1)
    assert max(gains) < 100 * (MOST_GAIN - 1)


@given(blocks(patterns=(Pattern.TRIANGULAR,)))
def test_no_block_is_denser_than_points_can_lie(block: Block) -> None:
    """Oler's inequality for points at least d apart in a convex region (Acta Mathematica 105, 1961; from memory):
    N <= 2 A / (sqrt(3) d^2) + P / (2 d) + 1."""
    places = positions(block.layout) / block.crop.in_row.nm
    if len(places):
        along, across = places.max(axis=0) - places.min(axis=0)
        assert len(places) <= MOST_GAIN * along * across + along + across + 1 + 1e-9
