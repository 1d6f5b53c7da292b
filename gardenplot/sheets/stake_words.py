"""The words beside a stake: on as few lines as they need, names cut where they must be, nothing else."""

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.stakes import Here, Stake
from gardenplot.sheets.paper import BOLD, FACE, fitted, width_of
from gardenplot.units.figures import grouped

_LARGEST, _LEAST = 12, 10
"""Sizes in points."""
_WRAPPED = 2
"""Lines that a name may take; a longer one is cut."""
_APART = 8.0
"""Points between words and the rows by plants behind them."""


@frozen
class Line:
    """A line of words: a name that may be cut, what is not cut, and behind it rows by plants in bold."""

    name: str = ""
    says: str = ""
    count: str = ""

    def width(self, size: float) -> float:
        """Points of width with the name whole."""
        words = pdfmetrics.stringWidth(f"{self.name} {self.says}".strip(), FACE, size)
        count = pdfmetrics.stringWidth(self.count, BOLD, size)
        return float(words + count + (_APART if words and count else 0))

    def draw(self, page: Canvas, x: float, y: float, room: float, size: float) -> None:
        """Draw it from a point on, in so many points of width."""
        count = pdfmetrics.stringWidth(self.count, BOLD, size)
        room -= count + (_APART if count else 0)
        tail = f" {self.says}" if self.name else self.says
        name = fitted(self.name, FACE, size, max(16.0, room - pdfmetrics.stringWidth(tail, FACE, size)))
        words = name + tail if self.name else fitted(tail, FACE, size, room)
        if words:
            page.setFont(FACE, size)
            page.drawString(x, y, words)
            x += width_of(words, FACE, size) + _APART
        if count:
            page.setFont(BOLD, size)
            page.drawString(x, y, self.count)


def lines_of(stake: Stake, room: float, *, counts: bool, apart: bool) -> list[Line]:
    """What is written beside a stake, in so many points of width; with rows by plants where `counts`.

    Where the figures of its plants stand beside them, `apart`, each note has a line of its own.
    """
    if apart:
        return [_short(note, room) for note in stake.notes]
    alone = len(stake.notes) == 1
    lines = [line for note in stake.notes for line in _lines(note, room, alone=alone)]
    count = f"{stake.rows} = {grouped(stake.plants)}" if counts and stake.rows and stake.plants is not None else ""
    if not count:
        return lines
    last = max((at for at, note in enumerate(stake.notes) if note.begins), default=0)
    beside = Line(*_parts(stake.notes[last], whole=False), count=count)
    if alone and beside.width(_LEAST) <= room:
        return [beside, Line(says=stake.notes[0].more)] if stake.notes[0].more else [beside]
    if len(lines) == len(stake.notes) and (beside.width(_LEAST) <= room or len(lines) > 1):
        return [beside if at == last else line for at, line in enumerate(lines)]
    return [*lines, Line(count=count)]


def words_of(lines: list[Line]) -> str:
    """All that lines say, wherever they are broken, which may be where a dot parts what stands on one line."""
    return " ".join(part for line in lines for part in (line.name, line.says, line.count) if part).replace(" · ", " ")


def size_of(lines: list[Line], room: float, height: float) -> int:
    """The largest size at which lines have room in so many points of width and height, 10 pt at least."""
    fits = (
        size
        for size in range(_LARGEST, _LEAST, -1)
        if len(lines) * (size + 0.5) <= height and all(line.width(size) <= room for line in lines)
    )
    return next(fits, _LEAST)


def _parts(note: Here, *, whole: bool) -> tuple[str, str]:
    """A note's name, and what it says with or without the words to its figure."""
    more = note.more if whole or not note.plant else ""
    return note.name, f"{note.says} · {more}" if more else note.says


def _short(note: Here, room: float) -> Line:
    """A note on one line, the words to its figure left out where they lack room."""
    whole = Line(*_parts(note, whole=True))
    return whole if whole.width(_LEAST) <= room else Line(*_parts(note, whole=False))


def _lines(note: Here, room: float, *, alone: bool) -> list[Line]:
    """A note on one line, or on two where that keeps its name whole and it stands alone, or is all words."""
    whole = Line(*_parts(note, whole=True))
    if whole.width(_LARGEST if alone else _LEAST) <= room:
        return [whole]
    named = Line(note.name, note.says)
    if alone and note.name and named.width(_LEAST) > room:
        wrapped = _broken(f"{note.name} {note.says}", room)
        return wrapped if len(wrapped) == _WRAPPED else [named]
    if note.more and (alone or not note.plant):
        return [named, Line(says=note.more)]
    return [_short(note, room)] if note.name else _broken(note.says, room)


def _broken(words: str, room: float) -> list[Line]:
    lines = [""]
    for word in words.split(" "):
        longer = f"{lines[-1]} {word}".strip()
        if not lines[-1] or pdfmetrics.stringWidth(longer, FACE, _LEAST) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return [Line(says=line) for line in lines]
