"""Filling strips with wishes: the dearest first, then turn by turn a wish put in where the least is lost for it.

Whether a bed has length enough on all days is asked first, since that takes a moment (`loads.py`); only then is a
place looked for, in a gap or by laying the bed out anew (`laying.py`). What was pushed out goes where it can. A turn
that lost a little may be kept, ever less so (simulated annealing: Kirkpatrick, Gelatt and Vecchi 1983; pushing out
and putting in again: ejection chains, Glover 1996). The same task and number of turns give the same answer: no clock
is asked, and the numbers come from a fixed seed.
"""

from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping, Sequence
from math import log
from random import Random

from attrs import frozen

from gardenplot.filling.gaps import Gap
from gardenplot.filling.ground import Ground, block_of
from gardenplot.filling.model import Answer, Block, Task, Way

Told = Callable[[Answer], bool]
"""Is told of each better answer and says whether to go on."""

_WARM, _COLD = 0.3, 0.01
"""What a turn may lose and often be kept, as a part of an average wish's worth, at the first turn and at the last."""

_TEPID = 0.1
"""The same at the first turn, where the search begins with a good filling."""

_LEFT_OVER = 0.7
"""How often it is one of those left over that is put in, and not one that stands elsewhere."""

_WAYS, _OTHERS, _GAPS = 3, 4, 3
"""Ways tried to put a wish in, wishes let in after it, and gaps looked at for one that is let in."""

_PASSES, _MANY_BLOCKS = 4, 60
"""Orders in which a bed is laid out anew in a turn, one alone where it has many blocks."""


WISHES_A_TURN = 8
"""Wishes that are looked at or let in where a filling begins before it is asked whether to go on."""


@frozen
class _Could:
    """A way by its number, how many of its sizes fit into its stretch, and what the least adds to its strip."""

    number: int
    way: Way
    sizes: int
    strip: int
    least: int


