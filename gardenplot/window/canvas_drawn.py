"""Beds as they are drawn on the canvas, and what cannot be done in them: found once for all that shows the same."""

from datetime import date
from typing import TYPE_CHECKING

from attrs import frozen

from gardenplot.drawing.bed import BedFigure, draw_bed
from gardenplot.drawing.covers import Layer, over_bed
from gardenplot.drawing.detail import Detail, detail_at
from gardenplot.drawing.letters import Look
from gardenplot.drawing.strips import Strip
from gardenplot.findings import Finding
from gardenplot.plan import Plan
from gardenplot.window.canvas_faults import faults

if TYPE_CHECKING:
    from gardenplot.window.canvas_paint import Scene


@frozen
class Drawn:
    """A bed as it is drawn, and what cannot be done in it."""

    figure: BedFigure
    faults: tuple[Finding, ...]


@frozen(eq=False)
class _Terms:
    """All of a scene that tells how its beds are drawn."""

    plan: Plan
    before: Plan | None
    is_tried: bool
    day: date | None
    layers: frozenset[Layer]
    across: float
    has_captions: bool

    def hold(self, other: "_Terms") -> bool:
        """Whether others are the same; a plan is only itself, since comparing all of it would take too long."""
        if self.plan is not other.plan or self.before is not other.before or self.is_tried is not other.is_tried:
            return False
        same = self.day == other.day and self.layers == other.layers
        return same and self.across == other.across and self.has_captions is other.has_captions


class DrawnBeds:
    """The beds of a scene as they are drawn, each found when it is first asked for."""

    def __init__(self) -> None:
        self._terms: _Terms | None = None
        self._drawn: dict[str, Drawn] = {}

    def follow(self, scene: "Scene") -> None:
        """Let go of all that another scene would show otherwise."""
        strips, is_tried = scene.strips, scene.trial is not None
        terms = _Terms(
            scene.plan, scene.before, is_tried, scene.day, scene.layers, strips.across, strips.has_captions
        )
        if self._terms is None or not self._terms.hold(terms):
            self._terms, self._drawn = terms, {}

    def of(self, scene: "Scene", strip: Strip, look: dict[str, Look]) -> Drawn:
        """A bed of the scene that is followed."""
        bed = strip.laid.bed.id
        drawn = self._drawn.get(bed)
        if drawn is None:
            drawn = self._drawn[bed] = Drawn(_figure(scene, strip, look), faults(scene, strip))
        return drawn


def _figure(scene: "Scene", strip: Strip, look: dict[str, Look]) -> BedFigure:
    told = scene.strips.has_captions
    detail = detail_at(strip.laid, scene.strips.across) if told else Detail.BLOCKS
    over = over_bed(scene.plan, strip.bed, scene.day, scene.layers)
    return draw_bed(strip.laid, scene.day, look, scene.plan.place.units, detail, over)
