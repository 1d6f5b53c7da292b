"""Edits: functions that take a plan and give another one, valid and tidied, or raise PlanError."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any, TypeVar

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.plan.find import T, bed_of, by_id, crop_of, fresh_id, planting_of, plantings_in, with_their_own
from gardenplot.plan.goods import Feed
from gardenplot.plan.ground import frames_of, standing_of
from gardenplot.plan.in_ground import check_stays
from gardenplot.plan.lying import Standing, Tunnel, Walk
from gardenplot.plan.series import spread, without_lone
from gardenplot.plan.valid import check
from gardenplot.plan.value import Actual, Bed, Cover, Crop, Order, Plan, Planting, Wish
from gardenplot.units import Degrees, Length, degrees_of, length_of
from gardenplot.words import _


def change_place(plan: Plan, **changes: Any) -> Plan:
    """Change fields of the place."""
    return _checked(plan, place=evolve(plan.place, **changes))


def add_bed(plan: Plan, bed: Bed) -> Plan:
    """Add a bed below the others; its id is made fresh if it is taken."""
    return _checked(plan, beds=(*plan.beds, _fresh(bed, plan.beds)))


def change_bed(plan: Plan, bed_id: str, **changes: Any) -> Plan:
    """Change fields of a bed; its plantings stay where they are."""
    return _checked(plan, beds=_changed(plan.beds, bed_id, changes))


def copy_bed(plan: Plan, bed_id: str) -> Plan:
    """Add a bed of the same size and margins, without plantings, right below the one copied."""
    bed = bed_of(plan, bed_id)
    twin = _fresh(evolve(bed, name=_("{name}, copy").format(name=bed.name)), plan.beds)
    at = plan.beds.index(bed) + 1
    return _checked(plan, beds=(*plan.beds[:at], twin, *plan.beds[at:]))


def remove_bed(plan: Plan, bed_id: str) -> Plan:
    """Remove a bed with its plantings, covers and jugs, its place, and the wishes and feeds that were for it alone.

    Raises PlanError while something in it is in the ground.
    """
    bed = bed_of(plan, bed_id)
    gone = {wish.id for wish in plan.wishes if wish.beds == (bed_id,)}
    left = without_lone(tuple(one for one in plan.plantings if one.bed != bed_id), plantings_in(plan, bed_id))
    after = _checked(
        plan,
        beds=tuple(one for one in plan.beds if one is not bed),
        plantings=_without_wishes(left, gone),
        covers=tuple(one for one in plan.covers if one.bed != bed_id),
        jugs=tuple(one for one in plan.jugs if one.bed != bed_id),
        ground=tuple(one for one in plan.ground if one.bed != bed_id),
        wishes=_for_others(plan.wishes, bed_id),
        feeds=_for_others(plan.feeds, bed_id),
    )
    return check_stays(plan, after)


_ForBeds = TypeVar("_ForBeds", Wish, Feed)


def _for_others(parts: tuple[_ForBeds, ...], bed_id: str) -> tuple[_ForBeds, ...]:
    """Parts without a bed that they were for; those that were for no other are gone."""
    left = (part for part in parts if part.beds != (bed_id,))
    return tuple(evolve(part, beds=tuple(one for one in part.beds if one != bed_id)) for part in left)


def add_planting(plan: Plan, planting: Planting) -> Plan:
    """Add a planting; its id is made fresh if it is taken."""
    return _checked(plan, plantings=(*plan.plantings, _fresh(planting, plan.plantings)))


def add_plantings(plan: Plan, plantings: Iterable[Planting]) -> Plan:
    """Add several plantings; ids are made fresh if they are taken."""
    every = plan.plantings
    for planting in plantings:
        every = (*every, _fresh(planting, every))
    return _checked(plan, plantings=every)


def change_planting(plan: Plan, planting_id: str, **changes: Any) -> Plan:
    """Change fields of a planting; giving plants takes its length away and the other way round.

    How it is planted and how large it is changes with it in all of its series that are not in the ground. Raises
    PlanError for what places it once it is in the ground.
    """
    return check_stays(plan, suppose_planting(plan, planting_id, **changes))


def suppose_planting(plan: Plan, planting_id: str, **changes: Any) -> Plan:
    """The plan as it were with a planting changed, to see what would come of it: also of one in the ground."""
    if changes.get("plants") is not None:
        changes.setdefault("length", None)
    if changes.get("length") is not None:
        changes.setdefault("plants", None)
    changed = _changed(plan.plantings, planting_id, changes)
    return _checked(plan, plantings=spread(changed, changes.get("id", planting_id), changes))


def move_planting(plan: Plan, planting_id: str, bed_id: str, start: Length) -> Plan:
    """Move a planting to another tape reading or another bed."""
    return change_planting(plan, planting_id, bed=bed_id, start=start)


def resize_planting(plan: Plan, planting_id: str, start: Length, length: Length) -> Plan:
    """Give a planting another block; from then on its length rules, and the slack is part of it."""
    planting_of(plan, planting_id)
    return change_planting(plan, planting_id, start=start, length=length, slack=None, round_up_to=None)


def remove_planting(plan: Plan, planting_id: str) -> Plan:
    """Remove a planting; raises PlanError while it is in the ground."""
    gone = planting_of(plan, planting_id)
    left = without_lone(_without(plan.plantings, planting_id), (gone,))
    return check_stays(plan, _checked(plan, plantings=left))


def record_actual(plan: Plan, planting_id: str, came: Mapping[str, Any], kept: Mapping[str, Any]) -> Plan:
    """Record what came about of a planting; `kept` are fields that keep its block once it is in the ground."""
    one = planting_of(plan, planting_id)
    actual = evolve(one.actual or Actual(), **came)
    return change_planting(plan, planting_id, **kept, actual=None if actual == Actual() else actual)


def add_crop(plan: Plan, crop: Crop) -> Plan:
    """Add a crop; its id is made fresh if it is taken."""
    return _checked(plan, crops=(*plan.crops, _fresh(crop, plan.crops)))


def carry_crop(plan: Plan, crop: Crop) -> Plan:
    """Add a crop unless the plan carries one with that id already: the plan's own words win."""
    return plan if any(one.id == crop.id for one in plan.crops) else add_crop(plan, crop)


