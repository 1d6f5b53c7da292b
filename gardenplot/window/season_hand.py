"""The hand on the season map: plantings moved, copied, drawn out by their sides; the line of the day drawn down."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.season_map import MapBlock
from gardenplot.gestures.choosing import toggled
from gardenplot.gestures.season_drawn import draw_end, draw_first_day, draw_out
from gardenplot.gestures.season_moved import move_in_season
from gardenplot.gestures.stage import Gesture, Pointer, Released
from gardenplot.units import MM
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.season_axes import Axes, MapPart
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

AxesAt = Callable[[QPointF], Axes | None]
"""Where tape and dates lie in the map that is under a point; None beside all maps."""
_DRAG_FROM, _REACH, _LINE = 4, 10, 5
"""Pixels that a press must move before it is a drag, over which a snap pulls along, and beside the day's line."""
REACH_DAYS = 6
"""Pixels over which a snap pulls down."""
_CURSORS = {
    MapPart.BODY: Qt.CursorShape.OpenHandCursor,
    MapPart.FIRST: Qt.CursorShape.SizeVerCursor,
    MapPart.OUT: Qt.CursorShape.SizeVerCursor,
    MapPart.HEAD: Qt.CursorShape.SizeHorCursor,
    MapPart.FOOT: Qt.CursorShape.SizeHorCursor,
}
_LEFT, _RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
_ALT, _SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier
_CTRL = Qt.KeyboardModifier.ControlModifier
_HELD_KEYS = (Qt.Key.Key_Alt, Qt.Key.Key_Shift, Qt.Key.Key_Control)
_LOST = (QEvent.Type.WindowDeactivate, QEvent.Type.Hide)


