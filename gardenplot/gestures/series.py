"""A planting repeated as a series: for its order's other market days or every so many days, each in a free gap."""

from datetime import date, timedelta
from typing import Any

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import kept_without_order, layout_in, size_kept
from gardenplot.layout import Ground, Grown, compete, has_room, lay_out_bed
from gardenplot.layout.block import length_at, sized
from gardenplot.plan import Bed, Order, Pattern, Plan, Planting, crop_of, order_of, planting_of
from gardenplot.plan.clumps import as_planted
from gardenplot.plan.series import repeat
from gardenplot.season import counting_site, dates_of, market_days
from gardenplot.units import length_of
from gardenplot.words import _

_DAYS = ("sow", "in_ground", "ready", "out")


@frozen
class Repeated:
    """A plan with a series, the plantings that were made for it, and the days of those that found no ground.

    Those are market days where the series is for an order, else days in the ground.
    """

    plan: Plan
    made: tuple[str, ...]
    without_ground: tuple[date, ...]


@frozen
class _Wanted:
    """A further planting of a series before it has its place, and the day by which it is called."""

    planting: Planting
    day: date


def other_markets(plan: Plan, planting_id: str) -> tuple[int, ...]:
    """The market days of a planting's order, counted from 1, for which nothing is planted yet."""
    planting = planting_of(plan, planting_id)
    if planting.order is None:
        return ()
    taken = {one.market or 1 for one in plan.plantings if one.order == planting.order}
    days = market_days(order_of(plan, planting.order))
    return tuple(market for market in range(1, len(days) + 1) if market not in taken)


def repeat_for_markets(plan: Plan, planting_id: str, times: int) -> Repeated:
    """Plantings for so many of the market days of an order that have none yet.

    Raises PlanError where none is left.
    """
    planting = planting_of(plan, planting_id)
    markets = other_markets(plan, planting_id)[:times]
    if planting.order is None or not markets:
        raise PlanError(_("no market day is left without a planting"))
    order = order_of(plan, planting.order)
    wanted = [_for_market(plan, planting, order, market) for market in markets]
    return _placed(plan, planting, wanted)


def repeat_every(plan: Plan, planting_id: str, times: int, days: int) -> Repeated:
    """So many plantings more, each so many days after the one before; they stand for no order.

    Raises PlanError where nothing says when the first one goes into the ground, or the calendar ends before the last.
    """
    planting = planting_of(plan, planting_id)
    first = dates_of(plan, planting).in_ground
    if first is None:
        raise PlanError(_("a series needs a first day: say when this planting goes into the ground"))
    bare = evolve(planting, **kept_without_order(plan, planting), order=None, market=None, actual=None)
    if all(getattr(bare, name) is None for name in _DAYS):
        bare = evolve(bare, in_ground=first)
    wanted = []
    for number in range(1, times + 1):
        by = timedelta(days=number * days)
        typed: dict[str, Any] = {name: _later(getattr(bare, name), by) for name in _DAYS}
        wanted.append(_Wanted(evolve(bare, **typed), _later(first, by) or first))
    return _placed(plan, planting, wanted)


def _for_market(plan: Plan, planting: Planting, order: Order, market: int) -> _Wanted:
    """As the planting, but counted back from another market day; a typed day out keeps its distance to the market."""
    days = market_days(order)
    by = days[market - 1] - days[min(planting.market or 1, len(days)) - 1]
    other = evolve(planting, market=market, sow=None, in_ground=None, ready=None, actual=None)
    other = evolve(other, out=_later(planting.out, by))
    if dates_of(plan, other).in_ground is None:
        other = evolve(other, in_ground=_later(dates_of(plan, planting).in_ground, by))
    return _Wanted(other, days[market - 1])


def _later(day: date | None, by: timedelta) -> date | None:
    try:
        return None if day is None else day + by
    except OverflowError:
        raise PlanError(_("the calendar ends before the last planting of the series")) from None


def _placed(plan: Plan, planting: Planting, wanted: list[_Wanted]) -> Repeated:
    """Put each in the first gap that is free on its days: in the same bed, those below it, then from the top."""
    block, units = layout_in(plan, planting.id), plan.place.units
    at = next(number for number, bed in enumerate(plan.beds) if bed.id == planting.bed)
    beds = [_Taken.of(plan, bed) for bed in (*plan.beds[at:], *plan.beds[:at])]
    crop, site = crop_of(plan, planting.crop), counting_site(plan.place)
    copies: list[dict[str, Any]] = []
    missing = []
    for one in wanted:
        copy = evolve(one.planting, id="", **size_kept(one.planting, block.length, units))
        grown = Grown(copy, as_planted(crop, copy), order_of(plan, copy.order) if copy.order else None, site=site)
        tried = ((bed.bed.id, bed.put(grown, block.length)) for bed in beds)
        bed_id, start = next(((bed, start) for bed, start in tried if start is not None), ("", None))
        if start is None:
            missing.append(one.day)
        else:
            fields = {name: getattr(copy, name) for name in ("order", "market", "plants", "length", *_DAYS)}
            copies.append(fields | {"bed": bed_id, "start": length_of(start, units)})
    after = repeat(plan, planting.id, copies)
    made = tuple(one.id for one in after.plantings[len(plan.plantings) :])
    return Repeated(after, made, tuple(missing))


@frozen
class _Taken:
    """A bed with the blocks that have its ground, each with whose it is; what is put into it joins them.

    `needed` is how much bed a planting of the series takes, in nm, by where it begins: all of them are alike.
    """

    bed: Bed
    blocks: list[tuple[int, int, Grown]]
    needed: dict[int, int]

    @classmethod
    def of(cls, plan: Plan, bed: Bed) -> "_Taken":
        """A bed as it is planted."""
        laid = lay_out_bed(plan, bed)
        pairs = zip(laid.grown, laid.layouts, strict=True)
        return cls(bed, [(layout.start, layout.end, one) for one, layout in pairs], {})

    def put(self, one: Grown, length: int) -> int | None:
        """Take the first gap that holds a planting on its days, and give the tape reading where it begins.

        `length` in nm is that of a block which has no size of its own.
        """
        others = sorted((start, end) for start, end, other in self.blocks if compete(one, other))
        gap = self.bed.gap.nm if self.bed.gap else 0
        for start, end in Ground(self.bed.zone, tuple(others), gap).gaps():
            if start not in self.needed:
                self.needed[start] = self._length(one, length, start)
            if 0 < self.needed[start] <= end - start:
                self.blocks.append((start, start + self.needed[start], one))
                return start
        return None

    def _length(self, one: Grown, length: int, start: int) -> int:
        """The length of a block that begins at a reading; nothing where the bed is too narrow for any row."""
        size = sized(self.bed, one.crop, one.planting, one.order)
        if not has_room(size.grid):
            return 0
        fills = size.fills or size.grid.pattern is Pattern.RINGS
        return length if fills else length_at(self.bed, one.crop, one.planting, size, start)
