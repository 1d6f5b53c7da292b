"""The kinds of sheet that there are, and the PDF of one or of several of them."""

from collections.abc import Callable, Sequence
from datetime import date
from functools import partial

from attrs import evolve

from gardenplot.drawing.progress import Told, untold
from gardenplot.errors import PlanError
from gardenplot.plan import Plan
from gardenplot.sheets.bed_sheet import add_bed_sheets
from gardenplot.sheets.book import About, Book, NothingToPrintError, about
from gardenplot.sheets.changed_sheet import add_changed
from gardenplot.sheets.choices import NAMES, USUAL, Choices, Kind
from gardenplot.sheets.count_sheet import add_counts
from gardenplot.sheets.dates_sheet import add_dates
from gardenplot.sheets.door_card import add_door_cards
from gardenplot.sheets.drawing_pages import add_drawing
from gardenplot.sheets.label_sheet import add_labels
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.sheets.shopping_sheet import add_shopping_list
from gardenplot.sheets.sowing_sheet import add_sowing
from gardenplot.sheets.spacing_strips import add_strips
from gardenplot.sheets.workings_sheet import add_workings
from gardenplot.words import _

_PARTS = 100
"""Parts that each of several kinds counts for, however many it has of its own."""
Add = Callable[[Book, Plan, About, Choices, Told], None]
"""Adds the pages of a kind; raises NothingToPrintError where the plan has nothing of it."""


ADDED: dict[Kind, Add] = {
    Kind.BEDS: add_bed_sheets,
    Kind.DRAWING: add_drawing,
    Kind.CHANGED: add_changed,
    Kind.DATES: add_dates,
    Kind.LIST: add_shopping_list,
    Kind.CARDS: add_door_cards,
    Kind.STRIPS: add_strips,
    Kind.COUNTS: add_counts,
    Kind.SOWING: add_sowing,
    Kind.LABELS: add_labels,
    Kind.WORKINGS: add_workings,
}


def printed(
    plan: Plan, paper: Paper, kinds: Sequence[Kind], *, choices: Choices = USUAL, name: str = "",
    day: date | None = None, told: Told = untold,
) -> Sheets:  # fmt: skip
    """The sheets of a plan as one PDF; the same plan, paper, choices and day give the same bytes.

    A kind alone raises NothingToPrintError where there is nothing of it. Of several, those with nothing to print are
    left out, and a bookmark stands before each of the others; PlanError where nothing is left.
    """
    if not kinds:
        raise PlanError(_("nothing is chosen, so there is nothing to print"))
    said = about(plan, name, day)
    book = Book(paper, _title(kinds, said.plan_name))
    if len(kinds) == 1:
        ADDED[kinds[0]](book, plan, said, choices, told)
        return book.sheets()
    left_out: list[Kind] = []
    for number, kind in enumerate(kinds):
        book.chapter(NAMES[kind])
        try:
            ADDED[kind](book, plan, said, choices, partial(_part_told, told, number, len(kinds)))
        except NothingToPrintError:
            left_out.append(kind)
    if book.is_empty:
        raise PlanError(_("there is nothing to print in the plan yet"))
    return evolve(book.sheets(), left_out=tuple(left_out))


def _part_told(told: Told, number: int, kinds: int, done: int, of: int) -> None:
    """How far all kinds have come, when one of them has come so far."""
    told(number * _PARTS + done * _PARTS // max(1, of), kinds * _PARTS)


def _title(kinds: Sequence[Kind], plan_name: str) -> str:
    words = NAMES[kinds[0]] if len(kinds) == 1 else _("Sheets")
    return _("{sheets}: {name}").format(sheets=words, name=plan_name)
