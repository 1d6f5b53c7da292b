"""Plantings on the season map, drawn in time and along the bed at once; and by their first day or their last.

What came about stays: a planting that is in the ground keeps its place and its first day.
"""

from collections.abc import Iterator
from datetime import date
from typing import Any

from attrs import evolve, frozen

from gardenplot.drawing.days import day_words
from gardenplot.drawing.sayings import name_of
from gardenplot.gestures.day_snap import DayPull, DaySnap, moved, snap_day, turns_of
from gardenplot.gestures.drags import MOVE, RESIZE, drag
from gardenplot.gestures.kept import layout_in, size_kept, start_of
from gardenplot.gestures.snap import Pull, Snap, marks_of
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.gestures.together import Taken, trial_of, try_move, try_shift
from gardenplot.gestures.trials import try_crop, try_resize
from gardenplot.plan import Actual, Crop, Establish, Plan, Planting, crop_of, planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.season import Dates, dates_of
from gardenplot.words import _

FIRST_DAY, OUT = _("Day in the ground of {crop}"), _("Day out of the ground of {crop}")


@frozen
class Held:
    """A planting taken hold of on the map: where, on which day, and the day that the drawing shows."""

    taken: Taken
    pressed: date
    shown: date | None

    @property
    def plan(self) -> Plan:
        """The plan at the press."""
        return self.taken.plan

    @property
    def planting(self) -> Planting:
        """The planting at the press."""
        return planting_of(self.plan, self.taken.lead)


def hold(plan: Plan, planting_id: str, press: Pointer, shown: date | None) -> Held:
    """Take hold of a planting where the hand is on the map; the pointer has a day there."""
    grip = press.x - layout_in(plan, planting_id).start
    taken = Taken(plan, (planting_id,), grip, marks_of(plan, shown, without=(planting_id,)))
    return Held(taken, press.day or date.min, shown)


def move_in_season(stage: Stage, planting_id: str, press: Pointer) -> Gesture:
    """Move a planting to where the hand lets go, in time and along its bed."""
    held = hold(stage.plan, planting_id, press, stage.day)
    yield from drag(stage, lambda pointer: try_in_season(held, pointer), MOVE)


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
    stays = _stays(plan, planting_id)
    yield from drag(stage, lambda pointer: stays or try_resize(plan, planting_id, foot, pointer), RESIZE)


def place_in_season(stage: Stage, crop: Crop) -> Gesture:
    """Place a crop from the shelf on the map, at the reading and on the day where the hand lets go."""
    plan, shown = stage.plan, stage.day
    yield from drag(stage, lambda pointer: try_crop_in_season(plan, crop, pointer, shown), _("Place {crop}"))


def try_in_season(held: Held, pointer: Pointer) -> Trial | None:
    """What is held, moved by as many days and as far along its bed as the hand; None beside the map."""
    plan, lead = held.plan, held.taken.lead
    if pointer.bed is None or pointer.day is None:
        return None
    if stays := _stays(plan, lead):
        return stays
    block, dates = layout_in(plan, lead), dates_of(plan, held.planting)
    drawn, after = None, plan
    if dates.in_ground is not None:
        first = moved(dates.in_ground, (pointer.day - held.pressed).days)
        along = pointer.x - held.taken.grip - block.start
        days = _days_for(held, dates, block.start + along, block.end + along)
        drawn = snap_day(first, days, pointer.reach_days, free=pointer.free)
        after = _on_day(plan, lead, drawn)
    if abs(pointer.x - held.taken.grip - block.start) <= pointer.reach and not pointer.free:
        return evolve(trial_of(after, (lead,), Snap(block.start, Pull.KEPT)), drawn_day=drawn)
    trial = try_move(evolve(held.taken, plan=after), evolve(pointer, copies=False))
    return evolve(trial, drawn_day=drawn) if trial is not None else None


def try_days(plan: Plan, planting_id: str, by: int) -> Trial:
    """A planting so many days later; one that has no first day, or is in the ground, stays."""
    first = dates_of(plan, planting_of(plan, planting_id)).in_ground
    if stays := _stays(plan, planting_id):
        return stays
    if first is None:
        words = _("{crop} has no day in the ground yet").format(crop=name_of(plan, planting_id))
        return _refused(plan, planting_id, words)
    after = _on_day(plan, planting_id, DaySnap(moved(first, by), DayPull.DAY))
    return trial_of(after, (planting_id,), Snap(layout_in(plan, planting_id).start, Pull.KEPT))


