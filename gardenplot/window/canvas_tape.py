"""The tape along the top of the canvas."""

from math import ceil, floor, inf
from typing import NamedTuple

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from gardenplot.drawing.strips import Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.drawing.tape import ticks
from gardenplot.drawing.tape_words import zero_words
from gardenplot.units import MM, Units
from gardenplot.window.canvas_view import TAPE
from gardenplot.window.kept_pictures import KeptPictures
from gardenplot.window.lettering import lettering, write, write_within
from gardenplot.window.theme import colour
from gardenplot.words import _

_BASE = TAPE - 12.5
"""The height of the tape's line in pixels from the top."""
_STRETCH, _WORDS = 512, 40
"""Pixels of the tape that are one picture, and those that words may reach to both sides of their tick."""
_KEPT = KeptPictures(24)
_ARROW = 8.0
"""The length in pixels of the arrow that points to a zero out of sight."""


def paint_tape(painter: QPainter, frame: QRect, strips: Strips, left: int, units: Units, inks: Palette) -> None:
    """The tape: its zero is the open circle, its ticks are the strips' own readings."""
    painter.fillRect(QRect(0, 0, frame.width(), TAPE), colour(inks, Ink.PAPER))
    painter.setPen(colour(inks, Ink.SECOND))
    write(painter, QPointF(12, _BASE + 2), _("tape"), 12)
    first = strips.gutter - 10
    if left < first:
        away = zero_words(round((first - left) / strips.along * MM), units)
        _point_to_zero(painter, QPointF(12, _BASE - 17), away, strips.gutter, inks)
    painter.save()
    painter.setClipRect(QRectF(first, 0, frame.width(), TAPE))
    sharp = painter.deviceTransform().m11()
    wide, beside = (ceil(size * sharp) / sharp for size in (_STRETCH, _WORDS))
    longest = strips.longest if strips.ground is None else inf
    for number in range(floor((first - left - beside) / wide), ceil((frame.width() - left + beside) / wide)):
        begins, ends = number * wide, (number + 1) * wide
        stretch = QRectF(left + begins - beside, 0, wide + 2 * beside, TAPE)
        shown = _Stretch(begins, ends, beside, strips.along, longest, units)
        _KEPT.show(painter, stretch, _paint_stretch, shown, inks[Ink.INK], inks[Ink.PAPER])
    painter.restore()
    painter.fillRect(QRect(0, TAPE - 1, frame.width(), 1), colour(inks, Ink.RULE))


class _Stretch(NamedTuple):
    """A stretch of the tape: where it begins and ends in pixels from the head, and how many its picture has more on
    either side for words; `along` pixels for a mm; the tape ends with the `longest` bed, in mm."""

    begins: float
    ends: float
    beside: float
    along: float
    longest: float
    units: Units


def _paint_stretch(painter: QPainter, shown: _Stretch, ink: str, paper: str) -> None:
    """Paint a stretch of the tape with all words of its ticks, whole."""
    begins, ends, beside, along, longest, units = shown
    line = QColor(ink)
    painter.translate(beside - begins, 0)
    head, foot = max(0.0, begins), min(longest * along, ends)
    if foot > head:
        painter.fillRect(QRectF(head, _BASE - 0.5, foot - head, 1), line)
    painter.setPen(QPen(line, 1.2))
    found = ticks(floor(begins / along * MM), round(min(ends / along, longest) * MM), units, along)
    places = [(x, tick.words) for tick in found if begins <= (x := tick.at / MM * along) < ends]
    painter.drawLines([QLineF(x, _BASE, x, _BASE - (9 if words else 4)) for x, words in places])
    for x, words in places:
        if words:
            write_within(painter, QRectF(x - _WORDS, _BASE - 27, 2 * _WORDS, 16), words, 12)
    if begins <= 0 < ends:
        painter.setBrush(QColor(paper))
        painter.setPen(QPen(line, 1.4))
        painter.drawEllipse(QPointF(0, _BASE), 4, 4)


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
