"""The dates of a planting, counted back from its market day or on from the day it goes into the ground.

Ready = market day - lead; set out = ready - field days; sow = set out - raising days; harden from = set out -
hardening days. Direct: sow = ready - days from sowing. Whole calendar dates. Formulas: common practice, no source;
hardening is the last part of the raising time (University of Maryland Extension on hardening off).
"""

from datetime import date, timedelta
from fractions import Fraction
from math import ceil

from attrs import frozen

from gardenplot.plan import Crop, Establish, Order, Plan, Planting, crop_of, order_of


@frozen(cache_hash=True)
class Dates:
    """Whole calendar dates; None where the crop does not say enough.

    `in_ground` is the day of setting out or, if direct, of sowing; `out` the first day the ground is free again.
    """

    sow: date | None = None
    harden: date | None = None
    set_out: date | None = None
    ready: date | None = None
    in_ground: date | None = None
    out: date | None = None


def dates_of(plan: Plan, planting: Planting) -> Dates:
    """The dates of a planting of a plan."""
    order = order_of(plan, planting.order) if planting.order else None
    return dates_for(planting, crop_of(plan, planting.crop), order)


def dates_for(planting: Planting, crop: Crop, order: Order | None) -> Dates:
    """The dates of a planting: what was typed stands, the rest follows from its order and its crop."""
    in_ground = planting.in_ground or _in_ground_for(order, crop)
    ready = _shifted(in_ground, crop.field_days)
    out = planting.out or _shifted(ready, 1)
    if crop.establish is Establish.DIRECT:
        return Dates(sow=in_ground, ready=ready, in_ground=in_ground, out=out)
    return Dates(
        sow=_shifted(in_ground, _back(crop.raising_days)),
        harden=_shifted(in_ground, _back(crop.hardening_days)),
        set_out=in_ground,
        ready=ready,
        in_ground=in_ground,
        out=out,
    )


def _in_ground_for(order: Order | None, crop: Crop) -> date | None:
    if order is None or crop.field_days is None:
        return None
    return _shifted(order.on, -order.lead_days - crop.field_days)


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


def stand_for(order: Order, crop: Crop) -> int:
    """The plants that must stand for an order: units x plants per unit / (1 - field loss), rounded up."""
    loss = crop.field_loss.part if crop.field_loss else Fraction(0)
    return ceil(order.units * order.plants_per_unit / (1 - loss))
