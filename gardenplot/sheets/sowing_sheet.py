"""The sowing list: day by day what is sown in trays and in the beds, a box each and room for the day, in black."""

from reportlab.lib.units import mm
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.progress import Told, untold
from gardenplot.drawing.sowing_list import SowDay, SowRow, sow_days
from gardenplot.plan import Plan
from gardenplot.sheets.book import About, Book, NothingToPrintError
from gardenplot.sheets.choices import USUAL, Choices
from gardenplot.sheets.list_page import ListHead, draw_box, draw_fitted
from gardenplot.sheets.page_parts import MARGIN
from gardenplot.sheets.paper import BOLD, FACE, printable
from gardenplot.sheets.ticked_list import BOX, Part, add_list
from gardenplot.supplies.shopping import Asked
from gardenplot.words import _

_FIGURE, _WORD = 14, 12
_TITLE, _AMOUNT, _LINE, _SPARE = 26.0, 19.0, 16.0, 7.0
"""Points of height of the line of the name, of an amount below it, of the other lines, and below them."""
_LETTER, _NAME = 34.0, 160.0
"""Points of width of the letter and of the name."""
_ROOM = 128.0
"""Points of width of what is written in by hand."""
_CAUTION = _(
    "The seed packet and the local extension service come before these sums and dates. Treated seed is no food: "
    "gloves on, and keep its packet."
)


def add_sowing(book: Book, plan: Plan, said: About, choices: Choices = USUAL, told: Told = untold) -> None:
    """Add what is to be sown by day; raises NothingToPrintError where nothing is."""
    days = sow_days(plan, Asked(choices.beds, choices.first, choices.last))
    if not days:
        raise NothingToPrintError(_("nothing is to be sown, so there is no sowing list"))
    parts = (Part(_day(one), _week(one), one.rows, height_of=_height) for one in days)
    add_list(book, parts, _draw_row, ListHead(_("Sowing list"), said, _CAUTION), told)


def _day(one: SowDay) -> str:
    return _("No day yet") if one.day is None else day_words(one.day)


def _week(one: SowDay) -> str:
    """The week by ISO 8601, as the dates sheet has it."""
    return "" if one.day is None else _("week {number}").format(number=one.day.isocalendar().week)


def _title(row: SowRow) -> float:
    """The height in points of the name and the amount, which stand below each other where the name is long."""
    is_long = pdfmetrics.stringWidth(printable(row.name), BOLD, _FIGURE) > _NAME - 8
    return _TITLE + _AMOUNT if is_long else _TITLE


def _height(row: SowRow) -> float:
    return _title(row) + _LINE * max(1, len(row.more)) + _SPARE


def _draw_row(page: Canvas, row: SowRow, top: float, right: float) -> None:
    base, left, title = top - 19, MARGIN + BOX + 10, _title(row)
    draw_box(page, MARGIN + 2, base + 5, BOX, ticked=row.is_done)
    draw_fitted(page, row.letter, (left, base - 1), _LETTER - 8, BOLD, 17)
    left += _LETTER
    room = right - _ROOM - left - 8
    if title > _TITLE:
        draw_fitted(page, row.name, (left, base), room, BOLD, _FIGURE)
        draw_fitted(page, row.amount, (left, base - _AMOUNT), room, BOLD, _FIGURE)
    else:
        draw_fitted(page, row.name, (left, base), _NAME - 8, BOLD, _FIGURE)
        draw_fitted(page, row.amount, (left + _NAME, base), room - _NAME, BOLD, _FIGURE)
    _draw_room(page, _("sown on"), base, right, short_day(row.sown) if row.sown else "")
    _draw_room(page, _("cells") if row.in_trays else _("up on"), base - _LINE - 1, right, "")
    for number, words in enumerate(row.more):
        wide = right - left - (4 if number or title > _TITLE else _ROOM + 8)
        draw_fitted(page, words, (left, top - title - _LINE * number - 11), wide, FACE, _WORD)


def _draw_room(page: Canvas, words: str, base: float, right: float, known: str) -> None:
    """Room to write in what came about, or what is recorded of it."""
    start = right - _ROOM
    page.setFont(FACE, 10)
    page.drawString(start, base, words)
    start += pdfmetrics.stringWidth(words, FACE, 10) + 4
    page.setLineWidth(0.18 * mm)
    page.line(start, base - 2, right - 4, base - 2)
    if known:
        page.setFont(FACE, _FIGURE)
        page.drawString(start + 4, base, known)
