"""A large plan is read beside the window, which lives on meanwhile and shows it, or stays as it was."""

import gc
from pathlib import Path

import pytest
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from gardenplot.files import sample
from gardenplot.plan.file import read_plan, write_plan
from gardenplot.window import read_aside
from gardenplot.window.long_work import Waiting
from gardenplot.window.main import MainWindow
from tests.plans import feet_plan


@pytest.fixture
def large(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A file that is taken for a large one."""
    monkeypatch.setattr(read_aside, "_LARGE", 0)
    path = tmp_path / "large.gardenplot"
    write_plan(path, feet_plan())
    return path


@pytest.mark.usefixtures("python_looks")
def test_a_large_plan_is_opened_as_any_other(window: MainWindow, large: Path) -> None:
    waited: list[object] = []
    QTimer.singleShot(0, lambda: waited.append(QApplication.activeModalWidget()))
    assert window.filing.open(large)
    assert [type(one) for one in waited] == [Waiting]
    assert window.document.plan == feet_plan()
    assert window.document.path == large
    assert window.document.seen == read_plan(large).seen
    assert window.document.is_saved
    assert gc.isenabled()


@pytest.mark.usefixtures("python_looks")
def test_reading_that_is_stopped_leaves_the_window_as_it_was(window: MainWindow, large: Path) -> None:
    plan, path = window.document.plan, window.document.path

    def stop() -> None:
        shown = QApplication.activeModalWidget()
        assert isinstance(shown, Waiting)
        shown.stop.click()

    QTimer.singleShot(0, stop)
    assert not window.filing.open(large)
    assert window.document.plan is plan
    assert window.document.path == path
    assert gc.isenabled()


def test_a_large_file_that_is_no_plan_is_told_as_any_other(
    window: MainWindow, large: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    large.write_text("{}")
    told: list[str] = []
    monkeypatch.setattr("gardenplot.window.filing.warn", lambda _parent, _title, says: told.append(says))
    plan = window.document.plan
    assert not window.filing.open(large)
    assert len(told) == 1
    assert told[0].startswith(str(large))
    assert window.document.plan is plan


def test_a_sample_is_small_enough_to_be_read_at_once(window: MainWindow) -> None:
    shown: list[object] = []
    QTimer.singleShot(0, lambda: shown.append(QApplication.activeModalWidget()))
    assert window.filing.open(sample("kestrel-howe.gardenplot"), example=True)
    QApplication.processEvents()
    assert shown == [None]
