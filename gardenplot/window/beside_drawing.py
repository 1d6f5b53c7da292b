"""Dialogs that leave the drawing in sight: at the foot of the window, or where text is large at its side."""

from PySide6.QtCore import QPoint, QRect, QSize
from PySide6.QtWidgets import QDialog, QWidget

from gardenplot.window.fields import LARGE
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import magnified

_EDGE = 12
"""Pixels between such a dialog and the window's edges."""
_TITLE = 32
"""Pixels of height for its title."""
_LEAST_SHARE, _LEAST_WIDTH = 0.26, 155
"""Its share of the width of a window that has nothing beside the drawing; its pixels for text of the usual size."""


def show_beside_drawing(dialog: QDialog, window: QWidget, drawing: QWidget) -> None:
    """Show a dialog over the foot of a window, or over what stands beside the drawing, where more of that is."""
    room = window.size().boundedTo(room_on_screen(window))
    wanted, least = dialog.sizeHint(), dialog.minimumSizeHint()
    left, right = _beside(window, drawing)
    is_aside = magnified() >= LARGE
    size = _aside(room, max(left, right)) if is_aside else QSize(room.width() - 2 * _EDGE, room.height() * 11 // 20)
    dialog.resize((size if is_aside else wanted.boundedTo(size)).expandedTo(least))
    dialog.show()
    at = (window.width() - dialog.width()) // 2
    if is_aside:
        at = _EDGE if left > right else window.width() - dialog.width() - _EDGE
    dialog.move(window.mapToGlobal(QPoint(at, max(0, window.height() - dialog.height() - _EDGE))))


def _beside(window: QWidget, drawing: QWidget) -> tuple[int, int]:
    """How many pixels of a window stand left and right of the drawing."""
    frame = QRect(drawing.mapTo(window, QPoint(0, 0)), drawing.size())
    return frame.left(), window.width() - 1 - frame.right()


def _aside(room: QSize, beside: int) -> QSize:
    """As wide as what stands beside the drawing, and nearly as high as the window."""
    width = max(beside - 2 * _EDGE, round(room.width() * _LEAST_SHARE), round(_LEAST_WIDTH * magnified()))
    return QSize(width, room.height() - 2 * _EDGE - _TITLE)


def covered(dialog: QDialog, drawing: QWidget) -> int:
    """How many pixels of a drawing a dialog lies over at its foot."""
    frame = QRect(drawing.mapToGlobal(QPoint(0, 0)), drawing.size())
    over = frame.intersected(dialog.frameGeometry())
    is_at_foot = over.width() * 2 > frame.width() and over.bottom() >= frame.bottom()
    return frame.bottom() - over.top() + 1 if is_at_foot else 0
