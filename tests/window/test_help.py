"""The help page: the keys as they are, found words, links that do what they name, and large text."""

import re
from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gardenplot.files import resource
from gardenplot.window.document import Document
from gardenplot.window.help_page import HelpPage
from gardenplot.window.main import MainWindow
from tests.window.shared_window import window

__all__ = ["window"]

Key, Keys = Qt.Key, Qt.KeyboardModifier


@pytest.fixture
def page(window: MainWindow, qtbot: QtBot) -> Iterator[HelpPage]:
    """The page, opened by F1."""
    qtbot.waitUntil(window.isActiveWindow)
    QTest.keyClick(window.canvas, Key.Key_F1)
    shown = window.pages.page
    assert shown is not None
    qtbot.waitUntil(shown.isVisible)
    yield shown
    shown.close()
    window.registry.reset_keys()


def test_every_action_that_the_page_names_is_there(window: MainWindow) -> None:
    text = resource("help/page.md").read_text(encoding="utf-8")
    named = re.findall(r"\{([^}]*)\}", text)
    assert len(named) > 12
    assert set(named) <= set(window.registry.actions)


def test_it_is_a_dozen_steps_with_the_keys_as_they_are_now(window: MainWindow, page: HelpPage) -> None:
    text = page.page.toPlainText()
    assert "{" not in text
    assert "Sheets ▸ Bed sheet … (Ctrl+P)" in text
    assert len(re.findall(r"^\d+\. \*\*", resource("help/page.md").read_text(encoding="utf-8"), re.M)) == 12
    window.registry.give_keys("sheets.bed", [QKeySequence("F9")])
    assert "Sheets ▸ Bed sheet … (F9)" in page.page.toPlainText()


def test_ctrl_f_finds_words_goes_round_and_says_where_there_are_none(page: HelpPage, qtbot: QtBot) -> None:
    qtbot.waitUntil(page.isActiveWindow)
    QTest.keyClick(page.page, Key.Key_F, Keys.ControlModifier)
    assert page.wanted.hasFocus()
    QTest.keyClicks(page.wanted, "stakes")
    first = page.page.textCursor().position()
    assert page.page.textCursor().selectedText() == "stakes"
    QTest.keyClick(page.wanted, Key.Key_Return)
    assert page.page.textCursor().position() == first
    page.wanted.clear()
    QTest.keyClicks(page.wanted, "moonberry")
    assert page.told.text() == "not on this page"


def test_a_link_does_what_it_names_and_one_that_cannot_says_why(
    window: MainWindow, document: Document, page: HelpPage
) -> None:
    page.page.anchorClicked.emit(QUrl("do:planting.compare"))
    assert "Choose a planting first" in page.told.text()
    window.shelf.list.setCurrentIndex(window.shelf.model.index(1))
    page.page.anchorClicked.emit(QUrl("do:planting.place"))
    assert document.stack.undoText() == "Place Leek"
    assert page.told.text() == ""


def test_escape_closes_it_and_f1_brings_the_same_page_back(window: MainWindow, page: HelpPage) -> None:
    QTest.keyClick(page.page, Key.Key_Escape)
    assert not page.isVisible()
    window.pages.help()
    assert window.pages.page is page
    assert page.isVisible()


def test_links_are_told_from_words_by_a_line_under_them(page: HelpPage) -> None:
    page.page.find("Add bed")
    assert page.page.textCursor().charFormat().fontUnderline()
    assert page.page.textCursor().charFormat().isAnchor()
