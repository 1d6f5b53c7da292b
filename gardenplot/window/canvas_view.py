"""How the canvas looks at the plan: its scale along and across, and how far it is scrolled."""

from attrs import evolve, frozen
from PySide6.QtCore import QObject, QPointF, Signal
from PySide6.QtWidgets import QAbstractScrollArea

from gardenplot.drawing.strips import (
    GUTTER,
    HEADROOM,
    RIGHT_MARGIN,
    Strips,
    all_in_sight,
    arranged,
    laid_otherwise,
    stacked,
    with_ground,
)
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Bed, Plan
from gardenplot.units import MM
from gardenplot.window.canvas_names import gutter_for
from gardenplot.window.document import Document
from gardenplot.window.theme import magnified

TAPE = 46
"""Height in pixels of the tape, which stays at the top."""
_CLOSEST, _FARTHEST = 4.0, 0.002
"""Pixels per mm: 4 shows a seed, 0.002 a bed of 500 m."""


@frozen(eq=False)
class _Kept:
    """Strips as they were arranged last, for which plan, as what is shown, and on which terms."""

    plan: Plan
    shown: Plan
    terms: tuple[float, ...]
    strips: Strips


def _longest(beds: tuple[Bed, ...]) -> float:
    """The length of the longest bed in mm, or 10 m where there is none."""
    return max((bed.length.nm / MM for bed in beds), default=10_000.0)


