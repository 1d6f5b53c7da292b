"""Beds as strips one under another on one tape: where each lies on the canvas, and what lies under a point."""

from datetime import date
from enum import StrEnum

from attrs import frozen

from gardenplot.layout import LaidOut, Layout, standing
from gardenplot.units import MM

GUTTER = 132
"""Pixels left of tape zero, for the beds' names."""
HEADROOM = 34
"""Pixels above a strip, for the head flag."""
CAPTIONS = 52
"""Pixels below a strip, for two lines of captions."""
RIGHT_MARGIN = 36
_SLIMMEST, _FULLEST = 74.0, 132.0
"""A strip is enlarged across until the median bed is as high in pixels as there is room for, between these two."""
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
class Strips:
    """All beds at one scale: pixels per mm along, the enlargement across, and the whole height in pixels."""

    strips: tuple[Strip, ...]
    along: float
    stretch: float
    height: float

    @property
    def across(self) -> float:
        """Pixels per mm across the beds."""
        return self.along * self.stretch

    @property
    def longest(self) -> float:
        """The longest bed in mm."""
        return max((strip.laid.bed.length.nm / MM for strip in self.strips), default=0.0)

    def strip_of(self, bed: str) -> Strip | None:
        """The strip of a bed."""
        return next((strip for strip in self.strips if strip.bed == bed), None)


def arranged(laid_out: tuple[LaidOut, ...], along: float, *, true_scale: bool, room: float = 0) -> Strips:
    """Arrange beds as strips in `room` pixels of height, or as many as they need.

    Long beds are enlarged across unless they are wanted true to scale.
    """
    widths = sorted(laid.bed.width.nm / MM for laid in laid_out)
    stretch = 1.0
    if widths and not true_scale:
        wanted = max(_SLIMMEST, min(_FULLEST, room / len(widths) - HEADROOM - CAPTIONS))
        stretch = _stretch(wanted / (widths[len(widths) // 2] * along))
    strips, top = [], float(HEADROOM)
    for laid in laid_out:
        height = max(2.0, laid.bed.width.nm / MM * along * stretch)
        strips.append(Strip(laid, top, height))
        top += height + CAPTIONS + HEADROOM
    return Strips(tuple(strips), along, stretch, top)


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
    """What lies under a point: a bed, a place in it in nm, perhaps a planting and which part of it."""

    bed: str
    x: int
    y: int
    part: Part = Part.SOIL
    planting: str | None = None


def under(strips: Strips, day: date | None, x: float, y: float, selected: str | None = None) -> Under | None:
    """What lies under a canvas point, `x` counted from tape zero; the ends of the selected planting go first."""
    strip = _strip_at(strips, y)
    if strip is None:
        return None
    at = round(x / strips.along * MM)
    beside = round((y - strip.top) / strips.across * MM)
    reach = round(7 / strips.along * MM)
    shown = standing(strip.laid, day)
    if -4 <= y - strip.top <= strip.height + 4:
        for layout in sorted(shown, key=lambda one: one.planting != selected):
            part = _part(layout, at, reach if layout.planting == selected else 0)
            if part is not None:
                return Under(strip.bed, at, beside, part, layout.planting)
    return Under(strip.bed, at, beside)


def _strip_at(strips: Strips, y: float) -> Strip | None:
    for strip in strips.strips:
        if strip.top - HEADROOM <= y < strip.top + strip.height + CAPTIONS:
            return strip
    return None


def _part(layout: Layout, at: int, reach: int) -> Part | None:
    if reach and abs(at - layout.end) <= reach:
        return Part.FOOT_END
    if reach and abs(at - layout.start) <= reach:
        return Part.HEAD_END
    return Part.BLOCK if layout.start <= at <= layout.end else None
