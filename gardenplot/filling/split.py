"""A wish that may be split: as one block, as what it lacks, cut into pieces, and what its pieces can be worth."""

from collections.abc import Callable, Iterator

from attrs import evolve

from gardenplot.filling.bound import most_worth, worth_alone
from gardenplot.filling.model import Task
from gardenplot.filling.piece import Pieces
from gardenplot.filling.wanted import Wanted, as_one

MOST_PIECES = 8
"""Into more pieces no wish is split; the limit is ours."""

_FEW_WAYS, _NODES = 400, 200
"""With so few ways the bound is tightened by so many nodes of the solver's tree."""

Part = tuple[int, Wanted]
"""What is wanted by its number, and what is looked for of it in one block."""


def lacking(part: Part, found: Pieces) -> Part | None:
    """What a wish that may be split lacks beside the pieces that it has; None if that is no piece of its own."""
    number, one = part
    has = [piece.plants for piece in found if piece.number == number]
    if one.piece is None or not has or len(has) >= MOST_PIECES:
        return None
    left = None if one.most is None else one.most - sum(has)
    return (number, evolve(as_one(one), most=left)) if left is None or left >= one.piece else None


def cut(part: Part, found: Pieces) -> Iterator[Part]:
    """A part in pieces of at most the sizes that were found for it, and one more for what it lacks.

    Where that is less than a piece the largest one gives what is missing, if it then is no less than one itself.
    """
    number, one = part
    sizes = sorted((piece.plants for piece in found if piece.number == number), reverse=True)
    if one.piece is None or not sizes:
        yield number, as_one(one)
        return
    more = len(sizes) < MOST_PIECES
    if one.most is None:
        yield from [(number, as_one(one))] * (len(sizes) + more)
        return
    left = one.most - sum(sizes)
    if more and 0 < left < one.piece <= sizes[0] + left - one.piece:
        sizes[0], left = sizes[0] + left - one.piece, one.piece
    sizes = [*sizes, left] if more and left >= one.piece else [sizes[0] + left, *sizes[1:]]
    for most in sizes:
        yield number, evolve(as_one(one), most=most)


def most_in_pieces(parts: tuple[Part, ...], task: Callable[[tuple[Part, ...]], Task], scale: int) -> int | None:
    """What no pieces of what is wanted can be worth more than together; None where nothing may be split.

    `task` makes a task of parts, in which a worth of one is `scale`. The largest piece of a wish has no more than all
    of its plants, the second no more than half of them, the third than a third: any split is a filling with one block
    at most of each of these. Nor can a wish be worth more than all of its plants, beside the best of the rest.
    """
    split = [part for part in parts if part[1].piece is not None]
    if not split:
        return None
    rest = tuple(part for part in parts if part[1].piece is None)
    pieces = [tuple(_by_rank(part)) for part in split]
    alone = sum(_most_alone(part[1], task(some), scale) for part, some in zip(split, pieces, strict=True))
    together = tuple(piece for some in pieces for piece in some)
    return min(_most(task(rest)) + alone, _most(task((*rest, *together))))


def _by_rank(part: Part) -> Iterator[Part]:
    number, one = part
    for rank in range(1, MOST_PIECES + 1):
        most = None if one.most is None else one.most // rank
        if most is None or most >= (one.piece or 1):
            yield number, evolve(as_one(one), most=most)


def _most_alone(one: Wanted, task: Task, scale: int) -> int:
    """What the pieces of a wish could be worth with the ground to themselves: at most as much as all its plants."""
    alone = worth_alone(task)
    return alone if one.most is None else min(alone, int(one.most * one.worth * scale))


def _most(task: Task) -> int:
    bound = worth_alone(task)
    if bound:
        bound = min(bound, most_worth(task, 0))
    return min(bound, most_worth(task, _NODES)) if bound and sum(map(len, task.wishes)) <= _FEW_WAYS else bound
