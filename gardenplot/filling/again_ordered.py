"""Planning again where an order and what was sown or planted for it no longer go together.

A plan keeps no older version, so what the order asks for now is set against what was planted: more units or fewer, an
order withdrawn, a market day for which it is ready too late or over too soon. What stands stays. Formulas: common
practice, no source.
"""

from collections.abc import Iterator
from datetime import timedelta

from attrs import evolve, frozen

from gardenplot.filling.again_ground import soonest
from gardenplot.filling.again_raised import is_missed
from gardenplot.filling.begins import begun_by, in_ground_on
from gardenplot.filling.claims import of_size, pinned, placed_whole, with_planting, without_planting
from gardenplot.filling.freed import filled_instead
from gardenplot.filling.longer import longer_block
from gardenplot.filling.rescue import (
    Ask,
    Case,
    alone,
    anew,
    bought,
    earliest,
    for_its_market,
    in_some_bed,
    setback,
    sown_today,
    stands_free,
    told,
)
from gardenplot.filling.setback_numbers import counted_number, day_number, days_number
from gardenplot.filling.setbacks import Answer, AnswerKind, Setback, Why
from gardenplot.filling.ways_out import Lack, shortage
from gardenplot.layout import Grown, Layout, lay_out_plan, spacings_for_orders
from gardenplot.layout.place_numbers import against
from gardenplot.plan import Order, Plan, Planting, bed_of, order_of, planting_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of, stand_for, stand_number
from gardenplot.season.dates import wanted_ready
from gardenplot.working import RULES, Number, Source, Unit, added

_Planted = tuple[Grown, Layout]


@frozen
class _Asked:
    """An order on one of its market days, the plantings for it, the plants that they hold and that it asks for."""

    order: Order
    market: int
    mine: tuple[_Planted, ...]
    planned: int
    needed: int

    @property
    def loose(self) -> list[Planting]:
        """Those that are not in the ground, the last of the plan first."""
        return [one.planting for one, _layout in reversed(self.mine) if not is_in_ground(one.planting)]


def ordered_setbacks(ask: Ask) -> Iterator[Setback]:
    """What no longer goes together with each order that something was sown or planted for, in the plan's order."""
    there = pinned(ask.plan)
    for asked in _asked(ask.plan):
        lead, layout = next((one for one in asked.mine if _is_begun(one[0].planting)), asked.mine[0])
        if layout.planting not in ask.only:
            continue
        case = ask.case(there, planting_of(there, lead.planting.id), layout, asked.planned)
        more = {"planned": asked.planned, "order": asked.order.id, "wanted": asked.order.units}
        beyond = asked.planned - asked.needed
        numbers = tuple(_against(ask.plan, asked))
        if not asked.order.units:
            yield from _withdrawn(case, asked, more)
        elif beyond < 0:
            short = evolve(case, lacks=-beyond)
            yield setback(short, Why.MORE, _more(short, asked), numbers, **more)
        elif beyond >= _rank_of(layout):
            yield setback(case, Why.FEWER, _fewer(case, asked, beyond), numbers, **more)
    yield from _off_days(ask, there)


def _against(plan: Plan, asked: _Asked) -> Iterator[Number]:
    """What must stand for an order, as it asks now, against what is planted or planned for it."""
    each = spacings_for_orders(lay_out_plan(plan)).get((asked.order.id, asked.market))
    stand = stand_number(asked.order, asked.mine[0][0].crop, each)
    parts = [
        evolve(counted_number("planted", _meant(*one)), label=f"{one[0].crop.name}, {bed_of(plan, one[1].bed).name}")
        for one in asked.mine
    ]
    yield from against(stand, added("planted_for", Unit.COUNT, parts, RULES))


