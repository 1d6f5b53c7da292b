"""Trying crops and sizes on a plan: each gives the plan as it would be and what stands against it."""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.drawing.days import day_words
from gardenplot.errors import PlanError
from gardenplot.gestures.kept import layout_in, start_of
from gardenplot.gestures.push import FOOT, HEAD, push
from gardenplot.gestures.snap import NO_MARKS, Marks, Pull, Snap, snap, snaps_of
from gardenplot.gestures.stage import Pointer, Trial
from gardenplot.gestures.together import trial_of
from gardenplot.layout import Grid, Ground, Layout, ground_for, lay_out_bed
from gardenplot.layout.along import length_of as length_of_ranks
from gardenplot.layout.along import ranks_in
from gardenplot.plan import Crop, Order, Pattern, Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.plan.edits import add_planting, carry_crop, resize_planting
from gardenplot.plan.find import fresh_id
from gardenplot.season import dates_of, market_days
from gardenplot.units import MM, length_of
from gardenplot.words import _


def try_crop(plan: Plan, crop: Crop, pointer: Pointer, day: date | None, marks: Marks = NO_MARKS) -> Trial | None:
    """A new planting of a crop with its first plant under the pointer, drawn also to the marks of other beds.

    It takes the place that its first unplanted order needs, cut to whole ranks where the gap is shorter; without an
    order it fills the gap in whole ranks. It goes in on the day that is shown or, if the pointer waits, on the first
    later day on which its ground is free. None beside all beds.
    """
    if pointer.bed is None:
        return None
    plan = carry_crop(plan, crop)
    planting = _new(plan, crop_of(plan, crop.id), pointer.bed, day)
    trial = _put(plan, planting, pointer, marks)
    if trial.can_be:
        return trial
    for then in _waiting(plan, planting, day):
        later = _put(plan, then, pointer, marks)
        if later.can_be:
            return evolve(later if pointer.waits else trial, later=then.in_ground)
    return trial


def _put(plan: Plan, planting: Planting, pointer: Pointer, marks: Marks) -> Trial:
    """A new planting with its first plant under the pointer."""
    ground, units = ground_for(plan, planting, planting.bed), plan.place.units
    wanted = pointer.x - crop_of(plan, planting.crop).in_row.nm // 2
    weaker = marks.level_with(wanted, pointer.reach, planting.bed)
    start = snap(wanted, snaps_of(ground, 0), units, pointer.reach, free=pointer.free, weaker=weaker)
    return _added(plan, planting, ground, start)


def try_first_gap(plan: Plan, crop: Crop, bed_id: str, day: date | None, *, waits: bool = False) -> Trial:
    """A new planting of a crop in the first gap of a bed where it can stand, if it `waits` on a later day.

    Raises PlanError if there is none; where the bed has one on a later day, it says so.
    """
    plan = carry_crop(plan, crop)
    planting = _new(plan, crop_of(plan, crop.id), bed_id, day)
    trial = _in_first_gap(plan, planting)
    if trial is not None:
        return trial
    tried = ((then.in_ground, _in_first_gap(plan, then)) for then in _waiting(plan, planting, day))
    later, there = next((one for one in tried if one[1] is not None), (None, None))
    if waits and there is not None:
        return evolve(there, later=later)
    words = _("{bed} has no gap for {crop}").format(bed=bed_of(plan, bed_id).name, crop=crop.name)
    if later is not None:
        words += _(
            "; it has one from {day} on: choose that day above the drawing, or place it when the ground is free"
        ).format(day=day_words(later))
    raise PlanError(words)


def _in_first_gap(plan: Plan, planting: Planting) -> Trial | None:
    """A new planting in the first gap of its bed where it can stand."""
    ground, rank = ground_for(plan, planting, planting.bed), crop_of(plan, planting.crop).in_row.nm
    for start, end in ground.gaps():
        if end - start >= rank:
            trial = _added(plan, planting, ground, Snap(start, Pull.NEIGHBOUR))
            if not trial.against:
                return trial
    return None


def _waiting(plan: Plan, planting: Planting, day: date | None) -> Iterator[Planting]:
    """A new planting on each later day on which ground of its bed falls free; none where an order gives its days."""
    if planting.order is not None:
        return
    grown = lay_out_bed(plan, bed_of(plan, planting.bed)).grown
    outs = {one.dates.out for one in grown if one.dates.out is not None}
    for out in sorted(one for one in outs if day is None or one > day):
        yield evolve(planting, in_ground=out)


def _new(plan: Plan, crop: Crop, bed_id: str, day: date | None) -> Planting:
    order, market = _unplanted(plan, crop)
    planting = Planting(
        id=fresh_id(crop.id, {one.id for one in plan.plantings}),
        bed=bed_id,
        crop=crop.id,
        order=order.id if order else None,
        market=market if order and order.times > 1 else None,
    )
    return planting if _dated(plan, planting, order) else evolve(planting, in_ground=day)


