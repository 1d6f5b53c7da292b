"""What is to be planted: the wishes of a plan, and what its orders still lack for each of their market days."""

from collections.abc import Iterator
from datetime import date, timedelta
from enum import StrEnum
from fractions import Fraction
from itertools import islice
from math import ceil

from attrs import evolve, frozen

from gardenplot.layout import lay_out_plan, planted_for_orders, planted_for_wishes
from gardenplot.plan import Crop, Order, Plan, Planting, Wish, crop_of, fresh_id
from gardenplot.season import Dates, counting_site, dates_for, dates_of, grown_on, market_days, stand_for

_STEP = timedelta(days=7)
_MOST_DAYS = 14
"""Days tried for a wish, at most: its first, its last, and others evenly between, a week apart or more."""


class First(StrEnum):
    """What counts first where blocks of a bed could change places."""

    LIGHT = "light"
    ROOM = "room"
    COVER = "cover"


@frozen(cache_hash=True)
class Weights:
    """How much one thing counts beside another.

    An order wholly met on its day counts `orders` times as much as the dearest wish; one met in part counts for that
    part, and without the `whole` of it that being met wholly is worth. An order with several market days is
    wholly met on all of them or on none, a wish for several times has all of them or none, unless they are `apart`.
    What comes `first` decides the order of blocks along a bed.
    """

    orders: float = 10.0
    whole: float = 0.5
    apart: bool = False
    first: First = First.LIGHT


@frozen(cache_hash=True)
class Wanted:
    """One thing to plant: a wish, or what an order lacks for a market day.

    `trial` is the planting that would meet it, without place, size and days; `worth` is that of each plant, and
    `whole` what is added where there are as many as are wanted. With a `piece` it may stand in several blocks of at
    least so many plants. What is of one `series` stands as a whole or not at all.
    """

    id: str
    trial: Planting
    crop: Crop
    order: Order | None
    least: int
    most: int | None
    worth: Fraction
    whole: Fraction
    beds: tuple[str, ...]
    days: tuple[Dates, ...]
    piece: int | None = None
    series: str | None = None


def as_one(one: Wanted) -> Wanted:
    """What is looked for in one block: of what may be split anything from its least piece on."""
    return one if one.piece is None else evolve(one, least=one.piece)


def wanted_in(plan: Plan, weights: Weights) -> tuple[Wanted, ...]:
    """All that is still to be planted: wishes first, then orders, as they stand in the plan."""
    wishes = tuple(
        evolve(_wish(plan, wish, time), series=None if weights.apart or wish.times == 1 else f"wish {wish.id}")
        for wish, time in still_wished(plan)
    )
    dearest = max((one.worth * (one.most or one.least) for one in wishes), default=Fraction(1))
    each = Fraction(weights.orders) * max(dearest, Fraction(1))
    return (*wishes, *_lacking(plan, each, Fraction(weights.whole), apart=weights.apart))


def wanted_on(plan: Plan, day: date | None, weights: Weights) -> tuple[Wanted, ...]:
    """The same, but wishes go in on a day, or where they could not then stand on it all the same.

    Without a day they go in on their first; orders keep all days that they could have.
    """
    wishes = tuple(
        as_one(_wish(plan, wish, time, tuple(_days_on(plan, wish, day))))
        for wish, time in still_wished(plan, endless=True)
    )
    orders = wanted_in(plan, weights)[sum(1 for _wish in still_wished(plan)) :]
    return (*wishes, *orders)


def still_wished(plan: Plan, *, endless: bool = False) -> Iterator[tuple[Wish, int]]:
    """The wishes for which too little is planted, each with what it still lacks and with which time of it this is.

    One for any number of plants has enough with its least, unless it is `endless`.
    """
    planted = planted_for_wishes(lay_out_plan(plan)) if plan.wishes else {}
    for one in plan.wishes:
        for time in range(1, one.times + 1):
            wish, has = _at_time(one, time), planted.get((one.id, time), 0)
            most = wish.most if wish.most is not None else max(1, wish.least)
            if not has or (endless and wish.most is None):
                yield wish, time
            elif has < most:
                left = None if wish.most is None else wish.most - has
                yield evolve(wish, least=max(1, wish.least - has), most=left), time


def _at_time(wish: Wish, time: int) -> Wish:
    """A wish with the days of one of its times; past the calendar's end they are those of the last that has some."""
    later = timedelta(days=wish.every_days * (time - 1))
    try:
        days = {name: day + later for name in ("earliest", "latest") if (day := getattr(wish, name)) is not None}
    except OverflowError:
        return wish
    return evolve(wish, **days)


