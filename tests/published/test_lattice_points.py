"""Plants on a lattice in a round bed and in a polygon, against published counts of lattice points.

The lattices are grids made for them: the lines of a planting, moved so that its places are the lattice's, each with
a phase that it keeps. Where a plan can say so by itself, with rows that alternate, it does. A place on the limit
counts. Straight rows begin anew at the end of each run, which in a disc or beside a slanted side is no lattice point,
so that plans with straight rows are asked of outlines with level and upright sides only.

Rows of triangles are rounded up to the nanometre, so that a place that belongs right on the circle may lie less than
a nanometre a row outside of it: those discs are drawn as much larger.
"""

from collections.abc import Iterable
from math import gcd, isqrt

from attrs import evolve, frozen
from hypothesis import given
from hypothesis import strategies as st

from gardenplot.layout import LaidOut
from gardenplot.layout.across import triangular_between
from gardenplot.layout.filled import zone_rows
from gardenplot.layout.value import Line
from gardenplot.units import CM, INCH, MM
from tests.layout.ground import Fields, laid_out, long
from tests.layout.outlines import Outline, outlines, stairs
from tests.published.cases import Case, cases, each

UNIT = 20 * CM
ON_THE_MARK: Fields = {"edge": "0 m", "end_margin": "0 m"}


