"""The hand on the canvas: mouse presses and moves turned into gestures, and what they choose."""

from typing import TYPE_CHECKING

from attrs import evolve
from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.drawing.handles import Grip
from gardenplot.drawing.strips import Part, Under
from gardenplot.drawing.tape_words import turn_words
from gardenplot.gestures import choosing, drags, obstacle_moved, outline_drawn, stage
from gardenplot.window import gap_keys, measure_keys, tracing_keys
from gardenplot.window.canvas_band import Band
from gardenplot.window.canvas_places import CanvasPlaces
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

if TYPE_CHECKING:
    from gardenplot.gestures.stage import Gesture, Pointer

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
_LEFT, _CTRL = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.ControlModifier
_LOST = (QEvent.Type.WindowDeactivate, QEvent.Type.Hide)
"""The window is no longer at hand, or its screen is gone: nobody can say where the button is let go."""
_ARROWS = (Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Down)
_HELD_KEYS = (Qt.Key.Key_Control, Qt.Key.Key_Shift, Qt.Key.Key_Alt)


class Hand(QObject):
    """Watches the canvas and its viewport; the middle button pans.

    Alt suspends snaps, Shift pushes neighbours along, Ctrl leaves a copy; pressed or let go on the way they count
    from then on.
    """

    pointed = Signal(object)
    told = Signal(str)
    """Which of several blocks that lie on one another was clicked."""

    def __init__(
        self, area: QAbstractScrollArea, places: CanvasPlaces, stage: CanvasStage, sight: Sight, band: Band
    ) -> None:
        super().__init__(area)
        self._area, self._places, self._stage, self._sight, self.band = area, places, stage, sight, band
        self._press: tuple[QPointF, Under] | None = None
        self._pan: QPointF | None = None
        self._click: tuple[QPointF, str] | None = None
        self._home: str | None = None
        self.at: QPointF | None = None
        area.viewport().installEventFilter(self)
        area.installEventFilter(self)
        stage.ended.connect(self._forget)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self._area:
            if event.type() in _LOST and (self._press is not None or self.band.is_begun):
                self._let_go()
            if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.ShortcutOverride:
                return _claims(self._stage, event)
            return isinstance(event, QKeyEvent) and self._keyed(event)
        match event.type():
            case QEvent.Type.MouseButtonPress | QEvent.Type.MouseButtonDblClick if isinstance(event, QMouseEvent):
                return self._pressed(event)
            case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                return self._moved(event)
            case QEvent.Type.MouseButtonRelease if isinstance(event, QMouseEvent):
                return self._released(event)
            case QEvent.Type.Leave:
                self.at = None
                self.pointed.emit(None)
        return False

    def _keyed(self, event: QKeyEvent) -> bool:
        """A key that is held while dragging is pressed or let go, or a key of the tool in hand is pressed."""
        key, pressed = event.key(), event.type() is QEvent.Type.KeyPress
        if key in _HELD_KEYS and self._stage.is_busy and self._stage.at is not None and not event.isAutoRepeat():
            pointer = self._places.pointer(self._stage.at, event.modifiers(), self._home)
            self._stage.send(pointer, self._stage.at)
        if pressed and key == Qt.Key.Key_Escape and self.band.is_begun:
            self.band.give_up()
            return True
        if pressed and self._stage.is_filling:
            return gap_keys.press_gap_key(event, self._stage, self._places)
        if pressed and self._stage.is_on_ground:
            return tracing_keys.press_tracing_key(event, self._stage, self._places, self._area)
        return pressed and self._stage.is_measuring and measure_keys.press_measuring_key(event, self._stage)

    def _pressed(self, event: QMouseEvent) -> bool:
        self._area.setFocus(Qt.FocusReason.MouseFocusReason)
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan = event.position()
            return True
        if _hovers(self._stage):
            if event.button() == _LEFT and not self._stage.is_on_ground:
                self._stage.send(self._pointer(event), event.position())
                self._stage.send(stage.Pressed(), event.position())
            return True
        found = self._places.under(event.position())
        is_chosen = found is not None and found.planting in self._sight.chosen
        if event.button() == Qt.MouseButton.RightButton:
            if found is not None and not is_chosen:
                self._choose(found)
            return False
        if event.button() != _LEFT:
            return False
        adds = bool(event.modifiers() & _CTRL)
        self._press = (event.position(), found) if found and (found.planting or found.handle) else None
        if self._press is None:
            self.band.begin(event.position(), self._sight.chosen if adds else ())
        if not adds and not (is_chosen and found is not None and found.part is Part.BLOCK):
            self._choose(found)
        return True

    def _choose(self, found: Under | None) -> None:
        """Select what lies under the hand; a side is no more than its bed until it is drawn out."""
        if found is None:
            self._sight.select(None)
            return
        is_side = found.handle is not None and found.handle.grip is Grip.SIDE
        others = self._sight.others if found.part is not Part.BLOCK and found.planting == self._sight.planting else ()
        self._sight.select(found.bed, found.planting, None if is_side else found.handle, others)

    def _moved(self, event: QMouseEvent) -> bool:
        if self._pan is not None:
            _scroll(self._area, event.position() - self._pan)
            self._pan = event.position()
            return True
        if not event.buttons() & _LEFT and (self._press is not None or self.band.is_begun):
            self._let_go()
        self.band.draw_to(event.position(), _DRAG_FROM)
        if self._press is not None and not self._stage.is_busy:
            self._begin(event)
        if self._stage.is_busy:
            self._stage.send(self._pointer(event), event.position())
        self.at = event.position()
        found = None if self._places.has_ground else self._places.under(self.at)
        self.pointed.emit(found)
        if _hovers(self._stage):
            self._area.viewport().setCursor(Qt.CursorShape.CrossCursor)
        elif not self._stage.is_busy:
            shape = (found.handle.grip if found.handle else found.part) if found else Part.SOIL
            self._area.viewport().setCursor(_CURSORS[shape])
        return True

    def _let_go(self) -> None:
        """The button was let go where the canvas did not see it: nothing comes of the drag."""
        if not _hovers(self._stage):
            self._stage.give_up()
        self.band.give_up()
        self._forget()

    def _pointer(self, event: QMouseEvent) -> "Pointer":
        return self._places.pointer(event.position(), event.modifiers(), self._home)

    def _begin(self, event: QMouseEvent) -> None:
        """Start the drag that the press began, once it has gone far enough to be one."""
        if self._press is None or (event.position() - self._press[0]).manhattanLength() < _DRAG_FROM:
            return
        point, found = self._press
        home = found.bed if found.handle else None
        press = self._places.pointer(point, Qt.KeyboardModifier.NoModifier, home)
        if found.planting not in self._sight.chosen:
            self._choose(found)
        others = tuple(one for one in self._sight.chosen if one != found.planting)
        self._stage.begin(_drag_of(self._stage, found, press, others))
        self._home = home
        if found.part is Part.BLOCK or (found.handle and found.handle.grip is Grip.OBSTACLE):
            self._area.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)

    def _released(self, event: QMouseEvent) -> bool:
        press, self._press, self._pan = self._press, None, None
        self._area.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        if self._places.has_ground:
            if event.button() != _LEFT or not self._places.is_on_ground(event.position()):
                return True
            self._stage.send(self._pointer(event), event.position())
        inside = self.band.finish()
        if self._stage.is_busy:
            self._stage.send(stage.Released(), event.position())
        elif inside is not None:
            self._sight.choose(self._stage.plan, inside)
        elif press is not None and event.button() == _LEFT:
            self._clicked(*press, adds=bool(event.modifiers() & _CTRL))
        return True

    def _clicked(self, point: QPointF, found: Under, *, adds: bool) -> None:
        """A press that was no drag: with Ctrl it adds a planting to the chosen ones or takes it away.

        Of blocks that lie on one another, each further click on the same spot chooses the next.
        """
        if adds and found.planting is not None:
            self._sight.choose(self._stage.plan, choosing.toggled(self._sight.chosen, found.planting))
        elif found.part is Part.BLOCK and found.planting is not None:
            here, before = self._places.blocks_at(found), self._click
            is_again = before is not None and before[1] == found.planting and _is_near(before[0], point)
            planting = choosing.next_of(here, found.planting) if is_again else found.planting
            self._choose(evolve(found, planting=planting))
            self._click = point, planting
            if len(here) > 1:
                self.told.emit(turn_words(self._stage.plan, planting, here))

    def _forget(self) -> None:
        """A gesture has ended: moving on with the button down begins no other."""
        self._press, self._home = None, None


