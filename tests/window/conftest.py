"""The window that its tests work on: two beds in metres, no screen, closed and gone at the end."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import dress
from tests.plans import metric_plan
from tests.window.mouse import Mouse


@pytest.fixture(scope="session")
def dressed(qapp: QApplication) -> QApplication:
    """The application in the program's own face and colours."""
    dress(qapp)
    return qapp


def pytest_itemcollected(item: pytest.Item) -> None:
    """Let Qt say that without a screen no window manager can be told of a least size."""
    item.add_marker(pytest.mark.qt_log_ignore("does not support propagateSizeHints", extend=True))


@pytest.fixture
def window(dressed: QApplication, qtbot: QtBot) -> Iterator[MainWindow]:
    """A window with the metric plan, shown."""
    shown = MainWindow()
    shown.resize(1440, 900)
    shown.document.start(metric_plan())
    shown.show()
    qtbot.waitExposed(shown)
    yield shown
    shown.document.start(metric_plan())
    shown.close()
    shown.deleteLater()
    dressed.sendPostedEvents(shown, QEvent.Type.DeferredDelete)


@pytest.fixture
def document(window: MainWindow) -> Document:
    """The document of that window."""
    return window.document


@pytest.fixture
def mouse(window: MainWindow) -> Mouse:
    """A mouse over that window's canvas."""
    return Mouse(window.canvas)
