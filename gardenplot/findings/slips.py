"""What contradicts itself though each part alone is in order: odds of frost, covers, hardening, cells, orders."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

from attrs import evolve

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import Grown, LaidOut, Layout, spacings_for_orders, stood
from gardenplot.plan import Cover, Establish, Jugs, MonthDay, Place, Plan, Planting, crop_of, order_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import emergence, stand_for
from gardenplot.season.frost import on_year
from gardenplot.supplies.raising import bought_in, seedlings_of
from gardenplot.units import Share

_FALL, _GROW = ("last_freeze", "last_hard_freeze"), ("first_freeze", "first_hard_freeze")
_LEAP_YEAR, _DAYS, _HALF = 2000, 366, 183
Odd = tuple[Share, MonthDay]


def find_slips(plan: Plan, laid_out: Sequence[LaidOut]) -> tuple[Finding, ...]:
    """All of them; `laid_out` are the plan's beds."""
    lengths = {bed.id: bed.length.nm for bed in plan.beds}
    return (
        *_odds(plan.place),
        *(_beyond(Kind.COVER_BEYOND, one, lengths[one.bed]) for one in plan.covers if one.end.nm > lengths[one.bed]),
        *(_beyond(Kind.JUGS_BEYOND, one, lengths[one.bed]) for one in plan.jugs if one.end.nm > lengths[one.bed]),
        *(found for laid in laid_out for found in find_slips_in(laid)),
        *_twice(plan, laid_out),
    )


@lru_cache(maxsize=2048)
def find_slips_in(laid: LaidOut) -> tuple[Finding, ...]:
    """Those of the plantings of a bed."""
    pairs = [each for each in zip(laid.grown, laid.layouts, strict=True) if each[0].hardened is None]
    slips = (found for one, layout in pairs for found in _of_planting(one, layout))
    return *slips, *_no_emergence(pairs)


def _no_emergence(pairs: Sequence[tuple[Grown, Layout]]) -> Iterator[Finding]:
    """Crops with a name that the table of days to emerge does not have, told at the first planting of each."""
    told = set()
    for one, layout in pairs:
        name = one.crop.emerges_like
        if (
            name
            and name not in emergence.emergence_table()
            and one.crop.id not in told
            and not is_in_ground(one.planting)
        ):
            told.add(one.crop.id)
            yield _at(Kind.NO_EMERGENCE, layout)


def _twice(plan: Plan, laid_out: Sequence[LaidOut]) -> Iterator[Finding]:
    """Plantings that take the whole of an order though others stand for the same market day.

    The amount is what stands for that day in all, the limit what must stand; told at the last such planting of a day.
    """
    for_days: dict[tuple[str, int], list[tuple[Grown, Layout]]] = {}
    for one, layout in (pair for laid in laid_out for pair in zip(laid.grown, laid.layouts, strict=True)):
        if one.order is not None and stood(one, layout):
            for_days.setdefault((one.order.id, one.planting.market or 1), []).append((one, layout))
    several = {day: pairs for day, pairs in for_days.items() if len(pairs) > 1}
    each = spacings_for_orders(tuple(laid_out)) if several else {}
    for (order_id, market), pairs in several.items():
        order = order_of(plan, order_id)
        needed = stand_for(order, crop_of(plan, order.crop), each.get((order_id, market)))
        whole = [pair for pair in pairs if _by_order(pair[0].planting) and stood(*pair) >= needed]
        if whole:
            other = next(one for one, layout in pairs if layout is not whole[-1][1])
            yield evolve(_at(Kind.ORDER_TWICE, whole[-1][1], sum(stood(*pair) for pair in pairs), needed),
                         other=other.planting.id)  # fmt: skip


def _by_order(planting: Planting) -> bool:
    """Whether its order alone gives its size, and it can still be given another."""
    return planting.plants is None and planting.length is None and not is_in_ground(planting)


def wrong_odds(place: Place, name: str) -> tuple[Odd, Odd] | None:
    """The first two odds of a place, by their field, of which the second comes before the first in the year.

    The chance that it still freezes after a day falls as days go by, the chance that it has frozen before it grows.
    """
    odds: tuple[Odd, ...] = getattr(place, name)
    in_turn = sorted(odds, key=lambda one: one[0].part, reverse=name in _FALL)
    for one, after in pairwise(in_turn):
        if _days_back(one, after) < _HALF:
            return one, after
    return None


def _odds(place: Place) -> Iterator[Finding]:
    """The amount is by how many days the second of two odds comes before the first."""
    for name in (*_FALL, *_GROW):
        found = wrong_odds(place, name)
        if found is not None:
            yield Finding(Kind.ODDS, amount=_days_back(*found), came=name)


def _days_back(one: Odd, after: Odd) -> int:
    """How many days the second is before the first, the turn of a year counted; all of a year for the same day."""
    days = (on_year(one[1], _LEAP_YEAR) - on_year(after[1], _LEAP_YEAR)).days % _DAYS
    return days or _DAYS


def _beyond(kind: Kind, one: Cover | Jugs, foot: int) -> Finding:
    return Finding(kind, one.bed, start=max(one.start.nm, foot), end=one.end.nm, amount=one.end.nm - foot)


def _of_planting(one: Grown, layout: Layout) -> Iterator[Finding]:
    planting, crop, dates = one.planting, one.crop, one.dates
    if one.order is not None and one.order.crop != planting.crop:
        yield _at(Kind.OTHER_CROP, layout)
    if is_in_ground(planting):
        return
    if dates.harden is not None and dates.sow is not None and dates.harden < dates.sow:
        yield _at(Kind.HARDENED_FIRST, layout, (dates.sow - dates.harden).days)
    in_cells = crop.establish is Establish.TRANSPLANT or crop.seeds_per_cell is not None
    most = int((crop.seeds_per_cell or 1) * seedlings_of(crop))
    if in_cells and most < crop.stand and not bought_in(planting):
        yield _at(Kind.TOO_FEW_SEEDS, layout, most, crop.stand)


def _at(kind: Kind, layout: Layout, amount: int = 0, limit: int = 0) -> Finding:
    return Finding(kind, layout.bed, layout.planting, start=layout.start, end=layout.end, amount=amount, limit=limit)
