"""A planting that cannot go in on its day where it was planned: in another bed sooner, whole or as much as fits.

What does not fit waits for the bed that was planned. What is in trays is shared out by the plants that each part has
(`plan/parted_record.py`). Formulas: common practice, no source.
"""

from collections.abc import Iterator

from attrs import evolve

from gardenplot.filling.begins import begun_by
from gardenplot.filling.claims import of_size, placed_in_part, placed_whole, with_planting
from gardenplot.filling.placed import Placed
from gardenplot.filling.rescue import Case, market_for, stands_free, told
from gardenplot.filling.setback_numbers import counted_number, day_number, settable_number, that_are_known
from gardenplot.filling.setbacks import Answer, AnswerKind, Part
from gardenplot.filling.task import comes_back
from gardenplot.layout import lay_out_bed
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Actual, Plan, Planting, bed_of, order_of, planting_of
from gardenplot.plan.parted_record import shared
from gardenplot.season import Dates, dates_of
from gardenplot.season.orders import market_number, sold_number
from gardenplot.working import RULES, Source, Unit, known, larger, worked


def in_other_beds(case: Case, waiting: Planting, plants: int, one: Planting) -> Iterator[Answer]:
    """So many plants in each other bed in which `one`, as it was planned, goes in sooner than `waiting` for its own.

    Whole where there is ground for it, on its own day or for a sooner market, else as many as the ground holds of
    those that are for a sooner market.
    """
    waits = with_planting(case.plan, waiting)
    late, own = dates_of(waits, waiting), dates_of(waits, one).in_ground
    for bed in waits.beds:
        there = begun_by(waits, evolve(one, bed=bed.id, start=None), case.today)
        dates = grown_of(waits, there).dates
        is_gain, laid = _makes_more(case, dates, late), lay_out_bed(waits, bed)
        if bed.id == case.bed.id or comes_back(waits.place, laid, case.crop, one.id, dates):
            continue
        whole = placed_whole(waits, there) if is_gain or dates.in_ground == own else None
        if whole is not None:
            yield from told(case, AnswerKind.OTHER_BED, with_planting(waits, whole))
        elif is_gain:
            yield from _in_part(case, waiting, plants, there)


def _makes_more(case: Case, dates: Dates, late: Dates) -> bool:
    """Whether what goes in on its days is for a sooner market than what is late; without a market sooner there."""
    if dates.in_ground is None or (late.in_ground is not None and dates.in_ground >= late.in_ground):
        return False
    made, then = market_for(case, dates.ready), market_for(case, late.ready)
    return made is None or then is None or made < then


def _in_part(case: Case, waiting: Planting, plants: int, one: Planting) -> Iterator[Answer]:
    """As many as the other bed holds there, the rest where they were planned."""
    plan, fresh = with_planting(case.plan, waiting), evolve(one, id=case.fresh, series=None, letter=None)
    part = placed_in_part(plan, fresh)
    if part is None or part.plants is None or part.plants >= plants:
        return
    part = _whole_with_rest(case, waiting, plants, part)
    goes, stays = shared(waiting.actual, part.plants or 0, plants, case.loss)
    rest = evolve(of_size(waiting, plants - (part.plants or 0)), actual=stays, series=None)
    after = with_planting(with_planting(plan, rest), evolve(part, actual=goes))
    if stands_free(after, rest):
        yield from told(case, AnswerKind.OTHER_BED, after, part=_part_of(case, after, planting_of(after, part.id)))


def _whole_with_rest(case: Case, waiting: Planting, plants: int, part: Planting) -> Planting:
    """The part, less up to a rank where both then have all of their plants: seedlings are whole in each of them."""
    most = part.plants or 0
    rows = lay_out_bed(with_planting(case.plan, part), bed_of(case.plan, part.bed)).layout_of(part.id).grid.rows
    for few in range(most, max(most - rows, 0), -1):
        goes, stays = shared(waiting.actual, few, plants, case.loss)
        if all(_can_be(case, *each) for each in ((goes, few), (stays, plants - few))):
            return evolve(part, plants=few)
    return part


def _can_be(case: Case, came: Actual | None, plants: int) -> bool:
    """Whether so many can be set out of what came about, as far as that is counted."""
    can = settable_number(case.crop, came, case.loss) if came is not None else None
    return can is None or can.whole is None or can.whole >= plants


def _part_of(case: Case, plan: Plan, one: Planting) -> Part:
    """What a part is on its own."""
    layout, dates = lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.id), dates_of(plan, one)
    placed = Placed(
        one.order or one.crop, one.id, one.bed, layout.plants, layout.start, layout.end, dates.in_ground, dates.out
    )
    market = market_for(case, dates.ready)
    if one.order is None or market is None or dates.ready is None:
        return Part(placed)
    order, stands = order_of(plan, one.order), counted_number("planted_for", layout.plants)
    sold = sold_number(order, case.crop, stands, layout.grid.in_row)
    wanted = known("ordered", order.units, Unit.COUNT, source=Source.OF_ORDER)
    short = worked("units_short", Unit.COUNT, "larger(ordered − to_sell, 0)", wanted, sold, using={"larger": larger},
                   source=RULES)  # fmt: skip
    made = market_number(order, one.market, day_number("ready", dates.ready))
    return Part(placed, market, sold.whole or 0, short.whole or 0, tuple(that_are_known(made, sold, short)))
