"""Pictures of what stays on the ground while beds are moved, kept until they would show something else."""

from collections.abc import Callable
from functools import partial

from attrs import evolve
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPixmap, QPolygonF
from PySide6.QtWidgets import QWidget

from gardenplot.window.ground_paint import (
    GroundScene,
    others_in,
    paint_names,
    paint_still,
    paint_unplaced,
    shown_still,
    unplaced,
)
from gardenplot.window.theme import magnified, palette


class GroundStill:
    """The ground without the chosen beds; while the hand is about beds, without these and with all other words."""

    def __init__(self, area: QWidget) -> None:
        self._area = area
        self._kept: tuple[tuple[object, ...], QPixmap] | None = None
        self._dashed: tuple[QPixmap, tuple[QPolygonF, ...], QPixmap] | None = None
        self._held: tuple[tuple[str, ...], QPixmap] | None = None

    def forget(self) -> None:
        """The hand holds beds no more, or the view looks elsewhere."""
        self._held = None

    def picture(self, frame: QRectF, scene: GroundScene) -> QPixmap:
        """All but the chosen beds and the words, painted anew where something of that is another by now.

        Beds without a place have their dashes on a picture of its own: the first bed that is moved gives all their
        place, and they lie as before.
        """
        others = others_in(frame, scene)
        shows = (palette(), magnified(), self._area.devicePixelRatioF(), *shown_still(frame, scene, others))
        if self._kept is None or self._kept[0] != shows:
            self._kept = shows, self._painted(partial(paint_still, frame=frame, scene=scene, others=others))
        picture, outlines = self._kept[1], unplaced(scene, others)
        if not outlines:
            self._dashed = None
            return picture
        if self._dashed is None or self._dashed[0] is not picture or self._dashed[1] != outlines:
            dashed = self._painted(partial(paint_unplaced, outlines=outlines), upon=picture)
            self._dashed = picture, outlines, dashed
        return self._dashed[2]

    def picture_in_hand(self, frame: QRectF, before: GroundScene, held: tuple[str, ...]) -> QPixmap:
        """All that stays of the scene before, painted once while the hand is about the same beds."""
        if self._held is None or self._held[0] != held:
            scene = evolve(before, beds=held)
            names = partial(paint_names, frame=frame, scene=scene)
            self._held = held, self._painted(names, upon=self.picture(frame, scene))
        return self._held[1]

    def _painted(self, paint: Callable[[QPainter], None], upon: QPixmap | None = None) -> QPixmap:
        """A picture of the area, perhaps upon another one."""
        times = self._area.devicePixelRatioF()
        image = QPixmap(self._area.size() * times) if upon is None else QPixmap(upon)
        image.setDevicePixelRatio(times)
        painter = QPainter(image)
        painter.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(magnified(), magnified())
        paint(painter)
        painter.end()
        image.setDevicePixelRatio(times * magnified())
        return image
