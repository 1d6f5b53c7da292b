"""The labels of the panels beside the drawing: headings, quiet lines, words to copy, and rules between parts."""

from PySide6.QtWidgets import QFrame, QLabel

from gardenplot.drawing.style import Ink
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import widget_font, write_in


def heading() -> QLabel:
    """The name of what is selected."""
    label = PlainLabel()
    label.setFont(widget_font(17, bold=True))
    label.setWordWrap(True)
    return label


def quiet() -> QLabel:
    """A line of second importance."""
    return words(Ink.SECOND)


def words(ink: Ink = Ink.INK) -> QLabel:
    """Lines of words that can be marked and copied."""
    label = PlainLabel()
    write_in(label, ink)
    label.setWordWrap(True)
    return label


def rule() -> QFrame:
    """A thin line between parts."""
    line = QFrame()
    line.setFrameShape(QFrame.Shape.HLine)
    write_in(line, Ink.RULE)
    return line
