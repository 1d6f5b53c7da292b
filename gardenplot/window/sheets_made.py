"""Bed sheets for the window: at once where there are few, else with their progress in sight."""

from datetime import date

from PySide6.QtWidgets import QWidget

from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Work
from gardenplot.plan import Plan
from gardenplot.sheets.bed_sheet import BedSheets, bed_sheets
from gardenplot.sheets.paper import Paper
from gardenplot.window.long_work import carried_out
from gardenplot.words import _

FEW_BEDS = 6
"""So many beds are laid out on paper in less than a tenth of a second."""


class StoppedError(GardenplotError):
    """The grower stopped it; nothing was done."""


def made_sheets(plan: Plan, paper: Paper, name: str, parent: QWidget) -> BedSheets:
    """The bed sheets of a plan as of today; raises StoppedError, or PlanError for a plan without beds."""
    today = date.today()
    if len(plan.beds) <= FEW_BEDS:
        return bed_sheets(plan, paper, name=name, printed=today)
    work = Work(bed_sheets.__module__, bed_sheets.__name__, (plan, paper), {"name": name, "printed": today})
    sheets = carried_out(_("Laying out the bed sheets …"), work, parent)
    if not isinstance(sheets, BedSheets):
        raise StoppedError(_("stopped"))
    return sheets
