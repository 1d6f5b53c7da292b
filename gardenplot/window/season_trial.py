"""What the hand tries on a season map, painted: where it was, and the lines beside the hand."""

from collections.abc import Iterator

from attrs import frozen
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.style import Palette
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan
from gardenplot.window.hand_box import Seen, box_of, paint_lines
from gardenplot.window.season_axes import ABOVE, Axes
from gardenplot.window.season_lines import season_lines
from gardenplot.window.season_paint import paint_was

_CLEAR = 6.0
"""Pixels that the lines keep off what is moved."""


@frozen
class Tried:
    """A plan, what the hand tries with it and where the hand is, on maps as they are now and as they were before."""

    plan: Plan
    trial: Trial
    at: QPointF
    now: tuple[Axes, ...]
    before: tuple[Axes, ...]

    def seen(self, top: float) -> Iterator[Seen]:
        """What the lines should not hide, in pixels below a top: the map that is worked on, else what is moved."""
        for axes in self.now:
            for block in axes.season.blocks:
                if block.planting == self.trial.planting:
                    frame = axes.frame(block)
                    yield axes.top - ABOVE - top, axes.bottom + _CLEAR - top
                    yield frame.top() - _CLEAR - top, frame.bottom() + _CLEAR - top


def paint_trial(painter: QPainter, frame: QRectF, tried: Tried, inks: Palette) -> None:
    """Paint over some maps where what is moved was on them before, and the lines beside the hand within a frame."""
    plan, trial, at = tried.plan, tried.trial, tried.at
    for axes, now in zip(tried.before, tried.now, strict=True):
        held = [one for one in now.season.blocks if one.planting in trial.chosen]
        for block in axes.season.blocks:
            if block.planting in trial.chosen:
                paint_was(painter, axes, block, held, inks)
    lines, whole = season_lines(plan, trial, looks_in_hand(plan, trial.plan)), frame.toRect()
    if lines:
        there = QPointF(at.x(), max(frame.top(), min(at.y(), frame.bottom()))) - frame.topLeft()
        box = box_of(whole, there, lines, tuple(tried.seen(frame.top())))
        painter.save()
        painter.translate(frame.topLeft())
        paint_lines(painter, whole, box, lines, inks)
        painter.restore()
