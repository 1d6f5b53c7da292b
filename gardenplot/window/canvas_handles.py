"""What of a bed's shape can be taken hold of, painted: corners, sides, obstacles, and the ground for a new bed."""

from attrs import frozen
from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from gardenplot.drawing.handles import Grip, Handle, Point, Zoom, half_sizes, middles, outline_of, place_of
from gardenplot.drawing.strips import Strips
from gardenplot.drawing.style import Ink, Palette
from gardenplot.drawing.tape import ticks
from gardenplot.gestures.stage import Sketch, Trial
from gardenplot.plan import Bed, Obstacle
from gardenplot.units import MM, Units
from gardenplot.units.figures import offset
from gardenplot.window.theme import colour, drawing_font
from gardenplot.words import _

_CORNER = 9.0
_MIDDLE = 3.5
_RING = 9.0
"""The least half-width of the ring round a chosen obstacle."""


@frozen
class Held:
    """Where the beds are drawn, which corner or obstacle is chosen, and what the hand tries with it."""

    strips: Strips
    left: int
    top: int
    units: Units
    handle: Handle | None
    trial: Trial | None
    focused: bool

    def sketch_in(self, bed: str | None) -> Sketch | None:
        """The outline under the hand, if it is one of that bed, or for None one that is being traced."""
        return self.trial.sketch if self.trial and self.trial.bed == bed else None


def paint_handles(painter: QPainter, bed: Bed, held: Held, inks: Palette) -> None:
    """Paint the corners and sides of a bed's outline and the obstacle that is chosen, at the bed's head."""
    zoom, sketch = held.strips.zoom, held.sketch_in(bed.id)
    corners = sketch.points if sketch else outline_of(bed)
    if sketch is not None:
        _sketch(painter, sketch, held, inks)
    else:
        _middles(painter, corners, zoom, inks)
    for number, corner in enumerate(corners):
        _corner(painter, _at(corner, zoom), held, inks, chosen=held.handle == Handle(Grip.CORNER, number))
    if held.handle is not None and held.handle.grip is Grip.OBSTACLE and held.handle.number < len(bed.obstacles):
        _ring(painter, bed.obstacles[held.handle.number], held, inks)


def _at(point: Point, zoom: Zoom) -> QPointF:
    return QPointF(*zoom.pixels(point))


def _corner(painter: QPainter, at: QPointF, held: Held, inks: Palette, *, chosen: bool) -> None:
    accent = colour(inks, Ink.ACCENT)
    painter.setPen(QPen(accent, 1.5))
    painter.setBrush(accent if chosen else colour(inks, Ink.PAPER))
    painter.drawRoundedRect(_square(at, _CORNER / 2), 2, 2)
    if chosen and held.focused and held.trial is None:
        _dots(painter, _square(at, _CORNER / 2 + 4), accent)


def _square(middle: QPointF, half: float) -> QRectF:
    return QRectF(middle.x() - half, middle.y() - half, 2 * half, 2 * half)


def _dots(painter: QPainter, frame: QRectF, ink: QColor) -> None:
    """The dots round what the keyboard works on."""
    painter.setPen(QPen(ink, 1, Qt.PenStyle.DotLine))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(frame, 3, 3)


def _middles(painter: QPainter, corners: tuple[Point, ...], zoom: Zoom, inks: Palette) -> None:
    """Small rings from which a new corner can be drawn out of a side."""
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.2))
    painter.setBrush(colour(inks, Ink.PAPER))
    for middle in middles(corners, zoom).values():
        painter.drawEllipse(_at(middle, zoom), _MIDDLE, _MIDDLE)


