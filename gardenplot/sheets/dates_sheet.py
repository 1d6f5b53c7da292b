"""The dates sheet: what is to be done by week, a line a job with a box to tick, upright, in black."""

from datetime import date
from io import BytesIO

from attrs import frozen
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.date_list import DateRow, Week, by_week
from gardenplot.drawing.days import short_day
from gardenplot.drawing.progress import Told, untold
from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.sheets.list_page import draw_box, draw_fitted, draw_list_head, list_canvas, list_head, list_room
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, Paper, Sheets
from gardenplot.words import _

_WEEK, _ROW = 27.0, 21.0
"""Points of height of a week's heading and of a job."""
_BOX = 12.0
_WEEKDAY, _DAY = 30.0, 62.0
"""Points of width of "Wed" and of "31 May"."""
_SHARES = (0.2, 0.29, 0.3, 0.21)
"""What job, name, number and bed take of the width that is left."""
_GREY = 0.93
_CAUTION = _(
    "The seed packet and the local extension service come before these dates; frost dates are odds, no forecast."
)


@frozen
class _Part:
    """A week, or as much of it as a page has room for."""

    week: Week
    rows: tuple[DateRow, ...]
    continued: bool

    @property
    def height(self) -> float:
        return _WEEK + _ROW * len(self.rows)


def dates_sheet(
    plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None, told: Told = untold
) -> Sheets:
    """The dates of a plan by week; the same plan, paper and day give the same bytes.

    Raises PlanError where no day is known.
    """
    pages = _pages(by_week(plan), list_room(paper))
    if not pages:
        raise PlanError(_("no day is known in the plan, so there is no dates sheet"))
    content = BytesIO()
    page = list_canvas(content, paper, _("Dates: {name}").format(name=name or plan.place.name))
    head = list_head(plan, _("Dates by week"), name, printed, _CAUTION, len(pages))
    for number, parts in enumerate(pages):
        told(number, len(pages))
        y = draw_list_head(page, head)
        for part in parts:
            y = _draw_part(page, part, y)
        page.showPage()
    page.save()
    return Sheets(content.getvalue(), {})


def _pages(weeks: tuple[Week, ...], room: float) -> list[list[_Part]]:
    """Weeks on pages; a week is kept whole where a page can hold it and is not begun in the last lines of one."""
    pages: list[list[_Part]] = []
    left = 0.0
    for week in weeks:
        rows, continued = week.rows, False
        while rows:
            whole = _WEEK + _ROW * len(rows)
            if left < min(whole, room) and (whole <= room or left < room / 2):
                pages.append([])
                left = room
            taken = int((left - _WEEK) // _ROW)
            part = _Part(week, rows[:taken], continued)
            pages[-1].append(part)
            left -= part.height
            rows, continued = rows[taken:], True
    return pages


def _draw_part(page: Canvas, part: _Part, top: float) -> float:
    """Draw a week with its jobs; gives the y in points below it."""
    right = page._pagesize[0] - MARGIN
    name = part.week.name + (_(", continued") if part.continued else "")
    page.setFont(BOLD, 14)
    page.drawString(MARGIN, top - _WEEK + 7, name)
    page.setFont(FACE, 12)
    page.drawRightString(right, top - _WEEK + 7, part.week.days)
    page.setLineWidth(0.35 * mm)
    page.line(MARGIN, top - _WEEK + 1, right, top - _WEEK + 1)
    y = top - _WEEK
    for number, row in enumerate(part.rows):
        if number % 2:
            page.setFillGray(_GREY)
            page.rect(MARGIN, y - _ROW, right - MARGIN, _ROW, stroke=0, fill=1)
            page.setFillGray(0)
        _draw_row(page, row, y, right)
        y -= _ROW
    return y


def _draw_row(page: Canvas, row: DateRow, top: float, right: float) -> None:
    base = top - _ROW / 2 - 4
    draw_box(page, MARGIN + 2, top - _ROW / 2, _BOX, ticked=row.done)
    left = MARGIN + _BOX + 10
    page.setFont(FACE, 11)
    page.drawString(left, base, f"{row.day:%a}")
    page.setFont(BOLD, 14)
    page.drawString(left + _WEEKDAY, base, short_day(row.day))
    left += _WEEKDAY + _DAY
    spare = right - left
    cells = ((row.what, FACE), (row.name, BOLD), (row.amount, FACE), (row.bed_name, FACE))
    for share, (words, face) in zip(_SHARES, cells, strict=True):
        draw_fitted(page, words, (left, base), share * spare - 6, face, 11)
        left += share * spare
