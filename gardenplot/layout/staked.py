"""Where stakes are driven: the two of a block, those of a bed's corners, and where something stands in their way."""

from collections.abc import Container

from gardenplot.layout.value import Layout
from gardenplot.plan import Bed, Obstacle
from gardenplot.plan.shapes import Point, posts_of, straight_corners

MOST_STAKED = 60
"""An outline of more corners follows a curve: it is taken from the drawing, and its corners take no stakes."""


def staked(bed: Bed, layout: Layout) -> tuple[int, int]:
    """The tape readings in nm of a block's two stakes: its ends, none of them beyond the margins of its bed."""
    first, last = bed.zone
    return min(max(layout.start, first), last), max(min(layout.end, last), first)


def beyond(bed: Bed, layout: Layout) -> tuple[int, int]:
    """How much of a block in nm lies before its first stake and behind its last one, since it does not fit."""
    start, end = staked(bed, layout)
    return max(0, start - layout.start), max(0, layout.end - end)


def post_at(bed: Bed, place: Point) -> bool:
    """Whether a corner post of a boarded box stands at a place in nm, its faces included."""
    x, y = place
    return any(left <= x <= right and low <= y <= high for (left, low), (right, high) in posts_of(bed))


def obstacle_at(bed: Bed, place: Point) -> Obstacle | None:
    """What else stands at a place in nm, its edge included; None where nothing does."""
    return next((one for one in bed.obstacles if _covers(one, place)), None)


def _covers(one: Obstacle, place: Point) -> bool:
    x, y = 2 * abs(place[0] - one.x.nm), 2 * abs(place[1] - one.y.nm)
    if one.diameter is not None:
        return x * x + y * y <= one.diameter.nm**2
    return x <= (one.length.nm if one.length else 0) and y <= (one.width.nm if one.width else 0)


def other_corners(bed: Bed, readings: Container[int]) -> tuple[Point, ...]:
    """The corners in nm that take a stake of their own: all that no stake on the base line, at the readings, marks.

    A boarded box has its corners, a round bed has none, and an outline of more than 60 takes none.
    """
    if bed.box is not None or bed.diameter is not None or len(bed.outline) > MOST_STAKED:
        return ()
    corners = straight_corners(bed)
    return tuple((x, y) for x, y in corners if (y or x not in readings) and obstacle_at(bed, (x, y)) is None)
