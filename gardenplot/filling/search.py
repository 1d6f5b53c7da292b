"""Filling strips with wishes: the dearest first, then again and again a part of the ground taken up and filled anew.

Each turn lifts some blocks that lie together, or makes room for a wish that is left over where that costs least, and
fills what is free with what is left. A turn that lost a little may be kept, ever less so (simulated annealing:
Kirkpatrick, Gelatt and Vecchi 1983; taking up and filling anew: Shaw 1998, large neighbourhood search). The same task
and number of turns give the same answer: no clock is asked, and the numbers come from a fixed seed.
"""

from bisect import insort
from collections.abc import Callable
from math import exp
from random import Random

from gardenplot.filling.ground import Ground, Standing, Stretch
from gardenplot.filling.model import Answer, Block, Task, Way

Told = Callable[[Answer], bool]
"""Is told of each better answer and says whether to go on."""

_LIFTED = 7
"""Blocks lifted at a time, at most."""

_TRIED = 14
"""Wishes left over that are tried in ground that is free again; more would find no place, and cost turns."""

_WARM, _COLD = 0.4, 0.04
"""What a turn may lose and often be kept, as a part of an average wish's worth, at the first turn and at the last."""

_EITHER = 0.5


class Search:
    """A filling that gets better turn by turn; `best` is the best so far."""

    def __init__(self, task: Task, seed: int = 1) -> None:
        self._task = task
        self._chance = Random(seed)
        self._ground = Ground(task)
        self._density = [max(map(_density, ways), default=0.0) for ways in task.wishes]
        self._top = [max((way.worths[-1] for way in ways), default=0) for ways in task.wishes]
        self._span = [_days(ways) for ways in task.wishes]
        self._reach = max((way.lengths[0] for ways in task.wishes for way in ways), default=0)
        stretches = [(number, self._ground.strips[number], 0, one.length) for number, one in enumerate(task.strips)]
        for wish in sorted(self._ground.left, key=lambda wish: (-self._density[wish], wish)):
            self._put(wish, stretches)
        self.best = self._ground.answer()

    def run(self, turns: int, most: int, told: Told, turned: Callable[[], object] = lambda: None) -> bool:
        """Take so many turns, or until the worth is `most`, which nothing can be above, or until told to stop.

        False if it was told to. `turned` is called at each turn.
        """
        cooling = (_COLD / _WARM) ** (1 / max(1, turns))
        warmth = _WARM * sum(self._top) / max(1, len(self._top))
        for _number in range(turns):
            if self.best.worth >= most:
                break
            warmth *= cooling
            turned()
            self._turn(warmth)
            if self._ground.worth > self.best.worth:
                self.best = self._ground.answer()
                if not told(self.best):
                    return False
        return True

    def _turn(self, warmth: float) -> None:
        """Take up, fill anew, and keep what came of it or put all back."""
        ground = self._ground
        ground.begin_turn()
        lifted = self._forced() if ground.left and self._chance.random() < _EITHER else self._taken_up()
        if lifted:
            self._fill_again(lifted)
        if ground.lost > 0 and self._chance.random() >= exp(-ground.lost / warmth):
            ground.take_back()

    def _forced(self) -> list[Block]:
        """A wish that is left over put where the least is lost for it; what it pushed out."""
        wish = self._ground.left[self._one_of(len(self._ground.left))]
        ways = self._task.wishes[wish]
        if not ways:
            return []
        number = self._one_of(len(ways))
        way = ways[number]
        size = self._one_of(len(way.lengths))
        length = way.lengths[size]
        others = [
            one for one in self._ground.strips[way.strip]
            if one[2] < way.last and way.first < one[3] and way.first >= one[4]
        ]  # fmt: skip
        start = self._cheapest(way, length, others)
        if start is None:
            return []
        out = [one for one in others if isinstance(one, Block) and one.start < start + length and start < one.end]
        self._ground.lift(way.strip, out)
        self._ground.set(wish, number, size, start)
        return out

    def _cheapest(self, way: Way, length: int, others: Standing) -> int | None:
        """The start, beside some neighbour, that pushes out the least worth, a little by chance."""
        low, high = max(0, way.low), min(self._task.strips[way.strip].length, way.high) - length
        near = others
        if len(others) > 2 * _LIFTED:
            at = self._one_of(len(others))
            near = others[max(0, at - _LIFTED // 2) : at + _LIFTED // 2]
        starts = {low, high}.union(*((one[1], one[0] - length, one[0], one[1] - length) for one in near))
        costs = [self._ground.worth_of(one) if isinstance(one, Block) else float("inf") for one in others]
        best, least = None, float("inf")
        for start in sorted(starts):
            if not low <= start <= high:
                continue
            end, cost = start + length, 0.0
            for one, each in zip(others, costs, strict=True):
                if one[0] < end and start < one[1]:
                    cost += each
            cost *= 0.8 + 0.4 * self._chance.random()
            if cost < least:
                best, least = start, cost
        return best

    def _taken_up(self) -> list[Block]:
        """Some blocks that lie together in a strip, and often some of the same days in another, lifted."""
        strip = self._one_of(len(self._ground.strips))
        blocks = [one for one in self._ground.strips[strip] if isinstance(one, Block)]
        if not blocks:
            return []
        at = self._one_of(len(blocks))
        middle = blocks[at]
        near = _on_days_of(middle, blocks[max(0, at - 2 * _LIFTED) : at + 2 * _LIFTED])
        lifted = self._some(near, middle)
        self._ground.lift(strip, lifted)
        other = self._one_of(len(self._ground.strips))
        if other != strip and self._chance.random() < _EITHER:
            also = _on_days_of(middle, self._ground.strips[other])
            if also:
                more = self._some(also, also[self._one_of(len(also))])[: _LIFTED // 2]
                self._ground.lift(other, more)
                lifted = lifted + more
        return lifted

    def _some(self, near: list[Block], middle: Block) -> list[Block]:
        """A few blocks one beside the other, with one of them in the middle."""
        count, at = 2 + self._one_of(_LIFTED - 1), near.index(middle)
        begin = max(0, at - self._one_of(count))
        return near[begin : begin + count]

    def _fill_again(self, lifted: list[Block]) -> None:
        """What was lifted and some of what is left over, each in the ground that is free again."""
        stretches = [self._stretch(strip, lifted) for strip in self._ground.touched]
        first = min(self._span[block.wish][0] for block in lifted)
        last = max(self._span[block.wish][1] for block in lifted)
        mine = {block.wish for block in lifted}
        others = [
            wish for wish in self._ground.left
            if wish not in mine and self._span[wish][0] < last and first < self._span[wish][1]
        ]  # fmt: skip
        if len(others) > _TRIED:
            others = self._chance.sample(others, _TRIED)
        for wish in self._shuffled([block.wish for block in lifted] + others):
            self._put(wish, stretches)

    def _stretch(self, strip: int, lifted: list[Block]) -> Stretch:
        """The part of a strip round the ground that is free again, with what stands in it."""
        length, standing = self._task.strips[strip].length, self._ground.strips[strip]
        mine = [one for one in lifted if self._task.wishes[one.wish][one.way].strip == strip]
        if not mine or len(standing) < 2 * _TRIED:
            return strip, standing, 0, length
        low = max(0, min(block.start for block in mine) - self._reach)
        high = min(length, max(block.end for block in mine) + self._reach)
        return strip, [one for one in standing if one[1] > low and one[0] < high], low, high

    def _shuffled(self, wishes: list[int]) -> list[int]:
        """By worth, for its ground and days or altogether, and a little by chance."""
        chance = self._chance.random
        if chance() < _EITHER:
            keys = {wish: self._density[wish] * (0.7 + 0.6 * chance()) for wish in wishes}
        else:
            keys = {wish: self._top[wish] * (0.6 + 0.8 * chance()) for wish in wishes}
        return sorted(wishes, key=lambda wish: (-keys[wish], wish))

    def _put(self, wish: int, stretches: list[Stretch]) -> None:
        """Set a wish into the gap where it is worth most and then leaves least, if there is one."""
        gap = self._ground.best_gap(wish, stretches)
        if gap is None:
            return
        number, size, standing, low, high = gap
        way = self._task.wishes[wish][number]
        is_at_foot = high == self._task.strips[way.strip].length or self._chance.random() < _EITHER
        start = high - way.lengths[size] if low > 0 and is_at_foot else low
        block = self._ground.set(wish, number, size, start)
        if standing is not self._ground.strips[way.strip]:
            insort(standing, block)

    def _one_of(self, count: int) -> int:
        return int(self._chance.random() * count)


def _on_days_of(block: Block, others: Standing | list[Block]) -> list[Block]:
    return [one for one in others if isinstance(one, Block) and one.first < block.last and block.first < one.last]


def _density(way: Way) -> float:
    return way.worths[-1] / (way.lengths[-1] * max(1, way.last - way.first))


def _days(ways: tuple[Way, ...]) -> tuple[int, int]:
    return min((way.first for way in ways), default=0), max((way.last for way in ways), default=0)
