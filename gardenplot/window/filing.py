"""Opening and saving: dialogs, recent files, and the question about unsaved changes."""

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.plan.file import SUFFIX, file_name
from gardenplot.window.document import Document
from gardenplot.window.recent import remember
from gardenplot.words import _


class Filing(QObject):
    """Between the document and the disk; every failure is told in a dialog and changes nothing."""

    told = Signal(str)

    def __init__(self, document: Document, window: QWidget) -> None:
        super().__init__(window)
        self._document, self._window = document, window

    def open_asked(self) -> None:
        """Ask for a file and open it."""
        if not self.may_leave():
            return
        name, _kind = QFileDialog.getOpenFileName(self._window, _("Open plan"), self._folder(), self._kinds())
        if name:
            self.open(Path(name))

    def open(self, path: Path, *, example: bool = False) -> bool:
        """Open a file; an example is opened as a plan of its own, so that saving asks for a name."""
        try:
            problems = self._document.open(path, example=example)
        except GardenplotError as error:
            QMessageBox.warning(self._window, _("Open plan"), str(error))
            return False
        if not example:
            remember(path)
        if problems:
            self.told.emit("; ".join(problems[:3]))
        return True

    def open_recent(self, path: Path) -> None:
        """Open one of the recent files, if the plan that is open may be left."""
        if self.may_leave():
            self.open(path)

    def open_example(self, path: Path) -> None:
        """Open an example, if the plan that is open may be left."""
        if self.may_leave():
            self.open(path, example=True)

    def save(self) -> bool:
        """Save under the document's name, asking for one if it has none."""
        return self._write(self._document.path) if self._document.path else self.save_as()

    def save_as(self) -> bool:
        """Ask for a name and save."""
        proposed = str(Path(self._folder()) / f"{file_name(self._document.name)}{SUFFIX}")
        name, _kind = QFileDialog.getSaveFileName(self._window, _("Save plan as"), proposed, self._kinds())
        if not name:
            return False
        path = Path(name)
        return self._write(path if path.suffix else path.with_suffix(SUFFIX))

    def may_leave(self) -> bool:
        """Whether the plan may be left: it is saved, or the grower says what to do with the changes."""
        if self._document.is_saved:
            return True
        buttons = QMessageBox.StandardButton
        answer = QMessageBox.question(
            self._window,
            _("Unsaved changes"),
            _("{name} has changes that are not saved.").format(name=self._document.name),
            buttons.Save | buttons.Discard | buttons.Cancel,
            buttons.Save,
        )
        if answer == buttons.Save:
            return self.save()
        return answer == buttons.Discard

    def _write(self, path: Path) -> bool:
        try:
            self._document.save(path)
        except GardenplotError as error:
            QMessageBox.warning(self._window, _("Save plan"), str(error))
            return False
        remember(path)
        self.told.emit(_("saved as {path}").format(path=path))
        return True

    def _folder(self) -> str:
        return str(self._document.path.parent) if self._document.path else str(Path.home())

    def _kinds(self) -> str:
        return _("Plans (*{suffix})").format(suffix=SUFFIX)
