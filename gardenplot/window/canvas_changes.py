"""What of the canvas must be painted anew when one scene follows another."""

from math import ceil, floor

from attrs import evolve
from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QRegion

from gardenplot.drawing.strips import Strip
from gardenplot.findings import find_on_ground
from gardenplot.window.canvas_paint import Scene, lines_box, lines_under, reach_of


def changed_between(before: Scene, after: Scene, frame: QRect) -> QRegion:
    """The part that differs while a hand moves: beds that are laid out otherwise, and where its lines stand."""
    whole = QRegion(frame)
    if before.trial is None or after.trial is None or after.strips.ground is not None:
        return whole
    if before.trial.measured is not None or after.trial.measured is not None:
        return whole
    if not _lie_alike(before, after) or before.day != after.day:
        return whole
    area = QRegion()
    held = {scene.trial.bed for scene in (before, after) if scene.trial is not None}
    for one, other in zip(before.strips.strips, after.strips.strips, strict=True):
        if (one is not other and one.laid is not other.laid) or one.bed in held:
            area += _round(one, after, frame)
    for scene in (before, after):
        lines = lines_under(scene)
        if lines:
            area += lines_box(scene, frame, lines).toAlignedRect().adjusted(-1, -1, 1, 1)
    return area


def changed_by_edit(before: Scene, after: Scene, frame: QRect) -> QRegion:
    """The part that differs once another plan is shown: the beds that show otherwise, or all where more changed."""
    whole, plan = QRegion(frame), after.plan
    if before.trial is not None or evolve(before, plan=plan, before=after.before, strips=after.strips) != after:
        return whole
    if not _lie_alike(before, after) or before.plan.place != plan.place:
        return whole
    if find_on_ground(before.plan) != find_on_ground(plan):
        return whole
    if (before.plan.covers, before.plan.jugs) != (plan.covers, plan.jugs):
        return whole
    area = QRegion()
    for one, other in zip(before.strips.strips, after.strips.strips, strict=True):
        if one.laid is not other.laid:
            area += _round(one, after, frame)
    return area


def _round(strip: Strip, scene: Scene, frame: QRect) -> QRect:
    """A strip with all that is painted round it."""
    above, below = reach_of(scene.strips)
    top, bottom = strip.top + scene.top - above, strip.top + scene.top + strip.height + below
    return QRect(QPoint(0, floor(top)), QPoint(frame.width(), ceil(bottom)))


def _lie_alike(before: Scene, after: Scene) -> bool:
    """Whether the same beds lie in the same places, at the same scale, and their plantings look as they did."""
    one, other = before.strips, after.strips
    if (one.zoom, one.ground, one.headroom, one.captions, one.gutter) != (
        other.zoom, other.ground, other.headroom, other.captions, other.gutter,
    ):  # fmt: skip
        return False
    if len(one.strips) != len(other.strips):
        return False
    pairs = zip(one.strips, other.strips, strict=True)
    if any(_place(first) != _place(then) for first, then in pairs if first is not then):
        return False
    return before.plan is after.plan or before.look == after.look


def _place(strip: Strip) -> tuple[str, float, float]:
    return strip.bed, strip.top, strip.height
