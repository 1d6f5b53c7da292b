"""Turned grids in the side column: where the string of each row meets the bed's edges, and the plants along it."""

from itertools import pairwise

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.turned_words import angle_words
from gardenplot.layout import Grid, Layout, Row
from gardenplot.layout.outline import Point
from gardenplot.layout.turn import Turn
from gardenplot.layout.turned import string_of
from gardenplot.plan import Bed
from gardenplot.sheets.flow import MEASURED, SMALL
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.sheets.section import Section, measured, sentence, short
from gardenplot.units import Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _

_FACES = (BOLD, BOLD, BOLD, BOLD, FACE)
_SIZES = (MEASURED, MEASURED, MEASURED, MEASURED, SMALL)
_PITCH, _STRING = 15.0, 34.0
"""Points from line to line, and from string to string."""


@frozen
class _Stretch:
    """Plants of a row one beside the other: the first and the last in the turned frame, and how many."""

    first: int
    last: int
    count: int


def turned_said(layout: Layout, turn: Turn, units: Units) -> list[Section]:
    """How rows are turned, how far apart all are, and how the table is read."""
    words = _("rows turned {angle}").format(angle=angle_words(turn))
    apart = {after.offset - one.offset for one, after in pairwise(layout.rows)}
    between = offset(min(apart, default=0), units)
    if apart and max(apart) - min(apart) <= 1:
        words += ", " + _("{between} apart")
    unit = offset(0, units).unit or _("inches")
    strings = _("strings: tape · {unit} from the left; plants along them").format(unit=unit)
    return [measured(words, between=between), sentence(strings, 9)]


def turned_tables(bed: Bed, layout: Layout, turn: Turn, units: Units, most: int) -> list[Section]:
    """Both ends of each string, the first and the last plant along it, and the plants; a table for so many lines."""
    names = (_("string from"), _("to"), _("first"), _("last"), _("plants"))
    lines = [line for row in layout.rows for line in _lines(bed, layout.grid, turn, row, units)]
    return [_table(names, lines[at : at + most // 2]) for at in range(0, len(lines), most // 2)]


def _table(names: tuple[str, ...], lines: list[tuple[str, ...]]) -> Section:
    """Each string on two lines under as many headings: its ends, and below them what is measured along it."""
    ends = (SIDE_WIDTH / 2 - 4, SIDE_WIDTH, SIDE_WIDTH / 3, 0.7 * SIDE_WIDTH, SIDE_WIDTH)
    downs = (0.0, 0.0, 1.0, 1.0, 1.0)

    def draw(page: Canvas, left: float, top: float, _width: float) -> None:
        page.setFont(FACE, 9)
        for name, end, down in zip(names, ends, downs, strict=True):
            page.drawRightString(left + end, top - 9 - 10 * down, name)
        for number, line in enumerate(lines):
            for cell, face, size, end, down in zip(line, _FACES, _SIZES, ends, downs, strict=True):
                page.setFont(face, size)
                page.drawRightString(left + end, top - 20 - _PITCH - _STRING * number - _PITCH * down, cell)

    return Section(25 + _STRING * len(lines), draw)


def _lines(bed: Bed, grid: Grid, turn: Turn, row: Row, units: Units) -> list[tuple[str, ...]]:
    """The lines of a row, a stretch each; a string that spans several is named once."""
    lines, before = [], None
    for one in _stretches(grid, row):
        string = string_of(bed, turn, row.offset, (one.first, one.last))
        ends = [_where(turn.place(at, row.offset), units) if string != before else "" for at in string]
        along = (tape(at - string[0], units).number for at in (one.first, one.last))
        lines.append((*ends, *along, str(one.count)))
        before = string
    return lines


def _stretches(grid: Grid, row: Row) -> list[_Stretch]:
    """The plants of a row, parted where at least one place is missing."""
    found: list[_Stretch] = []
    for run in row.runs:
        if found and run.first - found[-1].last < max(2 * grid.in_row, grid.cell + 1):
            before = found.pop()
            found.append(_Stretch(before.first, run.last, before.count + run.count))
        else:
            found.append(_Stretch(run.first, run.last, run.count))
    return found


def _where(place: Point, units: Units) -> str:
    return f"{tape(place[0], units).number} · {short(place[1], units)}"
