"""Sheets for the window: at once where they are few, else with their progress in sight."""

from datetime import date

from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Work
from gardenplot.plan import Plan
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.window.long_work import carried_out
from gardenplot.window.prints import Print
from gardenplot.words import _

FEW_BEDS = 6
"""The bed sheets of so many beds are laid out in less than a tenth of a second, all their sheets in a few tenths."""
FEW_PLANTINGS = 100
"""The dates of so many plantings are, too."""
FEW_SUMS = 20
"""The workings of so many plantings are."""
_LARGE_SCALE = 10
"""A drawing that is larger than 1 to so many may have hundreds of pages."""


class StoppedError(GardenplotError):
    """The grower stopped it; nothing was done."""


def made_sheets(plan: Plan, paper: Paper, name: str, asked: Print, parent: QWidget) -> Sheets:
    """The sheets of a plan as of today; raises StoppedError, or PlanError where there is nothing to print."""
    today = date.today()
    is_large = Kind.DRAWING in asked.kinds and asked.choices.scale is not None and asked.choices.scale < _LARGE_SCALE
    is_large = is_large or (Kind.WORKINGS in asked.kinds and len(plan.plantings) > FEW_SUMS)
    if len(plan.beds) <= FEW_BEDS and len(plan.plantings) <= FEW_PLANTINGS and not is_large:
        return printed(plan, paper, asked.kinds, choices=asked.choices, name=name, day=today)
    named = {"choices": asked.choices, "name": name, "day": today}
    work = Work(printed.__module__, printed.__name__, (plan, paper, asked.kinds), named)
    sheets = carried_out(_("Laying out the sheets …"), work, parent)
    if not isinstance(sheets, Sheets):
        raise StoppedError(_("stopped"))
    return sheets