def try_along(plan: Plan, planting_id: str, by: int) -> Trial:
    """A planting shifted along its bed by so many nm; one that is in the ground stays."""
    return _stays(plan, planting_id) or try_shift(plan, (planting_id,), by)


def try_out_later(plan: Plan, planting_id: str, by: int) -> Trial:
    """A planting that is out so many days later; one of which nobody knows when it is out stays."""
    if cleared := _cleared(plan, planting_id):
        return cleared
    out = dates_of(plan, planting_of(plan, planting_id)).out
    if out is None:
        words = _("{crop} has no day on which it is out yet").format(crop=name_of(plan, planting_id))
        return _refused(plan, planting_id, words)
    return _out_on(plan, planting_id, DaySnap(moved(out, by), DayPull.DAY))


def try_first_day(plan: Plan, planting_id: str, pointer: Pointer, shown: date | None) -> Trial | None:
    """A planting with its first day where the hand is, before the days that were typed for it."""
    if pointer.day is None:
        return None
    if stays := _stays(plan, planting_id):
        return stays
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    dates, raised = dates_of(plan, planting), _is_raised(plan, planting)
    ends = [day for day in (planting.ready, planting.out) if day is not None]
    candidates = (
        *_kept(dates.in_ground),
        *(one for one in turns_of(plan, planting_id, block.start, block.end) if one.pull is DayPull.FREE),
        *_by_itself(plan, planting, shown),
    )
    drawn = snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free)
    least = planting.sow if raised and planting.sow is not None else date.min
    drawn = _between(drawn, least, moved(min(ends, default=date.max), -1))
    changes: dict[str, Any] = {"in_ground": None if drawn.pull is DayPull.MARKET else drawn.on}
    if planting.sow is not None and not raised:
        changes["sow"] = drawn.on
    after = plan if drawn.on == dates.in_ground else change_planting(plan, planting_id, **changes)
    return evolve(trial_of(after, (planting_id,), Snap(block.start, Pull.KEPT)), drawn_day=drawn)


def try_out(plan: Plan, planting_id: str, pointer: Pointer, shown: date | None) -> Trial | None:
    """A planting whose ground is free from the day where the hand is, at least a day after all before it."""
    if pointer.day is None:
        return None
    if cleared := _cleared(plan, planting_id):
        return cleared
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    dates, follows = dates_of(plan, planting), dates_of(plan, evolve(planting, out=None)).out
    candidates = (
        *_kept(dates.out),
        *(one for one in turns_of(plan, planting_id, block.start, block.end) if one.pull is DayPull.NEEDED),
        *((DaySnap(follows, DayPull.FOLLOWS),) if follows is not None else ()),
        *_shown(shown),
    )
    return _out_on(plan, planting_id, snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free))


def _out_on(plan: Plan, planting_id: str, drawn: DaySnap) -> Trial:
    """A planting that is out on a day, or on the day after it went in, was sown or is ready."""
    planting, dates = planting_of(plan, planting_id), dates_of(plan, planting_of(plan, planting_id))
    before = [day for day in (dates.in_ground, planting.sow, planting.ready) if day is not None]
    drawn = _between(drawn, moved(max(before, default=date.min), 1), date.max)
    out = None if drawn.pull is DayPull.FOLLOWS else drawn.on
    after = plan if drawn.on == dates.out else change_planting(plan, planting_id, out=out)
    start = Snap(layout_in(plan, planting_id).start, Pull.KEPT)
    return evolve(trial_of(after, (planting_id,), start), drawn_day=drawn)


def try_crop_in_season(plan: Plan, crop: Crop, pointer: Pointer, shown: date | None) -> Trial | None:
    """A new planting of a crop where the hand is on the map; an order that is unplanted gives its day instead."""
    if pointer.bed is None or pointer.day is None:
        return None
    first = try_crop(plan, crop, pointer, pointer.day)
    if first is None or first.planting is None:
        return first
    block = layout_in(first.plan, first.planting)
    turns = turns_of(first.plan, first.planting, block.start, block.end)
    candidates = (*(one for one in turns if one.pull is DayPull.FREE), *_shown(shown))
    drawn = snap_day(pointer.day, candidates, pointer.reach_days, free=pointer.free)
    trial = try_crop(plan, crop, pointer, drawn.on) if drawn.on != pointer.day else first
    dated = trial is not None and planting_of(trial.plan, trial.planting or "").in_ground == drawn.on
    return evolve(trial, drawn_day=drawn) if trial is not None and dated else trial


