"""What of a widget is painted."""

from PySide6.QtCore import QEvent, QObject, QRect
from PySide6.QtGui import QPaintEvent


class Painted(QObject):
    """Keeps what of the widgets that it watches is painted, time by time."""

    def __init__(self) -> None:
        super().__init__()
        self.rects: list[QRect] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  # the name is Qt's
        if isinstance(event, QPaintEvent):
            self.rects.append(event.rect())
        return super().eventFilter(watched, event)
