"""Long work with its progress in sight and a way to stop it; the window lives on meanwhile."""

from typing import Protocol

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QDialog, QProgressBar, QPushButton, QVBoxLayout, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Apart, Parts, Result, Work
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import magnified
from gardenplot.words import _

_LOOK_EVERY = 40
"""Milliseconds."""


class Going(Protocol):
    """Work that goes on elsewhere."""

    def told(self) -> Parts | Result | None:
        """The last that is known of it; raises the GardenplotError that ended it."""

    def end(self) -> None:
        """End it, done or not."""


class Watched(QObject):
    """Work in a process of its own, or that goes on elsewhere, that is looked at now and then.

    `told` with Parts, then `ended` or `failed`. A process is started when what waits for it has been painted: handing
    it a large plan takes as long as that again.
    """

    told = Signal(object)
    ended = Signal(object)
    failed = Signal(object)

    def __init__(self, work: Work | Going, parent: QObject) -> None:
        super().__init__(parent)
        self._to_start: Work | None = None
        self._going: Going | None = None
        if isinstance(work, Work):
            self._to_start = work
        else:
            self._going = work
        self._clock = QTimer(self)
        self._clock.timeout.connect(self._look)
        self._clock.start(0)

    def end(self) -> None:
        """End the work, done or not; once is enough."""
        if self._clock.isActive():
            self._clock.stop()
            if self._going is not None:
                self._going.end()

    def _look(self) -> None:
        self._clock.setInterval(_LOOK_EVERY)
        if self._to_start is not None:
            self._going, self._to_start = Apart(self._to_start), None
            return
        try:
            told = self._going.told() if self._going is not None else None
        except GardenplotError as error:
            self.end()
            self.failed.emit(error)
            return
        match told:
            case Parts():
                self.told.emit(told)
            case Result(value=value):
                self.end()
                self.ended.emit(value)


class Waiting(QDialog):
    """Open while work goes on in a process of its own; Escape, or Stop, ends it and leaves everything as it was."""

    def __init__(self, words: str, work: Work | Going, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(words)
        self.value: object = None
        self.error: GardenplotError | None = None
        self._work = Watched(work, self)
        self.bar, self.stop, label = QProgressBar(), QPushButton(_("Stop")), PlainLabel(words)
        self.bar.setRange(0, 1)
        self.bar.setAccessibleName(words)
        column = QVBoxLayout(self)
        column.setSpacing(12)
        for part in (label, self.bar, self.stop):
            column.addWidget(part)
        self.setMinimumWidth(round(320 * magnified()))
        self.stop.clicked.connect(self.reject)
        self._work.told.connect(self._show)
        self._work.ended.connect(self._keep)
        self._work.failed.connect(self._fail)

    def done(self, outcome: int) -> None:
        """End the work with the dialog, however that is closed."""
        self._work.end()
        super().done(outcome)

    def closeEvent(self, event: QCloseEvent) -> None:
        self.reject()
        super().closeEvent(event)

    def _show(self, parts: Parts) -> None:
        self.bar.setRange(0, parts.of)
        self.bar.setValue(parts.done)

    def _keep(self, value: object) -> None:
        self.value = value
        self.accept()

    def _fail(self, error: GardenplotError) -> None:
        self.error = error
        self.reject()


def carried_out(words: str, work: Work | Going, parent: QWidget) -> object | None:
    """What comes out of long work, None where it was stopped; raises the GardenplotError that ended it."""
    waiting = Waiting(words, work, parent)
    waiting.exec()
    waiting.deleteLater()
    if waiting.error is not None:
        raise waiting.error
    return waiting.value
