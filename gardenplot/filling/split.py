"""A wish that may be split: as one block, as what it lacks, and cut into pieces."""

from collections.abc import Iterator

from attrs import evolve

from gardenplot.filling.piece import Pieces
from gardenplot.filling.wanted import Wanted, as_one

MOST_PIECES = 8
"""Into more pieces no wish is split; the limit is ours."""

Part = tuple[int, Wanted]
"""What is wanted by its number, and what is looked for of it in one block."""


def lacking(part: Part, found: Pieces) -> Part | None:
    """What a wish that may be split lacks beside the pieces that it has; None if that is no piece of its own."""
    number, one = part
    has = [piece.plants for piece in found if piece.number == number]
    if one.piece is None or len(has) >= MOST_PIECES:
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


def by_rank(part: Part) -> tuple[Part, ...]:
    """The pieces of any split of a wish by their size: the second has no more than half of its plants, and so on."""
    number, one = part
    if one.piece is None:
        return (part,)
    most = [None if one.most is None else one.most // rank for rank in range(1, MOST_PIECES + 1)]
    return tuple((number, evolve(as_one(one), most=each)) for each in most if each is None or each >= one.piece)
