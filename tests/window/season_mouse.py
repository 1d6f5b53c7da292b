"""A mouse over the season map, which is told where to go by tape reading and day."""

from datetime import date

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.units import MM, parse_length
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_beds import SeasonBeds
from gardenplot.window.season_panel import SeasonPanel
from tests.window.mouse import whole_pixels

Keys = Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton


class SeasonMouse:
    """Each step is one event of Qt's, sent to the map."""

    def __init__(self, panel: QWidget) -> None:
        self._panel = panel

    @property
    def axes(self) -> Axes:
        """Where tape and dates lie now."""
        assert isinstance(self._panel, SeasonPanel)
        axes = self._panel.axes()
        assert axes is not None
        return axes

    def block(self, planting: str) -> QRectF:
        """The rectangle of a planting."""
        return self.axes.frame(next(one for one in self.axes.season.blocks if one.planting == planting))

    def point(self, reading: str, day: date) -> QPointF:
        """The middle of a day at a tape reading."""
        axes = self.axes
        return QPointF(axes.x(parse_length(reading).nm / MM), axes.y(day, day) + axes.each / 2)

    def press_at(self, point: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Press at a point of the map."""
        QTest.mousePress(self._panel, _LEFT, keys, point.toPoint())

    def click_at(self, point: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Press and let go at a point of the map."""
        QTest.mouseClick(self._panel, _LEFT, keys, point.toPoint())

    def press(self, reading: str, day: date) -> None:
        """Press at a tape reading, on a day."""
        self.press_at(self.point(reading, day))

    def move_to(self, point: QPointF, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move to a point with the button held."""
        there = QPointF(self._panel.mapToGlobal(point.toPoint()))
        event = QMouseEvent(QEvent.Type.MouseMove, point, there, Qt.MouseButton.NoButton, _LEFT, keys)
        QApplication.sendEvent(self._panel, event)

    def move(self, reading: str, day: date, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Move to a tape reading and a day with the button held."""
        self.move_to(self.point(reading, day), keys)

    def release(self) -> None:
        """Let go, wherever the mouse is."""
        QTest.mouseRelease(self._panel, _LEFT)

    def drag(self, start: tuple[str, date], end: tuple[str, date]) -> None:
        """Press, move and let go."""
        self.press(*start)
        self.move(*end)
        self.release()

    def drop(self, carried: QMimeData, reading: str, day: date, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Bring a crop from the shelf over the map and let it go, with keys held down."""
        at = self.point(reading, day)
        with whole_pixels():
            enters = QDragEnterEvent(at.toPoint(), Qt.DropAction.CopyAction, carried, _LEFT, keys)
            moves = QDragMoveEvent(at.toPoint(), Qt.DropAction.CopyAction, carried, _LEFT, keys)
        drops = QDropEvent(at, Qt.DropAction.CopyAction, carried, _LEFT, keys)
        for event in (enters, moves, drops):
            QApplication.sendEvent(self._panel, event)

    def roll(self, reading: str, day: date, steps: int, keys: Qt.KeyboardModifier = Keys.NoModifier) -> None:
        """Turn the wheel by so many notches, away from the hand where they are positive."""
        point = self.point(reading, day)
        there = QPointF(self._panel.mapToGlobal(point.toPoint()))
        none, phase = Qt.MouseButton.NoButton, Qt.ScrollPhase.NoScrollPhase
        event = QWheelEvent(point, there, QPoint(), QPoint(0, 120 * steps), none, keys, phase, False)
        QApplication.sendEvent(self._panel, event)


class BedsMouse(SeasonMouse):
    """A mouse over the maps of all beds in small, one of which it is told to go to."""

    def __init__(self, beds: SeasonBeds, bed: str) -> None:
        super().__init__(beds)
        self._beds, self._bed = beds, bed

    @property
    def axes(self) -> Axes:
        return next(one for one in self._beds.all_axes() if one.season.bed == self._bed)

    def over(self, bed: str) -> "BedsMouse":
        """The same mouse over another bed."""
        return BedsMouse(self._beds, bed)
