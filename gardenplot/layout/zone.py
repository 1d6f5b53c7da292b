"""The ground of a bed: what its outline holds along and across, and its parts between tape readings.

All in whole nanometres.
"""

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache, partial

from gardenplot.layout.outline import Interval, Point, cutter
from gardenplot.layout.round import corners, strip_held
from gardenplot.plan import Bed
from gardenplot.plan.shapes import is_rectangle, straight_corners


def is_plain(bed: Bed) -> bool:
    """Whether a bed is a rectangle with nothing in it, which closed formulas count."""
    return is_rectangle(bed) and not bed.obstacles


def is_metric(bed: Bed) -> bool:
    """Whether a bed was measured in metric units: each of them has an m, none of the others has."""
    typed = [bed.width, *(x for x, _y in bed.outline), bed.diameter, bed.box.width if bed.box is not None else None]
    return any("m" in one.text.lower() for one in typed if one is not None)


@lru_cache(maxsize=256)
def corners_of(bed: Bed) -> tuple[Point, ...]:
    """The corners of a bed, also of a rectangle; of a disc those of the polygon that it is drawn as."""
    return straight_corners(bed) if bed.diameter is None else corners(bed.diameter.nm)


def held(bed: Bed, low: int, high: int, *, across: bool = False) -> tuple[Interval, ...]:
    """The tape readings at which a bed holds all between two offsets; `across`, the offsets between two readings.

    Obstacles are not counted.
    """
    return cuts_of(bed, across=across)(low, high)


@lru_cache(maxsize=512)
def cuts_of(bed: Bed, *, across: bool = False) -> Callable[[int, int], tuple[Interval, ...]]:
    """What gives the ground of a bed between two offsets, or two readings, as `held` does."""
    if bed.diameter is not None:
        return partial(strip_held, bed.diameter.nm)
    if is_rectangle(bed):
        sides = (bed.width.nm, bed.length.nm) if across else (bed.length.nm, bed.width.nm)
        return partial(_box_held, *sides)
    return cutter(_turned(bed) if across else corners_of(bed))


def _box_held(length: int, width: int, low: int, high: int) -> tuple[Interval, ...]:
    return ((0, length),) if low >= 0 and high <= width else ()


@lru_cache(maxsize=256)
def _turned(bed: Bed) -> tuple[Point, ...]:
    """The corners of a bed with along and across changed about."""
    return tuple((y, x) for x, y in corners_of(bed))


def within(runs: tuple[Interval, ...], start: int, end: int) -> tuple[Interval, ...]:
    """The parts of intervals that lie between two readings; also one of no length, as a plant may stand there."""
    return tuple((max(left, start), min(right, end)) for left, right in runs if max(left, start) <= min(right, end))


def clip(corners: tuple[Point, ...], start: int, end: int) -> tuple[Point, ...]:
    """A polygon between two tape readings; where it falls apart, its parts hang together by lines without area.

    Cut points are rounded to whole nanometres (Sutherland and Hodgman's reentrant clipping).
    """
    points = corners
    for limit, side in ((start, 1), (end, -1)):
        kept: list[Point] = []
        for one, other in zip(points, [*points[1:], *points[:1]], strict=True):
            inside, next_inside = side * (one[0] - limit) >= 0, side * (other[0] - limit) >= 0
            if inside:
                kept.append(one)
            if inside != next_inside:
                kept.append(
                    (limit, one[1] + round(Fraction((other[1] - one[1]) * (limit - one[0]), other[0] - one[0])))
                )
        points = tuple(kept)
    return points
