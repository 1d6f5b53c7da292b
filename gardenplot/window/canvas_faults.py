"""A small quiet mark above a bed at each place where something cannot be done; the list of findings has the words."""

from functools import lru_cache
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPolygonF

from gardenplot.drawing.strips import Strip
from gardenplot.drawing.style import Ink, Palette
from gardenplot.findings import Finding, find_in_bed, find_on_ground
from gardenplot.layout import standing
from gardenplot.plan import Bed, Plan
from gardenplot.units import MM
from gardenplot.window.theme import colour

if TYPE_CHECKING:
    from gardenplot.window.canvas_paint import Scene

_HALF, _HIGH, _CLOSE_HIGH = 4.5, 7.0, 4.0
"""Pixels across to one side and up; where beds lie close, the mark is lower."""


def paint_faults(painter: QPainter, scene: "Scene", strip: Strip, found: tuple[Finding, ...], inks: Palette) -> None:
    """Paint the marks of what cannot be done in a bed; the painter stands at the head of its base line."""
    places = {round(middle_of(one, strip.laid.bed) / MM * scene.strips.along) for one in found}
    if not places:
        return
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, Ink.ACCENT))
    high = _HIGH if scene.strips.has_captions else _CLOSE_HIGH
    for x in places:
        corners = QPointF(x - _HALF, -1 - high), QPointF(x + _HALF, -1 - high), QPointF(x, -1)
        painter.drawPolygon(QPolygonF(corners))


def middle_of(fault: Finding, bed: Bed) -> float:
    """The tape reading in nm of the middle of a fault, as far as it lies in its bed."""
    start, end = (min(max(0, at), bed.length.nm) for at in (fault.start, fault.end))
    return (start + end) / 2


def faults(scene: "Scene", strip: Strip) -> tuple[Finding, ...]:
    """What cannot be done in a bed, of all that stands in it on the day shown.

    What is wrong with its place on the ground is left out while a hand moves: that may hang on another bed.
    """
    found = [one for one in find_in_bed(strip.laid) if one.cannot_be_done]
    if found:
        seen = {layout.planting for layout in standing(strip.laid, scene.day)}
        found = [one for one in found if one.planting is None or one.planting in seen]
    return (*found, *(_on_ground(scene.plan).get(strip.bed, ()) if scene.trial is None else ()))


@lru_cache(maxsize=4)
def _on_ground(plan: Plan) -> dict[str, tuple[Finding, ...]]:
    found: dict[str, tuple[Finding, ...]] = {}
    for one in find_on_ground(plan):
        if one.bed is not None:
            found[one.bed] = (*found.get(one.bed, ()), one)
    return found
