"""The best blocks for one gap on one day: an exact dynamic programme over its length (`table.py`).

Each wish stands at none or one of its sizes, and the lengths together are no longer than the gap. Worth comes first,
then ground used. Lengths are counted in the greatest unit that divides them all.
"""

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from itertools import groupby
from math import gcd
from typing import NamedTuple

import numpy as np
from attrs import evolve, frozen

from gardenplot.filling.likely import Ends, priced
from gardenplot.filling.sizes import Sizes, in_units, progressions, step_of
from gardenplot.filling.table import Row, Table, begun_at, counts_for, start_of

_FINEST = 2**16
"""Units that a gap is divided into at most: it takes a few ms for each hundred wishes."""

_FEW, _PART = 2, 4
"""Wishes that are tried first: the likeliest quarter, and no fewer than a few."""


@frozen
class GapFilling:
    """The number of the size that each wish has, or None; the worth; and whether there is none better."""

    sizes: tuple[int | None, ...]
    worth: int
    proven: bool


Room = tuple[int, int]
"""Between which readings of the gap a wish may stand."""


def packed(wishes: Sequence[Sizes], rooms: Sequence[Room], sizes: Sequence[int | None]) -> tuple[int, ...] | None:
    """Where each wish begins if all stand as near to the head as they can; None where one leaves its room."""
    at, starts = 0, []
    for wish, (low, high), size in zip(wishes, rooms, sizes, strict=True):
        start = max(at, low)
        starts.append(start)
        if size is not None:
            at = start + wish.lengths[size]
            if at > high:
                return None
    return tuple(starts)


def in_turn(blocks: Mapping[int, tuple[int, int, int]]) -> list[int] | None:
    """Blocks with their rooms and lengths in an order in which each has its place; None where none is found.

    From the head on it is always the turn of one whose room ends first of those whose rooms have begun (Schrage's
    rule: Carlier, The one-machine sequencing problem, 1982), with equal ones the longest first or the shortest.
    """
    for sign in (-1, 1):
        order, at = list[int](), 0
        left = sorted(blocks, key=lambda number: (blocks[number][1], sign * blocks[number][2], number))
        while left:
            at = max(at, min(blocks[number][0] for number in left))
            number = next(number for number in left if blocks[number][0] <= at)
            at += blocks[number][2]
            if at > blocks[number][1]:
                break
            left.remove(number)
            order.append(number)
        if not left:
            return order
    return None


def fill_gap(length: int, wishes: Sequence[Sizes], rooms: Sequence[Room] | None = None) -> GapFilling:
    """The sizes of most worth that fit into a length together, and of these the ones that use most of it.

    With `rooms` each wish stands in its own, and those that stand follow one another as their wishes are listed.
    Rooms that grow from wish to wish at both ends leave out nothing by that: of two blocks that stand the other way
    round, each could have the other's place.
    """
    return Filler(length, wishes, rooms or [(0, length)] * len(wishes)).filled(range(len(wishes)))


