"""The four marks that every drawing of beds is made of: outline, plants, line, label.

Places are plan millimetres in the frame of a bed (x from the head along it, y across from the base line); pens and
text have roles and paper sizes, which the renderers turn into pixels or points.
"""

from enum import IntEnum, StrEnum
from functools import cached_property
from math import cos, sin, tau
from typing import NamedTuple

from attrs import frozen

from gardenplot.drawing.style import Ink
from gardenplot.layout import Layout


class Weight(IntEnum):
    """The weights of lines, thin to thick."""

    ROW = 1
    EDGE = 2
    STAKE = 3


class Hatch(StrEnum):
    """What fills an area besides its tint, so that it is told without colour."""

    SLANTED = "slanted"
    CROSSED = "crossed"
    SOWN = "sown"
    LEVEL = "level"
    UPRIGHT = "upright"
    GRID = "grid"
    BACKWARD = "backward"
    SPOTTED = "spotted"
    DENSE = "dense"


class Shape(StrEnum):
    """The mark of one plant; plantings differ by it also in grey."""

    DISC = "disc"
    RING = "ring"
    SQUARE = "square"
    DIAMOND = "diamond"
    TRIANGLE = "triangle"
    CROSS = "cross"


@frozen
class Pen:
    """How a line is drawn."""

    ink: Ink
    weight: Weight = Weight.EDGE
    dashed: bool = False


Point = tuple[float, float]


class Circle(NamedTuple):
    """The middle and the radius of a circle."""

    middle: Point
    radius: float


@frozen
class Outline:
    """A closed shape; `tint` fills it with a pale share of its ink.

    Of a `circle` the points are those of a polygon in it that is as good on a screen; on paper it is drawn round.
    """

    points: tuple[Point, ...]
    fill: Ink | None = None
    tint: float = 1.0
    pen: Pen | None = None
    hatch: Hatch | None = None
    circle: Circle | None = None

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """The rectangle round it: left, top, right and bottom."""
        xs, ys = zip(*self.points, strict=True)
        return min(xs), min(ys), max(xs), max(ys)

    @property
    def is_box(self) -> bool:
        """Whether it is a rectangle that lies along the bed, its corners as `box` gives them."""
        if len(self.points) != 4:
            return False
        (left, top), (right, high), (other, bottom), (last, low) = self.points
        return left == last and right == other and top == high and bottom == low


@frozen
class Plants:
    """All plants of a layout, each a shape as wide as `spread` mm at most."""

    layout: Layout
    spread: float
    ink: Ink
    shape: Shape


@frozen
class Line:
    """A straight line, `overhang` paper millimetres longer at both ends."""

    start: Point
    end: Point
    pen: Pen
    overhang: float = 0


@frozen
class Label:
    """A line of text centred on a point: the first of `texts` that fits into `room` mm, or none of them.

    `across` is the room in mm across the bed.
    """

    at: Point
    texts: tuple[str, ...]
    room: float
    across: float
    bold: bool = False


Mark = Outline | Plants | Line | Label


def disc(x: float, y: float, radius: float, pen: Pen, fill: Ink | None = None) -> Outline:
    """A round thing with its middle at a spot."""
    points = ((x + radius * cos(turn * tau / 36), y + radius * sin(turn * tau / 36)) for turn in range(36))
    return Outline(tuple(points), fill, pen=pen, circle=Circle((x, y), radius))


def box(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    """The corners of a rectangle."""
    return ((left, top), (right, top), (right, bottom), (left, bottom))
