"""What an order lacks, and what each way out meets and costs, as numbers with their workings.

The search tells what comes of a way; a sum is told where it comes to the very same.
"""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.drawing.marked_numbers import blocks_numbers, moved_numbers
from gardenplot.drawing.sayings import name_of
from gardenplot.filling.claims import Overflow, whole_plants
from gardenplot.filling.met import Met
from gardenplot.filling.setback_numbers import day_number, days_number, in_percent
from gardenplot.filling.ways_out import Shortage, Way
from gardenplot.layout import fullest_day, lay_out_bed, lay_out_plan, spacings_for_orders
from gardenplot.layout.bed_numbers import grown_in, left_number, planted_number
from gardenplot.layout.close_numbers import closer_numbers
from gardenplot.layout.place_numbers import against
from gardenplot.layout.told import first_true
from gardenplot.plan import Crop, Order, Plan, bed_of, crop_of, order_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season import dates_of, market_day, stand_number
from gardenplot.season.dates import wanted_ready
from gardenplot.season.orders import sold_number
from gardenplot.words import _
from gardenplot.working import RULES, Number, Source, Unit, added, known, larger, worked

TRIED = Source.TRIED


def shortage_numbers(plan: Plan, one: Shortage) -> Iterator[Number]:
    """What an order lacks as the plan is, then by how much all of it does not fit."""
    if one.order is not None:
        order = order_of(plan, one.order)
        stands = planted_number(lay_out_plan(plan), order.id, one.market)
        for number in against(stand_number(order, _crop(plan, one, order)), stands):
            yield evolve(number, label=_("as it stands"))
    yield from _too_much(plan, one)


def _crop(plan: Plan, one: Shortage, order: Order) -> Crop:
    """The crop of an order as what lacks ground is planted."""
    if _stands(plan, one.planting):
        return crop_as_planted(plan, planting_of(plan, one.planting))
    return crop_of(plan, order.crop)


def _too_much(plan: Plan, one: Shortage) -> Iterator[Number]:
    """By how much an order does not fit: its plants, its length of bed and its own units."""
    yield _too_long("too_long", one.over, plan, one.planting)
    if one.order is None:
        there = [each for each in plan.plantings if each.id == one.planting]
        wanted = known("wanted_plants", whole_plants(plan, there[0]) if there else None, Unit.COUNT,
                       source=Source.OF_PLANTING)  # fmt: skip
        yield from _short_of("short", wanted, one.plants)
        return
    order = order_of(plan, one.order)
    crop, day = _crop(plan, one, order), market_day(order, one.market)
    if day is not None:
        yield day_number("market", day, Source.OF_ORDER)
    short = next(_short_of("short", stand_number(order, crop), one.plants))
    yield short
    ordered, holds = known("ordered", order.units, Unit.COUNT, source=Source.OF_ORDER), short.terms[-1]
    sold = first_true(order.units - one.units, sold_number(order, crop, holds))
    yield from _short_of("units_short", ordered, one.units, sold)


def _too_long(name: str, over: Overflow, plan: Plan, planting: str) -> Number:
    """By how much a block is longer than the longest gap that its bed has for it."""
    needs = over.short + over.ends - over.begins
    blocks = (number for number in blocks_numbers(plan, (planting,)) if number.name == "block")
    block = first_true(needs, *blocks) or known("whole_block", needs, Unit.LENGTH, source=Source.SEARCH_LENGTH)
    begins = known("room_begins", over.begins, Unit.READING, source=Source.MEASURED)
    ends = known("room_ends", over.ends, Unit.READING, source=Source.MEASURED)
    room = worked("room", Unit.LENGTH, "room_ends − room_begins", ends, begins, source=RULES)
    return worked(name, Unit.LENGTH, f"larger({block.name} − room, 0)", block, room, using={"larger": larger},
                  source=RULES)  # fmt: skip


def _short_of(name: str, wanted: Number, short: int, there: Number | None = None) -> Iterator[Number]:
    """By how much what there is is short of what is wanted; what there is follows where it is not given."""
    left = None if wanted.value is None else wanted.value - short
    holds = there or known("bed_holds", left, Unit.COUNT, source=TRIED)
    yield worked(name, Unit.COUNT, f"{wanted.name} − {holds.name}", wanted, holds, source=RULES)


def way_numbers(plan: Plan, found: Shortage, way: Way) -> Iterator[Number]:
    """What a way out meets and leaves, what is closer, in another bed or new, what is marked anew; its blocks."""
    for one in way.met:
        name = next((name_of(each, one.planting) for each in (way.plan, plan) if _stands(each, one.planting)), "")
        for number in (*_met(plan, way, one), *_late(plan, way, one)):
            yield evolve(number, label=name)
    yield from _ground(found, way)
    yield from _closer(way)
    yield known("changes", way.changes, Unit.COUNT, source=Source.COUNTED)
    yield from moved_numbers(plan, way.plan)
    yield from blocks_numbers(way.plan, (part.planting for part in way.parts))


