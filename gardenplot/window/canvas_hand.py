"""The hand on the canvas: mouse presses, moves and drops turned into gestures."""

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent, QMouseEvent
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.drawing.handles import Grip
from gardenplot.drawing.strips import Part, Under
from gardenplot.gestures.drags import move_block, place_crop, resize_block
from gardenplot.gestures.obstacle_moved import move_obstacle
from gardenplot.gestures.outline_drawn import add_corner, move_corner
from gardenplot.gestures.stage import Gesture, Pointer, Released
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.mime import carried_crop
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

_DRAG_FROM = 4
"""Pixels that a press must move before it is a drag."""
_CURSORS = {
    Part.HEAD_END: Qt.CursorShape.SizeHorCursor,
    Part.FOOT_END: Qt.CursorShape.SizeHorCursor,
    Part.BLOCK: Qt.CursorShape.OpenHandCursor,
    Part.SOIL: Qt.CursorShape.ArrowCursor,
    Grip.CORNER: Qt.CursorShape.SizeAllCursor,
    Grip.SIDE: Qt.CursorShape.CrossCursor,
    Grip.OBSTACLE: Qt.CursorShape.OpenHandCursor,
}


class Hand(QObject):
    """Watches the canvas's viewport; Alt suspends snaps, the middle button pans."""

    pointed = Signal(object)

    def __init__(self, area: QAbstractScrollArea, places: CanvasPlaces, stage: CanvasStage, sight: Sight) -> None:
        super().__init__(area)
        self._area, self._places, self._stage, self._sight = area, places, stage, sight
        self._press: tuple[QPointF, Under] | None = None
        self._pan: QPointF | None = None
        self._home: str | None = None
        area.viewport().installEventFilter(self)
        stage.ended.connect(self._forget)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        match event.type():
            case QEvent.Type.MouseButtonPress if isinstance(event, QMouseEvent):
                return self._pressed(event)
            case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                return self._moved(event)
            case QEvent.Type.MouseButtonRelease if isinstance(event, QMouseEvent):
                return self._released(event)
            case QEvent.Type.DragEnter | QEvent.Type.DragMove if isinstance(event, QDragMoveEvent):
                return self._dragged(event)
            case QEvent.Type.DragLeave:
                self._stage.give_up()
                return True
            case QEvent.Type.Drop if isinstance(event, QDropEvent):
                return self._dropped(event)
            case QEvent.Type.Leave:
                self.pointed.emit(None)
        return False

    def _pressed(self, event: QMouseEvent) -> bool:
        self._area.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan = event.position()
            return True
        if self._places.has_ground:
            return True
        found = self._places.under(event.position())
        if event.button() == Qt.MouseButton.RightButton:
            if found is not None:
                self._choose(found)
            return False
        if event.button() != Qt.MouseButton.LeftButton:
            return False
        self._press = (event.position(), found) if found and (found.planting or found.handle) else None
        self._choose(found)
        return True

    def _choose(self, found: Under | None) -> None:
        """Select what lies under the hand; a side is no more than its bed until it is drawn out."""
        if found is None:
            self._sight.select(None)
            return
        is_side = found.handle is not None and found.handle.grip is Grip.SIDE
        self._sight.select(found.bed, found.planting, None if is_side else found.handle)

    def _moved(self, event: QMouseEvent) -> bool:
        if self._pan is not None:
            self._panned(event.position())
            return True
        if self._press is not None and not self._stage.is_busy:
            self._begin(event)
        if self._stage.is_busy:
            self._stage.send(self._pointer(event), event.position())
        found = None if self._places.has_ground else self._places.under(event.position())
        self.pointed.emit(found)
        if not self._stage.is_busy:
            shape = (found.handle.grip if found.handle else found.part) if found else Part.SOIL
            self._area.viewport().setCursor(_CURSORS[shape])
        elif self._places.has_ground:
            self._area.viewport().setCursor(Qt.CursorShape.CrossCursor)
        return True

    def _pointer(self, event: QMouseEvent) -> Pointer:
        return self._places.pointer(event.position(), event.modifiers(), self._home)

    def _begin(self, event: QMouseEvent) -> None:
        """Start the drag that the press began, once it has gone far enough to be one."""
        if self._press is None or (event.position() - self._press[0]).manhattanLength() < _DRAG_FROM:
            return
        point, found = self._press
        home = found.bed if found.handle else None
        press = self._places.pointer(point, Qt.KeyboardModifier.NoModifier, home)
        self._stage.begin(_drag_of(self._stage, found, press))
        self._home = home
        if found.part is Part.BLOCK or (found.handle and found.handle.grip is Grip.OBSTACLE):
            self._area.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def _released(self, event: QMouseEvent) -> bool:
        self._press, self._pan = None, None
        self._area.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        if self._places.has_ground:
            if event.button() != Qt.MouseButton.LeftButton or not self._places.is_on_ground(event.position()):
                return True
            self._stage.send(self._pointer(event), event.position())
        if self._stage.is_busy:
            self._stage.send(Released(), event.position())
        return True

    def _forget(self) -> None:
        """A gesture has ended: moving on with the button down begins no other."""
        self._press, self._home = None, None

    def _panned(self, to: QPointF) -> None:
        if self._pan is None:
            return
        step = to - self._pan
        self._pan = to
        for bar, by in ((self._area.horizontalScrollBar(), step.x()), (self._area.verticalScrollBar(), step.y())):
            bar.setValue(bar.value() - round(by / magnified()))

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


def _drag_of(stage: CanvasStage, found: Under, press: Pointer) -> Gesture:
    """The drag that begins at a press on a handle, on an end of a block, or on a block."""
    planting, number = found.planting or "", found.handle.number if found.handle else 0
    match found.handle.grip if found.handle else found.part:
        case Grip.CORNER:
            return move_corner(stage, found.bed, number, press)
        case Grip.SIDE:
            return add_corner(stage, found.bed, number)
        case Grip.OBSTACLE:
            return move_obstacle(stage, found.bed, number, press)
        case Part.HEAD_END | Part.FOOT_END:
            return resize_block(stage, planting, foot=found.part is Part.FOOT_END)
        case _:
            return move_block(stage, planting, press)
