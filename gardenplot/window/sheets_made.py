"""Sheets for the window: at once where they are few, else with their progress in sight."""

from datetime import date

from PySide6.QtCore import QEventLoop
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Work
from gardenplot.plan import Plan
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper, Sheets
from gardenplot.window.long_work import carried_out
from gardenplot.window.prints import Print
from gardenplot.words import _

FEW_BEDS = 6
"""All sheets of so many beds are laid out in a few tenths of a second, and in less than one between two beds."""
FEW_PLANTINGS = 100
"""The dates of so many plantings are, too."""


class StoppedError(GardenplotError):
    """The grower stopped it; nothing was done."""


def _lives_on(_done: int, _parts: int) -> None:
    """Let the window paint itself between two parts, and keep what is pressed and clicked for afterwards."""
    QApplication.processEvents(QEventLoop.ProcessEventsFlag.ExcludeUserInputEvents)


def made_sheets(plan: Plan, paper: Paper, name: str, asked: Print, parent: QWidget) -> Sheets:
    """The sheets of a plan as of today; raises StoppedError, or PlanError where there is nothing to print."""
    today = date.today()
    if len(plan.beds) <= FEW_BEDS and len(plan.plantings) <= FEW_PLANTINGS:
        return printed(plan, paper, asked.kinds, choices=asked.choices, name=name, day=today, told=_lives_on)
    named = {"choices": asked.choices, "name": name, "day": today}
    work = Work(printed.__module__, printed.__name__, (plan, paper, asked.kinds), named)
    sheets = carried_out(_("Laying out the sheets …"), work, parent)
    if not isinstance(sheets, Sheets):
        raise StoppedError(_("stopped"))
    return sheets
