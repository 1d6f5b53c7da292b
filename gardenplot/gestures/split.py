"""A block split in two at a tape reading, onto a whole rank, and two like neighbours joined to one.

Both parts of a split stay with the order: together they are what was planted for it. So are the cells to sow, and
what was sown, came up and was bought in: each part has its share.
"""

from typing import Any

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import layout_in, start_of
from gardenplot.gestures.push import FOOT
from gardenplot.gestures.snap import Pull, Snap, grain
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.swap import needed_neighbour
from gardenplot.gestures.together import against
from gardenplot.layout import Layout
from gardenplot.layout.along import length_of as length_of_ranks
from gardenplot.layout.along import ranks_in
from gardenplot.plan import Pattern, Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.plan.parted_record import added_up, parted_records
from gardenplot.plan.several import join_plantings, split_planting
from gardenplot.season import dates_of
from gardenplot.units import MM, length_of
from gardenplot.words import _

SPLIT, JOIN = _("Split {crop}"), _("Join {crop} with its neighbour")
_OWN_TO_EACH: dict[str, Any] = {
    "id": "", "start": None, "plants": None, "length": None, "order": None, "slack": None, "round_up_to": None,
    "in_ground": None, "out": None, "note": "", "unknown": (), "actual": None, "sow_cells": None,
}  # fmt: skip
"""What may differ between two plantings that are joined, beside what follows from it."""


@frozen
class Parts:
    """What a split or a join comes to: its trial, and the plants of both parts and of the whole."""

    trial: Trial
    first: int
    rest: int
    whole: int


@frozen
class _Cut:
    """Where the first part ends and the rest begins, in nm."""

    end: int
    start: int


def try_split(plan: Plan, planting_id: str, at: int | None = None) -> Parts:
    """A planting split at the whole rank nearest to a tape reading in nm, or in its middle.

    Raises PlanError where the reading lies outside the block, or the block has but one rank.
    """
    planting, block = planting_of(plan, planting_id), layout_in(plan, planting_id)
    cut = _cut(plan, block, at)
    first, rest = _by_length(plan, planting, block, cut)
    after = split_planting(plan, planting_id, first, rest)
    if block.wanted is not None:
        first, rest = _by_plants(after, block, cut, first, rest)
        after = split_planting(plan, planting_id, first, rest)
    second = after.plantings[-1].id
    plants = layout_in(after, planting_id).plants, layout_in(after, second).plants
    goes, stays = parted_records(planting, *plants)
    after = split_planting(plan, planting_id, first | goes, rest | stays)
    trial = _trial(after, planting_id, cut.start, (planting_id, second))
    return Parts(trial, *plants, block.plants)


