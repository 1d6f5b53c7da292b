"""A canvas painted strip by strip, so that what else the window is asked for is answered in between."""

from collections.abc import Callable, Iterator, Sequence

from PySide6.QtCore import QObject, QRect, QTimer
from PySide6.QtGui import QRegion
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.strips import Strip

MOST = 12
"""So many parts at most: each of them paints what lies over all of the canvas too."""


def bands(strips: Sequence[Strip], top: float, frame: QRect) -> Iterator[QRect]:
    """Parts of a frame from top to bottom with a strip each, or with several where there are many; `top` is where
    strips begin in the frame."""
    feet = [round(strip.top + strip.height + top) for strip in strips]
    edges = [foot for foot in feet if frame.top() < foot < frame.bottom()]
    begin = frame.top()
    for edge in edges[:: 1 + len(edges) // MOST]:
        yield QRect(frame.left(), begin, frame.width(), edge - begin)
        begin = edge
    yield QRect(frame.left(), begin, frame.width(), frame.bottom() + 1 - begin)


class BitByBit(QObject):
    """Has parts of a widget painted one after another, the next when the last one is and nobody waits.

    Each is made ready before, a step in a turn.
    """

    def __init__(self, widget: QWidget, make_ready: Callable[[QRegion], Iterator[None]]) -> None:
        super().__init__(widget)
        self._widget, self._make_ready, self._waiting = widget, make_ready, list[QRegion]()
        self._steps: Iterator[None] | None = None

    def paint(self, parts: Sequence[QRegion]) -> None:
        """Begin anew with these parts."""
        self._waiting, self._steps = [*parts], None
        QTimer.singleShot(0, self, self._go_on)

    def painted(self, region: QRegion) -> None:
        """To be told of all that was painted, which then waits no longer."""
        if self._waiting:
            left = (part - region for part in self._waiting)
            self._waiting, self._steps = [part for part in left if not part.isEmpty()], None
            QTimer.singleShot(0, self, self._go_on)

    def _go_on(self) -> None:
        if not self._waiting:
            return
        if self._steps is None:
            self._steps = self._make_ready(self._waiting[0])
        for _step in self._steps:
            QTimer.singleShot(0, self, self._go_on)
            return
        self._widget.update(self._waiting[0])
