"""Planning again: what came about is set against what was planned, and the answers stand side by side.

All that deviates is taken together: a planting whose bed is late goes in on the bed's first day in every answer,
so an answer whose own wait is no longer costs no market any more. What is in the ground is not changed. Plants to
set out = floor(seedlings x (1 - loss)); plants to sow again = ceil(short / (1 - loss)); cells = ceil(plants / u)
with u as it came about, 1 - (1 - g)^k for k seeds. Formulas: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.filling.claims import of_size, pinned, placed_whole, settled, with_planting
from gardenplot.filling.moved import Moved, moved
from gardenplot.filling.task import comes_back
from gardenplot.layout import Layout, free_on, ground_for, has_room, lay_out_bed, lay_out_plan
from gardenplot.layout.bed import grown_of, planted_for_orders
from gardenplot.layout.markable import markable_beside
from gardenplot.plan import Bed, Crop, Establish, Plan, Planting, bed_of, crop_of, fresh_id, order_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of, market_day
from gardenplot.season.dates import oldest_age
from gardenplot.season.orders import units_from
from gardenplot.supplies.raising import raised_for
from gardenplot.units import CM, INCH, Length, Units, length_of


class AnswerKind(StrEnum):
    """What can be done about it."""

    BUY_IN = "buy in"
    SHORT = "plant short"
    SPREAD = "spread out"
    OTHER_BED = "another bed"
    LATER = "later market"
    SOW_AGAIN = "sow again"


@frozen
class Sowing:
    """Cells and seeds to sow again, with one seed in each and with two thinned to one, at what germinates."""

    plants: int
    cells: int
    cells_of_two: int

    @property
    def seeds_of_two(self) -> int:
        """Seeds where there are two in each cell."""
        return 2 * self.cells_of_two


@frozen
class Spread:
    """A spacing that takes up all of the room, in nm, and the widest below it that can be marked."""

    exact: int
    marked: int

    @property
    def is_markable(self) -> bool:
        """Whether it can be marked as it is."""
        return self.exact == self.marked


@frozen
class Answer:
    """One answer, in the plan that it makes.

    `plants` and `units` stand for the market day in all, `short` units are lacking; `length` is the planting's block
    and `free` what its bed has left then, in nm. `set_out`, `ready` and `market` are of what comes last; `missed` are
    market days before that one, and `costs` how many of them it misses that the planting as it is would make.
    """

    kind: AnswerKind
    plan: Plan
    layout: Layout
    plants: int
    units: int
    short: int
    free: int
    set_out: date | None
    ready: date | None
    market: date | None
    missed: tuple[date, ...]
    costs: int
    moved: tuple[Moved, ...]
    buy: int = 0
    sowing: Sowing | None = None
    spread: Spread | None = None

    @property
    def length(self) -> int:
        """Length of the block in nm."""
        return self.layout.length


@frozen
class Setback:
    """What came about of a planting that was not planned so, and what that comes to if nothing is done.

    Of `sown` cells `stand` have a usable plant, None where nobody counted; `settable` of them can be set out, `lacks`
    are short of `planned`. `late` is by how many days its bed is; the plants are `age` days old when they go in then.
    """

    planting: str
    planned: int
    stand: int | None
    sown: int | None
    settable: int
    lacks: int
    late: int
    set_out: date | None
    age: int | None
    is_over_age: bool
    ready: date | None
    market: date | None
    missed: tuple[date, ...]
    answers: tuple[Answer, ...]

    @property
    def came_up(self) -> Fraction | None:
        """The share of cells with a usable plant."""
        return Fraction(self.stand, self.sown) if self.stand is not None and self.sown else None


@frozen
class _Case:
    """A planting that deviates: the plan with every place written down, the same with its bed's first day kept."""

    before: Plan
    plan: Plan
    planting: Planting
    crop: Crop
    bed: Bed
    layout: Layout
    settable: int
    today: date
    loss: Fraction

    @property
    def lacks(self) -> int:
        return max(0, self.layout.plants - self.settable)


def plan_again(plan: Plan, today: date, loss: Fraction = Fraction(0)) -> tuple[Setback, ...]:
    """What deviates of each planting that is raised and not yet in the ground, in the plan's order, with answers.

    `loss` is the share of seedlings that are lost between tray and bed.
    """
    found = (_setback(plan, one, today, loss) for one in plan.plantings if _can_be_asked(plan, one))
    return tuple(one for one in found if one.late or one.lacks)


def _can_be_asked(plan: Plan, one: Planting) -> bool:
    is_raised = crop_of(plan, one.crop).establish is Establish.TRANSPLANT
    return is_raised and one.hardens is None and not is_in_ground(one)


