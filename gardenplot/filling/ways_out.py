"""What an order lacks that the plan cannot hold, and the ways out: each with the plan that it would give.

Ranked by what fits at all, then by orders met wholly on their market day, then by the share of what is wanted, then
by what has no order and keeps its days, then by the fewest changes. The same plan gives the same ways in the same
order.
"""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.filling.claims import (
    Overflow,
    can_give_way,
    of_size,
    overflow,
    pinned,
    settled,
    whole_at,
    whole_plants,
)
from gardenplot.filling.giving_way import Asked, Offer, WayKind, offers
from gardenplot.filling.met import Met, met_in
from gardenplot.layout import LaidOut, Layout, compete, free_on, fullest_day, lay_out_bed, lay_out_plan
from gardenplot.layout.bed import grown_of, planted_for_orders
from gardenplot.layout.candidate import fits_its_ground
from gardenplot.plan import Order, Plan, Planting, bed_of, crop_of, fresh_id, order_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import market_days, stand_for
from gardenplot.season.orders import units_from

_MOST_CLAIMS = 8
"""Of more plantings beside the one that lacks ground, those that stand first in the plan may give way."""


@frozen
class Part:
    """A block of one of the plantings in question, in nm."""

    planting: str
    bed: str
    plants: int
    start: int
    end: int


@frozen
class Way:
    """One way out: who gives way and how, what is met then, and the plan.

    `rest` is the part of a split planting that stands elsewhere, `more` by how many nm a block is longer.
    `left` is what the bed has left over on its fullest day in nm and `over` by how much it still does not fit;
    `new_bed` is a bed that the plan does not have yet; `changes` counts the blocks and beds that are not as before.
    """

    kind: WayKind
    planting: str
    crop: str
    plan: Plan
    parts: tuple[Part, ...]
    met: tuple[Met, ...]
    left: int
    over: Overflow | None
    new_bed: str | None
    rest: str | None
    changes: int
    more: int = 0

    @property
    def short(self) -> int:
        """By how many nm it still does not fit."""
        return self.over.short if self.over is not None else 0

    @property
    def fits(self) -> bool:
        """Whether all of it has ground."""
        return not self.short


@frozen
class Lack:
    """An order that lacks so many plants on one of its market days, or has a block without ground, by its id.

    A block without ground that is for no order stands for itself.
    """

    order: str | None
    market: int
    plants: int
    block: str | None = None


@frozen
class Shortage:
    """What an order lacks on one of its market days, in its bed: plants, bed, units of the order; and ways out.

    Units of a planting without an order are its plants. `planting` would hold what lacks ground; it stands in the
    plans of the ways, though perhaps not yet in this one.
    """

    order: str | None
    market: int
    planting: str
    bed: str
    plants: int
    over: Overflow
    units: int
    ways: tuple[Way, ...]

    @property
    def length(self) -> int:
        """By how many nm of bed it does not fit."""
        return max(0, self.over.short)

    @property
    def has_ground(self) -> bool:
        """Whether its bed has the ground for all of it, though not where it stands, or with nothing standing yet."""
        return not (self.plants or self.length or self.units)


def shortages(plan: Plan) -> tuple[Shortage, ...]:
    """What each order lacks, in the plan's order: too few plants, or a block that leaves its bed or overlaps."""
    found = (shortage(plan, lack) for lack in lacks(plan))
    return tuple(one for one in found if one is not None)


def lacks(plan: Plan, first: date | None = None) -> tuple[Lack, ...]:
    """What orders lack, in the plan's order, then blocks for none; without ways out, which take longer to find.

    Market days before the `first` day that nothing is planted for are left out.
    """
    if not plan.beds:
        return ()
    without, planted = _homeless(plan), planted_for_orders(lay_out_plan(plan))
    homeless = {(one.order, one.market or 1): one.id for one in reversed(without)}
    found = []
    for order in plan.orders:
        stand = stand_for(order, crop_of(plan, order.crop))
        for market, day in enumerate(market_days(order), start=1):
            there, block = planted.get((order.id, market)), homeless.get((order.id, market))
            is_past = there is None and first is not None and day < first
            if not is_past and (block is not None or stand > (there or 0)):
                found.append(Lack(order.id, market, max(0, stand - (there or 0)), block))
    return (*found, *(Lack(None, 1, 0, one.id) for one in without if one.order is None))


def _homeless(plan: Plan) -> list[Planting]:
    """The plantings whose block leaves its bed, or overlaps one listed before it."""
    found = []
    for laid in lay_out_plan(plan):
        for number, one in enumerate(laid.grown):
            if can_give_way(one.planting) and _has_size(one.planting) and _has_no_ground(laid, number):
                found.append(one.planting)
    return found


def _has_size(one: Planting) -> bool:
    """Whether a planting wants so much and no more; one that fills its gap has what there is."""
    return one.plants is not None or one.length is not None or one.order is not None


