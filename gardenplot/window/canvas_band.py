"""The rubber band: a frame drawn over the beds, and the plantings that it takes in."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPointF, QRectF, Signal

from gardenplot.gestures import choosing
from gardenplot.window.canvas_view import CanvasView
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified

if TYPE_CHECKING:
    from gardenplot.gestures.choosing import Chosen


class Band(QObject):
    """Nothing is chosen before the hand lets go, so that giving up leaves what was chosen as it was."""

    drawn = Signal()

    def __init__(self, view: CanvasView, sight: Sight, parent: QObject) -> None:
        super().__init__(parent)
        self._view, self._sight = view, sight
        self._start: QPointF | None = None
        self._kept: Chosen = ()
        self.rect: QRectF | None = None
        self.inside: Chosen = ()

    @property
    def is_begun(self) -> bool:
        """Whether the hand has pressed where a band may be drawn from."""
        return self._start is not None

    def begin(self, point: QPointF, kept: "Chosen") -> None:
        """Begin at a viewport point; what is `kept` stays chosen."""
        self._start, self._kept = point, kept

    def draw_to(self, point: QPointF, least: float) -> None:
        """Draw the band to a viewport point, once that is `least` pixels away from where it began."""
        if self._start is None or (self.rect is None and (point - self._start).manhattanLength() < least):
            return
        left, top = self._view.origin
        ends = [(at.x() / magnified() - left, at.y() / magnified() - top) for at in (self._start, point)]
        self.rect = QRectF(self._start / magnified(), point / magnified()).normalized()
        self.inside = choosing.joined(
            self._kept, choosing.framed(self._view.strips(), self._sight.day, ends[0], ends[1])
        )
        self.drawn.emit()

    def finish(self) -> "Chosen | None":
        """End it and give what is chosen; None where no band was drawn."""
        inside = self.inside if self.rect is not None else None
        self.give_up()
        return inside

    def give_up(self) -> None:
        """Take the band away."""
        self._start, self.rect, self.inside, self._kept = None, None, (), ()
        self.drawn.emit()
