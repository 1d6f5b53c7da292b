"""Saving the plan from the window: under which name, and what to do where somebody else has written to its file."""

from pathlib import Path

from PySide6.QtCore import SignalInstance
from PySide6.QtWidgets import QFileDialog, QWidget

from gardenplot.errors import ChangedError, GardenplotError
from gardenplot.plan.disk_words import why
from gardenplot.plan.file import SUFFIX, file_name
from gardenplot.plan.saving import Saved, free_name
from gardenplot.window.document import Document
from gardenplot.window.questions import choose, warn
from gardenplot.window.recent import remember
from gardenplot.words import _


class Writing:
    """From the document to the disk; what came of it is told by a signal, every failure by a dialog."""

    def __init__(self, document: Document, window: QWidget, told: SignalInstance) -> None:
        self._document, self._window, self._told = document, window, told

    def save(self) -> bool:
        """Save under the document's name, asking for one if it has none."""
        return self.write(self._document.path) if self._document.path else self.save_as()

    def save_as(self) -> bool:
        """Ask for a name and save."""
        proposed = str(Path(folder_of(self._document)) / f"{file_name(self._document.name)}{SUFFIX}")
        name, _kind = QFileDialog.getSaveFileName(self._window, _("Save plan as"), proposed, kinds())
        if not name:
            return False
        path = Path(name)
        return self.write(path if path.suffix else path.with_suffix(SUFFIX))

    def write(self, path: Path, *, over: bool = False) -> bool:
        """Write the plan to a file, and tell what came of it."""
        try:
            saved = self._document.save(path, over=over)
        except ChangedError:
            return self._ask_of_both(path)
        except GardenplotError as error:
            warn(self._window, _("Save plan"), str(error))
            return False
        remember(path)
        self._tell_saved(path, saved)
        return True

    def _tell_saved(self, path: Path, saved: Saved) -> None:
        said = [_("saved as {path}").format(path=path)]
        if saved.not_kept:
            said.append(_("earlier versions cannot be kept: {why}").format(why=saved.not_kept))
        self._told.emit("; ".join(said))
        if saved.aside is not None:
            words = _("Somebody else saved {file} in the very same moment. Their plan is kept beside it, as {aside}.")
            warn(self._window, _("Save plan"), words.format(file=path.name, aside=saved.aside.name))

    def _ask_of_both(self, path: Path) -> bool:
        """Ask what to do where somebody else has written to the file; nothing is lost either way."""
        words = _(
            "{file} was changed since it was opened here: by another window, by a service that keeps folders alike, "
            "or by somebody else. Nothing was written yet.\n\nSave yours beside it, under a name of its own, or over "
            "it? If it is saved over, theirs can be brought back by File ▸ Earlier versions."
        )
        choices = (_("Save beside it"), _("Save over it"))
        match choose(self._window, _("Save plan"), words.format(file=path.name), choices):
            case 0:
                return self._write_beside(path)
            case 1:
                return self.write(path, over=True)
            case _:
                return False

    def _write_beside(self, path: Path) -> bool:
        try:
            free = free_name(path)
        except OSError as error:
            warn(
                self._window, _("Save plan"), _("{path}: cannot be written: {why}").format(path=path, why=why(error))
            )
            return False
        written = self.write(free)
        if not written and free.stat().st_size == 0:
            free.unlink()
        return written


def folder_of(document: Document) -> str:
    """The folder in which a dialog of files begins."""
    return str(document.path.parent) if document.path else str(Path.home())


def kinds() -> str:
    """The kinds of file that such a dialog shows."""
    return _("Plans (*{suffix})").format(suffix=SUFFIX)
