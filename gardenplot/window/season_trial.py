"""What the hand tries on a season map, painted: where it was, and the lines beside the hand."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.style import Palette
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan
from gardenplot.window.hand_box import box_of, paint_lines
from gardenplot.window.season_axes import Axes
from gardenplot.window.season_lines import season_lines
from gardenplot.window.season_paint import paint_was


def paint_trial(
    painter: QPainter, frame: QRectF, before: Iterable[Axes], plan: Plan, trial: Trial, at: QPointF, inks: Palette
) -> None:
    """Paint over some maps where what is moved was on them before, and the lines beside the hand within a frame."""
    for axes in before:
        for block in axes.season.blocks:
            if block.planting in trial.chosen:
                paint_was(painter, axes, block, inks)
    lines, whole = season_lines(plan, trial, looks_in_hand(plan, trial.plan)), frame.toRect()
    if lines:
        there = QPointF(at.x(), max(frame.top(), min(at.y(), frame.bottom()))) - frame.topLeft()
        box = box_of(whole, there, lines)
        painter.save()
        painter.translate(frame.topLeft())
        paint_lines(painter, whole, box, lines, inks)
        painter.restore()
