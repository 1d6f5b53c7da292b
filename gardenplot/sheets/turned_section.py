"""Turned grids in the side column: where the string of each row meets the bed's edges, and the plants along it."""

from itertools import accumulate, pairwise

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.turned_words import angle_words
from gardenplot.layout import Grid, Layout, Row
from gardenplot.layout.outline import Point
from gardenplot.layout.turn import Turn
from gardenplot.layout.turned import string_of
from gardenplot.plan import Bed
from gardenplot.sheets.page_parts import SIDE_WIDTH
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.sheets.section import Section, sentence, short
from gardenplot.units import Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _

_FACES = (BOLD, BOLD, BOLD, BOLD, FACE)
_SIZES = (12.0, 11.0, 10.0, 9.0, 8.5, 8.0)
_PITCH = 15.0


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
    if apart and max(apart) - min(apart) <= 1:
        words += ", " + _("{between} apart").format(between=offset(min(apart), units))
    unit = offset(0, units).unit or _("inches")
    strings = _("strings: tape · {unit} from the left; plants along them").format(unit=unit)
    return [sentence(words, 9), sentence(strings, 9)]


def turned_tables(bed: Bed, layout: Layout, turn: Turn, units: Units, most: int) -> list[Section]:
    """Both ends of each string, the first and the last plant along it, and the plants; a table for so many lines."""
    names = (_("string from"), _("to"), _("first"), _("last"), _("plants"))
    lines = [line for row in layout.rows for line in _lines(bed, layout.grid, turn, row, units)]
    return [_table(names, lines[at : at + most]) for at in range(0, len(lines), most)]


def _table(names: tuple[str, ...], lines: list[tuple[str, ...]]) -> Section:
    """Lines under their headings, in columns as wide as they need, the figures as large as there is room for."""
    columns = list(zip(names, zip(*lines, strict=True), _FACES, strict=True))
    for size in _SIZES:
        needs = [
            max(pdfmetrics.stringWidth(name, FACE, 9), *(pdfmetrics.stringWidth(cell, face, size) for cell in cells))
            for name, cells, face in columns
        ]
        gap = (SIDE_WIDTH - sum(needs)) / (len(needs) - 1)
        if gap >= size / 2:
            break
    ends = [need + gap * number for number, need in enumerate(accumulate(needs))]

    def draw(page: Canvas, left: float, top: float, _width: float) -> None:
        page.setFont(FACE, 9)
        for end, name in zip(ends, names, strict=True):
            page.drawRightString(left + end, top - 10, name)
        for number, line in enumerate(lines, 1):
            for end, cell, face in zip(ends, line, _FACES, strict=True):
                page.setFont(face, size)
                page.drawRightString(left + end, top - 11 - _PITCH * number, cell)

    return Section(15 + _PITCH * len(lines), draw)


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
