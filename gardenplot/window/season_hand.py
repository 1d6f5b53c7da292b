"""The hand on the season map: plantings moved, drawn out by their sides, dropped; the line of the day drawn down."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from gardenplot.gestures.season_moved import draw_end, draw_first_day, draw_out, move_in_season
from gardenplot.gestures.stage import Gesture, Pointer, Released
from gardenplot.units import MM
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.season_axes import Axes, MapPart
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

_DRAG_FROM, _REACH, _REACH_DAYS, _LINE = 4, 10, 6, 5
"""Pixels that a press must move before it is a drag, over which a snap pulls along and down, and beside the line."""
_CURSORS = {
    MapPart.BODY: Qt.CursorShape.OpenHandCursor,
    MapPart.FIRST: Qt.CursorShape.SizeVerCursor,
    MapPart.OUT: Qt.CursorShape.SizeVerCursor,
    MapPart.HEAD: Qt.CursorShape.SizeHorCursor,
    MapPart.FOOT: Qt.CursorShape.SizeHorCursor,
}
_LEFT = Qt.MouseButton.LeftButton
_ALT, _SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier


class SeasonHand(QObject):
    """Watches the map; Alt suspends the snaps, Shift pushes neighbours along."""

    def __init__(self, area: QWidget, axes: Callable[[], Axes | None], stage: CanvasStage, sight: Sight) -> None:
        super().__init__(area)
        self._area, self._axes, self._stage, self._sight = area, axes, stage, sight
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
        return False

    def pointer(self, point: QPointF, modifiers: Qt.KeyboardModifier) -> Pointer:
        """A point of the map as gestures see it, also above and below its days."""
        axes, at = self._axes(), point / magnified()
        self.at = at
        if axes is None:
            return Pointer(None, 0, 0, 0)
        return Pointer(
            axes.season.bed,
            x=round(axes.reading(at.x()) * MM),
            y=0,
            reach=round(_REACH / axes.along * MM),
            free=bool(modifiers & _ALT),
            push=bool(modifiers & _SHIFT),
            day=axes.day_beyond(at.y()),
            reach_days=round(_REACH_DAYS / axes.each),
        )

    def _pressed(self, event: QMouseEvent) -> None:
        axes, at = self._axes(), event.position() / magnified()
        if axes is None or event.button() != _LEFT:
            return
        found = axes.part_at(at)
        if found is None:
            self._draws_line = True
            self._sight.show_day(axes.day_at(at.y()))
            return
        block, part = found
        self._press = (event.position(), block.planting, part)
        self._sight.select(axes.season.bed, block.planting)

    def _moved(self, event: QMouseEvent) -> None:
        axes, at = self._axes(), event.position() / magnified()
        if axes is None:
            return
        if not event.buttons() & _LEFT:
            self._press, self._draws_line = None, False
        if self._draws_line:
            self._sight.show_day(axes.day_at(at.y()))
        if self._press is not None and not self._is_drawn:
            away = event.position() - self._press[0]
            if abs(away.x()) + abs(away.y()) >= _DRAG_FROM:
                self._stage.begin(self._gesture(*self._press))
        if self._is_drawn:
            self._stage.send(self.pointer(event.position(), event.modifiers()))
            self._area.update()
        else:
            self._area.setCursor(self._cursor(axes, at))

    def _released(self, event: QMouseEvent) -> None:
        if event.button() == _LEFT:
            if self._is_drawn:
                self._stage.send(Released())
            self._press, self._draws_line = None, False

    def _keyed(self, event: QKeyEvent) -> bool:
        """A key that counts while the hand draws something is pressed or let go; Escape gives up."""
        if not self._is_drawn:
            return False
        if event.key() == Qt.Key.Key_Escape:
            self._stage.give_up()
            return True
        if event.key() in (Qt.Key.Key_Alt, Qt.Key.Key_Shift) and self.at is not None and not event.isAutoRepeat():
            self._stage.send(self.pointer(self.at * magnified(), event.modifiers()))
            self._area.update()
        # Nothing else is done by key while the hand holds something.
        return True

    @property
    def _is_drawn(self) -> bool:
        """Whether a planting of the map is in the hand."""
        return self._press is not None and self._stage.is_busy

    def _gesture(self, press: QPointF, planting: str, part: MapPart) -> Gesture:
        match part:
            case MapPart.FIRST:
                return draw_first_day(self._stage, planting)
            case MapPart.OUT:
                return draw_out(self._stage, planting)
            case MapPart.HEAD | MapPart.FOOT:
                return draw_end(self._stage, planting, foot=part is MapPart.FOOT)
        return move_in_season(self._stage, planting, self.pointer(press, Qt.KeyboardModifier.NoModifier))

    def _cursor(self, axes: Axes, at: QPointF) -> Qt.CursorShape:
        found, day = axes.part_at(at), self._sight.day
        if found is not None:
            return _CURSORS[found[1]]
        on_line = day is not None and abs(axes.y(day, day) - at.y()) <= _LINE
        return Qt.CursorShape.SizeVerCursor if on_line or self._draws_line else Qt.CursorShape.ArrowCursor

    def _forget(self) -> None:
        """What was in the hand is let go, or given up: a button still held does nothing more."""
        self._press, self.at = None, None
        self._area.update()
