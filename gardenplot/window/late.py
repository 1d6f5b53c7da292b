"""What the window loads late, since it is slow to load and seldom wanted at once: paper, processes, pages."""

from datetime import date
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtWidgets import QWidget

from gardenplot.plan import Plan
from gardenplot.window.registry import Registry

if TYPE_CHECKING:
    from gardenplot.window.help_page import HelpPage


def preview_sheets(plan: Plan, name: str, bed: str | None, parent: QWidget) -> None:
    """Show the bed sheets in a dialog, at the sheet of a bed."""
    import_module("gardenplot.window.preview").preview(plan, name, bed, parent)


def preview_dates(plan: Plan, name: str, parent: QWidget) -> None:
    """Show the dates by week in a dialog; raises PlanError."""
    import_module("gardenplot.window.preview").preview_dates(plan, name, parent)


def preview_cards(plan: Plan, name: str, day: date | None, parent: QWidget) -> None:
    """Show the door cards in a dialog, at the week of a day; raises PlanError."""
    import_module("gardenplot.window.preview").preview_cards(plan, name, day, parent)


def made_drawing(plan: Plan, path: Path, parent: QWidget) -> bytes | None:
    """What a file of that name holds, None where making it was stopped; raises GardenplotError."""
    made = import_module("gardenplot.window.drawing_made").made_drawing(plan, path, parent)
    return cast(bytes | None, made)


def made_calendar(plan: Plan, name: str, parent: QWidget) -> bytes | None:
    """The dates as a calendar file, None where making it was stopped; raises PlanError."""
    made = import_module("gardenplot.window.drawing_made").made_calendar(plan, name, parent)
    return cast(bytes | None, made)


def help_page(registry: Registry, parent: QWidget) -> "HelpPage":
    """The help page, not shown yet."""
    return cast("HelpPage", import_module("gardenplot.window.help_page").HelpPage(registry, parent))


def change_keys(registry: Registry, parent: QWidget) -> None:
    """Show all actions with their keys in a dialog, to change them."""
    import_module("gardenplot.window.keys_page").KeysPage(registry, parent).exec()
