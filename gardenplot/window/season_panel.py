"""The season map below the drawing: the bed in sight over the dates, to plan in, and a line for the day shown."""

from PySide6.QtCore import QEvent, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QWheelEvent
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.season_map import draw_season
from gardenplot.drawing.strips import GUTTER
from gardenplot.drawing.style import Ink
from gardenplot.gestures.season_drawn import place_in_season
from gardenplot.layout import LaidOut, lay_out_bed
from gardenplot.plan import Plan, bed_of
from gardenplot.season import Span, planning_days
from gardenplot.window.canvas import Canvas
from gardenplot.window.canvas_drop import Drops
from gardenplot.window.document import Document
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_hand import SeasonHand
from gardenplot.window.season_keys import press_season_key
from gardenplot.window.season_paint import paint_nothing, paint_season
from gardenplot.window.season_trial import Tried, paint_trial
from gardenplot.window.season_view import SeasonView
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_CLOSER, _ROLLED = 1.25, 0.1
"""How many times fewer days a notch of the wheel shows, and what part of them it goes on."""
CLEAR = 10
"""Pixels left of the tape's zero at which the names of the months end and the map begins."""
_ZOOMS: dict[int, float] = {Qt.Key.Key_Plus: _CLOSER, Qt.Key.Key_Equal: _CLOSER, Qt.Key.Key_Minus: 1 / _CLOSER}


class SeasonPanel(QWidget):
    """Shows the selected bed, else the first; plantings are moved and drawn out in it, crops from the shelf dropped.

    A press beside the plantings moves the day shown. The wheel scrolls the days, with Ctrl it zooms at the pointer.
    """

    menu_wanted = Signal(QPoint)

    def __init__(self, document: Document, sight: Sight, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight, self._canvas = document, sight, canvas
        self.view = SeasonView(self)
        self.room = 0.0
        self.hand = SeasonHand(self, lambda _at: self.axes(), canvas.stage, sight)
        self.drops = Drops(self, self, self.hand.pointer, canvas.stage, place_in_season, below=True)
        self.setAccessibleName(_("Season map"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        for signal in (document.changed, sight.selected, sight.day_changed, canvas.view.changed):
            signal.connect(self.update)
        for other in (canvas.horizontalScrollBar().valueChanged, canvas.stage.shown, self.view.changed):
            other.connect(self.update)
        document.opened.connect(self.view.show_all)

    def axes(self) -> Axes | None:
        """Where tape and dates lie now, with what the hand tries on them; None without a bed."""
        trial = self._canvas.stage.trial
        return self._axes_of(trial.plan if trial is not None else self._document.plan)

    def _axes_of(self, plan: Plan) -> Axes | None:
        laid = self.laid(plan)
        if laid is None:
            return None
        times, span = magnified(), self.view.span(self.days())
        season = draw_season(laid, looks_in_hand(self._document.plan, plan), span, plan.place, plan.covers)
        (zero, along), beside = self.tape, self.beside(self)
        width, height = self.width() / times, self.height() / times
        return Axes(season, beside + zero, along, width, height, beside + GUTTER - CLEAR)

    def days(self) -> Span:
        """The days that the plan is made for, which do not change while the hand tries something."""
        return planning_days(self._document.plan, self._document.today())

    @property
    def tape(self) -> tuple[float, float]:
        """Where the tape's zero lies in the drawing, in pixels, and how many of them it has per mm."""
        return self._canvas.view.origin[0], self._canvas.view.along

    def beside(self, widget: QWidget) -> float:
        """How far right of a widget's left side the drawing above it begins, in pixels."""
        return (self._canvas.viewport().mapToGlobal(QPoint()).x() - widget.mapToGlobal(QPoint()).x()) / magnified()

    def laid(self, plan: Plan) -> LaidOut | None:
        """The bed that is shown, as it is in a plan."""
        beds = {bed.id for bed in plan.beds}
        if not beds:
            return None
        return lay_out_bed(plan, bed_of(plan, self._sight.bed) if self._sight.bed in beds else plan.beds[0])

    def paintEvent(self, _event: QPaintEvent) -> None:
        inks, axes = palette(), self.axes()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.fillRect(self.rect(), colour(inks, Ink.PAPER))
        painter.scale(magnified(), magnified())
        frame = QRectF(0, 0, self.width() / magnified(), self.height() / magnified())
        if axes is None:
            paint_nothing(painter, frame, inks)
        else:
            laid = self.laid(self._document.plan)
            name = laid.bed.name if laid is not None else ""
            trial, plan = self._canvas.stage.trial, self._document.plan
            chosen = trial.chosen if trial is not None else self._sight.chosen
            paint_season(painter, axes, name, self._sight.day, chosen, inks, self.room)
            before = self._axes_of(plan)
            if trial is not None and self.hand.at is not None and before is not None:
                paint_trial(painter, frame, Tried(plan, trial, self.hand.at, (axes,), (before,)), inks)
        if self.hasFocus():
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(frame.adjusted(1, 1, -1, -1))
        painter.end()

    def wheelEvent(self, event: QWheelEvent) -> None:
        axes, steps = self.axes(), event.angleDelta().y() / 120
        if axes is None or not steps:
            super().wheelEvent(event)
            return
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.view.zoom(self.days(), _CLOSER**steps, axes.day_at(event.position().y() / magnified()))
        else:
            by = max(1, round(axes.season.span.days * _ROLLED))
            self.view.scroll(self.days(), round(-steps * by))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        axes, key, day = self.axes(), event.key(), self._sight.day
        if axes is None:
            super().keyPressEvent(event)
        elif key in _ZOOMS:
            self.view.zoom(self.days(), _ZOOMS[key], axes.day_near(day))
        elif key == Qt.Key.Key_0:
            self.view.show_all()
        elif not press_season_key(event, axes.season, self.days(), self._document, self._sight, self._canvas.stage):
            super().keyPressEvent(event)
        elif self._sight.day is not None and self._sight.day != day:
            self.view.reveal(self.days(), self._sight.day)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        if not self._canvas.stage.is_busy:
            self.menu_wanted.emit(event.globalPos())

    def event(self, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self.update()
        return super().event(event)
