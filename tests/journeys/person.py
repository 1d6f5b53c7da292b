"""A person at the window, who looks where things are and acts through the mouse and the keyboard alone."""

import subprocess
import time
from pathlib import Path

from PySide6.QtCore import QPoint
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QDialog, QLineEdit, QScrollArea, QTreeWidget, QWidget

from gardenplot.drawing.tables import counts_by_bed
from gardenplot.plan import Plan
from gardenplot.window.main import MainWindow
from tests.journeys.eyes import Eyes
from tests.journeys.places import Place, middle_of

_STEPS = 12
"""How many moves of the mouse a drag has."""
_NOTCHES = 40
"""How many notches of the wheel, or presses of Tab, lead to anything."""


class Person(Eyes):
    """Sits before one main window; `folder` is where files are kept and pictures go."""

    def __init__(self, window: MainWindow, folder: Path) -> None:
        super().__init__()
        self.window, self.folder = window, folder

    def carry(self, start: Place, end: Place) -> None:
        """Press the mouse at one place and bring it to another, without letting go."""
        (x, y), (to_x, to_y) = self._point(start), self._point(end)
        moves: list[str | float] = []
        for step in range(1, _STEPS + 1):
            on_the_way = x + (to_x - x) * step // _STEPS, y + (to_y - y) * step // _STEPS
            moves += ["mousemove", *on_the_way, "sleep", 0.02]
        self._act("mousemove", x, y, "sleep", 0.05, "mousedown", 1, "sleep", 0.05, *moves)

    def bring(self, place: Place) -> None:
        """Go to a place with the mouse pressed, again where the ground has scrolled under it meanwhile."""
        at = None
        for _time in range(_NOTCHES):
            there = self._point(place)
            if there == at:
                return
            self._act("mousemove", *there, "sleep", 0.3)
            at = there

    def let_go(self) -> None:
        """Release the mouse."""
        self._act("sleep", 0.1, "mouseup", 1)

    def hold(self, key: str) -> None:
        """Press a key down and keep it."""
        self._act("keydown", key)

    def free(self, key: str) -> None:
        """Let go of a key that was held."""
        self._act("keyup", key)

    def drag(self, start: Place, end: Place) -> None:
        """Press at one place, go to another, let go."""
        self.carry(start, end)
        self.let_go()

    def click(self, place: Place | QWidget) -> None:
        """Press and release the mouse at a place, or in the middle of a widget."""
        self._act("mousemove", *self._point(middle_of(place) if isinstance(place, QWidget) else place))
        self._act("click", 1)

    def scroll_to(self, widget: QWidget) -> None:
        """Turn the wheel over the panel that a widget is in until all of it is seen."""
        panel = self.see(lambda: _panel_of(widget))
        for _notch in range(_NOTCHES):
            way = self.see(lambda: _beyond(panel, widget))
            if not way:
                return
            self._act("mousemove", *self._point(middle_of(panel.viewport())))
            self._act("click", 5 if way > 0 else 4)
        raise AssertionError(f"{widget.objectName()} cannot be scrolled to")

    def press(self, *keys: str) -> None:
        """Press keys one after another, in xdotool's words: "ctrl+z", "Tab"."""
        self._attend()
        self._act("key", "--delay", 20, *keys)

    def go_to(self, widget: QWidget, key: str = "Tab") -> None:
        """Press a key that goes on, Tab or Shift+Tab, until the keyboard is in a widget."""
        for _pressed in range(_NOTCHES):
            if self.see(widget.hasFocus):
                return
            self.press(key)
        raise AssertionError(f"{key} does not lead to {widget.objectName() or widget.accessibleName()}")

    def type(self, text: str) -> None:
        """Type a text."""
        self._attend()
        self._act("type", "--delay", 4, text)

    def write(self, field: QLineEdit, text: str) -> None:
        """Bring a field into sight, click it, type another text into it and finish it with Tab."""
        self.scroll_to(field)
        self.click(field)
        self.wait_until(field.hasFocus, "the keyboard in a field that was clicked")
        self.press("ctrl+a")
        self.type(text)
        self.press("Tab")

    def plan(self) -> Plan:
        """The plan as it is now."""
        return self.see(lambda: self.window.document.plan)

    def expect_blocks(self, *wanted: str) -> None:
        """Wait for these blocks in the plan."""
        self.expect(lambda: _blocks(self.window.document.plan), list(wanted))

    def expect_trial(self, *wanted: str) -> None:
        """Wait for these blocks in the plan as it would be if the hand let go now."""
        self.expect(lambda: _blocks(trial.plan) if (trial := self.window.canvas.stage.trial) else [], list(wanted))

    def photograph(self, name: str) -> None:
        """Keep a picture of the whole screen."""
        self.see(lambda: QGuiApplication.primaryScreen().grabWindow(0).save(str(self.folder / f"{name}.png")))

    def _point(self, place: Place) -> tuple[int, int]:
        point = self.see(lambda: place(self.window))
        return point.x(), point.y()

    def _act(self, *words: str | float) -> None:
        subprocess.run(["xdotool", *map(str, words)], check=True, capture_output=True, timeout=60)
        time.sleep(0.03)
        self.see(lambda: None)

    def _attend(self) -> None:
        """Give the keyboard to the uppermost window, as a window manager would."""
        self.see(lambda: _uppermost(self.window).activateWindow())
        self.wait_until(lambda: _uppermost(self.window).isActiveWindow(), "the keyboard in the window")


def _uppermost(window: QWidget) -> QWidget:
    beside = (one for one in window.findChildren(QDialog) if one.isVisible())
    return QApplication.activePopupWidget() or QApplication.activeModalWidget() or next(beside, window)


def _panel_of(widget: QWidget) -> QScrollArea:
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        above = above.parentWidget()
    assert above is not None, f"{widget.objectName()} is in no panel"
    return above


def _beyond(panel: QScrollArea, widget: QWidget) -> int:
    """How many pixels of a widget lie below what a panel shows; negative where they lie above."""
    top, room = widget.mapTo(panel.viewport(), QPoint(0, 0)).y(), panel.viewport().height()
    return min(0, top) or max(0, top + widget.height() - room)


def _blocks(plan: Plan) -> list[str]:
    rows = [row for bed in counts_by_bed(plan) for row in bed.inner]
    return [plain(f"{row.name} {row.readings} {row.rows} {row.plants}") for row in rows]


def rows_of(table: QTreeWidget) -> list[list[str]]:
    """The cells of a table's rows, as they can be read."""
    items = [item for number in range(table.topLevelItemCount()) if (item := table.topLevelItem(number)) is not None]
    return [[plain(item.text(column)) for column in range(table.columnCount())] for item in items]


def plain(words: str) -> str:
    """Words with one ordinary space between any two."""
    return " ".join(words.split())
