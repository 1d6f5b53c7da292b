"""Painting the season map: dates down, and across the same tape as the drawing above."""

from collections.abc import Iterable, Iterator
from datetime import date

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QRegion

from gardenplot.drawing.days import short_day
from gardenplot.drawing.marks import Hatch, Outline, box
from gardenplot.drawing.season_bands import Band, Quiet
from gardenplot.drawing.season_map import MapBlock
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.choosing import Chosen
from gardenplot.window.lettering import Lettering, lettering, write, write_within
from gardenplot.window.painting import Scale, paint
from gardenplot.window.season_axes import BELOW, Axes
from gardenplot.window.season_blocks import fill_block, outline_block, write_block
from gardenplot.window.theme import colour, drawing_font
from gardenplot.words import _

_RIM, _LETTER = 3, 22
"""Pixels painted beyond the days, and of the line of a planting's letter."""
_TRIES = {False: 2, True: 6}
"""How many lines from its day on the words of a band may stand; those of dark days may lie anywhere in them."""
_OTHER = 0.5
"""How much of its ink a hatch has that only names days."""


def paint_season(
    painter: QPainter, axes: Axes, bed: str, day: date | None, chosen: Chosen, inks: Palette, room: float = 0
) -> None:
    """Paint the map of a bed with the line of the day shown; `room` is kept free right of the bed's name."""
    painter.setPen(colour(inks, Ink.INK))
    name = QFontMetricsF(drawing_font(13, bold=True)).elidedText(
        bed, Qt.TextElideMode.ElideRight, axes.width - 24 - room
    )
    write(painter, QPointF(12, axes.top - 12), name, 13, bold=True)
    paint_days(painter, axes, day, chosen, inks)
    painter.save()
    painter.setClipRect(_sight(axes))
    _band_words(painter, axes, day, inks)
    painter.restore()
    _months(painter, axes, inks)
    if day is not None and axes.season.span.first <= day <= axes.season.span.last:
        _day_words(painter, axes, day, inks)


def paint_days(painter: QPainter, axes: Axes, day: date | None, chosen: Chosen, inks: Palette) -> None:
    """Paint what lies on the map, without its words beside."""
    painter.save()
    painter.setClipRect(_sight(axes))
    _ground(painter, axes, inks)
    if day is not None:
        y = axes.y(day, day)
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.6))
        painter.drawLine(QPointF(0, y), QPointF(axes.width, y))
    for block in axes.season.blocks:
        fill_block(painter, axes, block, inks)
    # Sides come after all ground: where two share some days, the end of the one is seen over the other.
    for block in axes.season.blocks:
        outline_block(painter, axes, block, inks, chosen=block.planting in chosen)
    _covers(painter, axes, inks)
    _clashes(painter, axes, inks)
    # Words come last: no line of a cover goes through them.
    for block in axes.season.blocks:
        write_block(painter, axes, block, inks)
    painter.restore()


def _sight(axes: Axes) -> QRectF:
    """Where anything of the map is painted: right of the gutter, from the first day to the last."""
    left, top = axes.gutter, axes.top - _RIM
    return QRectF(left, top, axes.width - left, axes.bottom - axes.top + 2 * _RIM)


