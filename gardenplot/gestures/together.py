"""Plantings moved together, one or many: they keep their distances, leave copies, push neighbours along."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import cached_property

from attrs import Factory, evolve, frozen

from gardenplot.findings import Finding, find_in_bed
from gardenplot.gestures.kept import kept_without_order, layout_in, size_kept, start_of
from gardenplot.gestures.push import FOOT, HEAD, Push, make_room, push
from gardenplot.gestures.snap import NO_MARKS, Marks, Pull, Snap, marks_of, snap, snaps_of
from gardenplot.gestures.stage import Pointer, Pushed, Trial
from gardenplot.layout import ground_for, lay_out_bed
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.plan.find import only
from gardenplot.plan.several import Fields, change_plantings, copy_plantings
from gardenplot.words import _


def against(plan: Plan, plantings: Sequence[str]) -> tuple[Finding, ...]:
    """What cannot be done about some plantings, each said of one of them, the most serious first."""
    beds = dict.fromkeys(planting_of(plan, one).bed for one in plantings)
    found = (one for bed in beds for one in find_in_bed(lay_out_bed(plan, bed_of(plan, bed))) if one.cannot_be_done)
    return tuple(_said_of(one, plantings) for one in found if one.planting in plantings or one.other in plantings)


def _said_of(finding: Finding, plantings: Sequence[str]) -> Finding:
    """An overlap told from the side of the plantings that are about to be moved."""
    if finding.planting in plantings:
        return finding
    return evolve(finding, planting=finding.other, other=finding.planting)


def trial_of(after: Plan, plantings: Sequence[str], drawn: Snap, pushed: Sequence[Pushed] = ()) -> Trial:
    """A trial about some plantings of a plan, of which the first leads, and about those that they push."""
    lead, *others = plantings
    return Trial(
        after,
        planting_of(after, lead).bed,
        lead,
        snap=drawn,
        against=against(after, (*plantings, *(one.planting for one in pushed))),
        others=tuple(others),
        pushed=tuple(pushed),
    )


@frozen
class Taken:
    """Plantings that the hand has taken hold of, of which the first leads, `grip` nm from its start.

    `marks` are what other beds draw it to, `dated` the fields of those that go into the ground on another day.
    """

    plan: Plan
    plantings: tuple[str, ...]
    grip: int = 0
    marks: Marks = NO_MARKS
    dated: Mapping[str, Fields] = Factory(dict)

    @property
    def lead(self) -> str:
        """The planting under the hand."""
        return self.plantings[0]

    @property
    def starts(self) -> dict[str, int]:
        """Where each begins, in nm."""
        return {one: layout_in(self.plan, one).start for one in self.plantings}

    @cached_property
    def bed(self) -> str | None:
        """The bed that all of them stand in, if they stand in one."""
        beds = {planting_of(self.plan, one).bed for one in self.plantings}
        return beds.pop() if len(beds) == 1 else None

    @cached_property
    def alone(self) -> "Taken":
        """The same in a plan of that bed alone, in which all is found the sooner; trays may need more than that."""
        near = only(self.plan, self.bed) if self.bed is not None else self.plan
        is_whole = {one.id for one in near.plantings}.issuperset(self.plantings)
        return evolve(self, plan=near) if is_whole else self


def take(plan: Plan, plantings: Sequence[str], at: int, day: date | None) -> Taken:
    """Take hold of plantings where the first of them lies under a tape reading in nm."""
    grip = at - layout_in(plan, plantings[0]).start
    return Taken(plan, tuple(plantings), grip, marks_of(plan, day, without=plantings))


def try_move(taken: Taken, pointer: Pointer) -> Trial | None:
    """What was taken moved, or copied, to where the hand is; None beside all beds."""
    if pointer.bed is None:
        return None
    beds = beds_from(taken, pointer.bed)
    if beds is None:
        return nowhere(taken)
    starts, wanted = taken.starts, pointer.x - taken.grip
    candidates = _snaps(taken, beds, wanted - starts[taken.lead], copies=pointer.copies)
    weaker = _level(taken, beds, wanted, pointer.reach)
    start = snap(wanted, candidates, taken.plan.place.units, pointer.reach, free=pointer.free, weaker=weaker)
    by = start.at - starts[taken.lead]
    return _tried(taken, beds, by, start, copies=pointer.copies, pushes=pointer.push)


def try_in_place(taken: Taken, *, copies: bool = False, pushes: bool = False) -> Trial:
    """What was taken, or copies of it, at the readings where it stands: on other days, if on any."""
    beds = {one: planting_of(taken.plan, one).bed for one in taken.plantings}
    return _tried(taken, beds, 0, Snap(taken.starts[taken.lead], Pull.KEPT), copies=copies, pushes=pushes)


def try_shift(plan: Plan, plantings: Sequence[str], by: int, *, pushes: bool = False) -> Trial:
    """Plantings shifted along their beds by so many nm, perhaps pushing their neighbours along."""
    taken = Taken(plan, tuple(plantings))
    beds = {one: planting_of(plan, one).bed for one in plantings}
    return _tried(taken, beds, by, Snap(taken.starts[taken.lead] + by, Pull.READING), pushes=pushes)


def try_butted(plan: Plan, plantings: Sequence[str], way: int) -> Trial:
    """Plantings moved towards the foot or the head until one of them meets its neighbour or the margin."""
    rooms = []
    for one in plantings:
        planting, block = planting_of(plan, one), layout_in(plan, one)
        ground = ground_for(plan, planting, planting.bed, without=plantings)
        to_foot, to_head = ground.end_of_room(block.end) - block.end, block.start - ground.start_of_room(block.start)
        rooms.append(to_foot if way == FOOT else to_head)
    return try_shift(plan, plantings, way * max(0, min(rooms)))


def try_beds(plan: Plan, plantings: Sequence[str], further: int) -> Trial:
    """Plantings moved so many beds further down, each at the reading where it begins now."""
    ids = [one.id for one in plan.beds]
    at = ids.index(planting_of(plan, plantings[0]).bed) + further
    taken, beds = Taken(plan, tuple(plantings)), None
    if 0 <= at < len(ids):
        beds = beds_from(taken, ids[at])
    if beds is None:
        return nowhere(taken)
    return _tried(taken, beds, 0, Snap(taken.starts[taken.lead], Pull.READING))


def try_copies(plan: Plan, plantings: Sequence[str], beds: Mapping[str, str], by: int) -> Trial:
    """Copies of plantings in beds of their own, shifted by so many nm."""
    taken = Taken(plan, tuple(plantings))
    start = Snap(taken.starts[taken.lead] + by, Pull.NEIGHBOUR)
    return _tried(taken, beds, by, start, copies=True)


def beds_from(taken: Taken, bed: str) -> dict[str, str] | None:
    """The bed of each, so many beds further as the lead goes to another; None where there are not enough beds."""
    ids = [one.id for one in taken.plan.beds]
    now = {one: ids.index(planting_of(taken.plan, one).bed) for one in taken.plantings}
    further = ids.index(bed) - now[taken.lead]
    if not all(0 <= at + further < len(ids) for at in now.values()):
        return None
    return {one: ids[at + further] for one, at in now.items()}


def nowhere(taken: Taken) -> Trial:
    """Refuse what would have to go above the first bed or below the last one."""
    lead, alone = planting_of(taken.plan, taken.lead), len(taken.plantings) == 1
    refusal = _("there is no bed there") if alone else _("there is no bed there for all of them")
    return Trial(taken.plan, lead.bed, lead.id, others=taken.plantings[1:], refusal=refusal)


def _snaps(taken: Taken, beds: Mapping[str, str], by: int, *, copies: bool) -> Iterator[Snap]:
    """Where the lead is drawn to, since it or one of the others comes to lie by a margin or a neighbour."""
    stays = set(beds.values()) == {taken.bed}
    there, ids = _shifted(taken.alone if stays else taken, beds, by, copies=copies)
    starts = taken.starts
    for one, now in zip(taken.plantings, ids, strict=True):
        planting = evolve(planting_of(taken.plan, one), **taken.dated.get(one, {}))
        itself = evolve(planting, id="") if copies else planting
        ground = ground_for(taken.plan, itself, beds[one], without=() if copies else taken.plantings)
        back = starts[one] - starts[taken.lead]
        for candidate in snaps_of(ground, layout_in(there, now).length):
            yield evolve(candidate, at=candidate.at - back)


def _level(taken: Taken, beds: Mapping[str, str], wanted: int, reach: int) -> Iterator[Snap]:
    """Where the lead is drawn to, since it begins or ends level with a block of another bed."""
    length = layout_in(taken.plan, taken.lead).length
    yield from taken.marks.level_with(wanted, reach, beds[taken.lead])
    yield from taken.marks.level_with(wanted + length, reach, beds[taken.lead], back=length)


def _tried(
    taken: Taken, beds: Mapping[str, str], by: int, drawn: Snap, *, copies: bool = False, pushes: bool = False
) -> Trial:
    after, ids = _shifted(taken, beds, by, copies=copies)
    if copies:
        made = _push_all(taken.plan, after, ids, None) if pushes else Push(after)
        has_order = any(planting_of(taken.plan, one).order for one in taken.plantings)
        return evolve(trial_of(made.plan, ids, drawn, made.pushed), copies=True, leaves_order=has_order)
    if not pushes:
        return trial_of(after, ids, drawn)
    stays = all(planting_of(taken.plan, one).bed == bed for one, bed in beds.items())
    way = FOOT if by > 0 else HEAD
    made = _push_all(taken.plan, after, ids, way if stays else None) if by or not stays else Push(after)
    if not stays or not made.too_far or not made.pushed:
        return trial_of(made.plan, ids, drawn, made.pushed)
    by = way * max(0, abs(by) - made.too_far)
    after, ids = _shifted(taken, beds, by)
    last, made = made.last, _push_all(taken.plan, after, ids, way)
    drawn = Snap(taken.starts[taken.lead] + by, Pull.READING)
    return evolve(trial_of(made.plan, ids, drawn, made.pushed), stopped=last)


def _push_all(before: Plan, after: Plan, movers: Sequence[str], way: int | None) -> Push:
    """Push along in every bed that something moved in; without a way, push aside what is near."""
    whole = Push(after)
    for bed in dict.fromkeys(planting_of(after, one).bed for one in movers):
        here = [one for one in movers if planting_of(after, one).bed == bed]
        one = make_room(before, whole.plan, here) if way is None else push(before, whole.plan, here, way)
        farthest = max(whole, one, key=lambda each: each.too_far)
        whole = Push(one.plan, (*whole.pushed, *one.pushed), farthest.too_far, farthest.last)
    return whole


def _shifted(taken: Taken, beds: Mapping[str, str], by: int, *, copies: bool = False) -> tuple[Plan, list[str]]:
    """The plan with what was taken, or with copies of it, so many nm further and on its other days, if it has any.

    None of it comes before the tape's zero.
    """
    plan, starts = taken.plan, taken.starts
    by = max(by, -min(starts.values()))
    if (
        not by
        and not copies
        and not taken.dated
        and all(planting_of(plan, one).bed == bed for one, bed in beds.items())
    ):
        return plan, list(taken.plantings)
    changes = {}
    for one in taken.plantings:
        planting, units = planting_of(plan, one), plan.place.units
        kept = size_kept(planting, layout_in(plan, one).length, units)
        if copies:
            kept |= kept_without_order(plan, planting)
        kept |= {"bed": beds[one], "start": start_of(planting, starts[one] + by, units)}
        changes[one] = {**kept, **taken.dated.get(one, {})}
    if not copies:
        return change_plantings(plan, changes), list(taken.plantings)
    after = copy_plantings(plan, changes)
    new = iter(after.plantings[len(plan.plantings) :])
    copied = {one.id: next(new).id for one in plan.plantings if one.id in changes}
    return after, [copied[one] for one in taken.plantings]
