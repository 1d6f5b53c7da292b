"""The workings: every number of the chosen beds with its sum, to be followed with a pencil, upright, in black.

A line is a number: its name, its formula in words and then in figures, what it came to and how far to trust it; where
the formula comes from is said at the foot, or below it where that is no common practice. What went into a sum stands
further to the right below it; what was put in is told at the end, source by source.
"""

from collections.abc import Iterator

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.number_sources import SOURCES
from gardenplot.drawing.number_words import Line
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.trust_words import WEAK
from gardenplot.drawing.working_list import WorkingPart, WorkingRow, working_parts
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, broken
from gardenplot.sheets.ticked_list import Part, add_list
from gardenplot.supplies.shopping import Asked
from gardenplot.words import _
from gardenplot.working import RULES

_WORD, _FIGURE, _SMALL = 9.5, 10.5, 8.5
"""Sizes in points of words, of what a sum comes to, and of how far to trust it."""
_LINE, _SPARE = 12.0, 3.5
"""Points of height of a line, and of what is left below a row."""
_NAME, _VALUE, _TRUST, _GAP, _INDENT = 120.0, 120.0, 56.0, 8.0, 8.0
"""Points of width of columns and between them, and by which what went into a sum is moved to the right."""
_DEEPEST, _MOST_LINES = 4, 40
"""Steps to the right, and lines of a row: a longer one goes on in a further row."""
_USUAL = SOURCES[RULES]
_SAID = _("Formulas: {source}, where none is named. Numbers used are exact where nothing else is said.")


def add_workings(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add how the numbers of the chosen beds came about; raises NothingToPrintError for a plan without beds."""
    parts = working_parts(plan, Asked(choices.beds, choices.first, choices.last))
    if not parts:
        raise NothingToPrintError(_("the plan has no bed, so there are no workings"))
    is_weak = any(isinstance(row, Line) and row.is_weak for part in parts for row in part.rows)
    width = book.upright()._pagesize[0] - 2 * MARGIN
    foot = _SAID.format(source=_USUAL)
    head = ListHead(_("Workings"), said, f"{foot} {WEAK}" if is_weak else foot)
    add_list(book, (_part(part, width) for part in parts), _draw_row, head, told)


_Lines = tuple[tuple[str, str, float], ...]
"""Words with their face and size."""


@frozen
class _Set:
    """A row as it is set: the lines of its columns, which begin or end so far to the right."""

    columns: tuple[tuple[float, bool, _Lines], ...]

    @property
    def height(self) -> float:
        """Points of height."""
        lines = max(len(lines) for _left, _ends, lines in self.columns)
        return _LINE * lines + _SPARE


def _set(row: WorkingRow, width: float) -> _Set:
    """Set a row in so many points of width."""
    left = _NAME + _GAP
    if not isinstance(row, Line):
        words = _lines(" · ".join(row), FACE, _WORD, width - left - 4)
        return _Set(((4.0, False, _lines(_("numbers used"), FACE, _WORD, _NAME)), (left, False, words)))
    line, indent = row, 4 + _INDENT * min(row.depth, _DEEPEST)
    ends = width - _TRUST - _GAP
    name = _lines(line.name, FACE if line.depth else BOLD, _WORD, left - indent - 6)
    is_known = bool(line.sum)
    value = _lines(f"= {line.value}", BOLD, _FIGURE, _VALUE) if is_known else _lines(line.value, FACE, _WORD, _VALUE)
    trust = _lines(line.trust if is_known else "", FACE, _SMALL, _TRUST)
    sums = _sum(line, ends - _VALUE - _GAP - left)
    return _Set(((indent, False, name), (left, False, sums), (ends, True, value), (ends + _GAP, False, trust)))


def _sum(line: Line, room: float) -> _Lines:
    """A formula in words and in figures, on one line where there is room for both, and where it comes from."""
    parts = [line.formula, f"= {line.sum}"] if line.sum else [line.formula]
    both = " ".join(parts)
    parts = [both] if pdfmetrics.stringWidth(both, FACE, _WORD) <= room else parts
    source = () if line.source == _USUAL else _lines(line.source, FACE, _SMALL, room)
    return (*(each for part in parts for each in _lines(part, FACE, _WORD, room)), *source)


def _lines(words: str, face: str, size: float, room: float) -> _Lines:
    return tuple((line, face, size) for line in broken(words, face, size, room))


def _low(row: _Set) -> Iterator[_Set]:
    """A row as one or several that a page has room for."""
    most = max(len(lines) for _at, _ends, lines in row.columns)
    for first in range(0, most, _MOST_LINES):
        cut = ((at, ends, lines[first : first + _MOST_LINES]) for at, ends, lines in row.columns)
        yield _Set(tuple(cut))


def _part(part: WorkingPart, width: float) -> Part[_Set]:
    rows = tuple(each for row in part.rows for each in _low(_set(row, width)))
    return Part(
        part.name, part.beside, rows, height_of=lambda row: row.height, thing=part.bed, flows=not part.is_needed
    )


def _draw_row(page: Canvas, row: _Set, top: float, _right: float) -> None:
    for at, ends, lines in row.columns:
        draw = page.drawRightString if ends else page.drawString
        for number, (words, face, size) in enumerate(lines, 1):
            page.setFont(face, size)
            draw(MARGIN + at, top - _LINE * number + 1, words)
