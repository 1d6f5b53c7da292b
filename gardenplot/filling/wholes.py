"""Wishes that may be split and series that stand as wholes: rounds of the search, each over what another left open.

The search places each thing that is wanted once. So a wish that may be split is first looked for in one block; what
it then lacks is one more block in the ground that is left, and the next round looks for all of these pieces together.
A series of which a day found no ground is placed before all else, or is lifted and the rest placed anew: whichever is
worth more. What is told meanwhile has no series in part.
"""

from collections.abc import Callable
from typing import NamedTuple

from attrs import evolve

from gardenplot.filling.bound import worth_alone
from gardenplot.filling.model import Answer
from gardenplot.filling.piece import Pieces, piece_of
from gardenplot.filling.prepared import Prepared
from gardenplot.filling.search import Search
from gardenplot.filling.season import solve
from gardenplot.filling.split import MOST_PIECES, Part, cut, lacking
from gardenplot.filling.split_bound import SplitBound
from gardenplot.filling.task import Posed
from gardenplot.filling.wanted import Wanted, as_one

_ROUNDS = 3
"""Rounds with pieces of the sizes that the round before gave them, at most, as long as each is worth more."""

_FEW_TURNS = 40
"""For what a round left open."""


class Settled(NamedTuple):
    """Pieces that stand, what they are worth together, and what no others can be worth more than."""

    pieces: Pieces
    worth: int
    bound: int


Told = Callable[[Settled], bool]
"""Is told of each better one and says whether to go on."""


