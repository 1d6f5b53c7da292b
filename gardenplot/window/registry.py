"""The registry of all actions: the one place that knows each by its id, its keys, and whether it can be done."""

from collections.abc import Iterable

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QWidget

from gardenplot.window.action import Action, Menu
from gardenplot.window.settings import keep_keys, kept_keys

_HELD = (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_Meta, Qt.Key.Key_AltGr)
"""Keys that are held for others, and call nothing by themselves."""


class Registry(QObject):
    """Makes one QAction of each action, gives it the keys that the grower chose, and says why it cannot be done."""

    keys_changed = Signal()

    def __init__(self, menus: tuple[Menu, ...], window: QWidget) -> None:
        super().__init__(window)
        self.menus, self.window = menus, window
        self.actions = {action.id: action for menu in menus for action in menu.actions()}
        kept = kept_keys()
        self._made = {one.id: self._make(one, kept.get(one.id, one.keys)) for one in self.actions.values()}
        for made in self._made.values():
            window.addAction(made)
        self.refresh()

    def made(self, action: str) -> QAction:
        """What stands in the menus for an action."""
        return self._made[action]

    def path_of(self, action: str) -> str:
        """The menu that an action stands in: "Bed", "File ▸ Open an example"."""
        wanted = self.actions[action]
        return next(menu.path_of(wanted) for menu in self.menus if wanted in menu.actions())

    def keys(self, action: str) -> tuple[QKeySequence, ...]:
        """The keys of an action as they are now."""
        return tuple(self._made[action].shortcuts())

    def owner_of(self, keys: QKeySequence) -> Action | None:
        """The action that keys call."""
        return next((one for one in self.actions.values() if keys in self.keys(one.id)), None)

    def give_keys(self, action: str, keys: Iterable[QKeySequence]) -> None:
        """Give an action keys of its own, which others lose, and remember both."""
        given = tuple(keys)
        for other in self.actions.values():
            left = tuple(one for one in self.keys(other.id) if one not in given)
            if other.id != action and left != self.keys(other.id):
                self._set(other, left)
        self._set(self.actions[action], given)
        self.keys_changed.emit()

    def reset_keys(self) -> None:
        """Give all actions the keys that they had at first."""
        for action in self.actions.values():
            self._set(action, action.keys)
        self.keys_changed.emit()

    def refresh(self) -> None:
        """Enable what can be done now; what cannot says why where the pointer rests on it."""
        for action in self.actions.values():
            made, reason = self._made[action.id], action.why_not()
            made.setEnabled(not reason)
            made.setToolTip(reason)
            made.setStatusTip(reason)
            if action.is_on is not None:
                made.setChecked(action.is_on())

    def tie(self, button: QAbstractButton, action: str) -> None:
        """Let a button do an action: it can be pressed while that can be done, else its tip says why not."""
        made = self._made[action]

        def follow() -> None:
            button.setEnabled(made.isEnabled())
            button.setToolTip(self.actions[action].why_not())

        button.clicked.connect(made.trigger)
        made.changed.connect(follow)
        follow()

    def answer(self, event: QKeyEvent) -> str | None:
        """What to say to keys that nobody took: why their action cannot be done, None where they have none.

        An action that can be done by now is done.
        """
        if event.key() in _HELD:
            return None
        action = self.owner_of(QKeySequence(event.keyCombination()))
        if action is None:
            return None
        self.refresh()
        reason = action.why_not()
        if not reason:
            self._made[action.id].trigger()
        return reason

    def _make(self, action: Action, keys: tuple[QKeySequence, ...]) -> QAction:
        made = action.made or QAction(action.words, self)
        made.setShortcuts(list(keys))
        if action.made is None and action.toggles is not None:
            made.setCheckable(True)
            made.toggled.connect(action.toggles)
        elif action.made is None:
            made.triggered.connect(lambda _checked=False: action.does())
        return made

    def _set(self, action: Action, keys: tuple[QKeySequence, ...]) -> None:
        self._made[action.id].setShortcuts(list(keys))
        keep_keys(action.id, keys, at_first=action.keys)
