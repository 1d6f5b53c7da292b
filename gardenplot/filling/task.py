"""A plan as strips to fill and ways to fill them, and blocks found there as plantings of the plan."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from math import lcm

from attrs import evolve, frozen

from gardenplot.filling.model import ALWAYS, Strip, Taken, Task, Way
from gardenplot.filling.suits import stretches_for
from gardenplot.filling.wanted import Wanted
from gardenplot.layout import LaidOut, lay_out_bed, lay_out_plan
from gardenplot.layout.cold_edge import Stretch
from gardenplot.layout.sizes import BlockSizes, block_sizes
from gardenplot.plan import Bed, Crop, Place, Plan, Planting, bed_of
from gardenplot.season import Dates
from gardenplot.season.rotation import Stay, family_gap, returns
from gardenplot.units import length_of


@frozen
class Could:
    """The ways in which something that is wanted could stand, with the plants of the sizes of each, and its dates."""

    ways: tuple[Way, ...]
    plants: tuple[tuple[int, ...], ...]
    dates: tuple[Dates, ...]


@frozen
class Posed:
    """A task, and what its numbers stand for: the beds, what is wanted, for each way its plants and its dates.

    `scale` is what a worth of one is in the task.
    """

    task: Task
    beds: tuple[Bed, ...]
    wanted: tuple[Wanted, ...]
    plants: tuple[tuple[tuple[int, ...], ...], ...]
    dates: tuple[tuple[Dates, ...], ...]
    scale: int


def scale_of(wanted: tuple[Wanted, ...]) -> int:
    """What a worth of one must be in a task so that all worths are whole numbers."""
    return lcm(*(part.denominator for one in wanted for part in (one.worth, one.whole)))


def posed_of(
    laid_out: tuple[LaidOut, ...], wanted: tuple[Wanted, ...], could: tuple[Could, ...], scale: int
) -> Posed:
    """The task of beds as they are laid out and of what is wanted with how each could stand."""
    task = Task(tuple(map(strip_of, laid_out)), tuple(one.ways for one in could))
    return Posed(
        task, tuple(laid.bed for laid in laid_out), wanted, tuple(one.plants for one in could),
        tuple(one.dates for one in could), scale,
    )  # fmt: skip


def ways_of(plan: Plan, one: Wanted, scale: int) -> Could:
    """All ways in which one thing that is wanted could stand in the beds of a plan."""
    found = [*_ways(plan, lay_out_plan(plan), one, scale)]
    return Could(
        tuple(way for way, _plants, _dates in found),
        tuple(plants for _way, plants, _dates in found),
        tuple(dates for _way, _plants, dates in found),
    )


def strip_of(laid: LaidOut) -> Strip:
    """A bed's planting zone, with what stands there; a block has its gap at its foot."""
    first, last = laid.bed.zone
    gap = laid.bed.gap.nm if laid.bed.gap else 0
    taken = (
        Taken(
            layout.start - first,
            layout.end + gap - first,
            _ordinal(one.dates.in_ground, ALWAYS[0]),
            _ordinal(one.dates.out, ALWAYS[1]),
            ALWAYS[0] if one.planting.keep_clear is None else _ordinal(one.dates.in_ground, ALWAYS[0]),
        )
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.end > layout.start
    )
    return Strip(last - first + gap, tuple(sorted(taken)))


def _ways(
    plan: Plan, laid_out: tuple[LaidOut, ...], one: Wanted, scale: int
) -> Iterator[tuple[Way, tuple[int, ...], Dates]]:
    for number, laid in enumerate(laid_out):
        if one.beds and laid.bed.id not in one.beds:
            continue
        sizes = block_sizes(laid.bed, one.crop, one.trial, one.least, one.most)
        if not sizes.plants:
            continue
        gap = laid.bed.gap.nm if laid.bed.gap else 0
        worths = tuple(_worth(one, count, scale) for count in sizes.plants)
        for dates in one.days:
            if comes_back(plan.place, laid, one.crop, one.trial.id, dates):
                continue
            way = _way(number, dates, sizes, gap, worths)
            for part in _parts(way, laid.bed, stretches_for(plan, laid.bed, one.crop, dates), gap):
                yield part, sizes.plants, dates


def _parts(way: Way, bed: Bed, stretches: tuple[Stretch, ...], gap: int) -> Iterator[Way]:
    """A way in each of the stretches that suit it, which are tape readings; the gap may lie beyond their end."""
    head = bed.zone[0]
    for low, high in stretches:
        if (low, high) == bed.zone:
            yield way
        elif high + gap - low >= way.lengths[0]:
            yield evolve(way, low=low - head, high=high - head + gap)


def _way(strip: int, dates: Dates, sizes: BlockSizes, gap: int, worths: tuple[int, ...]) -> Way:
    first, last = _ordinal(dates.in_ground, ALWAYS[0]), _ordinal(dates.out, ALWAYS[1])
    lengths = tuple(length + gap for length in sizes.lengths)
    shortest = tuple(length + gap for length in sizes.shortest)
    return Way(strip, first, last, lengths, worths, shortest=() if shortest == lengths else shortest)


def _worth(one: Wanted, plants: int, scale: int) -> int:
    counted = plants if one.most is None else min(plants, one.most)
    whole = one.whole if one.most is not None and plants >= one.most else Fraction(0)
    return int((counted * one.worth + whole) * scale)


def comes_back(
    place: Place, laid: LaidOut, crop: Crop, planting: str, dates: Dates, beside: tuple[Stay, ...] = ()
) -> bool:
    """Whether a crop would bring its family back to a bed too soon, on the days of a planting with that id.

    `beside` are others that are to be planted there; none of them may bring it back either.
    """
    if not crop.family or dates.in_ground is None:
        return False
    stays = tuple(
        Stay(grown.crop.family, grown.dates.in_ground.year, grown.planting.id)
        for grown in laid.grown
        if grown.crop.family and grown.dates.in_ground is not None
    )
    mine = Stay(crop.family, dates.in_ground.year, planting)
    new = {planting, *(one.planting for one in beside)}
    return any(back.planting in new for back in returns(laid.bed, (*stays, *beside, mine), family_gap(place)))


def _ordinal(day: date | None, unknown: int) -> int:
    return unknown if day is None else day.toordinal()


def planting_of_block(plan: Plan, one: Wanted, bed: Bed, start: int, count: int, dates: Dates) -> Planting:
    """What is wanted as a planting from `start` on; one that meets its order alone follows its order's plants."""
    begins = length_of(start, plan.place.units)
    if one.order is None:
        return evolve(one.trial, bed=bed.id, start=begins, plants=count, in_ground=dates.in_ground, out=dates.out)
    planting = evolve(one.trial, bed=bed.id, start=begins, plants=count)
    if dates != one.days[0]:
        planting = evolve(planting, in_ground=dates.in_ground)
    alone = not any(_same_market(other, one.trial) for other in plan.plantings)
    return evolve(planting, plants=None) if alone and one.most is not None and count >= one.most else planting


def _same_market(other: Planting, mine: Planting) -> bool:
    return other.order == mine.order and (other.market or 1) == (mine.market or 1)


def laid_plants(plan: Plan, planting: Planting) -> tuple[int, int, int]:
    """The plants that stand of a planting, and its tape readings in nm."""
    layout = lay_out_bed(plan, bed_of(plan, planting.bed)).layout_of(planting.id)
    return layout.plants, layout.start, layout.end
