"""The panels round the drawing: shown, hidden and moved by the grower, and remembered from one start to the next."""

from typing import TYPE_CHECKING

from attrs import frozen
from PySide6.QtCore import QByteArray, QPoint, QRect, QSettings, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDockWidget, QWidget

from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.side_title import SideTitle
from gardenplot.window.theme import magnified
from gardenplot.window.top_title import TopTitle
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

_SIDES = {"shelf": 244, "selected": 312, "steps": 312}
"""Widths in pixels of the panels at the sides, with text of the usual size."""
_BELOW, _MOST_BELOW, _SHARE = {"ledger": 200}, 320, 0.3
"""Pixels of height of the panels below the drawing, how far they grow, and their share of a window beyond `_TALL`."""
_ROOMY, _HIGH, _TALL = 1366, 640, 700
"""Pixels of a window's width and height from which its panels have their usual sizes, with text of the usual size.

From `_TALL` on those below the drawing take a part of what there is more: there a season of a bed can be read.
"""
_MIRRORED = {
    Qt.DockWidgetArea.LeftDockWidgetArea: Qt.DockWidgetArea.RightDockWidgetArea,
    Qt.DockWidgetArea.RightDockWidgetArea: Qt.DockWidgetArea.LeftDockWidgetArea,
}
"""Where panels stand in a window that runs from right to left, which Qt leaves where they are."""
_ROUND = (
    Qt.DockWidgetArea.LeftDockWidgetArea,
    Qt.DockWidgetArea.RightDockWidgetArea,
    Qt.DockWidgetArea.BottomDockWidgetArea,
)
"""The sides that a panel goes round by key; after the last of them it floats."""
LEAST_WIDTH = 1024
"""Pixels of width that a window takes on any screen."""
_VERSION = 1
"""What is remembered of other panels than these is not put back; raised when a panel is added or goes."""
_HANDLE = 60
"""How much of a window must be on a screen, across, so that one can take hold of it."""


@frozen(eq=False)
class _Place:
    """Where a panel is in a new program: in which area, whether it is shown, and behind which other one."""

    dock: QDockWidget
    area: Qt.DockWidgetArea
    shown: bool
    behind: QDockWidget | None


