"""The box of lines beside the hand: under or over the strip that is worked on, never on it where there is room."""

from collections.abc import Iterable
from functools import lru_cache

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from gardenplot.drawing.captions import GAP
from gardenplot.drawing.strips import Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.levels import paint_chip
from gardenplot.window.theme import colour, drawing_font

Lines = tuple[tuple[str, Ink], ...]
Seen = tuple[float, float]
"""The top and the bottom in pixels of what should stay in sight."""
_LINE, _RIM, _CLEAR, _BESIDE = 22, 4, 10, 16
"""Pixels of a line, round all lines, above a strip and beside the hand."""


def seen_of(strips: Strips, top: float, beds: Iterable[str | None]) -> tuple[Seen, ...]:
    """What should stay in sight while the hand works in some beds: all of them, else the last alone.

    `top` is where the strips begin.
    """
    worked = [strip for bed in beds if bed is not None and (strip := strips.strip_of(bed)) is not None]
    if not worked:
        return ()
    spans = [_span(strips, strip, top) for strip in worked]
    whole = (min(high for high, _low in spans), max(low for _high, low in spans))
    return tuple(dict.fromkeys((whole, spans[-1])))


def _span(strips: Strips, strip: Strip, top: float) -> Seen:
    return strip.top + top - _CLEAR, strip.top + strip.height + strips.captions + top


def box_of(frame: QRect, at: QPointF, lines: Lines, seen: Iterable[Seen] = (), *, centred: bool = False) -> QRectF:
    """Where lines stand that belong to a place: below or above the first of what should be seen that leaves room.

    Where none does they stand beside the place.
    """
    fitted = _fitted(frame, lines)
    width, height = _widest(fitted) + 20, _LINE * len(fitted) + 2.0 * _RIM
    wanted = at.x() - width / 2 if centred else at.x() + _BESIDE
    left = max(4.0, min(wanted, frame.width() - width - 4))
    for high, low in seen:
        if low >= TAPE and low + height < frame.height():
            return QRectF(left, low, width, height)
        if high <= frame.height() and high - height > TAPE:
            return QRectF(left, high - height, width, height)
    top = at.y() + 22 if at.y() + 22 + height < frame.height() else at.y() - height - 14
    return QRectF(left, top, width, height)


def paint_lines(
    painter: QPainter, frame: QRect, box: QRectF, lines: Lines, inks: Palette, rim: Ink = Ink.EDGE
) -> None:
    """Paint lines in their box."""
    paint_chip(painter, box, 4, colour(inks, rim), colour(inks, Ink.PAPER))
    painter.setFont(drawing_font(14, bold=True))
    for number, (words, ink) in enumerate(_fitted(frame, lines)):
        painter.setPen(colour(inks, ink))
        painter.drawText(QPointF(box.left() + 10, box.top() + 20 + _LINE * number), words)


def _fitted(frame: QRect, lines: Lines) -> Lines:
    """Lines that are no wider than the frame: one that is goes on below at a gap between its parts."""
    return _broken(max(80, frame.width() - 28), lines)


@lru_cache(maxsize=4)
def _broken(room: int, lines: Lines) -> Lines:
    metrics = QFontMetricsF(drawing_font(14, bold=True))
    fitted: list[tuple[str, Ink]] = []
    for words, ink in lines:
        begun = ""
        for part in words.split(GAP):
            longer = GAP.join(filter(None, (begun, part)))
            if begun and metrics.horizontalAdvance(longer) > room:
                fitted.append((begun, ink))
                longer = part
            begun = longer
        fitted.append((metrics.elidedText(begun, Qt.TextElideMode.ElideRight, room), ink))
    return tuple(fitted)


@lru_cache(maxsize=4)
def _widest(lines: Lines) -> float:
    metrics = QFontMetricsF(drawing_font(14, bold=True))
    return max(metrics.horizontalAdvance(words) for words, _ink in lines)
