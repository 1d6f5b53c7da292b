"""Beds on the ground by hand: moved, and turned about the head's end of their base line; nothing in them changes."""

from fractions import Fraction
from math import atan2, degrees, hypot

from gardenplot.gestures.drags import drag
from gardenplot.gestures.ground_snaps import ground_snaps, turn_snap
from gardenplot.gestures.snap import Pull, Snap, grain, snap, step_at
from gardenplot.gestures.stage import Gesture, Pointer, Stage, Trial
from gardenplot.plan import Plan
from gardenplot.plan.edits import move_bed, turn_bed
from gardenplot.plan.ground import Frame, frames_of, standing_of
from gardenplot.units import LONGEST, Length, degrees_of, length_of
from gardenplot.words import _

MOVE = _("Move bed {bed} on the ground")
TURN = _("Turn bed {bed} on the ground")
FINEST_TURN = Fraction(1, 10)
"""Degrees to which the hand turns a bed."""
_PULLS = Fraction(5, 2)
"""Degrees within which a direction draws."""


def move_on_ground(stage: Stage, bed_id: str, press: Pointer) -> Gesture:
    """Move a bed by the place where it was taken hold of."""
    plan, frame = stage.plan, frames_of(stage.plan)[bed_id]
    grip = press.x - frame.x, press.y - frame.y
    yield from drag(stage, lambda pointer: try_bed_at(plan, bed_id, pointer, grip), MOVE)


def turn_on_ground(stage: Stage, bed_id: str, press: Pointer) -> Gesture:
    """Swing a bed round the head's end of its base line by the place where it was taken hold of."""
    plan, frame = stage.plan, frames_of(stage.plan)[bed_id]
    grip = _direction(frame, press) - frame.turn
    yield from drag(stage, lambda pointer: try_bed_towards(plan, bed_id, pointer, grip), TURN)


def try_bed_at(plan: Plan, bed_id: str, pointer: Pointer, grip: tuple[int, int] = (0, 0)) -> Trial:
    """A bed moved to the pointer, which holds it `grip` nm from the head's end of its base line."""
    frame, units = frames_of(plan)[bed_id], plan.place.units
    seen, place = Frame(0, 0, frame.turn), (pointer.x - grip[0], pointer.y - grip[1])
    wanted, before = seen.from_ground(*place), seen.from_ground(frame.x, frame.y)
    along, across = (
        snap(round(wanted[axis]), (*pulls, Snap(round(before[axis]), Pull.KEPT)), units, reach, free=pointer.free)
        for axis, (pulls, reach) in enumerate(
            zip(ground_snaps(plan, bed_id, wanted), (pointer.reach, pointer.reach_across), strict=True)
        )
    )
    if (along.pull, across.pull) == (Pull.KEPT, Pull.KEPT):
        return _moved(plan, bed_id, (frame.x, frame.y), along, across)
    if frame.is_square:
        return _moved(plan, bed_id, _whole(seen.to_ground(along.at, across.at)), along, across)
    return _moved(plan, bed_id, _aslant(plan, pointer, seen, (along, across), wanted, place), along, across)


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


def try_bed_by(plan: Plan, bed_id: str, by: tuple[int, int]) -> Trial:
    """A bed moved by so many nm to the right and downwards, also past the lines through the peg."""
    frame = frames_of(plan)[bed_id]
    x, y = frame.x + by[0], frame.y + by[1]
    return _moved(plan, bed_id, (x, y), Snap(x, Pull.READING), Snap(y, Pull.READING))


def _moved(plan: Plan, bed_id: str, to: tuple[int, int], along: Snap, across: Snap) -> Trial:
    """A plan with a bed elsewhere; a distance that stays the same stays as it was typed."""
    x, y = (max(-LONGEST, min(at, LONGEST)) for at in to)
    before, frame = standing_of(plan, bed_id), frames_of(plan)[bed_id]
    if (x, y) == (frame.x, frame.y):
        return Trial(plan, bed_id, snap=along, across=across)
    kept = (before.x, before.y) if before else (None, None)
    after = move_bed(plan, bed_id, _kept(kept[0], x, plan), _kept(kept[1], y, plan))
    return Trial(after, bed_id, snap=along, across=across)


def _kept(before: Length | None, nm: int, plan: Plan) -> Length:
    return before if before is not None and before.nm == nm else length_of(nm, plan.place.units)


def try_bed_towards(plan: Plan, bed_id: str, pointer: Pointer, grip: Fraction = Fraction(0)) -> Trial:
    """A bed turned towards the pointer, which holds it `grip` degrees from the way of its base line."""
    frame = frames_of(plan)[bed_id]
    wanted = (_direction(frame, pointer) - grip) % 360
    drawn = None if pointer.free else turn_snap(plan, bed_id, wanted, _PULLS)
    turn, pull = drawn or (round(wanted / FINEST_TURN) * FINEST_TURN % 360, Pull.READING)
    return _turned(plan, bed_id, turn, Snap(0, pull))


def _direction(frame: Frame, pointer: Pointer) -> Fraction:
    """The way from the head's end of a base line to the pointer, in degrees clockwise from the right."""
    right, down = pointer.x - frame.x, pointer.y - frame.y
    if hypot(right, down) == 0:
        return frame.turn
    return Fraction(round(degrees(atan2(down, right)) * 1000), 1000) % 360


def try_turn_by(plan: Plan, bed_id: str, by: Fraction) -> Trial:
    """A bed turned by so many degrees clockwise."""
    return _turned(plan, bed_id, (frames_of(plan)[bed_id].turn + by) % 360, Snap(0, Pull.READING))


def _turned(plan: Plan, bed_id: str, turn: Fraction, drawn: Snap) -> Trial:
    if turn == frames_of(plan)[bed_id].turn:
        return Trial(plan, bed_id, snap=drawn)
    return Trial(turn_bed(plan, bed_id, degrees_of(turn)), bed_id, snap=drawn)
