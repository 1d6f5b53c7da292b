"""Panels from one start to the next: hidden, floating, moved, on a screen that is gone; and back as at first."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import QEvent, QPoint, QSettings, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QDockWidget
from pytestqt.qtbot import QtBot

from gardenplot.window.main import MainWindow
from tests.plans import metric_plan

Start = Callable[[], MainWindow]
FRAME = 8
"""Pixels by which a frame may shift a window, across and down together."""


@pytest.fixture
def start(dressed: QApplication, qtbot: QtBot) -> Iterator[Start]:
    """Start the program's window, with one that is open closed before."""
    opened: list[MainWindow] = []

    def end() -> None:
        for window in opened:
            window.close()
            window.deleteLater()
            dressed.sendPostedEvents(window, QEvent.Type.DeferredDelete)
        opened.clear()

    def begin() -> MainWindow:
        end()
        window = MainWindow()
        window.document.start(metric_plan())
        opened.append(window)
        window.show()
        qtbot.waitExposed(window)
        return window

    yield begin
    end()


def dock(window: MainWindow, name: str) -> QDockWidget:
    return next(one for one in window.panels.docks if one.objectName() == name)


def places(window: MainWindow) -> dict[str, tuple[bool, bool, Qt.DockWidgetArea]]:
    """Of each panel whether it is hidden and floating, and on which side it is."""
    return {
        one.objectName(): (one.isHidden(), one.isFloating(), window.dockWidgetArea(one))
        for one in window.panels.docks
    }


def side_of(window: MainWindow, panel: QDockWidget) -> str:
    """The side of the drawing at which a panel is, or that it floats."""
    return "floats" if panel.isFloating() else str(window.dockWidgetArea(panel).name)


def test_a_hidden_panel_stays_hidden_and_comes_back_from_the_menu(start: Start) -> None:
    dock(start(), "shelf").close()
    again = start()
    assert dock(again, "shelf").isHidden()
    again.registry.made("view.shelf").trigger()
    assert dock(again, "shelf").isVisible()


def test_a_floating_panel_comes_back_where_it_was(start: Start) -> None:
    shelf = dock(start(), "shelf")
    shelf.setFloating(True)
    shelf.setGeometry(120, 90, 260, 400)
    again = dock(start(), "shelf")
    assert again.isFloating()
    assert (again.geometry().topLeft() - QPoint(120, 90)).manhattanLength() <= FRAME
    assert again.width() == 260


def test_a_moved_panel_and_its_size_come_back(start: Start) -> None:
    window = start()
    window.addDockWidget(Qt.DockWidgetArea.LeftDockWidgetArea, dock(window, "selected"))
    window.resizeDocks([dock(window, "ledger")], [150], Qt.Orientation.Vertical)
    QApplication.processEvents()
    before, height = places(window), dock(window, "ledger").height()
    again = start()
    assert places(again) == before
    assert dock(again, "ledger").height() == height


def test_a_panel_on_a_screen_that_is_gone_comes_back_into_sight(start: Start) -> None:
    shelf = dock(start(), "shelf")
    shelf.setFloating(True)
    shelf.setGeometry(9000, 4000, 260, 400)
    again = dock(start(), "shelf")
    assert again.isFloating()
    assert any(screen.availableGeometry().contains(again.geometry()) for screen in QGuiApplication.screens())


def test_a_window_on_a_screen_that_is_gone_comes_back_into_sight(start: Start) -> None:
    window = start()
    window.setGeometry(9000, 4000, 700, 500)
    again = start()
    assert any(screen.availableGeometry().intersects(again.geometry()) for screen in QGuiApplication.screens())


def test_panels_as_at_first_are_those_of_a_first_start(start: Start) -> None:
    window = start()
    first, widths = places(window), [dock(window, name).width() for name in ("shelf", "selected")]
    window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, dock(window, "ledger"))
    dock(window, "shelf").close()
    dock(window, "selected").setFloating(True)
    dock(window, "steps").show()
    again = start()
    assert places(again) != first
    again.registry.made("view.panels").trigger()
    QApplication.processEvents()
    assert places(again) == first
    assert [dock(again, name).width() for name in ("shelf", "selected")] == widths


@pytest.mark.parametrize("name", ["shelf", "selected", "ledger", "season", "steps"])
def test_a_panel_goes_round_the_drawing_by_key_and_says_where_it_is(start: Start, name: str) -> None:
    window = start()
    moves, panel = window.registry.made(f"panel.move.{name}"), dock(window, name)
    seen, told = [], []
    for _step in range(4):
        moves.trigger()
        assert panel.isVisible()
        seen.append(side_of(window, panel))
        told.append(window.statusBar().currentMessage().removeprefix(f"{panel.windowTitle()} "))
    said = {
        "LeftDockWidgetArea": "is at the left",
        "RightDockWidgetArea": "is at the right",
        "BottomDockWidgetArea": "is below the drawing",
        "floats": "floats",
    }
    assert set(seen) == set(said)
    assert told == [said[place] for place in seen]
    moves.trigger()
    again = start()
    assert side_of(again, dock(again, name)) == seen[0]


def test_memory_of_another_program_or_of_nonsense_does_no_harm(start: Start) -> None:
    window = start()
    first = places(window)
    window.close()
    from_nowhere = {"window": b"nonsense", "panels": b"\x00\xff nonsense"}
    settings = QSettings()
    for key, value in from_nowhere.items():
        settings.setValue(key, value)
    assert places(start()) == first
