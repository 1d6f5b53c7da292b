"""One block in each of three patterns, and with each answer to the places kept in it, so that one can be picked."""

from attrs import frozen

from gardenplot.layout.across import rows_are_closer
from gardenplot.layout.bed import followers_of, lay_out_bed
from gardenplot.layout.candidate import in_length_of, long_enough_for
from gardenplot.layout.value import Layout
from gardenplot.plan import Pattern, Plan, Reserved, bed_of, crop_of, planting_of
from gardenplot.plan.edits import suppose_planting
from gardenplot.plan.find import only

SIDE_BY_SIDE = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR)


@frozen
class InPattern:
    """A pattern for a block: its layout in the block as it is, the difference in plants, and the length in nm that
    it needs for the plants that stand there now (None where no row fits); `closer` where rows stand closer than the
    packet says."""

    pattern: Pattern
    layout: Layout
    more: int
    length: int | None
    closer: bool


def candidates(plan: Plan, planting_id: str) -> tuple[InPattern, ...]:
    """The block of a planting in straight, staggered and triangular rows."""
    now = _layout(plan, planting_id)
    alone = only(plan, now.bed)
    return tuple(_in_pattern(alone, now, pattern) for pattern in SIDE_BY_SIDE)


def _in_pattern(plan: Plan, now: Layout, pattern: Pattern) -> InPattern:
    layout = in_length_of(plan, now, {"pattern": pattern}) or now
    long_enough = long_enough_for(plan, now, now.plants, {"pattern": pattern})
    packet = crop_of(plan, now.crop).row_spacing[0].nm
    return InPattern(
        pattern,
        layout,
        layout.plants - now.plants,
        long_enough.length if long_enough is not None else None,
        rows_are_closer(layout.grid, packet),
    )


def _layout(plan: Plan, planting_id: str) -> Layout:
    """A planting's layout, with only what shares its bed in the plan."""
    planting = planting_of(plan, planting_id)
    return lay_out_bed(plan, bed_of(plan, planting.bed)).layout_of(planting_id)


@frozen
class Answer:
    """One answer to the places that are reserved in a planting's block, and the plants that it leaves."""

    reserved: Reserved
    plants: int


def answers(plan: Plan, planting_id: str) -> tuple[Answer, ...]:
    """The three answers with their plants; none where no place of a following crop is kept in the block."""
    laid = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))
    if not followers_of(laid, planting_id):
        return ()
    alone = only(plan, laid.bed.id)
    changed = (suppose_planting(alone, planting_id, reserved=one) for one in Reserved)
    return tuple(
        Answer(one, _layout(after, planting_id).plants) for one, after in zip(Reserved, changed, strict=True)
    )
