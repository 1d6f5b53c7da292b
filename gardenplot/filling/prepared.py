"""What a plan wants, prepared for rounds of the search: posed in the ground that is left, and what makes a whole."""

from collections.abc import Collection

from attrs import evolve

from gardenplot.filling.families import left_beside, may_return, without_returns
from gardenplot.filling.model import Task
from gardenplot.filling.piece import Pieces, blocked
from gardenplot.filling.split import Part
from gardenplot.filling.task import Could, Posed, posed_of, scale_of, ways_of
from gardenplot.filling.wanted import Wanted, as_one
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan


class Prepared:
    """A plan and what it wants; `scale` is what a worth of one is in whole numbers, `groups` are its wholes."""

    def __init__(self, plan: Plan, wanted: tuple[Wanted, ...]) -> None:
        self.wanted, self.groups, self.scale = wanted, _groups(wanted), scale_of(wanted)
        self._plan, self._laid_out = plan, lay_out_plan(plan)
        self._could: dict[Wanted, Could] = {}
        self._may_return = may_return(wanted)

    def is_hopeless(self, number: int) -> bool:
        """Whether it belongs to a whole of which something could not stand in any ground."""
        whole = next((group for group in self.groups if number in group), ())
        return not all(self._ways(as_one(self.wanted[each])).ways for each in whole)

    def _ways(self, one: Wanted) -> Could:
        if one not in self._could:
            self._could[one] = ways_of(self._plan, one, self.scale)
        return self._could[one]

    def posed(self, parts: tuple[Part, ...], fixed: Pieces = ()) -> Posed:
        """The task of some parts, in the ground that fixed pieces leave."""
        ones = tuple(one for _number, one in parts)
        could = tuple(map(self._ways, ones))
        if self._may_return and fixed:
            place, beds = self._plan.place, self._laid_out
            could = tuple(left_beside(place, beds, *each, fixed) for each in zip(ones, could, strict=True))
        posed = posed_of(self._laid_out, ones, could, self.scale)
        strips = tuple(
            evolve(strip, taken=blocked(strip.taken, fixed, number)) for number, strip in enumerate(posed.task.strips)
        )
        return evolve(posed, task=Task(strips, posed.task.wishes))

    def complete(self, pieces: Pieces) -> Pieces:
        """The pieces without those that bring a family back too soon, and then without wholes that stand in part."""
        pieces = self.apart(pieces)
        broken = {number for group in self._in_part(pieces) for number in group}
        return tuple(one for one in pieces if one.number not in broken)

    def apart(self, pieces: Pieces) -> Pieces:
        """The pieces without those that bring a family back too soon beside the others."""
        return without_returns(self._plan.place, self._laid_out, pieces) if self._may_return else pieces

    def is_whole(self, group: Collection[int], pieces: Pieces) -> bool:
        """Whether all of a group stands, each with its least."""
        return all(sum(one.plants for one in _of(pieces, (each,))) >= self.wanted[each].least for each in group)

    def lacks(self, number: int, pieces: Pieces) -> bool:
        """Whether more plants of something are wanted than stand, or any number of them."""
        most = self.wanted[number].most
        return most is None or sum(one.plants for one in _of(pieces, (number,))) < most

    def dearest_in_part(self, pieces: Pieces) -> tuple[int, ...]:
        """The whole of which something stands, and that is worth most, but not all; nothing where there is none."""
        return max(
            self._in_part(pieces),
            key=lambda group: (sum(one.worth for one in _of(pieces, group)), -group[0]),
            default=(),
        )

    def _in_part(self, pieces: Pieces) -> list[tuple[int, ...]]:
        return [group for group in self.groups if _of(pieces, group) and not self.is_whole(group, pieces)]


def _of(pieces: Pieces, group: Collection[int]) -> Pieces:
    return tuple(one for one in pieces if one.number in group)


def _groups(wanted: tuple[Wanted, ...]) -> tuple[tuple[int, ...], ...]:
    """What stands as a whole or not at all, by its numbers: series, and wishes of which pieces alone are too few."""
    series: dict[str, list[int]] = {}
    for number, one in enumerate(wanted):
        if one.series is not None:
            series.setdefault(one.series, []).append(number)
        elif one.piece is not None and one.least > one.piece:
            series[f"{number}"] = [number]
    return tuple(map(tuple, series.values()))
