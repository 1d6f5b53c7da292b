"""The view of the ground: beds where they lie, moved and turned by hand and by keyboard."""

from functools import partial

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.ground import draw_ground
from gardenplot.drawing.ground_words import beds_line, first_trouble
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.style import Ink
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan
from gardenplot.window.canvas_drop import Drops
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.ground_eye import GroundEye, bed_pointer
from gardenplot.window.ground_hand import GroundHand
from gardenplot.window.ground_keys import press_ground_key
from gardenplot.window.ground_paint import GroundScene, paint_empty, paint_ground
from gardenplot.window.ground_still import GroundStill
from gardenplot.window.hand_box import Lines, box_of, paint_lines
from gardenplot.window.hand_lines import hand_lines
from gardenplot.window.layers import Layers
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_PULLS = {
    Pull.ALIGNED: _("in line with a neighbour"),
    Pull.PATH: _("a path from its neighbour"),
    Pull.TUNNEL: _("on a line of the tunnel"),
    Pull.SQUARE: _("a round direction"),
    Pull.PARALLEL: _("in a neighbour's direction"),
    Pull.KEPT: _("where it was"),
}
_NOTCH = 48.0
"""Pixels that a notch of the wheel moves the ground."""


class GroundView(QWidget):
    """Shows the ground as it is on the day in sight, and the trial of a gesture under way."""

    menu_wanted = Signal(QPoint)
    strip_wanted = Signal(str, object)

    def __init__(self, document: Document, sight: Sight, layers: Layers, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight, self._layers = document, sight, layers
        self._still = GroundStill(self)
        self.eye = GroundEye(self, document, sight)
        self.stage = CanvasStage(document, sight, self)
        self.hand = GroundHand(self, self.eye, self.stage, sight)
        self.drops = Drops(self, self, partial(bed_pointer, self.eye), self.stage)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(200, 120)
        self.setAccessibleName(_("Drawing of the ground"))
        self.hand.strip_wanted.connect(self.strip_wanted)
        document.changed.connect(self._follow)
        document.opened.connect(self.eye.fit)
        sight.selected.connect(self._select)
        sight.day_changed.connect(self.update)
        self.stage.shown.connect(self.update)
        layers.changed.connect(self.update)
        self.eye.changed.connect(self._look_anew)
        self._follow()

    def _look_anew(self) -> None:
        self._still.forget()
        self.update()

    def _follow(self) -> None:
        self.setAccessibleDescription(self._described())
        self.update()

    def _select(self) -> None:
        if self._sight.bed is not None and self.isVisible():
            self.eye.reveal(self._sight.bed)
        self._follow()

    def _described(self) -> str:
        """The chosen bed and where it lies, for a screen reader."""
        if self._sight.bed is None:
            return ""
        plan = self._document.plan
        parts = [beds_line(plan, self._sight.beds), first_trouble(plan, self._sight.beds)]
        if self._sight.planting is not None:
            parts.insert(0, titled(plan, self._sight.planting, looks(plan)))
        return "; ".join(part for part in parts if part)

    def paintEvent(self, _event: QPaintEvent) -> None:
        trial, frame = self.stage.trial, QRectF(0, 0, *self.eye.size)
        scene = self._scene(trial.plan if trial else self._document.plan, trial)
        painter = QPainter(self)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(magnified(), magnified())
        if not scene.plan.beds and not scene.plan.tunnels:
            paint_empty(painter, frame)
        elif trial is None:
            self._still.forget()
            paint_ground(painter, frame, scene, self._still.picture(frame, scene))
        else:
            still = self._still.picture_in_hand(frame, self._scene(self._document.plan), trial.beds)
            paint_ground(painter, frame, scene, still, only=scene.beds)
            at, lines = self.stage.at, _lines(self._document.plan, scene, trial)
            if at is not None and lines:
                whole = frame.toAlignedRect()
                paint_lines(painter, whole, box_of(whole, at / magnified(), lines), lines, palette())
        if self.hasFocus():
            painter.fillRect(QRectF(0, 0, frame.width(), 2), colour(palette(), Ink.ACCENT))
        painter.end()

    def _scene(self, plan: Plan, trial: Trial | None = None) -> GroundScene:
        """What is to be seen of a plan now, or of the beds alone that the hand holds or tries a crop in."""
        sight, held = self._sight, trial.beds if trial else ()
        day = sight.day_for(plan, trial.planting) if trial else sight.day
        return GroundScene(
            plan=plan,
            figure=draw_ground(plan, day, held),
            eye=self.eye.eye,
            day=day,
            beds=held or sight.beds,
            planting=(trial.planting if trial else None) or sight.planting,
            focused=self.hasFocus() and trial is None,
            turning=trial is not None and self.hand.turns,
            layers=self._layers.shown,
        )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._sight.bed is not None:
            self.strip_wanted.emit(self._sight.bed, self._sight.planting)
            return
        if not press_ground_key(event, self._document.plan, self._sight, self.stage):
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.eye.changed.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel goes up and down, with Shift to the sides, with Ctrl it zooms at the pointer."""
        turn = event.angleDelta() / 120
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.eye.zoom(1.2 ** turn.y(), event.position())
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self.eye.pan(QPointF((turn.y() or turn.x()) * _NOTCH, 0))
        else:
            self.eye.pan(QPointF(turn.x() * _NOTCH, turn.y() * _NOTCH))
        event.accept()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        if not self.stage.is_busy:
            self.menu_wanted.emit(event.globalPos())


def _lines(before: Plan, scene: GroundScene, trial: Trial) -> Lines:
    """Where the bed would lie and what stands against that or draws it there, or what a crop would do in it."""
    plan = scene.plan
    if trial.bed is None:
        return ()
    if trial.planting is not None:
        return hand_lines(before, trial, scene.day)
    where = beds_line(plan, trial.beds)
    against = trial.refusal or first_trouble(plan, trial.beds)
    if against:
        return (where, Ink.INK), (against, Ink.ACCENT)
    pulls = dict.fromkeys(one.pull for one in (trial.snap, trial.across) if one is not None and one.pull in _PULLS)
    drawn = " · ".join(_PULLS[pull] for pull in pulls)
    return ((where, Ink.INK), (drawn, Ink.SECOND)) if drawn else ((where, Ink.INK),)
