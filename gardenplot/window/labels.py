"""The labels of the panels beside the drawing: headings, quiet lines, words to copy, and rules between parts."""

import re

from PySide6.QtWidgets import QFrame, QLabel

from gardenplot.drawing.style import Ink
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import widget_font, write_in

_LONG = re.compile(r"(\w{12})(?=\w{12})")
"""Where a word of more than twice so many letters may be broken."""


class _Broken(PlainLabel):
    """A label whose words may be broken where one of them is longer than any line, which would widen its panel."""

    def setText(self, words: str) -> None:
        super().setText(_LONG.sub("\\1\u200b", words))


def heading() -> QLabel:
    """The name of what is selected."""
    label = _Broken()
    label.setFont(widget_font(17, bold=True))
    label.setWordWrap(True)
    return label


def quiet() -> QLabel:
    """A line of second importance."""
    return words(Ink.SECOND)


def words(ink: Ink = Ink.INK) -> QLabel:
    """Lines of words that can be marked and copied."""
    label = _Broken()
    write_in(label, ink)
    label.setWordWrap(True)
    return label


def rule() -> QFrame:
    """A thin line between parts."""
    line = QFrame()
    line.setFrameShape(QFrame.Shape.HLine)
    write_in(line, Ink.RULE)
    return line
