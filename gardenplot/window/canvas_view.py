"""How the canvas looks at the plan: its scale along and across, and how far it is scrolled."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.drawing.strips import GUTTER, RIGHT_MARGIN, Strips, arranged
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.units import MM
from gardenplot.window.document import Document

TAPE = 46
"""Height in pixels of the tape, which stays at the top."""
_CLOSEST, _FARTHEST = 4.0, 0.002
"""Pixels per mm: 4 shows a seed, 0.002 a bed of 500 m."""


class CanvasView(QObject):
    """The scale of a canvas; without one of its own, whatever shows the longest bed whole."""

    changed = Signal()

    def __init__(self, area: QAbstractScrollArea, document: Document) -> None:
        super().__init__(area)
        self._area, self._document = area, document
        self._along: float | None = None
        self.true_scale = False

    @property
    def along(self) -> float:
        """Pixels per millimetre along the beds."""
        return self._along if self._along is not None else self._fitting()

    @property
    def left(self) -> int:
        """Viewport x of tape zero."""
        return GUTTER - self._area.horizontalScrollBar().value()

    @property
    def top(self) -> int:
        """Viewport y of the top of the strips."""
        return TAPE - self._area.verticalScrollBar().value()

    def strips(self, plan: Plan | None = None) -> Strips:
        """Where the beds lie on the canvas."""
        laid_out, room = lay_out_plan(plan or self._document.plan), self._area.viewport().height() - TAPE
        return arranged(laid_out, self.along, true_scale=self.true_scale, room=room)

    def fit(self) -> None:
        """Show the whole length of the longest bed."""
        self._along = None
        self.settle()

    def zoom(self, factor: float, at: float | None = None) -> None:
        """Zoom along the tape, keeping the place at a viewport x where it is."""
        x = self._area.viewport().width() / 2 if at is None else at
        place = (x - self.left) / self.along
        self._along = max(_FARTHEST, min(_CLOSEST, self.along * factor))
        self.settle()
        self._area.horizontalScrollBar().setValue(round(place * self._along - (x - GUTTER)))

    def zoom_to(self, first: int, last: int) -> None:
        """Show the stretch between two tape readings in nm."""
        length = max(last - first, MM) / MM
        self._along = max(_FARTHEST, min(_CLOSEST, _room(self._area) / (length * 1.1)))
        self.settle()
        self._area.horizontalScrollBar().setValue(round((first / MM - length * 0.05) * self._along))

    def set_true_scale(self, true_scale: bool) -> None:
        """Draw across as along, or enlarge across where the beds are slim."""
        self.true_scale = true_scale
        self.settle()

    def settle(self) -> None:
        """Fit the scroll bars to what there is to see."""
        strips = self.strips()
        width, height = self._area.viewport().width(), self._area.viewport().height() - TAPE
        across, down = self._area.horizontalScrollBar(), self._area.verticalScrollBar()
        across.setPageStep(width)
        across.setSingleStep(40)
        across.setRange(0, max(0, round(GUTTER + RIGHT_MARGIN + strips.longest * self.along - width)))
        down.setPageStep(height)
        down.setSingleStep(24)
        down.setRange(0, max(0, round(strips.height - height)))
        self.changed.emit()

    def reveal(self, bed: str) -> None:
        """Scroll a bed into sight."""
        strip = self.strips().strip_of(bed)
        bar = self._area.verticalScrollBar()
        room = self._area.viewport().height() - TAPE
        if strip and not bar.value() <= strip.top - 30 <= bar.value() + room - strip.height - 60:
            bar.setValue(round(strip.top - 40))

    def _fitting(self) -> float:
        longest = max((bed.length.nm for bed in self._document.plan.beds), default=10_000 * MM)
        return max(_FARTHEST, min(_CLOSEST, _room(self._area) / (longest / MM)))


def _room(area: QAbstractScrollArea) -> int:
    """Pixels between the names of the beds and the right margin."""
    return max(120, area.viewport().width() - GUTTER - RIGHT_MARGIN)
