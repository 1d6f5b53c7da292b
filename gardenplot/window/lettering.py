"""Lines of text in the drawing, set once and written many times."""

from functools import lru_cache

from attrs import frozen
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QStaticText

from gardenplot.window.theme import drawing_font


@frozen(eq=False)
class Lettering:
    """A line of text as it is set: its width, and its height above and below the line it stands on, in pixels."""

    text: QStaticText
    width: float
    ascent: float
    height: float


@lru_cache(maxsize=4096)
def lettering(words: str, px: float, *, bold: bool = False) -> Lettering:
    """Set a line in the drawing's face; the same words at the same size are set once."""
    font = drawing_font(px, bold=bold)
    text = QStaticText(words)
    text.setTextFormat(Qt.TextFormat.PlainText)
    text.prepare(font=font)
    metrics = QFontMetricsF(font)
    return Lettering(text, metrics.horizontalAdvance(words), metrics.ascent(), metrics.height())


def write(painter: QPainter, at: QPointF, words: str, px: float, *, bold: bool = False) -> None:
    """Write a line with the painter's pen; `at` is where its first letter stands."""
    line = lettering(words, px, bold=bold)
    painter.setFont(drawing_font(px, bold=bold))
    painter.drawStaticText(QPointF(at.x(), at.y() - line.ascent), line.text)


def write_within(painter: QPainter, frame: QRectF, words: str, px: float, *, bold: bool = False) -> None:
    """Write a line in the middle of a frame."""
    line = lettering(words, px, bold=bold)
    painter.setFont(drawing_font(px, bold=bold))
    centre = frame.center()
    painter.drawStaticText(QPointF(centre.x() - line.width / 2, centre.y() - line.height / 2), line.text)
