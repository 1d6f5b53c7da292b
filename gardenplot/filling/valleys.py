"""Laying what was chosen along strips, block by block at the ground nearest to a head: in the lowest valley there is.

The blocks that stand make a skyline by days. Of those to come that fit into its lowest valley one is laid that leaves
no steps: along a wall, and as high as that (best fit: Burke, Kendall and Whitwell 2004, "A new placement heuristic
for the orthogonal stock-cutting problem"). Besides, a block bids the more the larger it is, and each bids a little
by chance. Some bids change from one try to the next, and blocks that found no place bid more (squeaky wheel
optimization: Joslin and Clements 1999).
"""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from typing import NamedTuple

from attrs import Factory, define, frozen

from gardenplot.filling.bound import Sizes
from gardenplot.filling.ground import block_of
from gardenplot.filling.laying import laid_anew
from gardenplot.filling.loads import taken_on
from gardenplot.filling.model import Answer, Block, Task

_DAYS, _LENGTH, _CHANCE = 1.1, 0.5, 0.75
"""What a block bids for average days, for an average length and at most by chance, where a wall is worth one."""

_CHANGED, _RAISED = 0.05, 0.5
"""How many bids change from one try to the next, and by how much those of blocks without a place grow at most."""

BLOCKS_A_TURN = 20
"""Blocks laid one after another that take about as long as a turn of the search."""

_FULL = 2**62
"""The lowest height of a strip into which nothing more goes."""

_Bid = tuple[float, int, int, int]
"""What a block bids, its length, the place of the day from which on it is gone, and its wish."""


@frozen
class _Chosen:
    """A wish that was chosen: the places of its days, what it is worth, and its block in each of its strips."""

    first: int
    last: int
    length: int
    worth: int
    blocks: Mapping[int, Block]


class _Valley(NamedTuple):
    """The places of its days, and by how much the walls before and after it are higher; an end of days is a wall."""

    begin: int
    end: int
    before: int
    after: int


@define
class _Skyline:
    """How high a strip is laid on every day, its length, its lowest height, and what was laid, in that order."""

    heights: list[int]
    length: int
    low: int = 0
    laid: list[int] = Factory(list)

    def look(self) -> None:
        """Look for the lowest height."""
        low = min(self.heights, default=_FULL)
        self.low = low if low < self.length else _FULL

    def valley(self) -> _Valley:
        """The first of the lowest valleys."""
        heights, low, count = self.heights, self.low, len(self.heights)
        begin = end = heights.index(low)
        while end < count and heights[end] == low:
            end += 1
        before = heights[begin - 1] if begin else self.length
        after = heights[end] if end < count else self.length
        return _Valley(begin, end, before - low, after - low)

    def rise(self, begin: int, end: int, more: int) -> None:
        """Make the ground of the lowest valley, or a part of it, so much higher."""
        self.heights[begin:end] = [self.low + more] * (end - begin)
        self.look()


