"""Every action stands once, with keys of its own, and what cannot be done says why wherever it is met."""

import re
from itertools import chain
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QMenu
from pytestqt.qtbot import QtBot

import gardenplot
from gardenplot.plan import Plan
from gardenplot.window.action import Menu, Rule, Submenu
from gardenplot.window.document import Document
from gardenplot.window.fixed_keys import refusal
from gardenplot.window.main import MainWindow

Key, Keys = Qt.Key, Qt.KeyboardModifier


def all_in(menu: QMenu) -> list[QAction]:
    """The actions of a menu and its submenus, as they are read."""
    found: list[QAction] = []
    for action in menu.actions():
        inner = action.menu()
        if isinstance(inner, QMenu):
            found.extend(all_in(inner))
        elif not action.isSeparator():
            found.append(action)
    return found


def submenus(window: MainWindow) -> list[QMenu]:
    return [menu for action in window.menuBar().actions() if isinstance(menu := action.menu(), QMenu)]


def test_every_id_stands_once_and_every_action_has_words_and_a_letter_of_its_own(window: MainWindow) -> None:
    menus = window.registry.menus
    ids = [action.id for menu in menus for action in menu.actions()]
    assert len(set(ids)) == len(ids)
    for menu in menus:
        assert all(action.name for action in menu.actions())
        for level in (menu.entries, *(entry.entries for entry in menu.entries if isinstance(entry, Submenu))):
            letters = [word for one in level if not isinstance(one, Rule) and (word := letter(one.words))]
            assert len(set(letters)) == len(letters), menu.name


def test_what_words_send_a_grower_to_stands_in_that_menu(window: MainWindow) -> None:
    """As "Season ▸ Fill the season …"; words that name no menu with ▸ are not looked for."""
    registry = window.registry
    paths = {f"{registry.path_of(one.id)} ▸ {one.name.removesuffix(' …')}" for one in registry.actions.values()}
    names = "|".join(menu.name for menu in registry.menus)
    sent = re.compile(rf"\b(?:{names}) ▸ [A-Z][a-z ]*[a-z]")
    folder = Path(gardenplot.__file__).parent
    named = {words for path in folder.rglob("*.py") for words in sent.findall(path.read_text(encoding="utf-8"))}
    assert len(named) >= 9
    parents = {path.rpartition(" ▸ ")[0] for path in paths}
    # Nothing was opened yet, so that this one is empty.
    assert named - paths - parents - {"File ▸ Open recent"} == set()


def letter(words: str) -> str:
    return words.partition("&")[2][:1].casefold()


def test_no_two_actions_share_keys_and_none_takes_a_key_that_stays(window: MainWindow) -> None:
    keys = list(chain.from_iterable(window.registry.keys(one) for one in window.registry.actions))
    texts = [one.toString() for one in keys]
    assert len(set(texts)) == len(texts)
    assert [words for one in keys if (words := refusal(one, window.registry.menus))] == []


def test_the_menu_bar_holds_all_actions_in_the_order_of_the_registry(window: MainWindow) -> None:
    for menu, shown in zip(window.registry.menus, submenus(window), strict=True):
        shown.aboutToShow.emit()
        wanted = [window.registry.made(action.id) for action in menu.actions()]
        assert [action for action in all_in(shown) if action in wanted] == wanted


def test_what_cannot_be_done_is_disabled_and_says_why_with_what_would_help(
    window: MainWindow, document: Document
) -> None:
    document.start(Plan())
    reasons = {one: window.registry.actions[one].why_not() for one in window.registry.actions}
    assert "no bed yet" in reasons["sheets.bed"]
    assert "no bed yet" in reasons["bed.remove"]
    assert "Nothing is planted" in reasons["planting.remove"]
    assert "no order yet" in reasons["order.remove"]
    for action, reason in reasons.items():
        made = window.registry.made(action)
        assert made.isEnabled() is not bool(reason), action
        assert made.toolTip() == reason or not reason, action


