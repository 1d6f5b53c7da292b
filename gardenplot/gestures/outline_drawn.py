"""A bed's outline by hand: corners moved, added and taken away; each change gives a whole plan or says why not."""

from collections.abc import Iterable

from attrs import evolve

from gardenplot.drawing.handles import Grip, Handle, Point, outline_of
from gardenplot.errors import PlanError
from gardenplot.gestures.drags import drag
from gardenplot.gestures.snap import Pull, Snap, grain, snap
from gardenplot.gestures.stage import Gesture, Pointer, Sketch, Stage, Trial
from gardenplot.plan import Bed, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.plan.shapes import shapes_of
from gardenplot.units import Length, Units, length_of
from gardenplot.words import _

Corner = tuple[Length, Length]
RESHAPE = _("Reshape bed {bed}")


def move_corner(stage: Stage, bed_id: str, number: int, press: Pointer) -> Gesture:
    """Move a corner by the place where it was taken hold of; on its neighbour it is taken away."""
    plan = stage.plan
    x, y = outline_of(bed_of(plan, bed_id))[number]
    grip = press.x - x, press.y - y
    yield from drag(stage, lambda pointer: try_corner(plan, bed_id, number, pointer, grip), RESHAPE)


def add_corner(stage: Stage, bed_id: str, side: int) -> Gesture:
    """Draw a new corner out of a side."""
    plan = stage.plan
    yield from drag(stage, lambda pointer: try_new_corner(plan, bed_id, side, pointer), RESHAPE)


def outlined(plan: Plan, bed_id: str) -> Plan:
    """A plan in which a rectangle has its four corners for an outline; raises PlanError for other typed shapes."""
    bed = bed_of(plan, bed_id)
    if bed.outline:
        return plan
    length, width, zero = bed.length, bed.width, length_of(0, plan.place.units)
    if shapes_of(bed) or bed.map_length is not None:
        raise PlanError(_("{bed}: its shape is typed").format(bed=bed.name))
    return with_outline(plan, bed_id, ((zero, zero), (length, zero), (length, width), (zero, width)))


def with_outline(plan: Plan, bed_id: str, outline: tuple[Corner, ...]) -> Plan:
    """Give a bed another outline; its length and width are what the outline reaches. Raises PlanError."""
    bed = bed_of(plan, bed_id)
    if not outline:
        raise PlanError(_("an outline needs three points or more"))
    return change_bed(plan, bed_id, outline=outline, **_reach(bed, outline))


def _reach(bed: Bed, outline: tuple[Corner, ...]) -> dict[str, Length]:
    reach = {"length": max(x.nm for x, _y in outline), "width": max(y.nm for _x, y in outline)}
    before = {"length": bed.length, "width": bed.width} if bed.outline else {}
    return {
        name: before[name] if name in before and before[name].nm == nm else Length(nm, "")
        for name, nm in reach.items()
    }


def try_corner(plan: Plan, bed_id: str, number: int, pointer: Pointer, grip: Point = (0, 0)) -> Trial:
    """A corner moved to the pointer, which holds it `grip` nm from its place."""
    bed = bed_of(plan, bed_id)
    x, y = outline_of(bed)[number]
    held = evolve(pointer, x=pointer.x - grip[0], y=pointer.y - grip[1])
    return _drawn(plan, bed_id, bed.outline, number, held, ((x,), (y,)))


def try_new_corner(plan: Plan, bed_id: str, side: int, pointer: Pointer) -> Trial:
    """A side with a new corner at the pointer."""
    outline, number = bed_of(plan, bed_id).outline, side + 1
    return _drawn(plan, bed_id, (*outline[:number], outline[side], *outline[number:]), number, pointer, ((), ()))


