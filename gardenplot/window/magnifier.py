"""A magnifier at the pointer: what lies under it drawn larger and true to scale, with the tape below."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QDropEvent, QFontMetricsF, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.bed import draw_bed
from gardenplot.drawing.covers import over_bed
from gardenplot.drawing.strips import Under
from gardenplot.drawing.style import Ink
from gardenplot.drawing.tape import ticks
from gardenplot.drawing.tape_words import under_words
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.canvas_paint import Scene
from gardenplot.window.lettering import write, write_within
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour, drawing_font, magnified, palette

WIDTH, HEIGHT = 340, 236
"""Its size in pixels where its reading takes one line; each further line makes it higher."""
_HEAD, _FOOT, _LINE = 24, 30, 16
_MARGIN, _MOST_LINES = 10, 5
_AWAY = 26
"""Pixels between the pointer and the magnifier."""
_TIMES = 3.0
_LEAST, _MOST = 0.35, 6.0
"""Pixels per mm: at least so much that a hand's breadth can be told, at most so much that a seed can."""

Finds = Callable[[QPointF], Under | None]


class Magnifier(QWidget):
    """Follows the pointer over a canvas while it is wanted; it never takes the mouse.

    Made after whatever else watches the viewport, since Qt asks the latest first and others keep what they hear.
    """

    def __init__(self, viewport: QWidget, scene: Callable[[], Scene], finds: Finds) -> None:
        super().__init__(viewport)
        self._viewport, self._scene, self._finds = viewport, scene, finds
        self._at: Under | None = None
        self._point = QPointF()
        self.is_wanted = False
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()
        viewport.installEventFilter(self)

    def want(self, wanted: bool) -> None:
        """Show it from the next move of the pointer on, or no more."""
        self.is_wanted = wanted
        if not wanted:
            self.hide()

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        if self.is_wanted:
            match event.type():
                case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                    self._follow(event.position())
                case QEvent.Type.DragMove | QEvent.Type.DragEnter if isinstance(event, QDropEvent):
                    self._follow(event.position())
                case QEvent.Type.Leave | QEvent.Type.DragLeave | QEvent.Type.Drop:
                    self.hide()
        return False

    def look_again(self) -> None:
        """Show what lies there by now, under a pointer that rests while something else changes."""
        if self.isVisible():
            self._follow(self._point)

    def _follow(self, point: QPointF) -> None:
        self._at, self._point = self._finds(point), point
        if self._at is None:
            self.hide()
            return
        times = magnified()
        more = len(reading_lines(self._scene().plan, self._at)) - 1
        width, height, away = round(WIDTH * times), round((HEIGHT + more * _LINE) * times), round(_AWAY * times)
        room, at = self._viewport, point.toPoint()
        left = max(0, min(at.x() - width // 2, room.width() - width))
        top = at.y() - away - height
        if top < 0:
            top = min(at.y() + away, room.height() - height)
        self.resize(width, height)
        self.move(QPoint(left, top))
        self.show()
        self.raise_()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._at is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(magnified(), magnified())
        paint_magnified(painter, self._scene(), self._at)
        painter.end()


def paint_magnified(painter: QPainter, scene: Scene, at: Under) -> None:
    """Paint what lies round a place of a bed into a frame WIDTH pixels wide, below the lines of its reading."""
    inks, strip = palette(), scene.strips.strip_of(at.bed)
    if strip is None:
        return
    times = max(_LEAST, min(_MOST, scene.strips.along * _TIMES))
    lines = reading_lines(scene.plan, at)
    more = (len(lines) - 1) * _LINE
    frame = QRectF(0.5, 0.5, WIDTH - 1, HEIGHT + more - 1)
    view = frame.adjusted(1, _HEAD + more, -1, -_FOOT)
    painter.fillRect(frame, colour(inks, Ink.PAPER))
    centre = view.center()
    painter.save()
    painter.setClipRect(view)
    painter.translate(centre.x() - at.x / MM * times, centre.y() - at.y / MM * times)
    reach = view.width() / 2 / times
    scale = Scale(times, times, at.x / MM - reach, at.x / MM + reach)
    over = over_bed(scene.plan, strip.bed, scene.day, scene.layers)
    figure = draw_bed(strip.laid, scene.day, scene.look, scene.plan.place.units, over=over)
    paint(painter, figure.marks, scale, inks)
    painter.restore()
    _cross(painter, centre, lines)
    _paint_tape(painter, view, scene, times, at.x)
    painter.setPen(QPen(colour(inks, Ink.INK), 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(frame, 3, 3)


def reading_lines(plan: Plan, at: Under) -> tuple[str, ...]:
    """The place in words, whole: in one line, or broken between its parts, and in a part that is too long."""
    lines: list[str] = []
    for part in under_words(plan, at).replace(" · ", " ·\n").split("\n"):
        if lines and _fits(f"{lines[-1]} {part}"):
            lines[-1] += f" {part}"
        else:
            lines += _broken(part)
    return tuple(lines) if len(lines) <= _MOST_LINES else (*lines[: _MOST_LINES - 2], "…", lines[-1])


def _fits(words: str) -> bool:
    return QFontMetricsF(drawing_font(12, bold=True)).horizontalAdvance(words) <= WIDTH - 2 * _MARGIN


def _broken(words: str) -> list[str]:
    """Words in lines, and a word in pieces where it is wider than a line."""
    lines = [""]
    for letter in words:
        if not _fits(lines[-1] + letter):
            kept, space, moved = lines[-1].rpartition(" ")
            lines[-1:] = [kept, moved] if space else [lines[-1], ""]
        lines[-1] += letter
    return [line for line in lines if line.strip()]


def _cross(painter: QPainter, centre: QPointF, lines: tuple[str, ...]) -> None:
    """The place itself: a cross, and above it where that is."""
    inks = palette()
    painter.setPen(QPen(colour(inks, Ink.ACCENT), 1.2))
    for way in (QPointF(7, 0), QPointF(0, 7)):
        painter.drawLine(centre - way, centre + way)
    painter.setPen(colour(inks, Ink.INK))
    for number, words in enumerate(lines):
        write(painter, QPointF(_MARGIN, 17 + _LINE * number), words, 12, bold=True)


def _paint_tape(painter: QPainter, view: QRectF, scene: Scene, times: float, middle: int) -> None:
    """The stretch of tape below."""
    inks, base = palette(), view.bottom() + 1
    painter.setPen(QPen(colour(inks, Ink.INK), 1))
    painter.drawLine(QPointF(view.left(), base), QPointF(view.right(), base))
    reach = round(view.width() / 2 / times * MM)
    for tick in ticks(middle - reach, middle + reach, scene.plan.place.units, times):
        x = view.center().x() + (tick.at - middle) / MM * times
        painter.drawLine(QPointF(x, base), QPointF(x, base + (8 if tick.words else 4)))
        if tick.words:
            write_within(painter, QRectF(x - 40, base + 9, 80, 16), tick.words, 12)
