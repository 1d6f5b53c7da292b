"""The dates of a planting, counted back from its market day or on from a day that was typed or that came about.

Ready = market day - lead; set out = ready - field days; sow = set out - raising days; harden from = set out -
hardening days. Direct: sow = ready - days from sowing. Field days = the packet's days + what is added for cool
weather, days with too little light left out of the count. The ground is free the day after the last of the harvest,
or after what stands there is cut for the market day that it makes. Whole calendar dates. Formulas: common practice,
no source; hardening is the last part of the raising time (University of Maryland Extension on hardening off). Where a
packet counts from sowing and the crop is raised, or the other way round, the raising days are taken off or added
(University of California: vegetable planting guides).
"""

from datetime import date, timedelta
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.plan import Actual, Crop, DaysFrom, Establish, Order, Plan, Planting, crop_of, order_of, planting_of
from gardenplot.season.orders import market_day, market_made
from gardenplot.season.short_days import after, before, counting_site
from gardenplot.season.sun import Site

_NOTHING_YET = Actual()
_GRACE = 7
"""Days by which plants may be older than they were meant to be where nobody says: common practice, no source."""


@frozen(cache_hash=True)
class Dates:
    """Whole calendar dates; None where the crop does not say enough.

    `in_ground` is the day of setting out or, if direct, of sowing; `last` the last day of the harvest; `out` the
    first day the ground is free again. `stays` is the last day on which something is to be cut: that of the harvest,
    of cutting for its market or, where nobody says how long the harvest takes, the day before the ground was typed to
    be free.
    """

    sow: date | None = None
    harden: date | None = None
    set_out: date | None = None
    ready: date | None = None
    in_ground: date | None = None
    out: date | None = None
    pot_up: date | None = None
    last: date | None = None
    stays: date | None = None


def dates_of(plan: Plan, planting: Planting) -> Dates:
    """The dates of a planting of a plan."""
    if planting.hardens is not None:
        return tray_dates(dates_of(plan, planting_of(plan, planting.hardens)))
    order = order_of(plan, planting.order) if planting.order else None
    return dates_for(planting, crop_of(plan, planting.crop), order, counting_site(plan.place))


def all_dates(plan: Plan) -> list[Dates]:
    """The dates of all plantings, in the plan's order; what they refer to is looked up once for all of them."""
    crops, orders = {one.id: one for one in plan.crops}, {one.id: one for one in plan.orders}
    site = counting_site(plan.place)
    return [
        dates_for(one, crops[one.crop], orders[one.order] if one.order else None, site)
        if one.hardens is None
        else dates_of(plan, one)
        for one in plan.plantings
    ]


@lru_cache(maxsize=16_384)
def dates_for(planting: Planting, crop: Crop, order: Order | None, site: Site | None = None) -> Dates:
    """The dates of a planting: what came about and what was typed stand, the rest follows from its order and crop.

    `site` is where short days are left out of the count.
    """
    came, days = planting.actual or _NOTHING_YET, field_days(planting, crop)
    in_ground = _in_ground(planting, crop, order, site)
    ready = came.harvested or _ready(planting, in_ground, days, site)
    last, given = _shifted(ready, crop.harvest_days or 0), came.cleared or planting.out
    kept = _latest(last, cut_day(planting, order, ready) if given is None else None)
    dates = Dates(
        in_ground=in_ground, ready=ready, last=last, out=given or _shifted(kept, 1),
        stays=_stays(planting, crop, kept),
    )  # fmt: skip
    if crop.establish is Establish.DIRECT:
        return evolve(dates, sow=in_ground)
    sow = came.sown or planting.sow or _shifted(in_ground, _back(crop.raising_days))
    return evolve(
        dates,
        sow=sow,
        pot_up=came.potted_up or _shifted(sow, crop.pot_up_days),
        harden=came.hardened or _shifted(in_ground, _back(crop.hardening_days)),
        set_out=in_ground,
    )


def tray_dates(dates: Dates) -> Dates:
    """When the trays of a planting stand where they harden off: until the day that they are set out."""
    return Dates(harden=dates.harden, in_ground=dates.harden, out=dates.set_out)