def _drawn(
    plan: Plan,
    bed_id: str,
    outline: tuple[Corner, ...],
    number: int,
    pointer: Pointer,
    kept: tuple[Iterable[int], ...],
) -> Trial:
    points = tuple((x.nm, y.nm) for x, y in outline)
    beside = points[number - 1], points[(number + 1) % len(points)]
    along, across = aim(pointer, beside, plan.place.units, kept)
    at = along.at, across.at
    if at in beside:
        held = beside.index(at)
        return _without(plan, bed_id, outline, number, (number - 1 if held == 0 else number))
    trial = _placed(plan, bed_id, outline, number, at)
    return evolve(trial, snap=along, across=across)


def aim(
    pointer: Pointer, corners: Iterable[Point], units: Units, kept: tuple[Iterable[int], ...] = ((), ())
) -> tuple[Snap, Snap]:
    """Where the hand is drawn to, along and across: in line with corners, back to what was, or to a round reading.

    Neither is ever less than nothing.
    """
    corners = tuple(corners)
    snaps = []
    for axis, (place, reach) in enumerate(((pointer.x, pointer.reach), (pointer.y, pointer.reach_across))):
        pulls = [Snap(at, Pull.KEPT) for at in kept[axis]] + [Snap(one[axis], Pull.CORNER) for one in corners]
        drawn = snap(place, pulls, units, reach, free=pointer.free)
        snaps.append(drawn if drawn.at >= 0 else Snap(0, Pull.READING))
    return snaps[0], snaps[1]


def _placed(plan: Plan, bed_id: str, outline: tuple[Corner, ...], number: int, at: Point) -> Trial:
    """An outline with one corner elsewhere; a reading that stays the same stays as it was typed."""
    corner = tuple(
        before if before.nm == nm else length_of(nm, plan.place.units)
        for before, nm in zip(outline[number], at, strict=True)
    )
    after = (*outline[:number], (corner[0], corner[1]), *outline[number + 1 :])
    return _tried(plan, bed_id, after, number, Handle(Grip.CORNER, number))


def _without(plan: Plan, bed_id: str, outline: tuple[Corner, ...], number: int, held: int) -> Trial:
    after = (*outline[:number], *outline[number + 1 :])
    return _tried(plan, bed_id, after, held % len(after), None)


def _tried(plan: Plan, bed_id: str, outline: tuple[Corner, ...], held: int, handle: Handle | None) -> Trial:
    sketch = Sketch(tuple((x.nm, y.nm) for x, y in outline), held)
    try:
        return Trial(with_outline(plan, bed_id, outline), bed_id, handle=handle, sketch=sketch)
    except PlanError as error:
        return Trial(plan, bed_id, handle=handle, sketch=sketch, refusal=reason(error))


def reason(error: PlanError) -> str:
    """The sentence of an error, without the place in a plan file that it may begin with: "beds[0].outline: ..."."""
    place, colon, says = str(error).partition(": ")
    return says if colon and place.startswith("beds[") else str(error)


def try_corner_by(plan: Plan, bed_id: str, number: int, by: Point) -> Trial:
    """A corner moved by so many nm along and across, no further than to nothing."""
    bed = bed_of(plan, bed_id)
    x, y = outline_of(bed)[number]
    return _placed(plan, bed_id, bed.outline, number, (max(0, x + by[0]), max(0, y + by[1])))


def try_corner_after(plan: Plan, bed_id: str, number: int) -> Trial:
    """A new corner in the middle of the side that follows a corner, where a tape can be read."""
    outline, step = bed_of(plan, bed_id).outline, grain(plan.place.units)
    one, other = outline[number], outline[(number + 1) % len(outline)]
    middle = tuple(
        (a.nm + b.nm + step) // (2 * step) * step if a.nm != b.nm else a.nm for a, b in zip(one, other, strict=True)
    )
    return _placed(
        plan, bed_id, (*outline[: number + 1], one, *outline[number + 1 :]), number + 1, (middle[0], middle[1])
    )


def try_without_corner(plan: Plan, bed_id: str, number: int) -> Trial:
    """An outline with one corner less."""
    return _without(plan, bed_id, bed_of(plan, bed_id).outline, number, number - 1)
