"""Rings of plants round the middle of a bed, the outermost its edge distance from the nearest edge.

On a ring of radius r stand as many plants as keep their spacing s along the chord: the most n with
2 r sin(pi / n) >= s. Rings lie a row spacing apart; where less than s is left across, one plant stands in the middle.
Places are rounded to the nearest nanometre, and so is the spacing.
"""

from math import asin, cos, isqrt, pi, sin, tau

from gardenplot.layout.clearance import keeps_clear
from gardenplot.layout.outline import Point
from gardenplot.layout.value import Grid, Ring
from gardenplot.plan import Bed

_ROUNDING = 1e-6
"""In nm: a chord that is exactly its spacing may come out less by a rounding of floats."""


def on_ring(radius: int, in_row: int) -> int:
    """How many plants stand on a ring; one where it is too small for two."""
    if 2 * radius < in_row:
        return 1
    count = max(2, int(pi / asin(min(1.0, in_row / (2 * radius)))) - 1)
    while 2 * radius * sin(pi / (count + 1)) >= in_row - _ROUNDING:
        count += 1
    return count


def ring_radii(inner: int, edge: int, between: int, in_row: int) -> tuple[int, ...]:
    """The radii of the rings inside a circle of radius `inner`, from outside in; the middle has radius 0."""
    radii, radius = [], inner - edge
    while 2 * radius >= in_row:
        radii.append(radius)
        radius -= between
    return (*radii, 0) if radius >= 0 else tuple(radii)


def inner_radius(middle: Point, corners: tuple[Point, ...]) -> int:
    """The largest whole radius of a circle round `middle` that a polygon holds; below 0 where it is outside."""
    sides = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    crossed = sum(
        _is_left(middle, one, other) for one, other in sides if (one[1] > middle[1]) != (other[1] > middle[1])
    )
    return min(_from_side(middle, *side) for side in sides) if crossed % 2 else -1


def _is_left(point: Point, one: Point, other: Point) -> bool:
    """Whether a side that spans the point's level crosses it beyond the point."""
    low, high = (one, other) if one[1] < other[1] else (other, one)
    return (high[0] - low[0]) * (point[1] - low[1]) > (point[0] - low[0]) * (high[1] - low[1])


def _from_side(point: Point, one: Point, other: Point) -> int:
    """The distance of a point from a side, rounded down."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    px, py = point[0] - one[0], point[1] - one[1]
    along, square = px * dx + py * dy, dx * dx + dy * dy
    if along <= 0:
        return isqrt(px * px + py * py)
    if along >= square:
        return isqrt((point[0] - other[0]) ** 2 + (point[1] - other[1]) ** 2)
    return isqrt((px * dy - py * dx) ** 2 // square)


def rings_in(
    bed: Bed, grid: Grid, radii: tuple[int, ...], block: tuple[int, int], wanted: int | None
) -> tuple[Ring, ...]:
    """The rings of a block with the plants that stand in it and keep clear of obstacles, `wanted` of them at most.

    The outer rings are filled first; the last of them has its plants as far apart as they come.
    """
    middle = (bed.length.nm // 2, bed.width.nm // 2)
    rings, left = [], wanted
    for number, radius in enumerate(radii):
        places = _places(bed, middle, radius, on_ring(radius, grid.in_row), number, block)
        if left is not None and len(places) > left:
            places = _places(bed, middle, radius, left, number, block)
        left = left - len(places) if left is not None else None
        rings.append(Ring(radius, places))
    return tuple(rings)


def _places(
    bed: Bed, middle: Point, radius: int, count: int, number: int, block: tuple[int, int]
) -> tuple[tuple[int, int], ...]:
    """Places on a ring, the first towards the head."""
    turns = (pi + tau * turn / count for turn in range(count))
    places = ((middle[0] + round(radius * cos(turn)), middle[1] + round(radius * sin(turn))) for turn in turns)
    return tuple(
        place
        for place in places
        if block[0] <= place[0] <= block[1] and all(keeps_clear(one, place, number) for one in bed.obstacles)
    )
