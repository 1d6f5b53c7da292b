"""Earlier versions in the window, and a file that somebody else has written to meanwhile."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMessageBox
from pytestqt.qtbot import QtBot

from gardenplot.plan.edits import change_place, remove_planting
from gardenplot.plan.file import read_plan, write_plan
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.own_folder import versions
from gardenplot.window.plans_dialog import PlansDialog
from gardenplot.window.versions_dialog import VersionsDialog
from tests.plans import feet_plan

Answer = Callable[[str], list[str]]


@pytest.fixture
def path(document: Document, tmp_path: Path) -> Path:
    """The document's file, saved three times under three names of the place."""
    path = tmp_path / "sill.gardenplot"
    for name in ("First", "Second", "Third"):
        document.change("Name of the place", change_place(document.plan, name=name))
        document.save(path)
    return path


@pytest.fixture
def answer(monkeypatch: pytest.MonkeyPatch) -> Answer:
    """Press the button of those words in the next questions, and give the words of these."""
    asked: list[str] = []

    def by(button: str) -> list[str]:
        def press(box: QMessageBox) -> int:
            asked.append(box.text())
            next(one for one in box.buttons() if one.text().replace("&", "") == button).click()
            return 0

        monkeypatch.setattr(QMessageBox, "exec", press)
        return asked

    return by


@pytest.fixture
def told(window: MainWindow) -> list[str]:
    said: list[str] = []
    window.filing.told.connect(said.append)
    return said


def in_dialog(monkeypatch: pytest.MonkeyPatch, qtbot: QtBot, look: Callable[[PlansDialog], object]) -> None:
    """Do something in the next dialog of plans, once all of them are read."""

    def exec_(dialog: PlansDialog) -> int:
        dialog.show()
        qtbot.waitUntil(lambda: len(dialog.plans) == dialog.table.topLevelItemCount())
        look(dialog)
        return dialog.result()

    monkeypatch.setattr(PlansDialog, "exec", exec_)


def cells(dialog: PlansDialog) -> list[list[str]]:
    items = [dialog.table.topLevelItem(number) for number in range(dialog.table.topLevelItemCount())]
    return [[item.text(column) for column in range(dialog.table.columnCount())] for item in items if item]


def test_a_version_is_brought_back_as_one_step_of_undo(
    window: MainWindow, document: Document, path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    shown: list[list[list[str]]] = []

    def bring_back(dialog: PlansDialog) -> None:
        shown.append(cells(dialog))
        QTest.keyClick(dialog.table, Qt.Key.Key_End)
        QTest.mouseClick(dialog.buttons[0], Qt.MouseButton.LeftButton)

    document.change("Remove", remove_planting(document.plan, "p1"))
    before, steps = document.plan, document.stack.count()
    in_dialog(monkeypatch, qtbot, bring_back)
    window.registry.made("file.versions").trigger()
    assert document.plan.place.name == "First"
    assert document.stack.count() == steps + 1
    assert document.stack.undoText().startswith("Bring back the version of today, ")
    document.stack.undo()
    assert document.plan is before
    assert document.path == path
    (rows,) = shown
    assert [row[0].startswith("today, ") for row in rows] == [True, True, True]
    assert [row[2] for row in rows] == ["1 planting more"] * 3


def test_a_version_is_opened_as_a_plan_of_its_own_that_is_not_saved_yet(
    window: MainWindow, document: Document, path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def open_own(dialog: PlansDialog) -> None:
        QTest.keyClick(dialog.table, Qt.Key.Key_End)
        QTest.mouseClick(dialog.buttons[1], Qt.MouseButton.LeftButton)

    before = path.read_bytes()
    in_dialog(monkeypatch, qtbot, open_own)
    window.filing.versions_asked()
    assert document.plan.place.name == "First"
    assert document.path is None
    assert not document.is_saved
    assert path.read_bytes() == before


def test_there_are_none_before_a_plan_is_saved(window: MainWindow, document: Document, told: list[str]) -> None:
    made = window.registry.made("file.versions")
    assert not made.isEnabled()
    assert "no file yet" in made.toolTip()
    window.filing.versions_asked()
    assert "No earlier version" in told[0]
    assert document.stack.count() == 0


def test_a_damaged_file_is_told_and_its_versions_are_offered(
    window: MainWindow,
    document: Document,
    path: Path,
    answer: Answer,
    monkeypatch: pytest.MonkeyPatch,
    qtbot: QtBot,
) -> None:
    path.write_bytes(path.read_bytes()[:200])
    asked = answer("Show earlier versions")
    in_dialog(monkeypatch, qtbot, lambda dialog: QTest.mouseClick(dialog.buttons[0], Qt.MouseButton.LeftButton))
    document.start(feet_plan())
    assert not window.filing.open(path)
    assert "sill.gardenplot: line" in asked[0]
    assert document.plan.place.name == "Third"
    assert document.path is None


def test_a_version_that_cannot_be_read_says_so_and_can_only_be_left(
    window: MainWindow, path: Path, document: Document, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    dialog = VersionsDialog(path, document.plan, window)
    dialog._versions[0].path.write_text("{")
    in_dialog(monkeypatch, qtbot, lambda _dialog: None)
    dialog.exec()
    assert cells(dialog)[0][1] == "cannot be read"
    assert not any(button.isEnabled() for button in dialog.buttons)
    QTest.keyClick(dialog.table, Qt.Key.Key_Down)
    assert all(button.isEnabled() for button in dialog.buttons)
    dialog.close()


@pytest.fixture
def theirs(path: Path) -> bytes:
    """What somebody else has saved in the document's file meanwhile."""
    write_plan(path, feet_plan())
    return path.read_bytes()


@pytest.mark.parametrize("button", ["Save beside it", "Save over it", "Cancel"])
def test_both_are_kept_whatever_is_answered(
    window: MainWindow, document: Document, path: Path, theirs: bytes, answer: Answer, button: str
) -> None:
    document.change("Name of the place", change_place(document.plan, name="Mine"))
    mine = document.plan
    asked = answer(button)
    saved = window.filing.save()
    assert saved == document.is_saved == (button != "Cancel")
    assert "sill.gardenplot was changed since it was opened here" in asked[0]
    beside = path.with_name("sill (2).gardenplot")
    if button == "Save over it":
        assert read_plan(path).plan == mine
        assert theirs in [one.path.read_bytes() for one in versions().of(path)]
        assert not beside.exists()
    else:
        assert path.read_bytes() == theirs
        assert document.plan is mine
    if button == "Save beside it":
        assert read_plan(beside).plan == mine
        assert document.path == beside


@pytest.mark.usefixtures("theirs")
def test_a_file_that_changed_is_told_of_once_when_the_program_is_turned_to(told: list[str]) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    for _turn in range(2):
        app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationInactive)
        app.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
    assert told == ["sill.gardenplot was changed by somebody else; saving will ask what to do with both"]


def test_a_file_marked_as_read_only_is_told_of_when_it_is_opened(
    window: MainWindow, path: Path, told: list[str]
) -> None:
    path.chmod(0o444)
    assert window.filing.open(path)
    assert told == ["only to look at, or to save under another name: the file is marked as read-only"]


def test_a_new_plan_that_was_never_saved_is_not_left_unasked(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[object] = []

    def ask(box: QMessageBox) -> int:
        asked.append(box.text())
        box.button(QMessageBox.StandardButton.Cancel).click()
        return 0

    monkeypatch.setattr(QMessageBox, "exec", ask)
    document.start(feet_plan(), kept=False)
    assert not document.is_saved
    assert not window.close()
    assert len(asked) == 1
