"""The way between points of the canvas's viewport and places in beds."""

from PySide6.QtCore import QPointF, Qt

from gardenplot.drawing.strips import Under, under
from gardenplot.gestures.stage import Pointer
from gardenplot.units import MM
from gardenplot.window.canvas_view import TAPE, CanvasView
from gardenplot.window.sight import Sight

_REACH = 10
"""How many pixels a snap pulls."""


class CanvasPlaces:
    """Looks points up in the strips as they are now."""

    def __init__(self, view: CanvasView, sight: Sight) -> None:
        self._view, self._sight = view, sight

    def under(self, point: QPointF) -> Under | None:
        """What lies under a point of the viewport."""
        if point.y() < TAPE:
            return None
        x, y = point.x() - self._view.left, point.y() - self._view.top
        return under(self._view.strips(), self._sight.day, x, y, self._sight.planting)

    def point_of(self, bed: str, x: int, y: int) -> QPointF:
        """The viewport point of a place in a bed, in nm."""
        strips = self._view.strips()
        strip = strips.strip_of(bed)
        top = strip.top if strip else 0.0
        return QPointF(x / MM * strips.along + self._view.left, top + y / MM * strips.across + self._view.top)

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
