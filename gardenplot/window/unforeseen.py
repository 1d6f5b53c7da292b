"""The unforeseen: one hook that saves the plan beside its file first, then shows what happened in words to copy."""

import sys
import traceback
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QDir
from PySide6.QtWidgets import QMessageBox

from gardenplot import __version__
from gardenplot.errors import FileError
from gardenplot.plan.file import SUFFIX, file_name, write_plan
from gardenplot.window.main import MainWindow
from gardenplot.words import _


def watch(window: MainWindow) -> None:
    """From now on nothing unforeseen ends the program without a word."""

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        sys.__excepthook__(kind, error, trace)
        if issubclass(kind, KeyboardInterrupt):
            return
        _tell(window, report(kind, error, trace), rescued(window))

    sys.excepthook = hook


def rescued(window: MainWindow) -> Path | None:
    """Save the plan beside its file, or in the home folder; None where even that fails."""
    path = window.document.path or Path(QDir.homePath()) / file_name(window.document.name)
    beside = path.with_name(f"{path.stem}-rescued{SUFFIX}")
    try:
        write_plan(beside, window.document.plan)
    except FileError:
        return None
    return beside


def report(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> str:
    """What happened, without the folders of this machine."""
    head = f"gardenplot {__version__}, Python {sys.version.split()[0]}, {sys.platform}"
    frames = (f"  {Path(one.filename).name}:{one.lineno} {one.name}" for one in traceback.extract_tb(trace))
    return "\n".join([head, *frames, f"{kind.__name__}: {str(error)[:500]}"])


def _tell(window: MainWindow, words: str, saved: Path | None) -> None:
    box = QMessageBox(QMessageBox.Icon.Warning, _("Something went wrong"), "", QMessageBox.StandardButton.Ok, window)
    kept = _("The plan was saved as {path}.").format(path=saved) if saved else _("The plan could not be saved aside.")
    box.setText(_("That was not meant to happen; the program goes on where it can.") + " " + kept)
    box.setDetailedText(words)
    box.exec()
