"""The sides of a planting drawn on the season map, each alone: its first day, the day it is out, its ends.

And crops from the shelf, placed on a day.
"""

from collections.abc import Iterator
from datetime import date
from typing import Any

from attrs import evolve

from gardenplot.drawing.sayings import name_of
from gardenplot.gestures.day_snap import DayPull, DaySnap, moved, snap_day, turns_of
from gardenplot.gestures.drags import RESIZE, drag
from gardenplot.gestures.kept import layout_in, size_kept, start_of
from gardenplot.gestures.season_moved import counted_back
from gardenplot.gestures.season_stays import cleared, days_follow, is_in_ground, is_raised, refused, stays
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.gestures.together import trial_of
from gardenplot.gestures.trials import try_crop, try_resize
from gardenplot.layout import Layout
from gardenplot.plan import Crop, Plan, planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.plan.several import Fields
from gardenplot.season import dates_of
from gardenplot.words import _

FIRST_DAY, OUT = _("Day in the ground of {crop}"), _("Day out of the ground of {crop}")


def draw_first_day(stage: Stage, planting_id: str) -> Gesture:
    """Draw the first day of a planting to where the hand lets go."""
    plan, shown = stage.plan, stage.day
    yield from drag(stage, lambda pointer: try_first_day(plan, planting_id, pointer, shown), FIRST_DAY)


def draw_out(stage: Stage, planting_id: str) -> Gesture:
    """Draw the day on which a planting's ground is free to where the hand lets go."""
    plan, shown = stage.plan, stage.day
    yield from drag(stage, lambda pointer: try_out(plan, planting_id, pointer, shown), OUT)


def draw_end(stage: Stage, planting_id: str, *, foot: bool) -> Gesture:
    """Draw the foot end of a planting, or its head end, unless it is in the ground."""
    plan = stage.plan
    fast = stays(plan, (planting_id,))
    yield from drag(stage, lambda pointer: fast or try_resize(plan, planting_id, foot, pointer), RESIZE)


def place_in_season(stage: Stage, crop: Crop) -> Gesture:
    """Place a crop from the shelf on the map, at the reading and on the day where the hand lets go."""
    plan, shown = stage.plan, stage.day
    yield from drag(stage, lambda pointer: try_crop_in_season(plan, crop, pointer, shown), _("Place {crop}"))


def try_first_day(plan: Plan, planting_id: str, pointer: Pointer, shown: date | None) -> Trial | None:
    """A planting with its first day where the hand is, before the days that were typed for it."""
    if pointer.day is None:
        return None
    if fast := stays(plan, (planting_id,)) or days_follow(plan, planting_id):
        return fast
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    dates, raised = dates_of(plan, planting), is_raised(plan, planting)
    ends = [day for day in (planting.ready, planting.out) if day is not None]
    candidates = (
        *_kept(dates.in_ground),
        *_turns(plan, block, DayPull.FREE),
        *_market(counted_back(plan, planting)),
        *_shown(shown),
    )
    drawn = snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free)
    least = planting.sow if raised and planting.sow is not None else date.min
    drawn = _between(drawn, least, moved(min(ends, default=date.max), -1))
    changes: dict[str, Any] = {"in_ground": None if drawn.pull is DayPull.MARKET else drawn.on}
    if planting.sow is not None and not raised:
        changes["sow"] = drawn.on
    after = plan if drawn.on == dates.in_ground else _on_its_ground(plan, block, changes)
    return evolve(trial_of(after, (planting_id,), Snap(block.start, Pull.KEPT)), drawn_day=drawn)


def try_out(plan: Plan, planting_id: str, pointer: Pointer, shown: date | None) -> Trial | None:
    """A planting whose ground is free from the day where the hand is, at least a day after all before it."""
    if pointer.day is None:
        return None
    if fast := cleared(plan, planting_id) or days_follow(plan, planting_id):
        return fast
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    dates, follows = dates_of(plan, planting), dates_of(plan, evolve(planting, out=None)).out
    candidates = (
        *_kept(dates.out),
        *_turns(plan, block, DayPull.NEEDED),
        *((DaySnap(follows, DayPull.FOLLOWS),) if follows is not None else ()),
        *_shown(shown),
    )
    return _out_on(plan, planting_id, snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free))


