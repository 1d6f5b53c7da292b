"""Which kind of file a name asks for, and the module that makes it, loaded late: Qt, ezdxf and icalendar are slow."""

from collections.abc import Callable
from datetime import UTC, datetime
from importlib import import_module
from pathlib import Path

from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.words import _

_MODULES = {
    ".png": "gardenplot.window.picture",
    ".svg": "gardenplot.exports.svg",
    ".dxf": "gardenplot.exports.dxf",
    ".csv": "gardenplot.exports.places",
}
CALENDAR = "gardenplot.exports.calendar"
"""The module whose `written` makes calendar files."""


def module_for(path: Path) -> str:
    """The module that makes files of that name's kind; raises FileError for a kind that there is not."""
    module = _MODULES.get(path.suffix.lower())
    if module is None:
        raise FileError(_("{path}: the name must end in .png, .svg, .dxf or .csv").format(path=path))
    return module


def writer_for(path: Path) -> Callable[[Plan], bytes]:
    """What makes a file of that name's kind from a plan; raises FileError for a kind that there is not."""
    made: Callable[[Plan], bytes] = import_module(module_for(path)).drawn
    return made


def calendar_file(plan: Plan, name: str) -> bytes:
    """The dates of a plan as a calendar file, as of now; raises PlanError where no day is known."""
    made: bytes = import_module(CALENDAR).written(plan, name=name, made=datetime.now(UTC))
    return made
