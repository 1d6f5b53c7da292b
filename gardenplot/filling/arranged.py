"""Pieces that are placed, arranged along their beds: near the head, in the order that is preferred.

Nothing that stands is moved, and no piece goes to another bed or to other days: a filling is worth the same in any
arrangement. Pieces are laid one after another where the first ground from the head on is free; in the order in which
they were found all of them find some.
"""

from collections.abc import Iterator, Sequence

from attrs import evolve

from gardenplot.filling.piece import Piece, Pieces
from gardenplot.filling.preferred import Strand, strand_of
from gardenplot.filling.wanted import First
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan

_TRIED, _MOST_TRIED = 40_000, 200
"""Other orders tried in a bed: so many by the square of its pieces, and no more than that."""


def arranged(plan: Plan, pieces: Pieces, first: First) -> Pieces:
    """The same pieces in the same beds, by their numbers; `first` is what counts most in the order along a bed."""
    found: list[Piece] = []
    for number, laid in enumerate(lay_out_plan(plan)):
        here = [one for one in pieces if one.way.strip == number]
        if here:
            found += _in_bed(strand_of(plan, laid), here, first)
    return tuple(sorted(found, key=lambda one: (one.number, one.start)))


def _in_bed(strand: Strand, pieces: list[Piece], first: First) -> list[Piece]:
    """Other orders tried one after another, each that is better kept."""
    order = sorted(pieces, key=lambda one: (one.start, one.end, one.number))
    best = _laid(strand, order) or order
    least = strand.faults(best, first)
    tries = min(_MOST_TRIED, _TRIED // len(order) ** 2)
    is_better = True
    while is_better and tries > 0:
        is_better = False
        for other in _other_orders(order):
            tries -= 1
            laid = _laid(strand, other)
            if laid is not None and (faults := strand.faults(laid, first)) < least:
                order, best, least, is_better = other, laid, faults, True
                break
            if tries <= 0:
                break
    return best


def _other_orders(order: list[Piece]) -> Iterator[list[Piece]]:
    """Two neighbours that change places, then one that goes anywhere else."""
    for at in range(len(order) - 1):
        yield [*order[:at], order[at + 1], order[at], *order[at + 2 :]]
    for at, one in enumerate(order):
        others = [*order[:at], *order[at + 1 :]]
        for to in range(len(order)):
            if abs(to - at) > 1:
                yield [*others[:to], one, *others[to:]]


def _laid(strand: Strand, order: Sequence[Piece]) -> list[Piece] | None:
    """Pieces in an order, each as near to the head as it finds ground; None where one finds none."""
    found: list[Piece] = []
    for piece in order:
        start = _first_free(strand, piece, found)
        if start is None:
            return None
        found.append(evolve(piece, start=start))
    return found


def _first_free(strand: Strand, piece: Piece, others: Sequence[Piece]) -> int | None:
    taken = [*strand.strip.taken, *(one.taken for one in others)]
    at = max(0, piece.way.low)
    for one in sorted(one for one in taken if piece.shares_days(one)):
        if one.start - at >= piece.length:
            break
        at = max(at, one.end)
    return at if at + piece.length <= min(strand.strip.length, piece.way.high) else None
