"""Long work with its progress in sight and a way to stop it; the window lives on meanwhile."""

from PySide6.QtCore import QTimer
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QDialog, QLabel, QProgressBar, QPushButton, QVBoxLayout, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Apart, Parts, Result, Work
from gardenplot.window.theme import magnified
from gardenplot.words import _

_LOOK_EVERY = 40
"""Milliseconds."""


class Waiting(QDialog):
    """Open while work goes on in a process of its own; Escape, or Stop, ends it and leaves everything as it was."""

    def __init__(self, words: str, work: Work, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(words)
        self.value: object = None
        self.error: GardenplotError | None = None
        self._apart = Apart(work)
        self.bar, self.stop, label = QProgressBar(), QPushButton(_("Stop")), QLabel(words)
        self.bar.setRange(0, 1)
        self.bar.setAccessibleName(words)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        for part in (label, self.bar, self.stop):
            column.addWidget(part)
        self.setMinimumWidth(round(320 * magnified()))
        self.stop.clicked.connect(self.reject)
        self._clock = QTimer(self)
        self._clock.timeout.connect(self._look)
        self._clock.start(_LOOK_EVERY)

    def done(self, outcome: int) -> None:
        """End the work with the dialog, however that is closed."""
        if self._clock.isActive():
            self._clock.stop()
            self._apart.end()
        super().done(outcome)

    def closeEvent(self, event: QCloseEvent) -> None:
        self.reject()
        super().closeEvent(event)

    def _look(self) -> None:
        try:
            told = self._apart.told()
        except GardenplotError as error:
            self.error = error
            self.reject()
            return
        match told:
            case Parts(done=done, of=of):
                self.bar.setRange(0, of)
                self.bar.setValue(done)
            case Result(value=value):
                self.value = value
                self.accept()


def carried_out(words: str, work: Work, parent: QWidget) -> object | None:
    """What comes out of long work, None where it was stopped; raises the GardenplotError that ended it."""
    waiting = Waiting(words, work, parent)
    waiting.exec()
    waiting.deleteLater()
    if waiting.error is not None:
        raise waiting.error
    return waiting.value
