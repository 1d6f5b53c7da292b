"""Boxes and lines that lie along the sides of the screen, filled rather than stroked: the same, much sooner."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

_LONG = 100.0
"""Pixels of a line from which filling it is worth the asking."""


def paint_chip(painter: QPainter, box: QRectF, radius: float, rim: QColor, paper: QColor) -> None:
    """Paint a box with round corners and a rim a pixel wide on its edge, both of opaque colours."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(rim)
    painter.drawRoundedRect(box.adjusted(-0.5, -0.5, 0.5, 0.5), radius + 0.5, radius + 0.5)
    painter.setBrush(paper)
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), radius - 0.5, radius - 0.5)


def paint_box(painter: QPainter, box: QRectF, pen: QPen | None, fill: QColor | None) -> None:
    """Paint a box with a pen of opaque colour on its edge, with either or both."""
    if pen is None:
        if fill is not None:
            painter.fillRect(box, fill)
        return
    half = pen.widthF() / 2
    if fill is None or fill.alpha() < 255 or pen.style() != Qt.PenStyle.SolidLine:
        painter.setPen(pen)
        painter.setBrush(fill if fill is not None else Qt.BrushStyle.NoBrush)
        painter.drawRect(box)
        return
    painter.fillRect(box.adjusted(-half, -half, half, half), pen.color())
    if min(box.width(), box.height()) > 2 * half:
        painter.fillRect(box.adjusted(half, half, -half, -half), fill)


def paint_line(painter: QPainter, start: QPointF, end: QPointF, pen: QPen) -> None:
    """Paint a line from left to right, or any other, with a pen of flat ends."""
    if start.y() == end.y() and end.x() - start.x() > _LONG and pen.style() == Qt.PenStyle.SolidLine:
        width = pen.widthF()
        painter.fillRect(QRectF(start.x(), start.y() - width / 2, end.x() - start.x(), width), pen.color())
    else:
        painter.setPen(pen)
        painter.drawLine(start, end)
