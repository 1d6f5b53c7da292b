"""Beds on the ground by hand, one or several as they lie to one another: moved, and turned; nothing in them changes.

A bed turns about the head's end of its base line, and those that go along with it turn about that same place.
"""

from fractions import Fraction
from math import atan2, degrees, hypot

from attrs import evolve

from gardenplot.gestures.drags import drag
from gardenplot.gestures.ground_snaps import ground_snaps, turn_snap
from gardenplot.gestures.snap import Pull, Snap, grain, snap, step_at
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.plan import Plan
from gardenplot.plan.edits import place_beds, stand_beds
from gardenplot.plan.ground import Frame, frames_of
from gardenplot.plan.lying import Standing
from gardenplot.units import LONGEST, Units, degrees_of, length_of
from gardenplot.words import _

MOVE, MOVE_ALL = _("Move bed {bed} on the ground"), _("Move {count} beds on the ground")
TURN, TURN_ALL = _("Turn bed {bed} on the ground"), _("Turn {count} beds on the ground")
FINEST_TURN = Fraction(1, 10)
"""Degrees to which the hand turns a bed."""
_PULLS = Fraction(5, 2)
"""Degrees within which a direction draws."""
Beds = tuple[str, ...]


def move_on_ground(stage: Stage, bed_id: str, press: Pointer, beside: Beds = ()) -> Gesture:
    """Move a bed by the place where it was taken hold of, and others along with it."""
    plan, frame = stage.plan, frames_of(stage.plan)[bed_id]
    grip = press.x - frame.x, press.y - frame.y
    verb = MOVE_ALL if beside else MOVE
    yield from drag(stage, lambda pointer: try_bed_at(plan, bed_id, pointer, grip, beside), verb)


def turn_on_ground(stage: Stage, bed_id: str, press: Pointer, beside: Beds = ()) -> Gesture:
    """Swing a bed round the head's end of its base line by the place where it was taken hold of, others with it."""
    plan, frame = stage.plan, frames_of(stage.plan)[bed_id]
    grip = _direction(frame, press) - frame.turn
    verb = TURN_ALL if beside else TURN
    yield from drag(stage, lambda pointer: try_bed_towards(plan, bed_id, pointer, grip, beside), verb)


def try_bed_at(plan: Plan, bed_id: str, pointer: Pointer, grip: tuple[int, int] = (0, 0), beside: Beds = ()) -> Trial:
    """A bed moved to the pointer, which holds it `grip` nm from the head's end of its base line, others with it."""
    frame, units = frames_of(plan)[bed_id], plan.place.units
    seen, place = Frame(0, 0, frame.turn), (pointer.x - grip[0], pointer.y - grip[1])
    wanted, before = seen.from_ground(*place), seen.from_ground(frame.x, frame.y)
    along, across = (
        snap(round(wanted[axis]), (*pulls, Snap(round(before[axis]), Pull.KEPT)), units, reach, free=pointer.free)
        for axis, (pulls, reach) in enumerate(
            zip(ground_snaps(plan, (bed_id, *beside), wanted), (pointer.reach, pointer.reach_across), strict=True)
        )
    )
    if (along.pull, across.pull) == (Pull.KEPT, Pull.KEPT):
        to = frame.x, frame.y
    elif frame.is_square:
        to = _whole(seen.to_ground(along.at, across.at))
    else:
        to = _aslant(plan, pointer, seen, (along, across), wanted, place)
    return Trial(_moved(plan, bed_id, to, beside), bed_id, snap=along, across=across, beside=beside)