def _asked(plan: Plan) -> Iterator[_Asked]:
    """All orders and market days that something was sown or planted for; what stands in gaps is no more of it."""
    laid_out, found = lay_out_plan(plan), dict[tuple[str, int], list[_Planted]]()
    row = spacings_for_orders(laid_out)
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.order is not None and one.planting.gaps_of is None:
                found.setdefault((one.order.id, one.planting.market or 1), []).append((one, layout))
    for (order_id, market), mine in found.items():
        order = order_of(plan, order_id)
        if any(_is_begun(one.planting) and not _is_cleared(one.planting) for one, _layout in mine):
            needed = stand_for(order, mine[0][0].crop, row.get((order_id, market)))
            yield _Asked(order, market, tuple(mine), sum(_meant(*each) for each in mine), needed)


def _is_begun(one: Planting) -> bool:
    return one.actual is not None and (one.actual.sown or one.actual.set_out) is not None


def _is_cleared(one: Planting) -> bool:
    return one.actual is not None and one.actual.cleared is not None


def _meant(one: Grown, layout: Layout) -> int:
    """The plants that were set out, or are to be."""
    planted = one.planting.actual.planted if one.planting.actual else None
    return layout.plants if planted is None else min(planted, layout.plants)


def _rank_of(layout: Layout) -> int:
    return max(1, layout.grid.rows * layout.grid.per_cell)


# more


def _more(case: Case, asked: _Asked) -> Iterator[Answer]:
    """A longer block, a second one, plants bought in, or fewer to sell."""
    yield from told(case, AnswerKind.LESS, case.plan)
    for one in asked.loose:
        yield from _enlarged(case, one)
    there = list(_second_block(case))
    yield from there
    if case.is_raised:
        yield from _bought(case)
    if not there:
        yield from _ways_out(case, asked)


def _enlarged(case: Case, one: Planting) -> Iterator[Answer]:
    """One that is not in the ground yet, larger at its place or, where that is too short, elsewhere."""
    now = next(each.plants for laid in lay_out_plan(case.plan) for each in laid.layouts if each.planting == one.id)
    able = begun_by(case.plan, planting_of(case.plan, one.id), case.today)
    longer = longer_block(with_planting(case.plan, able), able)
    there = longer[0] if longer is not None else placed_whole(case.plan, of_size(able, now + case.lacks))
    if there is not None:
        yield from told(case, AnswerKind.ENLARGE, with_planting(case.plan, there))


def _second_block(case: Case) -> Iterator[Answer]:
    """What is lacking, sown today or when its market asks for it, whichever is later."""
    first = earliest(case)
    if first is None:
        return
    planned = for_its_market(case)
    day = max(first, planned or first)
    sow = day - timedelta(days=case.crop.raising_days or 0) if case.is_raised else None
    there = in_some_bed(case, case.plan, anew(case, day, sow))
    if there is None:
        return
    sowing = sown_today(case, alone(with_planting(case.plan, there), there))
    if sowing is not None and sowing.cells:
        there = evolve(there, sow_cells=sowing.cells)
    plan = with_planting(case.plan, there)
    yield from told(case, AnswerKind.SECOND_BLOCK, plan, sowing=sowing, new=there.id)


def _bought(case: Case) -> Iterator[Answer]:
    """What is lacking, bought in and set out as soon as its market asks for it."""
    day = max(case.today, for_its_market(case) or case.today)
    there = in_some_bed(case, case.plan, bought(case, day))
    if there is not None:
        plan = with_planting(case.plan, there)
        yield from told(case, AnswerKind.BUY_IN, plan, buy=case.lacks, new=there.id)


def _ways_out(case: Case, asked: _Asked) -> Iterator[Answer]:
    """Where no bed has room: how those that are not in the ground could make some."""
    found, first = shortage(case.plan, Lack(asked.order.id, asked.market, case.lacks)), earliest(case)
    known = {one.id for one in case.plan.plantings}
    for way in found.ways if found is not None and first is not None else ():
        new = next((one for one in way.plan.plantings if one.id not in known), None)
        plan, day = way.plan, dates_of(way.plan, new).in_ground if new is not None else None
        if new is not None and day is not None and first is not None and day < first:
            late = in_ground_on(new, first, (first - day).days)
            plan = with_planting(plan, late) if stands_free(plan, late) else case.plan
        if plan != case.plan:
            yield from told(case, AnswerKind.WAY_OUT, plan, way=way, new=new.id if new is not None else None)


