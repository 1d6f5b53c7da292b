"""The unforeseen: the plan is saved first, it is told once, the report names no path, and the program goes on."""

import errno
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NoReturn

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QMessageBox, QTextEdit

from gardenplot.plan.edits import change_place
from gardenplot.plan.file import read_plan
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.unforeseen import report, rescued, watch, without_paths

HOME = Path.home()


@pytest.fixture(autouse=True)
def watched(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The hook over the window, and nothing on standard error."""
    before = sys.excepthook
    monkeypatch.setattr(sys, "__excepthook__", lambda *_error: None)
    watch(window)
    yield
    sys.excepthook = before


@pytest.fixture
def boxes(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The words of each box that was shown, with the details that can be copied."""
    shown: list[str] = []

    def show(box: QMessageBox) -> int:
        shown.append(f"{box.text()}\n{box.detailedText()}")
        return 0

    monkeypatch.setattr(QMessageBox, "exec", show)
    return shown


def thrown(error: BaseException) -> BaseException:
    """An error that went through a function, as errors do."""

    def throw() -> NoReturn:
        raise error

    try:
        throw()
    except BaseException as caught:
        return caught


def happen(error: BaseException) -> None:
    caught = thrown(error)
    sys.excepthook(type(caught), caught, caught.__traceback__)


def test_the_plan_is_saved_beside_its_file_before_anything_is_shown(
    document: Document, boxes: list[str], tmp_path: Path
) -> None:
    path = tmp_path / "sill.gardenplot"
    document.save(path)
    saved = path.read_bytes()
    document.change("Name", change_place(document.plan, name="Changed"))
    happen(ZeroDivisionError("division by zero"))
    assert read_plan(tmp_path / "sill-rescued.gardenplot").plan == document.plan
    assert path.read_bytes() == saved
    (words,) = boxes
    assert "sill-rescued.gardenplot" in words
    assert "ZeroDivisionError: division by zero" in words
    assert "test_unforeseen.py" in words


def test_a_rescue_of_an_earlier_day_is_not_written_over(
    window: MainWindow, document: Document, tmp_path: Path
) -> None:
    document.save(tmp_path / "sill.gardenplot")
    first = rescued(window)
    second = rescued(window)
    assert first != second == tmp_path / "sill-rescued-2.gardenplot"
    assert rescued(window, second) == second


def test_the_same_again_is_told_once_and_another_is_told_too(
    boxes: list[str], tmp_path: Path, document: Document
) -> None:
    document.save(tmp_path / "sill.gardenplot")
    for _turn in range(3):
        for error in (ValueError("one"), KeyError("two")):
            happen(error)
    assert len(boxes) == 2


def test_what_goes_wrong_behind_the_box_opens_no_other(
    document: Document, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    document.save(tmp_path / "sill.gardenplot")
    shown: list[int] = []

    def show(_box: QMessageBox) -> int:
        shown.append(1)
        happen(ValueError(f"again {len(shown)}"))
        return 0

    monkeypatch.setattr(QMessageBox, "exec", show)
    happen(ValueError("first"))
    assert shown == [1]


def test_the_window_goes_on_after_an_error_in_a_slot(
    window: MainWindow, document: Document, boxes: list[str], tmp_path: Path
) -> None:
    document.save(tmp_path / "sill.gardenplot")
    assert window.isVisible()

    def fail() -> None:
        raise RuntimeError("in a slot")

    QTimer.singleShot(0, fail)
    for _turn in range(3):
        QApplication.processEvents()
    assert len(boxes) == 1
    document.change("Name", change_place(document.plan, name="After"))
    assert window.document.plan.place.name == "After"


def test_where_nothing_can_be_saved_that_is_said(
    document: Document, boxes: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    document.save(tmp_path / "sill.gardenplot")
    monkeypatch.setattr("gardenplot.window.unforeseen.rescued", lambda *_given: None)
    happen(ValueError("full"))
    assert "could not be saved aside" in boxes[0]


PRIVATE = [
    f"[Errno 2] No such file or directory: '{HOME}/plans of Anna/spring.gardenplot'",
    f"{HOME}/x: cannot be read",
    "cannot open C:\\Users\\anna\\spring.gardenplot now",
    'in "D:/My plans/a b.gardenplot" it',
    "\\\\farm-server\\anna\\spring.gardenplot",
    "file:///home/anna/spring.gardenplot",
    "~/plans/anna.gardenplot",
    "/home/anna/My plans/anna in spring.gardenplot: cannot be read",
    "between /home/anna b/x and /srv/anna plans/y",
]


@pytest.mark.parametrize("words", PRIVATE)
def test_no_path_is_left_in_a_report(words: str) -> None:
    told = without_paths(words)
    assert not any(part in told for part in ("anna", "Anna", "spring", "plans", str(HOME)))


@pytest.mark.parametrize("words", ["division by zero", "'b1'", "2 1/2 in is no length", "15 m and/or 3 ft", "a: b"])
def test_words_without_a_path_stay_as_they_are(words: str) -> None:
    assert without_paths(words) == words


@pytest.mark.parametrize("error", [
    FileNotFoundError(errno.ENOENT, "No such file", f"{HOME}/anna.gardenplot"),
    PermissionError(errno.EACCES, "Permission denied", f"{HOME}/anna.gardenplot", None, f"{HOME}/anna-2.gardenplot"),
    ValueError(f"bad {HOME}/anna.gardenplot"),
])  # fmt: skip
def test_a_report_names_no_path_nor_does_what_it_came_from(error: Exception) -> None:
    outer = thrown(RuntimeError("outer"))
    outer.__cause__ = thrown(error)
    for one in (thrown(error), outer):
        words = report(type(one), one, one.__traceback__)
        assert "anna" not in words
        assert str(HOME) not in words
        assert str(Path(__file__).parent) not in words
        assert type(error).__name__ in words


def test_the_details_can_be_marked_and_copied(window: MainWindow) -> None:
    box = QMessageBox(window)
    box.setDetailedText("words")
    (details,) = box.findChildren(QTextEdit)
    assert details.isReadOnly()
    details.selectAll()
    details.copy()
    assert QApplication.clipboard().text() == "words"
    box.deleteLater()