class CanvasView(QObject):
    """The scale of a canvas; without one of its own, whatever shows the longest bed whole."""

    changed = Signal()

    def __init__(self, area: QAbstractScrollArea, document: Document) -> None:
        super().__init__(area)
        self._area, self._document = area, document
        self._along: float | None = None
        self.true_scale = False
        self.sees_all = False
        self.has_ground = False
        self._gutter = GUTTER
        self._named: tuple[object, object] = None, None
        self._measured: tuple[tuple[Bed, ...], float] = (), _longest(())
        self._kept: dict[bool, _Kept] = {}
        self._settled: object = None

    @property
    def along(self) -> float:
        """Pixels per millimetre along the beds."""
        if self._along is not None:
            return self._along
        beds = self._document.plan.beds
        if self._measured[0] is not beds:
            self._measured = beds, _longest(beds)
        return _fitting(self._measured[1], self.size[0] - self._gutter)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in pixels of text of the usual size, which all of the canvas is measured in."""
        viewport, times = self._area.viewport(), magnified()
        return viewport.width() / times, viewport.height() / times

    @property
    def origin(self) -> tuple[int, int]:
        """Where tape zero and the top of the strips are."""
        return self._gutter - self._area.horizontalScrollBar().value(), TAPE - self._area.verticalScrollBar().value()

    def strips(self, trial: Plan | None = None) -> Strips:
        """Where the beds lie on the canvas; a trial is drawn at the scale of the plan that it would change."""
        plan = self._document.plan
        shown = plan if trial is None else trial
        terms = (self.along, *self.size, self._gutter, self.true_scale, self.sees_all, self.has_ground)
        kept = self._kept.get(shown is plan)
        if kept is not None and kept.plan is plan and kept.shown is shown and kept.terms == terms:
            return kept.strips
        one, laid_out = self.strips() if shown is not plan else None, lay_out_plan(shown)
        like = self._kept.get(True)
        if like is not None and like.terms == terms and like.shown.beds is shown.beds and not self.has_ground:
            strips = laid_otherwise(like.strips, laid_out)
        else:
            if one is not None:
                strips = stacked(laid_out, one.along, one.stretch, one.headroom, one.captions)
            else:
                arrange, room = all_in_sight if self.sees_all else arranged, self.size[1] - TAPE
                strips = arrange(laid_out, self.along, true_scale=self.true_scale, room=room)
            strips = evolve(strips, gutter=self._gutter)
            strips = with_ground(strips) if self.has_ground else strips
        self._kept[shown is plan] = _Kept(plan, shown, terms, strips)
        return strips

    def show_ground(self, shown: bool) -> None:
        """Lay empty ground out under the beds and bring it into sight, or take it away again."""
        if shown == self.has_ground:
            return
        self.has_ground = shown
        self.settle()
        ground = self.strips().ground
        if ground is not None:
            self._area.verticalScrollBar().setValue(round(ground.top - HEADROOM))

    def fit(self, *, all_beds: bool = False) -> None:
        """Show the whole length of the longest bed, or of all beds at once, however small."""
        self._along, self.sees_all = None, all_beds
        self.settle()

    def zoom(self, factor: float, at: QPointF | None = None) -> None:
        """Zoom along the tape, keeping the place at a point where it is; it ends the sight of all beds."""
        point = QPointF(self.size[0] / 2, self.size[1] / 2) if at is None else at
        place = (point.x() - self.origin[0]) / self.along
        held = self.strips().nearest(point.y() - self.origin[1]) if self.sees_all else None
        self._along = max(_FARTHEST, min(_CLOSEST, self.along * factor))
        self.sees_all = False
        self.settle()
        self._area.horizontalScrollBar().setValue(round(place * self._along - (point.x() - self._gutter)))
        strip = self.strips().strip_of(held.bed) if held else None
        if strip is not None:
            self._area.verticalScrollBar().setValue(round(strip.top + strip.height / 2 + TAPE - point.y()))

    def zoom_to(self, first: int, last: int) -> None:
        """Show the stretch between two tape readings in nm."""
        length = max(last - first, MM) / MM
        self._along, self.sees_all = _fitting(length * 1.1, self.size[0] - self._gutter), False
        self.settle()
        self._area.horizontalScrollBar().setValue(round((first / MM - length * 0.05) * self._along))

    def set_true_scale(self, true_scale: bool) -> None:
        """Draw across as along, or enlarge across where the beds are slim."""
        self.true_scale = true_scale
        self.settle()

    def settle(self) -> None:
        """Fit the gutter to the names of the beds and the scroll bars to what there is to see; tell of a change."""
        plan = self._document.plan
        beds, terms = plan.beds, (plan.place.units, self.size[0])
        if self._named[0] is not beds or self._named[1] != terms:
            self._named, self._gutter = (beds, terms), gutter_for(beds, *terms)
        strips = self.strips()
        width, height = round(self.size[0]), round(self.size[1]) - TAPE
        across, down = self._area.horizontalScrollBar(), self._area.verticalScrollBar()
        across.setPageStep(width)
        across.setSingleStep(40)
        across.setRange(0, max(0, round(self._gutter + RIGHT_MARGIN + strips.longest * self.along - width)))
        down.setPageStep(height)
        down.setSingleStep(24)
        down.setRange(0, max(0, round(strips.height - height)))
        settled = self._kept[True].terms, strips.stretch, strips.longest, strips.height
        if settled != self._settled:
            self._settled = settled
            self.changed.emit()

    def reveal(self, bed: str, trial: Plan | None = None, covered: int = 0) -> None:
        """Scroll a bed into sight, perhaps one that only a trial has; there is room for that until it settles.

        Something lies over so many pixels at the foot.
        """
        strips = self.strips(trial)
        strip = strips.strip_of(bed)
        bar = self._area.verticalScrollBar()
        room = self.size[1] - TAPE - covered / magnified()
        if trial is not None:
            bar.setRange(0, max(bar.maximum(), round(strips.height - room)))
        if strip and bar.maximum() and not bar.value() <= strip.top - 30 <= bar.value() + room - strip.height - 60:
            bar.setValue(round(strip.top - 40))


def _fitting(length: float, width: float) -> float:
    """Pixels per mm at which a length in mm fills a width but for the right margin."""
    return max(_FARTHEST, min(_CLOSEST, max(120, width - RIGHT_MARGIN) / length))