def _unplanted(plan: Plan, crop: Crop) -> tuple[Order | None, int]:
    """The first order of a crop with a market day that nothing is planted for, and the number of that day."""
    taken = {(planting.order, planting.market or 1) for planting in plan.plantings}
    for order in plan.orders:
        for market, _day in enumerate(market_days(order), start=1):
            if order.crop == crop.id and (order.id, market) not in taken:
                return order, market
    return None, 1


def _dated(plan: Plan, planting: Planting, order: Order | None) -> bool:
    return order is not None and dates_of(plan, planting).in_ground is not None


def _added(plan: Plan, planting: Planting, ground: Ground, start: Snap) -> Trial:
    units = plan.place.units
    start = evolve(start, at=max(0, start.at))
    placed = evolve(planting, start=length_of(start.at, units))
    room = ground.end_of_room(start.at) - start.at
    wanted = _block_of(add_planting(plan, placed), placed.id) if placed.order else None
    if wanted is None or wanted.length > room:
        length = _ranks_long(_grid_of(add_planting(plan, evolve(placed, order=None)), placed.id), room)
        placed = evolve(placed, length=length_of(length, units))
    after = add_planting(plan, placed)
    return trial_of(after, [placed.id], start)


def _grid_of(plan: Plan, planting_id: str) -> Grid:
    return layout_in(plan, planting_id).grid


def _ranks_long(grid: Grid, room: int, more: int = 0) -> int:
    """The length of as many whole ranks as fit into so many nm, and of some more; of one at least."""
    ranks = max(ranks_in(grid.rank, room, grid.ends) + more, 1)
    return max(length_of_ranks(grid.rank, ranks, grid.ends), MM)


def _block_of(plan: Plan, planting_id: str) -> Layout | None:
    layout = layout_in(plan, planting_id)
    return layout if layout.grid.rows or layout.grid.pattern is Pattern.BROADCAST else None


def try_resize(plan: Plan, planting_id: str, foot: bool, pointer: Pointer) -> Trial | None:
    """A planting with one end drawn to the pointer in whole ranks, or freely; None beside all beds.

    It stops at its neighbour unless the hand pushes that along.
    """
    if pointer.bed is None:
        return None
    block = layout_in(plan, planting_id)
    rank = block.grid.rank
    if pointer.free:
        at = max(0, snap(pointer.x, (), plan.place.units, pointer.reach, free=True).at)
        length = at - block.start if foot else block.end - at
    else:
        length = _whole_ranks(plan, block, pointer.x, foot=foot, stops=not pointer.push)
    return _resized(plan, block, max(length, rank), foot=foot, pushes=pointer.push)


def _whole_ranks(plan: Plan, block: Layout, x: int, *, foot: bool, stops: bool) -> int:
    """The length in whole ranks that comes nearest to one end at `x` and, if it `stops`, keeps off the neighbours."""
    ground, grid = ground_for(plan, planting_of(plan, block.planting), block.bed), block.grid
    length = x - block.start if foot else block.end - x
    nearest = _ranks_long(grid, length + grid.rank // 2)
    if not stops:
        return nearest
    room = ground.end_of_room(block.start) - block.start if foot else block.end - ground.start_of_room(block.end)
    return min(nearest, _ranks_long(grid, room))


def try_ranks(plan: Plan, planting_id: str, more: int, *, foot: bool = True, pushes: bool = False) -> Trial:
    """A planting with so many ranks more at one end; at least one stays."""
    block = layout_in(plan, planting_id)
    return _resized(plan, block, _ranks_long(block.grid, block.length, more), foot=foot, pushes=pushes)


def _resized(plan: Plan, block: Layout, length: int, *, foot: bool, pushes: bool = False) -> Trial:
    after, end = _with_length(plan, block, length, foot=foot)
    if not pushes or length <= block.length:
        return trial_of(after, [block.planting], end)
    way = FOOT if foot else HEAD
    made = push(plan, after, [block.planting], way)
    if not made.too_far:
        return trial_of(made.plan, [block.planting], end, made.pushed)
    room = length - made.too_far
    length = max(block.length, min(room, _ranks_long(block.grid, room)))
    after, end = _with_length(plan, block, length, foot=foot)
    last, made = made.last, push(plan, after, [block.planting], way)
    return evolve(trial_of(made.plan, [block.planting], end, made.pushed), stopped=last)


def _with_length(plan: Plan, block: Layout, length: int, *, foot: bool) -> tuple[Plan, Snap]:
    """The plan with a block of another length, and where the end that moved lies then."""
    if length == block.length:
        return plan, Snap(block.end if foot else block.start, Pull.READING)
    units, planting = plan.place.units, planting_of(plan, block.planting)
    start = block.start if foot else max(0, block.end - length)
    length = length if foot else block.end - start
    after = resize_planting(plan, block.planting, start_of(planting, start, units), length_of(length, units))
    return after, Snap(start + length if foot else start, Pull.READING)
