"""Parts that are made when they are first looked at have their place all the same, and cost nothing until then."""

import os
import subprocess
import sys
from importlib.util import find_spec

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QCalendarWidget, QDockWidget, QStyle, QStyleOptionComboBox, QWidget

from gardenplot.window.main import MainWindow
from gardenplot.window.put_off import PUT_OFF
from gardenplot.window.season_maps import SeasonMaps
from tests.window.walk import STOPS, settle

LATE = (
    "season_maps",
    "ground_view",
    "planting_panel",
    "bed_panel",
    "forms",
    "compare_dialog",
    "preview",
    "help_page",
    "versions_dialog",
    "left_work",
)
"""Modules of the window that its first picture has no use for."""
_MONDAY, _SATURDAY, _SUNDAY = Qt.DayOfWeek.Monday, Qt.DayOfWeek.Saturday, Qt.DayOfWeek.Sunday
STARTED = """
import linecache
import sys
import gardenplot
from gardenplot.__main__ import load_window
from gardenplot.files import sample
start = load_window()
app = start.made_app()
window = start.MainWindow()
window.filing.open(sample(start.EXAMPLE), example=True)
window.show()
app.processEvents()
print(*(name for name in sys.modules))
print(*(name for name in linecache.cache if name.startswith(gardenplot.__path__[0])))
first, before = window.document.plan.plantings[0], len(window.document.plan.plantings)
window.sight.select(first.bed, first.id)
window.registry.made("block.split").trigger()
print(len(window.document.plan.plantings) - before)
"""


def test_what_nobody_sees_at_first_is_not_loaded() -> None:
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": os.devnull}
    run = subprocess.run([sys.executable, "-c", STARTED], capture_output=True, encoding="utf-8", check=True, env=env)
    names, sources, parts = run.stdout.splitlines()
    loaded = set(names.split())
    assert "gardenplot.window.main" in loaded
    assert not loaded & {f"gardenplot.window.{name}" for name in LATE}
    assert not sources, "read by PySide, which looks into all that is imported after it unless it is hindered"
    assert not loaded & {"reportlab", "ezdxf", "icalendar", "scipy", "shapely", "pypdfium2"}
    put_off = {f"gardenplot.{room}.{name}" for room, waiting in PUT_OFF.items() for name in waiting}
    assert not loaded & put_off
    assert parts == "1", "what was put off is there when it is wanted"


def test_what_is_put_off_is_there_by_that_name() -> None:
    for room, names in PUT_OFF.items():
        for name in names:
            assert find_spec(f"gardenplot.{room}.{name}") is not None, name


def maps_in(window: MainWindow) -> SeasonMaps | None:
    """The season maps, if they are made by now."""
    return window.findChild(SeasonMaps)


def season_dock(window: MainWindow) -> QDockWidget:
    """The panel of the season."""
    return next(dock for dock in window.docks if dock.objectName() == "season")


@pytest.mark.parametrize("key", [Qt.Key.Key_Tab, Qt.Key.Key_Backtab])
def test_the_keyboard_comes_to_the_season_map_before_anybody_has_seen_it(
    window: MainWindow, dressed: QApplication, key: Qt.Key
) -> None:
    window.canvas.setFocus()
    settle(window)
    assert maps_in(window) is None
    before: list[QWidget] = []
    while maps_in(window) is None and len(before) < STOPS:
        before.append(found := focused(dressed))
        QTest.keyClick(found, key)
    maps = window.season_maps
    first, last = maps.switch, maps.panel
    assert focused(dressed) is (first if key == Qt.Key.Key_Tab else last)
    assert not first.visibleRegion().isEmpty(), "the panel comes to the front"
    QTest.keyClick(focused(dressed), key)
    assert focused(dressed) is (last if key == Qt.Key.Key_Tab else first)
    QTest.keyClick(focused(dressed), key)
    assert not maps.isAncestorOf(focused(dressed))
    if key == Qt.Key.Key_Backtab:
        assert window.ledger.isAncestorOf(focused(dressed))
    else:
        assert window.ledger.isAncestorOf(before[-1])


def focused(app: QApplication) -> QWidget:
    """What has the keyboard."""
    found = app.focusWidget()
    assert found is not None
    return found


@pytest.mark.parametrize("way", ["raised", "shown alone", "let float"])
def test_the_season_map_is_there_when_its_panel_is_seen(window: MainWindow, way: str) -> None:
    settle(window)
    dock = season_dock(window)
    assert maps_in(window) is None
    match way:
        case "raised":
            dock.raise_()
        case "shown alone":
            window.docks[2].close()
        case _:
            dock.setFloating(True)
    settle(window)
    maps = maps_in(window)
    assert maps is not None
    assert maps.panel.isVisible()
    room = QRect(maps.mapTo(dock, QPoint(0, 0)), maps.size())
    assert room.height() >= dock.height() - 40


def test_a_panel_of_a_selection_is_made_when_something_is_selected(window: MainWindow) -> None:
    made = {"bed", "planting"} & vars(window.inspector).keys()
    assert not made
    window.sight.select("b1", "p1")
    assert window.inspector.planting.isVisible()
    assert "bed" not in vars(window.inspector)
    window.sight.select("b1")
    assert window.inspector.bed.isVisible()
    assert not window.inspector.planting.isVisible()


def test_the_ground_looks_as_if_it_had_been_there_from_the_beginning(window: MainWindow) -> None:
    window.sight.select("b1")
    window.views.show_ground(True)
    settle(window)
    first = window.views.ground
    assert window.views.shows_ground
    assert first.accessibleDescription().startswith(window.document.plan.beds[0].name)
    assert "scale 1" in window.scale.text()


def test_the_calendar_of_the_day_is_made_when_it_opens_without_red(window: MainWindow) -> None:
    day = window.header.day
    settle(window)
    assert day.findChild(QCalendarWidget) is None
    option = QStyleOptionComboBox()
    option.initFrom(day)
    arrow = QStyle.SubControl.SC_ComboBoxArrow
    frame = day.style().subControlRect(QStyle.ComplexControl.CC_ComboBox, option, arrow, day)
    QTest.mouseClick(day, Qt.MouseButton.LeftButton, pos=frame.center())
    calendar = day.findChild(QCalendarWidget)
    assert calendar is not None
    weekday, *weekend = (calendar.weekdayTextFormat(one) for one in (_MONDAY, _SATURDAY, _SUNDAY))
    assert [one.foreground() for one in weekend] == [weekday.foreground()] * 2
    calendar.window().close()


def test_panels_put_back_before_the_season_was_looked_at_have_it_made_once(window: MainWindow) -> None:
    """Qt shows each panel once by itself then; a second map in the same room was told of by Qt, and crashed later."""
    window.sight.select("b1", "p1")
    window.registry.made("edit.selected").trigger()
    settle(window)
    window.panels.as_at_first()
    settle(window)
    assert len(window.findChildren(SeasonMaps)) == 1
    assert window.season_maps.parentWidget() is not None
