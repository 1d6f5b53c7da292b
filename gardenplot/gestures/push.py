"""Neighbours pushed along: blocks that share days make room one after another, as far as the margin lets them.

Readings are counted in the way of the push, so that one rule serves both ways; towards the head they are negative.
"""

from collections.abc import Callable, Collection, Iterable

from attrs import evolve, frozen

from gardenplot.gestures.kept import size_kept
from gardenplot.gestures.stage import Pushed
from gardenplot.layout import Grown, LaidOut, compete, lay_out_bed
from gardenplot.plan import Plan, bed_of, planting_of
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
    """Push the neighbours of plantings that are new in their bed aside, each the way that it lies from them."""
    new = [piece for piece in _pieces(_bed_of(after, movers), FOOT) if piece.planting in movers]
    twice = min(piece.start for piece in new) + max(piece.end for piece in new)
    foot = [evolve(piece, was=_BEHIND_ALL) for piece in new]
    head = [evolve(piece, start=-piece.end, end=-piece.start) for piece in foot]
    footwards = _pushed(before, after, foot, FOOT, lambda piece: piece.start + piece.end >= twice)
    headwards = _pushed(before, footwards.plan, head, HEAD, lambda piece: piece.start + piece.end > -twice)
    return evolve(headwards, pushed=(*headwards.pushed, *footwards.pushed))


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
    pushed = _make_way(moved, ahead, bed.gap.nm if bed.gap else 0)
    farthest = max((*pushed, *moved), key=lambda piece: piece.end)
    return Push(
        _placed(after, pushed, way),
        tuple(Pushed(piece.planting, way * (piece.start - piece.was)) for piece in pushed),
        max(0, farthest.end - limit),
        None if farthest.planting in movers else farthest.planting,
    )


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
