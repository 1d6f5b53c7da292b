"""Words shown as they are: what somebody wrote into a plan is never taken for marks of rich text.

A label, a tip and a message box of Qt look into their words by themselves, and show an image or a link that is
written in them.
"""

from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget


class PlainLabel(QLabel):
    """A label that shows its words letter by letter."""

    def __init__(self, words: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setText(words)


def as_is(words: str) -> str:
    """Words for a tip or a message box, which would look for marks in them."""
    if "<" not in words and "&lt;" not in words:
        return words
    return f"<p>{escape(words)}</p>".replace("\n", "<br>")
