"""What no filling can be worth more than where wishes may be split.

The largest piece of a wish has no more than all of its plants, the second no more than half of them, the third than a
third: any split is a filling with one block at most of each of these. That all together are no more plants than are
asked for is priced (Lagrangian relaxation: Geoffrion 1974): a part of each plant's worth is paid for all plants that
are asked for at once and taken off each plant that stands, and no filling is worth more than the two together.
Whatever the part, that is a bound; it is chosen so that each plant keeps the worth of its ground, at one price for
all ground and days, and a good price is looked for.
"""

from collections.abc import Callable, Collection
from itertools import accumulate

from attrs import evolve, frozen

from gardenplot.filling.bound import Asked, relaxed, worth_alone
from gardenplot.filling.model import Task, Way
from gardenplot.filling.split import Part, by_rank
from gardenplot.filling.task import Posed
from gardenplot.filling.wanted import Wanted

_STEP, _STEPS = 1.3, 3
"""The price is made so many times higher or lower, at most so often, as long as the bound gets better."""

_FEW_WAYS, _NODES = 400, 200
"""With so few ways the bound is tightened by so many nodes of the solver's tree."""


@frozen
class _Split:
    """A wish with the numbers of its pieces in the task, the worth of a plant there, and how many can stand at most.

    `ground` is what a plant takes at least, in lengths times days.
    """

    pieces: range
    worth: int
    most: int
    ground: float


class SplitBound:
    """Bounds for what is wanted where some of it may be split.

    `pose` makes a task of parts, in which a worth of one is `scale`. `first` is found at once: wishes that may be
    split are paid for in full, and the rest has the ground. `goes_on` is asked now and then; once it says False,
    what is wanted counts as if it had the ground to itself, and nothing is looked for any more.
    """

    def __init__(
        self,
        parts: tuple[Part, ...],
        pose: Callable[[tuple[Part, ...]], Posed],
        scale: int,
        goes_on: Callable[[], bool] = lambda: True,
    ) -> None:
        self._goes_on = goes_on
        ranked = [by_rank(part) for part in parts]
        ends = [*accumulate(map(len, ranked))]
        flat = tuple(piece for pieces in ranked for piece in pieces)
        self._posed = pose(flat)
        self._numbers = tuple(number for number, _one in flat)
        self._split = [
            _split(self._posed, one, range(end - len(pieces), end), scale)
            for (_number, one), pieces, end in zip(parts, ranked, ends, strict=True)
            if one.piece is not None and one.most is not None
        ]
        self.first = self._bound(0.0, 0)

    def tightened(self, lacking: Collection[int]) -> int:
        """A tighter bound: what lacks ground, by its numbers, says what the ground is worth that others have."""
        densities = sorted(
            max(map(_density, ways))
            for number, ways in zip(self._numbers, self._posed.task.wishes, strict=True)
            if ways and number in lacking
        )
        if not densities:
            return self.first
        price, bounds = self._best_price(densities[len(densities) // 2])
        if sum(map(len, self._posed.task.wishes)) <= _FEW_WAYS:
            bounds += [self._bound(each, nodes) for each in (price, None) for nodes in (0, _NODES)]
        return min(self.first, *bounds)

    def _best_price(self, price: float) -> tuple[float, list[int]]:
        """The price with the least bound, from one on upwards or downwards, and all bounds on the way."""
        best, least, bounds = price, self._bound(price, 0), list[int]()
        for step in (_STEP, 1 / _STEP):
            for _time in range(_STEPS):
                bounds.append(self._bound(best * step, 0))
                if bounds[-1] >= least:
                    break
                best, least = best * step, bounds[-1]
            if best != price:
                break
        return best, [*bounds, least]

    def _bound(self, price: float | None, nodes: int) -> int:
        """What plants are paid for at once, nothing without a price, and the most of the task with that taken off."""
        paid, wishes = 0, [*self._posed.task.wishes]
        for one in self._split:
            left = one.worth if price is None else min(one.worth, int(price * one.ground))
            paid += (one.worth - left) * one.most
            for piece in one.pieces:
                wishes[piece] = _worth_less(wishes[piece], self._posed.plants[piece], left)
        task = Task(self._posed.task.strips, tuple(wishes))
        return paid + (relaxed(task, Asked(nodes), self._goes_on).bound if self._goes_on() else worth_alone(task))


def _worth_less(ways: tuple[Way, ...], plants: tuple[tuple[int, ...], ...], each: int) -> tuple[Way, ...]:
    """The same ways with so much for each plant; none where that is nothing."""
    if not each:
        return ()
    return tuple(
        evolve(way, worths=tuple(count * each for count in counts)) for way, counts in zip(ways, plants, strict=True)
    )


def _split(posed: Posed, one: Wanted, pieces: range, scale: int) -> _Split:
    tops = [max((counts[-1] for counts in posed.plants[piece]), default=0) for piece in pieces]
    grounds = [
        (way.last - way.first) * length / count
        for piece in pieces
        for way, counts in zip(posed.task.wishes[piece], posed.plants[piece], strict=True)
        for length, count in zip(way.least_lengths, counts, strict=True)
    ]
    return _Split(pieces, int(one.worth * scale), min(one.most or 0, sum(tops)), min(grounds, default=0.0))


def _density(way: Way) -> float:
    return way.worths[-1] / (way.lengths[-1] * max(1, way.last - way.first))