def _has_no_ground(laid: LaidOut, number: int) -> bool:
    one, layout, (first, last) = laid.grown[number], laid.layouts[number], laid.bed.zone
    if layout.start < first or layout.end > last:
        return True
    return any(
        beside.start < layout.end
        and layout.start < beside.end
        and (at < number or (at > number and not can_give_way(other.planting)))
        and compete(one, other)
        for at, (other, beside) in enumerate(zip(laid.grown, laid.layouts, strict=True))
    )


def shortage(plan: Plan, lack: Lack) -> Shortage | None:
    """By how much what an order lacks does not fit, and the ways out; None where no bed has a row of the crop."""
    there = pinned(plan)
    block = planting_of(there, lack.block) if lack.block is not None else None
    order = order_of(plan, lack.order) if lack.order is not None else None
    wanted = block if order is None else _whole(there, order, lack.market, lack.plants, block)
    if wanted is None:
        return None
    homes = [wanted] if wanted.bed else [evolve(wanted, bed=bed.id) for bed in there.beds]
    homes = [one for one in homes if whole_plants(there, one)]
    if not homes:
        return None
    home = min(homes, key=lambda one: overflow(there, one)[:2])
    asked = Asked(plan, there, home, _claims(there, home))
    made = [way for offer in offers(asked) for way in [_way(asked, offer)] if way is not None]
    ways = tuple(sorted(_nearest(_told_apart(made)), key=_rank))
    return _short(asked, order, lack.market, ways)


def _whole(plan: Plan, order: Order, market: int, lack: int, block: Planting | None) -> Planting:
    """The planting that would meet all: one that stands and can grow, else a new one without a bed."""
    mine = [one for one in plan.plantings if one.order == order.id and (one.market or 1) == market]
    loose = [one for one in mine if can_give_way(one) and not is_in_ground(one)]
    one = block or max(loose, key=lambda each: whole_plants(plan, each), default=None)
    if one is None:
        new = Planting(fresh_id(order.id, {each.id for each in plan.plantings}), "", order.crop, order=order.id)
        new = evolve(new, market=market if order.times > 1 else None)
        return new if not mine else evolve(new, plants=lack)
    if not lack:
        return _as_needed(plan, one)
    if mine == [one]:
        sized = evolve(one, plants=None, length=None)
        # A block that was typed longer than its order needs lacks plants where places are kept, and no length.
        return sized if whole_plants(plan, sized) >= whole_plants(plan, one) else one
    return evolve(one, plants=_plants_of(plan, one) + lack, length=None, slack=None, round_up_to=None)


def _as_needed(plan: Plan, one: Planting) -> Planting:
    """A planting with no more plants than its order needs beside what others have for the same market day."""
    mine = [each for each in plan.plantings if one.order is not None and _is_for_the_same(each, one)]
    if one.order is None or len(mine) < 2:
        return one
    planted = planted_for_orders(lay_out_plan(plan)).get((one.order, one.market or 1), 0)
    in_row = lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.id).grid.in_row
    stand = stand_for(order_of(plan, one.order), crop_as_planted(plan, one), in_row)
    needs = stand - (planted - _plants_of(plan, one))
    return of_size(one, needs) if 0 < needs < whole_plants(plan, one) else one


def _is_for_the_same(one: Planting, other: Planting) -> bool:
    return one.order == other.order and (one.market or 1) == (other.market or 1)


def _plants_of(plan: Plan, one: Planting) -> int:
    return lay_out_bed(plan, bed_of(plan, one.bed)).layout_of(one.id).plants


def _claims(plan: Plan, home: Planting) -> tuple[Planting, ...]:
    """The plantings of a bed that want ground on the same days and may give way, the one that lacks ground last."""
    mine = grown_of(plan, home)
    laid = lay_out_bed(plan, bed_of(plan, home.bed))
    beside = [
        _as_needed(plan, one.planting)
        for one in laid.grown
        if one.planting.id != home.id and can_give_way(one.planting) and compete(mine, one)
    ]
    return (*beside[:_MOST_CLAIMS], home)


def _way(asked: Asked, offer: Offer) -> Way | None:
    """An offer as a way out, with all that it comes to; None where it would break something."""
    try:
        plan = settled(asked.before, offer.plan)
    except PlanError:
        return None
    ids = {one.id for one in asked.claims} | ({offer.rest} if offer.rest else set())
    there = {one.id: (laid, one) for laid in lay_out_plan(plan) for one in laid_plantings(laid) if one.id in ids}
    if not _keeps_the_ground(asked.before, plan) or (offer.over is None and not _all_fit(there)):
        return None
    parts = tuple(
        Part(layout.planting, layout.bed, layout.plants, layout.start, layout.end)
        for laid, one in there.values()
        for layout in [laid.layout_of(one.id)]
    )
    laid, met = lay_out_bed(plan, bed_of(plan, asked.home.bed)), met_in(plan, asked.claims)
    gives = _giving(asked, offer, plan, met)
    return Way(
        offer.kind, gives, asked.claim(gives).crop, plan, parts, met,
        left=free_on(laid, fullest_day(laid)).total, over=offer.over, new_bed=offer.new_bed, rest=offer.rest,
        changes=_changes(asked.before, plan) + (offer.new_bed is not None),
        more=offer.more,
    )  # fmt: skip