def try_out_later(plan: Plan, planting_id: str, by: int) -> Trial:
    """A planting that is out so many days later; one of which nobody knows when it is out stays."""
    if fast := cleared(plan, planting_id) or days_follow(plan, planting_id):
        return fast
    out = dates_of(plan, planting_of(plan, planting_id)).out
    if out is None:
        words = _("{crop} has no day on which it is out yet").format(crop=name_of(plan, planting_id))
        return refused(plan, (planting_id,), words)
    return _out_on(plan, planting_id, DaySnap(moved(out, by), DayPull.DAY))


def _out_on(plan: Plan, planting_id: str, drawn: DaySnap) -> Trial:
    """A planting that is out on a day, or on the day after it went in, was sown or is ready."""
    planting, dates = planting_of(plan, planting_id), dates_of(plan, planting_of(plan, planting_id))
    before = [day for day in (dates.in_ground, planting.sow, planting.ready) if day is not None]
    drawn = _between(drawn, moved(max(before, default=date.min), 1), date.max)
    out = None if drawn.pull is DayPull.FOLLOWS else drawn.on
    block = layout_in(plan, planting_id)
    after = plan if drawn.on == dates.out else _on_its_ground(plan, block, {"out": out})
    return evolve(trial_of(after, (planting_id,), Snap(block.start, Pull.KEPT)), drawn_day=drawn)


def _on_its_ground(plan: Plan, block: Layout, changes: Fields) -> Plan:
    """The plan with other days of a planting that keeps its ground, also where that was the next that was free.

    What is in the ground has its place already.
    """
    planting, units = planting_of(plan, block.planting), plan.place.units
    if is_in_ground(plan, planting):
        return change_planting(plan, planting.id, **changes)
    kept = {"start": start_of(planting, block.start, units), **size_kept(planting, block.length, units)}
    return change_planting(plan, planting.id, **kept, **changes)


def try_crop_in_season(plan: Plan, crop: Crop, pointer: Pointer, shown: date | None) -> Trial | None:
    """A new planting of a crop where the hand is on the map; an order that is unplanted gives its day instead."""
    if pointer.bed is None or pointer.day is None:
        return None
    first = try_crop(plan, crop, pointer, pointer.day)
    if first is None or first.planting is None:
        return first
    block = layout_in(first.plan, first.planting)
    candidates = (*_turns(first.plan, block, DayPull.FREE), *_shown(shown))
    drawn = snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free)
    trial = try_crop(plan, crop, pointer, drawn.on) if drawn.on != pointer.day else first
    dated = trial is not None and planting_of(trial.plan, trial.planting or "").in_ground == drawn.on
    return evolve(trial, drawn_day=drawn) if trial is not None and dated else trial


def _turns(plan: Plan, block: Layout, pull: DayPull) -> Iterator[DaySnap]:
    """The days on which the ground of a block falls free, or on which another one needs it."""
    turns = turns_of(plan, block.bed, block.start, block.end, (block.planting,))
    return (one for one in turns if one.pull is pull)


def _shown(shown: date | None) -> Iterator[DaySnap]:
    if shown is not None:
        yield DaySnap(shown, DayPull.SHOWN)


def _market(day: date | None) -> Iterator[DaySnap]:
    if day is not None:
        yield DaySnap(day, DayPull.MARKET)


def _kept(day: date | None) -> Iterator[DaySnap]:
    if day is not None:
        yield DaySnap(day, DayPull.KEPT)


def _between(drawn: DaySnap, first: date, last: date) -> DaySnap:
    """A day no earlier than one and no later than another; nothing drew the hand there where it is held back."""
    on = max(first, min(drawn.on, last))
    return drawn if on == drawn.on else DaySnap(on, DayPull.DAY)
