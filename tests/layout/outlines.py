"""Simple outlines of any kind to test with: stars, stairs and combs, and any few points, small and in nanometres."""

from functools import cmp_to_key
from itertools import pairwise

from hypothesis import assume
from hypothesis import strategies as st

from gardenplot.plan.simple import fault_of

Point = tuple[int, int]
Outline = tuple[Point, ...]

REACH = (3, 8, 40, 10**11)
"""How far outlines reach: on a grid so coarse that much falls together, and over 100 m in nm."""


@st.composite
def stars(draw: st.DrawFn) -> Outline:
    """Points in the order in which they are seen from a point inside."""
    reach = draw(st.sampled_from(REACH))
    across = st.integers(-reach, reach)
    spokes = draw(st.lists(st.tuples(across, across).filter(any), min_size=3, max_size=14))
    ordered = sorted(spokes, key=cmp_to_key(_round_the_middle))
    seen = [ordered[0], *(after for before, after in pairwise(ordered) if _round_the_middle(before, after))]
    return _simple(seen)


def _round_the_middle(one: Point, other: Point) -> int:
    """Which of two points comes first on a round that begins along the bed; 0 if they lie in one direction."""
    halves = [point < (0, 0) if point[1] == 0 else point[1] < 0 for point in (one, other)]
    return halves[0] - halves[1] or other[0] * one[1] - other[1] * one[0]


@st.composite
def stairs(draw: st.DrawFn) -> Outline:
    """Level and upright sides only: steps along both edges of a bed, or the same on end, with many runs to a row."""
    reach = draw(st.sampled_from(REACH))
    columns = draw(st.lists(st.tuples(*[st.integers(1, reach)] * 3), min_size=1, max_size=10))
    upper: list[Point] = []
    lower: list[Point] = []
    at = 0
    for wide, above, below in columns:
        upper += [(at, above), (at + wide, above)]
        lower += [(at, -below), (at + wide, -below)]
        at += wide
    corners = list(dict.fromkeys([*lower, *reversed(upper)]))
    return _simple([(y, x) for x, y in corners] if draw(st.booleans()) else corners)


@st.composite
def scatters(draw: st.DrawFn) -> Outline:
    """Any few points in any order, if they make an outline."""
    reach = draw(st.sampled_from(REACH))
    across = st.integers(0, reach)
    return _simple(draw(st.lists(st.tuples(across, across), min_size=3, max_size=6, unique=True)))


def _simple(corners: list[Point]) -> Outline:
    assume(fault_of(corners) is None)
    return tuple(corners)


def outlines() -> st.SearchStrategy[Outline]:
    """A simple outline of any kind."""
    return st.one_of(stars(), stairs(), scatters())


@st.composite
def slabs(draw: st.DrawFn, outline: Outline) -> tuple[int, int]:
    """Two offsets, often right at corners, often the same, sometimes outside."""
    corners = sorted({y for _x, y in outline})
    offsets = st.sampled_from(corners) | st.integers(corners[0] - 1, corners[-1] + 1)
    low, high = sorted((draw(offsets), draw(offsets)))
    return (low, low) if draw(st.booleans()) else (low, high)