def _aslant(
    plan: Plan,
    pointer: Pointer,
    seen: Frame,
    drawn: tuple[Snap, Snap],
    wanted: tuple[float, float],
    place: tuple[int, int],
) -> tuple[int, int]:
    """The place of a bed in any direction: on the lines that draw it, else at round distances from the peg."""
    is_drawn = [one.pull is not Pull.READING for one in drawn]
    if not any(is_drawn):
        step = grain(plan.place.units) if pointer.free else step_at(plan.place.units, pointer.reach)
        return ((place[0] + step // 2) // step * step, (place[1] + step // 2) // step * step)
    spot = [one.at if is_it else at for one, is_it, at in zip(drawn, is_drawn, wanted, strict=True)]
    return _whole(seen.to_ground(*spot))


def _whole(spot: tuple[float, float]) -> tuple[int, int]:
    return round(spot[0]), round(spot[1])


def try_bed_by(plan: Plan, bed_id: str, by: tuple[int, int], beside: Beds = ()) -> Trial:
    """A bed moved by so many nm to the right and downwards, others with it, also past the lines through the peg."""
    frame = frames_of(plan)[bed_id]
    x, y = frame.x + by[0], frame.y + by[1]
    moved = _moved(plan, bed_id, (x, y), beside)
    return Trial(moved, bed_id, snap=Snap(x, Pull.READING), across=Snap(y, Pull.READING), beside=beside)


def _moved(plan: Plan, bed_id: str, to: tuple[int, int], beside: Beds) -> Plan:
    """A plan with a bed elsewhere, and others that go with it by the same way, none farther than ground can reach."""
    frames = {one: frames_of(plan)[one] for one in (bed_id, *beside)}
    right, down = (
        max(-LONGEST - min(ends), min(by, LONGEST - max(ends)))
        for by, ends in (
            (to[0] - frames[bed_id].x, [frame.x for frame in frames.values()]),
            (to[1] - frames[bed_id].y, [frame.y for frame in frames.values()]),
        )
    )
    if (right, down) == (0, 0):
        return plan
    standings, units = _standings(plan), plan.place.units
    return stand_beds(plan, [_at(standings[one], (at.x + right, at.y + down), units) for one, at in frames.items()])


def _standings(plan: Plan) -> dict[str, Standing]:
    """Where all beds stand, those without a place where they are shown."""
    return {one.bed: one for one in place_beds(plan).ground}


def _at(before: Standing, to: tuple[int, int], units: Units) -> Standing:
    """A bed elsewhere; a distance that stays the same stays as it was typed."""
    x, y = (
        typed if typed.nm == nm else length_of(nm, units) for typed, nm in zip((before.x, before.y), to, strict=True)
    )
    return evolve(before, x=x, y=y)


def try_bed_towards(
    plan: Plan, bed_id: str, pointer: Pointer, grip: Fraction = Fraction(0), beside: Beds = ()
) -> Trial:
    """A bed turned towards the pointer, which holds it `grip` degrees off its base line, others with it."""
    frame = frames_of(plan)[bed_id]
    wanted = (_direction(frame, pointer) - grip) % 360
    drawn = None if pointer.free else turn_snap(plan, (bed_id, *beside), wanted, _PULLS)
    turn, pull = drawn or (round(wanted / FINEST_TURN) * FINEST_TURN % 360, Pull.READING)
    return Trial(_turned(plan, bed_id, turn, beside), bed_id, snap=Snap(0, pull), beside=beside)


def _direction(frame: Frame, pointer: Pointer) -> Fraction:
    """The way from the head's end of a base line to the pointer, in degrees clockwise from the right."""
    right, down = pointer.x - frame.x, pointer.y - frame.y
    if hypot(right, down) == 0:
        return frame.turn
    return Fraction(round(degrees(atan2(down, right)) * 1000), 1000) % 360


def try_turn_by(plan: Plan, bed_id: str, by: Fraction, beside: Beds = ()) -> Trial:
    """A bed turned by so many degrees clockwise, others with it."""
    turn = (frames_of(plan)[bed_id].turn + by) % 360
    return Trial(_turned(plan, bed_id, turn, beside), bed_id, snap=Snap(0, Pull.READING), beside=beside)


def _turned(plan: Plan, bed_id: str, turn: Fraction, beside: Beds) -> Plan:
    """A plan with a bed in another direction, and others that keep their place as one sees it from there."""
    frames = frames_of(plan)
    lead = frames[bed_id]
    by = (turn - lead.turn) % 360
    if not by:
        return plan
    standings, swung, units = _standings(plan), Frame(lead.x, lead.y, by), plan.place.units
    turned = [_towards(standings[bed_id], turn)]
    for one in beside:
        place = swung.to_ground(frames[one].x - lead.x, frames[one].y - lead.y)
        turned.append(_towards(_at(standings[one], _whole(place), units), (frames[one].turn + by) % 360))
    return stand_beds(plan, turned)


def _towards(standing: Standing, turn: Fraction) -> Standing:
    return evolve(standing, turn=degrees_of(turn) if turn else None)
