"""Painting marks with Qt: plan millimetres to pixels, inks to colours; nothing is computed about gardens."""

from typing import assert_never

import numpy as np
from attrs import frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFontMetricsF, QPainter, QPen, QPolygonF, QTransform

from gardenplot.drawing.marks import Hatch, Label, Line, Mark, Outline, Pen, Plants, Shape, Weight
from gardenplot.drawing.style import Ink, Palette
from gardenplot.layout.positions import positions
from gardenplot.units import MM
from gardenplot.window.theme import colour, drawing_font

_PX = {Weight.ROW: 0.8, Weight.EDGE: 1.2, Weight.STAKE: 1.4}
_OVERHANG_PX = 3.0
_LABEL_PX = 13
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
    made = QPen(colour(inks, pen.ink), _PX[pen.weight])
    made.setCapStyle(Qt.PenCapStyle.FlatCap)
    if pen.dashed:
        made.setDashPattern([5, 3])
    return made


def _outline(painter: QPainter, mark: Outline, scale: Scale, inks: Palette) -> None:
    polygon = QPolygonF([QPointF(x * scale.along, y * scale.across) for x, y in mark.points])
    painter.setPen(_pen(mark.pen, inks) if mark.pen else QPen(Qt.PenStyle.NoPen))
    painter.setBrush(colour(inks, mark.fill, mark.tint) if mark.fill else QBrush(Qt.BrushStyle.NoBrush))
    painter.drawPolygon(polygon)
    if mark.hatch:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(_hatch(mark, painter, inks))
        painter.drawPolygon(polygon)


def _hatch(mark: Outline, painter: QPainter, inks: Palette) -> QBrush:
    match mark.hatch:
        case Hatch.CROSSED:
            return _hatched(Qt.BrushStyle.DiagCrossPattern, colour(inks, Ink.ACCENT), painter)
        case Hatch.SOWN:
            return _hatched(Qt.BrushStyle.Dense6Pattern, colour(inks, mark.fill or Ink.INK), painter)
        case _:
            return _hatched(Qt.BrushStyle.BDiagPattern, colour(inks, Ink.EDGE, 0.75), painter)


def _hatched(style: Qt.BrushStyle, ink: QColor, painter: QPainter) -> QBrush:
    """A hatch that keeps still on the ground while the drawing scrolls."""
    brush = QBrush(ink, style)
    world = painter.worldTransform()
    brush.setTransform(
        QTransform.fromTranslate(0, 0) * world.inverted()[0] * QTransform.fromTranslate(world.dx(), world.dy())
    )
    return brush


def _line(painter: QPainter, mark: Line, scale: Scale, inks: Palette) -> None:
    start = QPointF(mark.start[0] * scale.along, mark.start[1] * scale.across)
    end = QPointF(mark.end[0] * scale.along, mark.end[1] * scale.across)
    if mark.overhang:
        reach = mark.overhang * _OVERHANG_PX
        start -= QPointF(0, reach)
        end += QPointF(0, reach)
    painter.setPen(_pen(mark.pen, inks))
    painter.drawLine(start, end)


def _label(painter: QPainter, mark: Label, scale: Scale, inks: Palette) -> None:
    font = drawing_font(_LABEL_PX, bold=mark.bold)
    metrics = QFontMetricsF(font)
    room = mark.room * scale.along
    text = next((one for one in mark.texts if metrics.horizontalAdvance(one) <= room - 4), None)
    if text is None:
        return
    width, height = metrics.horizontalAdvance(text), metrics.height() + 6
    width += 12 if width <= room - 18 else 2
    centre = QPointF(mark.at[0] * scale.along, mark.at[1] * scale.across)
    frame = QRectF(centre.x() - width / 2, centre.y() - height / 2, width, height)
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawRoundedRect(frame, 3, 3)
    painter.setFont(font)
    painter.setPen(colour(inks, Ink.INK))
    painter.drawText(frame, Qt.AlignmentFlag.AlignCenter, text)


def _plants(painter: QPainter, mark: Plants, scale: Scale, inks: Palette) -> None:
    radius = mark.spread / 2 * min(scale.along, scale.across)
    if radius < _SMALLEST_PLANT:
        return
    places = positions(mark.layout) / MM
    seen = places[(places[:, 0] >= scale.first - mark.spread) & (places[:, 0] <= scale.last + mark.spread)]
    painter.setPen(QPen(colour(inks, mark.ink), 1.0 if radius > 3 else 0.7))
    painter.setBrush(colour(inks, mark.ink, 0.55) if mark.shape is not Shape.RING else Qt.BrushStyle.NoBrush)
    pixels = np.asarray(seen * (scale.along, scale.across), dtype=float)
    stamp_plants(painter, mark.shape, radius, pixels.tolist())


def stamp_plants(painter: QPainter, shape: Shape, radius: float, places: list[list[float]]) -> None:
    """Draw one shape at each place in pixels, with the painter's pen and brush."""
    if shape in (Shape.DISC, Shape.RING):
        for x, y in places:
            painter.drawEllipse(QPointF(x, y), radius, radius)
        return
    if shape is Shape.CROSS:
        arm = radius * 0.75
        for x, y in places:
            painter.drawLine(QPointF(x - arm, y - arm), QPointF(x + arm, y + arm))
            painter.drawLine(QPointF(x - arm, y + arm), QPointF(x + arm, y - arm))
        return
    corners = _corners(shape, radius)
    for x, y in places:
        painter.drawPolygon(corners.translated(x, y))


def _corners(shape: Shape, radius: float) -> QPolygonF:
    r, side = radius, radius * 0.85
    match shape:
        case Shape.SQUARE:
            return QPolygonF([QPointF(-side, -side), QPointF(side, -side), QPointF(side, side), QPointF(-side, side)])
        case Shape.TRIANGLE:
            return QPolygonF([QPointF(0, -r), QPointF(r * 0.95, r * 0.75), QPointF(-r * 0.95, r * 0.75)])
        case _:
            return QPolygonF([QPointF(0, -r), QPointF(r, 0), QPointF(0, r), QPointF(-r, 0)])
