"""The canvas: the tape along the top and the beds as strips under it, worked by mouse and keyboard."""

from collections.abc import Iterable
from math import ceil
from typing import cast

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QWidget

from gardenplot.window import canvas_keys
from gardenplot.window.canvas_band import Band
from gardenplot.window.canvas_described import described
from gardenplot.window.canvas_drop import Drops
from gardenplot.window.canvas_hand import Hand
from gardenplot.window.canvas_paint import Scene, paint_scene
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_repaint import Repaint
from gardenplot.window.canvas_spoken import CanvasSpoken
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.canvas_tips import CanvasTips
from gardenplot.window.canvas_view import CanvasView
from gardenplot.window.document import Document
from gardenplot.window.focus_painted import FocusPainted
from gardenplot.window.layers import Layers
from gardenplot.window.magnifier import Magnifier
from gardenplot.window.sight import Sight
from gardenplot.window.strip_pictures import StripPictures
from gardenplot.window.theme import magnified
from gardenplot.words import _


class Canvas(QAbstractScrollArea):
    """Shows the plan as it stands on the day in sight, and the trial of a gesture under way."""

    menu_wanted = Signal(QPoint)
    menu_at: QPointF | None = None
    """Where the menu that is open was asked for by mouse; by then the pointer has left the drawing for it."""

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.view = CanvasView(self, document)
        self.places = CanvasPlaces(self.view, sight)
        self.stage = CanvasStage(document, sight, self)
        self.layers = Layers(self)
        self._pictures = StripPictures()
        self._repaint = Repaint(self.viewport(), self._scene, self._frame, self._pictures)
        self.band = Band(self.view, sight, self)
        self.hand = Hand(self, self.places, self.stage, sight, self.band)
        self.drops = Drops(self, self.viewport(), self.places.pointer, self.stage)
        self.magnifier = Magnifier(self.viewport(), self._scene, self.places.under)
        self.setFrameShape(QAbstractScrollArea.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAcceptDrops(True)
        self.viewport().setMouseTracking(True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        # The head is at the left and readings are read from left to right, in whichever way words run elsewhere.
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self.tips = CanvasTips(self, self.view)
        FocusPainted(self)
        self.setAccessibleName(_("Drawing of the beds"))
        self.spoken = CanvasSpoken(self, self.places, document, sight)
        self.stage.refused.connect(self.spoken.refuse)
        document.changed.connect(self._show_edit)
        document.changed.connect(self._describe)
        document.opened.connect(self.view.fit)
        sight.selected.connect(self._select)
        sight.day_changed.connect(self.viewport().update)
        sight.spot_changed.connect(self.viewport().update)
        self.layers.changed.connect(self.viewport().update)
        self.stage.shown.connect(self._show_trial)
        self.band.drawn.connect(self.viewport().update)
        self.stage.ended.connect(self._describe)
        self.stage.ground_wanted.connect(self.view.show_ground)
        self.view.changed.connect(self.viewport().update)
        for signal in (document.changed, self.view.changed, sight.day_changed, self.layers.changed, self.stage.shown):
            signal.connect(self.magnifier.look_again)

    def _select(self) -> None:
        if self._sight.bed is not None:
            self.view.reveal(self._sight.bed)
        self._describe()
        self.viewport().update()

    def _describe(self) -> None:
        self.setAccessibleDescription(described(self._document.plan, self._sight, self.stage.trial))

    def paintEvent(self, event: QPaintEvent) -> None:
        scene = self._scene()
        painter = QPainter(self.viewport())
        painter.setLayoutDirection(self.layoutDirection())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(magnified(), magnified())
        back = painter.worldTransform().inverted()[0]
        exposed = tuple(back.mapRect(QRectF(rect)) for rect in cast(Iterable[QRect], event.region()))
        paint_scene(painter, self._frame(), scene, self._pictures, exposed)
        painter.end()
        self._repaint.painted(scene, event.region())

    def _show_trial(self) -> None:
        """Paint anew what the hand has changed, and say what it measures."""
        trial = self.stage.trial
        if trial is not None and (trial.measured is not None or trial.gap is not None):
            self._describe()
        self._repaint.follow_trial(trial.plan if trial else self._document.plan, in_bits=self.stage.in_bits)

    def _show_edit(self) -> None:
        """Paint anew what an edit has changed."""
        self.view.settle()
        self._repaint.follow_edit()

    def _frame(self) -> QRect:
        width, height = self.view.size
        return QRect(0, 0, ceil(width), ceil(height))

    def _scene(self) -> Scene:
        """What is to be seen now."""
        trial = self.stage.trial
        plan = trial.plan if trial else self._document.plan
        left, top = self.view.origin
        return Scene(
            plan=plan,
            before=self._document.plan,
            strips=self.view.strips(plan),
            day=self._sight.day_for(plan, trial.planting) if trial else self._sight.day,
            planting=self._sight.planting,
            others=self._sight.others,
            band=self.band,
            bed=self._sight.bed,
            handle=trial.handle if trial else self._sight.handle,
            left=left,
            top=top,
            trial=trial,
            spot=(trial.bed, *trial.gap) if trial and trial.gap and trial.bed else self._sight.spot,
            hand=self.stage.at / magnified() if self.stage.at else None,
            focused=self.hasFocus(),
            layers=self.layers.shown,
        )

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.view.settle()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not canvas_keys.press_key(event, self._document, self._sight, self.stage):
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel goes up and down, with Shift along the beds, with Ctrl it zooms at the pointer."""
        steps = event.angleDelta().y() / 120
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.view.zoom(1.2**steps, event.position() / magnified())
            event.accept()
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            bar = self.horizontalScrollBar()
            bar.setValue(round(bar.value() - 120 * (steps or event.angleDelta().x() / 120)))
            event.accept()
        else:
            super().wheelEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        if not self.stage.is_busy:
            self.menu_at = QPointF(event.pos()) if event.reason() is QContextMenuEvent.Reason.Mouse else None
            self.menu_wanted.emit(event.globalPos())
            self.menu_at = None