def _days_on(plan: Plan, wish: Wish, day: date | None) -> Iterator[Dates]:
    crop, trial = crop_of(plan, wish.crop), _trial(plan, wish)
    could = _wish_days(plan, wish, trial, crop)
    if day is None:
        yield from islice(could, 1)
        return
    then = _in_ground_from(plan, wish, trial, crop, day)
    in_time = wish.latest is None or (then.out is not None and then.out <= wish.latest)
    if in_time and (wish.earliest is None or wish.earliest <= day):
        yield then
    elif wish.earliest is not None:
        yield from (dates for dates in could if grown_on(dates, day))


def _trial(plan: Plan, wish: Wish) -> Planting:
    taken = {one.id for one in plan.plantings}
    return Planting(fresh_id(wish.id, taken), "", wish.crop, pattern=wish.pattern, rows=wish.rows, wish=wish.id)


def _wish(plan: Plan, wish: Wish, time: int, days: tuple[Dates, ...] | None = None) -> Wanted:
    crop, trial = crop_of(plan, wish.crop), evolve(_trial(plan, wish), market=time if wish.times > 1 else None)
    days = tuple(_wish_days(plan, wish, trial, crop)) if days is None else days
    return Wanted(
        wish.id, trial, crop, None, max(1, wish.least), wish.most, Fraction(wish.worth).limit_denominator(1000),
        Fraction(0), wish.beds, days, wish.piece,
    )  # fmt: skip


def _wish_days(plan: Plan, wish: Wish, trial: Planting, crop: Crop) -> Iterator[Dates]:
    """The days that a wish could have: it goes in on its earliest day or later, and is out by its latest."""
    if wish.earliest is None:
        yield Dates()
        return
    for day in sorted(_first_days(plan, wish.earliest, max(wish.earliest, wish.latest or wish.earliest), wish)):
        dates = _in_ground_from(plan, wish, trial, crop, day)
        if wish.latest is None or (dates.out is not None and dates.out <= wish.latest):
            yield dates


def _first_days(plan: Plan, first: date, last: date, wish: Wish) -> set[date]:
    """The days on which a wish may go in: evenly between two days, as late as it can, and when ground comes free or
    a bed can be used."""
    count = min(_MOST_DAYS, -(-(last - first) // _STEP) + 1)
    even = {first + (last - first) * number // max(1, count - 1) for number in range(count)}
    latest = {max(first, last - timedelta(days=wish.days))} if wish.days is not None else set()
    freed = {dates_of(plan, one).out for one in plan.plantings if not wish.beds or one.bed in wish.beds}
    freed |= {bed.usable_from for bed in plan.beds if not wish.beds or bed.id in wish.beds}
    return even | latest | {day for day in freed if day is not None and first <= day <= last}


def _in_ground_from(plan: Plan, wish: Wish, trial: Planting, crop: Crop, day: date) -> Dates:
    dates = dates_for(evolve(trial, in_ground=day), crop, None, counting_site(plan.place))
    if wish.days is not None:
        return evolve(dates, out=day + timedelta(days=wish.days))
    return dates


def _lacking(plan: Plan, each: Fraction, whole: Fraction, *, apart: bool) -> Iterator[Wanted]:
    """What orders lack for each of their market days; each order counts alike, however many plants it needs."""
    planted = planted_for_orders(lay_out_plan(plan))
    taken = {one.id for one in plan.plantings}
    for order in plan.orders:
        crop = crop_of(plan, order.crop)
        stand = stand_for(order, crop)
        for market in range(1, len(market_days(order)) + 1):
            lack = stand - planted.get((order.id, market), 0)
            if lack <= 0 or stand <= 0:
                continue
            number = market if order.times > 1 else None
            trial = Planting(fresh_id(order.id, taken), "", order.crop, order=order.id, market=number)
            taken.add(trial.id)
            days = tuple(_order_days(plan, trial, crop, order))
            series = None if number is None or apart else f"order {order.id}"
            least = 1 if series is None else lack
            yield Wanted(
                order.id, trial, crop, order, least, lack, each / stand, each * whole, (), days, series=series
            )  # fmt: skip


def _order_days(plan: Plan, trial: Planting, crop: Crop, order: Order) -> Iterator[Dates]:
    """On time: counted back from the market day, or earlier by as long as the crop may wait to be cut."""
    site = counting_site(plan.place)
    dates = dates_for(trial, crop, order, site)
    yield dates
    if dates.in_ground is None or dates.ready is None:
        return
    wait = timedelta(days=crop.harvest_days or 0)
    for part in (ceil(wait.days / 2), wait.days):
        earlier = dates_for(evolve(trial, in_ground=dates.in_ground - timedelta(days=part)), crop, order, site)
        is_cut = earlier.ready is not None and earlier.ready <= dates.ready
        if part and is_cut and earlier.last is not None and earlier.last >= dates.ready:
            yield earlier
