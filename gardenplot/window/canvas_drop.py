"""Crops carried over the canvas from the shelf, and dropped on it."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.gestures.drags import place_crop
from gardenplot.gestures.stage import Released
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.mime import carried_crop


class Drops(QObject):
    """Watches the canvas's viewport."""

    def __init__(self, area: QAbstractScrollArea, places: CanvasPlaces, stage: CanvasStage) -> None:
        super().__init__(area)
        self._area, self._places, self._stage = area, places, stage
        area.viewport().installEventFilter(self)

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
        """A crop from the shelf comes over the canvas, or moves on it."""
        crop = carried_crop(event.mimeData(), self._stage.plan)
        if crop is None:
            event.ignore()
            return True
        if isinstance(event, QDragEnterEvent) or not self._stage.is_busy:
            self._stage.begin(place_crop(self._stage, crop))
        self._stage.send(self._places.pointer(event.position(), event.modifiers()), event.position())
        event.acceptProposedAction()
        return True

    def _dropped(self, event: QDropEvent) -> bool:
        if not self._stage.is_busy:
            event.ignore()
            return True
        event.acceptProposedAction()
        self._area.setFocus(Qt.FocusReason.MouseFocusReason)
        self._stage.send(Released())
        return True
