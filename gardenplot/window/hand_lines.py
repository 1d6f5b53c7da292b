"""The lines under the pointer in a drag: what would be, and what draws the hand there or stands against it."""

from datetime import date

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from gardenplot.drawing.captions import drag_line
from gardenplot.drawing.hand_words import asked_of, push_words, refusal_words, several_line, stopped_words
from gardenplot.drawing.handle_words import corner_line, obstacle_line
from gardenplot.drawing.handles import Grip
from gardenplot.drawing.letters import Look
from gardenplot.drawing.style import Ink, Palette
from gardenplot.gestures.snap_words import across_words, along_words
from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of
from gardenplot.window.theme import colour, drawing_font
from gardenplot.words import _

Lines = tuple[tuple[str, Ink], ...]


_LINE = 22


def lines_reach(trial: Trial) -> int:
    """Pixels above and below the hand within which the lines of a trial stand."""
    lines = 2 + trial.copies + bool(trial.pushed) + (trial.stopped is not None)
    return _LINE * (lines + 1) + 12


def hand_lines(before: Plan, trial: Trial, day: date | None, look: dict[str, Look]) -> Lines:
    """A line of figures, and below it why the trial cannot be or what drew the hand there, each with its ink."""
    figures = _figures(before, trial, day)
    if not figures:
        return ()
    if trial.refusal:
        return (figures, Ink.INK), (trial.refusal, Ink.ACCENT)
    drawn = " · ".join(one for one in (along_words(trial.plan, trial.snap, look), across_words(trial.across)) if one)
    says_too = (
        (refusal_words(trial.plan, trial.against[0], trial.chosen, look) if trial.against else "", Ink.ACCENT),
        (_copy_words(trial), Ink.SECOND),
        (push_words(trial.plan, ((one.planting, one.by) for one in trial.pushed), look), Ink.SECOND),
        (stopped_words(trial.plan, trial.stopped, look) if trial.stopped else "", Ink.ACCENT),
        (drawn if trial.can_be else "", Ink.SECOND),
    )
    return (figures, Ink.INK), *((words, ink) for words, ink in says_too if words)


def _copy_words(trial: Trial) -> str:
    if not trial.copies:
        return ""
    return _("a copy, without the order") if trial.leaves_order else _("a copy")


def _figures(before: Plan, trial: Trial, day: date | None) -> str:
    plan, sketch = trial.plan, trial.sketch
    if trial.others:
        return several_line(plan, trial.chosen, day)
    if trial.bed is not None and trial.planting is not None:
        asked = asked_of(before, plan, trial.planting)
        return drag_line(plan, trial.planting, lay_out_bed(plan, bed_of(plan, trial.bed)), day, asked)
    if trial.bed is not None and trial.handle is not None and trial.handle.grip is Grip.OBSTACLE:
        return obstacle_line(plan, trial.bed, trial.handle.number, day)
    if sketch is None:
        return ""
    if trial.handle is None and sketch.closed:
        return _("closes the outline") if trial.bed is None else _("takes the corner away")
    return corner_line(sketch.points, sketch.held, plan.place.units, closed=sketch.closed)


def paint_lines(painter: QPainter, frame: QRect, hand: QPointF, lines: Lines, inks: Palette) -> None:
    """Paint lines in a box beside the pointer, wherever there is room."""
    if not lines:
        return
    font = drawing_font(14, bold=True)
    metrics = QFontMetricsF(font)
    room = max(80, frame.width() - 28)
    lines = tuple((metrics.elidedText(words, Qt.TextElideMode.ElideRight, room), ink) for words, ink in lines)
    width = max(metrics.horizontalAdvance(words) for words, _ink in lines) + 20
    height = 22.0 * len(lines) + 8
    left = max(4.0, min(hand.x() + 16, frame.width() - width - 4))
    top = hand.y() + 22 if hand.y() + 22 + height < frame.height() else hand.y() - height - 14
    painter.setPen(QPen(colour(inks, Ink.EDGE), 1))
    painter.setBrush(colour(inks, Ink.PAPER))
    painter.drawRoundedRect(QRectF(left, top, width, height), 4, 4)
    painter.setFont(font)
    for number, (words, ink) in enumerate(lines):
        painter.setPen(colour(inks, ink))
        painter.drawText(QPointF(left + 10, top + 20 + 22 * number), words)
