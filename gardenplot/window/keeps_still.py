"""A place for a line of words that change as the pointer moves: nothing round it is laid out anew for that."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from gardenplot.window.elided import Elided


class KeepsStill(QWidget):
    """As wide as there is room for, whatever the line says; without a layout, which would tell of every change."""

    def __init__(self, line: Elided, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._line = line
        line.setParent(self)

    def sizeHint(self) -> QSize:
        return self._line.least

    def minimumSizeHint(self) -> QSize:
        return self._line.least

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._line.setGeometry(self.rect())
