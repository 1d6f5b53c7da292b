"""Plantings that claim more of a bed than it has: each whole on its own, and placed one after another.

Whoever is placed first has the choice: it stays where it stands if that is free, else it takes the first gap that
holds it whole, else the gap that holds most of it.
"""

from collections.abc import Collection, Iterable, Sequence
from typing import NamedTuple

from attrs import evolve

from gardenplot.layout import Ground, Layout, ground_for, has_room, lay_out_plan
from gardenplot.layout.bed import grown_of
from gardenplot.layout.block import lay_out, length_at, sized
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Plan, Planting, bed_of, fresh_id
from gardenplot.plan.find import with_their_own
from gardenplot.plan.in_ground import check_stays, is_in_ground
from gardenplot.plan.series import SHARED, without_lone
from gardenplot.plan.valid import check
from gardenplot.units import Length, M, length_of
from gardenplot.words import _

_ENDLESS = 1000 * M
"""Longer than any bed."""


def can_give_way(planting: Planting) -> bool:
    """Whether a planting may be moved and made smaller: not in the ground, no place kept, no trays, no rings."""
    is_kept = planting.keep_clear is not None or planting.hardens is not None
    return not is_kept and not is_in_ground(planting) and planting.pattern is not Pattern.RINGS


def pinned(plan: Plan, meant: Plan | None = None) -> Plan:
    """The plan with the place where it stands now written into each planting that has none and is not in the ground.

    So none of them is moved by what becomes of another one. With a plan as it was `meant`, where they stand in that.
    """
    at = {layout.planting: layout for laid in lay_out_plan(meant or plan) for layout in laid.layouts}
    return evolve(plan, plantings=tuple(_pinned(plan, one, at[one.id]) for one in plan.plantings))


def _pinned(plan: Plan, one: Planting, layout: Layout) -> Planting:
    if is_in_ground(one) or one.pattern is Pattern.RINGS or layout.start < 0:
        return one
    units = plan.place.units
    start = one.start or length_of(layout.start, units)
    fills = one.plants is None and one.length is None and one.order is None
    return evolve(one, start=start, length=length_of(layout.length, units) if fills and layout.length else one.length)


def whole_at(plan: Plan, planting: Planting, start: int, bed: Bed | None = None) -> Layout:
    """The layout of a planting as if it were alone in its bed, from a tape reading in nm on."""
    bed, one = bed or bed_of(plan, planting.bed), grown_of(plan, planting)
    size = sized(bed, one.crop, planting, one.order)
    end = start + length_at(bed, one.crop, planting, size, start)
    return lay_out(bed, one.crop, planting, size, (start, end), one.wider)


def whole_plants(plan: Plan, planting: Planting) -> int:
    """The plants of a planting that has all the room it asks for."""
    bed = bed_of(plan, planting.bed)
    endless = evolve(bed, length=length_of(_ENDLESS, plan.place.units)) if is_plain(bed) else bed
    return whole_at(plan, planting, bed.zone[0], endless).plants


def held_in(plan: Plan, planting: Planting, start: int, end: int) -> Layout:
    """The layout of as much of a planting as the ground between two tape readings in nm holds."""
    length = length_of(end - start, plan.place.units)
    return whole_at(plan, evolve(planting, length=length, plants=None, slack=None, round_up_to=None), start)


def of_size(planting: Planting, plants: int) -> Planting:
    """A planting with so many plants, whatever said its size before."""
    return evolve(planting, plants=plants, length=None, slack=None, round_up_to=None)


def placed_whole(plan: Plan, wanted: Planting, without: Collection[str] = ()) -> Planting | None:
    """A planting where it stands whole: where it is, else in the first gap of its bed that holds it; None if none."""
    gaps = ground_for(plan, wanted, wanted.bed, without).gaps()
    starts = [(start, start, end) for start, end in gaps]
    if wanted.start is not None:
        at = wanted.start.nm
        starts = [*((at, start, end) for start, end in gaps if start <= at < end), *starts]
    for at, start, end in starts:
        layout = whole_at(plan, wanted, at)
        if has_room(layout.grid) and layout.plants and start <= layout.start and layout.end <= end:
            return evolve(wanted, start=_reading(plan, wanted, at))
    return None


def placed_in_part(plan: Plan, wanted: Planting, without: Collection[str] = ()) -> Planting | None:
    """As much of a planting as the gap holds that holds most of it; None where none holds any."""
    gaps = ground_for(plan, wanted, wanted.bed, without).gaps()
    held = [held_in(plan, wanted, start, end) for start, end in gaps if end > start]
    most = max(held, key=lambda layout: layout.plants, default=None)
    if most is None or not most.plants:
        return None
    return evolve(of_size(wanted, most.plants), start=_reading(plan, wanted, most.start))


