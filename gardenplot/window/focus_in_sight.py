"""The keyboard is never out of sight: what gets it is scrolled into sight, and its panel comes before the others."""

from functools import cache

from PySide6.QtWidgets import QApplication, QDockWidget, QScrollArea, QWidget


@cache
def keep_focus_in_sight(app: QApplication) -> None:
    """Let this be so in all windows of the program."""
    app.focusChanged.connect(_bring_into_sight)


def _bring_into_sight(before: QWidget | None, now: QWidget | None) -> None:
    """Qt scrolls only where Tab goes from field to field inside an area, not where it comes in from outside.

    Where the keyboard only comes back along with the window, the panel that was looked at last stays in front.
    """
    if before is None or now is None or not now.visibleRegion().isEmpty():
        return
    around = now.parentWidget()
    while around is not None and not around.isWindow():
        if isinstance(around, QScrollArea):
            down, at = around.verticalScrollBar(), around.verticalScrollBar().value()
            around.ensureWidgetVisible(now)
            if now.height() > around.viewport().height():
                # What is higher than the area is read on at the height where the eyes are.
                down.setValue(at)
        elif isinstance(around, QDockWidget):
            around.raise_()
        around = around.parentWidget()
