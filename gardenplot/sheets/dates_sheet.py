"""The dates sheet: what is to be done by week, a line a job with a box to tick, upright, in black."""

from attrs import frozen
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.date_list import DateRow, Job, by_week
from gardenplot.drawing.days import short_day
from gardenplot.drawing.needed_words import Needed, needed_for_orders
from gardenplot.drawing.progress import Told, untold
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE
from gardenplot.sheets.ticked_list import BOX, ROW, Part, add_list
from gardenplot.words import _

_WEEKDAY, _DAY = 30.0, 62.0
"""Points of width of "Wed" and of "31 May"."""
_SECOND = 14.0
"""Points of height of each further line in a row."""
_CLOSER = 0.88
"""Rows may be so much less high where no page is begun for the last of them."""
_SHARES = (0.2, 0.29, 0.3, 0.21)
"""What job, name, number and bed take of the width that is left."""
_CAUTION = _(
    "The seed packet and the local extension service come before these dates; frost dates are odds, no forecast."
)


def add_dates(book: Book, plan: Plan, said: About, _choices: Choices = USUAL, told: Told = untold) -> None:
    """Add the dates of a plan by week; raises NothingToPrintError where no day is known."""
    weeks = by_week(plan)
    if not weeks:
        raise NothingToPrintError(_("no day is known in the plan, so there is no dates sheet"))
    needed = needed_for_orders(plan)
    parts = [
        Part(
            week.name,
            " · ".join(part for part in (week.bench, week.days) if part),
            tuple(_Row(row, _more(row, needed)) for row in week.rows),
            height_of=_height_of,
        )
        for week in weeks
    ]
    add_list(book, parts, _draw_row, ListHead(_("Dates by week"), said, _CAUTION), told, closer=_CLOSER)


@frozen
class _Row:
    """A job and, where it is a harvest, the market days that it misses and what is ordered, a line each."""

    job: DateRow
    more: tuple[str, ...]


def _more(row: DateRow, needed: dict[str, Needed]) -> tuple[str, ...]:
    found = needed.get(row.planting or "") if row.job is Job.READY else None
    return tuple(words for words in (row.missed, "" if found is None else found.ordered) if words)


def _height_of(row: _Row) -> float:
    return ROW + _SECOND * len(row.more)


def _draw_row(page: Canvas, whole: _Row, top: float, right: float) -> None:
    row = whole.job
    base = top - ROW / 2 - 4
    draw_box(page, MARGIN + 2, top - ROW / 2, BOX, ticked=row.done)
    left = MARGIN + BOX + 10
    page.setFont(FACE, 11)
    page.drawString(left, base, f"{row.day:%a}")
    page.setFont(BOLD, 14)
    page.drawString(left + _WEEKDAY, base, short_day(row.day))
    left += _WEEKDAY + _DAY
    spare = right - left
    cells = ((row.what, FACE), (row.name, BOLD), (row.amount, FACE), (row.bed_name, FACE))
    for share, (words, face) in zip(_SHARES, cells, strict=True):
        draw_fitted(page, words, (left, base), share * spare - 6, face, 11)
        for number, more in enumerate(whole.more if words is row.amount else (), start=1):
            draw_fitted(page, more, (left, base - _SECOND * number), share * spare - 6, face, 11)
        left += share * spare
