"""A planting that cannot go in on its day where it was planned: in other beds sooner, whole or as much as fits.

What does not fit waits for the bed that was planned. What is in trays is shared out by the plants that each part has
(`plan/parted_record.py`). Formulas: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date
from functools import reduce

from attrs import evolve

from gardenplot.filling.begins import begun_by
from gardenplot.filling.claims import of_size, placed_in_part, placed_whole, with_planting
from gardenplot.filling.placed import Placed
from gardenplot.filling.rescue import Case, market_for, stands_free, told
from gardenplot.filling.setback_numbers import counted_number, day_number, settable_number, that_are_known
from gardenplot.filling.setbacks import Answer, AnswerKind, Part
from gardenplot.filling.task import comes_back
from gardenplot.layout import Layout, lay_out_bed
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Actual, Plan, Planting, bed_of, fresh_id, order_of, planting_of
from gardenplot.plan.parted_record import shared
from gardenplot.season import Dates, dates_of
from gardenplot.season.orders import market_number, sold_number
from gardenplot.working import RULES, Source, Unit, known, larger, worked


def in_other_beds(case: Case, waiting: Planting, plants: int, one: Planting) -> Iterator[Answer]:
    """So many plants in each other bed in which `one`, as it was planned, goes in sooner than `waiting` for its own.

    Whole where there is ground for it, on its own day or for a sooner market, else as many as the ground holds of
    those that are for a sooner market; where none holds all of them, also in several beds on the same day.
    """
    waits = with_planting(case.plan, waiting)
    late, own = dates_of(waits, waiting), dates_of(waits, one).in_ground
    in_part, is_held = [], False
    for bed in waits.beds:
        there = begun_by(waits, evolve(one, bed=bed.id, start=None), case.today)
        dates = grown_of(waits, there).dates
        is_gain, laid = _makes_more(case, dates, late), lay_out_bed(waits, bed)
        if bed.id == case.bed.id or comes_back(waits.place, laid, case.crop, one.id, dates):
            continue
        whole = placed_whole(waits, there) if is_gain or dates.in_ground == own else None
        if whole is not None:
            is_held = True
            yield from told(case, AnswerKind.OTHER_BED, with_planting(waits, whole))
        elif is_gain:
            in_part.append(there)
            yield from _in_parts(case, waiting, plants, [there])
    several = _on_one_day(waits, in_part)
    if len(several) > 1 and not is_held:
        yield from _in_parts(case, waiting, plants, several)


def _makes_more(case: Case, dates: Dates, late: Dates) -> bool:
    """Whether what goes in on its days is for a sooner market than what is late; without a market sooner there."""
    if dates.in_ground is None or (late.in_ground is not None and dates.in_ground >= late.in_ground):
        return False
    made, then = market_for(case, dates.ready), market_for(case, late.ready)
    return made is None or then is None or made < then


def _on_one_day(plan: Plan, ones: list[Planting]) -> list[Planting]:
    """A planting in those of several beds where it goes in on the soonest day, what holds most of it first."""
    days = [grown_of(plan, one).dates.in_ground or date.max for one in ones]
    soonest = [one for one, day in zip(ones, days, strict=True) if day == min(days)]
    return sorted(soonest, key=lambda one: -_held(placed_in_part(plan, one)))


def _held(part: Planting | None) -> int:
    return 0 if part is None else part.plants or 0


def _in_parts(case: Case, waiting: Planting, plants: int, beds: list[Planting]) -> Iterator[Answer]:
    """As many as each of several beds holds there, the rest, if any, where they were planned."""
    plan, parts, came, left = with_planting(case.plan, waiting), list[Planting](), waiting.actual, plants
    for one in beds:
        part = _part_in(plan, waiting, left, one) if left else None
        if part is not None:
            part = _whole_with_rest(case, came, left, part)
            goes, came = shared(came, _held(part), left, case.loss)
            part, left = evolve(part, actual=goes), left - _held(part)
            plan, parts = with_planting(plan, part), [*parts, part]
    if len(parts) < min(2, len(beds)) or (len(parts) == 1 and not left):
        return
    if left:
        rest = evolve(of_size(waiting, left), actual=came, series=None)
        plan = with_planting(plan, rest)
        if not stands_free(plan, rest):
            return
    else:
        parts[0] = evolve(parts[0], id=waiting.id, letter=waiting.letter)
        plan = reduce(with_planting, parts, case.plan)
    yield from told(case, AnswerKind.OTHER_BED, plan, part=_part_of(case, plan, [part.id for part in parts]))


def _part_in(plan: Plan, waiting: Planting, left: int, one: Planting) -> Planting | None:
    """So many plants, or as many as there is room for, in the bed of one."""
    fresh = fresh_id(waiting.id, {each.id for each in plan.plantings})
    wanted = evolve(of_size(one, left), id=fresh, series=None, letter=None)
    return placed_whole(plan, wanted) or placed_in_part(plan, wanted)


def _whole_with_rest(case: Case, came: Actual | None, plants: int, part: Planting) -> Planting:
    """The part, less up to a rank where both then have all of their plants: seedlings are whole in each of them."""
    most = _held(part)
    rows = lay_out_bed(with_planting(case.plan, part), bed_of(case.plan, part.bed)).layout_of(part.id).grid.rows
    for few in range(most, max(most - rows, 0), -1):
        goes, stays = shared(came, few, plants, case.loss)
        if all(_can_be(case, *each) for each in ((goes, few), (stays, plants - few))):
            return evolve(part, plants=few)
    return part


def _can_be(case: Case, came: Actual | None, plants: int) -> bool:
    """Whether so many can be set out of what came about, as far as that is counted."""
    can = settable_number(case.crop, came, case.loss) if came is not None else None
    return can is None or can.whole is None or can.whole >= plants


def _part_of(case: Case, plan: Plan, parts: list[str]) -> Part:
    """What parts that go in on the same day are together."""
    ones = [planting_of(plan, part) for part in parts]
    layouts = [lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.id) for one in ones]
    first, *more = (_placed(plan, *each) for each in zip(ones, layouts, strict=True))
    one, ready = ones[0], dates_of(plan, ones[0]).ready
    market = market_for(case, ready)
    if one.order is None or market is None or ready is None:
        return Part(first, tuple(more))
    order, stands = order_of(plan, one.order), counted_number("planted_for", sum(each.plants for each in layouts))
    sold = sold_number(order, case.crop, stands, layouts[0].grid.in_row)
    wanted = known("ordered", order.units, Unit.COUNT, source=Source.OF_ORDER)
    short = worked("units_short", Unit.COUNT, "larger(ordered − to_sell, 0)", wanted, sold, using={"larger": larger},
                   source=RULES)  # fmt: skip
    made = market_number(order, one.market, day_number("ready", ready))
    numbers = tuple(that_are_known(made, sold, short))
    return Part(first, tuple(more), market, sold.whole or 0, short.whole or 0, numbers)


def _placed(plan: Plan, one: Planting, layout: Layout) -> Placed:
    dates = dates_of(plan, one)
    return Placed(
        one.order or one.crop, one.id, one.bed, layout.plants, layout.start, layout.end, dates.in_ground, dates.out
    )