@frozen
class Lattice:
    """A lattice of rows: places `step` apart, rows `between` apart, every second row moved by half a step or none.

    The middle of the bed lies `up` above a row that is not moved and `along` beyond one of its places; all in nm.
    """

    step: int
    between: int
    moves: bool
    up: int = 0
    along: int = 0

    def line(self, diameter: int, row: int) -> Line:
        """One row line through a disc that touches both edges of its bed."""
        offset = diameter // 2 - self.up + row * self.between
        moved = self.step // 2 if self.moves and row % 2 else 0
        first = (diameter // 2 - self.along + moved) % self.step
        return Line(offset, offset, offset, self.step, (0, 0), first, keeps_phase=True)

    def held(self, diameter: int) -> int:
        """Places in the disc."""
        most = diameter // self.between + 1
        lines = [self.line(diameter, row) for row in range(-most, most + 1)]
        disc = laid_out({"diameter": long(diameter).text}, packet(self.step, self.between), ON_THE_MARK)
        return on_lines(disc, [line for line in lines if 0 <= line.offset <= diameter])


def packet(in_row: int, between: int) -> Fields:
    return {"in_row": long(in_row).text, "row_spacing": long(between).text}


def on_lines(laid: LaidOut, lines: Iterable[Line]) -> int:
    """Places of a bed on some lines, from one end of it to the other."""
    taken = tuple(lines)
    kinds = tuple(line.at(-line.offset) for line in taken)
    grid = evolve(laid.layouts[0].grid, offsets=tuple(line.offset for line in taken), kinds=kinds)
    return sum(row.count for row in zone_rows(laid.bed, grid, 0, laid.bed.length.nm))


SQUARE = Lattice(UNIT, UNIT, moves=False)
TRIANGLES = Lattice(UNIT, triangular_between(UNIT), moves=True)
BETWEEN_TWO = evolve(TRIANGLES, along=UNIT // 2)
IN_A_TRIANGLE = evolve(TRIANGLES, along=UNIT // 2, up=TRIANGLES.between // 3)


def square_points(radius_squared: int) -> int:
    """Points with x^2 + y^2 <= n, one row after another."""
    rows = range(-isqrt(radius_squared), isqrt(radius_squared) + 1)
    return sum(2 * isqrt(radius_squared - row * row) + 1 for row in rows)


@each("lattice_points", "T2-A000328")
def test_a_round_bed_holds_the_squares_of_its_radius_and_those_on_the_limit_go_with_a_nanometre(case: Case) -> None:
    radius = case.inputs["radius"]
    assert SQUARE.held(2 * radius * UNIT) == case.expected
    assert SQUARE.held(2 * radius * UNIT - 2) == square_points(radius * radius - 1) < case.expected


@each("lattice_points", "T2-A057655")
def test_a_disc_whose_radius_is_a_root_holds_its_squares(case: Case) -> None:
    square = case.inputs["radius_squared"]
    diameter = 2 * isqrt(square * UNIT * UNIT)
    assert SQUARE.held(diameter + 2) == case.expected
    assert SQUARE.held(diameter) == square_points(square - 1) < case.expected


def chequered(k: int) -> int:
    """Plants of a plan: rows a unit apart, two units in the row, every second moved: squares of side sqrt(2) on their
    corner, in a disc of radius 2 k units, which is sqrt(2 k^2) sides."""
    ground = {"diameter": long(4 * k * UNIT).text}
    return laid_out(ground, packet(2 * UNIT, UNIT), {"pattern": "staggered"} | ON_THE_MARK).layouts[0].plants


def test_staggered_rows_of_a_plan_hold_the_published_points_of_the_circle_problem() -> None:
    published = {case.inputs["radius_squared"]: case.expected for case in cases("lattice_points", "T2-A057655")}
    assert (chequered(1), chequered(3)) == (published[2], published[18])


@given(st.integers(1, 40))
def test_staggered_rows_of_a_plan_hold_all_points_of_the_circle_problem(k: int) -> None:
    assert chequered(k) == square_points(2 * k * k)


def in_triangles(case: Case) -> int:
    """A whole diameter in nm, and what the rounding of its rows may ask for."""
    diameter: int = case.inputs["diameter"]
    return diameter * UNIT + 2 * (diameter + 2)


@each("lattice_points", "T2-A053416")
def test_a_disc_round_a_plant_holds_its_triangles(case: Case) -> None:
    assert TRIANGLES.held(in_triangles(case)) == case.expected
    if case.inputs["diameter"] % 2 == 0:
        assert TRIANGLES.held(case.inputs["diameter"] * UNIT - 2) < case.expected


@each("lattice_points", "T2-A053417")
def test_a_disc_round_the_middle_of_two_plants_holds_its_triangles(case: Case) -> None:
    assert BETWEEN_TWO.held(in_triangles(case)) == case.expected


@each("lattice_points", "T2-A053479")
def test_a_disc_round_the_middle_of_three_plants_holds_its_triangles(case: Case) -> None:
    assert IN_A_TRIANGLE.held(in_triangles(case)) == case.expected


@each("lattice_points", "T2-A053416")
def test_triangular_rows_of_a_plan_hold_them_where_the_middle_row_is_not_moved(case: Case) -> None:
    """The block begins so that a place of that row lies in the middle; a moved row there would lose its end."""
    diameter = in_triangles(case)
    above = case.inputs["diameter"] * UNIT // 2 // TRIANGLES.between
    begins = diameter // 2 % UNIT
    planting = {"pattern": "triangular", "rows": 2 * above + 1, "from": long(begins).text} | ON_THE_MARK
    laid = laid_out({"diameter": long(diameter).text}, packet(UNIT, UNIT), planting).layouts[0]
    if above % 2 == 0:
        assert laid.plants == case.expected
    else:
        assert laid.plants < case.expected


def places_by_pick(outline: Outline) -> int:
    """Lattice points of a closed lattice polygon: A + B / 2 + 1 (G. Pick, 1899)."""
    sides = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    twice_area = abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in sides))
    boundary = sum(gcd(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in sides)
    whole, half = divmod(twice_area + boundary, 2)
    assert half == 0
    return whole + 1


def on_a_lattice(outline: Outline, unit: int) -> LaidOut:
    """Straight rows a unit apart both ways in an outline of so many units, up to its very edges."""
    left, low = min(x for x, _y in outline), min(y for _x, y in outline)
    corners = [[long((x - left) * unit).text, long((y - low) * unit).text] for x, y in outline]
    return laid_out({"outline": corners}, packet(unit, unit), ON_THE_MARK)


def small(outline: Outline) -> bool:
    return max(abs(part) for corner in outline for part in corner) < 500


units = st.sampled_from([CM, INCH, 3 * INCH // 8, 30 * CM, MM + 1])


@each("lattice_points", "T2-PICK-RECT")
def test_a_rectangle_holds_its_area_half_its_boundary_and_one(case: Case) -> None:
    long_side, wide = case.inputs["width"], case.inputs["height"]
    outline = ((0, 0), (long_side, 0), (long_side, wide), (0, wide))
    plain = {"length": long(long_side * UNIT).text, "width": long(wide * UNIT).text}
    expected = case.expected["closed_points"]
    assert case.expected["area"] + case.expected["boundary"] // 2 + 1 == expected == places_by_pick(outline)
    assert on_a_lattice(outline, UNIT).layouts[0].plants == expected
    assert laid_out(plain, packet(UNIT, UNIT), ON_THE_MARK).layouts[0].plants == expected


@given(stairs().filter(small), units)
def test_straight_rows_fill_an_outline_of_level_and_upright_sides_by_picks_theorem(
    outline: Outline, unit: int
) -> None:
    assert on_a_lattice(outline, unit).layouts[0].plants == places_by_pick(outline)


@given(outlines().filter(small), units)
def test_a_grid_that_keeps_its_phase_fills_any_outline_by_picks_theorem(outline: Outline, unit: int) -> None:
    laid = on_a_lattice(outline, unit)
    lines = (line._replace(keeps_phase=True) for line in laid.layouts[0].grid.lines)
    assert on_lines(laid, lines) == places_by_pick(outline)
