"""The drawing as a file of any kind, and a calendar file, made with their progress in sight."""

from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtWidgets import QWidget

from gardenplot.exports.apart import Work
from gardenplot.exports.kinds import CALENDAR, calendar_file, module_for
from gardenplot.plan import Plan
from gardenplot.window.long_work import carried_out
from gardenplot.words import _

FEW_PLANTINGS = 50
"""The dates of so many plantings are written in a few tenths of a second."""


def made_drawing(plan: Plan, path: Path, parent: QWidget) -> bytes | None:
    """What a file of that name holds, None where it was stopped; raises GardenplotError."""
    made = carried_out(_("Drawing as a file …"), Work(module_for(path), "drawn", (plan,)), parent)
    return made if isinstance(made, bytes) else None


def made_calendar(plan: Plan, name: str, parent: QWidget) -> bytes | None:
    """The dates of a plan as a calendar file, None where it was stopped; raises PlanError where no day is known."""
    if len(plan.plantings) <= FEW_PLANTINGS:
        return calendar_file(plan, name)
    work = Work(CALENDAR, "written", (plan,), {"name": name, "made": datetime.now(UTC)})
    made = carried_out(_("Dates as a calendar file …"), work, parent)
    return made if isinstance(made, bytes) else None