def _ground(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """The bed's length as a sheet, its quiet bands, and a line for each month."""
    season = axes.season
    sheet = QRectF(QPointF(axes.x(0), axes.top), QPointF(axes.x(season.length), axes.bottom))
    for one in season.bands:
        _band(painter, axes, one, sheet, inks)
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.drawLines([QLineF(sheet.left(), y, sheet.right(), y) for y in _month_lines(axes)])
    painter.setPen(QPen(colour(inks, Ink.EDGE), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(sheet)


def _band(painter: QPainter, axes: Axes, one: Band, sheet: QRectF, inks: Palette) -> None:
    """Cold days are tinted and end in a broken line, dark ones are ruled."""
    top = max(axes.top, axes.y(one.first, one.first))
    # The last of its days is one of the band; up to the day of a last freeze that day is none.
    bottom = min(axes.bottom, axes.y(one.last, one.last) + (0 if one.quiet is Quiet.UNTIL_LAST_FREEZE else axes.each))
    band = QRectF(sheet.left(), top, sheet.width(), max(0.0, bottom - top))
    if one.quiet is Quiet.DARK:
        corners = box(band.left(), band.top(), band.right(), band.bottom())
        ruled = Outline(corners, fill=Ink.EDGE, tint=0.15, hatch=Hatch.LEVEL)
        painter.setOpacity(_OTHER)
        paint(painter, (ruled,), Scale(1, 1, 0, axes.width), inks)
        painter.setOpacity(1)
        return
    painter.fillRect(band, colour(inks, Ink.RULE, 0.35))
    painter.setPen(QPen(colour(inks, Ink.EDGE), 1, Qt.PenStyle.DashLine))
    y = axes.y(one.turns, one.turns)
    painter.drawLine(QPointF(sheet.left(), y), QPointF(sheet.right(), y))


def _band_words(painter: QPainter, axes: Axes, day: date | None, inks: Palette) -> None:
    """What the bands are, beside the bed's foot or else on free ground; left out where neither has room."""
    season, taken = axes.season, [axes.frame(block) for block in axes.season.blocks]
    if day is not None:
        taken.append(QRectF(0, axes.y(day, day) - 1, axes.width, 2))
    painter.setPen(colour(inks, Ink.SECOND))
    for one in sorted(season.bands, key=lambda each: each.turns):
        if not season.span.first <= one.turns <= season.span.last:
            continue
        line = lettering(one.words, 12)
        for at in _places(axes, one, line):
            frame = QRectF(at.x(), at.y() - line.ascent, line.width, line.height)
            if not any(each.intersects(frame) for each in taken):
                if at.x() < axes.x(season.length):
                    painter.fillRect(frame.adjusted(-4, 0, 4, 0), colour(inks, Ink.PAPER))
                write(painter, at, one.words, 12)
                taken.append(frame)
                break


def _places(axes: Axes, one: Band, line: Lettering) -> Iterator[QPointF]:
    """Where the words of a band may begin: at the day they are about, or lower, beside the foot or in the bed."""
    foot, first = axes.x(axes.season.length), max(axes.y(one.turns, one.turns) + 4, axes.top + line.ascent)
    beside = [foot + 12] if foot + 20 + line.width <= axes.width else []
    for number in range(_TRIES[one.quiet is Quiet.DARK]):
        base = first + number * line.height
        if base + line.height - line.ascent <= axes.bottom + _RIM:
            for x in (*beside, foot - line.width - 8, axes.x(0) + 8):
                if x >= axes.gutter:
                    yield QPointF(x, base)


def _month_lines(axes: Axes) -> list[float]:
    return [axes.y(first, first) for first, _name in axes.season.months]


def _months(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """The names of the months left of their first days, as many as have room."""
    painter.setPen(colour(inks, Ink.SECOND))
    free = axes.top
    for y, (_first, name) in zip(_month_lines(axes), axes.season.months, strict=True):
        line = lettering(name, 12)
        base = max(y + 4, axes.top + 9)
        if y >= axes.top - 1 and base >= free and base < axes.bottom + BELOW:
            write(painter, QPointF(axes.gutter - 10 - line.width, base), name, 12)
            free = base + line.height


def _covers(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """Covers over their stretch and their days: a broken line round them and, where no letter has it, their name."""
    lettered = [QRectF(one.left(), one.top(), one.width(), _LETTER) for one in map(axes.frame, axes.season.blocks)]
    for one in axes.season.covers:
        frame, words = axes.frame(one), _("cover")
        painter.setPen(QPen(colour(inks, Ink.INK), 1, Qt.PenStyle.DashLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(frame.adjusted(3, 2, -3, -2))
        line, seen = lettering(words, 11), frame.intersected(_sight(axes))
        if seen.width() > line.width + 24 and seen.height() > line.height + 6:
            beside = QRectF(
                seen.right() - line.width - 14, seen.bottom() - line.height - 4, line.width + 8, line.height
            )
            if not any(one.intersects(beside) for one in lettered):
                painter.fillRect(beside, colour(inks, Ink.PAPER))
                painter.setPen(colour(inks, Ink.INK))
                write_within(painter, beside, words, 11)


def _clashes(painter: QPainter, axes: Axes, inks: Palette) -> None:
    """Ground that is wanted twice on the same days, crossed out."""
    for one in axes.season.clashes:
        frame = axes.frame(one)
        corners = box(frame.left(), frame.top(), frame.right(), frame.bottom())
        paint(painter, (Outline(corners, hatch=Hatch.CROSSED),), Scale(1, 1, 0, axes.width), inks)


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


def paint_was(painter: QPainter, axes: Axes, block: MapBlock, now: Iterable[MapBlock], inks: Palette) -> None:
    """Where a planting was before the hand took it along, beside the plantings that are there `now`."""
    painter.save()
    seen = QRegion(_sight(axes).toAlignedRect())
    for one in now:
        seen -= QRegion(axes.frame(one).toAlignedRect())
    painter.setClipRegion(seen)
    painter.setPen(QPen(colour(inks, Ink.SECOND), 1, Qt.PenStyle.DotLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(axes.frame(block))
    painter.restore()


def paint_nothing(painter: QPainter, frame: QRectF, inks: Palette) -> None:
    """What to do while there is no bed."""
    painter.setPen(colour(inks, Ink.SECOND))
    words = _("No bed yet: add one, then drag a crop from the shelf to its place and its day here.")
    painter.setFont(drawing_font(13))
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap, words)
