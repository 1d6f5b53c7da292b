"""What draws a bed on the ground: neighbours' ends and edges, a path beside them, a tunnel's lines, directions."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from attrs import frozen

from gardenplot.findings.ground import footprint
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.plan import Bed, Plan, bed_of
from gardenplot.plan.ground import Frame, corners_on_ground, frame_of, frames_of, path_width

QUARTER = Fraction(90)
STEP = Fraction(15)
"""Directions are round in steps of so many degrees."""
Spot = tuple[float, float]


@frozen
class Reach:
    """From where to where something reaches along a bed's direction and across it, in nm on the ground."""

    left: int
    top: int
    right: int
    bottom: int


def reach_along(turn: Fraction, corners: Sequence[Spot]) -> Reach:
    """The reach of corners on the ground, seen in a frame at the peg that is turned."""
    seen = [Frame(0, 0, turn).from_ground(x, y) for x, y in corners]
    xs, ys = [round(x) for x, _y in seen], [round(y) for _x, y in seen]
    return Reach(min(xs), min(ys), max(xs), max(ys))


def are_parallel(one: Fraction, other: Fraction) -> bool:
    """Whether two directions are the same or square to each other."""
    return (one - other) % QUARTER == 0


def own_reach(bed: Bed) -> Reach:
    """How far a bed reaches from the head's end of its base line."""
    return reach_along(Fraction(0), footprint(bed))


def neighbours(plan: Plan, held: Sequence[str]) -> Iterator[tuple[Frame, Bed]]:
    """All beds but those that are held, and where they lie."""
    frames = frames_of(plan)
    return ((frames[bed.id], bed) for bed in plan.beds if bed.id not in held)


def ground_snaps(plan: Plan, held: Sequence[str], wanted: Spot) -> tuple[tuple[Snap, ...], tuple[Snap, ...]]:
    """Where the first of the beds that are held may be drawn along its direction and across it, in nm from the peg.

    `wanted` is where the head's end of its base line would be without, seen in that direction. Only what lies in the
    same direction, or square to it, draws.
    """
    turn, mine = frames_of(plan)[held[0]].turn, own_reach(bed_of(plan, held[0]))
    own = Reach(
        round(wanted[0]) + mine.left, round(wanted[1]) + mine.top, round(wanted[0]) + mine.right,
        round(wanted[1]) + mine.bottom,
    )  # fmt: skip
    along, across, path = list[Snap](), list[Snap](), path_width(plan.place.units)
    for frame, bed in neighbours(plan, held):
        if are_parallel(frame.turn, turn):
            beside = reach_along(turn, [frame.to_ground(x, y) for x, y in footprint(bed)])
            along += _pulls((mine.left, mine.right), (beside.left, beside.right), path, _share(own, beside))
            across += _pulls((mine.top, mine.bottom), (beside.top, beside.bottom), path, _share(own, beside, 1))
    for tunnel in plan.tunnels:
        frame = frame_of(tunnel)
        if are_parallel(frame.turn, turn):
            walls = reach_along(turn, corners_on_ground(frame, tunnel.length.nm, tunnel.width.nm))
            for inset in {0, tunnel.cold_edge.nm if tunnel.cold_edge else 0}:
                along += _insides((mine.left, mine.right), (walls.left + inset, walls.right - inset))
                across += _insides((mine.top, mine.bottom), (walls.top + inset, walls.bottom - inset))
    return tuple(along), tuple(across)


def _share(one: Reach, other: Reach, axis: int = 0) -> bool:
    """Whether two reaches lie beside each other: along for a path across, and the other way round."""
    if axis:
        return one.left < other.right and other.left < one.right
    return one.top < other.bottom and other.top < one.bottom


def _pulls(mine: tuple[int, int], beside: tuple[int, int], path: int, is_beside: bool) -> Iterator[Snap]:
    """In line with either end of a neighbour, and where it lies beside, a path before it or behind."""
    yield Snap(beside[0] - mine[0], Pull.ALIGNED)
    yield Snap(beside[1] - mine[1], Pull.ALIGNED)
    if is_beside:
        yield Snap(beside[1] + path - mine[0], Pull.PATH)
        yield Snap(beside[0] - path - mine[1], Pull.PATH)


def _insides(mine: tuple[int, int], lines: tuple[int, int]) -> Iterator[Snap]:
    yield Snap(lines[0] - mine[0], Pull.TUNNEL)
    yield Snap(lines[1] - mine[1], Pull.TUNNEL)


def turn_snap(plan: Plan, held: Sequence[str], turn: Fraction, reach: Fraction) -> tuple[Fraction, Pull] | None:
    """The direction of a neighbour or else the round one that draws a turn, within `reach` degrees."""
    beside = {
        (frame.turn + quarter * QUARTER) % 360 for frame, _bed in neighbours(plan, held) for quarter in range(4)
    }
    beside |= {(frame_of(one).turn + quarter * QUARTER) % 360 for one in plan.tunnels for quarter in range(4)}
    rounds = {number * STEP for number in range(int(360 / STEP))}
    found = [(_apart(turn, one), one, Pull.PARALLEL) for one in beside - rounds]
    found += [(_apart(turn, one), one, Pull.SQUARE) for one in rounds]
    away, nearest, pull = min(found)
    return (nearest, pull) if away <= reach else None


def _apart(one: Fraction, other: Fraction) -> Fraction:
    """The angle between two directions in degrees."""
    return abs((one - other + 180) % 360 - 180)
