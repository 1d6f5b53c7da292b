"""The page of keys: pressed, refused, taken over, reset, kept from one start to the next, and copied as text."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QKeySequence
from PySide6.QtTest import QTest

from gardenplot.window.fixed_keys import fixed_keys
from gardenplot.window.keys_page import KeysPage, keys_text
from gardenplot.window.main import MainWindow

Key, Keys = Qt.Key, Qt.KeyboardModifier


@pytest.fixture
def page(window: MainWindow) -> Iterator[KeysPage]:
    """The page of that window's keys."""
    shown = KeysPage(window.registry, window)
    shown.show()
    yield shown
    shown.close()
    shown.deleteLater()
    window.registry.reset_keys()


def choose(page: KeysPage, words: str) -> None:
    page.filter.clear()
    QTest.keyClicks(page.filter, words)


def press(page: KeysPage, key: Qt.Key, held: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    """Enter on the chosen line, then keys."""
    QTest.keyClick(page.table, Key.Key_Return)
    QTest.keyClick(page.table, key, held)


def keys_of(window: MainWindow, action: str) -> list[str]:
    return [one.toString() for one in window.registry.keys(action)]


def test_each_tool_that_has_keys_of_its_own_tells_them() -> None:
    assert {"Tracing a bed", "Measuring", "Filling gaps"} <= {one.where for one in fixed_keys()}


def test_pressed_keys_are_given_and_work_and_the_old_ones_are_gone(window: MainWindow, page: KeysPage) -> None:
    choose(page, "zoom in")
    press(page, Key.Key_F9)
    assert keys_of(window, "view.in") == ["F9"]
    page.close()
    before = window.canvas.view.along
    window.activateWindow()
    QTest.keyClick(window.canvas, Key.Key_F9)
    assert window.canvas.view.along > before
    after = window.canvas.view.along
    QTest.keyClick(window.canvas, Key.Key_Equal, Keys.ControlModifier)
    assert window.canvas.view.along == after


def test_a_clash_names_the_other_and_changes_nothing_unless_it_is_taken_over(
    window: MainWindow, page: KeysPage
) -> None:
    choose(page, "zoom in")
    press(page, Key.Key_B, Keys.ControlModifier)
    assert "Add bed" in page.told.text()
    assert (keys_of(window, "view.in"), keys_of(window, "bed.add")) == (["Ctrl+="], ["Ctrl+B"])
    assert page.take_over.hasFocus()
    QTest.keyClick(page.take_over, Key.Key_Space)
    assert (keys_of(window, "view.in"), keys_of(window, "bed.add")) == (["Ctrl+B"], [])


def test_keys_that_stay_are_refused_and_escape_leaves_all_as_it_was(window: MainWindow, page: KeysPage) -> None:
    choose(page, "zoom in")
    for key, held, told in (
        (Key.Key_Delete, Keys.NoModifier, "remove"),
        (Key.Key_Tab, Keys.NoModifier, "next field"),
        (Key.Key_K, Keys.ShiftModifier, "typed into fields"),
        (Key.Key_Escape, Keys.NoModifier, "Enter, or a double click"),
    ):
        press(page, key, held)
        assert told in page.told.text()
        assert page.isVisible()
    assert keys_of(window, "view.in") == ["Ctrl+="]


def test_a_modifier_alone_is_waited_on(window: MainWindow, page: KeysPage) -> None:
    choose(page, "zoom in")
    press(page, Key.Key_Shift)
    assert page.table.listens
    QTest.keyClick(page.table, Key.Key_F9, Keys.ShiftModifier)
    assert keys_of(window, "view.in") == ["Shift+F9"]


def test_one_and_all_are_reset_and_one_whose_keys_are_taken_says_by_what(window: MainWindow, page: KeysPage) -> None:
    choose(page, "zoom in")
    press(page, Key.Key_B, Keys.ControlModifier)
    page.take_over.click()
    choose(page, "add bed")
    page.reset.click()
    assert "Zoom in" in page.told.text()
    assert keys_of(window, "bed.add") == []
    choose(page, "zoom in")
    page.reset.click()
    choose(page, "add bed")
    page.reset.click()
    assert (keys_of(window, "view.in"), keys_of(window, "bed.add")) == (["Ctrl+="], ["Ctrl+B"])
    page.without.click()
    assert keys_of(window, "bed.add") == []
    page.reset_all.click()
    assert all(window.registry.keys(one.id) == one.keys for one in window.registry.actions.values())


def test_keys_are_kept_from_one_start_to_the_next(page: KeysPage) -> None:
    choose(page, "zoom in")
    press(page, Key.Key_F9)
    choose(page, "zoom out")
    page.without.click()
    again = MainWindow()
    assert (keys_of(again, "view.in"), keys_of(again, "view.out")) == (["F9"], [])
    assert keys_of(again, "edit.redo") == ["Ctrl+Shift+Z", "Ctrl+Y"]
    again.deleteLater()


def test_the_filter_finds_by_words_by_menu_and_by_keys(page: KeysPage) -> None:
    for text, wanted in (("bed add", "Add bed …"), ("ctrl k", "Crop from a seed packet …"), ("rank", "take a rank")):
        choose(page, text)
        found = [item.text(0) for number in range(9) if (item := page.table.topLevelItem(number)) is not None]
        assert any(name.startswith(wanted) for name in found), text
    choose(page, "moonberry")
    assert "No action" in page.told.text()
    assert not page.change.isEnabled()


def test_keys_that_stay_are_listed_and_cannot_be_changed(page: KeysPage) -> None:
    choose(page, "suspend snaps")
    assert page.table.topLevelItemCount() == 1
    assert not page.change.isEnabled()
    QTest.keyClick(page.table, Key.Key_Return)
    assert not page.table.listens


def test_all_of_it_is_copied_as_text(window: MainWindow, page: KeysPage) -> None:
    window.registry.give_keys("view.in", [QKeySequence("F9")])
    page.copy.click()
    text = QGuiApplication.clipboard().text()
    assert text == keys_text(window.registry)
    lines = [" ".join(line.split()) for line in text.splitlines()]
    assert "View Zoom in F9" in lines
    assert "Edit Redo Ctrl+Shift+Z, Ctrl+Y" in lines
    assert len(lines) > len(window.registry.actions)
