"""Opening, leaving and looking back: dialogs, recent files, earlier versions, the question about unsaved changes."""

from pathlib import Path

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.plan import Plan
from gardenplot.plan.file import read_only
from gardenplot.window.document import Document
from gardenplot.window.late import show_versions
from gardenplot.window.own_folder import versions
from gardenplot.window.questions import ask_to_save, choose, warn
from gardenplot.window.read_aside import read_aside
from gardenplot.window.recent import remember
from gardenplot.window.writing import Writing, folder_of, kinds
from gardenplot.words import _


class Filing(QObject):
    """Between the document and the disk; every failure is told in a dialog and changes nothing."""

    told = Signal(str)

    def __init__(self, document: Document, window: QWidget) -> None:
        super().__init__(window)
        self._document, self._window = document, window
        self._writing = Writing(document, window, self.told)
        self._told_of: str | None = None
        app = QGuiApplication.instance()
        if isinstance(app, QGuiApplication):
            app.applicationStateChanged.connect(self._look_at_disk)

    def open_asked(self) -> None:
        """Ask for a file and open it."""
        if not self.may_leave():
            return
        name, _kind = QFileDialog.getOpenFileName(self._window, _("Open plan"), folder_of(self._document), kinds())
        if name:
            self.open(Path(name))

    def open(self, path: Path, *, example: bool = False) -> bool:
        """Open a file; an example is opened as a plan of its own, so that saving asks for a name."""
        try:
            found = read_aside(path, self._document.today(), self._window)
            if found is None:
                return False
            problems = self._document.open(path, example=example, found=found)
        except GardenplotError as error:
            self._tell_unread(path, str(error))
            return False
        if not example:
            remember(path)
            shut = read_only(path)
            problems = (
                (_("only to look at, or to save under another name: {why}").format(why=shut),) if shut else ()
            ) + problems
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
        return self._writing.save()

    def save_as(self) -> bool:
        """Ask for a name and save."""
        return self._writing.save_as()

    def may_leave(self) -> bool:
        """Whether the plan may be left: it is saved, or the grower says what to do with the changes."""
        if self._document.is_saved:
            return True
        buttons, words = QMessageBox.StandardButton, _("{name} has changes that are not saved.")
        answer = ask_to_save(self._window, _("Unsaved changes"), words.format(name=self._document.name))
        if answer == buttons.Save:
            return self.save()
        return answer == buttons.Discard

    def versions_asked(self) -> None:
        """Show the earlier versions of the plan's file; one may be brought back, or opened as a plan of its own."""
        path = self._document.path
        if path is None or not versions().of(path):
            self.told.emit(_("No earlier version is kept yet: each time the plan is saved, one is."))
            return
        self._open_own(show_versions(self._document, path, self._window))

    def _tell_unread(self, path: Path, says: str) -> None:
        """Say why a file cannot be read, and offer its earlier versions where there are any."""
        title, kept = _("Open plan"), versions().of(path)
        if not kept:
            warn(self._window, title, says)
            return
        offer = _("{says}\n\nEarlier versions of this file are kept.").format(says=says)
        if choose(self._window, title, offer, (_("Show earlier versions"),)) == 0:
            self._open_own(show_versions(self._document, path, self._window, damaged=True))

    def _open_own(self, plan: Plan | None) -> None:
        """Open a plan without a file, if the one that is open may be left."""
        if plan is not None and self.may_leave():
            self._document.start(plan, kept=False)

    def _look_at_disk(self, state: Qt.ApplicationState) -> None:
        """Say so where somebody else has written to the file by the time the program is turned to again."""
        document = self._document
        if state == Qt.ApplicationState.ApplicationActive and document.changed_on_disk:
            if self._told_of != document.seen:
                words = _("{file} was changed by somebody else; saving will ask what to do with both")
                self.told.emit(words.format(file=document.path.name if document.path else ""))
            self._told_of = document.seen
