"""Painting marks with Qt: plan millimetres to pixels, inks to colours; nothing is computed about gardens."""

from functools import lru_cache
from math import ceil
from typing import assert_never

import numpy as np
from attrs import frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPixmap, QPolygonF, QTransform

from gardenplot.drawing.marks import Hatch, Label, Line, Mark, Outline, Pen, Plants, Weight
from gardenplot.drawing.style import Ink, Palette
from gardenplot.layout.positions import positions
from gardenplot.units import MM
from gardenplot.window.lettering import lettering, write_within
from gardenplot.window.levels import paint_box, paint_chip, paint_line
from gardenplot.window.stamps import paint_plants
from gardenplot.window.theme import colour

_PX = {Weight.ROW: 0.8, Weight.EDGE: 1.2, Weight.STAKE: 1.4}
_OVERHANG_PX = 3.0
_LABEL_PX = (13, 10)
"""The sizes of a label's text, of which the first one that fits across is taken."""
_DASHES = [5, 3]
"""A dash and the gap behind it, in widths of the pen."""
_SLIMMEST_HATCH = 5.0
"""Pixels of a slip of ground in which a hatch would be no more than noise."""
_HELD = 12.0
"""Half the height in pixels of what a block is pulled by at its ends, with some room."""
_SMALLEST_PLANT = 1.1
"""Below this radius in pixels the row lines alone are drawn."""


@frozen
class Scale:
    """Pixels per millimetre along and across, and what part of the bed's length is in sight, in mm."""

    along: float
    across: float
    first: float
    last: float


def paint(painter: QPainter, marks: tuple[Mark, ...], scale: Scale, inks: Palette) -> None:
    """Paint marks at the painter's origin, which is the head's end of the base line."""
    for mark in marks:
        match mark:
            case Outline():
                _outline(painter, mark, scale, inks)
            case Plants():
                _plants(painter, mark, scale, inks)
            case Line():
                _line(painter, mark, scale, inks)
            case Label():
                _label(painter, mark, scale, inks)
            case _:
                assert_never(mark)


def _pen(pen: Pen, inks: Palette) -> QPen:
    return _pen_of(inks[pen.ink], pen.weight, pen.dashed)


@lru_cache(maxsize=128)
def _pen_of(name: str, weight: Weight, dashed: bool) -> QPen:
    made = QPen(QColor(name), _PX[weight])
    made.setCapStyle(Qt.PenCapStyle.FlatCap)
    if dashed:
        made.setDashPattern(_DASHES)
    return made


def _outline(painter: QPainter, mark: Outline, scale: Scale, inks: Palette) -> None:
    is_box, along, across = mark.is_box, scale.along, scale.across
    left, top, right, bottom = (*mark.points[0], *mark.points[2]) if is_box else mark.bounds
    width, height = (right - left) * along, (bottom - top) * across
    frame, is_slim = QRectF(left * along, top * across, width, height), min(width, height) < _SLIMMEST_HATCH
    pen = _pen(mark.pen, inks) if mark.pen else None
    fill = colour(inks, mark.fill, mark.tint) if mark.fill else None
    hatch = _hatch(mark, mark.hatch, painter, inks) if mark.hatch and not is_slim else None
    if is_box or (pen is None and is_slim):
        paint_box(painter, frame, pen, fill)
        if hatch is not None:
            painter.fillRect(frame, hatch)
        return
    polygon = QPolygonF([QPointF(x * along, y * across) for x, y in mark.points])
    if pen or fill:
        painter.setPen(pen or Qt.PenStyle.NoPen)
        painter.setBrush(fill or Qt.BrushStyle.NoBrush)
        painter.drawPolygon(polygon)
    if hatch is not None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(hatch)
        painter.drawPolygon(polygon)


_HATCHES = {
    Hatch.CROSSED: Qt.BrushStyle.DiagCrossPattern,
    Hatch.SOWN: Qt.BrushStyle.Dense6Pattern,
    Hatch.SLANTED: Qt.BrushStyle.BDiagPattern,
    Hatch.LEVEL: Qt.BrushStyle.HorPattern,
    Hatch.UPRIGHT: Qt.BrushStyle.VerPattern,
    Hatch.GRID: Qt.BrushStyle.CrossPattern,
    Hatch.BACKWARD: Qt.BrushStyle.FDiagPattern,
    Hatch.SPOTTED: Qt.BrushStyle.Dense6Pattern,
    Hatch.DENSE: Qt.BrushStyle.Dense5Pattern,
}


