"""What stands beside a drawing of the ground at its own size: north arrow, scale bar, and words about both."""

from math import cos, radians, sin, tau

from attrs import frozen

from gardenplot.drawing.marks import Line, Mark, Outline, Pen, Point, Weight, box
from gardenplot.drawing.style import Ink
from gardenplot.drawing.tape import round_step
from gardenplot.units import MM, Degrees, Units
from gardenplot.units.figures import Figure, tape

_STAFF = 30.0
"""Half the height of the north arrow in pixels."""
_BAR = 6.0


def north_marks(north: Degrees) -> tuple[Mark, ...]:
    """The north arrow round (0, 0) in pixels: a staff with a ring at its foot and a pennant at its head."""
    pen = Pen(Ink.INK, Weight.STAKE)
    foot, head = _turned((0, _STAFF), north), _turned((0, -_STAFF), north)
    pennant = ((0.0, -_STAFF), (11.0, -_STAFF * 0.42), (0.0, -_STAFF * 0.58))
    ring = tuple((foot[0] + 4.5 * cos(part * tau / 24), foot[1] + 4.5 * sin(part * tau / 24)) for part in range(24))
    return (
        Line(_turned((0, _STAFF - 4.5), north), head, pen),
        Outline(tuple(_turned(one, north) for one in pennant), fill=Ink.INK),
        Outline(ring, pen=pen),
    )


def north_letter(north: Degrees) -> Point:
    """Where the N stands, beyond the tip of the arrow."""
    return _turned((0, -_STAFF - 11), north)


def _turned(point: Point, by: Degrees) -> Point:
    turn = radians(by.turn)
    x, y = point
    return x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn)


@frozen
class ScaleBar:
    """A round length of ground: its pixels, its marks from (0, 0) on, and what stands at its ends."""

    pixels: float
    marks: tuple[Mark, ...]
    words: Figure


def scale_bar(units: Units, px_per_mm: float, least: float = 90.0) -> ScaleBar:
    """A scale bar of a round length, at least so many pixels long: four parts, full and empty by turns."""
    length = round_step(units, least / px_per_mm * MM)
    pixels = length / MM * px_per_mm
    pen, quarter = Pen(Ink.INK, Weight.ROW), pixels / 4
    parts = tuple(
        Outline(box(part * quarter, 0, (part + 1) * quarter, _BAR), fill=Ink.PAPER if part % 2 else Ink.INK, pen=pen)
        for part in range(4)
    )
    return ScaleBar(pixels, parts, tape(length, units))
