"""The buttons at the foot of a dialog, in one order everywhere: beside, what leaves, and at the end what accepts."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractButton, QDialog, QHBoxLayout, QPushButton, QWidget


class EndButtons(QWidget):
    """A row of buttons at the foot of a dialog, in the order in which the Tab key goes through them.

    The last one is what Enter presses; where it accepts, and does not only close, it is marked strong.
    """

    def __init__(self, dialog: QDialog, *buttons: QPushButton, accepts: bool = True) -> None:
        super().__init__(dialog)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addStretch(1)
        for button in buttons:
            row.addWidget(button)
        # Only a button that is in its dialog by now becomes the one that Enter presses there.
        buttons[-1].setDefault(True)
        if accepts:
            make_strong(buttons[-1])


def make_strong(button: QAbstractButton) -> None:
    """Mark the button that accepts what a dialog asks."""
    button.setProperty("strong", True)


class EnterPresses(QDialog):
    """A dialog in which Enter presses the button that has the keyboard, whichever it is.

    Qt presses the default one instead where buttons do not become the default by being gone to.
    """

    def keyPressEvent(self, event: QKeyEvent) -> None:
        focused = self.focusWidget()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and isinstance(focused, QPushButton):
            focused.click()
        else:
            super().keyPressEvent(event)
