"""Pieces that are placed, arranged along their beds: near the head, so that what is left lies together."""

from attrs import evolve

from gardenplot.filling.model import Strip, Taken
from gardenplot.filling.piece import Piece, Pieces


def towards_the_head(strips: tuple[Strip, ...], pieces: Pieces) -> Pieces:
    """The same pieces as near to the head of their strips as they can be slid, by their numbers."""
    stand: dict[int, list[Piece]] = {}
    for piece in sorted(pieces, key=lambda one: (one.start, one.end, one.number)):
        others = stand.setdefault(piece.way.strip, [])
        near = [*strips[piece.way.strip].taken, *(one.taken for one in others)]
        others.append(evolve(piece, start=_nearest(piece, near)))
    return tuple(sorted((one for ones in stand.values() for one in ones), key=lambda one: (one.number, one.start)))


def _nearest(piece: Piece, others: list[Taken]) -> int:
    """The least tape reading from which a piece can be slid no further."""
    ends = [one.end for one in others if one.end <= piece.start and piece.shares_days(one)]
    return max([0, piece.way.low, *ends])
