"""Planning again where ground comes free sooner or later than planned, since a harvest or what led to it did.

Sooner: what follows on that ground may come sooner, as long as it can still be cut on its market day, or the gap
that there is now is filled. Later: what follows waits, goes elsewhere, or is planted on what is free. A plan keeps no
older version: what was planned is what its days come to without what came about. Common practice, no source.
"""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.filling.begins import begun_by, in_ground_on
from gardenplot.filling.claims import pinned, placed_in_part, placed_whole, with_planting
from gardenplot.filling.freed import filled
from gardenplot.filling.parted import in_other_beds
from gardenplot.filling.rescue import Ask, Case, setback, stands_free, told
from gardenplot.filling.setback_numbers import day_number, days_number
from gardenplot.filling.setbacks import Answer, AnswerKind, Ground, Setback, Why
from gardenplot.layout import LaidOut, Layout, lay_out_bed, lay_out_plan
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Establish, Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import Dates, dates_of
from gardenplot.season.dates import wanted_ready
from gardenplot.working import Source


def ground_setbacks(ask: Ask) -> Iterator[Setback]:
    """Ground that is free early, and plantings whose ground is held longer, in the plan's order."""
    if not any(map(is_in_ground, ask.plan.plantings)):
        return
    there = as_staked(ask.plan)
    for laid in lay_out_plan(there):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            planting = one.planting
            if planting.id not in ask.only or planting.hardens is not None or planting.gaps_of is not None:
                continue
            case = evolve(ask, plan=there).case(there, planting, layout, layout.plants)
            if is_in_ground(planting):
                yield from _early(case, laid)
            else:
                yield from _held(case, laid)


def as_staked(plan: Plan) -> Plan:
    """The plan with each place written down as it was planned, before anything came about otherwise."""
    return pinned(plan, evolve(plan, plantings=tuple(_meant(one) for one in plan.plantings)))


def _meant(one: Planting) -> Planting:
    return evolve(one, actual=None) if is_in_ground(one) else one


# ground that is free early


def _early(case: Case, laid: LaidOut) -> Iterator[Setback]:
    """What can be done with the ground of a planting until the day on which it should have been free."""
    came, now = case.planting.actual, dates_of(case.plan, case.planting).out
    planned = dates_of(case.plan, _meant(case.planting)).out
    if came is None or not (came.harvested or came.cleared) or now is None or planned is None:
        return
    first = max(now, case.today)
    if first >= planned or not case.layout.length or _is_taken(case, laid, first):
        return
    freed = Ground(case.layout.bed, case.layout.start, case.layout.end, first, planned)
    followers = [one.planting for one in laid.grown if _follows(case, laid, one.planting)]
    answers = (
        answer for found in (_sooner(case, followers, first), filled(case, case.plan, first)) for answer in found
    )
    is_free = day_number("is_free", now, Source.CAME_ABOUT)
    early = days_number("free_early", day_number("planned_free", planned), is_free)
    yield setback(case, Why.EARLY, answers, (early,), days=int(early.value or 0), freed=freed)


def _is_taken(case: Case, laid: LaidOut, day: date) -> bool:
    """Whether something else stands on all of the ground that day, as where it was replanted already."""
    at = (case.layout.start + case.layout.end) // 2
    beside = zip(laid.grown, laid.layouts, strict=True)
    return any(
        layout.start <= at < layout.end and _stands(one.dates, day)
        for one, layout in beside
        if layout.planting != case.planting.id
    )


def _stands(dates: Dates, day: date) -> bool:
    return dates.in_ground is not None and dates.in_ground <= day and (dates.out is None or day < dates.out)


def _follows(case: Case, laid: LaidOut, other: Planting) -> bool:
    """Whether another planting, not in the ground yet, takes ground of this one after it."""
    if is_in_ground(other) or other.hardens is not None or other.id == case.planting.id:
        return False
    now, then = dates_of(case.plan, case.planting).out, dates_of(case.plan, other).in_ground
    layout = laid.layout_of(other.id)
    shares = layout.start < case.layout.end and case.layout.start < layout.end
    return shares and now is not None and then is not None and then >= now


def _sooner(case: Case, followers: list[Planting], first: date) -> Iterator[Answer]:
    for one in followers:
        day, dates = soonest(case.plan, one, first), dates_of(case.plan, one)
        if day is None or dates.in_ground is None or day >= dates.in_ground:
            continue
        there = in_ground_on(one, day, (day - dates.in_ground).days)
        layout = lay_out_bed(case.plan, bed_of(case.plan, one.bed)).layout_of(one.id)
        if waits_for_market(case.plan, there) and stands_free(case.plan, there):
            own = evolve(case, planting=one, layout=layout)
            yield from told(own, AnswerKind.SOONER, with_planting(case.plan, there))


def soonest(plan: Plan, one: Planting, first: date) -> date | None:
    """The first day from another one on that a planting can go in: its bed can be used, and its plants are raised."""
    crop, bed = crop_of(plan, one.crop), bed_of(plan, one.bed)
    day = max(first, bed.usable_from or date.min)
    if crop.establish is Establish.DIRECT:
        return day
    if crop.raising_days is None:
        return None
    sown = (one.actual.sown if one.actual else None) or one.sow or first
    return max(day, date.fromordinal(sown.toordinal() + crop.raising_days))


def waits_for_market(plan: Plan, one: Planting) -> bool:
    """Whether a planting can still be cut on the day that its market asks for; one without a market always."""
    grown = grown_of(plan, one)
    wanted, last = wanted_ready(evolve(one, ready=None), grown.order), grown.dates.last
    return wanted is None or last is None or last >= wanted


# ground that is held longer


def _held(case: Case, laid: LaidOut) -> Iterator[Setback]:
    """A planting that was to go in when its ground should have been free, which something holds longer."""
    planned = planting_of(case.before, case.planting.id)
    day = dates_of(case.before, planned).in_ground
    holders = [
        (out, one.planting.id)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if is_in_ground(one.planting) and _share(case.layout, layout)
        for out in [one.dates.out]
        if out is not None and day is not None and _was_free(case.before, one.planting, day) and out > day
    ]
    if not holders or day is None:
        return
    until, holder = max(holders)
    longer = days_number("held_longer", day_number("held_until", until), day_number("planned_day", day))
    days, held = int(longer.value or 0), evolve(case, plan=case.before, planting=planned, lacks=case.layout.plants)
    yield setback(held, Why.HELD, _after(held, until), (longer,), days=days, by=holder)


def _share(one: Layout, other: Layout) -> bool:
    return one.planting != other.planting and one.start < other.end and other.start < one.end


def _was_free(plan: Plan, holder: Planting, day: date) -> bool:
    out = dates_of(plan, _meant(holder)).out
    return out is not None and out <= day


def _after(case: Case, until: date) -> Iterator[Answer]:
    """What follows goes in later, elsewhere in its bed, in another bed, or as much of it as finds ground."""
    plan, one = case.plan, begun_by(case.plan, case.planting, case.today)
    later = begun_by(plan, case.planting, case.today, until)
    if stands_free(plan, later):
        yield from told(case, AnswerKind.LATER, with_planting(plan, later))
    there = placed_whole(plan, evolve(one, start=None))
    if there is not None:
        yield from told(case, AnswerKind.OTHER_PLACE, with_planting(plan, there))
    yield from in_other_beds(case, later, case.layout.plants, case.planting)
    part = placed_in_part(plan, one) if there is None else None
    if part is not None and part.plants is not None and part.plants < case.layout.plants:
        yield from told(case, AnswerKind.SHORTER, with_planting(plan, part))
