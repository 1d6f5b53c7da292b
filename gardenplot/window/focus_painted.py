"""A drawing is painted anew when it gets the keyboard or loses it, since it shows by dots what the keys work on."""

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QAbstractScrollArea


class FocusPainted(QObject):
    """Looks at the focus of a scroll area: Qt updates its frame, and not what an opaque viewport shows in it."""

    def __init__(self, area: QAbstractScrollArea) -> None:
        super().__init__(area)
        self._area = area
        area.installEventFilter(self)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.FocusIn, QEvent.Type.FocusOut):
            self._area.viewport().update()
        return False
