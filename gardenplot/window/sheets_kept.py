"""Sheets kept as files: all in one, or each kind in a file of its own."""

from collections.abc import Iterable
from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.file import file_name, write_whole
from gardenplot.sheets.paper import Paper
from gardenplot.window.prints import Print
from gardenplot.window.questions import warn
from gardenplot.window.sheets_made import StoppedError, made_sheets
from gardenplot.words import _


def keep_pdf(pdf: bytes, proposed: str, parent: QWidget) -> Path | None:
    """Ask for a name and keep a PDF under it; where it was kept, None where it was not. What hinders that is told."""
    name, _kind = QFileDialog.getSaveFileName(parent, _("Keep as PDF"), proposed, "PDF (*.pdf)")
    if not name:
        return None
    try:
        write_whole(Path(name), pdf)
    except FileError as error:
        warn(parent, _("Keep as PDF"), str(error))
        return None
    return Path(name)


def keep_one_by_one(plan: Plan, paper: Paper, name: str, prints: Iterable[Print], parent: QWidget) -> None:
    """Ask for a folder and keep each print in a file of its own there; what hinders that is told."""
    title = _("Keep one by one")
    folder = QFileDialog.getExistingDirectory(parent, title)
    if not folder:
        return
    try:
        for one in prints:
            write_whole(
                Path(folder) / f"{file_name(name)} {one.file}", made_sheets(plan, paper, name, one, parent).pdf
            )
    except StoppedError:
        return
    except FileError as error:
        warn(parent, title, str(error))
