"""What is written under the strips: for each block its letter and its words."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from gardenplot.drawing.captions import Caption
from gardenplot.drawing.style import Ink, Palette
from gardenplot.window.kept_pictures import KeptPictures
from gardenplot.window.lettering import lettering, write, write_within

_KEPT = KeptPictures(512)
_RIM = 3.0
"""Pixels of paper left of a letter that lies on the bed."""
_LINE = 22.0
"""Pixels from one line of captions to the next."""
_LEAST_BED = 44.0
"""Pixels of a bed at its base line that no caption lies on."""
_LEAST_ROOM = 26.0
"""Pixels that a block must have in sight for its letter."""


def caption_lines(shown: tuple[Caption, ...], along: float, sight: QRectF) -> dict[str, int]:
    """The line of each caption by its planting: 0 for all where each has room before the next, else 0 and 1 by turns.

    `sight` is what part of the strip can be seen in pixels. The last caption may want a line of its own, too, to be
    read before the drawing ends.
    """
    starts = _starts(shown, along, sight)
    one_line = all(
        _width(caption.words[0]) + 34 <= after - start for (caption, start), (_next, after) in pairwise(starts)
    )
    if one_line and len(starts) > 1 and _lacks(*starts[-1], sight):
        one_line = _is_read(starts[-2:], along, sight) or not _is_read(starts[-3:-2] + starts[-1:], along, sight)
    return {caption.planting: 0 if one_line else number % 2 for number, (caption, _start) in enumerate(starts)}


def paint_captions(
    painter: QPainter,
    shown: tuple[Caption, ...],
    along: float,
    top: float,
    sight: QRectF,
    lines: dict[str, int],
    inks: Palette,
) -> None:
    """Captions in their lines, each with the words that have room there; one that has no line yet takes the last.

    The caption of a block that begins before what can be seen stands where that begins, and those that would stand
    below it lie on the bed instead, at its foot.
    """
    last = max(lines.values(), default=0)
    ends = [sight.right()] * (last + 1)
    held = min(top, max(_LEAST_BED, sight.bottom() - _LINE * (last + 1)))
    for caption, start in reversed(_drawn_in(_starts(shown, along, sight), lines, along, sight)):
        line = lines.get(caption.planting, last)
        at = QPointF(start, held + _LINE * line)
        _caption(painter, caption, at, ends[line] - start, inks, on_bed=held < top)
        ends[line] = start


def _starts(shown: tuple[Caption, ...], along: float, sight: QRectF) -> list[tuple[Caption, float]]:
    """The captions of blocks in sight, and where they stand in pixels."""
    left, right = sight.left(), sight.right()
    seen = (one for one in shown if one.end * along >= left + _LEAST_ROOM and one.at * along < right)
    return [(caption, max(left, caption.at * along)) for caption in seen]


def _drawn_in(
    starts: list[tuple[Caption, float]], lines: dict[str, int], along: float, sight: QRectF
) -> list[tuple[Caption, float]]:
    """The captions, of which the last in its line goes back along the bed to where its tape readings can be read."""
    if not starts:
        return starts
    last, at = starts[-1]
    line = [one for one in starts if lines.get(one[0].planting) == lines.get(last.planting)]
    if last.planting in lines and _lacks(last, at, sight) and _is_read(line[-2:], along, sight):
        return [*starts[:-1], (last, sight.right() - _needed(last))]
    return starts


def _lacks(caption: Caption, start: float, sight: QRectF) -> bool:
    """Whether the drawing ends before the tape readings of a caption."""
    return start + _needed(caption) > sight.right()


def _is_read(line: list[tuple[Caption, float]], along: float, sight: QRectF) -> bool:
    """Whether the last of a line can go back to be read: its block is in sight, and the one before leaves room."""
    last, _start = line[-1]
    before = line[-2][1] + _width(line[-2][0].words[0]) + 34 if len(line) > 1 else sight.left()
    return last.end * along <= sight.right() and sight.right() - _needed(last) >= before


def _needed(caption: Caption) -> float:
    """The pixels that a caption with its tape readings takes."""
    return _chip(caption.look.letter) + 14 + _width(caption.read)


def _chip(letter: str) -> float:
    return max(18, lettering(letter, 12, bold=True).width + 10)


def _beside(words: str) -> float:
    """The pixels that words take beside a chip, with the rim of their paper."""
    return 14 + _width(words) if words else _RIM


def _width(words: str) -> float:
    return lettering(words, 13).width


def _caption(
    painter: QPainter, caption: Caption, at: QPointF, room: float, inks: Palette, *, on_bed: bool = False
) -> None:
    """The letter on its chip and as many words as fit; on a strip of paper where it lies on the bed."""
    letter = caption.look.letter
    chip = _chip(letter)
    words = next(one for one in caption.words if _width(one) + chip + 14 <= room or not one)
    frame = QRectF(at.x(), at.y(), chip + _beside(words), 18).adjusted(-_RIM, -2, 0, 2)
    ink, rest, paper = (inks[one] for one in (caption.look.ink, Ink.INK, Ink.PAPER))
    _KEPT.show(painter, frame, _paint_caption, letter, words, ink, rest, paper, on_bed)


def _paint_caption(painter: QPainter, letter: str, words: str, ink: str, rest: str, paper: str, on_bed: bool) -> None:
    """Paint a letter on its chip and words behind it, from the corner of the strip of paper on."""
    box = QRectF(_RIM, 2, _chip(letter), 18)
    painter.setPen(Qt.PenStyle.NoPen)
    if on_bed:
        painter.setBrush(QColor(paper))
        painter.drawRoundedRect(box.adjusted(-_RIM, -2, _beside(words), 2), 3, 3)
    painter.setBrush(QColor(ink))
    painter.drawRoundedRect(box, 3, 3)
    painter.setPen(QColor(paper))
    write_within(painter, box, letter, 12, bold=True)
    painter.setPen(QColor(rest))
    write(painter, QPointF(box.right() + 7, box.bottom() - 4), words, 13)
