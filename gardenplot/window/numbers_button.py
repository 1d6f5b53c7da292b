"""The button that opens how the numbers of a dialog came about, with the keys that do so in the window."""

from collections.abc import Callable

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QPushButton, QWidget

from gardenplot.drawing.opened import Opened
from gardenplot.plan import Plan
from gardenplot.window.action import key_words
from gardenplot.window.late import show_numbers
from gardenplot.window.plain import as_is
from gardenplot.window.settings import kept_keys
from gardenplot.words import _

ACTION, KEYS = "supply.numbers", "Ctrl+Shift+N"
"""The action of the window that asks the same, and its keys at first."""


class NumbersButton(QPushButton):
    """Asks `opens` for a plan and its numbers, those of what is chosen in the dialog; nothing opens without any."""

    def __init__(self, opens: Callable[[], tuple[Plan, Opened] | None], parent: QWidget) -> None:
        super().__init__(_("Numbers …"), parent)
        self._opens = opens
        keys = kept_keys().get(ACTION, (QKeySequence(KEYS),))
        if keys:
            self.setShortcut(keys[0])
            self.setToolTip(as_is(key_words(keys[:1])))
        self.setAutoDefault(False)
        self.clicked.connect(self._ask)

    def _ask(self) -> None:
        found = self._opens()
        if found is not None:
            show_numbers(*found, self.window())
