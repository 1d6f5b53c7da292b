"""What came about otherwise than planned, and what each answer takes and gives, as numbers with their workings."""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.drawing.marked_numbers import blocks_numbers, moved_numbers
from gardenplot.drawing.ways_numbers import way_numbers
from gardenplot.filling.claims import Overflow
from gardenplot.filling.setback_numbers import day_number, days_number
from gardenplot.filling.setbacks import Answer, Setback
from gardenplot.filling.ways_out import Shortage
from gardenplot.layout import fullest_day, lay_out_bed, lay_out_plan
from gardenplot.layout.bed_numbers import left_number, planted_number
from gardenplot.layout.told import first_true
from gardenplot.plan import Plan, Planting, bed_of, order_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season import dates_of
from gardenplot.season.orders import market_number, sold_number
from gardenplot.working import RULES, Number, Source, Unit, known, larger, put_in, worked


def setback_numbers(plan: Plan, one: Setback) -> Iterator[Number]:
    """What came about of a planting, then all numbers of it as it was planned."""
    block = tuple(blocks_numbers(plan, (one.planting,)))
    plants = tuple(evolve(number, label="") for number in block if number.name == "planted")
    yield from (put_in(number, *plants) for number in one.numbers)
    if one.order is not None:
        yield known("ordered", one.wanted, Unit.COUNT, source=Source.OF_ORDER)
    yield from _missed(one.missed)
    if one.freed is not None:
        yield known("begins", one.freed.start, Unit.READING, source=Source.MEASURED)
        yield known("ends", one.freed.end, Unit.READING, source=Source.MEASURED)
        yield day_number("is_free", one.freed.first, Source.CAME_ABOUT)
        yield day_number("planned_free", one.freed.until)
    came = planting_of(plan, one.planting).actual
    if came is not None and came.counted is not None:
        yield day_number("counted_on", came.counted, Source.CAME_ABOUT)
    yield from block


def _missed(days: tuple[date, ...]) -> Iterator[Number]:
    for day in days:
        yield day_number("market_missed", day, Source.OF_ORDER)


def numbers_of_answer(plan: Plan, one: Setback, answer: Answer) -> Iterator[Number]:
    """What an answer takes and gives, by how much that is later, what is marked anew; its blocks."""
    yield from _takes(one, answer)
    yield from _gives(plan, one, answer)
    yield from _later(plan, one, answer)
    yield from _missed(answer.missed)
    yield _costs(plan, one, answer)
    yield from moved_numbers(plan, answer.plan)
    if answer.way is not None:
        order = order_of(plan, one.order) if one.order is not None else None
        market = planting_of(plan, one.planting).market or 1
        short = Shortage(
            order.id if order is not None else None,
            market,
            answer.way.planting,
            answer.layout.bed,
            0,
            Overflow(0, 0, 0),
            0,
            (),
        )
        yield from way_numbers(plan, short, answer.way)
    if answer.part is not None:
        yield from answer.part.numbers
    for crowd in answer.crowds:
        day = dates_of(answer.plan, planting_of(answer.plan, crowd)).in_ground
        if day is not None:
            yield day_number("planned_day", day)
    new = [each.planting for each in answer.part.beds] if answer.part else []
    new = [*new, answer.new] if answer.new is not None else new
    yield from blocks_numbers(answer.plan, (answer.layout.planting, *new, *(each.planting for each in answer.filled)))


def _costs(plan: Plan, one: Setback, answer: Answer) -> Number:
    """The market days that it misses and that the planting as it is would make."""
    planting = planting_of(plan, one.planting)
    lost = known("markets_missed", answer.costs, Unit.COUNT, source=Source.COUNTED)
    if planting.order is None or answer.market is None or answer.as_is is None:
        return lost
    every = known("every_days", order_of(plan, planting.order).every_days, Unit.DAYS, source=Source.OF_ORDER)
    makes, as_is = _market(plan, planting, answer), day_number("market_as_is", answer.as_is, Source.CAME_ABOUT)
    formula = "larger(market_made − market_as_is, 0) ÷ every_days"
    days = worked("markets_missed", Unit.COUNT, formula, makes, as_is, every, using={"larger": larger}, source=RULES)
    return first_true(answer.costs, days) or lost


def bought_number(one: Setback, answer: Answer) -> Number:
    """The plants to buy in for an answer."""
    short = next((number for number in one.numbers if number.name == "short"), None)
    bought = known("short", answer.buy, Unit.COUNT, source=Source.COUNTED)
    return evolve(first_true(answer.buy, short) or bought, name="buy")


def _takes(one: Setback, answer: Answer) -> Iterator[Number]:
    """What is to be bought, sown again, or at which spacing it is spread."""
    if answer.buy:
        yield bought_number(one, answer)
    if answer.sowing is not None:
        yield from answer.sowing.numbers
    if answer.spread is not None:
        yield answer.spread.number
        yield known("in_row_spread", answer.spread.marked, Unit.SPACING, source=Source.SPREAD)


def _gives(plan: Plan, one: Setback, answer: Answer) -> Iterator[Number]:
    """What there is to sell, what of it is short, what the bed has left."""
    planting = planting_of(plan, one.planting)
    units = known("to_sell", answer.units, Unit.COUNT, source=Source.COUNTED)
    if planting.order is not None:
        order, crop = order_of(plan, planting.order), crop_as_planted(plan, planting)
        stands = planted_number(lay_out_plan(answer.plan), order.id, planting.market or 1)
        units = first_true(answer.units, sold_number(order, crop, stands, answer.layout.grid.in_row)) or units
        wanted = known("ordered", order.units, Unit.COUNT, source=Source.OF_ORDER)
    else:
        wanted = known("planted", answer.units + answer.short, Unit.COUNT, source=Source.COUNTED)
    yield units
    if answer.short:
        formula = f"{wanted.name} − to_sell"
        yield worked("units_short", Unit.COUNT, formula, wanted, units, source=RULES)
    if answer.free:
        laid = lay_out_bed(answer.plan, bed_of(answer.plan, answer.layout.bed))
        days = {answer.set_out, *(each.in_ground for each in answer.filled), fullest_day(laid)}
        left = first_true(answer.free, *(left_number(laid, day) for day in days))
        yield left or known("left", answer.free, Unit.LENGTH, source=Source.MEASURED)


def _later(plan: Plan, one: Setback, answer: Answer) -> Iterator[Number]:
    """The days of what comes last, and by how much they are later than they were planned."""
    planting = planting_of(plan, one.planting)
    planned = dates_of(plan, planting)
    market = answer.missed[0] if answer.missed else answer.market
    for name, day, was in (
        ("set_out", answer.set_out, planned.in_ground), ("ready", answer.ready, planned.ready),
        ("market_made", answer.market, market),
    ):  # fmt: skip
        if day is not None:
            now = _market(plan, planting, answer) if name == "market_made" else day_number(name, day)
            yield now
            if was is not None and was != day:
                yield days_number(f"{name}_later", now, day_number("was_on", was))


def _market(plan: Plan, planting: Planting, answer: Answer) -> Number:
    """The market day that it makes."""
    day = answer.market or date.min
    order = order_of(plan, planting.order) if planting.order is not None else None
    ready = None if answer.ready is None else day_number("ready", answer.ready)
    return first_true(day.toordinal(), market_number(order, planting.market, ready)) or day_number("market_made", day)
