"""The hand on the ground: beds moved and turned by the mouse, the view moved by empty ground or the middle button."""

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.ground_under import OnGround
from gardenplot.gestures.bed_moved import move_on_ground, turn_on_ground
from gardenplot.gestures.choosing import toggled
from gardenplot.gestures.stage import Pointer, Released
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.ground_eye import GroundEye
from gardenplot.window.sight import Sight

_CTRL = Qt.KeyboardModifier.ControlModifier
_DRAG_FROM = 4
"""Pixels that a press must move before it is a drag."""


class GroundHand(QObject):
    """Watches the view of the ground; Alt suspends snaps, Ctrl chooses a bed more or takes one away."""

    pointed = Signal(object)
    strip_wanted = Signal(str, object)

    def __init__(self, area: QWidget, eye: GroundEye, stage: CanvasStage, sight: Sight) -> None:
        super().__init__(area)
        self._area, self._eye, self._stage, self._sight = area, eye, stage, sight
        self._press: tuple[QPointF, OnGround] | None = None
        self._pan: QPointF | None = None
        self.turns = False
        area.installEventFilter(self)
        stage.ended.connect(self._forget)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        match event.type():
            case QEvent.Type.MouseButtonPress if isinstance(event, QMouseEvent):
                return self._pressed(event)
            case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                return self._moved(event)
            case QEvent.Type.MouseButtonRelease if isinstance(event, QMouseEvent):
                return self._released(event)
            case QEvent.Type.MouseButtonDblClick if isinstance(event, QMouseEvent):
                return self._clicked_twice(event)
            case QEvent.Type.Leave:
                self.pointed.emit(None)
        return False

    def _pressed(self, event: QMouseEvent) -> bool:
        self._area.setFocus(Qt.FocusReason.MouseFocusReason)
        found = self._eye.under(event.position())
        if event.button() == Qt.MouseButton.RightButton:
            if found is not None:
                self._lead(found.bed)
            return False
        if event.button() == Qt.MouseButton.MiddleButton or found is None:
            self._pan = event.position()
            if event.button() == Qt.MouseButton.LeftButton:
                self._sight.select(None)
            return True
        if event.button() == Qt.MouseButton.LeftButton:
            if event.modifiers() & _CTRL and not found.is_handle:
                self._sight.choose_beds(toggled(self._sight.beds, found.bed))
            else:
                self._lead(found.bed)
            self._press = (event.position(), found) if found.bed in self._sight.beds else None
        return True

    def _lead(self, bed: str) -> None:
        """Let a bed lead those that are chosen, or choose it alone if it is none of them."""
        others = tuple(one for one in self._sight.beds if one != bed)
        self._sight.select(bed, beside=others if bed in self._sight.beds else ())

    def _moved(self, event: QMouseEvent) -> bool:
        if self._pan is not None:
            step, self._pan = event.position() - self._pan, event.position()
            self._eye.pan(step)
            return True
        if self._press is not None and not self._stage.is_busy:
            self._begin(event)
        if self._stage.is_busy:
            self._stage.send(self._pointer(event), event.position())
            return True
        found = self._eye.under(event.position())
        self.pointed.emit(found)
        self._area.setCursor(_cursor(found))
        return True

    def _pointer(self, event: QMouseEvent) -> Pointer:
        free = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        return self._eye.pointer(event.position(), free=free)

    def _begin(self, event: QMouseEvent) -> None:
        """Start the drag that the press began, once it has gone far enough to be one."""
        if self._press is None or (event.position() - self._press[0]).manhattanLength() < _DRAG_FROM:
            return
        point, found = self._press
        press = self._eye.pointer(point)
        self.turns = found.is_handle
        begin = turn_on_ground if found.is_handle else move_on_ground
        self._stage.begin(begin(self._stage, found.bed, press, self._sight.beside))
        self._area.setCursor(Qt.CursorShape.ClosedHandCursor)

    def _released(self, event: QMouseEvent) -> bool:
        clicked, self._press, self._pan = self._press, None, None
        if self._stage.is_busy:
            self._stage.send(Released(), event.position())
        elif clicked is not None and not event.modifiers() & _CTRL:
            self._sight.select(clicked[1].bed)
        self._area.setCursor(_cursor(self._eye.under(event.position())))
        return True

    def _clicked_twice(self, event: QMouseEvent) -> bool:
        """Go to the strip of the bed, and to the block in it that was clicked."""
        found = self._eye.under(event.position())
        if event.button() == Qt.MouseButton.LeftButton and found is not None:
            self._press = None
            self.strip_wanted.emit(found.bed, found.planting)
        return True

    def _forget(self) -> None:
        """A gesture has ended: moving on with the button down begins no other."""
        self._press, self.turns = None, False


def _cursor(found: OnGround | None) -> Qt.CursorShape:
    if found is None:
        return Qt.CursorShape.ArrowCursor
    return Qt.CursorShape.PointingHandCursor if found.is_handle else Qt.CursorShape.OpenHandCursor
