"""What is chosen, painted: frames round blocks, the ends that can be drawn, the rubber band, a measured line."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from gardenplot.drawing.strips import Strip
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.measure import readings
from gardenplot.gestures.stage import Measured, Spot
from gardenplot.layout import Layout
from gardenplot.units import MM
from gardenplot.window.theme import colour, drawing_font

if TYPE_CHECKING:
    from gardenplot.window.canvas_paint import Scene

_CROSS = 7.0
"""Half the size in pixels of the cross at an end of what is measured."""


def paint_selection(painter: QPainter, scene: "Scene", strip: Strip, inks: Palette) -> None:
    """Paint frames round what is chosen in a bed, at the bed's head; the ends of the one that leads can be drawn."""
    chosen = _chosen(scene)
    pushed = {one.planting for one in scene.trial.pushed} if scene.trial else set()
    for layout in strip.laid.layouts:
        if layout.planting in chosen:
            _frame(painter, scene, strip, layout, inks)
        elif layout.planting in pushed:
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.5, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(_around(scene, strip, layout, 2), 2, 2)
    lead = next((one for one in strip.laid.layouts if one.planting in chosen[:1]), None)
    if lead is not None:
        _ends(painter, scene, strip, lead, inks)


def _chosen(scene: "Scene") -> tuple[str, ...]:
    if scene.trial is not None:
        return scene.trial.chosen
    if scene.band is not None and scene.band.rect is not None:
        return ("", *scene.band.inside)
    return (scene.planting, *scene.others) if scene.planting is not None else ()


def _around(scene: "Scene", strip: Strip, layout: Layout, by: float) -> QRectF:
    """A block's frame, so many pixels outside its ends and one more outside its edges."""
    left, right = (at / MM * scene.strips.along for at in (layout.start, layout.end))
    return QRectF(left - by, -by - 1, right - left + 2 * by, strip.height + 2 * by + 2)


def _frame(painter: QPainter, scene: "Scene", strip: Strip, layout: Layout, inks: Palette) -> None:
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(_around(scene, strip, layout, 2), 2, 2)


def _ends(painter: QPainter, scene: "Scene", strip: Strip, layout: Layout, inks: Palette) -> None:
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1.5))
    painter.setBrush(colour(inks, Ink.PAPER))
    for at in (layout.start, layout.end):
        painter.drawRoundedRect(QRectF(at / MM * scene.strips.along - 4, strip.height / 2 - 8, 8, 16), 2, 2)
    if scene.focused and scene.trial is None:
        painter.setPen(QPen(accent, 1, Qt.PenStyle.DotLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(_around(scene, strip, layout, 6), 3, 3)


def paint_over(painter: QPainter, scene: "Scene", inks: Palette) -> None:
    """Paint what lies over all beds: the rubber band, and the line that is measured with its readings."""
    if scene.band is not None and scene.band.rect is not None:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.2, Qt.PenStyle.DashLine))
        painter.setBrush(colour(inks, Ink.ACCENT, 0.08))
        painter.drawRect(scene.band.rect)
    if scene.trial is not None and scene.trial.measured is not None:
        _measured(painter, scene, scene.trial.measured, inks)


def _measured(painter: QPainter, scene: "Scene", measured: Measured, inks: Palette) -> None:
    """The line with a cross at each end, the one that keys move in a ring, and its readings beside its middle."""
    start, end = _point(scene, measured.start), _point(scene, measured.end)
    accent = colour(inks, Ink.ACCENT)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for pen in (QPen(colour(inks, Ink.PAPER), 4.5), QPen(accent, 2)):
        painter.setPen(pen)
        painter.drawLine(start, end)
        for at in (start, end):
            painter.drawLine(QPointF(at.x() - _CROSS, at.y()), QPointF(at.x() + _CROSS, at.y()))
            painter.drawLine(QPointF(at.x(), at.y() - _CROSS), QPointF(at.x(), at.y() + _CROSS))
    painter.setPen(QPen(accent, 1.5))
    painter.drawEllipse(end if measured.at_end else start, _CROSS + 2, _CROSS + 2)
    _box(painter, (start + end) / 2, readings(scene.plan, measured), inks)


def _box(painter: QPainter, at: QPointF, lines: tuple[str, ...], inks: Palette) -> None:
    font = drawing_font(14, bold=True)
    metrics = QFontMetricsF(font)
    width, height = max(map(metrics.horizontalAdvance, lines)) + 20, 22.0 * len(lines) + 8
    box = QRectF(max(4.0, at.x() - width / 2), at.y() + 18, width, height)
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 1))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawRoundedRect(box, 4, 4)
    painter.setFont(font)
    for number, words in enumerate(lines):
        painter.setPen(colour(inks, Ink.SECOND if number else Ink.INK))
        painter.drawText(QPointF(box.left() + 10, box.top() + 20 + 22 * number), words)


def _point(scene: "Scene", spot: Spot) -> QPointF:
    strip, zoom = scene.strips.strip_of(spot.bed), scene.strips.zoom
    x, y = zoom.pixels((spot.x, spot.y))
    return QPointF(x + scene.left, y + scene.top + (strip.top if strip else 0))
