"""A dialog in which much is typed: Escape, Cancel and closing it ask first, once, if that may go."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent, QKeyEvent
from PySide6.QtWidgets import QDialog, QPushButton, QWidget

from gardenplot.words import _, ngettext


class LeaveAsked(QDialog):
    """Asks at its foot, where the button that leaves then says what it does; what is meant twice is done."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.leaves = QPushButton(_("Cancel"))
        self.leaves.clicked.connect(self._leave)
        self._is_asked = False

    def lost(self) -> int:
        """How many lines were typed that would be gone."""
        raise NotImplementedError

    def say(self, words: str) -> None:
        """Say something at the foot of the dialog."""
        raise NotImplementedError

    def stay(self) -> None:
        """Go on: who leaves later is asked again."""
        self._is_asked = False
        self.leaves.setText(_("Cancel"))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self._leave()
        else:
            super().keyPressEvent(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        if self._asks_first():
            event.ignore()
        else:
            super().closeEvent(event)

    def _leave(self) -> None:
        if not self._asks_first():
            self.reject()

    def _asks_first(self) -> bool:
        """Ask if what was typed may go, unless nothing was or it is asked already; whether it was asked just now."""
        lost = self.lost()
        if self._is_asked or not lost:
            return False
        self._is_asked = True
        told = ngettext(
            "{count} line was typed here and goes if you leave: press Escape again, or the button.",
            "{count} lines were typed here and go if you leave: press Escape again, or the button.",
            lost,
        )
        self.say(told.format(count=lost))
        self.leaves.setText(_("Leave without it"))
        return True
