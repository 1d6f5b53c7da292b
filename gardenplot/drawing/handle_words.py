"""What is said about a corner, a side or an obstacle: under the pointer, and to a screen reader."""

from datetime import date
from fractions import Fraction
from math import isqrt

from gardenplot.drawing.handles import Grip, Handle, Point, handle_place, outline_of
from gardenplot.drawing.sayings import so_many_planted
from gardenplot.layout import lay_out_bed, standing
from gardenplot.plan import Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import offset, rounded, span, tape
from gardenplot.words import _

_GAP = "   "


def corner_line(points: tuple[Point, ...], held: int, units: Units, *, closed: bool = True) -> str:
    """A corner of an outline and its sides: "tape 6.20 m by 1.10 m   sides 2.00 m and 1.10 m"."""
    reading, across = points[held]
    where = _("tape {reading}, {offset} from the base line").format(
        reading=tape(reading, units), offset=offset(across, units)
    )
    before = span(side_length(points[held], points[held - 1]), units)
    if closed:
        after = span(side_length(points[held], points[(held + 1) % len(points)]), units)
        return where + _GAP + _("sides {before} and {after}").format(before=before, after=after)
    return where if held == 0 else where + _GAP + _("side {length}").format(length=before)


def side_length(one: Point, other: Point) -> int:
    """How far two corners are apart, to the nearest nanometre."""
    square = (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2
    return rounded(Fraction(isqrt(4 * square), 2))


def obstacle_line(plan: Plan, bed_id: str, number: int, day: date | None) -> str:
    """An obstacle's place and the plants of its bed: "post at 5.00 m by 50 cm · 131 plants"."""
    laid = lay_out_bed(plan, bed_of(plan, bed_id))
    planted = so_many_planted((laid,), {layout.planting for layout in standing(laid, day)})
    return f"{_placed(plan, bed_id, Handle(Grip.OBSTACLE, number))} · {planted}"


def handle_words(plan: Plan, bed_id: str, handle: Handle) -> str:
    """A chosen corner or obstacle in words: "North: corner 3 of 6, tape 6.20 m, 1.10 m from the base line"."""
    bed = bed_of(plan, bed_id)
    if handle.grip is Grip.OBSTACLE:
        return f"{bed.name}: {_placed(plan, bed_id, handle)}"
    points, units = outline_of(bed), plan.place.units
    corner = _("corner {number} of {count}").format(number=handle.number + 1, count=len(points))
    return f"{bed.name}: {corner}, {corner_line(points, handle.number, units)}"


def _placed(plan: Plan, bed_id: str, handle: Handle) -> str:
    bed, units = bed_of(plan, bed_id), plan.place.units
    x, y = handle_place(bed, handle)
    name = bed.obstacles[handle.number].name
    return _("{name} at {x} by {y}").format(name=name, x=tape(x, units), y=offset(y, units))
