"""No layout of any pattern in any bed is denser than points can lie that keep what the pattern promises.

Oler's inequality for N points at least d apart in a convex region of area A and perimeter P (N. Oler, Acta
Mathematica 105, 1961; for circles H. Groemer 1960; from memory): N <= 2 A / (sqrt(3) d^2) + P / (2 d) + 1. It is
asked of the convex hull of the plants, the least region there is.
"""

from itertools import pairwise
from math import hypot, pi, sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import MultiPoint

from gardenplot.layout import Layout
from gardenplot.layout.across import triangular_between
from gardenplot.layout.cells import sub_rows
from gardenplot.layout.positions import Places, positions
from gardenplot.plan import Pattern
from gardenplot.units import CM
from tests.layout.any_ground import RINGS, grounds, only, packets, rows
from tests.layout.ground import Fields, laid_out, long
from tests.published.test_lattice_points import ON_THE_MARK, UNIT, chequered

MOST_COMPARED = 700
ROUNDING = 2
"""Places of cells and rings that are no whole nanometre are rounded, in nm."""


def promised(layout: Layout) -> float:
    """What a pattern promises between any two of its plants, in nm."""
    grid = layout.grid
    match grid.pattern:
        case Pattern.STAGGERED:
            return min(grid.in_row, hypot(grid.in_row // 2, grid.between), 2 * grid.between)
        case Pattern.TRIANGULAR:
            return grid.in_row
        case Pattern.TWIN:
            return min(grid.in_row, grid.twin, grid.between - grid.twin)
        case Pattern.OFFSETS:
            steps = [after - one for one, after in pairwise(grid.offsets)]
            return min(grid.in_row, min(steps, default=grid.in_row))
        case Pattern.CELLS:
            way = sub_rows(grid.per_cell)
            return min(grid.cell // max(way), grid.cell // len(way)) - ROUNDING
        case _:
            return min(grid.in_row, grid.between) - ROUNDING


def least_apart(places: Places) -> float:
    """The least distance between any two of some places, in nm."""
    x, y = places.T.astype(float)
    squares = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    np.fill_diagonal(squares, np.inf)
    return float(np.sqrt(squares.min()))


def most_points(places: Places, apart: float) -> float:
    """Oler's bound for the convex hull of some places; a hull of no area has its length twice for a perimeter."""
    hull = MultiPoint(places.tolist()).convex_hull
    area, round_it = float(hull.area), float(hull.length)
    perimeter = round_it if area else 2 * round_it
    return 2 / sqrt(3) * area / apart**2 + perimeter / (2 * apart) + 1


@settings(max_examples=max(200, settings().max_examples))
@given(grounds(), packets(), st.one_of(rows(), RINGS))
def test_plants_are_as_far_apart_as_promised_and_no_denser_than_points_can_lie(
    bed: Fields, crop: Fields, planting: Fields
) -> None:
    layout = only((bed, crop, planting)).layouts[0]
    places, apart = positions(layout), promised(layout)
    assume(1 < len(places) <= MOST_COMPARED and apart > 0)
    assert least_apart(places) >= apart
    assert len(places) <= most_points(places, apart) * (1 + 1e-9)


def test_triangles_reach_the_bound_in_a_hexagon_and_a_rectangle_falls_short_by_its_cut_rows() -> None:
    """A hexagon of side 3 d holds 1 + 6 + 12 + 18 places, Oler's bound to the last. In a rectangle of rows of 21 and
    20 by turns the hull has ten notches of half a place, and its two sides are 10 - 5 sqrt(3) shorter than places."""
    between = triangular_between(UNIT)
    corners = ((4, 0), (10, 0), (13, 3), (10, 6), (4, 6), (1, 3))
    hexagon = [[long(half * UNIT // 2).text, long(row * between).text] for half, row in corners]
    packet = {"in_row": long(UNIT).text, "row_spacing": long(UNIT).text}
    rectangle: Fields = {"length": long(20 * UNIT).text, "width": long(10 * between).text}
    whole, cut = (
        laid_out(bed, packet, {"pattern": "triangular"} | ON_THE_MARK).layouts[0]
        for bed in ({"outline": hexagon}, rectangle)
    )
    assert whole.per_row == (4, 5, 6, 7, 6, 5, 4)
    assert most_points(positions(whole), UNIT) == pytest.approx(37, abs=1e-6)
    assert cut.per_row == (21, 20) * 5 + (21,)
    assert most_points(positions(cut), UNIT) == pytest.approx(226 + 5 - (10 - 5 * sqrt(3)), abs=1e-6)


@given(st.integers(1, 40))
def test_squares_in_a_round_bed_miss_its_area_by_half_its_perimeter_at_most(k: int) -> None:
    """A - P / 2 <= N <= A + P / 2 + 1 for lattice points in a convex region (Nosarzewska 1948; Bokowski, Hadwiger and
    Wills 1972; from memory), in sides of a square of the lattice."""
    radius = sqrt(2) * k
    area, perimeter = pi * radius**2, 2 * pi * radius
    assert area - perimeter / 2 <= chequered(k) <= area + perimeter / 2 + 1


def test_densities_in_round_beds_tend_to_their_limits() -> None:
    """1 to the square of the spacing, and 2 / sqrt(3) in triangles; the error shrinks as one over the radius."""
    for pattern, limit in (("straight", 1), ("triangular", 2 / sqrt(3))):
        for spacings in (10, 40, 160):
            bed, crop = {"diameter": f"{2 * spacings * UNIT // CM} cm"}, {"in_row": "20 cm", "row_spacing": "20 cm"}
            plants = laid_out(bed, crop, {"pattern": pattern} | ON_THE_MARK).layouts[0].plants
            assert abs(plants / (pi * spacings**2) - limit) <= 2 / spacings
