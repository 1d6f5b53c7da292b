"""How the view of the ground looks at it: its scale, where the peg is, and the way between pixels and the ground."""

from PySide6.QtCore import QObject, QPointF, Qt, Signal
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.ground import GroundFigure, draw_ground
from gardenplot.drawing.ground_under import Eye, OnGround, eye_on, on_ground
from gardenplot.gestures.stage import Pointer
from gardenplot.units import MM
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

_MARGIN, _LEAST_MARGIN = 64.0, 24.0
"""Pixels round the ground where it is shown whole, and at least where the view is low."""
_NAMES = 56.0
"""Pixels more on the left, for names before heads."""
_FOOT = 48.0
"""Pixels at the foot in which the scale bar stands."""
_REACH = 10
"""How many pixels a snap pulls."""


class GroundEye(QObject):
    """Shows the whole ground until it is moved; beds that are moved do not move it, since nothing shall jump."""

    changed = Signal()

    def __init__(self, area: QWidget, document: Document, sight: Sight) -> None:
        super().__init__(area)
        self._area, self._document, self._sight = area, document, sight
        self._eye: Eye | None = None
        self._fitted: tuple[tuple[float, float], Eye] | None = None

    @property
    def figure(self) -> GroundFigure:
        """What lies on the ground of the plan."""
        return draw_ground(self._document.plan, self._sight.day)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in pixels of text of the usual size, which all of the view is measured in."""
        return self._area.width() / magnified(), self._area.height() / magnified()

    @property
    def eye(self) -> Eye:
        """Where it looks now."""
        if self._eye is not None:
            return self._eye
        if self._fitted is None or self._fitted[0] != self.size:
            room = _margin(self.size)
            self._fitted = self.size, eye_on(self.figure.reach, self.size, room, names=_NAMES, foot=_FOOT)
        return self._fitted[1]

    def fit(self) -> None:
        """Show the whole ground."""
        self._fitted = None
        self._look(None)

    def zoom(self, factor: float, at: QPointF | None = None) -> None:
        """Zoom, keeping what lies under a point where it is."""
        width, height = self.size
        point = at / magnified() if at is not None else QPointF(width / 2, height / 2)
        self._look(self.eye.zoomed(factor, point.x(), point.y()))

    def pan(self, by: QPointF) -> None:
        """Move the ground along with the hand."""
        step = by / magnified()
        self._look(self.eye.moved(step.x(), step.y()))

    def zoom_to(self, bed: str) -> None:
        """Show a bed as large as fits."""
        one = self.figure.bed_of(bed)
        if one is not None:
            xs, ys = [x for x, _y in one.corners], [y for _x, y in one.corners]
            self._look(eye_on((min(xs), min(ys), max(xs), max(ys)), self.size, _margin(self.size), foot=_FOOT))

    def reveal(self, bed: str) -> None:
        """Bring a bed into sight, if nothing of its middle is."""
        one = self.figure.bed_of(bed)
        if one is None:
            return
        x, y = (sum(axis) / len(one.corners) for axis in zip(*one.corners, strict=True))
        left, top = self.eye.pixels((x, y))
        width, height = self.size
        if not (0 <= left <= width and 0 <= top <= height):
            self._look(self.eye.moved(width / 2 - left, height / 2 - top))

    def under(self, point: QPointF) -> OnGround | None:
        """What lies under a point of the view."""
        at = point / magnified()
        return on_ground(self.figure, self.eye, self._sight.day, at.x(), at.y(), self._sight.bed)

    def pointer(self, point: QPointF, *, free: bool = False) -> Pointer:
        """A point of the view as gestures see it, in nm from the peg."""
        at, eye = point / magnified(), self.eye
        x, y = eye.spot(at.x(), at.y())
        reach = round(_REACH / eye.scale * MM)
        return Pointer(None, round(x * MM), round(y * MM), reach, free, reach)

    def _look(self, eye: Eye | None) -> None:
        self._eye = eye
        self.changed.emit()


def bed_pointer(eye: GroundEye, point: QPointF, modifiers: Qt.KeyboardModifier) -> Pointer:
    """A point of the view as gestures in a bed see it: in nm in the frame of the bed that it lies over."""
    found, reach = eye.under(point), round(_REACH / eye.eye.scale * MM)
    free = bool(modifiers & Qt.KeyboardModifier.AltModifier)
    if found is None or found.is_handle:
        return Pointer(None, 0, 0, reach, free, reach)
    return Pointer(found.bed, found.x, found.y, reach, free, reach)


def _margin(size: tuple[float, float]) -> float:
    """Pixels round what is shown whole, fewer where the view is low."""
    return max(_LEAST_MARGIN, min(_MARGIN, 0.16 * size[1]))
