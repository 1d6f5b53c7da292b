"""Trying things on a plan: each gives the plan as it would be and what stands against it."""

from datetime import date

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.findings import Finding, find_in_bed
from gardenplot.gestures.snap import Pull, Snap, snap, snaps_of
from gardenplot.gestures.stage import Pointer, Trial
from gardenplot.layout import Grid, Ground, Layout, ground_for, lay_out_bed
from gardenplot.layout.along import length_of as length_of_ranks
from gardenplot.layout.along import ranks_in
from gardenplot.plan import Crop, Order, Pattern, Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.plan.edits import add_planting, carry_crop, move_planting, resize_planting
from gardenplot.plan.find import fresh_id
from gardenplot.season import dates_of
from gardenplot.units import MM, length_of
from gardenplot.words import _


def layout_in(plan: Plan, planting_id: str) -> Layout:
    """The layout of one planting of a plan."""
    return lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed)).layout_of(planting_id)


def against(plan: Plan, planting_id: str) -> tuple[Finding, ...]:
    """What cannot be done about one planting."""
    laid = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))
    return tuple(one for one in find_in_bed(laid) if one.cannot_be_done and planting_id in (one.planting, one.other))


def _trial(after: Plan, planting_id: str, drawn: Snap) -> Trial:
    bed = planting_of(after, planting_id).bed
    return Trial(after, bed, planting_id, snap=drawn, against=against(after, planting_id))


def try_crop(plan: Plan, crop: Crop, pointer: Pointer, day: date | None) -> Trial | None:
    """A new planting of a crop with its first plant under the pointer.

    It takes the place that its first unplanted order needs, cut to whole ranks where the gap is shorter; without an
    order it fills the gap in whole ranks. None beside all beds.
    """
    if pointer.bed is None:
        return None
    plan = carry_crop(plan, crop)
    crop = crop_of(plan, crop.id)
    planting = _new(plan, crop, pointer.bed, day)
    ground = ground_for(plan, planting, pointer.bed)
    start = snap(
        pointer.x - crop.in_row.nm // 2, snaps_of(ground, 0), plan.place.units, pointer.reach, free=pointer.free
    )
    return _added(plan, planting, ground, start)


def try_first_gap(plan: Plan, crop: Crop, bed_id: str, day: date | None) -> Trial:
    """A new planting of a crop in the first gap of a bed where it can stand; raises PlanError if there is none."""
    plan = carry_crop(plan, crop)
    planting = _new(plan, crop_of(plan, crop.id), bed_id, day)
    ground = ground_for(plan, planting, bed_id)
    rank = crop_of(plan, crop.id).in_row.nm
    for start, end in ground.gaps():
        if end - start < rank:
            continue
        trial = _added(plan, planting, ground, Snap(start, Pull.NEIGHBOUR))
        if not trial.against:
            return trial
    raise PlanError(_("{bed} has no gap for {crop}").format(bed=bed_of(plan, bed_id).name, crop=crop.name))


def _new(plan: Plan, crop: Crop, bed_id: str, day: date | None) -> Planting:
    taken = {planting.order for planting in plan.plantings}
    order = next((one for one in plan.orders if one.crop == crop.id and one.id not in taken), None)
    planting = Planting(
        id=fresh_id(crop.id, {one.id for one in plan.plantings}),
        bed=bed_id,
        crop=crop.id,
        order=order.id if order else None,
    )
    return planting if _dated(plan, planting, order) else evolve(planting, in_ground=day)


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
    return _trial(after, placed.id, start)


def _grid_of(plan: Plan, planting_id: str) -> Grid:
    return layout_in(plan, planting_id).grid


def _ranks_long(grid: Grid, room: int, more: int = 0) -> int:
    """The length of as many whole ranks as fit into so many nm, and of some more; of one at least."""
    ranks = max(ranks_in(grid.rank, room, grid.ends) + more, 1)
    return max(length_of_ranks(grid.rank, ranks, grid.ends), MM)


def _block_of(plan: Plan, planting_id: str) -> Layout | None:
    layout = layout_in(plan, planting_id)
    return layout if layout.grid.rows or layout.grid.pattern is Pattern.BROADCAST else None


def try_move(plan: Plan, planting_id: str, grip: int, pointer: Pointer) -> Trial | None:
    """A planting moved so that the pointer holds it `grip` nm from its start; None beside all beds."""
    if pointer.bed is None:
        return None
    planting = planting_of(plan, planting_id)
    there = _moved(plan, planting_id, pointer.bed, Snap(pointer.x - grip, Pull.READING))
    length = layout_in(there.plan, planting_id).length
    snaps = snaps_of(ground_for(plan, planting, pointer.bed), length)
    start = snap(pointer.x - grip, snaps, plan.place.units, pointer.reach, free=pointer.free)
    return _moved(plan, planting_id, pointer.bed, start)


def try_shift(plan: Plan, planting_id: str, by: int) -> Trial:
    """A planting shifted along its bed by so many nm."""
    block = layout_in(plan, planting_id)
    return _moved(plan, planting_id, block.bed, Snap(block.start + by, Pull.READING))


def _moved(plan: Plan, planting_id: str, bed_id: str, start: Snap) -> Trial:
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    units = plan.place.units
    at = length_of(max(0, start.at), units)
    if planting.length is None and planting.plants is None and planting.order is None:
        plan = resize_planting(plan, planting_id, at, length_of(block.length, units))
    after = move_planting(plan, planting_id, bed_id, at)
    return _trial(after, planting_id, start)


def try_resize(plan: Plan, planting_id: str, foot: bool, pointer: Pointer) -> Trial | None:
    """A planting with one end drawn to the pointer in whole ranks, or freely; None beside all beds."""
    if pointer.bed is None:
        return None
    block = layout_in(plan, planting_id)
    rank = block.grid.rank
    if pointer.free:
        at = max(0, snap(pointer.x, (), plan.place.units, pointer.reach, free=True).at)
        length = at - block.start if foot else block.end - at
    else:
        length = _whole_ranks(plan, block, pointer.x, foot=foot)
    return _resized(plan, block, max(length, rank), foot=foot)


def _whole_ranks(plan: Plan, block: Layout, x: int, *, foot: bool) -> int:
    """The length in whole ranks that comes nearest to one end at `x` and leaves the neighbours alone."""
    ground, grid = ground_for(plan, planting_of(plan, block.planting), block.bed), block.grid
    room = ground.end_of_room(block.start) - block.start if foot else block.end - ground.start_of_room(block.end)
    length = x - block.start if foot else block.end - x
    return min(_ranks_long(grid, length + grid.rank // 2), _ranks_long(grid, room))


def try_ranks(plan: Plan, planting_id: str, more: int) -> Trial:
    """A planting with so many ranks more at its foot end; at least one stays."""
    block = layout_in(plan, planting_id)
    return _resized(plan, block, _ranks_long(block.grid, block.length, more), foot=True)


def _resized(plan: Plan, block: Layout, length: int, *, foot: bool) -> Trial:
    units = plan.place.units
    start = block.start if foot else block.end - length
    end = Snap(start + length if foot else start, Pull.READING)
    after = resize_planting(plan, block.planting, length_of(max(0, start), units), length_of(length, units))
    return _trial(after, block.planting, end)
