"""An independent referee of any ground: shapely says where on a row line places may lie, in floats.

It knows neither the engine's outlines nor its clearances: a row holds its strip where the strip less the bed leaves
nothing over, and an obstacle is drawn as large as what it keeps clear. A slack in nm draws all ground that much
smaller, below nothing larger; it takes up the rounding of floats and of round shapes.
"""

from collections.abc import Callable, Iterable
from math import floor

from attrs import frozen
from shapely import LineString, Point, Polygon, box
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from gardenplot.layout.value import Line
from gardenplot.plan import Bed, Obstacle

MICROMETRE = 1000
_QUARTER = 2048
"""Segments of a quarter circle: it lies within 8e-8 of the radius, 0.2 micrometres of 2.5 m."""
Interval = tuple[float, float]
Counts = tuple[int, int]


def ground_of(bed: Bed) -> BaseGeometry:
    """A bed as shapely sees it, in nm."""
    if bed.diameter is not None:
        half = bed.diameter.nm / 2
        return Point(half, half).buffer(half, quad_segs=_QUARTER)
    if bed.outline:
        return Polygon([(x.nm, y.nm) for x, y in bed.outline])
    ground: BaseGeometry = box(0, 0, bed.length.nm, bed.width.nm)
    post = bed.box.post.nm if bed.box is not None and bed.box.post is not None else 0
    for x in (0, bed.length.nm - post):
        for y in (0, bed.width.nm - post):
            ground = ground.difference(box(x, y, x + post, y + post)) if post else ground
    return ground


def body_of(obstacle: Obstacle) -> BaseGeometry:
    """An obstacle without its keep-clear distance."""
    x, y = obstacle.x.nm, obstacle.y.nm
    if obstacle.diameter is not None:
        return Point(x, y).buffer(obstacle.diameter.nm / 2, quad_segs=_QUARTER)
    length, width = (one.nm / 2 if one is not None else 0 for one in (obstacle.length, obstacle.width))
    return box(x - length, y - width, x + length, y + width)


def clear_of(obstacle: Obstacle) -> int:
    """The keep-clear distance of an obstacle in nm."""
    return obstacle.keep_clear.nm if obstacle.keep_clear is not None else 0


@frozen
class Referee:
    """A bed drawn smaller by a slack and its obstacles larger; row lines run along x, also those across the bed."""

    ground: BaseGeometry
    taken: tuple[BaseGeometry, ...]

    def free(self, line: Line, start: float, end: float) -> list[Interval]:
        """Where on a row line places may lie, between two readings along it."""
        head, foot = line.ends
        held = [(max(left, start), min(right, end)) for left, right in self._held(line)]
        free = [(left + head, right - foot) for left, right in held]
        low, high = (line.low, line.high) if line.reach else (line.offset, line.offset)
        for one in self.taken:
            for first, last in reaches(strip(low, high, one).intersection(one)):
                free = list(_without(free, first - line.reach, last))
        return [(left, right) for left, right in free if left <= right]

    def _held(self, line: Line) -> list[Interval]:
        """Where all from `low` to `high` is ground."""
        if self.ground.is_empty:
            return []
        left, _bottom, right, _top = self.ground.bounds
        found = [(left, right)]
        for first, last in reaches(strip(line.low, line.high, self.ground).difference(self.ground)):
            found = list(_without(found, first, last))
        return found


def referee_of(bed: Bed, slack: float, *, across: bool) -> Referee:
    """The referee of a bed for rows along it or across it."""
    turn = _turned if across else _as_it_is
    taken = (body_of(one).buffer(clear_of(one) + slack, quad_segs=_QUARTER) for one in bed.obstacles)
    return Referee(turn(ground_of(bed).buffer(-slack)), tuple(turn(one) for one in taken if not one.is_empty))


def _as_it_is(shape: BaseGeometry) -> BaseGeometry:
    return shape


def _turned(shape: BaseGeometry) -> BaseGeometry:
    """A shape with along and across changed about."""
    return affine_transform(shape, [0, 1, 1, 0, 0, 0])


def strip(low: float, high: float, beside: BaseGeometry) -> BaseGeometry:
    """All from one offset to another, past both ends of a shape."""
    left, _bottom, right, _top = beside.bounds
    if low == high:
        return LineString([(left - MICROMETRE, low), (right + MICROMETRE, low)])
    return box(left - MICROMETRE, low, right + MICROMETRE, high)


def reaches(shape: BaseGeometry) -> list[Interval]:
    """How far each part of a shape reaches along."""
    return [(part.bounds[0], part.bounds[2]) for part in getattr(shape, "geoms", [shape]) if not part.is_empty]


def _without(intervals: Iterable[Interval], first: float, last: float) -> Iterable[Interval]:
    """Intervals less the open stretch between two readings."""
    for left, right in intervals:
        if last <= left or right <= first:
            yield left, right
            continue
        if left <= first:
            yield left, first
        if last <= right:
            yield last, right


def places_in(free: Iterable[Interval], line: Line, phase: float | None) -> int:
    """The most places a step apart in intervals: those of a phase or, without one, each as early as can be."""
    count, last = 0, None
    for left, right in sorted(free):
        if phase is not None:
            first = phase - floor((phase - left) / line.step) * line.step
        else:
            first = left if last is None else max(left, last + line.step)
        held = floor((right - first) / line.step) + 1 if right >= first else 0
        if held:
            count, last = count + held, first + (held - 1) * line.step
    return count


def bounds(bed: Bed, *, across: bool) -> Callable[[Line, int, int, float | None], Counts]:
    """The least and the most places of a line between two readings, on ground a micrometre smaller and larger."""
    both = [referee_of(bed, slack, across=across) for slack in (MICROMETRE, -MICROMETRE)]

    def held(line: Line, start: int, end: int, phase: float | None) -> Counts:
        least, most = (places_in(one.free(line, start, end), line, phase) for one in both)
        return least, most

    return held
