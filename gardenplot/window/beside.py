"""A table with buttons beside it; and the findings, which lead to what can be done about them."""

from collections.abc import Sequence

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from gardenplot.window.tables import Table
from gardenplot.window.theme import magnified
from gardenplot.words import _

_ACROSS, _DOWN = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_BESIDE = 720
"""From this width in pixels on, with text of the usual size, buttons stand beside a table."""


class Beside(QWidget):
    """A table with its buttons beside it, or below it where it would lack the width."""

    def __init__(self, table: Table, buttons: Sequence[QWidget]) -> None:
        super().__init__()
        self._whole, self._buttons = QBoxLayout(_ACROSS, self), QBoxLayout(_DOWN)
        self._whole.setContentsMargins(0, 0, 8, 0)
        self._buttons.setContentsMargins(0, 4, 0, 4)
        for button in buttons:
            self._buttons.addWidget(button)
        self._buttons.addStretch(1)
        self._whole.addWidget(table, 1)
        self._whole.addLayout(self._buttons)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Go below in good time, so that nothing jumps with what the table holds."""
        super().resizeEvent(event)
        is_narrow = self.width() < _BESIDE * magnified()
        self._whole.setDirection(_DOWN if is_narrow else _ACROSS)
        self._buttons.setDirection(_ACROSS if is_narrow else _DOWN)


class FindingsPage(Beside):
    """The findings, and beside them what leads out of those that lack ground or did not go as planned."""

    def __init__(self, table: Table) -> None:
        self.ways, self.again = QPushButton(_("Ways out …")), QPushButton(_("Plan again …"))
        super().__init__(table, (self.ways, self.again))
