"""Neighbours pushed along: blocks that share days make room one after another, as far as the margin lets them.

Readings are counted in the way of the push, so that one rule serves both ways; towards the head they are negative.
"""

from collections.abc import Callable, Collection, Iterable

from attrs import evolve, frozen

from gardenplot.gestures.kept import size_kept
from gardenplot.gestures.stage import Pushed
from gardenplot.layout import Grown, LaidOut, compete, lay_out_bed
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.several import change_plantings
from gardenplot.units import length_of

FOOT, HEAD = 1, -1


_BEHIND_ALL = -(10**30)


@frozen
class Piece:
    """A block in the way of a push: its planting, and where it begins, ends and once began, in nm in that way."""

    grown: Grown
    start: int
    end: int
    was: int

    @property
    def planting(self) -> str:
        """The id of its planting."""
        return self.grown.planting.id


@frozen
class Push:
    """What a push comes to: the plan, who was pushed, by how many nm too far, and which planting is farthest."""

    plan: Plan
    pushed: tuple[Pushed, ...] = ()
    too_far: int = 0
    last: str | None = None


def push(before: Plan, after: Plan, movers: Collection[str], way: int) -> Push:
    """Push along what lay ahead of some plantings of one bed, in the plan before, now that they have moved.

    `way` is FOOT or HEAD.
    """
    was = {piece.planting: piece.start for piece in _pieces(_bed_of(before, movers), way) if piece.planting in movers}
    first = min(was.values())
    moved = [
        evolve(one, was=was[one.planting]) for one in _pieces(_bed_of(after, movers), way) if one.planting in was
    ]
    return _pushed(before, after, moved, way, lambda piece: piece.start >= first)


def make_room(before: Plan, after: Plan, movers: Collection[str]) -> Push:
    """Push the neighbours of plantings that are new in their bed aside, those nearer to the head towards it.

    Where a side has not room enough, more of them go the other way; where neither has, none is pushed.
    """
    laid = _bed_of(after, movers)
    new = [evolve(piece, was=_BEHIND_ALL) for piece in _pieces(laid, FOOT) if piece.planting in movers]
    first, last = min(piece.start for piece in new), max(piece.end for piece in new)
    beside = [one for one in _pieces(lay_out_bed(before, laid.bed), FOOT) if one.planting not in movers]
    middles = sorted({one.start + one.end for one in beside if one.end > first and one.start < last})
    nearest = sorted(
        (first + last, *middles, *(middle + 1 for middle in middles)), key=lambda at: abs(at - first - last)
    )
    tried = (_aside(before, after, new, at) for at in dict.fromkeys(nearest))
    return next((made for made in tried if not made.too_far), Push(after))


def _aside(before: Plan, after: Plan, new: list[Piece], twice: int) -> Push:
    """Push what lies beyond half of a reading towards the foot, and all else towards the head."""
    turned = [evolve(piece, start=-piece.end, end=-piece.start) for piece in new]
    footwards = _pushed(before, after, new, FOOT, lambda piece: piece.start + piece.end >= twice)
    headwards = _pushed(before, footwards.plan, turned, HEAD, lambda piece: piece.start + piece.end > -twice)
    pushed, too_far = (*headwards.pushed, *footwards.pushed), max(headwards.too_far, footwards.too_far)
    return evolve(headwards, pushed=pushed, too_far=too_far)


def _pushed(before: Plan, after: Plan, moved: list[Piece], way: int, is_ahead: Callable[[Piece], bool]) -> Push:
    """Push what lies ahead in the plan before; what sticks out of the zone is left alone."""
    bed = bed_of(after, moved[0].grown.planting.bed)
    movers = {piece.planting for piece in moved}
    first, limit = bed.zone if way == FOOT else (-bed.zone[1], -bed.zone[0])
    ahead = [
        piece
        for piece in _pieces(lay_out_bed(before, bed), way)
        if piece.planting not in movers and is_ahead(piece) and first <= piece.start < piece.end <= limit
    ]
    gap = bed.gap.nm if bed.gap else 0
    limit = min([limit, *(piece.start - gap for piece in ahead if _stands_fast(piece, moved))])
    ahead = [piece for piece in ahead if piece.end <= limit]
    pushed = _make_way(moved, ahead, gap)
    farthest = max((*pushed, *moved), key=lambda piece: piece.end)
    return Push(
        _placed(after, pushed, way),
        tuple(Pushed(piece.planting, way * (piece.start - piece.was)) for piece in pushed),
        max(0, farthest.end - limit),
        None if farthest.planting in movers else farthest.planting,
    )


def _stands_fast(piece: Piece, moved: Iterable[Piece]) -> bool:
    """Whether a block that is in the ground already lies in the way of blocks that move."""
    return is_in_ground(piece.grown.planting) and any(compete(one.grown, piece.grown) for one in moved)


def _make_way(moved: Iterable[Piece], ahead: Iterable[Piece], gap: int) -> tuple[Piece, ...]:
    """The blocks that must go farther, each to a gap behind whatever pushes it."""
    standing, gone = list(moved), []
    for piece in sorted(ahead, key=lambda one: one.start):
        pushers = [one.end + gap for one in standing if one.was <= piece.was and compete(one.grown, piece.grown)]
        start = max([piece.start, *pushers])
        there = evolve(piece, start=start, end=piece.end + start - piece.start)
        standing.append(there)
        if start > piece.start:
            gone.append(there)
    return tuple(gone)


def _pieces(laid: LaidOut, way: int) -> list[Piece]:
    """The blocks of a bed, turned round where the way leads to the head."""
    found = []
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        start, end = sorted((way * layout.start, way * layout.end))
        found.append(Piece(one, start, end, start))
    return found


def _bed_of(plan: Plan, movers: Iterable[str]) -> LaidOut:
    return lay_out_bed(plan, bed_of(plan, planting_of(plan, next(iter(movers))).bed))


def _placed(plan: Plan, pushed: Iterable[Piece], way: int) -> Plan:
    """The plan with pushed blocks where they went; one that filled its gap keeps its length."""
    units, changes = plan.place.units, {}
    for piece in pushed:
        start = max(0, piece.start if way == FOOT else -piece.end)
        changes[piece.planting] = {
            "start": length_of(start, units),
            **size_kept(piece.grown.planting, piece.end - piece.start, units),
        }
    return change_plantings(plan, changes)
