"""Outlines that cross or touch themselves are found by a sweep, as by comparing every side with every other."""

from collections.abc import Sequence
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.plan.simple import fault_of

Point = tuple[int, int]

REACH = (2, 3, 5, 30, 10**11)


def meets_itself(outline: Sequence[Point]) -> bool:
    """Whether any two sides share a point that is not the corner between them, side by side with every other."""
    sides = list(zip(outline, [*outline[1:], outline[0]], strict=True))
    return any(_meet(*one, *other) for one, other in combinations(sides, 2))


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    shared = {a, b} & {c, d}
    if shared:
        return any(
            tip not in shared and _is_on(*side, tip)
            for side, tips in (((a, b), (c, d)), ((c, d), (a, b)))
            for tip in tips
        )
    turns = [_sign(a, b, c), _sign(a, b, d), _sign(c, d, a), _sign(c, d, b)]
    if turns[0] != turns[1] and turns[2] != turns[3]:
        return True
    return _is_on(a, b, c) or _is_on(a, b, d) or _is_on(c, d, a) or _is_on(c, d, b)


def _is_on(a: Point, b: Point, c: Point) -> bool:
    in_reach = min(a[0], b[0]) <= c[0] <= max(a[0], b[0]) and min(a[1], b[1]) <= c[1] <= max(a[1], b[1])
    return in_reach and _sign(a, b, c) == 0


def _sign(a: Point, b: Point, c: Point) -> int:
    cross = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return (cross > 0) - (cross < 0)


@st.composite
def corners(draw: st.DrawFn) -> list[Point]:
    """Any points, so close that they often fall on sides, or far apart; some right in the middle of a side."""
    across = st.integers(0, draw(st.sampled_from(REACH)))
    found = draw(st.lists(st.tuples(across, across), min_size=3, max_size=8, unique=True))
    for number in draw(st.lists(st.integers(0, len(found) - 1), max_size=2)):
        (x1, y1), (x2, y2) = found[number - 1], found[number]
        found.insert(number, ((x1 + x2) // 2, (y1 + y2) // 2))
    return found


@settings(max_examples=200)
@given(st.lists(corners(), min_size=10, max_size=10))
def test_the_sweep_finds_what_comparing_all_sides_finds(outlines: list[list[Point]]) -> None:
    for outline in outlines:
        fault = fault_of(outline)
        if fault in (None, "crossing"):
            assert (fault == "crossing") == meets_itself(outline)


@pytest.mark.parametrize(
    ("outline", "fault"),
    [
        ([(0, 0), (4, 0)], "points"),
        ([(0, 0), (4, 0), (0, 0), (0, 4)], "repeat"),
        ([(0, 0), (2, 2), (4, 4)], "area"),
        ([(0, 0), (4, 0), (4, 4), (2, 0), (0, 4)], "crossing"),
        ([(0, 0), (4, 0), (2, 0), (2, 4)], "crossing"),
        ([(0, 0), (0, 4), (0, 2), (4, 2)], "crossing"),
        ([(0, 0), (4, 4), (4, 0), (0, 3)], "crossing"),
        ([(0, 0), (2, 0), (4, 0), (4, 4), (0, 4), (0, 2)], None),
    ],
)
def test_each_fault_has_its_name(outline: list[Point], fault: str | None) -> None:
    assert fault_of(outline) == fault


@settings(max_examples=200)
@given(st.integers(3, 40), st.data())
def test_a_comb_is_simple_until_one_tooth_touches_the_next(teeth: int, data: st.DataObject) -> None:
    comb = [(x, 0 if x % 2 else 50) for x in range(2 * teeth)] + [(2 * teeth - 1, -1), (0, -1)]
    assert fault_of(comb) is None
    tooth = data.draw(st.integers(1, teeth - 1))
    comb[2 * tooth] = (2 * tooth - 2, 50 - data.draw(st.integers(1, 49)))
    assert fault_of(comb) == "crossing"
