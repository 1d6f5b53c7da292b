"""The sheets of one kind, as tests ask for them."""

from datetime import date

from gardenplot.plan import Plan
from gardenplot.sheets.choices import USUAL, Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper, Sheets


def bed_sheets(plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None) -> Sheets:
    """The bed sheets of a plan."""
    return made(plan, paper, Kind.BEDS, name=name, day=printed)


def dates_sheet(plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None) -> Sheets:
    """The dates of a plan by week."""
    return made(plan, paper, Kind.DATES, name=name, day=printed)


def shopping_sheet(plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None) -> Sheets:
    """What to buy and carry for a plan."""
    return made(plan, paper, Kind.LIST, name=name, day=printed)


def door_cards(plan: Plan, paper: Paper, *, name: str = "", printed: date | None = None) -> Sheets:
    """The door cards of a plan."""
    return made(plan, paper, Kind.CARDS, name=name, day=printed)


def changed_sheet(before: Plan, after: Plan, paper: Paper, *, name: str = "", printed: date | None = None) -> Sheets:
    """What changed from one plan to another."""
    return made(after, paper, Kind.CHANGED, Choices(before=before), name=name, day=printed)


def made(
    plan: Plan, paper: Paper, kind: Kind, choices: Choices = USUAL, *, name: str = "", day: date | None = None
) -> Sheets:
    """The sheets of one kind."""
    return printed(plan, paper, [kind], choices=choices, name=name, day=day)