def _setback(plan: Plan, one: Planting, today: date, loss: Fraction) -> Setback:
    there, crop, bed = pinned(plan), crop_of(plan, one.crop), bed_of(plan, one.bed)
    layout = lay_out_bed(plan, bed).layout_of(one.id)
    stand = one.actual.stand if one.actual else None
    settable = layout.plants if stand is None else floor(stand * (1 - loss))
    dates, first = dates_of(plan, one), bed.usable_from
    late = (first - dates.in_ground).days if first and dates.in_ground and first > dates.in_ground else 0
    planting = next(each for each in there.plantings if each.id == one.id)
    if late and first:
        planting = _in_ground_on(planting, first, late)
    then = with_planting(there, planting)
    case = _Case(plan, then, planting, crop, bed, layout, settable, today, loss)
    now = dates_of(then, planting)
    age = (now.in_ground - now.sow).days if now.in_ground and now.sow else None
    oldest, market = oldest_age(crop), _market(case, now.ready)
    sown = _cells(crop, layout) if stand is not None else None
    return Setback(
        one.id, layout.plants, stand, sown, settable, case.lacks, late, now.in_ground, age,
        is_over_age=age is not None and oldest is not None and age > oldest,
        ready=now.ready, market=market, missed=_missed(case, market),
        answers=tuple(sorted(_answers(case, sown, late), key=_rank)),
    )  # fmt: skip


def _in_ground_on(one: Planting, day: date, late: int) -> Planting:
    out = one.out + timedelta(days=late) if one.out else None
    return evolve(one, in_ground=day, ready=None, out=out)


def _cells(crop: Crop, layout: Layout) -> int | None:
    """The cells that were sown: whole trays are filled."""
    raised = raised_for(crop, layout)
    return raised.trays * crop.tray_cells if raised.trays and crop.tray_cells else raised.cells


def _rank(answer: Answer) -> tuple[int, int, int]:
    """The fewest stakes first, then the fewest units short."""
    return len(answer.moved), answer.short, list(AnswerKind).index(answer.kind)


def _answers(case: _Case, sown: int | None, late: int) -> Iterator[Answer]:
    if case.lacks:
        yield from _told(case, AnswerKind.BUY_IN, case.plan, buy=case.lacks)
        if case.settable:
            yield from _told(case, AnswerKind.SHORT, with_planting(case.plan, _fewer(case)))
            yield from _spread(case)
        yield from _sow_again(case, sown)
    elif late:
        yield from _told(case, AnswerKind.LATER, case.plan)
    if late and case.settable:
        yield from _other_bed(case)


def _fewer(case: _Case) -> Planting:
    return of_size(case.planting, case.settable) if case.lacks else case.planting