class Panels:
    """The docks of a window, in the order in which they were added."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self.docks: list[QDockWidget] = []
        self._places: list[_Place] = []

    def add(
        self,
        name: str,
        title: str,
        inner: QWidget,
        area: Qt.DockWidgetArea,
        *,
        shown: bool = True,
        behind: QDockWidget | None = None,
    ) -> QDockWidget:
        """Put a part of the window into a panel, perhaps behind another; `name` is what it is remembered by."""
        dock = QDockWidget(title, self._window)
        dock.setObjectName(name)
        dock.setWidget(inner)
        if area == Qt.DockWidgetArea.BottomDockWidgetArea:
            dock.setTitleBarWidget(SideTitle(dock))
            dock.setFeatures(dock.features() | QDockWidget.DockWidgetFeature.DockWidgetVerticalTitleBar)
        else:
            dock.setTitleBarWidget(TopTitle(dock))
        self.docks.append(dock)
        self._places.append(_Place(dock, area, shown, behind))
        self._put(self._places[-1])
        return dock

    def _put(self, place: "_Place") -> None:
        dock, front = place.dock, place.behind
        is_mirrored = self._window.layoutDirection() == Qt.LayoutDirection.RightToLeft
        self._window.addDockWidget(_MIRRORED.get(place.area, place.area) if is_mirrored else place.area, dock)
        if dock.isFloating():
            dock.setFloating(False)
        dock.setVisible(place.shown)
        if front is not None:
            self._window.tabifyDockWidget(front, dock)
            front.raise_()

    def restore(self) -> None:
        """Put window and panels where they were when the program ended; what is on no screen now comes back."""
        self._widen()
        settings = QSettings()
        geometry, state = settings.value("window"), settings.value("panels")
        if isinstance(geometry, QByteArray):
            self._window.restoreGeometry(geometry)
            _bring_back(self._window)
        if isinstance(state, QByteArray):
            self._window.restoreState(state, _VERSION)
            self._bring_docks_back()
        self._fit()

    def keep(self) -> None:
        """Remember where window and panels are."""
        settings = QSettings()
        settings.setValue("window", self._window.saveGeometry())
        settings.setValue("panels", self._window.saveState(_VERSION))

    def move_on(self, dock: QDockWidget) -> str:
        """Put a panel to the next side of the drawing, or let it float after the last; words that say where it is."""
        area = self._window.dockWidgetArea(dock)
        floats = not dock.isFloating() and area == _ROUND[-1]
        if not floats:
            after = -1 if dock.isFloating() or area not in _ROUND else _ROUND.index(area)
            area = _ROUND[after + 1]
            self._window.addDockWidget(area, dock)
        dock.setFloating(floats)
        dock.show()
        dock.raise_()
        return _where(dock, area)

    def as_at_first(self) -> None:
        """Put the panels where they are in a new program."""
        size = self._window.size()
        for dock in self.docks:
            self._window.removeDockWidget(dock)
        for place in self._places:
            self._put(place)
        self._widen()
        self._fit()
        # Panels that stood side by side for a moment may have made it wider than its screen.
        self._window.resize(size)

    @property
    def room(self) -> int:
        """How wide the window can be, in pixels: as wide as its screen, or a small one."""
        return max(room_on_screen(self._window).width(), LEAST_WIDTH)

    def _fit(self) -> None:
        """Lay the panels at the sides behind one another where large text leaves the drawing no room between them."""
        beside = [dock for dock in self.docks if dock.objectName() in _SIDES and not dock.isFloating()]
        shown = [dock for dock in beside if not dock.isHidden() and self._window.dockWidgetArea(dock) != _ROUND[-1]]
        if len(shown) < 2 or self._window.minimumSizeHint().width() <= self.room:
            return
        for dock in shown[1:]:
            self._window.tabifyDockWidget(shown[0], dock)
        shown[0].raise_()

    def _widen(self) -> None:
        for sizes, way in ((_SIDES, Qt.Orientation.Horizontal), (_BELOW, Qt.Orientation.Vertical)):
            docks = [dock for dock in self.docks if dock.objectName() in sizes]
            is_beside = way is Qt.Orientation.Horizontal
            height = self._window.height() / magnified()
            room = self._window.width() / _ROOMY if is_beside else height / _HIGH
            more = 0.0 if is_beside else max(0.0, (height - _TALL) * _SHARE)
            most = [sizes[dock.objectName()] * min(1.0, room) + more for dock in docks]
            self._window.resizeDocks(docks, [round(min(one, _MOST_BELOW) * magnified()) for one in most], way)

    def _bring_docks_back(self) -> None:
        for dock in self.docks:
            if dock.isFloating():
                _bring_back(dock)


def _where(dock: QDockWidget, area: Qt.DockWidgetArea) -> str:
    """Where a panel now is, in a sentence."""
    if dock.isFloating():
        return _("{panel} floats").format(panel=dock.windowTitle())
    words = {
        Qt.DockWidgetArea.LeftDockWidgetArea: _("{panel} is at the left"),
        Qt.DockWidgetArea.RightDockWidgetArea: _("{panel} is at the right"),
    }
    return words.get(area, _("{panel} is below the drawing")).format(panel=dock.windowTitle())


def _bring_back(window: QWidget) -> None:
    """Move a window that no screen shows enough of to the first screen, no larger than that."""
    frame = window.frameGeometry()
    screens = [screen.availableGeometry() for screen in QGuiApplication.screens()]
    if any(_can_be_held(frame, screen) for screen in screens):
        return
    room = screens[0]
    window.resize(frame.size().boundedTo(room.size()))
    window.move(room.topLeft() + QPoint(room.width() - window.width(), room.height() - window.height()) / 2)


def _can_be_held(frame: QRect, screen: QRect) -> bool:
    """Whether enough of a window's title is on a screen to take hold of it."""
    shared = frame.intersected(screen)
    return shared.width() >= min(_HANDLE, frame.width()) and screen.top() <= frame.top() < screen.bottom()