def _giving(asked: Asked, offer: Offer, plan: Plan, met: tuple[Met, ...]) -> str:
    """Who gives way; where nothing comes to be less, one that does not stand as before."""
    if offer.kind is not WayKind.LESS or not all(one.is_whole for one in met):
        return offer.planting
    then, now = _layouts(asked.before), _layouts(plan)
    moved = [one.id for one in asked.claims if then.get(one.id) != now.get(one.id)]
    return offer.planting if offer.planting in moved or not moved else moved[0]


def laid_plantings(laid: LaidOut) -> Iterator[Planting]:
    """The plantings of a bed."""
    return (one.planting for one in laid.grown)


def _all_fit(there: dict[str, tuple[LaidOut, Planting]]) -> bool:
    for laid, planting in there.values():
        one = next(each for each in laid.grown if each.planting.id == planting.id)
        if not laid.layout_of(planting.id).plants or not fits_its_ground(laid, one, laid.layout_of(planting.id)):
            return False
        days = one.dates
        if days.in_ground and days.out and days.out <= days.in_ground:
            return False
        if days.in_ground and days.sow and days.sow > days.in_ground:
            return False
    return True


def _keeps_the_ground(before: Plan, after: Plan) -> bool:
    """Whether all that is in the ground stands as it did."""
    then, now = _layouts(before), _layouts(after)
    return all(now.get(one.id) == then[one.id] for one in before.plantings if is_in_ground(one))


def _layouts(plan: Plan) -> dict[str, Layout]:
    return {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts}


def _changes(before: Plan, after: Plan) -> int:
    """How many plantings stand otherwise than before, on other days, or on one side alone."""
    then, now = _layouts(before), _layouts(after)
    ways = {one.id: grown_of(before, one).dates.in_ground for one in before.plantings}
    days = {one.id: grown_of(after, one).dates.in_ground for one in after.plantings}
    return sum(then.get(one) != now.get(one) or ways.get(one) != days.get(one) for one in {*then, *now})


def _told_apart(ways: list[Way]) -> Iterator[Way]:
    seen = set()
    for way in ways:
        places = tuple((part, _layouts(way.plan)[part.planting]) for part in way.parts)
        if (places, way.met, way.short) not in seen:
            seen.add((places, way.met, way.short))
            yield way


def _nearest(ways: Iterator[Way]) -> Iterator[Way]:
    """Without those that do not fit, but the one that is nearest to it."""
    found = [*ways]
    least = min((way.short for way in found if not way.fits), default=0)
    return (way for way in found if way.short in (0, least))


_KINDS = list(WayKind)


def _rank(way: Way) -> tuple[bool, int, Fraction, int, int, int]:
    orders = [one for one in way.met if one.order is not None]
    wholly = sum(one.is_whole for one in orders)
    share = sum((one.share for one in way.met), Fraction(0))
    on_other_days = sum(one.late != 0 for one in way.met if one.order is None)
    return not way.fits, -wholly, -share, on_other_days, way.changes, _KINDS.index(way.kind)


def _short(asked: Asked, order: Order | None, market: int, ways: tuple[Way, ...]) -> Shortage:
    """By how much it does not fit: against what its bed holds beside all others as they want to be."""
    least, over = offers_least(asked), overflow(asked.without(asked.home.id), asked.home)
    if order is None:
        stands = any(one.id == asked.home.id for one in least.plantings)
        there = _plants_of(least, planting_of(least, asked.home.id)) if stands else 0
        lacks = max(0, whole_plants(asked.plan, asked.home) - there)
        return Shortage(None, market, asked.home.id, asked.home.bed, lacks, over, lacks, ways)
    planted = planted_for_orders(lay_out_plan(least)).get((order.id, market), 0)
    layout = whole_at(asked.plan, asked.home, bed_of(asked.plan, asked.home.bed).zone[0])
    crop, in_row = crop_as_planted(asked.plan, asked.home), layout.grid.in_row
    needed = stand_for(order_of(asked.plan, order.id), crop, in_row)
    return Shortage(
        order.id, market, asked.home.id, asked.home.bed,
        plants=max(0, needed - planted),
        over=over,
        units=max(0, order.units - units_from(order, crop, planted, in_row)),
        ways=ways,
    )  # fmt: skip


def offers_least(asked: Asked) -> Plan:
    """The plan in which the planting that lacks ground has what all others leave."""
    return next(asked.with_last(asked.home.id)).plan