class Search:
    """A filling that gets better turn by turn; `best` is the best so far."""

    def __init__(
        self,
        task: Task,
        seed: int = 1,
        start: Answer | None = None,
        only: Sequence[Mapping[int, int]] = (),
        turned: Callable[[], object] = lambda: None,
    ) -> None:
        """Begin with a filling, `start`, or with none; what is free is filled, the dearest for its ground first.

        `only` has the ways that each wish may stand in, by their numbers, and how many of its sizes. `turned` is
        called for every few wishes, and ends the beginning by saying False.
        """
        self._task = task
        self._chance = Random(seed).random
        self._warm = _TEPID if start else _WARM
        self._ground = Ground(task)
        goes_on, density = True, list[float]()
        self._ways, self._asks, self._top = list[list[_Could]](), list[list[tuple[int, int]]](), list[int]()
        for wish, ways in enumerate(task.wishes):
            goes_on = goes_on and (wish % WISHES_A_TURN > 0 or turned() is not False)
            coulds = [*self._coulds(ways, only[wish] if only else None)] if goes_on else []
            self._ways.append(coulds)
            self._asks.append([(could.strip, could.least) for could in coulds])
            self._top.append(max((could.way.worths[could.sizes - 1] for could in coulds), default=0))
            density.append(max(map(_density, coulds), default=0.0))
        for block in start.blocks if start else ():
            self._ground.set(block.wish, block.way, block.size, block.start)
        for number, wish in enumerate(sorted(self._ground.left, key=lambda wish: (-density[wish], wish))):
            goes_on = goes_on and (number % WISHES_A_TURN > 0 or turned() is not False)
            if not goes_on:
                break
            self._let_in(wish, len(self._ways[wish]))
        self.best = self._ground.answer()

    def _coulds(self, ways: tuple[Way, ...], only: Mapping[int, int] | None) -> Iterator[_Could]:
        """The ways in which something fits into its stretch of the strip if that is free."""
        for number, way in enumerate(ways):
            stretch = min(self._task.strips[way.strip].length, way.high) - max(0, way.low)
            sizes = bisect_right(way.lengths, stretch)
            if only is not None:
                sizes = min(sizes, only.get(number, 0))
            if sizes:
                least = self._ground.days.more[way.first, way.last, way.lengths[0]]
                yield _Could(number, way, sizes, way.strip, least)

    def run(self, turns: int, most: int, told: Told, turned: Callable[[], object] = lambda: None) -> bool:
        """Take so many turns, or until the worth is `most`, which nothing can be above, or until told to stop.

        False if it was told to. `turned` is called at each turn.
        """
        cooling = (_COLD / self._warm) ** (1 / max(1, turns))
        warmth = self._warm * sum(self._top) / max(1, sum(map(bool, self._top)))
        for _number in range(turns):
            if self.best.worth >= most:
                break
            warmth *= cooling
            if turned() is False:
                return False
            self._turn(warmth)
            if self._ground.worth > self.best.worth:
                self.best = self._ground.answer()
                if not told(self.best):
                    return False
        return True

    def _turn(self, warmth: float) -> None:
        """Put a wish in, let in what can stand beside it, and keep what came of it or put all back."""
        ground = self._ground
        ground.begin_turn()
        out = self._put_in()
        if out is None:
            ground.take_back()
            return
        for wish in sorted(out, key=lambda wish: -self._top[wish] * (0.7 + 0.6 * self._chance())):
            self._let_in(wish, _GAPS)
        for _number in range(min(_OTHERS, len(ground.left))):
            self._let_in(ground.left[self._one_of(len(ground.left))], _GAPS)
        if ground.lost > 0 and ground.lost > -warmth * log(1 - self._chance()):
            ground.take_back()

    def _put_in(self) -> list[int] | None:
        """Some wish put in where the least is lost for it, and the wishes pushed out; None if there is no place."""
        ground, wish = self._ground, self._picked()
        if wish is None:
            return None
        best, ways, chance = None, self._ways[wish], self._chance
        for _number in range(_WAYS):
            could = ways[int(chance() * len(ways))]
            size, way = int(chance() * could.sizes), could.way
            lost, out = ground.cheapest_out(way, way.lengths[size], chance)
            lost -= way.worths[size]
            if best is None or lost < best[0]:
                best = lost, could, size, out
            if not out:
                break
        if best is None:
            return None
        _lost, could, size, out = best
        ground.lift(could.way.strip, out)
        found = self._set(wish, could, size)
        return None if found is None else [block.wish for block in out + found]

    def _picked(self) -> int | None:
        """A wish that is left over and could stand, or one that stands, lifted."""
        left = self._ground.left
        if left and self._chance() < _LEFT_OVER:
            wish = left[self._one_of(len(left))]
            return wish if self._ways[wish] else None
        strip = self._one_of(len(self._ground.strips))
        standing = self._ground.strips[strip]
        block = standing[self._one_of(len(standing))] if standing else None
        if not isinstance(block, Block):
            return None
        self._ground.lift(strip, [block])
        return block.wish

    def _set(self, wish: int, could: _Could, size: int) -> list[Block] | None:
        """Set a wish into a gap or lay its bed out anew; what lost its place by it, None if it failed."""
        ground, way = self._ground, could.way
        gap = ground.best_gap(way, size)
        if gap is None or gap.size < size:
            block = block_of(way, wish, could.number, size, 0)
            passes = _PASSES if len(ground.strips[way.strip]) < _MANY_BLOCKS else 1
            found = ground.place_again(way.strip, [block], passes, self._chance)
            if found is not None or gap is None:
                return found
        ground.set(wish, could.number, gap.size, gap.start)
        return []

    def _let_in(self, wish: int, tries: int) -> None:
        """Set a wish into a gap without pushing anything out, the best of a few."""
        ways, asks, ground = self._ways[wish], self._asks[wish], self._ground
        best: tuple[Gap, int] | None = None
        overfull, loads = ground.days.overfull, ground.loads
        begin = int(self._chance() * len(ways))
        for place in range(begin - len(ways), begin):
            strip, least = asks[place]
            if (loads[strip] + least) & overfull:
                continue
            could = ways[place]
            gap = ground.best_gap(could.way, could.sizes - 1)
            if gap is not None and (best is None or (gap.worth, gap.snug) > (best[0].worth, best[0].snug)):
                best = gap, could.number
            tries -= 1
            if not tries:
                break
        if best is not None:
            ground.set(wish, best[1], best[0].size, best[0].start)

    def _one_of(self, count: int) -> int:
        return int(self._chance() * count)


def _density(could: _Could) -> float:
    way, last = could.way, could.sizes - 1
    return way.worths[last] / (way.lengths[last] * max(1, way.last - way.first))
