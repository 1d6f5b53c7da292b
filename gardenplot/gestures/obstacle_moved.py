"""Obstacles by hand: a post placed at a free spot, moved, nudged and taken away; the rows fill anew around it."""

from collections.abc import Iterator
from datetime import date
from math import hypot

from attrs import evolve

from gardenplot.drawing.handles import Grip, Handle, Point, place_of, sizes
from gardenplot.errors import PlanError
from gardenplot.gestures.drags import drag
from gardenplot.gestures.outline_drawn import aim
from gardenplot.gestures.snap import Pull, Snap, grain
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.layout import free_on, lay_out_bed
from gardenplot.layout.zone import held
from gardenplot.plan import Bed, Obstacle, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.units import Length, Units, length_of, parse_length
from gardenplot.words import _

PLACE = _("Place {obstacle} in {bed}")
MOVE = _("Move {obstacle} in {bed}")
_POSTS = {Units.METRIC: ("12 cm", "10 cm")}
"""Across a post and what is kept clear of it, common practice, no source; else in inches."""
_POST_IN_INCHES = ("4 1/2 in", "4 in")


def move_obstacle(stage: Stage, bed_id: str, number: int, press: Pointer) -> Gesture:
    """Move an obstacle by the place where it was taken hold of."""
    plan = stage.plan
    obstacle = bed_of(plan, bed_id).obstacles[number]
    x, y = place_of(obstacle)
    grip = press.x - x, press.y - y
    yield from drag(stage, lambda pointer: try_obstacle(plan, bed_id, number, pointer, grip), MOVE)


def try_obstacle(plan: Plan, bed_id: str, number: int, pointer: Pointer, grip: Point = (0, 0)) -> Trial:
    """An obstacle moved to the pointer, which holds it `grip` nm from its middle."""
    x, y = place_of(bed_of(plan, bed_id).obstacles[number])
    held = evolve(pointer, x=pointer.x - grip[0], y=pointer.y - grip[1])
    along, across = aim(held, (), plan.place.units, ((x,), (y,)))
    return _placed(plan, bed_id, number, along, across)


def try_obstacle_by(plan: Plan, bed_id: str, number: int, by: Point) -> Trial:
    """An obstacle moved by so many nm along and across, no further than to the ends and sides of its bed."""
    x, y = place_of(bed_of(plan, bed_id).obstacles[number])
    return _placed(plan, bed_id, number, Snap(x + by[0], Pull.READING), Snap(y + by[1], Pull.READING))


def _placed(plan: Plan, bed_id: str, number: int, along: Snap, across: Snap) -> Trial:
    """A plan with an obstacle elsewhere in its bed; a reading that stays the same stays as it was typed."""
    bed, units = bed_of(plan, bed_id), plan.place.units
    before = bed.obstacles[number]
    x, y = max(0, min(along.at, bed.length.nm)), max(0, min(across.at, bed.width.nm))
    moved = evolve(before, x=_kept(before.x, x, units), y=_kept(before.y, y, units))
    obstacles = (*bed.obstacles[:number], moved, *bed.obstacles[number + 1 :])
    after = change_bed(plan, bed_id, obstacles=obstacles)
    return Trial(after, bed_id, handle=Handle(Grip.OBSTACLE, number), snap=along, across=across)


def _kept(before: Length, nm: int, units: Units) -> Length:
    return before if before.nm == nm else length_of(nm, units)


def try_without_obstacle(plan: Plan, bed_id: str, number: int) -> Trial:
    """A bed with one obstacle less."""
    obstacles = bed_of(plan, bed_id).obstacles
    return Trial(change_bed(plan, bed_id, obstacles=(*obstacles[:number], *obstacles[number + 1 :])), bed_id)


def try_post(plan: Plan, bed_id: str, day: date | None) -> Trial:
    """A new post where nothing is planted on a day, else between the plants; raises PlanError where none has room."""
    bed, units = bed_of(plan, bed_id), plan.place.units
    across, clear = (parse_length(text) for text in _POSTS.get(units, _POST_IN_INCHES))
    for x, y in _spots(plan, bed, day, 2 * clear.nm + across.nm):
        if all(_is_apart(one, (x, y), across.nm // 2 + clear.nm) for one in bed.obstacles):
            break
    else:
        raise PlanError(_("{bed} has no room for a post").format(bed=bed.name))
    post = Obstacle(_fresh_name(bed), length_of(x, units), length_of(y, units), diameter=across, keep_clear=clear)
    handle = Handle(Grip.OBSTACLE, len(bed.obstacles))
    return Trial(change_bed(plan, bed_id, obstacles=(*bed.obstacles, post)), bed_id, handle=handle)


def _spots(plan: Plan, bed: Bed, day: date | None, apart: int) -> Iterator[Point]:
    """Places half across the bed: a quarter into what is left over, then from the bed's middle towards both ends."""
    step = grain(plan.place.units)
    leftover = sorted(free_on(lay_out_bed(plan, bed), day).leftover, key=lambda one: (-one.length, one.start))
    middle = bed.length.nm // 2
    outwards = (middle + side * number * apart for number in range(middle // apart + 1) for side in (-1, 1))
    for reading in (*(one.start + one.length // 4 for one in leftover), *outwards):
        x = reading // step * step
        for first, last in held(bed, x, x, across=True):
            yield x, (first + last) // 2 // step * step


def _is_apart(obstacle: Obstacle, place: Point, least: int) -> bool:
    """Whether an obstacle, with what is kept clear of it, leaves so many nm round a place."""
    x, y = place_of(obstacle)
    half, clear = hypot(*sizes(obstacle)) / 2, obstacle.keep_clear.nm if obstacle.keep_clear else 0
    return hypot(place[0] - x, place[1] - y) >= half + clear + least


def _fresh_name(bed: Bed) -> str:
    """A name that no obstacle of the bed has: post, post 2, post 3 ..."""
    taken, name, number = {one.name for one in bed.obstacles}, _("post"), 1
    while (name if number == 1 else f"{name} {number}") in taken:
        number += 1
    return name if number == 1 else f"{name} {number}"
