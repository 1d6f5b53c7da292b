"""The tape along the top of the canvas."""

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from gardenplot.drawing.strips import Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.drawing.tape import ticks
from gardenplot.drawing.tape_words import zero_words
from gardenplot.units import MM, Units
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.lettering import lettering, write, write_within
from gardenplot.window.theme import colour
from gardenplot.words import _

_ARROW = 8.0
"""The length in pixels of the arrow that points to a zero out of sight."""


def paint_tape(painter: QPainter, frame: QRect, strips: Strips, left: int, units: Units, inks: Palette) -> None:
    """The tape: its zero is the open circle, its ticks are the strips' own readings."""
    painter.fillRect(QRect(0, 0, frame.width(), TAPE), colour(inks, Ink.PAPER))
    along, base = strips.along, TAPE - 12.5
    ink = colour(inks, Ink.INK)
    painter.setPen(colour(inks, Ink.SECOND))
    write(painter, QPointF(12, base + 2), _("tape"), 12)
    if left < strips.gutter - 10:
        away = zero_words(round((strips.gutter - 10 - left) / along * MM), units)
        _point_to_zero(painter, QPointF(12, base - 17), away, strips.gutter, inks)
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


def _point_to_zero(painter: QPainter, at: QPointF, words: tuple[str, ...], gutter: float, inks: Palette) -> None:
    """An arrow to the left and how far away the tape's zero lies there, while it is out of sight."""
    accent, room = colour(inks, Ink.ACCENT), gutter - at.x() - 2 * _ARROW
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    tip = at + QPointF(0, -4)
    painter.drawPolygon(QPolygonF([tip, tip + QPointF(_ARROW, -4.5), tip + QPointF(_ARROW, 4.5)]))
    painter.setPen(accent)
    fitting = next((one for one in words if lettering(one, 12).width <= room), words[-1])
    write(painter, at + QPointF(_ARROW + 5, 0), fitting, 12)
