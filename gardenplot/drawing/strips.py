"""Beds as strips one under another on one tape: where each lies on the canvas, and what lies under a point."""

from bisect import bisect_left, bisect_right
from datetime import date
from enum import StrEnum
from functools import cached_property
from math import floor

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
_LEAST, _HAIR = 2.0, 0.25
"""Pixels of height that a bed has at least, and pixels between two of them at least."""
_NAME = 13.0
"""Pixels from the middle of a bed to that of the next one that a name needs."""
_RIM = 7.0
"""Pixels above the first bed and below the last one at least, so that no name is cut."""
_BARE_GROUND = 3000.0
_MUCH_OF_USUAL, _STEPS = 0.6, 20
"""How small a share of the usual enlargement will do for all beds to be in sight, and in how many steps a whole."""
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

    @property
    def middle(self) -> float:
        """The height in pixels at which its middle lies."""
        return self.top + self.height / 2


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

    @cached_property
    def _every_so_many(self) -> tuple[Strip, ...]:
        """The strips that are named while none is chosen: all, or every so many-th where beds lie close."""
        found: list[Strip] = []
        for strip in self.strips:
            if not found or strip.middle - found[-1].middle >= _NAME:
                found.append(strip)
        return tuple(found)

    def named(self, chosen: str | None) -> frozenset[str]:
        """The beds whose names find room: the chosen one, and of the others those that are clear of it."""
        held = self.strip_of(chosen) if chosen is not None else None
        clear = (one.bed for one in self._every_so_many if held is None or abs(one.middle - held.middle) >= _NAME)
        return frozenset(clear) if held is None else frozenset((held.bed, *clear))

    def lying(self, top: float, bottom: float) -> tuple[Strip, ...]:
        """The strips of which something, captions included, lies between two heights."""
        first = bisect_left(self.strips, top, key=lambda one: one.top + one.height + self.captions)
        last = bisect_right(self.strips, bottom, key=lambda one: one.top - self.headroom)
        return self.strips[first:last]

    def nearest(self, y: float) -> Strip | None:
        """The strip at a height or the next one above it; None without beds."""
        first = bisect_right(self.strips, y, key=lambda one: one.top)
        return self.strips[max(0, first - 1)] if self.strips else None

    def strip_at(self, y: float) -> Strip | None:
        """The strip at a height, with what stands above and below it."""
        return next(
            (one for one in self.lying(y, y) if -self.headroom <= y - one.top < one.height + self.captions), None
        )

    def strip_of(self, bed: str) -> Strip | None:
        """The strip of a bed."""
        return next((strip for strip in self.strips if strip.bed == bed), None)


def arranged(laid_out: tuple[LaidOut, ...], along: float, *, true_scale: bool, room: float = 0) -> Strips:
    """Arrange beds as strips in `room` pixels of height, or as many as they need.

    Long beds are enlarged across unless they are wanted true to scale; somewhat less than usual where that brings all
    of them into sight.
    """
    stretch = 1.0
    if laid_out and not true_scale:
        wanted = max(_SLIMMEST, min(_FULLEST, room / len(laid_out) - HEADROOM - CAPTIONS))
        usual = _stretch(wanted / (_usual_width(laid_out) * along))
        stretch = _holding_all(laid_out, along, usual, room)
    return stacked(laid_out, along, stretch)


def all_in_sight(laid_out: tuple[LaidOut, ...], along: float, *, true_scale: bool, room: float) -> Strips:
    """Arrange all beds within `room` pixels of height, as far as two pixels for each will do.

    Where captions find no room they are left out; then the beds lie close together and may be flattened across,
    unless they are wanted true to scale.
    """
    usual = arranged(laid_out, along, true_scale=true_scale, room=room)
    if usual.height <= room or not laid_out:
        return usual
    room = max(room, 2 * _RIM + _LEAST * len(laid_out))
    widths = sum(laid.bed.width.nm / MM for laid in laid_out) * along
    bare = room - len(laid_out) * (HEADROOM + CAPTIONS)
    if bare >= _TOLD * len(laid_out) and not true_scale:
        return stacked(laid_out, along, bare / widths)
    spare = (room - 2 * _RIM - _LEAST * len(laid_out)) / len(laid_out)
    between = min(_CLOSE, room / len(laid_out) / 4, max(_HAIR, spare))
    stretch = 1.0 if true_scale else (room - 2 * _RIM - (len(laid_out) - 1) * between) / widths
    return stacked(laid_out, along, stretch, between / 2, between / 2)


def _holding_all(laid_out: tuple[LaidOut, ...], along: float, usual: float, room: float) -> float:
    """The usual enlargement, or a smaller one at which all beds fit into `room` pixels if it is not much smaller."""
    widths = sum(laid.bed.width.nm / MM for laid in laid_out) * along
    fitting = floor((room - len(laid_out) * (HEADROOM + CAPTIONS)) / widths * _STEPS) / _STEPS
    return fitting if max(1.0, _MUCH_OF_USUAL * usual) <= fitting < usual else usual


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
    strips, top, bottom = [], max(headroom, _RIM), 0.0
    for laid in laid_out:
        strips.append(Strip(laid, top, max(_LEAST, laid.bed.width.nm / MM * along * stretch)))
        bottom = top + strips[-1].height
        top = bottom + captions + headroom
    height = bottom + max(captions, _RIM) if strips else 0.0
    return Strips(tuple(strips), along, stretch, height, headroom=headroom, captions=captions)


def laid_otherwise(strips: Strips, laid_out: tuple[LaidOut, ...]) -> Strips:
    """The strips of the same beds, in the same order and of the same sizes, that are laid out otherwise."""
    pairs = zip(strips.strips, laid_out, strict=True)
    same = tuple([one if one.laid is laid else evolve(one, laid=laid) for one, laid in pairs])
    return evolve(strips, strips=same)


def with_ground(strips: Strips) -> Strips:
    """The strips with empty ground under them, three times as wide as the median bed, or 3 m where there is none."""
    width = 3 * _usual_width(tuple(strip.laid for strip in strips.strips)) if strips.strips else _BARE_GROUND
    ground = Ground(strips.height + HEADROOM, width * strips.across)
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
    strip = strips.strip_at(y)
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


def blocks_at(laid: LaidOut, day: date | None, reading: int) -> tuple[str, ...]:
    """The plantings whose blocks lie at a tape reading on a day, or ever; one on another where their days differ."""
    return tuple(one.planting for one in standing(laid, day) if one.start <= reading <= one.end)


def _part(layout: Layout, at: int, reach: int) -> Part | None:
    if reach and abs(at - layout.end) <= reach:
        return Part.FOOT_END
    if reach and abs(at - layout.start) <= reach:
        return Part.HEAD_END
    return Part.BLOCK if layout.start <= at <= layout.end else None
