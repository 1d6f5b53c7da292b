"""What is written under the strips: for each block its letter and its words."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from gardenplot.drawing.captions import Caption
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.lettering import lettering, write, write_within
from gardenplot.window.theme import colour

_LEAST_ROOM = 26.0
"""Pixels that a block must have in sight for its letter."""


def caption_lines(shown: tuple[Caption, ...], along: float, sight: tuple[float, float]) -> dict[str, int]:
    """The line of each caption by its planting: 0 for all where each has room before the next, else 0 and 1 by turns.

    `sight` is what part of the strip can be seen, from and to in pixels.
    """
    starts = _starts(shown, along, sight)
    one_line = all(
        _width(caption.words[0]) + 34 <= after - start for (caption, start), (_next, after) in pairwise(starts)
    )
    return {caption.planting: 0 if one_line else number % 2 for number, (caption, _start) in enumerate(starts)}


def paint_captions(
    painter: QPainter,
    shown: tuple[Caption, ...],
    along: float,
    top: float,
    sight: tuple[float, float],
    lines: dict[str, int],
    inks: Palette,
) -> None:
    """Captions in their lines, each with the words that have room there; one that has no line yet takes the last.

    The caption of a block that begins before what can be seen stands where that begins.
    """
    last = max(lines.values(), default=0)
    ends = [sight[1]] * (last + 1)
    for caption, start in reversed(_starts(shown, along, sight)):
        line = lines.get(caption.planting, last)
        _caption(painter, caption, QPointF(start, top + 22 * line), ends[line] - start, inks)
        ends[line] = start


def _starts(shown: tuple[Caption, ...], along: float, sight: tuple[float, float]) -> list[tuple[Caption, float]]:
    """The captions of blocks in sight, and where they stand in pixels."""
    left, right = sight
    seen = (one for one in shown if one.end * along >= left + _LEAST_ROOM and one.at * along < right)
    return [(caption, max(left, caption.at * along)) for caption in seen]


def _width(words: str) -> float:
    return lettering(words, 13).width


def _caption(painter: QPainter, caption: Caption, at: QPointF, room: float, inks: Palette) -> None:
    box = QRectF(at.x(), at.y(), max(18, lettering(caption.look.letter, 12, bold=True).width + 10), 18)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, caption.look.ink))
    painter.drawRoundedRect(box, 3, 3)
    painter.setPen(colour(inks, Ink.PAPER))
    write_within(painter, box, caption.look.letter, 12, bold=True)
    words = next(one for one in caption.words if _width(one) + box.width() + 14 <= room or not one)
    painter.setPen(colour(inks, Ink.INK))
    write(painter, QPointF(box.right() + 7, box.bottom() - 4), words, 13)
