"""What is painted at every turn and stays as it is, as pictures: words on their chips, names, the tape."""

from collections.abc import Callable, Hashable
from math import ceil

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap


class KeptPictures:
    """Pictures by what paints them and of what, `most` of them; the one that was made first is let go first."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._made: dict[Hashable, QPixmap] = {}

    def show(self, painter: QPainter, frame: QRectF, paint: Callable[..., None], *told: Hashable) -> None:
        """Show in a frame what `paint` paints from its top left corner on, with a painter and what it is told.

        The frame lies on whole pixels of the screen, whose size is the same to the right and down.
        """
        device = painter.deviceTransform()
        sharp, beside, above = device.m11(), device.dx(), device.dy()
        key = (paint, told, sharp, frame.width(), frame.height())
        picture = self._made.get(key)
        if picture is None:
            picture = self._made[key] = _blank(frame, sharp)
            on = QPainter(picture)
            on.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
            on.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint(on, *told)
            on.end()
            if len(self._made) > self._most:
                del self._made[next(iter(self._made))]
        left, top = round(beside + frame.left() * sharp), round(above + frame.top() * sharp)
        painter.drawPixmap(QPointF((left - beside) / sharp, (top - above) / sharp), picture)


def _blank(frame: QRectF, sharp: float) -> QPixmap:
    """A clear picture as large as a frame, with so many pixels of the screen to a pixel."""
    picture = QPixmap(max(1, ceil(frame.width() * sharp)), max(1, ceil(frame.height() * sharp)))
    picture.setDevicePixelRatio(sharp)
    picture.fill(Qt.GlobalColor.transparent)
    return picture
