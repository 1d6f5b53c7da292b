"""The drawing as a file of any kind, made with its progress in sight."""

from pathlib import Path

from PySide6.QtWidgets import QWidget

from gardenplot.exports.apart import Work
from gardenplot.exports.kinds import module_for
from gardenplot.plan import Plan
from gardenplot.window.long_work import carried_out
from gardenplot.words import _


def made_drawing(plan: Plan, path: Path, parent: QWidget) -> bytes | None:
    """What a file of that name holds, None where it was stopped; raises GardenplotError."""
    made = carried_out(_("Drawing as a file …"), Work(module_for(path), "drawn", (plan,)), parent)
    return made if isinstance(made, bytes) else None
