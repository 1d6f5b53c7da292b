"""Beds as strips one under another on one tape: where each lies on the canvas, and what lies under a point."""

from bisect import bisect_left, bisect_right
from datetime import date
from enum import StrEnum
from functools import cached_property

from attrs import evolve, frozen

from gardenplot.drawing.handles import Handle, Zoom, obstacle_at, shape_handle_at
from gardenplot.layout import LaidOut, Layout, standing
from gardenplot.units import MM

GUTTER = 132
"""Pixels left of tape zero for the beds' names, where these are no longer than most."""
HEADROOM = 34.0
"""Pixels above a strip, for the head flag."""
CAPTIONS = 52.0
"""Pixels below a strip, for two lines of captions."""
RIGHT_MARGIN = 36
_SLIMMEST, _FULLEST = 74.0, 132.0
"""A strip is enlarged across until the median bed is as high in pixels as there is room for, between these two."""
_TOLD = 22.0
"""Pixels of height that a bed has at least where its captions are shown."""
_CLOSE = 12.0
"""Pixels between beds without captions, at most."""
_BARE_GROUND = 3000.0
_STRETCHES = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0)


@frozen
class Strip:
    """One bed on the canvas: the top of its soil and its height in pixels, and its layouts."""

    laid: LaidOut
    top: float
    height: float

    @property
    def bed(self) -> str:
        """The bed's id."""
        return self.laid.bed.id


@frozen
class Ground:
    """Empty ground to draw a new bed on: the top and the height of it in pixels."""

    top: float
    height: float


@frozen
class Strips:
    """All beds at one scale: pixels per mm along, the enlargement across, and the whole height in pixels.

    `headroom` and `captions` are the pixels above and below each strip, `gutter` those left of tape zero.
    """

    strips: tuple[Strip, ...]
    along: float
    stretch: float
    height: float
    ground: Ground | None = None
    headroom: float = HEADROOM
    captions: float = CAPTIONS
    gutter: int = GUTTER

    @property
    def across(self) -> float:
        """Pixels per mm across the beds."""
        return self.along * self.stretch

    @property
    def zoom(self) -> Zoom:
        """Pixels per mm in both directions."""
        return Zoom(self.along, self.across)

    @cached_property
    def longest(self) -> float:
        """The longest bed in mm."""
        return max((strip.laid.bed.length.nm / MM for strip in self.strips), default=0.0)

    @property
    def has_captions(self) -> bool:
        """Whether there is room for captions below the strips."""
        return self.captions >= CAPTIONS

    def lying(self, top: float, bottom: float) -> tuple[Strip, ...]:
        """The strips of which something, captions included, lies between two heights."""
        first = bisect_left(self.strips, top - self.captions, key=lambda one: one.top + one.height)
        last = bisect_right(self.strips, bottom + self.headroom, key=lambda one: one.top)
        return self.strips[first:last]

    def nearest(self, y: float) -> Strip | None:
        """The strip at a height or the next one above it; None without beds."""
        first = bisect_right(self.strips, y, key=lambda one: one.top)
        return self.strips[max(0, first - 1)] if self.strips else None

    def strip_of(self, bed: str) -> Strip | None:
        """The strip of a bed."""
        return next((strip for strip in self.strips if strip.bed == bed), None)


def arranged(laid_out: tuple[LaidOut, ...], along: float, *, true_scale: bool, room: float = 0) -> Strips:
    """Arrange beds as strips in `room` pixels of height, or as many as they need.

    Long beds are enlarged across unless they are wanted true to scale.
    """
    stretch = 1.0
    if laid_out and not true_scale:
        wanted = max(_SLIMMEST, min(_FULLEST, room / len(laid_out) - HEADROOM - CAPTIONS))
        stretch = _stretch(wanted / (_usual_width(laid_out) * along))
    return stacked(laid_out, along, stretch)


