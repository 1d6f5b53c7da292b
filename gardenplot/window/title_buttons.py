"""The two buttons in the title of a panel, which close it and let it float; they grow with the system's text."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QDockWidget, QToolButton

from gardenplot.files import resource
from gardenplot.window.theme import magnified
from gardenplot.words import _

_MARK = 10
"""Pixels of a mark with text of the usual size."""


def title_buttons(dock: QDockWidget) -> tuple[QToolButton, QToolButton]:
    """What closes a panel, and what lets it float or puts it back."""
    name = dock.windowTitle()
    closes = _button(dock, "close", _("Close {panel}").format(panel=name), dock.close)
    free = _("Let {panel} float, or put it back").format(panel=name)
    return closes, _button(dock, "float", free, lambda: dock.setFloating(not dock.isFloating()))


def _button(dock: QDockWidget, mark: str, words: str, does: Callable[[], object]) -> QToolButton:
    button, side = QToolButton(dock), round(_MARK * magnified())
    button.setAutoRaise(True)
    button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    button.setIcon(QIcon(str(resource(f"marks/{mark}.svg"))))
    button.setIconSize(QSize(side, side))
    button.setToolTip(words)
    button.setAccessibleName(words)
    button.clicked.connect(does)
    return button