def _hatch(mark: Outline, hatch: Hatch, painter: QPainter, inks: Palette) -> QBrush:
    match hatch:
        case Hatch.CROSSED:
            ink = colour(inks, Ink.ACCENT)
        case Hatch.SLANTED:
            ink = colour(inks, Ink.EDGE, 0.75)
        case _:
            ink = colour(inks, mark.fill or Ink.INK)
    return _hatched(_HATCHES[hatch], ink, painter)


def _hatched(style: Qt.BrushStyle, ink: QColor, painter: QPainter) -> QBrush:
    """A hatch that begins at the painter's origin, so that it keeps still on the ground while the drawing scrolls.

    Qt draws a hatch in pixels of the device, however the painter is scaled, but begins it by the shift of the scale's
    inverse: so it is handed no scale, and a shift by whole pixels.
    """
    brush, device = QBrush(_tile(style, ink.rgba())), painter.deviceTransform()
    begins = QTransform.fromTranslate(round(device.dx()), round(device.dy()))
    brush.setTransform(begins * device.inverted()[0])
    return brush


_TILE = 64
"""The side in pixels of a piece of hatch that is laid beside itself; Qt's hatches come again after 8."""


@lru_cache(maxsize=64)
def _tile(style: Qt.BrushStyle, rgba: int) -> QPixmap:
    """A piece of hatch: Qt lays a picture over a large area several times as fast as it hatches it."""
    tile = QPixmap(_TILE, _TILE)
    tile.fill(Qt.GlobalColor.transparent)
    painter = QPainter(tile)
    painter.fillRect(tile.rect(), QBrush(QColor.fromRgba(rgba), style))
    painter.end()
    return tile


def _line(painter: QPainter, mark: Line, scale: Scale, inks: Palette) -> None:
    start = QPointF(mark.start[0] * scale.along, mark.start[1] * scale.across)
    end = QPointF(mark.end[0] * scale.along, mark.end[1] * scale.across)
    if mark.overhang:
        reach = mark.overhang * _OVERHANG_PX
        start -= QPointF(0, reach)
        end += QPointF(0, reach)
    if mark.pen.dashed and scale.first > 0 and start.y() == end.y():
        # Qt dashes a pen that is slimmer than a pixel of the screen as if it were not.
        width = max(_PX[mark.pen.weight], 1 / painter.deviceTransform().m11())
        start.setX(_dash_from(start.x(), scale.first * scale.along, sum(_DASHES) * width))
        if start.x() >= end.x():
            return
    paint_line(painter, start, end, _pen(mark.pen, inks))


def _dash_from(start: float, first: float, period: float) -> float:
    """Where, in pixels from its head to its foot, the first dash of a line begins that is in sight from `first` on.

    Qt counts the dashes of a line from where its device begins, so that they would lie elsewhere in each picture.
    """
    return start + max(0, ceil((first - start) / period)) * period


def _label(painter: QPainter, mark: Label, scale: Scale, inks: Palette) -> None:
    room, tall = mark.room * scale.along, mark.across * scale.across
    if tall < _LABEL_PX[-1]:
        return
    px = next((one for one in _LABEL_PX if lettering("", one, bold=mark.bold).height <= tall), None)
    if px is None:
        return
    set_lines = ((words, lettering(words, px, bold=mark.bold)) for words in mark.texts)
    text, line = next(((words, line) for words, line in set_lines if line.width <= room - 4), (None, None))
    if text is None or line is None:
        return
    is_tight, height = line.width > room - 18, min(line.height + 6, tall)
    width = line.width + (2 if is_tight else 12)
    # Ends of a block beside it are pulled at half the height, and captions may lie on the foot of the bed.
    above = height / 2 + _HELD if is_tight and tall >= 2 * (height + _HELD) else 0.0
    centre = QPointF(mark.at[0] * scale.along, mark.at[1] * scale.across - above)
    frame = QRectF(centre.x() - width / 2, centre.y() - height / 2, width, height)
    paint_chip(painter, frame, 3, colour(inks, Ink.RULE), colour(inks, Ink.PAPER))
    painter.setPen(colour(inks, Ink.INK))
    write_within(painter, frame, text, px, bold=mark.bold)


def _plants(painter: QPainter, mark: Plants, scale: Scale, inks: Palette) -> None:
    radius = mark.spread / 2 * min(scale.along, scale.across)
    if radius < _SMALLEST_PLANT:
        return
    places = positions(mark.layout) / MM
    seen = places[(places[:, 0] >= scale.first - mark.spread) & (places[:, 0] <= scale.last + mark.spread)]
    pixels = np.asarray(seen * (scale.along, scale.across), dtype=float)
    paint_plants(painter, mark.shape, radius, colour(inks, mark.ink), pixels)