class Filler:
    """A gap with wishes in rooms of their own: its best fillings in one order and another, and what none is above.

    What wishes of one room are worth together is worked out once for all of these.
    """

    def __init__(self, length: int, wishes: Sequence[Sizes], rooms: Sequence[Room]) -> None:
        self._wishes, self._rooms = wishes, rooms
        unit = max(1, gcd(*map(step_of, wishes), *{low for low, _high in rooms}))
        self._is_exact = length // unit <= _FINEST
        unit = unit if self._is_exact else -(-length // _FINEST)
        safe = [in_units(wish, unit) for wish in wishes]
        self._safe = _Counted(length // unit, safe, [(-(-low // unit), high // unit) for low, high in rooms])
        self._hopeful = self._safe
        if not self._is_exact:
            hopeful = [Sizes(tuple(each // unit for each in wish.lengths), wish.worths) for wish in wishes]
            self._hopeful = _Counted(length // unit, hopeful, [(low // unit, high // unit) for low, high in rooms])

    def filled(self, order: Sequence[int]) -> GapFilling:
        """The best of wishes that follow one another in an order, by their numbers; sizes are in this order too."""
        found = self._told(order, self._hopeful.best(order))
        if self._is_exact or packed(*self._in(order), found.sizes) is not None:
            return found
        return evolve(self._told(order, self._safe.best(order)), proven=False)

    def anywhere(self) -> tuple[int, GapFilling | None, Sequence[int]]:
        """What no filling is worth more than: each wish anywhere, but no longer than its room.

        With it a filling that is worth so much and its order, if these blocks find their places.
        """
        found, most = self._hopeful.anywhere()
        blocks = {
            number: (*self._rooms[number], self._wishes[number].lengths[size]) for number, size in found.items()
        }
        order = in_turn(blocks)
        return most, self._told(order, found) if order is not None else None, order or ()

    def _in(self, order: Sequence[int]) -> tuple[list[Sizes], list[Room]]:
        return [self._wishes[number] for number in order], [self._rooms[number] for number in order]

    def _told(self, order: Sequence[int], found: Mapping[int, int]) -> GapFilling:
        sizes = tuple(found.get(number) for number in order)
        return GapFilling(
            sizes, sum(self._wishes[number].worths[size] for number, size in found.items()), proven=True
        )


class _Group(NamedTuple):
    """Wishes that follow one another in one room, by their numbers."""

    room: Room
    numbers: tuple[int, ...]


class _Leg(NamedTuple):
    """A group that wishes are chosen of on top of those before it: the row before it, and its table.

    The table begins at a reading of the gap.
    """

    group: _Group
    before: Row
    table: Table
    begins: int

    @property
    def after(self) -> Row:
        """The row with the group, from where its room begins on."""
        (low, high), begins = self.group.room, self.begins
        row = begun_at(self.before, low).copy()
        row[begins : high + 1] = self.table.last[: high + 1 - begins]
        return row

    def traced(self, at: int) -> tuple[dict[int, int], int]:
        """The sizes of those of the group that come to a length, and the length before them."""
        if at > self.group.room[1]:
            return {}, at
        sizes, at = self.table.traced(at - self.begins)
        return _stand(self.group.numbers, sizes), _earlier(self.before, self.group.room[0], at + self.begins)


class _Counted:
    """The wishes and rooms of a gap in whole units; a wish has the sizes that its room holds."""

    def __init__(self, units: int, wishes: Sequence[Sizes], rooms: Sequence[Room]) -> None:
        self._units, self._scale = units, units + 1
        self._rooms = [(max(0, low), min(units, high)) for low, high in rooms]
        self._wishes = [_within(wish, high - low) for wish, (low, high) in zip(wishes, self._rooms, strict=True)]
        self._tables: dict[tuple[int, ...], Table] = {}

    def best(self, order: Sequence[int]) -> dict[int, int]:
        """The sizes of the best filling in an order, for each wish that stands."""
        groups = self._groups(order)
        if len(groups) > 1:
            return self._chosen(groups)[0]
        return self._likeliest(groups[0]) if groups else {}

    def anywhere(self) -> tuple[dict[int, int], int]:
        """The best sizes if each wish may stand anywhere, and what these are worth."""
        every = sorted(range(len(self._wishes)), key=self._rooms.__getitem__)
        groups = [_Group((0, self._units), group.numbers) for group in self._groups(every)]
        return self._chosen(groups) if groups else ({}, 0)

    def _groups(self, order: Sequence[int]) -> list[_Group]:
        some = (number for number in order if self._wishes[number].lengths)
        return [_Group(room, tuple(numbers)) for room, numbers in groupby(some, key=self._rooms.__getitem__)]

    def _likeliest(self, group: _Group) -> dict[int, int]:
        """The best of wishes in one room: the likeliest first, others only where one could be in a better filling."""
        (low, high), numbers = group
        by_price = priced(high - low, [_ends(self._wishes[number], self._scale) for number in numbers])
        likely = by_price.first(max(_FEW, len(numbers) // _PART))
        found, most = self._alone(high - low, [numbers[place] for place in likely])
        more = [place for place in range(len(numbers)) if by_price.could_be_in(place, most)]
        if not set(more) <= set(likely):
            found, _most = self._alone(high - low, [numbers[place] for place in sorted({*likely, *more})])
        return found

    def _alone(self, room: int, numbers: Sequence[int]) -> tuple[dict[int, int], int]:
        """The best sizes of some wishes in a room, and what they count for."""
        wishes = [self._wishes[number] for number in numbers]
        table = Table(start_of(room, wishes, self._scale), wishes, self._scale)
        at = int(np.argmax(table.last))
        return _stand(numbers, table.traced(at)[0]), int(table.last[at])

    def _chosen(self, groups: Sequence[_Group]) -> tuple[dict[int, int], int]:
        """The best sizes where groups follow one another, each in its room, and what these are worth.

        Of the last group only the best that fits into what is left is asked, not the best of each length; of what is
        worth the same it is the one in which those before it have most.
        """
        legs: list[_Leg] = []
        row = start_of(self._units, self._wishes, self._scale)
        for group in groups[:-1]:
            legs.append(self._leg(group, row, is_first=not legs))
            row = legs[-1].after
        (low, high), numbers = groups[-1]
        table, row, before = self._table(numbers), begun_at(row, low), row
        most_within = np.maximum.accumulate(table.last[: high - low + 1])
        together = row[low : high + 1] + most_within[::-1]
        at, found = int(np.argmax(row)), {}
        most = int(row[at])
        if together.max() > most:
            at = high - int(np.argmax(together[::-1]))
            most = int(together[at - low])
            found = _stand(numbers, table.traced(int(np.argmax(table.last[: high - at + 1])))[0])
        at = _earlier(before, low, at)
        for leg in reversed(legs):
            sizes, at = leg.traced(at)
            found |= sizes
        return found, most // self._scale

    def _leg(self, group: _Group, before: Row, *, is_first: bool) -> _Leg:
        """A group on top of a row; wishes that follow nothing have a table of their own."""
        (low, high), numbers = group
        if is_first:
            return _Leg(group, before, self._table(numbers), low)
        wishes = [self._wishes[number] for number in numbers]
        return _Leg(group, before, Table(begun_at(before, low)[: high + 1], wishes, self._scale), 0)

    def _table(self, numbers: tuple[int, ...]) -> Table:
        """What wishes are worth together for each length of the gap, if nothing else stands."""
        if numbers not in self._tables:
            row = start_of(self._units, self._wishes, self._scale)
            self._tables[numbers] = Table(row, [self._wishes[number] for number in numbers], self._scale)
        return self._tables[numbers]


def _within(wish: Sizes, room: int) -> Sizes:
    """A wish with the sizes that a room holds."""
    count = bisect_right(wish.lengths, room)
    return wish if count == len(wish.lengths) else Sizes(wish.lengths[:count], wish.worths[:count])


def _earlier(before: Row, low: int, at: int) -> int:
    """The length that was used before a room began, if there was more room than that."""
    return int(np.argmax(before[: low + 1])) if at == low else at


def _stand(numbers: Sequence[int], sizes: Sequence[int | None]) -> dict[int, int]:
    return {number: size for number, size in zip(numbers, sizes, strict=True) if size is not None}


def _ends(wish: Sizes, scale: int) -> Ends:
    """The first and the last of each run of sizes, with what they count for."""
    return tuple(
        (each, counts_for(value, each, scale))
        for length, worth, longer, dearer, count in progressions(wish)
        for each, value in ((length, worth), (length + (count - 1) * longer, worth + (count - 1) * dearer))
    )
