"""The season maps of all beds in small, one under another on the same tape: plantings are moved from bed to bed."""

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.season_map import draw_season
from gardenplot.drawing.strips import GUTTER
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.season_drawn import place_in_season
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.window.canvas_drop import Drops
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_hand import SeasonHand
from gardenplot.window.season_keys import press_season_key
from gardenplot.window.season_paint import paint_season
from gardenplot.window.season_panel import CLEAR, SeasonPanel
from gardenplot.window.season_trial import Tried, paint_trial
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_NAME, _CLEAR = 24.0, 6.0
"""Pixels of a bed's name and below its days."""
_LEAST, _A_DAY, _MOST = 66.0, 0.27, 160.0
"""Pixels of the days of a bed at least and at most, and of each: in seven weeks a letter has room."""
_REACH_DAYS = 3.0
"""Pixels over which a snap pulls down, where one of them is several days."""
_WAYS: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class SeasonBeds(QWidget):
    """As high as all its beds need; up and down choose a bed, Return opens its own map."""

    opened = Signal()
    menu_wanted = Signal(QPoint)

    def __init__(
        self,
        document: Document,
        sight: Sight,
        panel: SeasonPanel,
        stage: CanvasStage,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._document, self._sight, self._panel, self._stage = document, sight, panel, stage
        self.room = 0.0
        # So small, the sides of plantings lie too near to one another to be taken hold of.
        self.hand = SeasonHand(self, self._axes_at, stage, sight, reach_days=_REACH_DAYS, sides=False)
        self.drops = Drops(self, self, self.hand.pointer, stage, place_in_season, below=True)
        self.setMouseTracking(True)
        self.setAccessibleName(_("Season maps of all beds"))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        document.changed.connect(self._grow)
        panel.view.changed.connect(self._grow)
        for other in (sight.selected, sight.day_changed, stage.shown):
            other.connect(self.update)
        self._grow()

    def sizeHint(self) -> QSize:
        return QSize(0, round(len(self._document.plan.beds) * _each(self._panel) * magnified()))

    def all_axes(self) -> tuple[Axes, ...]:
        """Where tape and dates lie in the map of each bed, in the plan's order, with what the hand tries on them."""
        trial = self._stage.trial
        return self._axes_of(trial.plan if trial is not None else self._document.plan)

    def _axes_of(self, plan: Plan) -> tuple[Axes, ...]:
        times, span = magnified(), self._panel.view.span(self._panel.days())
        (zero, along), beside = self._panel.tape, self._panel.beside(self)
        look, each = looks_in_hand(self._document.plan, plan), _each(self._panel)
        return tuple(
            Axes(
                draw_season(laid, look, span, plan.place, plan.covers),
                beside + zero,
                along,
                self.width() / times,
                (number + 1) * each,
                beside + GUTTER - CLEAR,
                number * each + _NAME,
                _CLEAR,
            )
            for number, laid in enumerate(lay_out_plan(plan))
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        inks, trial, plan = palette(), self._stage.trial, self._document.plan
        chosen = trial.chosen if trial is not None else self._sight.chosen
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.fillRect(event.rect(), colour(inks, Ink.PAPER))
        painter.scale(magnified(), magnified())
        seen, each = QRectF(event.rect()), _each(self._panel)
        for number, (bed, axes) in enumerate(zip(plan.beds, self.all_axes(), strict=True)):
            frame = QRectF(0, number * each, axes.width, each)
            if not QRectF(frame.topLeft() * magnified(), frame.size() * magnified()).intersects(seen):
                continue
            room = self.room if number == 0 else 0.0
            paint_season(painter, axes, bed.name, self._sight.day, chosen, inks, room)
            if bed.id == (trial.bed if trial is not None else self._sight.bed):
                _mark(painter, frame, inks, focused=self.hasFocus())
        if trial is not None and self.hand.at is not None:
            sight = self.visibleRegion().boundingRect()
            within = QRectF(QPointF(sight.topLeft()) / magnified(), QSizeF(sight.size()) / magnified())
            tried = Tried(plan, trial, self.hand.at, self.all_axes(), self._axes_of(plan))
            paint_trial(painter, within, tried, inks)
        painter.end()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A press on a planting is the hand's; beside them it chooses a bed."""
        at = event.position() / magnified()
        axes = self._axes_at(at)
        if axes is not None and event.button() == Qt.MouseButton.LeftButton and axes.block_at(at) is None:
            self._sight.select(axes.season.bed)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)
        self.opened.emit()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        if not self._stage.is_busy:
            self.menu_wanted.emit(event.globalPos())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, ids = event.key(), [bed.id for bed in self._document.plan.beds]
        at = ids.index(self._sight.bed) if self._sight.bed in ids else -1
        if key in _WAYS and ids and not event.modifiers():
            self._sight.select(ids[max(0, min(at + _WAYS[key], len(ids) - 1))])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit()
        elif not ids or not press_season_key(
            event, self.all_axes()[max(0, at)].season, self._panel.days(), self._document, self._sight, self._stage
        ):
            super().keyPressEvent(event)

    def place_of(self, bed: str | None) -> tuple[int, int] | None:
        """Where the map of a bed begins and ends in the widget, in its pixels."""
        ids = [one.id for one in self._document.plan.beds]
        if bed not in ids:
            return None
        at, each = ids.index(bed), _each(self._panel) * magnified()
        return round(at * each), round((at + 1) * each)

    def _axes_at(self, at: QPointF) -> Axes | None:
        number, axes = int(at.y() // _each(self._panel)), self.all_axes()
        return axes[number] if 0 <= number < len(axes) else None

    def _grow(self) -> None:
        """Take the height that the beds need now."""
        self.setMinimumHeight(self.sizeHint().height())
        self.update()


def _each(panel: SeasonPanel) -> float:
    """Pixels of a bed, down, over the days that the map shows."""
    return _NAME + max(_LEAST, min(panel.view.span(panel.days()).days * _A_DAY, _MOST)) + _CLEAR


def _mark(painter: QPainter, frame: QRectF, inks: Palette, *, focused: bool) -> None:
    """Mark the bed that is chosen, with a frame round it while the keyboard is here."""
    painter.fillRect(QRectF(2, frame.top() + 2, 4, frame.height() - 4), colour(inks, Ink.ACCENT))
    if focused:
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(frame.adjusted(1, 1, -1, -1))
