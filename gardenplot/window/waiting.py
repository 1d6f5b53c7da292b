"""Room for a part of the window that is made when it is first looked at: until then it costs nothing."""

from collections.abc import Callable
from functools import cached_property
from typing import Generic, TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QDockWidget, QVBoxLayout, QWidget

from gardenplot.window.tab_order import put_behind

Part = TypeVar("Part", bound=QWidget)


class Waiting(QWidget, Generic[Part]):
    """Holds the part, which takes all of its room; until it is made, Tab comes to this in its place."""

    def __init__(self, name: str, make: Callable[[], Part], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._make = make
        self._stops: list[QWidget] = []
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    @cached_property
    def part(self) -> Part:
        """The part, made by now."""
        # Panels that are put elsewhere meanwhile ask for it once more: it is the part by then, not yet laid out.
        part = self.__dict__["part"] = self._make()
        room = QVBoxLayout(self)
        room.setContentsMargins(0, 0, 0, 0)
        room.addWidget(part)
        self._stops = put_behind(self, part)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        # What is added to something that is seen already would by itself be shown only after the next turn of events.
        part.show()
        return part

    def made_with(self, dock: QDockWidget) -> None:
        """Have the part made before anybody sees it in a panel, which may lie behind another one at first."""
        dock.visibilityChanged.connect(lambda seen: self.part.show() if seen else None)
        dock.topLevelChanged.connect(lambda _floats: self.part.show())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Pass the keyboard on to the first stop of the part, or to the last one where it comes from behind."""
        super().focusInEvent(event)
        self.part.show()
        inside = [stop for stop in self._stops if stop.isVisibleTo(self)]
        inside[-1 if event.reason() == Qt.FocusReason.BacktabFocusReason else 0].setFocus(event.reason())
