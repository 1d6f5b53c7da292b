"""The lines beside the hand on the season map: what would be, what hinders it, its market, what drew it there."""

from gardenplot.drawing.captions import GAP
from gardenplot.drawing.hand_words import push_words, stopped_words
from gardenplot.drawing.letters import Look
from gardenplot.drawing.style import Ink
from gardenplot.gestures.season_words import (
    day_snap_words,
    in_the_way_words,
    no_longer_words,
    ready_words,
    season_line,
    several_season_line,
    taken_words,
    unready_words,
)
from gardenplot.gestures.snap_words import along_words
from gardenplot.gestures.stage import Trial
from gardenplot.plan import Plan
from gardenplot.window.hand_box import Lines
from gardenplot.window.hand_lines import copy_words, waiting_words


def season_lines(before: Plan, trial: Trial, look: dict[str, Look]) -> Lines:
    """A line of figures and those below it, each with its ink."""
    if trial.planting is None:
        return ()
    plan, planting = trial.plan, trial.planting
    if trial.refusal:
        return ((trial.refusal, Ink.ACCENT),)
    quiet = (
        waiting_words(trial),
        no_longer_words(before, plan, trial.chosen),
        copy_words(trial),
        day_snap_words(plan, trial.drawn_day, look),
        along_words(plan, trial.snap, look),
    )
    says_too = (
        (taken_words(plan, trial.against[0], trial.chosen, look) if trial.against else "", Ink.ACCENT),
        ("" if trial.others else ready_words(plan, planting), Ink.INK),
        (unready_words(plan, trial.chosen), Ink.ACCENT),
        (in_the_way_words(plan, trial.chosen, look), Ink.ACCENT),
        (push_words(plan, ((one.planting, one.by) for one in trial.pushed), look), Ink.SECOND),
        (stopped_words(plan, trial.stopped, look) if trial.stopped else "", Ink.ACCENT),
        (GAP.join(words for words in quiet if words), Ink.SECOND),
    )
    line = several_season_line(plan, trial.chosen) if trial.others else season_line(plan, planting)
    return (line, Ink.INK), *((words, ink) for words, ink in says_too if words)
