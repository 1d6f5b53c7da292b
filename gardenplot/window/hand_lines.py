"""The lines under the pointer in a drag: what would be, and what draws the hand there or stands against it."""

from datetime import date
from functools import lru_cache

from gardenplot.drawing.captions import drag_line
from gardenplot.drawing.hand_words import (
    asked_of,
    gap_line,
    later_words,
    push_words,
    refusal_words,
    several_line,
    stopped_words,
)
from gardenplot.drawing.handle_words import corner_line, obstacle_line
from gardenplot.drawing.handles import Grip
from gardenplot.drawing.letters import looks_in_hand
from gardenplot.drawing.style import Ink
from gardenplot.gestures.snap_words import across_words, along_words
from gardenplot.gestures.stage import Trial
from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of
from gardenplot.window.hand_box import Lines
from gardenplot.words import _


@lru_cache(maxsize=4)
def hand_lines(before: Plan, trial: Trial, day: date | None) -> Lines:
    """A line of figures, and below it why the trial cannot be or what drew the hand there, each with its ink.

    They are asked for again where they stood before, where they will stand and where they are painted.
    """
    figures, look = _figures(before, trial, day), looks_in_hand(before, trial.plan)
    if not figures:
        return ()
    if trial.refusal:
        return (figures, Ink.INK), (trial.refusal, Ink.ACCENT), *((words, Ink.SECOND) for words in trial.says)
    drawn = " · ".join(one for one in (along_words(trial.plan, trial.snap, look), across_words(trial.across)) if one)
    says_too = (
        (
            refusal_words(trial.plan, trial.against[0], trial.chosen, look, trial.later) if trial.against else "",
            Ink.ACCENT,
        ),
        *((words, Ink.SECOND) for words in trial.says),
        (waiting_words(trial), Ink.SECOND),
        (copy_words(trial), Ink.SECOND),
        (push_words(trial.plan, ((one.planting, one.by) for one in trial.pushed), look), Ink.SECOND),
        (stopped_words(trial.plan, trial.stopped, look) if trial.stopped else "", Ink.ACCENT),
        (drawn if trial.can_be else "", Ink.SECOND),
    )
    return (figures, Ink.INK), *((words, ink) for words, ink in says_too if words)


def waiting_words(trial: Trial) -> str:
    """That a new planting goes in when its ground is free, or that it could; nothing where it need not wait."""
    if trial.later is None or trial.planting is None:
        return ""
    return later_words(trial.plan, trial.planting, trial.later, offered=not trial.can_be)


def copy_words(trial: Trial) -> str:
    """That what is tried is a copy, and that an order stays with what it is copied from; nothing of a move."""
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
    if trial.bed is not None and trial.gap is not None:
        return gap_line(plan, trial.bed, *trial.gap)
    if sketch is None:
        return ""
    if trial.handle is None and sketch.closed:
        return _("closes the outline") if trial.bed is None else _("takes the corner away")
    return corner_line(sketch.points, sketch.held, plan.place.units, closed=sketch.closed)
