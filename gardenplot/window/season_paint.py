"""Painting the season map: dates down, and across the same tape as the drawing above."""

from datetime import date

from attrs import frozen
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from gardenplot.drawing.days import short_day
from gardenplot.drawing.marks import Hatch, Outline, box
from gardenplot.drawing.season_map import MapBlock, SeasonMap
from gardenplot.drawing.strips import GUTTER
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.lettering import lettering, write, write_within
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour, drawing_font
from gardenplot.words import _

ABOVE, BELOW = 24.0, 8.0
"""Pixels above the first day, for the bed's name, and below the last."""
_LINE = 18.0
_QUIET = 0.45
"""How much of its ink the hatch of a planting has: here it fills far more ground than on a bed."""


@frozen
class Axes:
    """Where tapes and dates lie on the map: tape zero and pixels per mm, the height and the width in pixels."""

    season: SeasonMap
    left: float
    along: float
    width: float
    height: float

    def x(self, reading: float) -> float:
        """Where a tape reading in mm lies."""
        return self.left + reading * self.along

    def y(self, day: date | None, default: date) -> float:
        """Where a day begins, or a default where it is not said."""
        gone = ((default if day is None else day) - self.season.span.first).days
        return ABOVE + max(0, min(gone, self.season.span.days)) * self._each

    def day_at(self, y: float) -> date:
        """The day at a height, the first or the last one beyond them."""
        first = self.season.span.first.toordinal()
        return date.fromordinal(first + max(0, min(int((y - ABOVE) // self._each), self.season.span.days - 1)))

    def frame(self, block: MapBlock) -> QRectF:
        """The rectangle of a planting."""
        top = self.y(block.first, self.season.span.first)
        bottom = self.y(block.last, self.season.span.last)
        return QRectF(QPointF(self.x(block.start), top), QPointF(self.x(block.end), max(bottom, top + 3)))

    def block_at(self, point: QPointF) -> MapBlock | None:
        """The planting at a point, the one drawn last where several lie there."""
        return next((one for one in reversed(self.season.blocks) if self.frame(one).contains(point)), None)

    @property
    def _each(self) -> float:
        return (self.height - ABOVE - BELOW) / self.season.span.days


def paint_season(
    painter: QPainter, axes: Axes, bed: str, day: date | None, planting: str | None, inks: Palette
) -> None:
    """Paint the map of a bed with the line of the day shown."""
    painter.setPen(colour(inks, Ink.INK))
    room = axes.width - 24
    name = QFontMetricsF(drawing_font(13, bold=True)).elidedText(bed, Qt.TextElideMode.ElideRight, room)
    write(painter, QPointF(12, 16), name, 13, bold=True)
    painter.save()
    painter.setClipRect(QRectF(GUTTER - 10, 0, axes.width, axes.height))
    _ground(painter, axes, inks)
    if day is not None:
        _day_line(painter, axes, day, inks)
    for block in axes.season.blocks:
        _block(painter, axes, block, inks, chosen=block.planting == planting)
    _clashes(painter, axes, inks)
    _cold_words(painter, axes, inks)
    painter.restore()
    _months(painter, axes, inks)
    if day is not None:
        _day_words(painter, axes, day, inks)


def _ground(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """The bed's length as a sheet, its cold days, and a line for each month."""
    season, bottom = axes.season, axes.height - BELOW
    sheet = QRectF(QPointF(axes.x(0), ABOVE), QPointF(axes.x(season.length), bottom))
    for one in season.cold:
        top, end = axes.y(one.first, season.span.first), axes.y(one.last, season.span.last)
        band = QRectF(sheet.left(), top, sheet.width(), end - top)
        painter.fillRect(band, colour(inks, Ink.RULE, 0.35))
        painter.setPen(QPen(colour(inks, Ink.EDGE), 1, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(sheet.left(), end), QPointF(sheet.right(), end))
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.drawLines([QLineF(sheet.left(), y, sheet.right(), y) for y in _month_lines(axes)])
    painter.setPen(QPen(colour(inks, Ink.EDGE), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(sheet)


def _cold_words(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """What the cold bands are, beside the bed's foot or else on free ground; left out where neither has room."""
    season, free = axes.season, 0.0
    foot = axes.x(season.length) + 12
    painter.setPen(colour(inks, Ink.SECOND))
    for one in sorted(season.cold, key=lambda each: each.last):
        line, y = lettering(one.words, 12), axes.y(one.last, season.span.last)
        base = max(y + 4, free)
        right = axes.width - line.width - 8
        at = min(foot, axes.x(season.length) - line.width - 8 if right < foot else foot)
        frame = QRectF(at, base - line.ascent, line.width, line.height)
        if at < GUTTER or any(axes.frame(block).intersects(frame) for block in season.blocks):
            continue
        write(painter, QPointF(at, base), one.words, 12)
        free = base + line.height


def _month_lines(axes: Axes) -> list[float]:
    return [axes.y(first, first) for first, _name in axes.season.months]


def _months(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """The names of the months left of their first days, as many as have room."""
    painter.setPen(colour(inks, Ink.SECOND))
    free = ABOVE
    for y, (_first, name) in zip(_month_lines(axes), axes.season.months, strict=True):
        line = lettering(name, 12)
        if y + 4 >= free and y + 4 < axes.height:
            write(painter, QPointF(GUTTER - 20 - line.width, y + 4), name, 12)
            free = y + 4 + line.height


def _block(painter: QPainter, axes: Axes, block: MapBlock, inks: Palette, *, chosen: bool) -> None:
    frame = axes.frame(block)
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    corners = box(frame.left(), frame.top(), frame.right(), frame.bottom())
    ground = Outline(corners, fill=block.look.ink, tint=0.3, hatch=block.look.hatch)
    painter.setOpacity(_QUIET)
    paint(painter, (ground,), Scale(1, 1, 0, axes.width), inks)
    painter.setOpacity(1)
    painter.setPen(QPen(colour(inks, block.look.ink), 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(frame)
    if block.last is None or block.first is None:
        _open_ends(painter, frame, block, inks)
    if chosen:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(frame.adjusted(-2, -2, 2, 2))
    _words(painter, frame.intersected(QRectF(GUTTER - 10, 0, axes.width, axes.height)), block, inks)


def _open_ends(painter: QPainter, frame: QRectF, block: MapBlock, inks: Palette) -> None:
    """Where no day is said, the side of the rectangle is broken."""
    painter.setPen(QPen(colour(inks, Ink.PAPER), 3, Qt.PenStyle.DotLine))
    if block.first is None:
        painter.drawLine(frame.topLeft(), frame.topRight())
    if block.last is None:
        painter.drawLine(frame.bottomLeft(), frame.bottomRight())


def _words(painter: QPainter, seen: QRectF, block: MapBlock, inks: Palette) -> None:
    """The letter in its box, and beside it on paper what there is room for: the day that it is out goes first."""
    chip = max(18.0, lettering(block.look.letter, 12, bold=True).width + 10)
    if seen.width() < chip + 6 or seen.height() < _LINE + 4:
        return
    box_of = QRectF(seen.left() + 4, seen.top() + 4, chip, _LINE)
    painter.fillRect(box_of, colour(inks, block.look.ink))
    painter.setPen(colour(inks, Ink.PAPER))
    write_within(painter, box_of, block.look.letter, 12, bold=True)
    room = seen.right() - box_of.right() - 12
    lines = block.lines if seen.height() >= 2 * _LINE + 6 else (block.line,)
    for number, words in enumerate(lines):
        shown = next((one for one in words if lettering(one, 12).width <= room), "")
        if shown:
            at = QPointF(box_of.right(), box_of.top() + _LINE * number)
            painter.fillRect(QRectF(at.x(), at.y(), lettering(shown, 12).width + 12, _LINE), colour(inks, Ink.PAPER))
            painter.setPen(colour(inks, Ink.SECOND if number else Ink.INK))
            write(painter, at + QPointF(6, 13), shown, 12)


def _clashes(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """Ground that is wanted twice on the same days, crossed out."""
    for one in axes.season.clashes:
        top, bottom = axes.y(one.first, axes.season.span.first), axes.y(one.last, axes.season.span.last)
        corners = box(axes.x(one.start), top, axes.x(one.end), bottom)
        paint(painter, (Outline(corners, hatch=Hatch.CROSSED),), Scale(1, 1, 0, axes.width), inks)


def _day_line(painter: QPainter, axes: Axes, day: date, inks: Palette) -> None:
    """The line of the day that the drawing shows; plantings lie over it, so that their words can be read."""
    y = axes.y(day, day)
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.6))
    painter.drawLine(QPointF(0, y), QPointF(axes.width, y))


def _day_words(painter: QPainter, axes: Axes, day: date, inks: Palette) -> None:
    """The day in a box at the end of its line."""
    y, accent = axes.y(day, day), colour(inks, Ink.ACCENT)
    words = short_day(day)
    width = lettering(words, 12, bold=True).width + 12
    frame = QRectF(axes.width - width - 4, max(0.0, min(y - 9, axes.height - 18)), width, 18)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawRoundedRect(frame, 3, 3)
    painter.setPen(colour(inks, Ink.PAPER))
    write_within(painter, frame, words, 12, bold=True)


def paint_nothing(painter: QPainter, frame: QRectF, inks: Palette) -> None:
    """What to do while no planting has a day."""
    painter.setPen(colour(inks, Ink.SECOND))
    words = _("No dates yet: give an order its market day, or a planting its day in the ground.")
    painter.setFont(drawing_font(13))
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, words)