def is_in_ground(plan: Plan, planting: Planting) -> bool:
    """Whether a planting has been set out or, if direct, sown."""
    came = planting.actual or Actual()
    return came.set_out is not None or (came.sown is not None and not _is_raised(plan, planting))


def _is_raised(plan: Plan, planting: Planting) -> bool:
    return crop_of(plan, planting.crop).establish is Establish.TRANSPLANT


def _stays(plan: Plan, planting_id: str) -> Trial | None:
    """The refusal to move a planting that is in the ground."""
    planting = planting_of(plan, planting_id)
    if not is_in_ground(plan, planting):
        return None
    day = dates_of(plan, planting).in_ground
    words = _("{crop} has been in the ground since {day}: only the day on which it is out can be moved")
    return _refused(
        plan, planting_id, words.format(crop=name_of(plan, planting_id), day=day_words(day) if day else "")
    )


def _cleared(plan: Plan, planting_id: str) -> Trial | None:
    """The refusal to move the day on which ground was cleared."""
    came = planting_of(plan, planting_id).actual
    if came is None or came.cleared is None:
        return None
    words = _("the ground of {crop} has been free since {day}")
    return _refused(plan, planting_id, words.format(crop=name_of(plan, planting_id), day=day_words(came.cleared)))


def _refused(plan: Plan, planting_id: str, words: str) -> Trial:
    return Trial(plan, planting_of(plan, planting_id).bed, planting_id, refusal=words)


def _on_day(plan: Plan, planting_id: str, first: DaySnap) -> Plan:
    """The plan with a planting from another day on, its place, its size and the days between its typed ones kept."""
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    was = dates_of(plan, planting).in_ground
    if was is None or was == first.on:
        return plan
    by = (first.on - was).days
    typed = {name: getattr(planting, name) for name in ("sow", "ready", "out")}
    changes: dict[str, Any] = {name: moved(day, by) for name, day in typed.items() if day is not None}
    changes["in_ground"] = None if first.pull is DayPull.MARKET else first.on
    changes["start"] = start_of(planting, block.start, plan.place.units)
    return change_planting(plan, planting_id, **changes, **size_kept(planting, block.length, plan.place.units))


def _days_for(held: Held, dates: Dates, start: int, end: int) -> Iterator[DaySnap]:
    """The days to which the first day of a planting is drawn that would lie between two readings in nm."""
    yield from _kept(dates.in_ground)
    for one in turns_of(held.plan, held.taken.lead, start, end):
        if one.pull is DayPull.FREE:
            yield one
        elif dates.in_ground is not None and dates.out is not None:
            before = DaySnap(moved(one.on, (dates.in_ground - dates.out).days), DayPull.NEEDED, one.planting)
            # Where short days lie between, what follows from the crop may not be out when the other needs the ground.
            after = _on_day(held.plan, held.taken.lead, before)
            if dates_of(after, planting_of(after, held.taken.lead)).out == one.on:
                yield before
    yield from _by_itself(held.plan, held.planting, held.shown)


def _by_itself(plan: Plan, planting: Planting, shown: date | None) -> Iterator[DaySnap]:
    """The first day that follows from a planting's market, and the day shown."""
    if planting.sow is None and planting.ready is None:
        counted = dates_of(plan, evolve(planting, in_ground=None)).in_ground
        if counted is not None:
            yield DaySnap(counted, DayPull.MARKET)
    yield from _shown(shown)


def _shown(shown: date | None) -> Iterator[DaySnap]:
    if shown is not None:
        yield DaySnap(shown, DayPull.SHOWN)


def _kept(day: date | None) -> Iterator[DaySnap]:
    if day is not None:
        yield DaySnap(day, DayPull.KEPT)


def _between(drawn: DaySnap, first: date, last: date) -> DaySnap:
    """A day no earlier than one and no later than another; nothing drew the hand there where it is held back."""
    on = max(first, min(drawn.on, last))
    return drawn if on == drawn.on else DaySnap(on, DayPull.DAY)
