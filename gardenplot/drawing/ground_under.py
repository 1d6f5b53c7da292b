"""How the ground is looked at, and what of it lies under a point: a bed, a block in it, the handle that turns it."""

from datetime import date
from math import hypot

from attrs import evolve, frozen

from gardenplot.drawing.ground import GroundBed, GroundFigure
from gardenplot.drawing.ground_placing import Box
from gardenplot.drawing.marks import Point
from gardenplot.findings.ground import footprint
from gardenplot.layout import standing
from gardenplot.plan.ground import axis
from gardenplot.units import MM

HANDLE_AWAY = 26.0
"""How far in pixels the handle that turns a bed stands beyond its foot."""
_HANDLE_REACH = 10.0
_SLACK = 4.0
"""How near in pixels a point must come to a slim bed."""
CLOSEST, FARTHEST = 2.0, 0.0004
"""Pixels per mm: 2 shows a seedling, 0.0004 shows 2 km."""


@frozen
class Eye:
    """How the ground is looked at: pixels per mm, and where the peg is in pixels."""

    scale: float
    left: float
    top: float

    def pixels(self, spot: Point) -> Point:
        """A place on the ground in mm, in pixels."""
        return self.left + spot[0] * self.scale, self.top + spot[1] * self.scale

    def spot(self, x: float, y: float) -> Point:
        """The place on the ground under a pixel, in mm."""
        return (x - self.left) / self.scale, (y - self.top) / self.scale

    def moved(self, right: float, down: float) -> "Eye":
        """The same with everything so many pixels further right and down."""
        return evolve(self, left=self.left + right, top=self.top + down)

    def zoomed(self, factor: float, x: float, y: float) -> "Eye":
        """Nearer or farther, with what lies under a pixel staying there."""
        spot, scale = self.spot(x, y), max(FARTHEST, min(CLOSEST, self.scale * factor))
        return Eye(scale, x - spot[0] * scale, y - spot[1] * scale)


def eye_on(reach: Box, size: tuple[float, float], margin: float, *, names: float = 0.0, foot: float = 0.0) -> Eye:
    """The eye that sees a stretch of ground whole, in mm, in the middle of so many pixels with a margin round it.

    On the left `names` pixels more are kept for names before heads, below so many that `foot` pixels are free.
    """
    left, top, right, bottom = reach
    wide, high = max(right - left, 1000.0), max(bottom - top, 1000.0)
    below = max(0.0, foot - margin)
    room = max(80.0, size[0] - 2 * margin - names), max(40.0, size[1] - 2 * margin - below)
    scale = max(FARTHEST, min(CLOSEST, room[0] / wide, room[1] / high))
    middle = (size[0] + names) / 2, (size[1] - below) / 2
    return Eye(scale, middle[0] - (left + right) / 2 * scale, middle[1] - (top + bottom) / 2 * scale)


@frozen
class OnGround:
    """What lies under a point: a bed and a place in it in nm, perhaps a block there, or the handle that turns it."""

    bed: str
    x: int
    y: int
    planting: str | None = None
    is_handle: bool = False


def handle_at(one: GroundBed, eye: Eye) -> Point:
    """Where the handle that turns a bed stands, in pixels."""
    bed = one.laid.bed
    x, y = one.frame.to_ground(bed.length.nm, bed.width.nm / 2)
    right, down = axis(one.frame.turn)
    foot = eye.pixels((x / MM, y / MM))
    return foot[0] + HANDLE_AWAY * right, foot[1] + HANDLE_AWAY * down


def on_ground(
    figure: GroundFigure, eye: Eye, day: date | None, x: float, y: float, chosen: str | None = None
) -> OnGround | None:
    """What lies under a pixel: the handle of the bed `chosen` first, then the bed drawn last."""
    held = figure.bed_of(chosen) if chosen else None
    if held is not None:
        handle = handle_at(held, eye)
        if hypot(x - handle[0], y - handle[1]) <= _HANDLE_REACH:
            return evolve(_place(held, eye, x, y), is_handle=True)
    for one in ([held] if held else []) + list(reversed(figure.beds)):
        found = _place(one, eye, x, y)
        if _lies_in(one, found, _SLACK / eye.scale * MM):
            return evolve(found, planting=_planting_at(one, day, found.x))
    return None


def _place(one: GroundBed, eye: Eye, x: float, y: float) -> OnGround:
    spot = eye.spot(x, y)
    along, across = one.frame.from_ground(spot[0] * MM, spot[1] * MM)
    return OnGround(one.bed, round(along), round(across))


def _lies_in(one: GroundBed, place: OnGround, slack: float) -> bool:
    """Whether a place lies in the outline of a bed, or no further beside a slim bed than the hand can aim."""
    bed, inside = one.laid.bed, False
    if bed.width.nm < 2 * slack and 0 <= place.x <= bed.length.nm:
        return abs(place.y - bed.width.nm / 2) <= slack
    corners = footprint(bed)
    for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], *corners[:1]), strict=True):
        if (y1 > place.y) != (y2 > place.y) and place.x < x1 + (x2 - x1) * (place.y - y1) / (y2 - y1):
            inside = not inside
    return inside


def _planting_at(one: GroundBed, day: date | None, reading: int) -> str | None:
    return next(
        (layout.planting for layout in standing(one.laid, day) if layout.start <= reading <= layout.end), None
    )
