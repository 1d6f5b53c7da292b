"""How much of its screen a widget may take."""

from PySide6.QtCore import QSize
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget


def room_on_screen(widget: QWidget) -> QSize:
    """The free size in pixels of the screen that its window is on or, before that is shown, the one it belongs to.

    No widget is asked for its screen: PySide takes that for a part of the widget, throws the screen away with it, and
    whatever is painted next brings the program down.
    """
    window = widget.window()
    parent = window.parentWidget()
    while not window.isVisible() and parent is not None:
        window = parent.window()
        parent = window.parentWidget()
    screen = QGuiApplication.screenAt(window.frameGeometry().center()) if window.isVisible() else None
    return (screen or QGuiApplication.primaryScreen()).availableSize()