class SeasonHand(QObject):
    """Watches a map, or several in small; Alt suspends the snaps, Shift pushes neighbours along, Ctrl leaves a copy.

    `reach_days` is how many pixels a snap pulls down. Where plantings have no `sides` they are only moved.
    """

    moved = Signal(QPointF)

    def __init__(
        self,
        area: QWidget,
        axes_at: AxesAt,
        stage: CanvasStage,
        sight: Sight,
        *,
        reach_days: float = REACH_DAYS,
        sides: bool = True,
    ) -> None:
        super().__init__(area)
        self._area, self._axes_at, self._stage, self._sight = area, axes_at, stage, sight
        self._reach_days, self._sides = reach_days, sides
        self._press: tuple[QPointF, str, MapPart] | None = None
        self._draws_line = False
        self.at: QPointF | None = None
        area.installEventFilter(self)
        stage.ended.connect(self._forget)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        match event.type():
            case QEvent.Type.MouseButtonPress | QEvent.Type.MouseButtonDblClick if isinstance(event, QMouseEvent):
                self._pressed(event)
            case QEvent.Type.MouseMove if isinstance(event, QMouseEvent):
                self._moved(event)
            case QEvent.Type.MouseButtonRelease if isinstance(event, QMouseEvent):
                self._released(event)
            case QEvent.Type.KeyPress | QEvent.Type.KeyRelease if isinstance(event, QKeyEvent):
                return self._keyed(event)
            case lost if lost in _LOST and self._is_drawn:
                self._stage.give_up()
        return False

    def pointer(self, point: QPointF, modifiers: Qt.KeyboardModifier) -> Pointer:
        """A point of the map as gestures see it, also above and below its days."""
        at = point / magnified()
        axes, self.at = self._axes_at(at), at
        if axes is None:
            return Pointer(None, 0, 0, 0)
        return Pointer(
            axes.season.bed,
            x=round(axes.reading(at.x()) * MM),
            y=0,
            reach=round(_REACH / axes.along * MM),
            free=bool(modifiers & _ALT),
            push=bool(modifiers & _SHIFT),
            copies=bool(modifiers & _CTRL),
            waits=bool(modifiers & _CTRL),
            day=axes.day_beyond(at.y()),
            reach_days=round(self._reach_days / axes.each),
        )

    def _pressed(self, event: QMouseEvent) -> None:
        at = event.position() / magnified()
        axes = self._axes_at(at)
        if axes is None or event.button() not in (_LEFT, _RIGHT):
            return
        found, adds = self._part_at(axes, at), bool(event.modifiers() & _CTRL)
        is_chosen = found is not None and found[0].planting in self._sight.chosen
        if event.button() == _RIGHT:
            if not is_chosen:
                self._sight.select(axes.season.bed, found[0].planting if found is not None else None)
            return
        if found is None:
            self._draws_line = axes.top - _LINE <= at.y() <= axes.bottom + _LINE
            if self._draws_line:
                self._sight.show_day(axes.day_at(at.y()))
            return
        block, part = found
        self._press = (event.position(), block.planting, part)
        if not adds and not (is_chosen and part is MapPart.BODY):
            self._sight.select(axes.season.bed, block.planting)

    def _moved(self, event: QMouseEvent) -> None:
        at = event.position() / magnified()
        axes = self._axes_at(at)
        if not event.buttons() & _LEFT:
            if self._is_drawn:
                # The button was let go where the map did not see it.
                self._stage.give_up()
            self._press, self._draws_line = None, False
        if self._draws_line and axes is not None:
            self._sight.show_day(axes.day_at(at.y()))
        if self._press is not None and not self._is_drawn:
            away = event.position() - self._press[0]
            if abs(away.x()) + abs(away.y()) >= _DRAG_FROM:
                self._begin(*self._press)
        if self._is_drawn:
            self._stage.send(self.pointer(event.position(), event.modifiers()))
            self._area.update()
            self.moved.emit(event.position())
        else:
            self._area.setCursor(self._cursor(axes, at))

    def _released(self, event: QMouseEvent) -> None:
        if event.button() != _LEFT:
            return
        press, was_drawn, self._draws_line = self._press, self._is_drawn, False
        if was_drawn:
            self._stage.send(Released())
        elif press is not None:
            adds = bool(event.modifiers() & _CTRL)
            chosen = toggled(self._sight.chosen, press[1]) if adds else (press[1],)
            self._sight.choose(self._stage.plan, chosen)
        self._press = None

    def _keyed(self, event: QKeyEvent) -> bool:
        """A key that counts while the hand draws something is pressed or let go; Escape gives up."""
        if not self._is_drawn:
            return False
        if event.key() == Qt.Key.Key_Escape:
            self._stage.give_up()
            return True
        if event.key() in _HELD_KEYS and self.at is not None and not event.isAutoRepeat():
            self._stage.send(self.pointer(self.at * magnified(), event.modifiers()))
            self._area.update()
        # Nothing else is done by key while the hand holds something.
        return True

    @property
    def _is_drawn(self) -> bool:
        """Whether a planting of the map is in the hand."""
        return self._press is not None and self._stage.is_busy

    def _begin(self, press: QPointF, planting: str, part: MapPart) -> None:
        """Start the drag that the press began; what was not chosen yet is, alone, from then on."""
        if planting not in self._sight.chosen:
            self._sight.choose(self._stage.plan, (planting,))
        others = tuple(one for one in self._sight.chosen if one != planting)
        pressed = self.pointer(press, Qt.KeyboardModifier.NoModifier)
        self._stage.begin(_drag_of(self._stage, planting, part, pressed, others))
        if part is MapPart.BODY:
            self._area.setCursor(Qt.CursorShape.ClosedHandCursor)

    def _part_at(self, axes: Axes, at: QPointF) -> tuple[MapBlock, MapPart] | None:
        """The planting at a point and what of it lies there."""
        found = axes.part_at(at)
        return found if found is None or self._sides else (found[0], MapPart.BODY)

    def _cursor(self, axes: Axes | None, at: QPointF) -> Qt.CursorShape:
        if axes is None:
            return Qt.CursorShape.ArrowCursor
        found, day = self._part_at(axes, at), self._sight.day
        if found is not None:
            return _CURSORS[found[1]]
        on_line = day is not None and abs(axes.y(day, day) - at.y()) <= _LINE
        return Qt.CursorShape.SizeVerCursor if on_line or self._draws_line else Qt.CursorShape.ArrowCursor

    def _forget(self) -> None:
        """What was in the hand is let go, or given up: a button still held does nothing more."""
        self._press, self.at = None, None
        self._area.update()


def _drag_of(stage: CanvasStage, planting: str, part: MapPart, press: Pointer, others: tuple[str, ...]) -> Gesture:
    """The drag that begins at a press on a side of a planting, or on one and others chosen with it."""
    match part:
        case MapPart.FIRST:
            return draw_first_day(stage, planting)
        case MapPart.OUT:
            return draw_out(stage, planting)
        case MapPart.HEAD | MapPart.FOOT:
            return draw_end(stage, planting, foot=part is MapPart.FOOT)
    return move_in_season(stage, planting, press, others)