def test_choosing_and_letting_go_enables_and_disables(window: MainWindow) -> None:
    made = window.registry.made
    wanted = ("bed.copy", "planting.compare", "view.selection")
    enabled = []
    for bed, planting in ((None, None), ("b1", None), ("b1", "p1"), (None, None)):
        window.sight.select(bed, planting)
        enabled.append("".join("x" if made(one).isEnabled() else "-" for one in wanted))
    assert enabled == ["---", "x-x", "xxx", "---"]


def test_a_crop_chosen_on_the_shelf_can_be_placed(window: MainWindow, document: Document) -> None:
    made = window.registry.made("planting.place")
    assert not made.isEnabled()
    window.shelf.list.setCurrentIndex(window.shelf.model.index(1))
    assert made.isEnabled()
    made.trigger()
    assert document.stack.undoText() == "Place Leek"


@pytest.mark.parametrize(
    ("key", "told"),
    [(Key.Key_L, "Choose a planting first"), (Key.Key_D, "Choose a bed first"), (Key.Key_Return, "on the shelf")],
)
def test_keys_of_what_cannot_be_done_say_why(window: MainWindow, qtbot: QtBot, key: Qt.Key, told: str) -> None:
    qtbot.waitUntil(window.isActiveWindow)
    window.canvas.setFocus()
    QTest.keyClick(window.canvas, key, Keys.ControlModifier)
    assert told in window.statusBar().currentMessage()


def test_undo_and_redo_say_what_they_would_do(window: MainWindow, document: Document) -> None:
    window.shelf.list.setCurrentIndex(window.shelf.model.index(1))
    window.plantings.place_from_shelf()
    made = window.registry.made
    assert made("edit.undo").text() == "&Undo Place Leek"
    document.stack.undo()
    assert made("edit.redo").text() == "&Redo Place Leek"
    assert not made("edit.undo").isEnabled()


@pytest.mark.parametrize(
    ("planting", "menu", "more"),
    [(None, "bed", []), ("p1", "planting", ["block.copy", "block.paste", "order.ways", "planting.again"])],
)
def test_the_right_button_opens_the_menu_of_what_is_selected(
    window: MainWindow, planting: str | None, menu: str, more: list[str]
) -> None:
    window.sight.select("b1", planting)
    wanted: Menu = next(one for one in window.registry.menus if one.id == menu)
    shown = window._context_menu()
    ids = [action.id for action in wanted.actions()] + more
    assert all_in(shown) == [window.registry.made(action) for action in ids]
    shown.deleteLater()


def test_copy_and_paste_stand_where_they_are_looked_for(window: MainWindow) -> None:
    assert [window.registry.path_of(action) for action in ("block.copy", "block.paste")] == ["Edit", "Edit"]


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ("Left", "Drawing"),
        ("Ctrl+Right", "rank"),
        ("Del", "remove"),
        ("Esc", "stays as it is"),
        ("A", "typed into fields"),
        ("Shift+A", "typed into fields"),
        ("Space", "typed into fields"),
        ("Alt+F", "opens the menu File"),
        ("[", "corner"),
    ],
)
def test_keys_that_stay_cannot_be_given(window: MainWindow, keys: str, told: str) -> None:
    assert told in refusal(QKeySequence(keys), window.registry.menus)


@pytest.mark.parametrize("keys", ["Ctrl+A", "Alt+1", "F9", "Ctrl+Shift+F3", "Shift+F3"])
def test_other_keys_can_be_given(window: MainWindow, keys: str) -> None:
    assert refusal(QKeySequence(keys), window.registry.menus) == ""


def test_no_menu_is_higher_than_a_small_window(window: MainWindow) -> None:
    """What is higher is scrolled through, a line at a time."""
    for action in window.menuBar().actions():
        menu = action.menu()
        assert isinstance(menu, QMenu)
        assert menu.sizeHint().height() <= 600, action.text()
