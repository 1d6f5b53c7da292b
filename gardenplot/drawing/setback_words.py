"""What came about of a planting that was not planned so, in words."""

from collections.abc import Iterator
from datetime import timedelta

from gardenplot.drawing.days import day_words, short_day, with_missing
from gardenplot.drawing.sayings import between_readings, name_of
from gardenplot.drawing.so_many import so_many_clumps, so_many_days
from gardenplot.filling.setbacks import Setback, Why
from gardenplot.plan import Actual, Establish, Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import clump_of
from gardenplot.season import dates_of, market_day
from gardenplot.units.figures import grouped, rounded, span
from gardenplot.words import _, ngettext


def setback_words(plan: Plan, one: Setback) -> tuple[str, ...]:
    """What came about of a planting: one line for what stands, one for its bed, one for its age."""
    match one.why:
        case Why.RAISED:
            return tuple(_raised(plan, one))
        case Why.LOST:
            return tuple(_lost(plan, one))
        case Why.EARLY | Why.HELD:
            return (_ground(plan, one),)
        case _:
            return tuple(_ordered(plan, one))


def _raised(plan: Plan, one: Setback) -> Iterator[str]:
    name = name_of(plan, one.planting)
    if one.lacks and one.stand is not None:
        came = "" if one.came_up is None else f" ({rounded(100 * one.came_up)} %)"
        bought = (planting_of(plan, one.planting).actual or Actual()).bought
        words = _(
            "{name}: {stand} of {sown} cells usable{came}, {settable} to set out{bought}, {lacks} short of {planned}"
        )
        yield words.format(
            name=name, stand=one.stand, sown=one.sown or "?", came=came, settable=one.settable, lacks=one.lacks,
            planned=one.planned, bought=_(" with {count} bought in").format(count=bought) if bought else "",
        )  # fmt: skip
    elif one.lacks:
        yield _few_cells(plan, one)
    yield from _late(plan, one)


def _late(plan: Plan, one: Setback) -> Iterator[str]:
    """When it goes in where that is not on its day, how old it is then and which market it makes."""
    name = name_of(plan, one.planting)
    if one.late and one.set_out:
        bed = bed_of(plan, planting_of(plan, one.planting).bed).name
        words, usable = _("{name}: {bed} can be used from {day}, {days} late"), one.set_out - timedelta(days=one.past)
        yield words.format(name=name, bed=bed, day=day_words(usable), days=so_many_days(one.late))
    if one.past and one.set_out:
        yield _past(plan, one)
    if one.is_over_age and one.age is not None:
        yield _("{name}: {days} old when set out, too old: it may bolt or stand still").format(
            name=name, days=so_many_days(one.age)
        )
    if (one.late or one.past) and one.ready and one.market:
        words = _("{name}: ready {ready}, for the market on {market}")
        told = words.format(name=name, ready=day_words(one.ready), market=day_words(one.market))
        yield with_missing(told, one.missed)


def _past(plan: Plan, one: Setback) -> str:
    """That its day is past with nothing recorded, so that all that can be done begins today."""
    planting = planting_of(plan, one.planting)
    words = _("{name}: to be sown {day}, {days} ago, and nothing is recorded; it cannot go in before today")
    if crop_of(plan, planting.crop).establish is Establish.TRANSPLANT:
        words = _("{name}: to be set out {day}, {days} ago, and nothing is recorded; it cannot go in before today")
    planned = dates_of(plan, planting).in_ground
    if planned is None or one.set_out is None:
        return ""
    days = so_many_days((one.set_out - planned).days)
    return words.format(name=name_of(plan, one.planting), day=day_words(planned), days=days)


def _few_cells(plan: Plan, one: Setback) -> str:
    words = _("{name}: about {settable} plants from {sown} cells, {lacks} short of {planned}")
    return words.format(
        name=name_of(plan, one.planting), settable=grouped(one.settable), sown=grouped(one.sown or 0),
        lacks=grouped(one.lacks), planned=grouped(one.planned),
    )  # fmt: skip


