"""The dates sheet: what is to be done by week, a line a job with a box to tick, upright, in black."""

from collections.abc import Iterable

from attrs import frozen
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.date_list import DateRow, Job, by_week, job_words
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import looks
from gardenplot.drawing.needed_words import Needed, needed_for_orders
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.sayings import says
from gardenplot.findings import Kind, find_all
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, broken, fitted
from gardenplot.sheets.ticked_list import BOX, ROW, Part, add_list
from gardenplot.words import _

_WEEKDAY, _DAY = 30.0, 62.0
"""Points of width of "Wed" and of "31 May"."""
_SECOND = 14.0
"""Points of height of each further line in a row."""
_APART = 6.0
"""Points at least between two columns."""
_MOST = 3
"""A name or number has no more lines than this; what is longer is cut."""
_CLOSER = 0.88
"""Rows may be so much less high where no page is begun for the last of them."""
_CELLS_AT = BOX + 10 + _WEEKDAY + _DAY
"""Points from the left margin to where the cells begin."""
_SHARES, _FACES, _SIZE = (0.2, 0.27, 0.3, 0.23), (FACE, BOLD, FACE, FACE), 11
"""What job, name, number and bed take of the width that is left at first, their faces, and their size in points."""
_CAUTION = _(
    "The seed packet and the local extension service come before these dates; frost dates are odds, no forecast."
)


def add_dates(book: Book, plan: Plan, said: About, _choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the dates of a plan by week; raises NothingToPrintError where no day is known."""
    weeks = by_week(plan)
    if not weeks:
        raise NothingToPrintError(_("no day is known in the plan, so there is no dates sheet"))
    needed = needed_for_orders(plan)
    cells, frost = {row: _cells(row, needed) for week in weeks for row in week.rows}, _frost(plan)
    widths = _widths(cells.values(), book.upright()._pagesize[0] - 2 * MARGIN - _CELLS_AT)
    parts = [
        Part(
            week.name,
            " · ".join(part for part in (week.bench, week.days) if part),
            tuple(_broken(row, cells[row], widths, frost) for row in week.rows),
            height_of=_height_of,
        )
        for week in weeks
    ]

    def draw(page: Canvas, row: _Row, top: float, _right: float) -> None:
        _draw_row(page, row, top, widths)

    add_list(book, parts, draw, ListHead(_("Dates by week"), said, _CAUTION), told, closer=_CLOSER)


_Cells = tuple[tuple[str, ...], ...]
_Frost = dict[tuple[str, bool], str]


@frozen
class _Row:
    """A job with its cells in lines: what, of which planting, how many of what, and where; below them a warning."""

    job: DateRow
    cells: _Cells
    warning: tuple[str, ...] = ()


def _cells(row: DateRow, needed: dict[str, Needed]) -> _Cells:
    """The cells of a job; a harvest has the market days that it misses and what is ordered below its number."""
    found = needed.get(row.planting or "") if row.job is Job.READY else None
    amounts = (row.amount, row.missed, "" if found is None else found.ordered)
    return (row.what,), (row.name,), tuple(words for words in amounts if words), (row.bed_name,)


def _widths(rows: Iterable[_Cells], spare: float) -> list[float]:
    """The widths of the columns: their shares of so many points, of which those that need less give to the others."""
    wants = [
        max(pdfmetrics.stringWidth(words, face, _SIZE) for cells in column for words in (*cells, "")) + _APART
        for face, column in zip(_FACES, zip(*rows, strict=True), strict=True)
    ]
    has = [share * spare for share in _SHARES]
    more = [max(0.0, want - width) for want, width in zip(wants, has, strict=True)]
    less = [max(0.0, width - want) for want, width in zip(wants, has, strict=True)]
    moved = min(sum(more), sum(less))
    return [
        width + (moved * lack / sum(more) - moved * rest / sum(less) if moved else 0.0)
        for width, lack, rest in zip(has, more, less, strict=True)
    ]


def _frost(plan: Plan) -> _Frost:
    """How the day on which a planting goes in lies to the last freeze, and its last one to the first freeze: by its
    id and whether it is autumn, where that is a finding."""
    look = looks(plan)
    found = (one for one in find_all(plan) if one.kind in (Kind.FROST, Kind.FROST_NOTE, Kind.AUTUMN_FROST))
    return {(one.planting, one.kind is Kind.AUTUMN_FROST): says(plan, one, look) for one in found if one.planting}


def _broken(row: DateRow, cells: _Cells, widths: list[float], frost: _Frost) -> _Row:
    """A job; what lacks room goes on below, so that all of a column is of one size.

    Below the day in the ground it is said how that lies to the last freeze, below the first of the harvest how the
    last one lies to the first freeze.
    """
    goes_in = row.job is Job.SET_OUT or (row.job is Job.SOW and row.what != job_words(Job.SOW))
    warning = frost.get((row.planting or "", False), "") if goes_in and not row.done else ""
    if row.job is Job.READY:
        warning = frost.get((row.planting or "", True), "")
    return _Row(
        row,
        tuple(
            tuple(line for words in lines for line in _lines(words, face, width - _APART))
            for lines, width, face in zip(cells, widths, _FACES, strict=True)
        ),
        tuple(_lines(warning, FACE, sum(widths))) if warning else (),
    )


def _lines(words: str, face: str, room: float) -> list[str]:
    lines = broken(words, face, _SIZE, room)
    return (
        lines
        if len(lines) <= _MOST
        else [*lines[: _MOST - 1], fitted(" ".join(lines[_MOST - 1 :]), face, _SIZE, room)]
    )


def _height_of(row: _Row) -> float:
    return ROW + _SECOND * (max(1, *map(len, row.cells)) - 1 + len(row.warning))


def _draw_row(page: Canvas, whole: _Row, top: float, widths: list[float]) -> None:
    row = whole.job
    base = top - ROW / 2 - 4
    draw_box(page, MARGIN + 2, top - ROW / 2, BOX, ticked=row.done)
    left = MARGIN + BOX + 10
    page.setFont(FACE, _SIZE)
    page.drawString(left, base, f"{row.day:%a}")
    page.setFont(BOLD, 14)
    page.drawString(left + _WEEKDAY, base, short_day(row.day))
    left = MARGIN + _CELLS_AT
    for width, face, lines in zip(widths, _FACES, whole.cells, strict=True):
        page.setFont(face, _SIZE)
        for number, line in enumerate(lines):
            page.drawString(left, base - _SECOND * number, line)
        left += width
    below = max(1, *map(len, whole.cells))
    page.setFont(FACE, _SIZE)
    for number, line in enumerate(whole.warning, start=below):
        page.drawString(MARGIN + _CELLS_AT, base - _SECOND * number, line)