def _ring(painter: QPainter, obstacle: Obstacle, held: Held, inks: Palette) -> None:
    """The ring round a chosen obstacle, outside what is kept clear of it."""
    zoom, accent = held.strips.zoom, colour(inks, Ink.ACCENT)
    clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
    along, across = (max(_RING, half + 3) for half in half_sizes(obstacle, zoom, clear))
    middle = _at(place_of(obstacle), zoom)
    painter.setPen(QPen(accent, 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    frame = QRectF(middle.x() - along, middle.y() - across, 2 * along, 2 * across)
    if obstacle.diameter is None:
        painter.drawRoundedRect(frame, 3, 3)
    else:
        painter.drawEllipse(frame)
    if held.focused and held.trial is None:
        _dots(painter, frame.adjusted(-4, -4, 4, 4), accent)


def _sketch(painter: QPainter, sketch: Sketch, held: Held, inks: Palette) -> None:
    """The outline under the hand; dashed where it cannot be, and where it is still open."""
    line = [_at(point, held.strips.zoom) for point in sketch.points]
    whole, loose = QPen(colour(inks, Ink.ACCENT), 2), QPen(colour(inks, Ink.ACCENT), 1.5, Qt.PenStyle.DashLine)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if sketch.closed:
        painter.setPen(whole if held.trial is None or held.trial.can_be else loose)
        painter.drawPolygon(QPolygonF(line))
        return
    painter.setPen(whole)
    painter.drawPolyline(QPolygonF(line[:-1]))
    painter.setPen(loose)
    painter.drawPolyline(QPolygonF(line[-2:]))


def paint_ground(painter: QPainter, frame: QRect, held: Held, inks: Palette) -> None:
    """Empty ground with its own scale across, under the tape that all beds share, and the outline traced on it."""
    ground = held.strips.ground
    if ground is None:
        return
    painter.save()
    painter.translate(held.left, ground.top + held.top)
    _ground_lines(painter, frame.width() - held.left, ground.height, held, inks)
    _ground_names(painter, ground.height, held, inks)
    painter.setClipRect(QRectF(held.strips.gutter - 10 - held.left, -12, frame.width(), ground.height + 24))
    sketch = held.sketch_in(None)
    if sketch is not None:
        _sketch(painter, sketch, held, inks)
        for number, point in enumerate(sketch.points):
            _corner(painter, _at(point, held.strips.zoom), held, inks, chosen=number == sketch.held)
    painter.restore()


def _ground_lines(painter: QPainter, right: float, height: float, held: Held, inks: Palette) -> None:
    """The base line, and quiet lines at the round readings in both directions."""
    zoom, rule = held.strips.zoom, QPen(colour(inks, Ink.RULE), 1)
    first = held.strips.gutter - 10 - held.left
    painter.fillRect(QRectF(max(0, first), 0, right - max(0, first), height), colour(inks, Ink.SOIL, 0.35))
    painter.setPen(rule)
    for tick in ticks(0, round(right / zoom.along * MM), held.units, zoom.along):
        x = tick.at / MM * zoom.along
        if tick.words and x >= first:
            painter.drawLine(QPointF(x, 0), QPointF(x, height))
    for tick in ticks(0, round(height / zoom.across * MM), held.units, zoom.across):
        if tick.words:
            y = tick.at / MM * zoom.across
            painter.drawLine(QPointF(max(0, first), y), QPointF(right, y))
    painter.setPen(QPen(colour(inks, Ink.EDGE), 1.2))
    painter.drawLine(QPointF(max(0, first), 0), QPointF(right, 0))


def _ground_names(painter: QPainter, height: float, held: Held, inks: Palette) -> None:
    """In the gutter what this is, and the offsets from the base line."""
    edge, zoom = held.strips.gutter - 10 - held.left, held.strips.zoom
    painter.setFont(drawing_font(14, bold=True))
    painter.setPen(colour(inks, Ink.ACCENT))
    painter.drawText(QPointF(edge - held.strips.gutter + 22, -9), _("New bed"))
    painter.setFont(drawing_font(12))
    painter.setPen(colour(inks, Ink.SECOND))
    how = _("corners by click, or by arrows and Space · Enter or the first one closes · Backspace takes back")
    painter.drawText(QPointF(edge + 10, -9), how)
    for tick in ticks(0, round(height / zoom.across * MM), held.units, zoom.across):
        if tick.words:
            box = QRectF(edge - 92, tick.at / MM * zoom.across - 9, 90, 18)
            words = str(offset(tick.at, held.units))
            painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, words)
