"""Wishes placed over all beds and dates, each whole, in ground that is free on all its days.

The wishes are tried in many orders, all of them where they are few; in each order every wish takes the place where it
gains most. The bound is what each wish could gain if it had the plan to itself, so a filling that reaches it is the
best there is. The same plan and number of orders give the same filling.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import islice, permutations
from random import Random

from attrs import evolve, frozen

from gardenplot.layout import ground_for, lay_out_bed
from gardenplot.plan import Bed, Plan, Planting, Wish, bed_of, fresh_id
from gardenplot.plan.edits import add_planting
from gardenplot.season import dates_of
from gardenplot.units import Length, length_of

ORDERS = 720
"""Orders tried unless more are asked for: all of six wishes."""


@frozen
class Placed:
    """A wish that found a place: the planting made for it, its plants, its tape readings in nm and its days."""

    wish: str
    planting: str
    bed: str
    plants: int
    start: int
    end: int
    in_ground: date | None
    out: date | None


@frozen
class Filling:
    """A plan with wishes placed, what they are worth, and what no filling can be worth more than."""

    plan: Plan
    placed: tuple[Placed, ...]
    worth: float
    bound: float

    @property
    def proven(self) -> bool:
        """Whether no filling can be worth more."""
        return self.worth >= self.bound


def fill(plan: Plan, orders: int = ORDERS) -> Filling:
    """Fill a plan with its wishes; what stands already is not touched."""
    alone = [_best(plan, wish) for wish in plan.wishes]
    bound = sum(wish.worth * (best.plants if best else 0) for wish, best in zip(plan.wishes, alone, strict=True))
    best = Filling(plan, (), 0.0, bound)
    for order in _orders(plan.wishes, orders):
        filling = _in_order(plan, order, bound)
        if filling.worth > best.worth:
            best = filling
        if best.proven:
            break
    return best


def _orders(wishes: tuple[Wish, ...], count: int) -> Iterator[tuple[Wish, ...]]:
    """All orders of a few wishes; of many, the dearest first and then shuffles from a fixed seed."""
    if len(wishes) <= 6:
        yield from islice(permutations(wishes), count)
        return
    yield tuple(sorted(wishes, key=lambda wish: (-wish.worth, wish.id)))
    shuffled, random = list(wishes), Random(1)
    for _number in range(count - 1):
        random.shuffle(shuffled)
        yield tuple(shuffled)


def _in_order(plan: Plan, order: tuple[Wish, ...], bound: float) -> Filling:
    placed: list[Placed] = []
    worth = 0.0
    for wish in order:
        found = _best(plan, wish)
        if found is not None:
            plan = add_planting(plan, _planting(plan, wish, found))
            placed.append(found)
            worth += wish.worth * found.plants
    rank = {wish.id: number for number, wish in enumerate(plan.wishes)}
    return Filling(plan, tuple(sorted(placed, key=lambda one: rank[one.wish])), worth, bound)


def _best(plan: Plan, wish: Wish) -> Placed | None:
    """The place with most plants, then the earliest, then the nearest to the head; None if the least finds none."""
    found = [place for place in _places(plan, wish) if place.plants >= max(1, wish.least)]
    return min(found, key=lambda place: (-place.plants, place.in_ground or date.min, place.start), default=None)


def _places(plan: Plan, wish: Wish) -> Iterator[Placed]:
    for bed in plan.beds:
        if wish.beds and bed.id not in wish.beds:
            continue
        for day in _days(plan, wish, bed):
            trial = _trial(plan, wish, bed, day)
            for start, end in ground_for(plan, trial, bed.id).gaps():
                yield from _in_gap(plan, wish, trial, start, end)


def _days(plan: Plan, wish: Wish, bed: Bed) -> list[date | None]:
    """Days on which a wish may go in: its earliest, its latest, and whenever ground of the bed comes free between."""
    if wish.earliest is None:
        return [None]
    length = timedelta(days=wish.days or 1)
    last = wish.latest - length if wish.latest else wish.earliest
    freed = {dates_of(plan, planting).out for planting in plan.plantings if planting.bed == bed.id}
    days = {wish.earliest, last, *(day for day in freed if day is not None)}
    return [*sorted(day for day in days if wish.earliest <= day <= last)]


def _trial(plan: Plan, wish: Wish, bed: Bed, day: date | None) -> Planting:
    out = day + timedelta(days=wish.days or 1) if day else None
    taken = {planting.id for planting in plan.plantings}
    return Planting(
        id=fresh_id(wish.id, taken),
        bed=bed.id,
        crop=wish.crop,
        pattern=wish.pattern,
        rows=wish.rows,
        in_ground=day,
        out=out,
    )


def _in_gap(plan: Plan, wish: Wish, trial: Planting, start: int, end: int) -> Iterator[Placed]:
    """The block at the head of a gap with as many plants as the wish wants and the gap holds."""
    gap = evolve(trial, start=Length(start, ""), length=Length(end - start, ""))
    layout = lay_out_bed(add_planting(plan, gap), bed_of(plan, trial.bed)).layout_of(trial.id)
    plants = layout.plants if wish.most is None else min(layout.plants, wish.most)
    if not plants:
        return
    sized = evolve(gap, length=None, plants=plants)
    block = lay_out_bed(add_planting(plan, sized), bed_of(plan, trial.bed)).layout_of(trial.id)
    yield Placed(wish.id, trial.id, trial.bed, plants, block.start, block.end, trial.in_ground, trial.out)


def _planting(plan: Plan, wish: Wish, found: Placed) -> Planting:
    trial = _trial(plan, wish, bed_of(plan, found.bed), found.in_ground)
    return evolve(trial, start=length_of(found.start, plan.place.units), plants=found.plants)