class Placing:
    """Rounds of the search over what a plan wants."""

    def __init__(self, prepared: Prepared, told: Told, turned: Callable[[], object]) -> None:
        self._plan, self._told, self._turned = prepared, told, turned
        self._most: int | None = None
        self._goes_on = True

    def run(self, turns: int) -> Settled:
        """The best that so many turns find, and more of them where wishes are split or series placed as wholes."""
        parts = tuple(part for part in enumerate(self._plan.wanted) if not self._plan.is_hopeless(part[0]))
        may_split = any(one.piece is not None for _number, one in parts)
        bounds = SplitBound(parts, self._plan.posed, self._plan.scale, self._turn) if may_split else None
        self._most = bounds.first if bounds is not None else None
        found, most = self._solved(_in_one(parts, _unsplit), turns)
        self._most = most
        found = self._apart(self._split_again(self._with_more(found, parts), parts, turns), parts)
        wholes = self._as_wholes(found, parts, turns)
        pieces = self._plan.complete(max(found, wholes, key=self._counted))
        if bounds is not None and _worth(pieces) < most:
            most = bounds.tightened([number for number, one in parts if self._plan.lacks(number, pieces)])
        return Settled(pieces, _worth(pieces), most)

    def _solved(self, parts: tuple[Part, ...], turns: int) -> tuple[Pieces, int]:
        """The best that is found for all parts, each in one piece, and the bound."""
        posed = self._plan.posed(parts)

        def bound(proved: int) -> int:
            return proved if self._most is None else self._most

        answer, proved = solve(
            posed.task, turns, lambda better, proved: self._tell(_pieces(posed, parts, better), bound(proved)),
            self._turn,
        )  # fmt: skip
        return _pieces(posed, parts, answer), bound(proved)

    def _search(self, parts: tuple[Part, ...], fixed: Pieces, turns: int) -> Pieces:
        """Fixed pieces with what a search finds beside them."""
        posed = self._plan.posed(parts, fixed)
        search = Search(posed.task, turned=self._turn)
        search.run(
            turns, worth_alone(posed.task),
            lambda better: self._tell((*fixed, *_pieces(posed, parts, better)), self._most or 0), self._turn,
        )  # fmt: skip
        return (*fixed, *_pieces(posed, parts, search.best))

    def _tell(self, pieces: Pieces, bound: int) -> bool:
        """Tell of pieces, without wholes that stand in part."""
        kept = self._plan.complete(pieces)
        self._goes_on = self._told(Settled(kept, _worth(kept), bound)) and self._goes_on
        return self._goes_on

    def _turn(self) -> bool:
        """A turn is taken, or the solver is at work; whether to go on."""
        self._goes_on = self._goes_on and self._turned() is not False
        return self._goes_on

    def _with_more(self, found: Pieces, parts: tuple[Part, ...]) -> Pieces:
        """The same pieces, and what wishes that may be split still lack, as long as ground is found for it."""
        for _round in range(MOST_PIECES):
            lacks = tuple(part for each in parts if (part := lacking(each, found)) is not None)
            more = self._search(lacks, found, _FEW_TURNS) if lacks and self._goes_on else found
            if len(more) == len(found):
                break
            found = more
        return found

    def _split_again(self, found: Pieces, parts: tuple[Part, ...], turns: int) -> Pieces:
        """Rounds in which each wish that may be split is looked for in pieces like those that it was given."""
        for _round in range(_ROUNDS):
            if not self._goes_on or _worth(found) == self._most or not any(one.piece for _number, one in parts):
                break
            pieces = tuple(piece for part in parts for piece in cut(part, found))
            other = self._with_more(self._search(pieces, (), turns // _ROUNDS), parts)
            if self._counted(other) <= self._counted(found):
                break
            found = other
        return found

    def _as_wholes(self, found: Pieces, parts: tuple[Part, ...], turns: int) -> Pieces:
        """Each whole that stands in part placed before the others or lifted, the dearest first; those tried again."""
        first: Pieces = ()
        lifted: list[tuple[Part, ...]] = []
        few = max(_FEW_TURNS, turns // (4 * max(1, len(self._plan.groups))))
        while self._goes_on and (group := self._plan.dearest_in_part(found)):
            own = tuple(part for part in parts if part[0] in group)
            parts = tuple(part for part in parts if part[0] not in group)
            kept = tuple(one for one in found if one.number not in group)
            others = tuple(part for part in parts if part[0] not in {one.number for one in kept})
            without = (self._round(others, kept, few), self._round(parts, first, few))
            ahead = self._round(own, first, few)
            beside = self._round(parts, ahead, few) if self._plan.is_whole(group, ahead) else ()
            found = max(*without, beside, key=self._counted)
            if found is beside:
                first = ahead
            else:
                lifted.append(own)
        for own in lifted if self._goes_on else ():
            more = self._round(own, found, _FEW_TURNS)
            found = more if self._plan.is_whole([number for number, _one in own], more) else found
        return found

    def _counted(self, pieces: Pieces) -> int:
        """What pieces are worth once those that may not stand are left out."""
        return _worth(self._plan.complete(pieces))

    def _round(self, parts: tuple[Part, ...], fixed: Pieces, turns: int) -> Pieces:
        """Fixed pieces with what is found beside them of some parts, in as many pieces as they may be split into."""
        return self._with_more(self._search(_in_one(parts, as_one), fixed, turns), parts)

    def _apart(self, found: Pieces, parts: tuple[Part, ...]) -> Pieces:
        """The pieces without those that bring a family back too soon; these are placed anew where they do not."""
        kept = self._plan.apart(found)
        if len(kept) == len(found) or not self._goes_on:
            return kept
        lifted = {one.number for one in found} - {one.number for one in kept}
        return self._plan.apart(self._round(tuple(part for part in parts if part[0] in lifted), kept, _FEW_TURNS))


def _in_one(parts: tuple[Part, ...], how: Callable[[Wanted], Wanted]) -> tuple[Part, ...]:
    return tuple((number, how(one)) for number, one in parts)


def _unsplit(one: Wanted) -> Wanted:
    return one if one.piece is None else evolve(one, least=max(one.least, one.piece))


def _pieces(posed: Posed, parts: tuple[Part, ...], answer: Answer) -> Pieces:
    return tuple(piece_of(posed, parts[block.wish][0], block) for block in answer.blocks)


def _worth(pieces: Pieces) -> int:
    return sum(one.worth for one in pieces)
