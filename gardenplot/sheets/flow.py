"""Sentences whose figures are large, since one measures by them, on as many lines as they need."""

from collections.abc import Iterator
from itertools import groupby
from string import Formatter

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.sheets.paper import BOLD, FACE, fitted, width_of

SMALL, MEASURED = 10, 14
"""Sizes in points of words, and of a figure that is measured at the bed."""
Piece = tuple[str, str, int]
"""Letters, their face and their size in points."""
Word = tuple[Piece, ...]
"""Pieces with no space between them, such as a figure and the comma behind it."""


def words_of(template: str, **figures: object) -> list[Word]:
    """The words of a template, its fields filled with large figures."""
    words: list[Word] = []
    is_glued = False
    for said, name, _spec, _conversion in Formatter().parse(template):
        for number, word in enumerate(said.split(" ")):
            if word:
                _add(words, (word, FACE, SMALL), is_glued=is_glued and number == 0)
        is_glued = bool(said) and not said.endswith(" ")
        if name:
            _add(words, (str(figures[name]), BOLD, MEASURED), is_glued=is_glued)
            is_glued = True
    return words


def as_typed(words: str) -> str:
    """Words of a plan as part of a template: no brace in them begins or ends a field."""
    return words.replace("{", "{{").replace("}", "}}")


def _add(words: list[Word], piece: Piece, *, is_glued: bool) -> None:
    if is_glued and words:
        words[-1] = (*words[-1], piece)
    else:
        words.append((piece,))


def line_width(line: list[Word]) -> float:
    """Points of width of some words beside each other."""
    words = sum(width_of(*piece) for word in line for piece in word)
    return words + _space() * (len(line) - 1)


def _space() -> float:
    return float(pdfmetrics.stringWidth(" ", FACE, SMALL))


def broken_words(words: list[Word], room: float) -> list[list[Word]]:
    """Words on as many lines as they need in so many points."""
    lines: list[list[Word]] = [[]]
    for word in words:
        if lines[-1] and line_width([*lines[-1], word]) > room:
            lines.append([])
        lines[-1].append(word)
    return lines


def height_of(lines: list[list[Word]]) -> float:
    """Points of height of some lines."""
    return sum(map(_pitch, lines))


def _pitch(line: list[Word]) -> float:
    return max(size for word in line for _letters, _face, size in word) + 2.0


def draw_lines(page: Canvas, lines: list[list[Word]], left: float, top: float, room: float) -> None:
    """Draw lines below each other; a word that is wider than the room is cut."""
    for line in lines:
        top -= _pitch(line)
        x = left
        for letters, face, size in _runs(line):
            said = fitted(letters, face, size, left + room - x)
            page.setFont(face, size)
            page.drawString(x, top + 1.5, said)
            x += width_of(said, face, size)


def _runs(line: list[Word]) -> Iterator[Piece]:
    """The letters of a line, with the spaces between its words, in as few pieces as their faces and sizes allow."""
    pieces: list[Piece] = []
    for number, word in enumerate(line):
        if number:
            # A space is as wide beside a large figure as between small words.
            alike = pieces[-1][1:] == word[0][1:]
            pieces.append((" ", *word[0][1:]) if alike else (" ", FACE, SMALL))
        pieces += word
    for (face, size), run in groupby(pieces, lambda piece: piece[1:]):
        letters = "".join(piece[0] for piece in run)
        yield letters, face, size
