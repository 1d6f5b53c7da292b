"""What is painted at every turn and stays as it is, as pictures: words on their chips, names, the tape."""

from collections.abc import Callable, Hashable
from math import ceil

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap


class KeptPictures:
    """Pictures by what they show, `most` of them; the one that was made first is let go first."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._made: dict[Hashable, QPixmap] = {}

    def show(self, painter: QPainter, frame: QRectF, key: Hashable, paint: Callable[[QPainter], None]) -> None:
        """Show in a frame what `paint` paints from its top left corner on; the `key` tells all that it hangs on.

        The frame lies on whole pixels of the screen, whose size is the same to the right and down.
        """
        device = painter.deviceTransform()
        sharp, beside, above = device.m11(), device.dx(), device.dy()
        picture = self._made.get((key, sharp))
        if picture is None:
            picture = self._made[key, sharp] = _painted(frame, sharp, paint)
            if len(self._made) > self._most:
                del self._made[next(iter(self._made))]
        left, top = round(beside + frame.left() * sharp), round(above + frame.top() * sharp)
        painter.drawPixmap(QPointF((left - beside) / sharp, (top - above) / sharp), picture)


def _painted(frame: QRectF, sharp: float, paint: Callable[[QPainter], None]) -> QPixmap:
    picture = QPixmap(max(1, ceil(frame.width() * sharp)), max(1, ceil(frame.height() * sharp)))
    picture.setDevicePixelRatio(sharp)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paint(painter)
    painter.end()
    return picture
