"""Opening, saving and leaving: nothing that was changed is lost unasked, and every failure is told."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog, QMessageBox

from gardenplot.files import sample
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import read_plan, text_of
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.recent import recent
from gardenplot.window.start import EXAMPLE
from tests.plans import feet_plan

Button = QMessageBox.StandardButton


class Dialogs:
    """Answers the dialogs and keeps the questions and warnings that were shown."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.answer = Button.Cancel
        self.file: Path | None = None
        self.questions: list[str] = []
        self.warnings: list[str] = []

        def ask(box: QMessageBox) -> int:
            return self._question(box)

        monkeypatch.setattr(QMessageBox, "exec", ask)
        monkeypatch.setattr(QMessageBox, "warning", self._warning)
        for name in ("getSaveFileName", "getOpenFileName"):
            monkeypatch.setattr(QFileDialog, name, self._named)

    def _question(self, box: QMessageBox) -> int:
        self.questions.append(box.text())
        box.button(self.answer).click()
        return 0

    def _warning(self, _parent: object, _title: str, words: str) -> None:
        self.warnings.append(words)

    def _named(self, *_asked: object) -> tuple[str, str]:
        return str(self.file) if self.file else "", ""


@pytest.fixture
def dialogs(monkeypatch: pytest.MonkeyPatch) -> Dialogs:
    return Dialogs(monkeypatch)


@pytest.fixture
def changed(document: Document) -> Document:
    """The window's document after one change."""
    document.change("Name of the place", change_place(document.plan, name="Sill"))
    return document


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A file with another plan."""
    path = tmp_path / "reach.gardenplot"
    path.write_text(text_of(feet_plan()), encoding="utf-8")
    return path


Leaving = Callable[[MainWindow, Path], object]
LEAVINGS: dict[str, Leaving] = {
    "open": lambda window, _file: window.filing.open_asked(),
    "open recent": lambda window, file: window.filing.open_recent(file),
    "open an example": lambda window, _file: window.filing.open_example(sample(EXAMPLE)),
    "close": lambda window, _file: window.close(),
}
leavings = pytest.mark.parametrize("leave", LEAVINGS.values(), ids=LEAVINGS)


@leavings
def test_cancel_keeps_the_plan_and_its_steps(
    window: MainWindow, changed: Document, dialogs: Dialogs, file: Path, leave: Leaving
) -> None:
    plan = changed.plan
    dialogs.file = file
    leave(window, file)
    assert dialogs.questions == ["Sill has changes that are not saved."]
    assert changed.plan is plan
    assert changed.stack.count() == 1
    assert window.isVisible()


@leavings
def test_discard_leaves_the_changes_behind(
    window: MainWindow, changed: Document, dialogs: Dialogs, file: Path, leave: Leaving
) -> None:
    plan = changed.plan
    dialogs.answer, dialogs.file = Button.Discard, file
    leave(window, file)
    assert changed.plan is not plan or not window.isVisible()


def test_save_writes_the_changes_before_the_window_closes(
    window: MainWindow, changed: Document, dialogs: Dialogs, tmp_path: Path
) -> None:
    dialogs.answer, dialogs.file = Button.Save, tmp_path / "sill"
    assert window.close()
    assert read_plan(tmp_path / "sill.gardenplot").plan == changed.plan


def test_the_window_stays_when_saving_is_given_up(window: MainWindow, changed: Document, dialogs: Dialogs) -> None:
    dialogs.answer, dialogs.file = Button.Save, None
    assert not window.close()
    assert not changed.is_saved


def test_nothing_is_asked_about_a_plan_that_is_as_it_was_saved(
    window: MainWindow, changed: Document, dialogs: Dialogs, file: Path
) -> None:
    changed.stack.undo()
    dialogs.file = file
    window.filing.open_asked()
    assert dialogs.questions == []
    assert changed.plan == feet_plan()
    assert changed.path == file


def test_a_file_that_cannot_be_read_is_told_and_the_open_plan_stays(
    window: MainWindow, document: Document, dialogs: Dialogs, tmp_path: Path
) -> None:
    plan, dialogs.file = document.plan, tmp_path / "torn.gardenplot"
    dialogs.file.write_text(text_of(feet_plan())[:-40], encoding="utf-8")
    window.filing.open_asked()
    (told,) = dialogs.warnings
    assert "torn.gardenplot" in told
    assert "line" in told
    assert document.plan is plan
    assert document.path is None
    assert recent() == []


def test_a_file_that_cannot_be_written_is_told_and_the_changes_stay(
    window: MainWindow, changed: Document, dialogs: Dialogs, tmp_path: Path
) -> None:
    dialogs.file = tmp_path / "nowhere" / "sill.gardenplot"
    assert not window.filing.save()
    assert "cannot be written" in dialogs.warnings[0]
    assert not changed.is_saved
    assert changed.path is None


def test_saving_asks_for_a_name_once(window: MainWindow, changed: Document, dialogs: Dialogs, tmp_path: Path) -> None:
    dialogs.file = tmp_path / "sill.gardenplot"
    assert window.filing.save()
    assert recent() == [tmp_path / "sill.gardenplot"]
    changed.stack.undo()
    dialogs.file = None
    assert window.filing.save()
    assert read_plan(tmp_path / "sill.gardenplot").plan == changed.plan


@pytest.mark.usefixtures("dialogs")
def test_an_example_is_a_plan_of_its_own_that_asks_for_a_name(window: MainWindow, document: Document) -> None:
    before = sample(EXAMPLE).read_bytes()
    window.filing.open_example(sample(EXAMPLE))
    document.change("Name of the place", change_place(document.plan, name="Mine"))
    assert not window.filing.save()
    assert sample(EXAMPLE).read_bytes() == before
    assert recent() == []


@pytest.mark.usefixtures("changed")
def test_the_title_tells_what_is_open_and_whether_it_is_saved(
    window: MainWindow, dialogs: Dialogs, tmp_path: Path
) -> None:
    assert window.windowTitle().startswith("Sill")
    assert window.isWindowModified()
    dialogs.file = tmp_path / "sill.gardenplot"
    window.filing.save()
    assert not window.isWindowModified()
    assert window.header.state.text() == "· saved"


def test_the_files_opened_last_come_first_and_those_that_are_gone_are_left_out(
    window: MainWindow, file: Path, tmp_path: Path
) -> None:
    other = tmp_path / "other.gardenplot"
    other.write_bytes(file.read_bytes())
    for path in (file, other, file):
        window.filing.open(path)
    assert recent() == [file, other]
    other.unlink()
    assert recent() == [file]
