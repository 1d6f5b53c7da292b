"""Where words on the ground find room: boxes turned any way, and whether they keep clear of what is there."""

from collections.abc import Iterable, Sequence
from math import cos, radians, sin

import numpy as np

from gardenplot.drawing.marks import Point

Corners = tuple[Point, ...]
"""The corners of something convex, or the two ends of a line."""
Box = tuple[float, float, float, float]
"""The least x and y, and the greatest."""


def box_of(spots: Sequence[Point]) -> Box:
    """The box round some spots."""
    xs, ys = [x for x, _y in spots], [y for _x, y in spots]
    return min(xs), min(ys), max(xs), max(ys)


def turned_box(at: Point, turn: float, left: float, top: float, width: float, height: float) -> Corners:
    """A box beside a place, turned about it by so many degrees clockwise."""
    right, down = cos(radians(turn)), sin(radians(turn))
    corners = ((left, top), (left + width, top), (left + width, top + height), (left, top + height))
    return tuple((at[0] + x * right - y * down, at[1] + x * down + y * right) for x, y in corners)


def _is_straight(corners: Corners) -> bool:
    """Whether something is a rectangle whose sides run straight along and across."""
    return len(corners) == 4 and len({x for x, _y in corners}) == 2 == len({y for _x, y in corners})


def are_apart(one: Corners, other: Corners) -> bool:
    """Whether nothing of one lies in the other: some side of either parts them."""
    return any(_parts(side, one, other) for side in (*_sides(one), *_sides(other)))


def _sides(corners: Corners) -> Iterable[Point]:
    """The way of each side; of a line also the way across it."""
    ways = [(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], *corners[:1]), strict=True)]
    return [*ways, (-ways[0][1], ways[0][0])] if len(corners) == 2 else ways


def _parts(side: Point, one: Corners, other: Corners) -> bool:
    mine, theirs = ([y * side[0] - x * side[1] for x, y in corners] for corners in (one, other))
    return max(mine) <= min(theirs) or max(theirs) <= min(mine)


class Taken:
    """What ground is taken, to be asked often: first of all by the box round each thing."""

    def __init__(self, things: Iterable[Corners]) -> None:
        self._things = list(things)
        self._boxes = np.array([box_of(one) for one in self._things], dtype=float).reshape(-1, 4)

    def is_free(self, corners: Corners) -> bool:
        """Whether something would keep clear of all that is taken."""
        left, top, right, bottom = box_of(corners)
        boxes = self._boxes
        near = (boxes[:, 0] < right) & (boxes[:, 2] > left) & (boxes[:, 1] < bottom) & (boxes[:, 3] > top)
        found = [self._things[number] for number in np.flatnonzero(near).tolist()]
        # Of two that lie straight the boxes round them are themselves.
        if _is_straight(corners) and any(_is_straight(one) for one in found):
            return False
        return all(are_apart(corners, one) for one in found)

    def take(self, corners: Corners) -> None:
        """Let something have its ground."""
        self._things.append(corners)
        self._boxes = np.vstack((self._boxes, box_of(corners)))
