"""What of the canvas must be painted anew when one scene follows another."""

from math import ceil, floor

from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QRegion

from gardenplot.window.canvas_paint import Scene, lines_box, lines_under, reach_of


def changed_between(before: Scene, after: Scene, frame: QRect) -> QRegion:
    """The part that differs while a hand moves: beds that are laid out otherwise, and where its lines stand."""
    whole = QRegion(frame)
    if before.trial is None or after.trial is None or after.strips.ground is not None:
        return whole
    if before.trial.measured is not None or after.trial.measured is not None:
        return whole
    tops = [(strip.bed, strip.top, strip.height) for strip in before.strips.strips]
    if tops != [(strip.bed, strip.top, strip.height) for strip in after.strips.strips] or before.day != after.day:
        return whole
    if before.plan is not after.plan and before.look != after.look:
        return whole
    area = QRegion()
    held = {scene.trial.bed for scene in (before, after) if scene.trial is not None}
    for one, other in zip(before.strips.strips, after.strips.strips, strict=True):
        if one.laid is not other.laid or one.bed in held:
            above, below = reach_of(after.strips)
            top, bottom = one.top + after.top - above, one.top + after.top + one.height + below
            area += QRect(QPoint(0, floor(top)), QPoint(frame.width(), ceil(bottom)))
    for scene in (before, after):
        lines = lines_under(scene)
        if lines:
            area += lines_box(scene, frame, lines).toAlignedRect().adjusted(-1, -1, 1, 1)
    return area
