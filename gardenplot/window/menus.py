"""The menu bar, made from the registry of all actions."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QMenu, QWidget

from gardenplot.window.action import Action, Entry, Submenu
from gardenplot.window.registry import Registry
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

_COPIES = ("block.copy", "block.paste")
_AMISS = ("order.ways", "planting.again")
"""What is looked for at a planting, at one that does not fit or does not go as planned, though in other menus."""


def fill_menus(window: "MainWindow") -> None:
    """Fill the menu bar of a window."""
    for menu in window.registry.menus:
        bar = window.menuBar().addMenu(menu.words)
        bar.setObjectName(menu.id)
        _fill(bar, menu.entries, window.registry)


def context_menu(registry: Registry, menu: str, parent: QWidget) -> QMenu:
    """A menu of the menu bar, to be opened anywhere; for a planting with what helps when it goes amiss."""
    made = QMenu(parent)
    entries = next(one.entries for one in registry.menus if one.id == menu)
    _fill(made, entries, registry)
    if menu == "planting":
        for others in (_COPIES, _AMISS):
            made.addSeparator()
            made.addActions([registry.made(action) for action in others])
    return made


def fill_with(menu: QMenu, entries: Sequence[tuple[str, Callable[[], object]]]) -> None:
    """Fill a menu anew with words and what each does; with a line that says so where there is nothing."""
    menu.clear()
    for words, does in entries:
        menu.addAction(words).triggered.connect(lambda _checked=False, does=does: does())
    if not entries:
        menu.addAction(_("none yet")).setEnabled(False)


def _fill(menu: QMenu, entries: tuple[Entry, ...], registry: Registry) -> None:
    menu.setToolTipsVisible(True)
    menu.aboutToShow.connect(registry.refresh)
    for entry in entries:
        if isinstance(entry, Action):
            menu.addAction(registry.made(entry.id))
        elif isinstance(entry, Submenu):
            _add_submenu(menu.addMenu(entry.words), entry, registry)
        else:
            menu.addSeparator()


def _add_submenu(menu: QMenu, entry: Submenu, registry: Registry) -> None:
    _fill(menu, entry.entries, registry)
    fill = entry.fill
    if fill is not None:
        menu.aboutToShow.connect(lambda: fill(menu))
