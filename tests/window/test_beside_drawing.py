"""Answers leave what is drawn in sight: at the foot what they lie over is scrolled clear, else they stand aside."""

from datetime import date

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from gardenplot.window.again_dialog import AgainDialog
from gardenplot.window.main import MainWindow
from gardenplot.window.panels import Panels
from gardenplot.window.tables import Table
from gardenplot.window.theme import dress
from tests.scenarios.again_plans import both_short
from tests.window.conftest import closed, made
from tests.window.walk import settle, text_of


def frame(part: QWidget) -> QRect:
    """Where a part is on the screen."""
    return QRect(part.mapToGlobal(QPoint(0, 0)), part.size())


def planned_again(shown: MainWindow) -> AgainDialog:
    """The dialog that plans again, over a window."""
    shown.document.today = lambda: date(2025, 4, 21)
    shown.again.open()
    settle(shown)
    assert shown.again.dialog is not None
    return shown.again.dialog


@pytest.mark.parametrize("size", [(1024, 700), (1366, 768)])
@pytest.mark.parametrize("direction", [Qt.LayoutDirection.LeftToRight, Qt.LayoutDirection.RightToLeft])
def test_with_text_twice_as_large_they_stand_beside_the_drawing(
    dressed: QApplication,
    direction: Qt.LayoutDirection,
    size: tuple[int, int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """In a small window all panels share the place before the drawing, and so do they."""
    monkeypatch.setattr(Panels, "room", size[0])
    dressed.setLayoutDirection(direction)
    try:
        with text_of(dressed, 2.0, dress):
            shown = made(both_short(), size)
            settle(shown)
            dialog = planned_again(shown)
            assert not frame(dialog).intersects(frame(shown.canvas))
            assert frame(shown).contains(frame(dialog))
            closed(shown, dressed)
    finally:
        dressed.setLayoutDirection(Qt.LayoutDirection.LeftToRight)


def test_at_the_foot_the_bed_that_is_looked_at_lies_above_them(dressed: QApplication) -> None:
    shown = made(both_short(), (1024, 700))
    settle(shown)
    dialog = planned_again(shown)
    assert frame(dialog).intersects(frame(shown.canvas))
    dialog.all.table.setFocus()
    QTest.keyClick(dialog.all.table, Qt.Key.Key_Down)
    strip = shown.canvas.view.strips().strip_of("f2")
    assert strip is not None
    foot = frame(shown.canvas.viewport()).top() + shown.canvas.view.origin[1] + strip.top + strip.height
    assert foot <= frame(dialog).top()
    closed(shown, dressed)


@pytest.mark.parametrize("size", [(1024, 700), (1366, 768)])
def test_with_text_twice_as_large_several_answers_are_read_at_once(
    dressed: QApplication, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Panels, "room", size[0])
    with text_of(dressed, 2.0, dress):
        shown = made(both_short(), size)
        settle(shown)
        dialog = planned_again(shown)
        assert rows_in_sight(dialog.all.table) == 2
        assert rows_in_sight(dialog.view.table) >= 3
        buttons = (dialog.numbers, dialog.leave, dialog.take)
        assert len({frame(button).top() for button in buttons}) <= 2
        closed(shown, dressed)


def rows_in_sight(table: Table) -> int:
    """How many rows of a table are seen in their whole height."""
    items = (table.topLevelItem(number) for number in range(table.topLevelItemCount()))
    rows = [table.visualItemRect(item) for item in items if item is not None]
    return sum(row.top() >= 0 and row.bottom() < table.viewport().height() for row in rows)
