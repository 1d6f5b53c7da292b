"""Wishes that may be split and series that stand as wholes: rounds of the search, each over what another left open.

The search places each thing that is wanted once. A wish that may be split is first one block of any size from its
least piece on; what it then lacks is one more block in the ground that is left, and the next round looks for all of
these pieces together. A series of which a day found no ground is placed before all else, or is lifted and the rest
placed anew: whichever is worth more. What is told meanwhile has no series in part.
"""

from collections.abc import Callable, Collection
from typing import NamedTuple

from attrs import evolve

from gardenplot.filling.model import Answer, Task
from gardenplot.filling.piece import Pieces, blocked, piece_of
from gardenplot.filling.season import solve
from gardenplot.filling.split import MOST_PIECES, Part, cut, lacking, most_in_pieces
from gardenplot.filling.task import Could, Posed, posed_of, scale_of, ways_of
from gardenplot.filling.wanted import Wanted, as_one
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan

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


class Rounds:
    """Rounds of the search over what a plan wants; `scale` is what a worth of one is in whole numbers."""

    def __init__(self, plan: Plan, wanted: tuple[Wanted, ...], told: Told, turned: Callable[[], object]) -> None:
        self._plan, self._wanted, self._told, self._turned = plan, wanted, told, turned
        self._laid_out, self.scale = lay_out_plan(plan), scale_of(wanted)
        self._could: dict[Wanted, Could] = {}
        self._groups = _groups(wanted)
        self._most: int | None = None
        self._goes_on = True

    def run(self, turns: int) -> Settled:
        """The best that so many turns find, and more of them where wishes are split or series placed as wholes."""
        parts = tuple(part for part in enumerate(self._wanted) if not self._is_hopeless(part[0]))
        self._most = most_in_pieces(parts, lambda some: self._posed(some).task, self.scale)
        found, proved = self._search(_in_one(parts), (), turns)
        most = self._most = proved if self._most is None else self._most
        found = self._split_again(self._with_more(found, parts), parts, turns)
        pieces = max(self._complete(found), self._complete(self._as_wholes(found, parts, turns)), key=_worth)
        return Settled(pieces, _worth(pieces), most)

    def _is_hopeless(self, number: int) -> bool:
        """Whether it belongs to a whole of which something could not stand in any ground."""
        whole = next((group for group in self._groups if number in group), ())
        return not all(self._ways(as_one(self._wanted[each])).ways for each in whole)

    def _ways(self, one: Wanted) -> Could:
        if one not in self._could:
            self._could[one] = ways_of(self._plan, one, self.scale)
        return self._could[one]

    def _posed(self, parts: tuple[Part, ...], fixed: Pieces = ()) -> Posed:
        """The task of some parts, in the ground that fixed pieces leave."""
        ones = tuple(one for _number, one in parts)
        posed = posed_of(self._laid_out, ones, tuple(map(self._ways, ones)), self.scale)
        strips = tuple(
            evolve(strip, taken=blocked(strip.taken, fixed, number)) for number, strip in enumerate(posed.task.strips)
        )
        return evolve(posed, task=Task(strips, posed.task.wishes))

    def _search(self, parts: tuple[Part, ...], fixed: Pieces, turns: int) -> tuple[Pieces, int]:
        """Fixed pieces with what a search finds beside them, and its bound; what is better is told of on the way."""
        posed, numbers = self._posed(parts, fixed), tuple(number for number, _one in parts)

        def pieces(answer: Answer) -> Pieces:
            return (*fixed, *(piece_of(posed, numbers, block) for block in answer.blocks))

        def better(answer: Answer, proved: int) -> bool:
            kept = self._complete(pieces(answer))
            self._goes_on = self._told(Settled(kept, _worth(kept), proved if self._most is None else self._most))
            return self._goes_on

        answer, proved = solve(posed.task, turns, better, self._turned)
        return pieces(answer), proved

    def _with_more(self, found: Pieces, parts: tuple[Part, ...]) -> Pieces:
        """The same pieces, and what wishes that may be split still lack, as long as ground is found for it."""
        for _round in range(MOST_PIECES):
            lacks = tuple(part for each in parts if (part := lacking(each, found)) is not None)
            more = self._search(lacks, found, _FEW_TURNS)[0] if lacks and self._goes_on else found
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
            other = self._with_more(self._search(pieces, (), turns // _ROUNDS)[0], parts)
            if _worth(self._complete(other)) <= _worth(self._complete(found)):
                break
            found = other
        return found

    def _as_wholes(self, found: Pieces, parts: tuple[Part, ...], turns: int) -> Pieces:
        """Each whole that stands in part placed before the others or lifted, the dearest first; those tried again."""
        first: Pieces = ()
        lifted: list[tuple[Part, ...]] = []
        few = max(_FEW_TURNS, turns // (4 * max(1, len(self._groups))))
        while self._goes_on and (
            broken := [group for group in self._groups if _is_in_part(group, found, self._wanted)]
        ):
            group = max(broken, key=lambda each: (_worth(_of(found, each)), -each[0]))
            own = tuple(part for part in parts if part[0] in group)
            parts = tuple(part for part in parts if part[0] not in group)
            found, ahead = self._round(parts, first, few), self._round(own, first, few)
            beside = self._round(parts, ahead, few) if _is_whole(group, ahead, self._wanted) else ()
            if _worth(self._complete(beside)) > _worth(self._complete(found)):
                first, found = ahead, beside
            else:
                lifted.append(own)
        for own in lifted if self._goes_on else ():
            more = self._round(own, found, _FEW_TURNS)
            found = more if _is_whole({number for number, _one in own}, more, self._wanted) else found
        return found

    def _round(self, parts: tuple[Part, ...], fixed: Pieces, turns: int) -> Pieces:
        """Fixed pieces with what is found beside them of some parts, in as many pieces as they may be split into."""
        return self._with_more(self._search(_in_one(parts), fixed, turns)[0], parts)

    def _complete(self, pieces: Pieces) -> Pieces:
        """The pieces without those of wholes that stand in part."""
        broken = {number for group in self._groups if _is_in_part(group, pieces, self._wanted) for number in group}
        return tuple(one for one in pieces if one.number not in broken)


def _in_one(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    return tuple((number, as_one(one)) for number, one in parts)


def _groups(wanted: tuple[Wanted, ...]) -> tuple[tuple[int, ...], ...]:
    """What stands as a whole or not at all, by its numbers: series, and wishes of which pieces alone are too few."""
    series: dict[str, list[int]] = {}
    for number, one in enumerate(wanted):
        if one.series is not None:
            series.setdefault(one.series, []).append(number)
        elif one.piece is not None and one.least > one.piece:
            series[f"{number}"] = [number]
    return tuple(map(tuple, series.values()))


def _worth(pieces: Pieces) -> int:
    return sum(one.worth for one in pieces)


def _of(pieces: Pieces, group: Collection[int]) -> Pieces:
    return tuple(one for one in pieces if one.number in group)


def _is_whole(group: Collection[int], pieces: Pieces, wanted: tuple[Wanted, ...]) -> bool:
    """Whether all of a group stands, each with its least."""
    return all(sum(one.plants for one in _of(pieces, (number,))) >= wanted[number].least for number in group)


def _is_in_part(group: Collection[int], pieces: Pieces, wanted: tuple[Wanted, ...]) -> bool:
    return bool(_of(pieces, group)) and not _is_whole(group, pieces, wanted)
