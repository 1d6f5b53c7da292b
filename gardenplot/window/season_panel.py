"""The season map below the drawing: the bed in sight over the dates, and a line for the day that is shown."""

from datetime import date, timedelta

from PySide6.QtCore import QEvent, QPoint, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.letters import looks
from gardenplot.drawing.season_map import draw_season
from gardenplot.drawing.style import Ink
from gardenplot.layout import LaidOut, lay_out_bed
from gardenplot.plan import bed_of
from gardenplot.season import season_of
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.season_paint import Axes, paint_nothing, paint_season
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_NEAR = 5.0
_STEPS = {
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_PageUp: -7,
    Qt.Key.Key_PageDown: 7,
}


class SeasonPanel(QWidget):
    """Shows the selected bed, else the first; a press on a planting selects it, elsewhere it moves the day shown.

    Up and down move the day by one, Page up and Page down by a week, left and right choose a planting.
    """

    def __init__(self, document: Document, sight: Sight, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight, self._canvas = document, sight, canvas
        self._drags = False
        self.setAccessibleName(_("Season map"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        for signal in (document.changed, document.opened, sight.selected, sight.day_changed, canvas.view.changed):
            signal.connect(self.update)
        for bar in (canvas.horizontalScrollBar(),):
            bar.valueChanged.connect(self.update)

    def axes(self) -> Axes | None:
        """Where tape and dates lie now; None without a bed or a date."""
        laid, season = self._bed(), season_of(self._document.plan)
        if laid is None or season is None:
            return None
        plan, times = self._document.plan, magnified()
        beside = self._canvas.viewport().mapToGlobal(QPoint()).x() - self.mapToGlobal(QPoint()).x()
        left = beside / times + self._canvas.view.origin[0]
        season_map = draw_season(laid, looks(plan), season, plan.place)
        return Axes(season_map, left, self._canvas.view.along, self.width() / times, self.height() / times)

    def _bed(self) -> LaidOut | None:
        plan = self._document.plan
        if not plan.beds:
            return None
        return lay_out_bed(plan, bed_of(plan, self._sight.bed) if self._sight.bed else plan.beds[0])

    def paintEvent(self, _event: QPaintEvent) -> None:
        inks, axes, laid = palette(), self.axes(), self._bed()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.fillRect(self.rect(), colour(inks, Ink.PAPER))
        painter.scale(magnified(), magnified())
        frame = QRectF(0, 0, self.width() / magnified(), self.height() / magnified())
        if axes is None or laid is None:
            paint_nothing(painter, frame, inks)
        else:
            paint_season(painter, axes, laid.bed.name, self._sight.day, self._sight.planting, inks)
        if self.hasFocus():
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(frame.adjusted(1, 1, -1, -1))
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        axes, point = self.axes(), event.position() / magnified()
        if axes is None or event.button() != Qt.MouseButton.LeftButton:
            return
        block = None if self._is_on_line(point.y()) else axes.block_at(point)
        if block is not None:
            laid = self._bed()
            self._sight.select(laid.bed.id if laid else None, block.planting)
            return
        self._drags = True
        self._sight.show_day(axes.day_at(point.y()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        axes, y = self.axes(), event.position().y() / magnified()
        if axes is not None and self._drags:
            self._sight.show_day(axes.day_at(y))
        on_line = self._drags or self._is_on_line(y)
        self.setCursor(Qt.CursorShape.SizeVerCursor if on_line else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self._drags = False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, axes = Qt.Key(event.key()), self.axes()
        if axes is not None and key in _STEPS:
            span = axes.season.span
            day = (self._sight.day or span.first) + timedelta(days=_STEPS[key])
            self._sight.show_day(max(span.first, min(day, span.last)))
        elif axes is not None and key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self._choose(axes, 1 if key == Qt.Key.Key_Right else -1)
        else:
            super().keyPressEvent(event)

    def _choose(self, axes: Axes, way: int) -> None:
        """Select the planting that follows on the map, by its first day and its place."""
        laid = self._bed()
        blocks = sorted(axes.season.blocks, key=lambda one: (one.first or date.min, one.start))
        if laid is None or not blocks:
            return
        ids = [one.planting for one in blocks]
        at = ids.index(self._sight.planting) if self._sight.planting in ids else -1 if way > 0 else 0
        self._sight.select(laid.bed.id, ids[(at + way) % len(ids)])

    def _is_on_line(self, y: float) -> bool:
        axes, day = self.axes(), self._sight.day
        return axes is not None and day is not None and abs(axes.y(day, day) - y) <= _NEAR

    def event(self, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
        return super().event(event)
