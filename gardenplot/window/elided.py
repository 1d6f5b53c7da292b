"""A line of words that may have less room than it needs: its end is left out then, and the tip tells all of it."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.script import runs

_LEAST_LETTERS = 6


class Elided(PlainLabel):
    """Wants room for all its words and takes room for a few; `shown_whole` is the tip while nothing is left out."""

    def __init__(self, words: str = "", parent: QWidget | None = None) -> None:
        super().__init__(words, parent)
        self.shown_whole = ""

    def minimumSizeHint(self) -> QSize:
        whole = self.sizeHint()
        return QSize(min(whole.width(), self.least.width()), whole.height())

    @property
    def least(self) -> QSize:
        """The room that it should have whatever it says."""
        return QSize(_LEAST_LETTERS * self.fontMetrics().horizontalAdvance("m"), self.sizeHint().height())

    @property
    def shown(self) -> str:
        """The words that there is room for."""
        room = self.contentsRect().width()
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, room)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.setToolTip(as_is(self.shown_whole if self.shown == self.text() else self.text()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setLayoutDirection(runs(self.text()))
        side = self.style().visualAlignment(self.layoutDirection(), self.alignment())
        self.style().drawItemText(
            painter, self.contentsRect(), side.value, self.palette(), True, self.shown, self.foregroundRole()
        )
        painter.end()
