"""An outline cut by lines along the bed, exactly and in whole numbers: where a row may run.

An outline is a closed polygon of whole nanometres in the frame of its bed, without self-crossings. A point on it
belongs to it. Lines along the bed through all corners slice it into slabs; sides run through these from edge to edge.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache, partial
from itertools import pairwise

from attrs import frozen

Point = tuple[int, int]
Interval = tuple[int, int]
_Side = tuple[int, int, int, int]
"""A side that does not run along the bed: its lower end, and the way from there along and across to the upper one."""


_Slab = tuple[tuple[_Side, _Side], ...]
"""The ground between two neighbouring lines: from the head on, where each of its parts begins and where it ends."""


@frozen
class _Sliced:
    """An outline in slabs: the offsets of its corners, what lies between each two, what it holds from one of them to
    the next, and its sides along the bed."""

    levels: tuple[int, ...]
    slabs: tuple[_Slab, ...]
    wholes: tuple[list[Interval], ...]
    along: dict[int, tuple[Interval, ...]]


def runs_across(outline: Sequence[Point], low: int, high: int) -> tuple[Interval, ...]:
    """The tape readings at which the outline holds everything from offset `low` to `high`, as closed intervals.

    All in nm, rounded inwards; `low` is not above `high`. In a slab all sides are straight, so it is held where both
    its edges are.
    """
    return _runs(_sliced(tuple(outline)), low, high)


def cutter(outline: Sequence[Point]) -> Callable[[int, int], tuple[Interval, ...]]:
    """What cuts one outline by many strips, as `runs_across` does."""
    return partial(_runs, _sliced(tuple(outline)))


def _runs(sliced: _Sliced, low: int, high: int) -> tuple[Interval, ...]:
    if low == high:
        return _held_on_line(sliced, low)
    levels = sliced.levels
    if low < levels[0] or levels[-1] < high:
        return ()
    first, last = bisect_right(levels, low) - 1, bisect_left(levels, high) - 1
    if first == last:
        return tuple(_held_in(sliced.slabs[first], low, high))
    held = _shared(
        _held_in(sliced.slabs[first], low, levels[first + 1]), _held_in(sliced.slabs[last], levels[last], high)
    )
    for whole in sliced.wholes[first + 1 : last]:
        held = _shared(held, whole)
    return tuple(held)


def _held_in(slab: _Slab, bottom: int, top: int) -> list[Interval]:
    """What a slab holds from one offset to another: of each trapezoid, its narrowest reach, from the head on.

    Rounding inwards first and sharing afterwards gives the same as the other way round.
    """
    cuts = []
    for (x1, y1, along1, up1), (x2, y2, along2, up2) in slab:
        left = x1 - along1 * (y1 - (top if along1 > 0 else bottom)) // up1 if along1 else x1
        right = x2 + along2 * ((bottom if along2 > 0 else top) - y2) // up2 if along2 else x2
        if left <= right:
            cuts.append((left, right))
    return cuts


def _held_on_line(sliced: _Sliced, level: int) -> tuple[Interval, ...]:
    """The closed inside on one line: what either side of it holds, and sides that lie on it.

    Where ground ends at no corner, it ends at the same place seen from above and from below: merging what is rounded
    gives the same as rounding what is merged.
    """
    first, end = bisect_left(sliced.levels, level) - 1, bisect_right(sliced.levels, level)
    cuts = [cut for slab in sliced.slabs[max(0, first) : end] for cut in _held_in(slab, level, level)]
    return _merged([*cuts, *sliced.along.get(level, ())])


@lru_cache(maxsize=256)
def _sliced(outline: tuple[Point, ...]) -> _Sliced:
    """An outline made ready for all its rows; where n sides lie across n slabs, as in a comb, n² places are kept."""
    levels = tuple(sorted({y for _x, y in outline}))
    number_of = {level: number for number, level in enumerate(levels)}
    spanning: list[list[_Side]] = [[] for _level in levels[1:]]
    along: dict[int, tuple[Interval, ...]] = {}
    for one, other in zip(outline, (*outline[1:], outline[0]), strict=True):
        (x1, y1), (x2, y2) = (one, other) if one[1] <= other[1] else (other, one)
        if y1 == y2:
            along[y1] = (*along.get(y1, ()), (min(x1, x2), max(x1, x2)))
        for number in range(number_of[y1], number_of[y2]):
            spanning[number].append((x1, y1, x2 - x1, y2 - y1))
    slabs = [_slab(sides, sum(edges), levels) for sides, edges in zip(spanning, pairwise(levels), strict=True)]
    wholes = [_held_in(slab, *edges) for slab, edges in zip(slabs, pairwise(levels), strict=True)]
    return _Sliced(levels, tuple(slabs), tuple(wholes), along)


def _slab(sides: list[_Side], twice_middle: int, levels: tuple[int, ...]) -> _Slab:
    """A slab from the sides that span it, put in order by where they cross its middle, at which no two meet.

    Two fractions that differ, with denominators up to twice the height h, differ by 1 / (2 h)² or more. Taken
    (2 h)² times or more and rounded down, they still differ.
    """
    fine = 2 * (2 * (levels[-1] - levels[0])).bit_length()

    def crossing(side: _Side) -> int:
        x, y, along, up = side
        return (x << fine) + ((along * (twice_middle - 2 * y) << fine) // (2 * up) if along else 0)

    ordered = sorted(sides, key=crossing)
    return tuple(zip(ordered[::2], ordered[1::2], strict=True))


def _merged(cuts: list[Interval]) -> tuple[Interval, ...]:
    merged: list[Interval] = []
    for left, right in sorted(cuts):
        if merged and left <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(merged[-1][1], right))
        else:
            merged.append((left, right))
    return tuple(merged)


def _shared(ones: list[Interval], others: list[Interval]) -> list[Interval]:
    """What two rows of intervals share, each in order and its intervals apart."""
    shared: list[Interval] = []
    one = other = 0
    while one < len(ones) and other < len(others):
        (left, right), (first, last) = ones[one], others[other]
        if left <= last and first <= right:
            shared.append((left if left > first else first, right if right < last else last))
        if right < last:
            one += 1
        else:
            other += 1
    return shared


def without(runs: Iterable[Interval], first: int, last: int) -> list[Interval]:
    """Runs less the open stretch between two readings: a plant at its very ends may stand."""
    kept: list[Interval] = []
    for left, right in runs:
        if last <= left or right <= first:
            kept.append((left, right))
            continue
        if left <= first:
            kept.append((left, first))
        if last <= right:
            kept.append((last, right))
    return kept
