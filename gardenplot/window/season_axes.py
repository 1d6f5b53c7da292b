"""Where tapes and dates lie on the season map, and what of it lies under a point."""

from datetime import date, timedelta
from enum import StrEnum

from attrs import frozen
from PySide6.QtCore import QPointF, QRectF

from gardenplot.drawing.season_map import MapBlock, SeasonMap, Stretch

ABOVE, BELOW = 28.0, 8.0
"""Pixels above the first day, for the bed's name, and below the last."""
_NEAR = 5.0
"""How many pixels from its sides a planting is taken by them, or a third of it where it is small."""
_FARTHEST = 20_000.0
"""Pixels beyond which nothing is painted truly: nobody sees it."""
_FARTHEST_DAYS = 3650


class MapPart(StrEnum):
    """What of a planting the hand is over."""

    BODY = "body"
    FIRST = "first day"
    OUT = "day it is out"
    HEAD = "head end"
    FOOT = "foot end"


@frozen
class Axes:
    """Where tapes and dates lie on the map: tape zero and pixels per mm, and the room for it, in pixels.

    `gutter` is how far the names at its left reach; the days have the height between `top` and `below`.
    """

    season: SeasonMap
    left: float
    along: float
    width: float
    height: float
    gutter: float
    top: float = ABOVE
    below: float = BELOW

    @property
    def bottom(self) -> float:
        """Where the last day ends."""
        return self.height - self.below

    @property
    def each(self) -> float:
        """Pixels of a day."""
        return (self.bottom - self.top) / self.season.span.days

    def x(self, reading: float) -> float:
        """Where a tape reading in mm lies."""
        return self.left + reading * self.along

    def reading(self, x: float) -> float:
        """The tape reading in mm at a place."""
        return (x - self.left) / self.along

    def y(self, day: date | None, default: date) -> float:
        """Where a day begins; where it is not said, the default's place."""
        gone = ((default if day is None else day) - self.season.span.first).days
        return max(-_FARTHEST, min(self.top + gone * self.each, _FARTHEST))

    def day_at(self, y: float) -> date:
        """The day at a height, the first or the last one of the map beyond them."""
        span = self.season.span
        return max(span.first, min(self.day_beyond(y), span.last))

    def day_beyond(self, y: float) -> date:
        """The day at a height, also above and below the map."""
        days = max(-_FARTHEST_DAYS, min(int((y - self.top) // self.each), _FARTHEST_DAYS))
        try:
            return self.season.span.first + timedelta(days=days)
        except OverflowError:
            return date.max if days > 0 else date.min

    def day_near(self, day: date | None) -> date:
        """A day that is on the map, else the one in its middle."""
        span = self.season.span
        if day is not None and span.first <= day <= span.last:
            return day
        return span.first + timedelta(days=span.days // 2)

    def frame(self, one: MapBlock | Stretch) -> QRectF:
        """The rectangle of a planting or a stretch; one that is open goes on beyond the map."""
        top = self.top - 12 if one.first is None else self.y(one.first, one.first)
        bottom = self.bottom + 12 if one.last is None else self.y(one.last, one.last)
        return QRectF(QPointF(self.x(one.start), top), QPointF(self.x(one.end), max(bottom, top + 3)))

    def block_at(self, point: QPointF) -> MapBlock | None:
        """The planting at a point, the one drawn last where several lie there."""
        if not self.top - _NEAR <= point.y() <= self.bottom + _NEAR:
            return None
        return next((one for one in reversed(self.season.blocks) if self.frame(one).contains(point)), None)

    def part_at(self, point: QPointF) -> tuple[MapBlock, MapPart] | None:
        """The planting at a point and what of it lies there: sides reach a little in, days go before ends."""
        block = self.block_at(point)
        if block is None:
            return None
        frame = self.frame(block)
        near, beside = min(_NEAR, frame.height() / 3), min(_NEAR, frame.width() / 3)
        if point.y() > frame.bottom() - near:
            return block, MapPart.OUT
        if point.y() < frame.top() + near:
            return block, MapPart.FIRST
        if point.x() < frame.left() + beside:
            return block, MapPart.HEAD
        if point.x() > frame.right() - beside:
            return block, MapPart.FOOT
        return block, MapPart.BODY
