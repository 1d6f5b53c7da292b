"""Crops carried over a drawing of beds from the shelf, and dropped on a bed."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QWidget

from gardenplot.gestures import drags, stage
from gardenplot.plan import Crop
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.mime import carried_crop

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Gesture, Pointer

Placing = Callable[[CanvasStage, Crop], "Gesture"]
"""The gesture that places a crop."""
Points = Callable[[QPointF, Qt.KeyboardModifier], "Pointer"]
"""A point of the drawing, with keys held down, as gestures see it: in the frame of the bed that it lies over."""


class Drops(QObject):
    """Watches the part of a drawing that crops are dropped on; a drop gives the drawing the keyboard.

    `below` says that the stage belongs to another drawing than the one watched, where nothing is then under the hand.
    """

    def __init__(
        self,
        area: QWidget,
        watched: QWidget,
        points: Points,
        stage: CanvasStage,
        placing: Placing | None = None,
        *,
        below: bool = False,
    ) -> None:
        super().__init__(area)
        self._area, self._points, self._stage = area, points, stage
        self._placing, self._below = placing, below
        watched.setAcceptDrops(True)
        watched.installEventFilter(self)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        match event.type():
            case QEvent.Type.DragEnter | QEvent.Type.DragMove if isinstance(event, QDragMoveEvent):
                return self._dragged(event)
            case QEvent.Type.DragLeave:
                self._stage.give_up()
                return True
            case QEvent.Type.Drop if isinstance(event, QDropEvent):
                return self._dropped(event)
        return False

    def _dragged(self, event: QDragMoveEvent) -> bool:
        """A crop from the shelf comes over the drawing, or moves on it."""
        crop = carried_crop(event.mimeData(), self._stage.plan)
        if crop is None:
            event.ignore()
            return True
        if isinstance(event, QDragEnterEvent) or not self._stage.is_busy:
            placing = self._placing or drags.place_crop
            self._stage.begin(placing(self._stage, crop))
        at = None if self._below else event.position()
        self._stage.send(self._points(event.position(), event.modifiers()), at)
        event.acceptProposedAction()
        return True

    def _dropped(self, event: QDropEvent) -> bool:
        if not self._stage.is_busy:
            event.ignore()
            return True
        event.acceptProposedAction()
        self._area.setFocus(Qt.FocusReason.MouseFocusReason)
        self._stage.send(stage.Released())
        return True
