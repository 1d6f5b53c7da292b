"""What the answers to all setbacks share: the case that is asked of, and what an answer's plan comes to.

Cells = ceil(plants / u) with u as it came about or as the packet says, 1 - (1 - g)^k for k seeds. Formulas: common
practice, no source.
"""

from collections.abc import Collection, Iterable, Iterator
from datetime import date, timedelta
from fractions import Fraction
from typing import Any

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.filling.begins import begun_by
from gardenplot.filling.claims import of_size, placed_whole, settled, whole_at, with_planting
from gardenplot.filling.covers_moved import with_covers
from gardenplot.filling.crowded import crowded
from gardenplot.filling.moved import moved
from gardenplot.filling.setback_numbers import (
    days_number,
    share_number,
    sowing_as_before,
    sowing_numbers,
    that_are_known,
)
from gardenplot.filling.setbacks import Answer, AnswerKind, Setback, Sowing, Why
from gardenplot.filling.task import comes_back
from gardenplot.layout import Layout, free_on, has_room, lay_out_bed, lay_out_plan, stood
from gardenplot.layout.bed import compete, grown_of, planted_for_orders, row_of
from gardenplot.plan import (
    Actual,
    Bed,
    Crop,
    Establish,
    Plan,
    Planting,
    bed_of,
    fresh_id,
    order_of,
    planting_of,
)
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season import Dates, dates_of, market_made, markets_missed
from gardenplot.season.date_numbers import date_numbers
from gardenplot.season.dates import oldest_age
from gardenplot.season.orders import market_number, units_from
from gardenplot.supplies.raising import raised_for, seeds_number, usable_share
from gardenplot.working import Number, Source, Unit, known


@frozen
class Ask:
    """The plan that is asked of, on which day, with which loss between tray and bed, and of which plantings."""

    plan: Plan
    today: date
    loss: Fraction
    only: Collection[str]

    def case(self, there: Plan, planting: Planting, layout: Layout, settable: int, lacks: int = 0) -> "Case":
        """A case of it, in the plan with every place written down, on the first day on which it can go in."""
        begun = begun_by(there, planting, self.today)
        plan = there if begun == planting_of(there, planting.id) else with_planting(there, begun)
        return Case(self.plan, plan, begun, layout, settable, lacks, self.today, self.loss)


@frozen
class Case:
    """A planting that deviates: the plan before, and with every place and what cannot be helped written down.

    `settable` of its plants there are, `lacks` are short of what was meant. `loss` is the share of seedlings that are
    lost between tray and bed.
    """

    before: Plan
    plan: Plan
    planting: Planting
    layout: Layout
    settable: int
    lacks: int
    today: date
    loss: Fraction

    @property
    def crop(self) -> Crop:
        """Its crop."""
        return crop_as_planted(self.plan, self.planting)

    @property
    def bed(self) -> Bed:
        """Its bed."""
        return bed_of(self.plan, self.planting.bed)

    @property
    def fresh(self) -> str:
        """An id like its own that no planting has."""
        return fresh_id(self.planting.id, {one.id for one in self.plan.plantings})

    @property
    def is_raised(self) -> bool:
        """Whether it is raised in trays."""
        return self.crop.establish is Establish.TRANSPLANT


def setback(case: Case, why: Why, answers: Iterator[Answer], numbers: Iterable[Number] = (), **more: Any) -> Setback:
    """What came about of a planting as its case has it, with the answers, the smallest change first."""
    now = dates_of(case.plan, case.planting)
    age = (now.in_ground - now.sow).days if now.in_ground and now.sow and case.is_raised else None
    oldest, market = oldest_age(case.crop), market_for(case, now.ready)
    told: dict[str, Any] = {"planned": case.layout.plants, "stand": None, "sown": None, "late": 0} | more
    return Setback(
        planting=case.planting.id, settable=case.settable, lacks=case.lacks, set_out=now.in_ground, age=age,
        is_over_age=age is not None and oldest is not None and age > oldest, ready=now.ready, market=market,
        missed=missed_before(case, market), answers=tuple(sorted(answers, key=_rank)), why=why,
        numbers=(*numbers, *_days_numbers(case)), **told,
    )  # fmt: skip


