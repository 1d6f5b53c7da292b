"""What is chosen, painted: frames round blocks, the ends that can be drawn, the rubber band, a measured line."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPainterPathStroker, QPen, QPolygonF

from gardenplot.drawing.bed import ground_of, reach_at
from gardenplot.drawing.strips import Strip
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures import measure
from gardenplot.layout import Layout, standing
from gardenplot.units import MM
from gardenplot.window.hand_box import box_of, paint_lines, seen_of
from gardenplot.window.theme import colour

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Measured, Spot
    from gardenplot.window.canvas_paint import Scene

_CROSS = 7.0
"""Half the size in pixels of the cross at an end of what is measured."""


def paint_selection(painter: QPainter, scene: "Scene", strip: Strip, inks: Palette) -> None:
    """Paint frames round what is chosen in a bed, at the bed's head; the ends of the one that leads can be drawn."""
    chosen, pushed = _chosen(scene), _pushed(scene)
    now = {layout.planting for layout in standing(strip.laid, scene.day)} if scene.trial else set()
    for layout in strip.laid.layouts:
        if layout.planting in chosen:
            _frame(painter, scene, strip, layout, inks)
        elif layout.planting in pushed & now:
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.5, Qt.PenStyle.DashLine))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPath(_around(scene, strip, layout, 2))
    lead = next((one for one in strip.laid.layouts if one.planting in chosen[:1]), None)
    if lead is not None:
        _ends(painter, scene, strip, lead, inks)


def marked_in(scene: "Scene") -> frozenset[str]:
    """The plantings that are chosen, or that the hand pushes or puts somewhere."""
    return frozenset((*_chosen(scene), *_pushed(scene)))


def _pushed(scene: "Scene") -> set[str]:
    return {*(one.planting for one in scene.trial.pushed), *scene.trial.proposed} if scene.trial else set()


def _chosen(scene: "Scene") -> tuple[str, ...]:
    if scene.trial is not None:
        return scene.trial.chosen
    if scene.band is not None and scene.band.rect is not None:
        return ("", *scene.band.inside)
    return (scene.planting, *scene.others) if scene.planting is not None else ()


def _around(scene: "Scene", strip: Strip, layout: Layout, by: float) -> QPainterPath:
    """A line round the ground that a block has, so many pixels outside its ends and one more outside its edges."""
    bed, strips, path = strip.laid.bed, scene.strips, QPainterPath()
    if not bed.outline and bed.diameter is None:
        left, right = (at / MM * strips.along for at in (layout.start, layout.end))
        path.addRoundedRect(QRectF(left - by, -by - 1, right - left + 2 * by, strip.height + 2 * by + 2), 2, 2)
        return path
    corners = ground_of(bed, layout.start, layout.end)
    path.addPolygon(QPolygonF([QPointF(x * strips.along, y * strips.across) for x, y in corners]))
    path.closeSubpath()
    rim = QPainterPathStroker()
    rim.setWidth(2 * by + 1)
    rim.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return path.united(rim.createStroke(path))


def _frame(painter: QPainter, scene: "Scene", strip: Strip, layout: Layout, inks: Palette) -> None:
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(_around(scene, strip, layout, 2))


def _ends(painter: QPainter, scene: "Scene", strip: Strip, layout: Layout, inks: Palette) -> None:
    accent, bed = colour(inks, Ink.ACCENT), strip.laid.bed
    painter.setPen(QPen(accent, 1.5))
    painter.setBrush(colour(inks, Ink.PAPER))
    for at in (layout.start, layout.end):
        top, bottom = reach_at(bed, at, bed.width.nm / MM)
        middle = (top + bottom) / 2 * scene.strips.across
        painter.drawRoundedRect(QRectF(at / MM * scene.strips.along - 4, middle - 8, 8, 16), 2, 2)
    if scene.focused and scene.trial is None:
        painter.setPen(QPen(accent, 1, Qt.PenStyle.DotLine))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(_around(scene, strip, layout, 6))


def paint_over(painter: QPainter, frame: QRect, scene: "Scene", inks: Palette) -> None:
    """Paint what lies over all beds: the rubber band, and the line that is measured with its readings."""
    if scene.band is not None and scene.band.rect is not None:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.2, Qt.PenStyle.DashLine))
        painter.setBrush(colour(inks, Ink.ACCENT, 0.08))
        painter.drawRect(scene.band.rect)
    if scene.trial is not None and scene.trial.measured is not None:
        _measured(painter, frame, scene, scene.trial.measured, inks)


def _measured(painter: QPainter, frame: QRect, scene: "Scene", measured: "Measured", inks: Palette) -> None:
    """The line with a cross at each end, the one that keys move in a ring, and its readings off its bed."""
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
    says, *rest = measure.readings(scene.plan, measured)
    lines = ((says, Ink.INK), *((words, Ink.SECOND) for words in rest))
    moved, fixed = (measured.end, measured.start) if measured.at_end else (measured.start, measured.end)
    seen = seen_of(scene.strips, scene.top, (fixed.bed, moved.bed))
    box = box_of(frame, (start + end) / 2, lines, seen, centred=True)
    paint_lines(painter, frame, box, lines, inks, Ink.ACCENT)


def _point(scene: "Scene", spot: "Spot") -> QPointF:
    strip, zoom = scene.strips.strip_of(spot.bed), scene.strips.zoom
    x, y = zoom.pixels((spot.x, spot.y))
    return QPointF(x + scene.left, y + scene.top + (strip.top if strip else 0))