def change_crop(plan: Plan, crop_id: str, **changes: Any) -> Plan:
    """Change fields of a crop, for all its plantings."""
    return _checked(plan, crops=_changed(plan.crops, crop_id, changes))


def remove_crop(plan: Plan, crop_id: str) -> Plan:
    """Remove a crop that nothing uses, and its seed in store; raises PlanError while something does."""
    crop = crop_of(plan, crop_id)
    if any(one.crop == crop_id for parts in (plan.plantings, plan.orders, plan.wishes) for one in parts):
        raise PlanError(_("{name} is still planted or ordered").format(name=crop.name))
    goods = tuple(good for good in plan.goods if good.crop != crop_id)
    return _checked(plan, crops=_without(plan.crops, crop_id), goods=goods)


def add_order(plan: Plan, order: Order) -> Plan:
    """Add an order; its id is made fresh if it is taken."""
    return _checked(plan, orders=(*plan.orders, _fresh(order, plan.orders)))


def change_order(plan: Plan, order_id: str, **changes: Any) -> Plan:
    """Change fields of an order."""
    return _checked(plan, orders=_changed(plan.orders, order_id, changes))


def remove_order(plan: Plan, order_id: str, kept: Mapping[str, Mapping[str, Any]]) -> Plan:
    """Remove an order; `kept` gives for each of its plantings, by id, the fields that it had from the order."""
    orders = _without(plan.orders, order_id)
    plantings = tuple(
        evolve(one, order=None, **kept.get(one.id, {})) if one.order == order_id else one for one in plan.plantings
    )
    return _checked(plan, orders=orders, plantings=plantings)


def add_wish(plan: Plan, wish: Wish) -> Plan:
    """Add a wish; its id is made fresh if it is taken."""
    return _checked(plan, wishes=(*plan.wishes, _fresh(wish, plan.wishes)))


def change_wish(plan: Plan, wish_id: str, **changes: Any) -> Plan:
    """Change fields of a wish; what was planted for it stays as it is."""
    return _checked(plan, wishes=_changed(plan.wishes, wish_id, changes))


def remove_wish(plan: Plan, wish_id: str) -> Plan:
    """Remove a wish; what was planted for it stays."""
    return _checked(plan, wishes=_without(plan.wishes, wish_id), plantings=_without_wishes(plan.plantings, {wish_id}))


def add_cover(plan: Plan, cover: Cover) -> Plan:
    """Add hoops and cloth over a stretch of bed; the id is made fresh if it is taken."""
    return _checked(plan, covers=(*plan.covers, _fresh(cover, plan.covers)))


