"""Plantings moved or copied on the season map, one or many, in time and along the bed at once.

All of them go by the same days and the same way. What came about stays: a planting that is in the ground keeps its
place and its first day; it can be copied.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from attrs import evolve, frozen

from gardenplot.drawing.sayings import name_of
from gardenplot.gestures.day_snap import DayPull, DaySnap, moved, snap_day, turns_of
from gardenplot.gestures.drags import MOVE, drag
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.season_stays import days_follow, refused, stays
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.gestures.together import Taken, beds_from, nowhere, take, try_in_place, try_move, try_shift
from gardenplot.plan import Plan, Planting, planting_of
from gardenplot.plan.several import Fields
from gardenplot.season import Dates, dates_of
from gardenplot.words import _


@frozen
class Held:
    """Plantings taken hold of on the map: on which day, and the day that the drawing shows."""

    taken: Taken
    pressed: date
    shown: date | None

    @property
    def plan(self) -> Plan:
        """The plan at the press."""
        return self.taken.plan

    @property
    def dates(self) -> Dates:
        """The days of the planting under the hand at the press."""
        return dates_of(self.plan, planting_of(self.plan, self.taken.lead))


def hold(plan: Plan, plantings: Sequence[str], press: Pointer, shown: date | None) -> Held:
    """Take hold of plantings where the hand is on the first of them on the map; the pointer has a day there."""
    return Held(take(plan, plantings, press.x, shown), press.day or date.min, shown)


def move_in_season(stage: Stage, planting_id: str, press: Pointer, others: Sequence[str] = ()) -> Gesture:
    """Move or copy a planting, and others along with it, to where the hand lets go in time and along its bed."""
    held = hold(stage.plan, (planting_id, *others), press, stage.day)
    yield from drag(stage, lambda pointer: try_in_season(held, pointer), MOVE)


def try_in_season(held: Held, pointer: Pointer) -> Trial | None:
    """What is held, moved or copied by as many days and as far as the hand; None beside the map."""
    taken, first = held.taken, held.dates.in_ground
    if pointer.bed is None or pointer.day is None:
        return None
    if not pointer.copies and (fast := stays(held.plan, taken.plantings)):
        return fast
    beds, block = beds_from(taken, pointer.bed), layout_in(held.plan, taken.lead)
    if beds is None:
        return nowhere(taken)
    along = pointer.x - taken.grip - block.start
    keeps = pointer.bed == block.bed and abs(along) <= pointer.reach and not pointer.free
    drawn = None
    if first is not None and planting_of(held.plan, taken.lead).hardens is None:
        days = _days_for(held, beds, 0 if keeps else along, copies=pointer.copies)
        wanted = moved(first, (pointer.day - held.pressed).days)
        drawn = snap_day(wanted, days, pointer.reach_days, free=pointer.free)
        taken = _on_days(taken, (drawn.on - first).days, copies=pointer.copies)
    trial = try_in_place(taken, copies=pointer.copies, pushes=pointer.push) if keeps else try_move(taken, pointer)
    return evolve(trial, drawn_day=drawn) if trial is not None else None


def try_days(plan: Plan, plantings: Sequence[str], by: int) -> Trial:
    """Plantings so many days later; those of which nobody knows the first day stay, as does what is in the ground."""
    if fast := stays(plan, plantings) or (days_follow(plan, plantings[0]) if len(plantings) == 1 else None):
        return fast
    taken = _on_days(Taken(plan, tuple(plantings)), by)
    if not taken.dated:
        words = _("{crop} has no day in the ground yet").format(crop=name_of(plan, plantings[0]))
        return refused(plan, plantings, words)
    return try_in_place(taken)


def try_along(plan: Plan, plantings: Sequence[str], by: int) -> Trial:
    """Plantings shifted along their beds by so many nm; what is in the ground stays."""
    return stays(plan, plantings) or try_shift(plan, plantings, by)


def try_next_turn(plan: Plan, plantings: Sequence[str], way: int) -> Trial:
    """Copies of plantings on the same ground, on the first days after them on which it is free.

    If `way` is less than 0, on the last days before them. Refused where there are none.
    """
    held = Held(Taken(plan, tuple(plantings)), date.min, None)
    first, beds = held.dates.in_ground, {one: planting_of(plan, one).bed for one in plantings}
    wanted = DayPull.FREE if way > 0 else DayPull.NEEDED
    if first is not None:
        days = {one.on for one in _days_for(held, beds, 0, copies=True) if one.pull is wanted}
        nearest = sorted(
            (day for day in days if (day - first).days * way > 0), key=lambda day: abs((day - first).days)
        )
        for day in nearest:
            trial = try_in_place(_on_days(held.taken, (day - first).days, copies=True), copies=True)
            if trial.can_be:
                return trial
    words = _("no day is known after it on which its ground is free") if way > 0 else _("no day is free before it")
    return refused(plan, plantings, words)


def _on_days(taken: Taken, by: int, *, copies: bool = False) -> Taken:
    """What was taken, so many days later."""
    plan = taken.plan
    later = {one: later_fields(plan, planting_of(plan, one), by, copies=copies) for one in taken.plantings}
    return evolve(taken, dated={one: fields for one, fields in later.items() if fields})


def later_fields(plan: Plan, planting: Planting, by: int, *, copies: bool = False) -> Fields:
    """What is otherwise about a planting that goes in so many days later: what was typed, and its first day.

    That day is not typed where its market asks for it. Nothing is otherwise about trays: they go with their planting.
    """
    was = dates_of(plan, planting).in_ground
    if was is None or planting.hardens is not None or not (by or (copies and planting.actual)):
        return {}
    typed = {name: getattr(planting, name) for name in ("sow", "ready", "out")}
    first = moved(was, by)
    asked_for = not copies and counted_back(plan, planting) == first
    return {
        **{name: moved(day, by) for name, day in typed.items() if day is not None},
        "in_ground": None if asked_for else first,
    }


def counted_back(plan: Plan, planting: Planting) -> date | None:
    """The first day that follows from a planting's market; None where another day that was typed rules it."""
    if planting.sow is not None or planting.ready is not None:
        return None
    return dates_of(plan, evolve(planting, in_ground=None)).in_ground


