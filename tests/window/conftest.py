"""The window that its tests work on: two beds in metres, no screen, closed and gone at the end.

Making a window takes a quarter of a second. Those who look at a dialog alone share one window that they open it from.
"""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QDialog
from pytestqt.qtbot import QtBot

from gardenplot.plan import Plan
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import dress
from tests.plans import metric_plan
from tests.window.mouse import Mouse
from tests.window.walk import WAITED_FOR


@pytest.fixture(scope="session")
def dressed(qapp: QApplication) -> QApplication:
    """The application in the program's own face and colours."""
    dress(qapp)
    return qapp


def pytest_itemcollected(item: pytest.Item) -> None:
    """Let Qt say what there is not without a screen: a window manager, and a keyboard to be grabbed."""
    words = "plugin does not support (propagateSizeHints|raise|grabbing the keyboard)"
    item.add_marker(pytest.mark.qt_log_ignore(words, extend=True))


@pytest.fixture
def own_window(dressed: QApplication, qtbot: QtBot) -> Iterator[MainWindow]:
    """A new window with the metric plan, shown."""
    shown = made(metric_plan())
    qtbot.waitExposed(shown)
    yield shown
    closed(shown, dressed)


@pytest.fixture
def window(own_window: MainWindow) -> MainWindow:
    """The window that a test works on."""
    return own_window


@pytest.fixture(scope="module")
def hosts(dressed: QApplication) -> Iterator[list[MainWindow]]:
    """The window that the dialogs of a module are opened from, once it is made."""
    some: list[MainWindow] = []
    yield some
    for shown in some:
        closed(shown, dressed)


@pytest.fixture
def host(hosts: list[MainWindow], own_settings: None) -> MainWindow:  # noqa: ARG001  # settings come first
    """A window to open a dialog from, which others have been opened from."""
    if not hosts:
        hosts.append(made(metric_plan()))
    begin_anew(hosts[0], metric_plan())
    return hosts[0]


def begin_anew(shown: MainWindow, plan: Plan) -> None:
    """Show a plan as a new window shows it, with no dialog open."""
    for dialog in shown.findChildren(QDialog):
        dialog.close()
        if isinstance(dialog, WAITED_FOR):
            dialog.deleteLater()
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    vars(shown.document).pop("today", None)
    shown.canvas.stage.give_up()
    shown.views.show_ground(False)
    shown.season_maps.switch.setChecked(False)
    QApplication.sendEvent(shown.canvas.viewport(), QEvent(QEvent.Type.Leave))
    shown.document.start(plan)
    shown.sight.select(None)
    shown.ledger.setCurrentIndex(0)
    shown.shelf.search.clear()
    shown.statusBar().clearMessage()
    shown.activateWindow()
    shown.canvas.setFocus()


def made(plan: Plan, size: tuple[int, int] = (1440, 900)) -> MainWindow:
    """A window on a plan, shown in a size."""
    shown = MainWindow()
    shown.resize(*size)
    shown.document.start(plan)
    shown.show()
    return shown


def closed(shown: MainWindow, app: QApplication) -> None:
    """Away with a window, without a question."""
    if not shown.document.is_saved:
        shown.document.start(metric_plan())
    shown.close()
    shown.deleteLater()
    app.sendPostedEvents(shown, QEvent.Type.DeferredDelete)


@pytest.fixture
def document(window: MainWindow) -> Document:
    """The document of that window."""
    return window.document


@pytest.fixture
def mouse(window: MainWindow) -> Mouse:
    """A mouse over that window's canvas."""
    return Mouse(window.canvas)