# fewer, or none


def _fewer(case: Case, asked: _Asked, beyond: int) -> Iterator[Answer]:
    """Kept as spare, or so much less of what is not in the ground yet."""
    yield from told(case, AnswerKind.SPARE, case.plan)
    layouts = {layout.planting: layout for _one, layout in asked.mine}
    for one in asked.loose:
        left = layouts[one.id].plants - beyond
        if left > 0:
            able = begun_by(case.plan, planting_of(case.plan, one.id), case.today)
            plan = with_planting(case.plan, of_size(able, left))
            yield from told(case, AnswerKind.SHORTER, plan)
        else:
            yield from told(case, AnswerKind.REMOVE, without_planting(case.plan, one.id))


def _withdrawn(case: Case, asked: _Asked, more: dict[str, object]) -> Iterator[Setback]:
    """All that was for an order that nobody wants any more."""
    came = case.planting.actual
    stand = came.stand if came is not None and not is_in_ground(case.planting) else None
    seen = evolve(case, settable=asked.planned or stand or 0)
    if seen.settable:
        yield setback(seen, Why.WITHDRAWN, _spared(seen), (), stand=stand, **more)


def _spared(case: Case) -> Iterator[Answer]:
    """Kept as spare, not planted at all, or cleared for something else."""
    one = case.planting
    if is_in_ground(one):
        yield from told(case, AnswerKind.SPARE, case.plan)
        yield from filled_instead(case)
        return
    there = placed_whole(case.plan, of_size(one, case.settable))
    if there is not None:
        yield from told(case, AnswerKind.SPARE, with_planting(case.plan, there))
    yield from told(case, AnswerKind.REMOVE, without_planting(case.plan, one.id))


# another market day


def _off_days(ask: Ask, there: Plan) -> Iterator[Setback]:
    """What is ready too late for its market, or over before it, where that is not for its bed that is late."""
    for laid in lay_out_plan(ask.plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            planting, dates = one.planting, one.dates
            came, first = planting.actual, laid.bed.usable_from
            if (
                planting.id not in ask.only
                or not _is_begun(planting)
                or planting.gaps_of is not None
                or (came is not None and came.harvested)
            ):
                continue
            case = ask.case(there, planting_of(there, planting.id), layout, layout.plants)
            waits = first and dates.in_ground and first > dates.in_ground and not is_in_ground(planting)
            waits = waits or is_missed(case, dates)
            wanted = wanted_ready(evolve(planting, ready=None), one.order)
            if waits or wanted is None or dates.ready is None or dates.last is None or one.order is None:
                continue
            days = (dates.ready - wanted).days
            if days > 0 or dates.last < wanted:
                off = days if days > 0 else (dates.last - wanted).days
                last = day_number("ready", dates.ready) if days > 0 else day_number("last", dates.last)
                yield setback(
                    case, Why.OFF_DAY, _on_another_day(case, off),
                    (days_number("off_by", last, day_number("wanted", wanted, Source.OF_ORDER)),), days=off,
                    order=one.order.id, wanted=one.order.units,
                )  # fmt: skip


def _on_another_day(case: Case, off: int) -> Iterator[Answer]:
    """Sooner or later in the ground where it is not there yet; else the next market, or once more for this one."""
    one = case.planting
    day = dates_of(case.plan, one).in_ground
    if off > 0:
        yield from told(case, AnswerKind.LATER, case.plan)
    else:
        yield from told(case, AnswerKind.SPARE, case.plan)
        again = evolve(case, lacks=case.layout.plants)
        yield from _second_block(again)
    if day is None or is_in_ground(one):
        return
    planned = for_its_market(case)
    soon = soonest(case.plan, one, case.today)
    goal = None if planned is None or soon is None else max(planned, soon)
    if goal is None or goal == day:
        return
    moved = in_ground_on(one, goal, (goal - day).days)
    if stands_free(case.plan, moved):
        kind = AnswerKind.SOONER if goal < day else AnswerKind.LATER
        yield from told(case, kind, with_planting(case.plan, moved))