def _days_for(held: Held, beds: Mapping[str, str], along: int, *, copies: bool) -> Iterator[DaySnap]:
    """The days to which the first day of what is under the hand is drawn, by it or by another one that goes along.

    All of them lie so many nm further then.
    """
    plan, first = held.plan, held.dates.in_ground
    if first is None:
        return
    yield DaySnap(first, DayPull.KEPT)
    for one in held.taken.plantings:
        dates, block = dates_of(plan, planting_of(plan, one)), layout_in(plan, one)
        if dates.in_ground is None:
            continue
        without = () if copies else held.taken.plantings
        for turn in turns_of(plan, beds[one], block.start + along, block.end + along, without):
            if turn.pull is DayPull.FREE:
                yield evolve(turn, on=moved(turn.on, (first - dates.in_ground).days))
            elif dates.out is not None and _is_out(plan, one, (turn.on - dates.out).days, turn.on, copies=copies):
                yield evolve(turn, on=moved(turn.on, (first - dates.out).days))
    counted = counted_back(plan, planting_of(plan, held.taken.lead))
    if counted is not None and not copies:
        yield DaySnap(counted, DayPull.MARKET)
    if held.shown is not None:
        yield DaySnap(held.shown, DayPull.SHOWN)


def _is_out(plan: Plan, planting_id: str, by: int, day: date, *, copies: bool) -> bool:
    """Whether a planting so many days later is out on a day: where short days lie between, it may not be."""
    planting = planting_of(plan, planting_id)
    return dates_of(plan, evolve(planting, **later_fields(plan, planting, by, copies=copies))).out == day
