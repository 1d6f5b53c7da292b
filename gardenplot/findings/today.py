"""What stands against a plan on the day on which it is looked at: jobs past that nobody recorded, market days past.

The day is handed down from outside. A plan whose days are all past is a plan to look back on: it is said once that it
is, and nothing of it is called late.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan
from gardenplot.plan import Actual, Establish, Plan
from gardenplot.plan.value import CAME
from gardenplot.season import market_days
from gardenplot.season.dates import dates_for, wanted_ready

_NOTHING_YET, _YEAR = Actual(), timedelta(days=365)
_MISSED = {"sown": Kind.SOWING_PAST, "potted_up": Kind.POTTING_PAST, "set_out": Kind.SETTING_PAST}
"""What is said of a job that is past, by what was to come about."""


@frozen
class _Job:
    """What was to come about of a planting, by its name in the actual, and the day for it."""

    came: str
    day: date


@frozen
class _InBed:
    """What a day has to say of a bed: records of days to come, jobs past, and the plantings of these."""

    early: tuple[Finding, ...]
    missed: tuple[Finding, ...]


def last_day(plan: Plan) -> date | None:
    """The last day that a plan knows, of its plantings and of its markets; None where it knows none.

    Where nobody says when a crop is out again, its ground is taken for a year.
    """
    days = [day for order in plan.orders for day in market_days(order)]
    days += [day for day in map(_last_in_bed, lay_out_plan(plan)) if day is not None]
    return max(days, default=None)


@lru_cache(maxsize=2048)
def _last_in_bed(laid: LaidOut) -> date | None:
    days: list[date | None] = []
    for one in laid.grown:
        dates = one.dates
        days += [dates.sow, dates.pot_up, dates.harden, dates.in_ground, dates.ready, dates.last, dates.out]
        if dates.in_ground is not None and dates.out is None:
            days.append(min(date.max - _YEAR, dates.in_ground) + _YEAR)
    return max((day for day in days if day is not None), default=None)


def is_past(plan: Plan, today: date) -> bool:
    """Whether every day that a plan knows is over."""
    last = last_day(plan)
    return last is not None and last < today


def find_today(plan: Plan, today: date) -> tuple[Finding, ...]:
    """What a day has to say of a plan; the orders are looked at by themselves.

    Where nothing was ever recorded in the plan, all that is past stands in one finding, at what was to be done first:
    whoever keeps no records needs no list of them.
    """
    in_beds = [_in_bed(laid, today) for laid in lay_out_plan(plan)]
    early = tuple(found for bed in in_beds for found in bed.early)
    if is_past(plan, today):
        bare = sum(one.actual is None and one.hardens is None for one in plan.plantings)
        return (*early, Finding(Kind.PLAN_PAST, amount=bare))
    missed = [found for bed in in_beds for found in bed.missed]
    if len(missed) > 1 and all(one.actual is None for one in plan.plantings):
        missed = [evolve(max(missed, key=lambda each: each.amount), pieces=len(missed))]
    return (*early, *missed)


@lru_cache(maxsize=2048)
def _in_bed(laid: LaidOut, today: date) -> _InBed:
    pairs = tuple(zip(laid.grown, laid.layouts, strict=True))
    return _InBed(
        tuple(found for one, layout in pairs for found in _early(one, layout, today)),
        tuple(found for one, layout in pairs for found in _missed(one, layout, today)),
    )


def find_on_day(plan: Plan, one: Grown, layout: Layout, today: date) -> tuple[Finding, ...]:
    """What a day has to say of one planting of a plan, by itself."""
    missed = () if is_past(plan, today) else _missed(one, layout, today)
    return *_early(one, layout, today), *missed


def _missed(one: Grown, layout: Layout, today: date) -> Iterator[Finding]:
    """A planting whose sowing, potting up or setting out lies before today, with nothing that says it was done.

    `amount` is how many days ago it was, `limit` by how many its market is missed if it is done today.
    """
    job = _missed_job(one, today)
    if job is not None:
        late = _late_if_done(one, job, today)
        yield _at(_MISSED[job.came], layout, (today - job.day).days, late, job.came)


def _missed_job(one: Grown, today: date) -> _Job | None:
    """The job to tell of: sowing before all others, else the last one; a later step shows that a former was done."""
    if one.hardened is not None:
        return None
    came, dates = one.planting.actual or _NOTHING_YET, one.dates
    raised = one.crop.establish is Establish.TRANSPLANT
    days = {"sown": dates.sow}
    if raised:
        days |= {"potted_up": dates.pot_up, "set_out": dates.set_out}
    known = {name: getattr(came, name) for name in CAME}
    # Whoever counted what stands, bought it in or set it out need not have noted the day.
    for name, count in (("emerged", came.stand), ("emerged", came.bought), ("set_out", came.planted)):
        known[name] = known[name] or count
    reached = max((number for number, name in enumerate(CAME) if known[name] is not None), default=-1)
    jobs = [
        _Job(name, day)
        for name, day in days.items()
        if day is not None and day < today and CAME.index(name) > reached
    ]
    if not jobs:
        return None
    return jobs[0] if jobs[0].came == "sown" else jobs[-1]


def _late_if_done(one: Grown, job: _Job, today: date) -> int:
    """By how many days a planting misses its market if a job is done today and the rest follows from that."""
    sets_out = job.came == "set_out"
    done = evolve(one.planting, sow=None if sets_out else today, in_ground=today if sets_out else None, ready=None)
    ready, wanted = dates_for(done, one.crop, one.order, one.site).ready, wanted_ready(done, one.order)
    if job.came == "potted_up" or ready is None or wanted is None:
        return 0
    return max(0, (ready - wanted).days)


def find_past_markets(plan: Plan, today: date) -> tuple[Finding, ...]:
    """Orders whose market days are past with nothing that came about for them, those of an order told together.

    What is planted for a market and told of as a job that is past is not told once more, nor is a plan that is past.
    """
    if is_past(plan, today):
        return ()
    missed = {found.planting for laid in lay_out_plan(plan) for found in _in_bed(laid, today).missed}
    told = {
        (one.order, one.market or 1)
        for one in plan.plantings
        if one.order is not None and (one.actual is not None or one.id in missed)
    }
    found = []
    for order in (one for one in plan.orders if one.units):
        days = [
            (market, day)
            for market, day in enumerate(market_days(order), start=1)
            if day < today and (order.id, market) not in told
        ]
        if days:
            market, day = days[0]
            ago = (today - day).days
            found.append(Finding(Kind.ORDER_PAST, order=order.id, amount=ago, market=market, pieces=len(days)))
    return tuple(found)


def _early(one: Grown, layout: Layout, today: date) -> Iterator[Finding]:
    """What is recorded for a day that is still to come; the first of it, since what follows hangs on that."""
    came = one.planting.actual or _NOTHING_YET
    days = ((name, getattr(came, name)) for name in CAME)
    for name, day in days:
        if day is not None and day > today:
            yield _at(Kind.NOT_YET, layout, (day - today).days, 0, name)
            return


def _at(kind: Kind, layout: Layout, amount: int, limit: int, came: str) -> Finding:
    return Finding(
        kind, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=amount, limit=limit, came=came
    )
