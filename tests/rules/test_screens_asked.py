"""No widget or window is asked for its screen, by the program or by a test.

PySide takes what `QWidget.screen()` and `QWindow.screen()` give for a part of whoever gave it. With that the screen
may be thrown away, and the program crashes in the next painting: tests of dialogs did as soon as garbage was looked
for between them (PySide6 6.11.3, `QScreen::~QScreen` called by shiboken). `room_on_screen` is asked instead.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import shiboken6
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QWidget
from pytestqt.qtbot import QtBot

from gardenplot.window.room_on_screen import room_on_screen
from tests.rules.source_tree import ROOT


def askers(folder: Path) -> Iterator[str]:
    """Where anything is asked for its screen, as "path:line"."""
    for path in sorted(folder.rglob("*.py")):
        words = path.read_text(encoding="utf-8")
        # To take a file apart takes its time, and few have the word.
        for node in ast.walk(ast.parse(words)) if "screen" in words else ():
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "screen":
                yield f"{path.relative_to(folder)}:{node.lineno}"


def test_nobody_asks_a_widget_for_its_screen() -> None:
    assert [*askers(ROOT / "gardenplot"), *askers(ROOT / "tests")] == []


def test_who_asks_is_found(tmp_path: Path) -> None:
    (tmp_path / "a.py").write_text("room = (\n    self.window().screen().availableSize()\n)\nscreen = screens[0]\n")
    assert [*askers(tmp_path)] == ["a.py:2"]


def test_the_room_on_a_screen_is_told_and_the_screen_is_nobody_s_part(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    screen = QGuiApplication.primaryScreen()
    assert room_on_screen(window) == screen.availableSize()
    window.show()
    dialog = QDialog(window)
    for widget in (window, dialog, QWidget(dialog)):
        assert room_on_screen(widget) == screen.availableSize()
    assert not [line for line in shiboken6.dump(screen).splitlines() if line.startswith("parent")]