def _days_numbers(case: Case) -> Iterator[Number]:
    """The days of a planting as its case has them: its age in the ground, all of them, its market."""
    one = grown_of(case.plan, case.planting)
    days = date_numbers(one.planting, one.crop, one.order, one.site)
    if case.is_raised and "sow" in days and "set_out" in days:
        yield days_number("age", days["set_out"], days["sow"])
    yield from (number for number in days.values() if number.value is not None)
    market = market_number(one.order, one.planting.market, days.get("ready"))
    if market is not None:
        yield market


def _rank(answer: Answer) -> tuple[int, int, int, int]:
    """What takes no other's ground first, then the fewest marks that move, of which stakes are a part, then the
    fewest units short."""
    return len(answer.crowds), len(answer.moved), answer.short, list(AnswerKind).index(answer.kind)


def told(case: Case, kind: AnswerKind, plan: Plan, **more: Any) -> Iterator[Answer]:
    """An answer with all that it comes to; none where it is no valid plan, or has no row."""
    try:
        plan = settled(case.before, with_covers(case.before, plan))
    except PlanError:
        return
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts}
    mine = case.planting.id if case.planting.id in layouts else more.get("new")
    layout = layouts[mine] if mine else evolve(case.layout, end=case.layout.start, plants=0, offsets=(), fills=())
    if not has_room(layout.grid):
        return
    last = more.get("new") or mine
    dates = dates_of(plan, planting_of(plan, last)) if last else Dates()
    day = max((one.in_ground for one in more.get("filled", ()) if one.in_ground), default=dates.in_ground)
    plants, units, short = _met(case, plan, layout)
    market, asis = market_for(case, dates.ready), market_for(case, dates_of(case.plan, case.planting).ready)
    missed = missed_before(case, market)
    free = free_on(lay_out_bed(plan, bed_of(plan, layout.bed)), day).total
    yield Answer(
        kind, plan, layout, plants, units, short, free, dates.in_ground, dates.ready, market, missed,
        sum(asis is not None and day >= asis for day in missed), moved(case.before, plan), as_is=asis,
        planned=_planned(case), crowds=crowded(case.before, plan), **more,
    )  # fmt: skip


def _planned(case: Case) -> date | None:
    """The day on which it was to go in."""
    return dates_of(case.before, planting_of(case.before, case.planting.id)).in_ground


def _met(case: Case, plan: Plan, layout: Layout) -> tuple[int, int, int]:
    """Plants that stand, units from them and units short."""
    if case.planting.order is None:
        known = {one.id for one in case.before.plantings} - {case.planting.id}
        plants = sum(
            stood(one, each)
            for laid in lay_out_plan(plan)
            for one, each in zip(laid.grown, laid.layouts, strict=True)
            if one.planting.crop == case.planting.crop
            and (one.planting.id not in known or one.planting.gaps_of == case.planting.id)
        )
        return plants, plants, max(0, case.layout.plants - plants)
    order = order_of(plan, case.planting.order)
    plants = planted_for_orders(lay_out_plan(plan)).get((order.id, case.planting.market or 1), 0)
    units = units_from(order, case.crop, plants, layout.grid.in_row)
    return plants, units, max(0, order.units - units)


def market_for(case: Case, ready: date | None) -> date | None:
    """The first market day that what is ready on a day makes: the order's own, or so many rounds later."""
    if case.planting.order is None or ready is None:
        return None
    return market_made(order_of(case.plan, case.planting.order), case.planting.market, ready)


def missed_before(case: Case, market: date | None) -> tuple[date, ...]:
    """The market days from the planned one on that come before another one."""
    if case.planting.order is None:
        return ()
    return markets_missed(order_of(case.plan, case.planting.order), case.planting.market, market)


