"""The title of a low panel: a narrow handle at its side that leaves the height to what the panel shows."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QIcon, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QDockWidget, QToolButton, QVBoxLayout, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.files import resource
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

_WIDE, _MARK, _BELOW_BUTTONS, _GRIP = 22, 10, 60, 24
"""Pixels with text of the usual size: width, marks on the buttons, where these end, how long the dotted lines are."""


class SideTitle(QWidget):
    """Drags the panel where it has no button; the panel is named by its tab and by its menu."""

    def __init__(self, dock: QDockWidget) -> None:
        super().__init__(dock)
        self.setToolTip(dock.windowTitle())
        name = dock.windowTitle()
        column = QVBoxLayout(self)
        column.setContentsMargins(2, 4, 2, 4)
        column.setSpacing(4)
        column.addWidget(self._button("close", _("Close {panel}").format(panel=name), dock.close))
        free = _("Let {panel} float, or put it back").format(panel=name)
        column.addWidget(self._button("float", free, lambda: dock.setFloating(not dock.isFloating())))
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

    def _button(self, mark: str, words: str, does: Callable[[], object]) -> QToolButton:
        button, side = QToolButton(self), round(_MARK * magnified())
        button.setAutoRaise(True)
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        button.setIcon(QIcon(str(resource(f"marks/{mark}.svg"))))
        button.setIconSize(QSize(side, side))
        button.setToolTip(words)
        button.setAccessibleName(words)
        button.clicked.connect(does)
        return button