class Valleys:
    """Tries to lay what was chosen; `best` is what stands in the best of them."""

    def __init__(
        self,
        task: Task,
        stand: Sequence[Sizes],
        chance: Callable[[], float],
        turned: Callable[[], object] = lambda: None,
    ) -> None:
        """Begin with nothing; `turned` is called for every few blocks, and ends a try by saying False."""
        self._task, self._chance, self._turned, self._count = task, chance, turned, 0
        days = _days(task, stand)
        self._chosen = dict(_all_chosen(task, stand, days))
        self._floors = [[taken_on(strip, day) for day in days[:-1]] for strip in task.strips]
        self._wishes = [
            tuple(wish for wish, one in self._chosen.items() if strip in one.blocks)
            for strip in range(len(task.strips))
        ]
        every = self._chosen.values()
        wide, long = _mean([one.last - one.first for one in every]), _mean([one.length for one in every])
        self._least = {
            wish: _DAYS * (one.last - one.first) / wide + _LENGTH * one.length / long
            for wish, one in self._chosen.items()
        }
        self._bids = {wish: least + _CHANCE * chance() for wish, least in self._least.items()}
        self._out, self._lost = set[int](), _FULL
        self.best = Answer((), 0)

    @property
    def is_whole(self) -> bool:
        """Whether all that was chosen stands in the best."""
        return len(self.best.blocks) == len(self._chosen)

    def try_again(self) -> None:
        """One more try, with bids near to those of the best so far."""
        bids = {wish: self._bid(wish) for wish in self._bids}
        skylines, out = self._laid(bids)
        lost = sum(self._chosen[wish].worth for wish in out)
        if lost <= self._lost:
            self._bids, self._out, self._lost = bids, out, lost
            self.best = max(self.best, self._answer(skylines), key=lambda one: one.worth)

    def _bid(self, wish: int) -> float:
        chance = self._chance
        bid = self._least[wish] + _CHANCE * chance() if chance() < _CHANGED else self._bids[wish]
        return bid + _RAISED * chance() if wish in self._out else bid

    def _laid(self, bids: Mapping[int, float]) -> tuple[list[_Skyline], set[int]]:
        """The strips laid with what bids most where it goes, and the wishes that found no place."""
        waiting, left = self._waiting(bids), {*bids}
        skylines = [
            _Skyline([*floor], strip.length) for floor, strip in zip(self._floors, self._task.strips, strict=True)
        ]
        for skyline in skylines:
            skyline.look()
        while left:
            number, skyline = min(enumerate(skylines), key=lambda one: one[1].low)
            if skyline.low == _FULL:
                break
            valley = skyline.valley()
            one = _highest(waiting[number], valley, skyline.length - skyline.low, left)
            if one is None:
                skyline.rise(valley.begin, valley.end, min(valley.before, valley.after))
            else:
                wish = one[3]
                first = self._chosen[wish].first
                waiting[number][first].remove(one)
                skyline.rise(first, one[2], one[1])
                skyline.laid.append(wish)
                left.remove(wish)
                if not self._goes_on():
                    break
        return skylines, left

    def _goes_on(self) -> bool:
        self._count += 1
        return self._count % BLOCKS_A_TURN > 0 or self._turned() is not False

    def _waiting(self, bids: Mapping[int, float]) -> list[list[list[_Bid]]]:
        """For each strip what waits for it, by the places of first days; strips with the same wishes share it."""
        shared = dict[tuple[int, ...], list[list[_Bid]]]()
        for wishes in self._wishes:
            if wishes in shared:
                continue
            shared[wishes] = [[] for _day in self._floors[0]]
            for wish in wishes:
                one = self._chosen[wish]
                shared[wishes][one.first].append((bids[wish], one.length, one.last, wish))
        return [shared[wishes] for wishes in self._wishes]

    def _answer(self, skylines: Sequence[_Skyline]) -> Answer:
        """What was laid, at its places: where nothing is taken none is farther from the head than in its skyline."""
        blocks = list[Block]()
        for strip, skyline in enumerate(skylines):
            order = [self._chosen[wish].blocks[strip] for wish in skyline.laid]
            standing = laid_anew(self._task, strip, order, 1, self._chance).standing
            blocks += [one for one in standing if isinstance(one, Block)]
        return Answer(tuple(blocks), sum(self._chosen[block.wish].worth for block in blocks))


def _days(task: Task, stand: Sequence[Sizes]) -> list[int]:
    """The days on which something that was chosen, or is taken, begins or ends."""
    spans = [
        (way.first, way.last) for wish, sizes in enumerate(stand) for way in map(task.wishes[wish].__getitem__, sizes)
    ]
    spans += [(one.first, one.last) for strip in task.strips for one in strip.taken]
    return sorted({day for span in spans for day in span})


def _all_chosen(task: Task, stand: Sequence[Sizes], days: Sequence[int]) -> Iterator[tuple[int, _Chosen]]:
    """What was chosen of each wish; it has the same days and length in all strips that it may stand in."""
    place = {day: number for number, day in enumerate(days)}
    for wish, sizes in enumerate(stand):
        blocks = {
            way.strip: block_of(way, wish, number, count - 1, 0)
            for number, count in sizes.items()
            for way in [task.wishes[wish][number]]
            if way.first < way.last
        }
        if blocks:
            one = next(iter(blocks.values()))
            worth = task.wishes[wish][one.way].worths[one.size]
            yield wish, _Chosen(place[one.first], place[one.last], one.end - one.start, worth, blocks)


def _mean(numbers: Collection[int]) -> float:
    return max(1.0, sum(numbers) / max(1, len(numbers)))


def _highest(waiting: Sequence[Sequence[_Bid]], valley: _Valley, room: int, left: Collection[int]) -> _Bid | None:
    """Of what fits into a valley what bids most, with one more for each wall that it lies along, the strip's end too,
    and one where it is as high as that. The innermost loop: bids are bare tuples.
    """
    begin, end, before, after = valley
    best, most = None, 0.0
    for first in range(begin, end):
        for one in waiting[first]:
            bid, length, last, wish = one
            if last > end or length > room:
                continue
            if first == begin:
                bid += 1 + (length == before)
            if last == end:
                bid += 1 + (length == after)
            if length == room:
                bid += 1
            if bid > most and wish in left:
                best, most = one, bid
    return best
