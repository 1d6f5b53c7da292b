"""What the window loads late, since paper is slow to load and seldom wanted at once."""

from importlib import import_module

from PySide6.QtWidgets import QWidget

from gardenplot.plan import Plan


def preview_sheets(plan: Plan, name: str, bed: str | None, parent: QWidget) -> None:
    """Show the bed sheets in a dialog, at the sheet of a bed."""
    import_module("gardenplot.window.preview").preview(plan, name, bed, parent)
