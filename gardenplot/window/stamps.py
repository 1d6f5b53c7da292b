"""Many marks of one shape at once: stamped from one picture of it, each to a quarter of a device pixel."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import ceil, hypot
from typing import Any

import numpy as np
import shiboken6
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap, QPolygonF

from gardenplot.drawing.marks import Shape

_PARTS = 4
"""A stamp stands at quarters of a pixel: Qt puts fragments of a pixmap on whole ones, which shows in even rows."""
_LARGEST = 24.0
"""Radius in device pixels from which few marks are in sight, so that each is drawn by itself."""

Pixels = NDArray[np.float64]


def paint_plants(painter: QPainter, shape: Shape, radius: float, ink: QColor, places: Pixels) -> None:
    """Draw a shape at each place, an array (n, 2) in the painter's coordinates; the radius too is in these.

    The painter may be turned; the marks stay upright.
    """
    device = painter.deviceTransform()
    times = hypot(device.m11(), device.m12())
    if radius * times > _LARGEST:
        _dip(painter, shape, radius, ink)
        _draw_each(painter, shape, radius, places.tolist())
        return
    picture, side = _stamp(shape, round(radius * times, 3), ink.rgba(), times)
    along, across = (device.m11(), device.m12()), (device.m21(), device.m22())
    on_device = places @ np.array([along, across]) + np.array([device.dx(), device.dy()])
    painter.save()
    painter.resetTransform()
    _stamp_all(painter, picture, side, on_device)
    painter.restore()


def _stamp_all(painter: QPainter, picture: QPixmap, side: int, places: Pixels) -> None:
    """Stamp a picture at places on the device, with a painter that has no transform but the device's own."""
    device = painter.deviceTransform()
    quarters = np.floor(places * _PARTS).astype(np.int64)
    whole, part = np.divmod(quarters, _PARTS)
    fragments = np.empty((len(places), 10))
    fragments[:, 0:2] = (whole - (device.dx(), device.dy())) / device.m11()
    fragments[:, 2:4] = part * side
    fragments[:, 4:6] = side
    fragments[:, 6:8] = 1 / device.m11()
    fragments[:, 8], fragments[:, 9] = 0, 1
    if len(places):
        # A live wrapper at this address would be handed out for the next array: it must be gone before that is made.
        wrapped: Any = shiboken6.wrapInstance(fragments.ctypes.data, QPainter.PixmapFragment)
        painter.drawPixmapFragments(wrapped, len(places), picture)
        del wrapped


@lru_cache(maxsize=64)
def _stamp(shape: Shape, radius: float, rgba: int, times: float) -> tuple[QPixmap, int]:
    """A sheet of one shape at all quarters of a pixel, across and down, and the side of one; in device pixels.

    The side is even, so that a fragment, which Qt centres on its place, begins on a whole pixel.
    """
    side = 2 * ceil(radius + 2)
    sheet = QPixmap(side * _PARTS, side * _PARTS)
    sheet.fill(Qt.GlobalColor.transparent)
    painter = QPainter(sheet)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _dip(painter, shape, radius, QColor.fromRgba(rgba), times)
    middles = [side // 2 + part * side + (part + 0.5) / _PARTS for part in range(_PARTS)]
    _draw_each(painter, shape, radius, [(across, down) for across in middles for down in middles])
    painter.end()
    return sheet, side


def _dip(painter: QPainter, shape: Shape, radius: float, ink: QColor, times: float = 1.0) -> None:
    painter.setPen(QPen(ink, (1.0 if radius > 3 * times else 0.7) * times))
    filled = QColor(ink)
    filled.setAlphaF(0.55)
    painter.setBrush(filled if shape is not Shape.RING else Qt.BrushStyle.NoBrush)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)


def _draw_each(painter: QPainter, shape: Shape, radius: float, places: Iterable[Sequence[float]]) -> None:
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
            return QPolygonF(QRectF(-side, -side, 2 * side, 2 * side))
        case Shape.TRIANGLE:
            return QPolygonF([QPointF(0, -r), QPointF(r * 0.95, r * 0.75), QPointF(-r * 0.95, r * 0.75)])
        case _:
            return QPolygonF([QPointF(0, -r), QPointF(r, 0), QPointF(0, r), QPointF(-r, 0)])