def _stands(plan: Plan, planting: str) -> bool:
    return any(one.id == planting for one in plan.plantings)


def _met(plan: Plan, way: Way, one: Met) -> Iterator[Number]:
    """The units that there are of those that are wanted, what is short of them and the share that is met."""
    if one.order is None:
        wanted = known("wanted_plants", one.wanted, Unit.COUNT, source=Source.OF_PLANTING)
        units = known("planted", one.units, Unit.COUNT, source=Source.COUNTED)
    else:
        order = order_of(plan, one.order)
        wanted = known("ordered", one.wanted, Unit.COUNT, source=Source.OF_ORDER)
        units = _sold(way.plan, order, crop_of(plan, order.crop), one)
    yield wanted
    yield units
    if one.units < one.wanted:
        yield worked("units_short", Unit.COUNT, f"{wanted.name} − {units.name}", wanted, units, source=RULES)
        met = worked("share_met", Unit.SHARE, f"{units.name} ÷ {wanted.name}", units, wanted, source=RULES)
        yield in_percent(met)


def _sold(plan: Plan, order: Order, crop: Crop, one: Met) -> Number:
    laid_out = lay_out_plan(plan)
    row = spacings_for_orders(laid_out).get((order.id, one.market))
    sold = sold_number(order, crop, planted_number(laid_out, order.id, one.market), row)
    return first_true(one.units, sold) or known("to_sell", one.units, Unit.COUNT, source=TRIED)


def _late(plan: Plan, way: Way, one: Met) -> Iterator[Number]:
    """By how many days it is later: for another market day, ready after it, or later in the ground."""
    if not one.late:
        return
    pairs = _days(plan, way, one)
    ways = (
        days_number("later_by", day_number("now_on", now), day_number("was_on", was))
        for was, now in pairs
        if was is not None and now is not None
    )
    yield first_true(one.late, *ways) or known("later_by", one.late, Unit.DAYS, source=TRIED)


def _days(plan: Plan, way: Way, one: Met) -> Iterator[tuple[date | None, date | None]]:
    if not (_stands(plan, one.planting) and _stands(way.plan, one.planting)):
        return
    was, now = planting_of(plan, one.planting), planting_of(way.plan, one.planting)
    if one.order is not None:
        order = order_of(way.plan, one.order)
        yield market_day(order, was.market), market_day(order, now.market)
        yield wanted_ready(now, order), dates_of(way.plan, now).ready
    yield dates_of(plan, was).in_ground, dates_of(way.plan, now).in_ground


def _ground(found: Shortage, way: Way) -> Iterator[Number]:
    """What the bed has left, or by how much the block is too long still; what stands in another bed, or a new one."""
    laid = lay_out_bed(way.plan, bed_of(way.plan, found.bed))
    left = first_true(way.left, left_number(laid, fullest_day(laid)))
    yield left or known("left", way.left, Unit.LENGTH, source=Source.MEASURED)
    if way.over is not None:
        yield _too_long("still_too_long", way.over, way.plan, way.planting)
    elsewhere = [
        evolve(known("block", part.end - part.start, Unit.LENGTH, source=Source.MEASURED),
               label=f"{name_of(way.plan, part.planting)}, {bed_of(way.plan, part.bed).name}")
        for part in way.parts
        if part.bed != found.bed
    ]  # fmt: skip
    if way.more:
        block = next(part.end - part.start for part in way.parts if part.planting == way.planting)
        now = known("block", block, Unit.LENGTH, source=Source.MEASURED)
        was = known("block_so_far", block - way.more, Unit.LENGTH, source=Source.MEASURED)
        yield worked("longer_by", Unit.LENGTH, "block − block_so_far", now, was, source=RULES)
    if elsewhere:
        yield added("elsewhere", Unit.LENGTH, elsewhere, RULES)
    if way.new_bed is not None:
        yield _new_bed(way, way.new_bed)


def _new_bed(way: Way, bed: str) -> Number:
    """The length of a further bed: its block with both margins."""
    new = bed_of(way.plan, bed)
    block = sum(part.end - part.start for part in way.parts if part.bed == bed)
    long = worked(
        "new_bed", Unit.LENGTH, "block + head_margin + foot_margin",
        known("block", block, Unit.LENGTH, source=Source.MEASURED),
        known("head_margin", new.zone[0], Unit.LENGTH, source=Source.OF_BED),
        known("foot_margin", new.length.nm - new.zone[1], Unit.LENGTH, source=Source.OF_BED), source=RULES,
    )  # fmt: skip
    return first_true(new.length.nm, long) or known("new_bed", new.length.nm, Unit.LENGTH, source=TRIED)


def _closer(way: Way) -> Iterator[Number]:
    """What stands closer than its packet says, or nearer to the edge."""
    for laid in lay_out_plan(way.plan):
        for layout in laid.layouts:
            if layout.planting == way.planting and any(part.planting == way.planting for part in way.parts):
                yield from closer_numbers(laid.bed, grown_in(laid, layout), layout)
                yield known("asked", layout.wanted, Unit.COUNT, source=Source.OF_PLANTING)
