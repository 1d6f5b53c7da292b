"""One block in each of three patterns, and with each answer to the places kept in it, so that one can be picked."""

from attrs import frozen

from gardenplot.layout.across import rows_are_closer
from gardenplot.layout.bed import LaidOut, followers_of, lay_out_bed
from gardenplot.layout.candidate import in_length_of, long_enough_for
from gardenplot.layout.value import Layout
from gardenplot.plan import Pattern, Plan, Reserved, bed_of, crop_of, planting_of
from gardenplot.plan.edits import suppose_planting
from gardenplot.plan.find import only
from gardenplot.season import stand_for

SIDE_BY_SIDE = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR)


@frozen
class InPattern:
    """A pattern for a block: its layout in the block as it is, the difference in plants, and the length in nm that
    it needs for so many plants as are `wanted` (None where no row fits): what its order asks for, else
    those that stand there now; `closer` where rows stand closer than the packet says."""

    pattern: Pattern
    layout: Layout
    more: int
    wanted: int
    length: int | None
    closer: bool


def candidates(plan: Plan, planting_id: str) -> tuple[InPattern, ...]:
    """The block of a planting in straight, staggered and triangular rows."""
    laid = _laid(plan, planting_id)
    now, wanted = laid.layout_of(planting_id), _wanted(laid, planting_id)
    alone = only(plan, now.bed)
    return tuple(_in_pattern(alone, now, wanted, pattern) for pattern in SIDE_BY_SIDE)


def _wanted(laid: LaidOut, planting_id: str) -> int:
    """What an order asks for where the block is sized by it, without the plants that only fill up its last rank."""
    one, now = next(each for each in laid.grown if each.planting.id == planting_id), laid.layout_of(planting_id)
    if one.order is None or one.planting.length is not None or one.planting.plants is not None:
        return now.plants
    return stand_for(one.order, one.crop, now.grid.in_row)


def _in_pattern(plan: Plan, now: Layout, wanted: int, pattern: Pattern) -> InPattern:
    layout = in_length_of(plan, now, {"pattern": pattern}) or now
    long_enough = long_enough_for(plan, now, wanted, {"pattern": pattern})
    packet = crop_of(plan, now.crop).row_spacing[0].nm
    return InPattern(
        pattern,
        layout,
        layout.plants - now.plants,
        wanted,
        long_enough.length if long_enough is not None else None,
        rows_are_closer(layout.grid, packet),
    )


def _laid(plan: Plan, planting_id: str) -> LaidOut:
    """The bed of a planting."""
    return lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))


@frozen
class Answer:
    """One answer to the places that are reserved in a planting's block, and the plants that it leaves."""

    reserved: Reserved
    plants: int


def answers(plan: Plan, planting_id: str) -> tuple[Answer, ...]:
    """The three answers with their plants; none where no place of a following crop is kept in the block."""
    laid = _laid(plan, planting_id)
    if not followers_of(laid, planting_id):
        return ()
    alone = only(plan, laid.bed.id)
    changed = (suppose_planting(alone, planting_id, reserved=one) for one in Reserved)
    return tuple(
        Answer(one, _laid(after, planting_id).layout_of(planting_id).plants)
        for one, after in zip(Reserved, changed, strict=True)
    )
