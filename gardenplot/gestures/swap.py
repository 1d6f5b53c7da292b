"""Two neighbours exchanged: each takes the other's turn along the bed, and the gap between them stays."""

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import layout_in, size_kept, start_of
from gardenplot.gestures.push import FOOT
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.together import against, trial_of
from gardenplot.layout import Layout, compete, lay_out_bed
from gardenplot.plan import Plan, bed_of, crop_of, planting_of
from gardenplot.plan.several import change_plantings
from gardenplot.words import _

SWAP = _("Swap {crop} with its neighbour")


def neighbour_of(plan: Plan, planting_id: str, way: int) -> Layout | None:
    """The next block towards the foot or the head that shares days with a planting."""
    laid = lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))
    block = laid.layout_of(planting_id)
    itself = next(one for one in laid.grown if one.planting.id == planting_id)
    beside = [
        layout
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.planting != planting_id and layout.length and compete(itself, one)
    ]
    if way == FOOT:
        return min((one for one in beside if one.start >= block.end), key=lambda one: one.start, default=None)
    return max((one for one in beside if one.end <= block.start), key=lambda one: one.end, default=None)


def needed_neighbour(plan: Plan, planting_id: str, way: int) -> Layout:
    """The neighbour towards the foot or the head; raises PlanError where there is none."""
    found = neighbour_of(plan, planting_id, way)
    if found is None:
        crop = crop_of(plan, planting_of(plan, planting_id).crop).name
        none = (
            _("{crop} has no neighbour towards the foot")
            if way == FOOT
            else _("{crop} has no neighbour towards the head")
        )
        raise PlanError(none.format(crop=crop))
    return found


def try_swap(plan: Plan, planting_id: str, way: int) -> Trial:
    """A planting and its neighbour towards the foot or the head exchanged; raises PlanError where there is none."""
    block, beside = layout_in(plan, planting_id), needed_neighbour(plan, planting_id, way)
    head, foot = (block, beside) if way == FOOT else (beside, block)
    gap, units = foot.start - head.end, plan.place.units
    first, second = planting_of(plan, foot.planting), planting_of(plan, head.planting)
    changes = {
        first.id: {"start": start_of(second, head.start, units), **size_kept(first, foot.length, units)},
        second.id: {"start": start_of(second, head.start, units), **size_kept(second, head.length, units)},
    }
    half_way = change_plantings(plan, changes)
    start = layout_in(half_way, first.id).end + gap
    after = change_plantings(half_way, {second.id: {"start": start_of(second, start, units)}})
    at = layout_in(after, planting_id).start
    trial = trial_of(after, [planting_id], Snap(at, Pull.NEIGHBOUR))
    return evolve(trial, against=against(after, [planting_id, beside.planting]))