def _claims(stage: CanvasStage, event: QKeyEvent) -> bool:
    """While a tool is in hand arrows are its own, also those that are keys of an action otherwise."""
    is_claimed = _hovers(stage) and event.key() in _ARROWS
    if is_claimed:
        event.accept()
    return is_claimed


def _hovers(stage: CanvasStage) -> bool:
    """Whether the gesture under way follows the hand also while no button is held."""
    return stage.is_on_ground or stage.is_measuring or stage.is_filling


def _is_near(one: QPointF, other: QPointF) -> bool:
    """Whether two clicks were on the same spot, as well as a hand can aim."""
    return (one - other).manhattanLength() < _DRAG_FROM


def _scroll(area: QAbstractScrollArea, step: QPointF) -> None:
    """Pull the drawing along."""
    for bar, by in ((area.horizontalScrollBar(), step.x()), (area.verticalScrollBar(), step.y())):
        bar.setValue(bar.value() - round(by / magnified()))


def _drag_of(stage: CanvasStage, found: Under, press: "Pointer", others: tuple[str, ...]) -> "Gesture":
    """The drag that begins at a press on a handle, on an end of a block, or on a block and others chosen with it."""
    planting, number = found.planting or "", found.handle.number if found.handle else 0
    match found.handle.grip if found.handle else found.part:
        case Grip.CORNER:
            return outline_drawn.move_corner(stage, found.bed, number, press)
        case Grip.SIDE:
            return outline_drawn.add_corner(stage, found.bed, number)
        case Grip.OBSTACLE:
            return obstacle_moved.move_obstacle(stage, found.bed, number, press)
        case Part.HEAD_END | Part.FOOT_END:
            return drags.resize_block(stage, planting, foot=found.part is Part.FOOT_END)
        case _:
            return drags.move_block(stage, planting, press, others)
