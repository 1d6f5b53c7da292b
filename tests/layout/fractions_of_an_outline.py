"""An outline cut by lines along the bed in fractions, plainly and slowly: the referee for what runs a row has."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import reduce
from itertools import pairwise
from math import ceil, floor

Point = tuple[int, int]
Interval = tuple[int, int]
_Cut = tuple[Fraction, Fraction]


def runs_in_fractions(outline: Sequence[Point], low: int, high: int) -> tuple[Interval, ...]:
    """The tape readings at which the outline holds everything from offset `low` to `high`, as closed intervals.

    Between two corners all sides are straight, so a slab between the offsets of neighbouring corners is held where
    both its edges are: intervals are cut at the edges of each slab and intersected. All in nm, rounded inwards.
    """
    levels = sorted({low, high, *(y for _x, y in outline if low < y < high)})
    if low == high:
        held = _line_cuts(outline, Fraction(low))
    else:
        slabs = [_slab_cuts(outline, bottom, top) for bottom, top in pairwise(levels)]
        held = reduce(_shared, slabs)
    return tuple((first, last) for left, right in held if (first := ceil(left)) <= (last := floor(right)))


def _slab_cuts(outline: Sequence[Point], bottom: int, top: int) -> tuple[_Cut, ...]:
    """What a slab holds from edge to edge, where no corner lies inside it: of each trapezoid, its narrowest reach."""
    middle = Fraction(bottom + top, 2)
    sides = sorted((side for side in _sides(outline) if _spans(side, middle)), key=lambda side: _at(side, middle))
    cuts = (
        (max(_at(left, bottom), _at(left, top)), min(_at(right, bottom), _at(right, top)))
        for left, right in _pairs(sides)
    )
    return tuple(cut for cut in cuts if cut[0] <= cut[1])


def _line_cuts(outline: Sequence[Point], level: Fraction) -> tuple[_Cut, ...]:
    """The closed inside on one line: what either side of it holds, and sides that lie on it."""
    offsets = sorted({Fraction(y) for _x, y in outline})
    below = max((one for one in offsets if one < level), default=None)
    above = min((one for one in offsets if one > level), default=None)
    cuts: list[_Cut] = []
    for neighbour in (below, above):
        if neighbour is None:
            continue
        middle = (level + neighbour) / 2
        sides = sorted((side for side in _sides(outline) if _spans(side, middle)), key=lambda side: _at(side, middle))
        cuts += [(_at(left, level), _at(right, level)) for left, right in _pairs(sides)]
    cuts += [
        (Fraction(min(a[0], b[0])), Fraction(max(a[0], b[0]))) for a, b in _sides(outline) if a[1] == b[1] == level
    ]
    return _merged(cuts)


_Side = tuple[Point, Point]


def _sides(outline: Sequence[Point]) -> Iterable[_Side]:
    return zip(outline, [*outline[1:], outline[0]], strict=True)


def _spans(side: _Side, level: Fraction) -> bool:
    (_x1, y1), (_x2, y2) = side
    return min(y1, y2) < level < max(y1, y2)


def _at(side: _Side, level: Fraction | int) -> Fraction:
    """Where a side crosses a line."""
    (x1, y1), (x2, y2) = side
    return x1 + Fraction((x2 - x1) * (level - y1), y2 - y1)


def _pairs(sides: list[_Side]) -> Iterable[tuple[_Side, _Side]]:
    return zip(sides[::2], sides[1::2], strict=True)


def _merged(cuts: list[_Cut]) -> tuple[_Cut, ...]:
    merged: list[_Cut] = []
    for left, right in sorted(cuts):
        if merged and left <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(merged[-1][1], right))
        else:
            merged.append((left, right))
    return tuple(merged)


def _shared(ones: tuple[_Cut, ...], others: tuple[_Cut, ...]) -> tuple[_Cut, ...]:
    """What two rows of intervals share."""
    return tuple(
        (max(left, first), min(right, last))
        for left, right in ones
        for first, last in others
        if max(left, first) <= min(right, last)
    )
