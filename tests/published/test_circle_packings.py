"""No layout beats the best known packing of circles: a plant d from its neighbours and d/2 from the edge is one."""

from math import ceil, isqrt, pi, sqrt

import pytest

from gardenplot.units import M
from tests.layout.ground import laid_out, long
from tests.published.cases import Case, each

each_pattern = pytest.mark.parametrize("pattern", ["straight", "staggered", "triangular"])


def planted(side: int, apart: int, pattern: str) -> int:
    """Plants in a square bed of `side` nm, each `apart` nm from the others and half of that from the edge."""
    crop = {"in_row": long(apart).text, "row_spacing": long(apart).text, "edge": long(-(-apart // 2)).text}
    return (
        laid_out({"length": long(side).text, "width": long(side).text}, crop, {"pattern": pattern}).layouts[0].plants
    )


@each_pattern
@each("circle_packings", "T2-CSQ-N")
def test_a_square_too_small_for_some_circles_is_too_small_for_as_many_plants(case: Case, pattern: str) -> None:
    radius = M // 2
    smaller = int((case.expected - case.within) * radius) - 1
    assert planted(smaller, 2 * radius, pattern) < case.inputs["circles"]


@each_pattern
@each("circle_packings", "T2-CSQ-N")
def test_the_smallest_square_for_some_circles_holds_no_plant_more(case: Case, pattern: str) -> None:
    radius = M // 2
    larger = ceil((case.expected + case.within) * radius)
    assert planted(larger, 2 * radius, pattern) <= case.inputs["circles"]


def test_sixteen_circles_and_sixteen_plants_fill_the_same_square() -> None:
    """The square grid is the best packing of 16, so that here a layout must reach the bound."""
    assert planted(4 * M, 1 * M, "straight") == 16
    assert planted(4 * M - 1, 1 * M, "straight") == 9


@each("circle_packings", "T2-CSQ-BOUND")
def test_a_square_of_side_7_9_holds_nine_in_squares_and_never_sixteen(case: Case) -> None:
    radius = M // 2
    side = round(case.inputs["side_over_radius"] * radius)
    counts = [planted(side, 2 * radius, pattern) for pattern in ("straight", "staggered", "triangular")]
    assert counts[0] == case.expected["square_grid"]
    assert max(counts) <= case.expected["max"]


@each_pattern
@each("circle_packings", "T2-A337020")
def test_a_square_of_some_area_holds_no_more_plants_than_circles_of_area_one(case: Case, pattern: str) -> None:
    side = isqrt(case.inputs["square_area"] * M * M)
    assert planted(side, ceil(2 / sqrt(pi) * M), pattern) <= case.expected