def change_cover(plan: Plan, cover_id: str, **changes: Any) -> Plan:
    """Change fields of a cover."""
    return _checked(plan, covers=_changed(plan.covers, cover_id, changes))


def remove_cover(plan: Plan, cover_id: str) -> Plan:
    """Remove a cover."""
    return _checked(plan, covers=_without(plan.covers, cover_id))


def place_beds(plan: Plan) -> Plan:
    """Give every bed that has no place on the ground the one where it is shown."""
    units, frames = plan.place.units, frames_of(plan)
    found = tuple(
        standing_of(plan, bed) or Standing(bed, length_of(frame.x, units), length_of(frame.y, units))
        for bed, frame in frames.items()
    )
    return plan if len(found) == len(plan.ground) else _checked(plan, ground=found)


def move_bed(plan: Plan, bed_id: str, x: Length, y: Length) -> Plan:
    """Move a bed on the ground; beds that had no place stay where they are shown. Its layouts stay as they are."""
    return _stood(plan, bed_id, x=x, y=y)


def turn_bed(plan: Plan, bed_id: str, turn: Degrees) -> Plan:
    """Turn a bed on the ground about the head's end of its base line; beds without a place stay where shown."""
    return _stood(plan, bed_id, turn=None if turn == degrees_of(Fraction(0)) else turn)


def stand_beds(plan: Plan, standings: Iterable[Standing]) -> Plan:
    """Move and turn several beds on the ground at once; beds without a place stay where they are shown."""
    wanted = {one.bed: one for one in standings}
    for bed_id in wanted:
        bed_of(plan, bed_id)
    return _checked(plan, ground=tuple(wanted.get(one.bed, one) for one in place_beds(plan).ground))


def add_tunnel(plan: Plan, tunnel: Tunnel) -> Plan:
    """Add a tunnel; its id is made fresh if it is taken."""
    return _checked(plan, tunnels=(*plan.tunnels, _fresh(tunnel, plan.tunnels)))


def change_tunnel(plan: Plan, tunnel_id: str, **changes: Any) -> Plan:
    """Change fields of a tunnel; the beds in it stay where they are."""
    return _checked(plan, tunnels=_changed(plan.tunnels, tunnel_id, changes))


def remove_tunnel(plan: Plan, tunnel_id: str) -> Plan:
    """Remove a tunnel; the beds in it stay."""
    return _checked(plan, tunnels=_without(plan.tunnels, tunnel_id))


def add_path(plan: Plan, path: Walk) -> Plan:
    """Add a path; its id is made fresh if it is taken."""
    return _checked(plan, paths=(*plan.paths, _fresh(path, plan.paths)))


def change_path(plan: Plan, path_id: str, **changes: Any) -> Plan:
    """Change fields of a path."""
    return _checked(plan, paths=_changed(plan.paths, path_id, changes))


def remove_path(plan: Plan, path_id: str) -> Plan:
    """Remove a path."""
    return _checked(plan, paths=_without(plan.paths, path_id))


def _without_wishes(plantings: tuple[Planting, ...], gone: set[str]) -> tuple[Planting, ...]:
    """The plantings, of which none is for a wish that is gone."""
    if not any(one.wish in gone for one in plantings):
        return plantings
    return tuple(evolve(one, wish=None) if one.wish in gone else one for one in plantings)


def _stood(plan: Plan, bed_id: str, **changes: Any) -> Plan:
    bed_of(plan, bed_id)
    placed = place_beds(plan)
    ground = tuple(evolve(one, **changes) if one.bed == bed_id else one for one in placed.ground)
    return _checked(plan, ground=ground)


def _checked(plan: Plan, **changes: Any) -> Plan:
    after = evolve(plan, **changes)
    after = evolve(after, plantings=with_their_own(after.plantings)) if "plantings" in changes else after
    return plan if after == plan else check(after, plan)


def _fresh(part: T, others: tuple[T, ...]) -> T:
    changed: T = evolve(part, id=fresh_id(part.id, {one.id for one in others}))  # type: ignore[misc]  # attrs classes all
    return changed


def _without(parts: tuple[T, ...], part_id: str) -> tuple[T, ...]:
    gone = by_id(parts, part_id)
    return tuple(one for one in parts if one is not gone)


def _changed(parts: tuple[T, ...], part_id: str, changes: dict[str, Any]) -> tuple[T, ...]:
    wanted = by_id(parts, part_id)
    return tuple(evolve(part, **changes) if part is wanted else part for part in parts)  # type: ignore[misc]  # attrs too
