"""Equilateral and staggered planting against printed densities, and the traps that circulate beside them.

The density of triangles is that of a plane without end. A bed tends to it from below as it grows, so densities are
asked of large beds; what a small bed holds is counted row by row.
"""

from math import dist, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import Layout
from gardenplot.layout.positions import positions
from gardenplot.units import FOOT, M
from tests.layout.ground import Fields, laid_out
from tests.published.cases import Case, each
from tests.published.test_plants_per_area import ACRE

SIDE = 1000
"""Spacings along and across a bed that is large."""
FOUR_PATTERNS = ("straight", "staggered", "triangular", "cells")


def bed_of(length: str, width: str, spacing: str, pattern: str, **planting: str) -> Layout:
    """A bed filled at one spacing, half of it at its sides and ends unless margins say otherwise."""
    packet = {"in_row": spacing, "row_spacing": spacing}
    more: Fields = {"cell": spacing, "plants_per_cell": 1} if pattern == "cells" else {}
    return laid_out({"length": length, "width": width}, packet, {"pattern": pattern} | planting | more).layouts[0]


def per_square_spacing(pattern: str) -> float:
    """Plants to the square of the spacing in a large bed."""
    return bed_of(f"{SIDE} ft", f"{SIDE} ft", "1 ft", pattern).plants / SIDE**2


@each("triangles", "T1-QUINCUNX-30")
def test_a_tree_in_the_middle_of_each_square_is_as_far_from_its_corners_as_printed(case: Case) -> None:
    square = case.inputs["square_ft"]
    assert nearest(square, "ft") / FOOT == pytest.approx(case.expected, abs=case.within)


@each("triangles", "T1-QUINCUNX-TRAP")
def test_that_distance_is_half_the_diagonal_and_not_the_row_spacing_of_triangles(case: Case) -> None:
    """A page on planting patterns prints 8.66 m, which is 10 m times sqrt(3) / 2."""
    assert nearest(case.inputs["square_m"], "m") / M == pytest.approx(case.expected, abs=case.within)


def nearest(square: int, unit: str) -> float:
    """The least distance between trees of staggered rows half a square apart, in nm."""
    packet = {"in_row": f"{square} {unit}", "row_spacing": f"{square / 2} {unit}"}
    ground = {"length": f"{5 * square} {unit}", "width": f"{3 * square} {unit}"}
    places = positions(laid_out(ground, packet, {"pattern": "staggered"}).layouts[0]).tolist()
    return min(dist(one, other) for number, one in enumerate(places) for other in places[:number])


@each("triangles", "T2-HEXDENS")
def test_circles_round_plants_in_triangles_cover_the_most_of_the_plane(case: Case) -> None:
    spacing = 1000 * M
    first, second, *_ = bed_of("10000 m", "10000 m", "1000 m", "triangular").rows
    covered = pi / 4 * spacing**2 / (spacing * (second.offset - first.offset))
    assert covered == pytest.approx(case.expected, abs=case.within)


@each("triangles", "T2-RATIO-15PCT")
def test_triangles_hold_some_fifteen_percent_more_on_much_ground(case: Case) -> None:
    gain = 100 * (per_square_spacing("triangular") / per_square_spacing("straight") - 1)
    assert gain == pytest.approx(case.expected, abs=case.within)


@each("triangles", "T2-OCL-180")
def test_palms_eight_metres_apart_stand_as_dense_as_planters_had_them(case: Case) -> None:
    """The abstract prints the density; that 8.0 m belongs to it is inferred from its range of spacings."""
    palms = bed_of("4000 m", "4000 m", f"{case.inputs['spacing_m']} m", "triangular").plants
    per_plot = palms * case.inputs["area_m2"] / 4000**2
    assert per_plot == pytest.approx(case.expected, abs=case.within)


@each("triangles", "T2-SUNSET")
def test_a_tray_of_bedding_plants_covers_the_printed_area_in_offset_rows(case: Case) -> None:
    square_feet = case.inputs["plants"] / per_square_spacing("triangular") * (case.inputs["spacing_in"] / 12) ** 2
    assert square_feet == pytest.approx(case.expected, abs=case.within)


@each("triangles", "T2-RADTKE")
def test_the_printed_number_for_a_bed_is_its_area_by_the_density_and_more_than_the_bed_holds(case: Case) -> None:
    """A nursery adds 15 % to the square; the rows of the very bed hold fewer, since its sides cut them."""
    low, high = case.expected
    spacing = case.inputs["spacing_in"]
    area = case.inputs["length_ft"] * case.inputs["width_ft"] * (12 / spacing) ** 2
    assert low <= area * per_square_spacing("triangular") <= high
    size = (f"{case.inputs['length_ft']} ft", f"{case.inputs['width_ft']} ft", f"{spacing} in")
    # 33 rows of 18 and 17 by turns: (288 - 10) / 8.66 = 32.1, 17 x 18 + 16 x 17
    assert bed_of(*size, "triangular").plants == 17 * 18 + 16 * 17 < low


@each("triangles", "T2-TRAP-CIRCULAR")
def test_no_plan_plants_an_acre_denser_than_triangles(case: Case) -> None:
    spacing = case.inputs["min_spacing_ft"]
    for pattern in FOUR_PATTERNS:
        dense = per_square_spacing(pattern) * 43_560 / spacing**2
        assert dense <= case.expected + case.within
    assert per_square_spacing("triangular") * 43_560 / spacing**2 == pytest.approx(case.expected, rel=2 / SIDE)


@each("triangles", "T2-TRAP-555")
@pytest.mark.parametrize("pattern", FOUR_PATTERNS)
def test_the_printed_circular_spacing_is_more_than_any_pattern_plants(case: Case, pattern: str) -> None:
    """43,560 / (25 pi) gives each tree a circle and forgets the ground between circles."""
    spacing = f"{case.inputs['spacing_ft']} ft"
    on_the_mark = bed_of(ACRE["length"], ACRE["width"], spacing, pattern, end_margin="0 ft", edge="0 ft")
    assert on_the_mark.plants < case.expected - case.within


@each("triangles", "T2-STAG")
def test_a_bed_planted_up_to_its_edges_holds_the_rows_that_were_counted_out(case: Case) -> None:
    inputs, expected = case.inputs, case.expected
    size = (f"{inputs['length']} in", f"{inputs['width']} in", f"{inputs['spacing']} in")
    margins = {"end_margin": f"{inputs['end_inset']} in", "edge": f"{inputs['side_inset']} in"}
    layout = bed_of(*size, "triangular", **margins)
    assert layout.plants == expected["staggered"]
    assert (len(layout.rows), *layout.per_row[:2]) == (expected["rows"], expected["even_row"], expected["odd_row"])
    assert bed_of(*size, "straight", **margins).plants == expected["square"]


@given(st.integers(2, 60), st.integers(2, 60), st.integers(1, 36))
def test_densities_tend_to_their_limits_and_miss_them_by_the_perimeter_at_most(
    long: int, wide: int, inches: int
) -> None:
    """Squares hold 1 / s^2 exactly where s divides both sides, triangles up to 2 / (sqrt(3) s^2), less at most a rank
    and a row: with A in squares of s and P in s, 2 A / sqrt(3) - P <= N <= 2 A / sqrt(3)."""
    size = (f"{long * inches} in", f"{wide * inches} in", f"{inches} in")
    limit, perimeter = 2 / sqrt(3) * long * wide, 2 * (long + wide)
    assert bed_of(*size, "straight").plants == long * wide == bed_of(*size, "cells").plants
    triangles = bed_of(*size, "triangular").plants
    assert limit - perimeter <= triangles <= limit
