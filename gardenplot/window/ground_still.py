"""Pictures of what stays on the ground while beds are moved, kept until they would show something else."""

from collections.abc import Callable

from attrs import evolve
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap
from PySide6.QtWidgets import QWidget

from gardenplot.window.ground_paint import GroundScene, paint_names, paint_still, shown_still
from gardenplot.window.theme import magnified, palette


class GroundStill:
    """The ground without the chosen beds; while the hand is about beds, without these and with all other words."""

    def __init__(self, area: QWidget) -> None:
        self._area = area
        self._kept: tuple[tuple[object, ...], QPixmap] | None = None
        self._held: tuple[tuple[str, ...], QPixmap] | None = None

    def forget(self) -> None:
        """The hand holds beds no more, or the view looks elsewhere."""
        self._held = None

    def picture(self, frame: QRectF, scene: GroundScene) -> QPixmap:
        """All but the chosen beds and the words, painted anew where something of that is another by now."""
        shows = (palette(), magnified(), self._area.devicePixelRatioF(), *shown_still(frame, scene))
        if self._kept is None or self._kept[0] != shows:
            self._kept = shows, self._painted(frame, scene, paint_still)
        return self._kept[1]

    def picture_in_hand(self, frame: QRectF, before: GroundScene, held: tuple[str, ...]) -> QPixmap:
        """All that stays of the scene before, painted once while the hand is about the same beds."""
        if self._held is None or self._held[0] != held:
            self._held = held, self._painted(frame, evolve(before, beds=held), paint_still, paint_names)
        return self._held[1]

    def _painted(self, frame: QRectF, scene: GroundScene, *paints: Callable[..., None]) -> QPixmap:
        times = self._area.devicePixelRatioF()
        image = QPixmap(self._area.size() * times)
        image.setDevicePixelRatio(times)
        painter = QPainter(image)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(magnified(), magnified())
        for paint in paints:
            paint(painter, frame, scene)
        painter.end()
        image.setDevicePixelRatio(times * magnified())
        return image
