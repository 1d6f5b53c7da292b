"""The title of a panel beside the drawing: its name above it, and buttons that a finger or a shaking hand meets."""

from PySide6.QtWidgets import QDockWidget, QHBoxLayout, QWidget

from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import magnified
from gardenplot.window.title_buttons import title_buttons

_BUTTON = 24
"""Pixels of the side of a button with text of the usual size."""


class TopTitle(QWidget):
    """Drags the panel where it has no button."""

    def __init__(self, dock: QDockWidget) -> None:
        super().__init__(dock)
        row = QHBoxLayout(self)
        row.setContentsMargins(4, 3, 4, 0)
        row.setSpacing(2)
        name = PlainLabel(dock.windowTitle())
        name.setContentsMargins(8, 0, 8, 0)
        name.setMinimumWidth(1)
        row.addWidget(name)
        row.addStretch(1)
        side = round(_BUTTON * magnified())
        closes, floats = title_buttons(dock)
        for button in (floats, closes):
            button.setFixedSize(side, side)
            row.addWidget(button)
