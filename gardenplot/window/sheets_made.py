"""Sheets for the window: at once where they are few, else with their progress in sight."""

from collections.abc import Callable
from datetime import date

from attrs import frozen
from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Work
from gardenplot.plan import Plan
from gardenplot.sheets.bed_sheet import bed_sheets
from gardenplot.sheets.changed_sheet import changed_sheet
from gardenplot.sheets.dates_sheet import dates_sheet
from gardenplot.sheets.door_card import card_for, door_cards
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.sheets.shopping_sheet import shopping_sheet
from gardenplot.window.long_work import carried_out
from gardenplot.words import _

FEW_BEDS = 6
"""So many beds are laid out on paper in less than a tenth of a second."""
FEW_PLANTINGS = 100
"""The dates of so many plantings are, too."""


class StoppedError(GardenplotError):
    """The grower stopped it; nothing was done."""


@frozen(eq=False)
class SheetKind:
    """What is printed: its title, the name of its file, what to beware of in printing it, and what makes it."""

    title: str
    file: str
    caution: str
    make: Callable[[Plan, Paper, str, QWidget], Sheets]
    first: Callable[[Sheets], int]


def bed_kind(bed: str | None) -> SheetKind:
    """Bed sheets, opened at the page of a bed."""
    return SheetKind(
        _("Bed sheets: {name}"),
        _("{name} bed sheets.pdf"),
        _("Print at 100 %, not fitted to the page, and measure the bar."),
        made_sheets,
        lambda sheets: sheets.first_page.get(bed or "", 0),
    )


def dates_kind() -> SheetKind:
    """The dates by week."""
    return SheetKind(
        _("Dates by week: {name}"),
        _("{name} dates.pdf"),
        _("What came about is ticked already."),
        _dates,
        lambda _one: 0,
    )


def list_kind() -> SheetKind:
    """What to buy and carry."""
    return SheetKind(
        _("Shopping list: {name}"),
        _("{name} shopping list.pdf"),
        _("What is in store already is ticked."),
        _list,
        lambda _one: 0,
    )


def changed_kind(before: Plan) -> SheetKind:
    """Only the stakes that are not where an earlier plan had them."""

    def make(plan: Plan, paper: Paper, name: str, _parent: QWidget) -> Sheets:
        return changed_sheet(before, plan, paper, name=name, printed=date.today())

    return SheetKind(
        _("What changed: {name}"),
        _("{name} what changed.pdf"),
        _("Only what moved since the plan was saved last."),
        make,
        lambda _one: 0,
    )


def card_kind(day: date | None) -> SheetKind:
    """Door cards, opened at the week of a day."""
    return SheetKind(
        _("Door cards: {name}"),
        _("{name} door cards.pdf"),
        _("A page for each week: hang it where the covers are put on."),
        _cards,
        lambda cards: card_for(cards, day),
    )


def made_sheets(plan: Plan, paper: Paper, name: str, parent: QWidget) -> Sheets:
    """The bed sheets of a plan as of today; raises StoppedError, or PlanError for a plan without beds."""
    words = _("Laying out the bed sheets …")
    return _made(words, bed_sheets, (plan, paper, name, parent), at_once=len(plan.beds) <= FEW_BEDS)


def _dates(plan: Plan, paper: Paper, name: str, parent: QWidget) -> Sheets:
    words = _("Laying out the dates …")
    return _made(words, dates_sheet, (plan, paper, name, parent), at_once=len(plan.plantings) <= FEW_PLANTINGS)


def _list(plan: Plan, paper: Paper, name: str, parent: QWidget) -> Sheets:
    words = _("Laying out the list …")
    return _made(words, shopping_sheet, (plan, paper, name, parent), at_once=len(plan.plantings) <= FEW_PLANTINGS)


def _cards(plan: Plan, paper: Paper, name: str, _parent: QWidget) -> Sheets:
    """Two years of cards, which is the most there are, are there at once."""
    return door_cards(plan, paper, name=name, printed=date.today())


def _made(words: str, make: Callable[..., Sheets], of: tuple[Plan, Paper, str, QWidget], *, at_once: bool) -> Sheets:
    (plan, paper, name, parent), today = of, date.today()
    if at_once:
        return make(plan, paper, name=name, printed=today)
    work = Work(make.__module__, make.__name__, (plan, paper), {"name": name, "printed": today})
    sheets = carried_out(words, work, parent)
    if not isinstance(sheets, Sheets):
        raise StoppedError(_("stopped"))
    return sheets
