"""A line that tells of a day in it which day of the week that is, beside what is typed and not to be typed over."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QStyle, QStyleOptionFrame, QWidget

from gardenplot.drawing.days import day_words
from gardenplot.drawing.style import Ink
from gardenplot.gestures.days_read import day_read
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.theme import colour, palette

_APART = 10
"""Pixels between other words and the day of the week."""
_END = 3
"""Pixels between it and the end of the line."""


class WeekdayLine(QLineEdit):
    """A line for anything; where it holds a day, its tip and its description tell the day of the week too.

    The tip tells besides what holds while nothing is typed.
    """

    def __init__(self, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._day = ""
        self.textChanged.connect(self._tell)
        self.setText(text)

    def stand_empty(self, words: str) -> None:
        """Show in grey what holds while nothing is typed, or an example; the tip tells it where it has no room."""
        if words == self.placeholderText():
            return
        self.setPlaceholderText(words)
        self._say()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.weekday() and self.has_room():
            _write(self, self._room().adjusted(0, 0, -_END, 0), self.weekday())

    def weekday(self) -> str:
        """The day of the week in short, unless it is typed itself; nothing where no day is."""
        day = day_read(self.text()) if self._day else None
        words = "" if day is None else f"{day:%a}"
        return "" if self.text().strip().lower().startswith(words.lower()) else words

    def has_room(self) -> bool:
        """Whether the day of the week stands in the line, behind what is typed."""
        return _are_wide(self, self.text(), self.weekday()) + _END <= self._room().width()

    def _room(self) -> QRect:
        """Where its text stands."""
        option = QStyleOptionFrame()
        self.initStyleOption(option)
        return self.style().subElementRect(QStyle.SubElement.SE_LineEditContents, option, self)

    def _tell(self) -> None:
        day = day_read(self.text())
        told = day_words(day) if day is not None else ""
        if told != self._day:
            self._day = told
            self._say()

    def _say(self) -> None:
        words = (self._day, self.placeholderText())
        self.setToolTip(as_is("\n".join(one for one in words if one)))
        self.setAccessibleDescription(self.described())

    def described(self) -> str:
        """What a screen reader tells of it."""
        return self._day or self.placeholderText()


class FieldLabel(PlainLabel):
    """The words above a line; at their end stands the day of the week for which the line has no room."""

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        words = self.aside()
        if words:
            _write(self, self.contentsRect(), words)

    def aside(self) -> str:
        """The day of the week that stands there, if any does."""
        line = self.buddy()
        if not isinstance(line, WeekdayLine) or not line.weekday() or line.has_room():
            return ""
        return line.weekday() if _are_wide(self, self.text(), line.weekday()) <= self.contentsRect().width() else ""


def _are_wide(part: QWidget, words: str, weekday: str) -> int:
    """The width of words and of a day of the week that keeps clear of them."""
    metrics = part.fontMetrics()
    return metrics.horizontalAdvance(words) + _APART + metrics.horizontalAdvance(weekday)


def _write(part: QWidget, where: QRect, weekday: str) -> None:
    """Write a day of the week in quiet letters at the end of a part."""
    painter = QPainter(part)
    painter.setPen(colour(palette(), Ink.SECOND))
    end = QStyle.visualAlignment(part.layoutDirection(), Qt.AlignmentFlag.AlignRight)
    painter.drawText(where, end | Qt.AlignmentFlag.AlignVCenter, weekday)
    painter.end()
