"""Spacings dimensioned in a bed seen from near: a thin line with a slanting tick at each end, and the figure."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QPainter, QPen

from gardenplot.drawing.handles import Zoom
from gardenplot.drawing.spacings import Dimension
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.lettering import lettering, write_within
from gardenplot.window.theme import colour

_PX = 12
_TICK = 4.0
_BEYOND = 5.0
"""Pixels by which the line that leads from a plant goes on beyond the dimension."""


def paint_spacings(painter: QPainter, shown: tuple[Dimension, ...], zoom: Zoom, inks: Palette) -> None:
    """Paint dimensions at the painter's origin, which is the head's end of the base line."""
    for one in shown:
        start, end = QPointF(*zoom.pixels(one.start)), QPointF(*zoom.pixels(one.end))
        painter.setPen(QPen(colour(inks, Ink.INK), 0.8))
        leads = [_led(QPointF(*zoom.pixels(foot)), at) for foot, at in zip(one.feet, (start, end), strict=True)]
        ticks = [QLineF(at + QPointF(-_TICK, _TICK), at + QPointF(_TICK, -_TICK)) for at in (start, end)]
        painter.drawLines([QLineF(start, end), *ticks, *leads])
        line, middle = lettering(one.words, _PX), (start + end) / 2
        box = QRectF(middle.x() - line.width / 2 - 4, middle.y() - 8, line.width + 8, 16)
        painter.fillRect(box, colour(inks, Ink.PAPER, 0.85))
        write_within(painter, box, one.words, _PX)


def _led(foot: QPointF, at: QPointF) -> QLineF:
    """The line that leads from a plant past the end of its dimension."""
    line = QLineF(foot, at)
    if line.length() > 0:
        line.setLength(line.length() + _BEYOND)
    return line
