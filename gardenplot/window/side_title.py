"""The title of a low panel: a narrow handle at its side that leaves the height to what the panel shows."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QDockWidget, QVBoxLayout, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.window.title_buttons import title_buttons

_WIDE, _BELOW_BUTTONS, _GRIP = 22, 60, 24
"""Pixels with text of the usual size: width, where the buttons end, how long the dotted lines are."""


class SideTitle(QWidget):
    """Drags the panel where it has no button; the panel is named by its tab and by its menu."""

    def __init__(self, dock: QDockWidget) -> None:
        super().__init__(dock)
        self.setToolTip(dock.windowTitle())
        column = QVBoxLayout(self)
        column.setContentsMargins(2, 4, 2, 4)
        column.setSpacing(4)
        for button in title_buttons(dock):
            column.addWidget(button)
        column.addStretch(1)

    def sizeHint(self) -> QSize:
        return QSize(round(_WIDE * magnified()), super().sizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Three dotted lines, to be taken hold of."""
        painter, inks = QPainter(self), palette()
        dots = QPen(colour(inks, Ink.EDGE), 2)
        dots.setDashPattern([1, 2])
        painter.setPen(dots)
        top, middle = round(_BELOW_BUTTONS * magnified()), self.width() // 2
        for x in (middle - 3, middle, middle + 3):
            painter.drawLine(x, top, x, top + round(_GRIP * magnified()))
        painter.end()
