"""No pattern beats the best known packing of circles, in a circle or in a square.

Plants d apart, up to the very edge of a bed, are the centres of circles of radius d / 2 in a bed that is d / 2 larger
all round. Straight, staggered and triangular rows in a square stand in `test_circle_packings.py` as well.
"""

from math import ceil, pi, sin

import pytest

from gardenplot.units import M
from tests.layout.ground import Fields, laid_out, long
from tests.published.cases import Case, cases, each

APART = 1 * M
PATTERNS: dict[str, Fields] = {
    **{name: {"pattern": name} for name in ("straight", "staggered", "triangular", "rings")},
    **{f"{name}, best phase": {"pattern": name, "phase": "best"} for name in ("straight", "staggered", "triangular")},
    **{
        f"{name}, across": {"pattern": name, "direction": "across"}
        for name in ("straight", "staggered", "triangular")
    },
    "twin": {"pattern": "twin", "twin_spacing": "1 m", "row_spacing": "2 m"},
    "offsets": {"pattern": "offsets", "offsets": ["0 m", "1 m", "2 m", "3 m", "4 m"]},
    "cells of one": {"pattern": "cells", "cell": "1 m", "plants_per_cell": 1},
    "cells of four": {"pattern": "cells", "cell": "2 m", "plants_per_cell": 4},
    "cells of four, best phase": {"pattern": "cells", "cell": "2 m", "plants_per_cell": 4, "phase": "best"},
}
each_pattern = pytest.mark.parametrize("pattern", PATTERNS.values(), ids=PATTERNS.keys())


def planted(ground: Fields, pattern: Fields) -> int:
    """Plants a metre apart up to the very edge."""
    packet = {"in_row": "1 m", "row_spacing": "1 m"}
    return laid_out(ground, packet, {"edge": "0 m", "end_margin": "0 m"} | pattern).layouts[0].plants


def disc(diameter: int) -> Fields:
    return {"diameter": long(diameter).text}


def square(side: int) -> Fields:
    """A square as an outline, in which rows may be shifted."""
    far = long(side).text
    return {"outline": [["0 m", "0 m"], [far, "0 m"], [far, far], ["0 m", far]]}


@each_pattern
@each("circles_in_a_circle")
def test_a_disc_holds_no_more_plants_than_circles(case: Case, pattern: Fields) -> None:
    """The diameter between centres is (R / r - 1) d; the published R / r are cut, so that they are a little small."""
    small = int((case.expected - 1) * APART) - 1
    large = ceil((case.expected + case.within - 1) * APART)
    most = max(other.inputs["circles"] for other in cases("circles_in_a_circle") if other.expected <= case.expected)
    assert planted(disc(small), pattern) < case.inputs["circles"]
    assert planted(disc(large), pattern) <= most


@each_pattern
@each("circle_packings", "T2-CSQ-N")
def test_a_square_holds_no_more_plants_than_circles(case: Case, pattern: Fields) -> None:
    small = int((case.expected - case.within - 2) * APART / 2) - 1
    large = ceil((case.expected + case.within - 2) * APART / 2)
    assert planted(square(small), pattern) < case.inputs["circles"]
    assert planted(square(large), pattern) <= case.inputs["circles"]


def test_a_ring_of_six_round_one_is_the_best_packing_of_seven() -> None:
    """Seven circles in one of three times their radius: rings reach the bound."""
    assert planted(disc(2 * APART), PATTERNS["rings"]) == 7
    assert planted(disc(2 * APART - 2), PATTERNS["rings"]) < 7


@pytest.mark.parametrize(("circles", "ring"), [(7, 6), (8, 7), (9, 8), (11, 9)])
def test_one_ring_and_a_plant_in_the_middle_need_the_published_disc(circles: int, ring: int) -> None:
    """The survey's closed forms: R / r = 1 + 1 / sin(pi / n) with n circles in the outer ring."""
    (published,) = [case.expected for case in cases("circles_in_a_circle") if case.inputs["circles"] == circles]
    assert published == pytest.approx(1 + 1 / sin(pi / ring), abs=0.001)
    radius = ceil(APART / (2 * sin(pi / ring)) - 1e-6)  # what is whole may come out a little more
    assert planted(disc(2 * radius), PATTERNS["rings"]) == ring + 1 <= circles
    assert planted(disc(2 * radius - 2), PATTERNS["rings"]) < ring + 1
