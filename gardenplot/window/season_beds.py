"""The season maps of all beds in small, one under another on the same tape; a click chooses a bed."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.letters import looks
from gardenplot.drawing.season_map import draw_season
from gardenplot.drawing.strips import GUTTER
from gardenplot.drawing.style import Ink
from gardenplot.layout import lay_out_plan
from gardenplot.season import planning_days
from gardenplot.window.document import Document
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_paint import paint_season
from gardenplot.window.season_panel import CLEAR, SeasonPanel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_NAME, _DAYS, _CLEAR = 24.0, 66.0, 6.0
"""Pixels of a bed's name, of its days, and below them."""
_EACH = _NAME + _DAYS + _CLEAR
_WAYS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class SeasonBeds(QWidget):
    """As high as all its beds need; up and down choose a bed, Return opens its own map."""

    opened = Signal()

    def __init__(self, document: Document, sight: Sight, panel: SeasonPanel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight, self._panel = document, sight, panel
        self.room = 0.0
        self.setAccessibleName(_("Season maps of all beds"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        for signal in (document.changed, document.opened):
            signal.connect(self._grow)
        for signal in (sight.selected, sight.day_changed, panel.view.changed):
            signal.connect(self.update)

    def sizeHint(self) -> QSize:
        return QSize(0, round(len(self._document.plan.beds) * _EACH * magnified()))

    def all_axes(self) -> tuple[Axes, ...]:
        """Where tape and dates lie in the map of each bed, in the plan's order."""
        plan, times = self._document.plan, magnified()
        span = self._panel.view.span(planning_days(plan, self._document.today()))
        (zero, along), beside, look = self._panel.tape, self._panel.beside(self), looks(plan)
        return tuple(
            Axes(
                draw_season(laid, look, span, plan.place, plan.covers),
                beside + zero,
                along,
                self.width() / times,
                (number + 1) * _EACH,
                beside + GUTTER - CLEAR,
                number * _EACH + _NAME,
                _CLEAR,
            )
            for number, laid in enumerate(lay_out_plan(plan))
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        inks, beds = palette(), self._document.plan.beds
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.fillRect(event.rect(), colour(inks, Ink.PAPER))
        painter.scale(magnified(), magnified())
        seen = QRectF(event.rect())
        for number, (bed, axes) in enumerate(zip(beds, self.all_axes(), strict=True)):
            frame = QRectF(0, number * _EACH, axes.width, _EACH)
            if not QRectF(frame.topLeft() * magnified(), frame.size() * magnified()).intersects(seen):
                continue
            room = self.room if number == 0 else 0.0
            paint_season(painter, axes, bed.name, self._sight.day, self._sight.planting, inks, room)
            if bed.id == self._sight.bed:
                painter.fillRect(QRectF(2, frame.top() + 2, 4, frame.height() - 4), colour(inks, Ink.ACCENT))
                if self.hasFocus():
                    painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
                    painter.setBrush(Qt.BrushStyle.NoBrush)
                    painter.drawRect(frame.adjusted(1, 1, -1, -1))
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        at = event.position() / magnified()
        axes = self._axes_at(at)
        if axes is not None and event.button() == Qt.MouseButton.LeftButton:
            block = axes.block_at(at)
            self._sight.select(axes.season.bed, block.planting if block is not None else None)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)
        self.opened.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, ids = Qt.Key(event.key()), [bed.id for bed in self._document.plan.beds]
        if key in _WAYS and ids:
            at = ids.index(self._sight.bed) if self._sight.bed in ids else -1
            self._sight.select(ids[max(0, min(at + _WAYS[key], len(ids) - 1))])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
        else:
            super().keyPressEvent(event)

    def place_of(self, bed: str | None) -> tuple[int, int] | None:
        """Where the map of a bed begins and ends in the widget, in its pixels."""
        ids = [one.id for one in self._document.plan.beds]
        if bed not in ids:
            return None
        at = ids.index(bed)
        return round(at * _EACH * magnified()), round((at + 1) * _EACH * magnified())

    def _axes_at(self, at: QPointF) -> Axes | None:
        number, axes = int(at.y() // _EACH), self.all_axes()
        return axes[number] if 0 <= number < len(axes) else None

    def _grow(self) -> None:
        """Take the height that the beds need now."""
        self.setMinimumHeight(self.sizeHint().height())
        self.update()