def arranged(plan: Plan, wanted: Sequence[Planting]) -> Plan:
    """The plan with plantings placed one after another; one that finds no ground at all is left out."""
    waiting = [one.id for one in wanted]
    for one in wanted:
        waiting.remove(one.id)
        there = placed_whole(plan, one, waiting) or placed_in_part(plan, one, waiting)
        plan = without_planting(plan, one.id) if there is None else with_planting(plan, there)
    return plan


class Overflow(NamedTuple):
    """By how much a planting is too long for the best gap of its bed, from where to where that gap is, in nm."""

    short: int
    begins: int
    ends: int


def overflow(plan: Plan, wanted: Planting, without: Collection[str] = ()) -> Overflow:
    """By how many nm the best gap of its bed is too short for a planting, and where that gap is.

    Behind the last block a gap counts even where nothing is left of it, with the gap that is kept before it.
    """
    ground = ground_for(plan, wanted, wanted.bed, without)
    rooms = ((at, ground.end_of_room(at)) for at in _beginnings(ground))
    return min(Overflow(whole_at(plan, wanted, at).end - end, at, end) for at, end in rooms)


def _beginnings(ground: Ground) -> list[int]:
    """Where a block may begin without standing in another one."""
    ends = (last + ground.gap for _first, last in ground.blocks)
    starts = dict.fromkeys([ground.zone[0], *(end for end in ends if end > ground.zone[0])])
    free = [at for at in starts if not any(first <= at < last + ground.gap for first, last in ground.blocks)]
    return free or [ground.zone[0]]


def further_bed(plan: Plan, wanted: Planting, like: Bed) -> tuple[Plan, Planting]:
    """The plan with a bed more, as wide as another one and with its margins, just long enough for a planting."""
    units, head = plan.place.units, like.zone[0]
    bed = Bed(
        fresh_id("further", {one.id for one in plan.beds}), _name(plan), length_of(_ENDLESS, units),
        length_of(like.width.nm, units) if like.width.text == "" else like.width,
        head_margin=like.head_margin, foot_margin=like.foot_margin, edge=like.edge, gap=like.gap,
    )  # fmt: skip
    there = evolve(wanted, bed=bed.id, start=length_of(head, units))
    longer = evolve(plan, beds=(*plan.beds, bed))
    end = whole_at(longer, there, head).end + (like.foot_margin.nm if like.foot_margin else 0)
    return evolve(plan, beds=(*plan.beds, evolve(bed, length=length_of(end, units)))), there


def _name(plan: Plan) -> str:
    taken, number, name = {one.name for one in plan.beds}, 1, _("Further bed")
    while name in taken:
        number += 1
        name = _("Further bed {number}").format(number=number)
    return name


def with_planting(plan: Plan, planting: Planting) -> Plan:
    """The plan with a planting in place of the one with its id, or behind all others."""
    if not any(one.id == planting.id for one in plan.plantings):
        return evolve(plan, plantings=(*plan.plantings, planting))
    return evolve(plan, plantings=tuple(planting if one.id == planting.id else one for one in plan.plantings))


def without_planting(plan: Plan, planting: str) -> Plan:
    """The plan without a planting and its trays."""
    return evolve(plan, plantings=with_their_own(tuple(one for one in plan.plantings if one.id != planting)))


def settled(before: Plan, after: Plan) -> Plan:
    """A plan that came of another one, checked.

    Raises PlanError where it is not valid or moves what is in the ground.
    Plantings that were made unlike the others of their series leave it.
    """
    was = {one.id: one for one in before.plantings}
    now = tuple(_out_of_series(was.get(one.id), one) for one in after.plantings)
    left = [one for one in before.plantings if one.series and one.series not in _series_of(now, one.id)]
    return check(check_stays(before, evolve(after, plantings=without_lone(now, left))), before)


def _out_of_series(was: Planting | None, now: Planting) -> Planting:
    alike = was is not None and all(getattr(was, name) == getattr(now, name) for name in SHARED)
    return now if alike or now.series is None else evolve(now, series=None)


def _series_of(plantings: Iterable[Planting], planting: str) -> tuple[str | None, ...]:
    return tuple(one.series for one in plantings if one.id == planting)


def _reading(plan: Plan, wanted: Planting, at: int) -> Length:
    return wanted.start if wanted.start is not None and wanted.start.nm == at else length_of(at, plan.place.units)