def field_days(planting: Planting, crop: Crop) -> int | None:
    """Days from when a crop goes into its bed until it is ready, short days not counted; None where nobody says."""
    days = packet_days(crop)
    return None if days is None else days + added_days(planting, crop)


def packet_days(crop: Crop) -> int | None:
    """The packet's days, counted from when the crop goes into its bed, at least one; None where nobody says."""
    days, raised = crop.field_days, crop.establish is Establish.TRANSPLANT
    if days is None or crop.days_from in (None, DaysFrom.SETTING_OUT if raised else DaysFrom.SOWING):
        return days
    if crop.raising_days is None:
        return None
    return max(1, days - crop.raising_days) if raised else days + crop.raising_days


def added_days(planting: Planting, crop: Crop) -> int:
    """What is added to the packet's days for cool weather: the planting's own, else the crop's."""
    return (crop.cool_days or 0) if planting.cool_days is None else planting.cool_days


def oldest_age(crop: Crop) -> int | None:
    """The age in days at which plants go in at the latest, a week past their raising time where nobody says."""
    if crop.oldest_days is not None or crop.raising_days is None:
        return crop.oldest_days
    return crop.raising_days + _GRACE


def wanted_ready(planting: Planting, order: Order | None) -> date | None:
    """The day on which a planting should be ready: as typed, else before its market day."""
    if planting.ready is not None or order is None:
        return planting.ready
    return _shifted(market_day(order, planting.market), -order.lead_days)


def cut_day(planting: Planting, order: Order | None, ready: date | None) -> date | None:
    """The day on which a planting is cut for the market day that it makes; None where it has none or was cut already.

    Until then it stands, however early it is ready. One that is late and misses its market is cut for the next.
    """
    if order is None or ready is None or (planting.actual is not None and planting.actual.harvested is not None):
        return None
    return _shifted(market_made(order, planting.market, ready), -order.lead_days)


def _in_ground(planting: Planting, crop: Crop, order: Order | None, site: Site | None) -> date | None:
    """What came about before what was typed; a day in the ground before a sowing day, and both before the market."""
    came, raised = planting.actual or _NOTHING_YET, crop.establish is Establish.TRANSPLANT
    if not raised:
        fixed = came.set_out or came.sown or planting.in_ground or planting.sow
    else:
        fixed = came.set_out or planting.in_ground or _shifted(came.sown or planting.sow, crop.raising_days)
    if fixed is not None:
        return fixed
    wanted, days = wanted_ready(planting, order), field_days(planting, crop)
    return None if wanted is None or days is None else before(site, wanted, days)


def _ready(planting: Planting, in_ground: date | None, days: int | None, site: Site | None) -> date | None:
    """From the day in the ground on; a day that was typed stands until something came about in the bed."""
    is_in_ground = planting.actual is not None and planting.actual.set_out is not None
    counted = None if in_ground is None or days is None else after(site, in_ground, days)
    return counted if counted is not None and (is_in_ground or planting.ready is None) else planting.ready


def _stays(planting: Planting, crop: Crop, last: date | None) -> date | None:
    """The last day on which something is to be cut, a typed end of its ground being meant for that."""
    held = None if crop.harvest_days is not None else _shifted(planting.out, -1)
    return _latest(last, held)


def _latest(*days: date | None) -> date | None:
    return max((day for day in days if day is not None), default=None)


def _back(days: int | None) -> int | None:
    return None if days is None else -days


def _shifted(day: date | None, days: int | None) -> date | None:
    if day is None or days is None:
        return None
    try:
        return day + timedelta(days=days)
    except OverflowError:
        return None


def grown_on(dates: Dates, day: date | None) -> bool:
    """Whether the ground is taken on that day; an open end is taken, and without a day everything counts."""
    if day is None:
        return True
    return (dates.in_ground is None or dates.in_ground <= day) and (dates.out is None or day < dates.out)


def share_days(one: Dates, other: Dates) -> bool:
    """Whether two plantings want the ground on the same day."""
    return _begins_before(one, other) and _begins_before(other, one)


def _begins_before(one: Dates, other: Dates) -> bool:
    return one.in_ground is None or other.out is None or one.in_ground < other.out
