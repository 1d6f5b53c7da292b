"""A mouse over the canvas, which is told where to go by bed and tape reading."""

import warnings
from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragLeaveEvent, QDragMoveEvent, QDropEvent, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gardenplot.plan import bed_of
from gardenplot.units import parse_length
from gardenplot.window.canvas import Canvas

Keys = Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton


@contextmanager
def whole_pixels() -> Iterator[None]:
    """Make a drag event at whole pixels, which newer PySide6 deprecates and older has no other way for."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        yield


class Mouse:
    """Each step is one event of Qt's, sent to the canvas's viewport."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._viewport = canvas.viewport()

    def point(self, bed: str, reading: str) -> QPointF:
        """Where a tape reading is, in the middle of a bed."""
        middle = bed_of(self._canvas.stage.plan, bed).width.nm // 2
        return self._canvas.places.point_of(bed, parse_length(reading).nm, middle)

    def press(self, bed: str, reading: str, button: Qt.MouseButton = _LEFT) -> None:
        """Press a button at a tape reading."""
        QTest.mousePress(self._viewport, button, Keys.NoModifier, self.point(bed, reading).toPoint())

    def move(self, bed: str, reading: str, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move to a tape reading, with keys held down."""
        self.move_to(self.point(bed, reading), keys)

    def move_to(self, point: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move to a point of the viewport."""
        there = QPointF(self._viewport.mapToGlobal(point.toPoint()))
        self._send(QMouseEvent(QEvent.Type.MouseMove, point, there, Qt.MouseButton.NoButton, _LEFT, keys))

    def hover(self, point: QPointF) -> None:
        """Move to a point of the viewport with no button held."""
        there = QPointF(self._viewport.mapToGlobal(point.toPoint()))
        none = Qt.MouseButton.NoButton
        self._send(QMouseEvent(QEvent.Type.MouseMove, point, there, none, none, Keys.NoModifier))

    def release(self, button: Qt.MouseButton = _LEFT) -> None:
        """Let go, wherever the mouse is."""
        QTest.mouseRelease(self._viewport, button)

    def drag(self, bed: str, start: str, end: str, *, to: str = "") -> None:
        """Press, move and let go, within a bed or on to another."""
        self.press(bed, start)
        self.move(to or bed, end)
        self.release()

    def roll(self, point: QPointF, keys: Qt.KeyboardModifier, steps: int) -> None:
        """Turn the wheel by so many notches, away from the hand where they are positive."""
        there = QPointF(self._viewport.mapToGlobal(point.toPoint()))
        turn, phase = QPoint(0, 120 * steps), Qt.ScrollPhase.NoScrollPhase
        self._send(QWheelEvent(point, there, QPoint(), turn, Qt.MouseButton.NoButton, keys, phase, False))

    def enter(self, carried: QMimeData, bed: str, reading: str) -> QDragEnterEvent:
        """Come over the canvas with something carried."""
        at = self.point(bed, reading).toPoint()
        with whole_pixels():
            event = QDragEnterEvent(at, Qt.DropAction.CopyAction, carried, _LEFT, Keys.NoModifier)
        self._send(event)
        return event

    def carry(self, carried: QMimeData, bed: str, reading: str, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move on with it."""
        at = self.point(bed, reading).toPoint()
        with whole_pixels():
            event = QDragMoveEvent(at, Qt.DropAction.CopyAction, carried, _LEFT, keys)
        self._send(event)

    def drop(self, carried: QMimeData, bed: str, reading: str) -> QDropEvent:
        """Let it go."""
        at = self.point(bed, reading)
        event = QDropEvent(at, Qt.DropAction.CopyAction, carried, _LEFT, Keys.NoModifier)
        self._send(event)
        return event

    def leave(self) -> None:
        """Take it away again."""
        self._send(QDragLeaveEvent())

    def _send(self, event: QEvent) -> None:
        QApplication.sendEvent(self._viewport, event)
