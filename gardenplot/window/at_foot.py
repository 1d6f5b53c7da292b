"""Dialogs that stand at the foot of the window, so that the drawing stays in sight."""

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QDialog, QWidget

_EDGE = 12
"""Pixels between such a dialog and the window's edges."""


def show_at_foot(dialog: QDialog, window: QWidget) -> None:
    """Show a dialog over the foot of a window, no wider than that and little more than half as high."""
    room, wanted = window.size().boundedTo(window.screen().availableSize()), dialog.sizeHint()
    least = dialog.minimumSizeHint()
    width = max(least.width(), min(wanted.width(), room.width() - 2 * _EDGE))
    height = max(least.height(), min(wanted.height(), room.height() * 11 // 20))
    dialog.resize(width, height)
    dialog.show()
    left, top = (window.width() - dialog.width()) // 2, window.height() - dialog.height() - _EDGE
    dialog.move(window.mapToGlobal(QPoint(left, max(0, top))))
