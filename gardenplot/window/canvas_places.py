"""The way between points of the canvas's viewport and places in beds."""

from PySide6.QtCore import QPointF, Qt

from gardenplot.drawing.strips import Under, under
from gardenplot.gestures.stage import Pointer
from gardenplot.units import MM
from gardenplot.window.canvas_view import TAPE, CanvasView
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

_REACH = 10
"""How many pixels a snap pulls."""


class CanvasPlaces:
    """Looks points up in the strips as they are now."""

    def __init__(self, view: CanvasView, sight: Sight) -> None:
        self._view, self._sight = view, sight

    def under(self, point: QPointF) -> Under | None:
        """What lies under a point of the viewport."""
        at, (left, top) = point / magnified(), self._view.origin
        if at.y() < TAPE:
            return None
        x, y = at.x() - left, at.y() - top
        return under(self._view.strips(), self._sight.day, x, y, self._sight.planting)

    def point_of(self, bed: str, x: int, y: int) -> QPointF:
        """The viewport point of a place in a bed, in nm."""
        strips, (left, top) = self._view.strips(), self._view.origin
        strip = strips.strip_of(bed)
        down = top + (strip.top if strip else 0.0)
        return QPointF(x / MM * strips.along + left, y / MM * strips.across + down) * magnified()

    def pointer(self, point: QPointF, modifiers: Qt.KeyboardModifier) -> Pointer:
        """A viewport point as gestures see it; Alt suspends the snaps."""
        found = self.under(point)
        return Pointer(
            bed=found.bed if found else None,
            x=found.x if found else 0,
            y=found.y if found else 0,
            reach=round(_REACH / self._view.along * MM),
            free=bool(modifiers & Qt.KeyboardModifier.AltModifier),
        )
