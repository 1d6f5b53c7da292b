"""How much room there is on the ground for the name of a bed: before its head, and along its upper edge."""

from functools import lru_cache

import numpy as np
from attrs import frozen

from gardenplot.drawing.marks import Point
from gardenplot.plan.ground import Frame
from gardenplot.units import MM

ROOM = 8000.0
"""How far in mm a name may reach where nothing lies."""
Corners = tuple[Point, ...]
Box = tuple[float, float, float, float]
"""The least x and y, and the greatest."""


@frozen
class Room:
    """What is free in mm before the head of a bed, and beside its edge at the base line and the edge across."""

    before: float
    beside: float
    across: float


def rooms_of(beds: tuple[tuple[Frame, float, float, Corners], ...], walls: tuple[Corners, ...]) -> tuple[Room, ...]:
    """The room at each bed, given by its frame, length, width and corners in mm, among all beds and tunnels."""
    shapes = [corners for _frame, _length, _width, corners in beds] + list(walls)
    if not beds:
        return ()
    left, top, right, bottom = np.array([box_of(corners) for corners in shapes]).T
    near = (left[:, None] < right + ROOM) & (left < right[:, None] + ROOM)
    near &= (top[:, None] < bottom + ROOM) & (top < bottom[:, None] + ROOM)
    np.fill_diagonal(near, val=False)
    return tuple(
        _room(frame, length, width, tuple(shapes[other] for other in np.flatnonzero(around).tolist()))
        for (frame, length, width, _corners), around in zip(beds, near, strict=False)
    )


@lru_cache(maxsize=2048)
def _room(frame: Frame, length: float, width: float, near: tuple[Corners, ...]) -> Room:
    seen = [box_of([frame.from_ground(x * MM, y * MM) for x, y in corners], MM) for corners in near]
    behind = [(left, right) for left, top, right, bottom in seen if top < width and bottom > 0]
    along = [(top, bottom) for left, top, right, bottom in seen if left < length and right > 0]
    return Room(
        min((_free(low, high) for low, high in behind), default=ROOM),
        min((_free(low, high) for low, high in along), default=ROOM),
        min((_free(width - high, width - low) for low, high in along), default=ROOM),
    )


def _free(low: float, high: float) -> float:
    """How far before nothing a stretch ends; where it reaches over it, as a tunnel does, how far it begins before."""
    if low < 0 < high:
        return min(ROOM, -low)
    return min(ROOM, -high) if high <= 0 else ROOM


def box_of(spots: Corners | list[Point], unit: float = 1.0) -> Box:
    """The box round some spots, in so many of their units."""
    xs, ys = [x for x, _y in spots], [y for _x, y in spots]
    return min(xs) / unit, min(ys) / unit, max(xs) / unit, max(ys) / unit
