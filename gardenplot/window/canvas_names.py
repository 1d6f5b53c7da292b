"""What stands at the head of each strip: the flag at tape zero, the bed's name and its size."""

from functools import lru_cache

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QPolygonF

from gardenplot.drawing.shape_words import size_words
from gardenplot.drawing.strips import GUTTER, Strip, Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.plan import Bed
from gardenplot.units import Units
from gardenplot.units.figures import span
from gardenplot.window.lettering import write
from gardenplot.window.theme import colour, drawing_font

_LINE = 15.0
"""Pixels from bed to bed that a name needs."""


def paint_flag(painter: QPainter, inks: Palette) -> None:
    """The flag at the head stake: here the tape's zero lies."""
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1.6))
    painter.drawLine(QPointF(-2, -20), QPointF(-2, 2))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(accent)
    painter.drawPolygon(QPolygonF([QPointF(-2, -20), QPointF(9, -16), QPointF(-2, -12)]))


def paint_bed_name(
    painter: QPainter, strip: Strip, at: QPointF, strips: Strips, units: Units, inks: Palette, *, selected: bool
) -> None:
    """The name left of a bed and below it the size; where beds lie close, the name alone or nothing."""
    bed, close = strip.laid.bed, not strips.has_captions
    if selected:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.drawLine(at + QPointF(4, 0), at + QPointF(4, max(strip.height, 4 if close else 36)))
    if close and strip.height + strips.headroom + strips.captions < _LINE:
        return
    px = 12 if close else 14
    painter.setPen(colour(inks, Ink.ACCENT if selected else Ink.INK))
    write(painter, at + QPointF(12, strip.height / 2 + 4 if close else 16), _short(bed.name, px), px, bold=True)
    if not close:
        painter.setPen(colour(inks, Ink.SECOND))
        write(painter, at + QPointF(12, 33), _size(bed, units), 12)


@lru_cache(maxsize=1024)
def _short(name: str, px: int) -> str:
    """A name cut to the room left of the beds."""
    metrics = QFontMetricsF(drawing_font(px, bold=True))
    return metrics.elidedText(name, Qt.TextElideMode.ElideRight, GUTTER - 28)


@lru_cache(maxsize=1024)
def _size(bed: Bed, units: Units) -> str:
    return size_words(bed, units, span)
