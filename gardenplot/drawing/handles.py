"""What of a bed's shape can be taken hold of: its corners, the middles of its sides, and what stands in it."""

from enum import StrEnum
from math import hypot

from attrs import frozen

from gardenplot.layout.zone import corners_of
from gardenplot.plan import Bed, Obstacle
from gardenplot.units import MM

Point = tuple[int, int]
"""A tape reading and an offset from the base line, in nm."""
REACH = 8.0
"""How near in pixels a point must come to a handle."""
_SHORTEST_SIDE = 44.0
"""A side must be so long in pixels before its middle can be told from its corners."""


class Grip(StrEnum):
    """What kind of thing is taken hold of."""

    CORNER = "corner"
    SIDE = "side"
    OBSTACLE = "obstacle"


@frozen
class Handle:
    """A corner, the side from a corner to the next, or an obstacle, by its number in the bed from 0."""

    grip: Grip
    number: int


@frozen
class Zoom:
    """Pixels per mm along the beds and across them."""

    along: float
    across: float

    def pixels(self, point: Point) -> tuple[float, float]:
        """A place in pixels from the bed's head and its base line."""
        return point[0] / MM * self.along, point[1] / MM * self.across


def outline_of(bed: Bed) -> tuple[Point, ...]:
    """The corners that can be moved, in nm; none where the bed's shape is not drawn corner by corner."""
    return corners_of(bed) if bed.outline else ()


def place_of(obstacle: Obstacle) -> Point:
    """The middle of an obstacle in nm."""
    return obstacle.x.nm, obstacle.y.nm


def middles(corners: tuple[Point, ...], zoom: Zoom) -> dict[int, Point]:
    """The middles of the sides that are long enough to be taken hold of, by the number of the side."""
    return {
        number: ((one[0] + other[0]) // 2, (one[1] + other[1]) // 2)
        for number, (one, other) in enumerate(zip(corners, (*corners[1:], *corners[:1]), strict=True))
        if _apart(zoom.pixels(one), zoom.pixels(other)) >= _SHORTEST_SIDE
    }


def shape_handle_at(bed: Bed, zoom: Zoom, x: float, y: float) -> Handle | None:
    """The corner or else the side of a bed's outline that lies under a point, in pixels from head and base line."""
    corners = outline_of(bed)
    places = [(Handle(Grip.CORNER, number), corner) for number, corner in enumerate(corners)]
    sides = [(Handle(Grip.SIDE, number), middle) for number, middle in middles(corners, zoom).items()]
    return _nearest(places, zoom, x, y) or _nearest(sides, zoom, x, y)


def obstacle_at(bed: Bed, zoom: Zoom, x: float, y: float) -> Handle | None:
    """The obstacle under a point, in pixels from head and base line; of several the one drawn last."""
    for number, obstacle in reversed(list(enumerate(bed.obstacles))):
        left, top = zoom.pixels(place_of(obstacle))
        along, across = half_sizes(obstacle, zoom)
        if abs(x - left) <= max(along, REACH) and abs(y - top) <= max(across, REACH):
            return Handle(Grip.OBSTACLE, number)
    return None


def half_sizes(obstacle: Obstacle, zoom: Zoom, more: int = 0) -> tuple[float, float]:
    """Half an obstacle's size along and across in pixels, `more` nm around it included."""
    length, width = sizes(obstacle)
    return (length // 2 + more) / MM * zoom.along, (width // 2 + more) / MM * zoom.across


def sizes(obstacle: Obstacle) -> tuple[int, int]:
    """How far an obstacle reaches along and across, in nm."""
    if obstacle.diameter is not None:
        return obstacle.diameter.nm, obstacle.diameter.nm
    return obstacle.length.nm if obstacle.length else 0, obstacle.width.nm if obstacle.width else 0


def _nearest(places: list[tuple[Handle, Point]], zoom: Zoom, x: float, y: float) -> Handle | None:
    away = [(_apart(zoom.pixels(place), (x, y)), number) for number, (_handle, place) in enumerate(places)]
    nearest = min(away, default=(REACH + 1, 0))
    return places[nearest[1]][0] if nearest[0] <= REACH else None


def _apart(one: tuple[float, float], other: tuple[float, float]) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def handles_of(bed: Bed) -> tuple[Handle, ...]:
    """All corners and then all obstacles of a bed, in walking order."""
    corners = (Handle(Grip.CORNER, number) for number in range(len(outline_of(bed))))
    obstacles = (Handle(Grip.OBSTACLE, number) for number in range(len(bed.obstacles)))
    return (*corners, *obstacles)


def handle_place(bed: Bed, handle: Handle) -> Point:
    """Where a corner or an obstacle is, in nm."""
    if handle.grip is Grip.OBSTACLE:
        return place_of(bed.obstacles[handle.number])
    return outline_of(bed)[handle.number]
