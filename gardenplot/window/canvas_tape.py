"""The tape along the top of the canvas."""

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.strips import Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.drawing.tape import ticks
from gardenplot.units import MM, Units
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.lettering import write, write_within
from gardenplot.window.theme import colour
from gardenplot.words import _


def paint_tape(painter: QPainter, frame: QRect, strips: Strips, left: int, units: Units, inks: Palette) -> None:
    """The tape: its zero is the open circle, its ticks are the strips' own readings."""
    painter.fillRect(QRect(0, 0, frame.width(), TAPE), colour(inks, Ink.PAPER))
    along, base = strips.along, TAPE - 12.5
    ink = colour(inks, Ink.INK)
    painter.setPen(colour(inks, Ink.SECOND))
    write(painter, QPointF(12, base + 2), _("tape"), 12)
    painter.save()
    painter.setClipRect(QRectF(strips.gutter - 10, 0, frame.width(), TAPE))
    longest = strips.longest if strips.ground is None else (frame.width() - left) / along
    end = left + longest * along
    painter.fillRect(QRectF(max(left, strips.gutter - 10), base - 0.5, end - max(left, strips.gutter - 10), 1), ink)
    painter.setPen(QPen(ink, 1.2))
    first, last = round((strips.gutter - 30 - left) / along * MM), round((frame.width() - left) / along * MM)
    found = ticks(first, min(last, round(longest * MM)), units, along)
    places = [(left + tick.at / MM * along, tick.words) for tick in found]
    painter.drawLines([QLineF(x, base, x, base - (9 if words else 4)) for x, words in places])
    for x, words in places:
        if words:
            write_within(painter, QRectF(x - 40, base - 27, 80, 16), words, 12)
    if left > strips.gutter - 10:
        painter.setBrush(colour(inks, Ink.PAPER))
        painter.setPen(QPen(ink, 1.4))
        painter.drawEllipse(QPointF(left, base), 4, 4)
    painter.restore()
    painter.fillRect(QRect(0, TAPE - 1, frame.width(), 1), colour(inks, Ink.RULE))
