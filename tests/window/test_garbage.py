"""Garbage is looked for in the window's own thread while another one is at work, and nothing is kept for ever."""

import gc
import threading
import weakref
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.window import garbage
from gardenplot.window.garbage import Garbage


class Ring:
    """Something that only a look for garbage can throw away."""

    def __init__(self, gone: list[int]) -> None:
        self.itself = self
        weakref.finalize(self, lambda: gone.append(threading.get_ident()))


@pytest.fixture
def looking(dressed: QApplication) -> Iterator[Garbage]:
    """A look-out that has taken over."""
    made = Garbage(dressed)
    made.take_over()
    yield made
    made.hand_back()
    made.deleteLater()
    assert gc.isenabled()
    assert gc.get_freeze_count() == 0


def test_another_thread_throws_nothing_away(looking: Garbage) -> None:
    gone: list[int] = []
    Ring(gone)
    busy = threading.Thread(target=lambda: [[number] for number in range(100_000)])
    busy.start()
    busy.join()
    assert gone == []
    looking._look()
    assert gone == [threading.get_ident()]


def test_its_clock_looks_by_itself(dressed: QApplication, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot) -> None:
    monkeypatch.setattr(garbage, "_EVERY", 1)
    looking, gone = Garbage(QObject(dressed)), list[int]()
    looking.take_over()
    Ring(gone)
    qtbot.waitUntil(lambda: gone != [])
    looking.hand_back()


def test_what_there_is_when_a_plan_is_opened_is_looked_through_only_while_nobody_waits(
    looking: Garbage, dressed: QApplication
) -> None:
    gone: list[int] = []
    ring = Ring(gone)
    looking.keep_all()
    del ring
    for _look in range(30):
        looking._look()
    assert gone == []
    dressed.applicationStateChanged.emit(Qt.ApplicationState.ApplicationInactive)
    assert gone == [threading.get_ident()]


@pytest.mark.parametrize("away", [Qt.ApplicationState.ApplicationInactive, Qt.ApplicationState.ApplicationHidden])
def test_what_was_kept_and_became_garbage_goes_when_another_program_is_turned_to(
    looking: Garbage, dressed: QApplication, away: Qt.ApplicationState
) -> None:
    gone: list[int] = []
    ring = Ring(gone)
    for _look in range(30):
        looking._look()
    assert gc.get_freeze_count() > 0
    del ring
    looking._look()
    dressed.applicationStateChanged.emit(Qt.ApplicationState.ApplicationActive)
    assert gone == []
    dressed.applicationStateChanged.emit(away)
    assert gone == [threading.get_ident()]