def all_in_sight(laid_out: tuple[LaidOut, ...], along: float, *, true_scale: bool, room: float) -> Strips:
    """Arrange all beds within `room` pixels of height, as far as two pixels for each will do.

    Where captions find no room they are left out; then the beds lie close together and may be flattened across,
    unless they are wanted true to scale.
    """
    usual = arranged(laid_out, along, true_scale=true_scale, room=room)
    if usual.height <= room or not laid_out:
        return usual
    widths = sum(laid.bed.width.nm / MM for laid in laid_out) * along
    bare = room - HEADROOM - len(laid_out) * (HEADROOM + CAPTIONS)
    if bare >= _TOLD * len(laid_out) and not true_scale:
        return stacked(laid_out, along, bare / widths)
    between = min(_CLOSE, room / len(laid_out) / 4)
    stretch = 1.0 if true_scale else (room - (len(laid_out) + 1) * between) / widths
    return stacked(laid_out, along, stretch, between / 2, between / 2)


def _usual_width(laid_out: tuple[LaidOut, ...]) -> float:
    """The width of the median bed in mm."""
    return sorted(laid.bed.width.nm / MM for laid in laid_out)[len(laid_out) // 2]


def stacked(
    laid_out: tuple[LaidOut, ...],
    along: float,
    stretch: float,
    headroom: float = HEADROOM,
    captions: float = CAPTIONS,
) -> Strips:
    """Beds as strips one under another at a given scale."""
    strips, top = [], headroom
    for laid in laid_out:
        height = max(2.0, laid.bed.width.nm / MM * along * stretch)
        strips.append(Strip(laid, top, height))
        top += height + captions + headroom
    return Strips(tuple(strips), along, stretch, top, headroom=headroom, captions=captions)


def with_ground(strips: Strips) -> Strips:
    """The strips with empty ground under them, three times as wide as the median bed, or 3 m where there is none."""
    width = 3 * _usual_width(tuple(strip.laid for strip in strips.strips)) if strips.strips else _BARE_GROUND
    ground = Ground(strips.height, width * strips.across)
    return evolve(strips, ground=ground, height=ground.top + ground.height + CAPTIONS)


def _stretch(wanted: float) -> float:
    return next((one for one in _STRETCHES if one >= wanted - 0.25), _STRETCHES[-1])


class Part(StrEnum):
    """What part of a planting or bed lies under a point."""

    SOIL = "soil"
    BLOCK = "block"
    HEAD_END = "head end"
    FOOT_END = "foot end"


@frozen
class Under:
    """What lies under a point: a bed, a place in it in nm, perhaps a handle, or a planting and which part of it."""

    bed: str
    x: int
    y: int
    part: Part = Part.SOIL
    planting: str | None = None
    handle: Handle | None = None


def under(
    strips: Strips, day: date | None, x: float, y: float, selected: str | None = None, shaped: str | None = None
) -> Under | None:
    """What lies under a canvas point, `x` counted from tape zero.

    The corners and sides of the bed `shaped` go first, then the ends of the planting `selected`, then obstacles.
    """
    strip = _strip_at(strips, y)
    if strip is None:
        return None
    beside = y - strip.top
    place = Under(strip.bed, round(x / strips.along * MM), round(beside / strips.across * MM))
    handle = shape_handle_at(strip.laid.bed, strips.zoom, x, beside) if strip.bed == shaped else None
    if handle is not None:
        return evolve(place, handle=handle)
    reach = round(7 / strips.along * MM) if -4 <= beside <= strip.height + 4 else 0
    shown = sorted(standing(strip.laid, day), key=lambda one: one.planting != selected) if reach else ()
    found = [(_part(one, place.x, reach if one.planting == selected else 0), one.planting) for one in shown]
    end = next((one for one in found if one[0] in (Part.HEAD_END, Part.FOOT_END)), None)
    handle = obstacle_at(strip.laid.bed, strips.zoom, x, beside) if end is None else None
    if handle is not None:
        return evolve(place, handle=handle)
    part, planting = end or next((one for one in found if one[0]), (None, None))
    return evolve(place, part=part or Part.SOIL, planting=planting)


def _strip_at(strips: Strips, y: float) -> Strip | None:
    for strip in strips.strips:
        if strip.top - strips.headroom <= y < strip.top + strip.height + strips.captions:
            return strip
    return None


def _part(layout: Layout, at: int, reach: int) -> Part | None:
    if reach and abs(at - layout.end) <= reach:
        return Part.FOOT_END
    if reach and abs(at - layout.start) <= reach:
        return Part.HEAD_END
    return Part.BLOCK if layout.start <= at <= layout.end else None