def _cut(plan: Plan, block: Layout, at: int | None) -> _Cut:
    crop, units, grid = crop_of(plan, block.crop).name, plan.place.units, block.grid
    at = (block.start + block.end) // 2 if at is None else at
    if not block.start < at < block.end:
        sentence = _("{reading} does not lie inside {crop}, from {start} to {end}")
        raise PlanError(
            sentence.format(
                reading=length_of(at, units), crop=crop, start=length_of(block.start, units),
                end=length_of(block.end, units),
            )
        )  # fmt: skip
    if grid.pattern is Pattern.BROADCAST:
        step = grain(units)
        there = (at + step // 2) // step * step
        there = there if block.start < there < block.end else at
        return _Cut(there, there)
    ranks = ranks_in(grid.rank, block.length, grid.ends)
    most = ranks - 1 if block.start + (ranks - 1) * grid.rank + MM <= block.end else ranks - 2
    if grid.pattern is Pattern.RINGS or most < 1:
        raise PlanError(_("{crop} has but one rank here: there is nothing to split").format(crop=crop))
    taken = max(1, min(most, (at - block.start + grid.rank // 2) // grid.rank))
    end = block.start + max(MM, length_of_ranks(grid.rank, taken, grid.ends))
    return _Cut(end, max(end, block.start + taken * grid.rank))


def _by_length(plan: Plan, planting: Planting, block: Layout, cut: _Cut) -> tuple[dict[str, Any], dict[str, Any]]:
    """Both parts by their lengths."""
    units, none = plan.place.units, {"plants": None, "slack": None, "round_up_to": None}
    first = {"start": start_of(planting, block.start, units), "length": length_of(cut.end - block.start, units)}
    rest = {"start": length_of(cut.start, units), "length": length_of(block.end - cut.start, units)}
    return first | none, rest | none


def _by_plants(
    split: Plan, block: Layout, cut: _Cut, first: dict[str, Any], rest: dict[str, Any]
) -> tuple[dict[str, Any], dict[str, Any]]:
    """Both parts by their plants where these ruled before; what the block had to spare lies at the foot end."""
    plants = layout_in(split, block.planting).plants
    wanted = block.wanted or 0
    if not 0 < plants < wanted:
        return first, rest
    by_plants = {"plants": wanted - plants, "length": None}
    needed = split_planting(split, block.planting, {}, rest | by_plants)
    spare = block.end - layout_in(needed, needed.plantings[-1].id).end
    slack = length_of(spare, split.place.units) if spare > 0 else None
    whole = split_planting(split, block.planting, {"plants": plants, "length": None}, {})
    fits = layout_in(whole, block.planting).end == cut.end
    return first | ({"plants": plants, "length": None} if fits else {}), rest | by_plants | {"slack": slack}


def try_join(plan: Plan, planting_id: str, way: int) -> Parts:
    """A planting joined with the like one beside it; raises PlanError where there is none, or it is not alike."""
    beside = needed_neighbour(plan, planting_id, way)
    block = layout_in(plan, planting_id)
    head, foot = (block, beside) if way == FOOT else (beside, block)
    first, second = planting_of(plan, head.planting), planting_of(plan, foot.planting)
    _check_alike(plan, first, second)
    between = _check_near(plan, head, foot)
    fields = _joined_fields(plan, first, second, head, foot)
    after = join_plantings(plan, first.id, second.id, fields)
    if head.wanted is not None and foot.wanted is not None:
        by_plants = fields | {"length": None, "plants": head.plants + foot.plants}
        end = layout_in(join_plantings(plan, first.id, second.id, by_plants), first.id).end
        spare = foot.end - between - end
        slack = {"slack": length_of(spare, plan.place.units)} if spare > 0 else {}
        after = join_plantings(plan, first.id, second.id, by_plants | slack)
    trial = _trial(after, first.id, head.start, (first.id,))
    return Parts(trial, head.plants, foot.plants, layout_in(after, first.id).plants)


def _check_alike(plan: Plan, first: Planting, second: Planting) -> None:
    crop = crop_of(plan, first.crop).name
    if first.crop != second.crop:
        other = crop_of(plan, second.crop).name
        raise PlanError(_("{crop} cannot be joined with {other}").format(crop=crop, other=other))
    if dates_of(plan, first) != dates_of(plan, second):
        raise PlanError(_("both are {crop}, but their dates differ").format(crop=crop))
    if first.order and second.order and first.order != second.order:
        raise PlanError(_("both are {crop}, but for two orders").format(crop=crop))
    if evolve(first, **_OWN_TO_EACH) != evolve(second, **_OWN_TO_EACH):
        raise PlanError(_("both are {crop}, but they do not stand in the same pattern").format(crop=crop))
    if added_up(first.actual, second.actual) is None and (first.actual or second.actual):
        raise PlanError(_("both are {crop}, but not the same is recorded of them").format(crop=crop))
    if (first.sow_cells is None) != (second.sow_cells is None):
        raise PlanError(
            _("both are {crop}, but so many cells are to be sown for one of them alone").format(crop=crop)
        )


def _check_near(plan: Plan, head: Layout, foot: Layout) -> int:
    """The gap between two blocks that goes when they are joined, beyond what lies between two of their ranks."""
    bed, between = bed_of(plan, head.bed), foot.start - head.end
    own = max(0, head.grid.rank - sum(head.grid.ends))
    if between > max(own, bed.gap.nm if bed.gap else 0):
        crop = crop_of(plan, head.crop).name
        raise PlanError(_("the two blocks of {crop} do not touch: move one up first").format(crop=crop))
    return between if between > own else 0


def _joined_fields(plan: Plan, first: Planting, second: Planting, head: Layout, foot: Layout) -> dict[str, Any]:
    units = plan.place.units
    notes = dict.fromkeys(note for note in (first.note, second.note) if note)
    known = dict(first.unknown)
    return {
        "start": start_of(first, head.start, units),
        "length": length_of(foot.end - head.start, units),
        "plants": None,
        "slack": None,
        "round_up_to": None,
        "order": first.order or second.order,
        "in_ground": first.in_ground or second.in_ground,
        "out": first.out or second.out,
        "note": "\n".join(notes),
        "actual": added_up(first.actual, second.actual),
        "sow_cells": None if first.sow_cells is None else first.sow_cells + (second.sow_cells or 0),
        "unknown": (*first.unknown, *(one for one in second.unknown if one[0] not in known)),
    }


def _trial(after: Plan, planting_id: str, at: int, about: tuple[str, ...]) -> Trial:
    bed = planting_of(after, planting_id).bed
    return Trial(after, bed, planting_id, snap=Snap(at, Pull.READING), against=against(after, about))
