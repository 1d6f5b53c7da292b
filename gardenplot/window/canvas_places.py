"""The way between points of the canvas's viewport and places in beds."""

from PySide6.QtCore import QPointF, Qt

from gardenplot.drawing.strips import Under, blocks_at, under
from gardenplot.gestures import stage
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
        return under(self._view.strips(), self._sight.day, x, y, self._sight.planting, self._sight.shaped)

    def blocks_at(self, found: Under) -> tuple[str, ...]:
        """The plantings whose blocks lie on one another at a place."""
        strip = self._view.strips().strip_of(found.bed)
        return blocks_at(strip.laid, self._sight.day, found.x) if strip is not None else ()

    def point_of(self, bed: str, x: int, y: int) -> QPointF:
        """The viewport point of a place in a bed, in nm."""
        strips, (left, top) = self._view.strips(), self._view.origin
        strip = strips.strip_of(bed)
        down = top + (strip.top if strip else 0.0)
        return QPointF(x / MM * strips.along + left, y / MM * strips.across + down) * magnified()

    def reveal(self, bed: str) -> None:
        """Scroll a bed into sight."""
        self._view.reveal(bed)

    @property
    def has_ground(self) -> bool:
        """Whether empty ground is laid out, on which alone the hand then works."""
        return self._view.has_ground

    def ground_point(self, x: int, y: int) -> QPointF:
        """The viewport point of a place on the empty ground, in nm."""
        strips, (left, top) = self._view.strips(), self._view.origin
        down = top + (strips.ground.top if strips.ground else 0.0)
        return QPointF(x / MM * strips.along + left, y / MM * strips.across + down) * magnified()

    def is_on_ground(self, point: QPointF) -> bool:
        """Whether a viewport point lies on the empty ground, or so near that a snap pulls it there."""
        away, at = point - self.ground_point(0, 0), _REACH * magnified()
        return self._view.has_ground and away.x() >= -at and away.y() >= -at

    def pointer(self, point: QPointF, modifiers: Qt.KeyboardModifier, home: str | None = None) -> "stage.Pointer":
        """A viewport point as gestures see it; Alt suspends the snaps, Shift pushes neighbours, Ctrl copies or waits.

        It is measured in the bed that it lies over, or always in the bed `home`, or on the empty ground while that is
        laid out.
        """
        found = self.under(point)
        bed = home or (found.bed if found and not self._view.has_ground else None)
        strips, zero = self._view.strips(), self.ground_point(0, 0) if bed is None else self.point_of(bed, 0, 0)
        away, on_nothing = (point - zero) / magnified(), bed is None and not self._view.has_ground
        return stage.Pointer(
            bed=bed,
            x=0 if on_nothing else round(away.x() / strips.along * MM),
            y=0 if on_nothing else round(away.y() / strips.across * MM),
            reach=round(_REACH / strips.along * MM),
            free=bool(modifiers & Qt.KeyboardModifier.AltModifier),
            reach_across=round(_REACH / strips.across * MM),
            push=bool(modifiers & Qt.KeyboardModifier.ShiftModifier),
            copies=bool(modifiers & Qt.KeyboardModifier.ControlModifier),
            waits=bool(modifiers & Qt.KeyboardModifier.ControlModifier),
        )