def stands_free(plan: Plan, planting: Planting) -> bool:
    """Whether a planting has its block to itself on all of its days, inside the bed's margins."""
    bed, one = bed_of(plan, planting.bed), grown_of(plan, planting)
    laid = lay_out_bed(with_planting(plan, planting), bed)
    mine = laid.layout_of(planting.id)
    beside = zip(laid.grown, laid.layouts, strict=True)
    return bed.zone[0] <= mine.start and mine.end <= bed.zone[1] and not any(
        layout.start < mine.end and mine.start < layout.end and compete(one, other)
        for other, layout in beside
        if layout.planting != planting.id
    )  # fmt: skip


def anew(case: Case, day: date, sow: date | None, came: Actual | None = None) -> Planting:
    """So many plants as are lacking once more, without a place, in the ground on a day."""
    return evolve(
        of_size(case.planting, case.lacks), id=case.fresh, start=None, actual=came, series=None, sow=sow,
        in_ground=day, ready=None, out=None, sow_cells=None,
    )  # fmt: skip


def bought(case: Case, day: date) -> Planting:
    """So many plants as are lacking, bought in: these are up, so that nobody asks when they were sown."""
    return anew(case, day, None, Actual(emerged=case.today, bought=case.lacks))


def earliest(case: Case) -> date | None:
    """The day on which what is sown today goes in, once its bed can be used; None where no raising days are known."""
    days = case.crop.raising_days if case.is_raised else 0
    return None if days is None else max(case.today + timedelta(days=days), case.bed.usable_from or date.min)


def for_its_market(case: Case) -> date | None:
    """The day in the ground that the market day asks for."""
    bare = evolve(case.planting, actual=None, sow=None, in_ground=None, ready=None, out=None)
    return dates_of(case.plan, bare).in_ground


def sown_today(case: Case, layout: Layout, came_up: Number | None = None) -> Sowing | None:
    """What to sow today for the plants of a layout: cells by the share of them that `came_up`, else by the packet.

    The same seed comes up as it did where it is recorded how many cells were sown and how many have a plant. Seed in
    its bed has the rate of the packet. None where cells are needed and nobody knows what comes up.
    """
    if not case.is_raised:
        made, row = raised_for(grown_of(case.plan, case.planting), layout), row_of(layout)
        long = known("row", row, Unit.LENGTH, source=Source.MEASURED)
        return Sowing(layout.plants, 0, 0, row, made.seeds, tuple(that_are_known(long, made.seed)))
    came, each = case.planting.actual, seeds_number(case.crop)
    if came_up is None and came is not None:
        came_up = share_number(came.stand, came.cells, None)
    if each.value != 1:
        return _as_before(case, came_up or usable_share(case.crop), each)
    germination = case.crop.germination
    share = came_up or share_number(None, None, germination.part if germination is not None else None)
    if share is None:
        return None
    numbers = sowing_numbers(case.lacks, case.loss, share)
    plants, cells, of_two, _seeds = (number.whole or 0 for number in numbers)
    return Sowing(plants, cells, of_two, numbers=numbers)


def _as_before(case: Case, share: Number, each: Number) -> Sowing | None:
    """Cells with as many seeds in each as the crop is sown with, since that is what came up."""
    if not share.value:
        return None
    numbers = sowing_as_before(case.lacks, case.loss, share, each)
    plants, cells, seeds = (number.whole or 0 for number in numbers)
    return Sowing(plants, cells, 0, seeds=seeds, numbers=numbers)


def in_some_bed(case: Case, plan: Plan, one: Planting) -> Planting | None:
    """A new planting whole in its bed or, where that has no room, in the first other one that has; None if none."""
    for bed in (case.bed, *(bed for bed in plan.beds if bed.id != case.bed.id)):
        day = max(one.in_ground or date.min, bed.usable_from or date.min)
        there = evolve(one, bed=bed.id, in_ground=day)
        dates = grown_of(plan, there).dates
        if bed.id == case.bed.id or not comes_back(plan.place, lay_out_bed(plan, bed), case.crop, one.id, dates):
            placed = placed_whole(plan, there)
            if placed is not None:
                return placed
    return None


def alone(plan: Plan, one: Planting) -> Layout:
    """The layout of a planting at its place as if nothing else were in its bed."""
    return whole_at(plan, one, one.start.nm if one.start else bed_of(plan, one.bed).zone[0])