def _spread(case: _Case) -> Iterator[Answer]:
    """As many ranks as the plants need, over all the room that the planting has at its place."""
    few = with_planting(case.plan, _fewer(case))
    layout = lay_out_bed(few, case.bed).layout_of(case.planting.id)
    room = ground_for(few, case.planting, case.bed.id).end_of_room(layout.start) - layout.start
    ranks = -(-layout.length // layout.grid.rank) if layout.grid.rank else 0
    if layout.grid.runs_across or not ranks or layout.grid.cell:
        return
    exact = room // ranks
    marked = _marked(case, exact)
    if marked is None or marked <= layout.grid.in_row:
        return
    wider = evolve(_fewer(case), in_row=length_of(marked, case.plan.place.units))
    yield from _told(case, AnswerKind.SPREAD, with_planting(case.plan, wider), spread=Spread(exact, marked))


def _marked(case: _Case, exact: int) -> int | None:
    """The widest spacing up to one that can be marked: by the place's tools, else whole cm or quarters of an inch."""
    markable: tuple[Length, ...] = case.plan.place.markable_in_row
    if markable:
        beside = (one.nm for one in (*markable_beside(exact, markable), *markable) if one.nm <= exact)
        return max(beside, default=None)
    finest = CM if case.plan.place.units is Units.METRIC else INCH // 4
    return exact // finest * finest or None


def _sow_again(case: _Case, sown: int | None) -> Iterator[Answer]:
    """Sown today for the places that are left, set out when they have their days and the bed can be used."""
    crop, stand = case.crop, case.planting.actual.stand if case.planting.actual else None
    if crop.raising_days is None or not sown or not stand:
        return
    plants = ceil(case.lacks / (1 - case.loss))
    came_up = min(Fraction(1), Fraction(stand, sown))
    sowing = Sowing(plants, ceil(plants / came_up), ceil(plants / (1 - (1 - came_up) ** 2)))
    day = max(case.today + timedelta(days=crop.raising_days), case.bed.usable_from or date.min)
    few = with_planting(case.plan, _fewer(case)) if case.settable else case.plan
    late = evolve(
        of_size(case.planting, case.lacks), id=_fresh(case), start=None, actual=None, series=None,
        sow=case.today, in_ground=day, ready=None, out=None,
    )  # fmt: skip
    there = placed_whole(few, late, () if case.settable else (case.planting.id,))
    if there is None:
        return
    if not case.settable:
        few = evolve(few, plantings=tuple(one for one in few.plantings if one.id != case.planting.id))
    yield from _told(case, AnswerKind.SOW_AGAIN, with_planting(few, there), sowing=sowing)


def _fresh(case: _Case) -> str:
    return fresh_id(case.planting.id, {one.id for one in case.plan.plantings})


def _other_bed(case: _Case) -> Iterator[Answer]:
    """On the day that was planned, in each bed that can be used then and has the ground free."""
    planned = next(one for one in case.before.plantings if one.id == case.planting.id)
    one = of_size(planned, case.settable) if case.lacks else planned
    dates = grown_of(case.before, planned).dates
    plan = with_planting(case.plan, evolve(planned, start=case.planting.start))
    for bed in case.plan.beds:
        too_late = bed.usable_from and dates.in_ground and bed.usable_from > dates.in_ground
        laid = lay_out_bed(plan, bed)
        if bed.id == case.bed.id or too_late or comes_back(plan.place, laid, case.crop, one.id, dates):
            continue
        there = placed_whole(plan, evolve(one, bed=bed.id, start=None))
        if there is not None:
            yield from _told(case, AnswerKind.OTHER_BED, with_planting(plan, there))


def _told(
    case: _Case, kind: AnswerKind, plan: Plan, *, buy: int = 0, sowing: Sowing | None = None,
    spread: Spread | None = None,
) -> Iterator[Answer]:  # fmt: skip
    """An answer with all that it comes to; none where it is no valid plan."""
    try:
        plan = settled(case.before, plan)
    except PlanError:
        return
    mine = [one for one in plan.plantings if one.id == case.planting.id] or [plan.plantings[-1]]
    bed = bed_of(plan, mine[0].bed)
    laid = lay_out_bed(plan, bed)
    layout, last = laid.layout_of(mine[0].id), plan.plantings[-1] if sowing else mine[0]
    dates = dates_of(plan, last)
    if not has_room(layout.grid):
        return
    plants, units, short = _met(case, plan, layout)
    market, asis = _market(case, dates.ready), _market(case, dates_of(case.plan, case.planting).ready)
    missed = _missed(case, market)
    yield Answer(
        kind, plan, layout, plants, units, short, free_on(laid, dates.in_ground).total, dates.in_ground, dates.ready,
        market, missed, sum(asis is not None and day >= asis for day in missed), moved(case.before, plan),
        buy=buy, sowing=sowing, spread=spread,
    )  # fmt: skip


def _met(case: _Case, plan: Plan, layout: Layout) -> tuple[int, int, int]:
    """Plants that stand, units from them and units short."""
    if case.planting.order is None:
        return layout.plants, layout.plants, max(0, case.layout.plants - layout.plants)
    order = order_of(plan, case.planting.order)
    plants = planted_for_orders(lay_out_plan(plan)).get((order.id, case.planting.market or 1), 0)
    units = units_from(order, case.crop, plants, layout.grid.in_row)
    return plants, units, max(0, order.units - units)


def _market(case: _Case, ready: date | None) -> date | None:
    """The first market day that what is ready on a day makes: the order's own, or so many rounds later."""
    if case.planting.order is None or ready is None:
        return None
    order = order_of(case.plan, case.planting.order)
    wanted = market_day(order, case.planting.market)
    if wanted is None:
        return None
    late = (ready + timedelta(days=order.lead_days) - wanted).days
    return wanted + timedelta(days=max(0, ceil(Fraction(late, order.every_days))) * order.every_days)


def _missed(case: _Case, market: date | None) -> tuple[date, ...]:
    """The market days from the planned one on that come before another one."""
    if case.planting.order is None or market is None:
        return ()
    order = order_of(case.plan, case.planting.order)
    day, found = market_day(order, case.planting.market), []
    while day is not None and day < market:
        found.append(day)
        day += timedelta(days=order.every_days)
    return tuple(found)