def _lost(plan: Plan, one: Setback) -> Iterator[str]:
    """What is left in the bed: "Leek: 100 of 150 plants stand, 50 lost; row 2 failed, 12.50 m of row empty"."""
    planting, units = planting_of(plan, one.planting), plan.place.units
    came = planting.actual or Actual()
    words = _("{name}: {standing} of {planned} plants stand, {lacks} short")
    if crop_of(plan, planting.crop).establish is Establish.DIRECT and came.standing is None and not one.failed_rows:
        words = _("{name}: {standing} of {planned} plants came up, {lacks} short")
    counted = came.counted
    told = words.format(
        name=name_of(plan, one.planting), standing=grouped(one.standing or 0), planned=grouped(one.planned),
        lacks=grouped(one.lacks),
    )  # fmt: skip
    yield told if counted is None else told + _(", counted {day}").format(day=day_words(counted))
    if one.failed_rows:
        words = ngettext("{name}: row {rows} failed, {empty} of row are empty",
                         "{name}: rows {rows} failed, {empty} of row are empty", len(one.failed_rows))  # fmt: skip
        rows = ", ".join(map(str, one.failed_rows))
        yield words.format(name=name_of(plan, one.planting), rows=rows, empty=span(one.empty, units))


def _ground(plan: Plan, one: Setback) -> str:
    name, days = name_of(plan, one.planting), so_many_days(one.days)
    if one.freed is not None:
        words = _("{name}: {bed}, {place} is free from {first}, {days} early, until {until}")
        return words.format(
            name=name, bed=bed_of(plan, one.freed.bed).name, days=days,
            place=between_readings(plan, one.freed.start, one.freed.end),
            first=day_words(one.freed.until - timedelta(days=one.days)),
            until=short_day(one.freed.until),
        )  # fmt: skip
    if one.set_out is None:
        return name
    words = _("{name}: its ground is held by {other} until {until}, {days} past {day}, its day in the ground")
    return words.format(
        name=name, other=name_of(plan, one.by or one.planting), days=days, day=day_words(one.set_out),
        until=day_words(one.set_out + timedelta(days=one.days)),
    )  # fmt: skip


def _ordered(plan: Plan, one: Setback) -> Iterator[str]:
    """What its order asks for now beside what is planted for it."""
    if one.order is None:
        return
    if one.why is Why.MORE and one.sown is not None:
        yield _few_cells(plan, one)
        yield from _late(plan, one)
        return
    day = market_day(order_of(plan, one.order), planting_of(plan, one.planting).market)
    clump = clump_of(plan, one.planting)
    yield _order_words(one).format(
        name=name_of(plan, one.planting), market="" if day is None else day_words(day), wanted=grouped(one.wanted),
        needed=so_many_clumps(one.planned + one.lacks, clump), planned=so_many_clumps(one.planned, clump),
        ready="" if one.ready is None else day_words(one.ready), days=so_many_days(abs(one.days)),
        stand=so_many_clumps(one.stand or 0, clump),
    )  # fmt: skip


def _order_words(one: Setback) -> str:
    """What is said of an order, with the names of what is to be put in."""
    if one.why is Why.MORE:
        return _("{name}: {wanted} are wanted for {market}; {needed} must stand, {planned} are planted or planned")
    if one.why is Why.FEWER:
        return _("{name}: {planned} are planted or planned, more than the {wanted} wanted for {market} need")
    if one.why is Why.WITHDRAWN:
        there = _("{planned} are planted or planned") if one.planned else _("{stand} are raised")
        return _("{{name}}: the order for {{market}} was withdrawn, {there}").format(there=there)
    if one.days < 0:
        return _("{name}: ready {ready}, over {days} too early for {market}")
    return _("{name}: ready {ready}, {days} too late for {market}")
