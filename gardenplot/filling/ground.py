"""What stands where while a task is being filled: blocks set into gaps and lifted again, turn by turn."""

from bisect import insort
from collections.abc import Callable, Iterable, Sequence

from gardenplot.filling.gaps import Gap, Standing, best_gap
from gardenplot.filling.laying import laid_anew
from gardenplot.filling.loads import Loads
from gardenplot.filling.model import ALWAYS, Answer, Block, Task, Way

_TOLD_APART = 0.7, 0.6
"""What a block counts for is drawn between the first and the sum of the two: the cheapest is not always the same."""


class Ground:
    """Strips with what stands in them, the wishes that are left over, and what all that stands is worth."""

    def __init__(self, task: Task) -> None:
        self.task = task
        self.strips: list[Standing] = [[*sorted(strip.taken)] for strip in task.strips]
        self.left = [*range(len(task.wishes))]
        self.worth = 0
        self.days = Loads(task)
        self.loads = list(self.days.empty)
        self._before: tuple[int, list[int], list[int], dict[int, Standing]] = 0, [], [], {}

    def begin_turn(self) -> None:
        """Remember how it is, so that the turn can be taken back."""
        self._before = self.worth, self.left.copy(), self.loads.copy(), {}

    def take_back(self) -> None:
        """Put everything back as it was when the turn began."""
        self.worth, self.left, self.loads, strips = self._before
        for number, strip in strips.items():
            self.strips[number] = strip

    @property
    def lost(self) -> int:
        """How much less all is worth than when the turn began."""
        return self._before[0] - self.worth

    def lift(self, strip: int, blocks: Iterable[Block]) -> None:
        """Take blocks up from a strip; their wishes are left over."""
        standing = self._touched(strip)
        for block in blocks:
            standing.remove(block)
            self.left.append(block[5])
            self.worth -= _worth(self.task, block)
            self.loads[strip] -= self.days.more[block[2], block[3], block[1] - block[0]]

    def set(self, wish: int, way: int, size: int, start: int) -> None:
        """Let a wish that is left over stand there; the ground must be free."""
        chosen = self.task.wishes[wish][way]
        block = block_of(chosen, wish, way, size, start)
        insort(self._touched(chosen.strip), block)
        self._stands(chosen.strip, block)

    def _stands(self, strip: int, block: Block) -> None:
        self.left.remove(block[5])
        self.worth += _worth(self.task, block)
        self.loads[strip] += self.days.more[block[2], block[3], block[1] - block[0]]

    def _touched(self, strip: int) -> Standing:
        """What stands in a strip, to be changed."""
        standing = self.strips[strip]
        if strip not in self._before[3]:
            self._before[3][strip] = standing.copy()
        return standing

    def best_gap(self, way: Way, most: int) -> Gap | None:
        """Where a way is worth most, in a size up to one, and then where it lies against most on its days."""
        return best_gap(self.strips[way.strip], way, self.task.strips[way.strip].length, most)

    def cheapest_out(self, way: Way, length: int, chance: Callable[[], float]) -> tuple[float, list[Block]]:
        """The blocks of least worth, by and large, without which a strip has so much length on all days of a way."""
        overfull, more_of = self.days.overfull, self.days.more
        load = self.loads[way.strip] + more_of[way.first, way.last, length]
        if not load & overfull:
            return 0.0, []
        least, more = _TOLD_APART
        first, last, wishes = way.first, way.last, self.task.wishes
        near = [
            (wishes[one[5]][one[6]].worths[one[7]] * (least + more * chance()), one)
            for one in self.strips[way.strip]
            if one[2] < last and first < one[3] and isinstance(one, Block)
        ]
        near.sort()
        out: list[tuple[float, Block, int]] = []
        for cost, one in near:
            mine = more_of[one[2], one[3], one[1] - one[0]]
            if not (load - mine) & overfull:
                return cost, [one]
            out.append((cost, one, mine))
        return _needed(out, load, overfull)

    def place_again(
        self, strip: int, more: Sequence[Block], passes: int, chance: Callable[[], float]
    ) -> list[Block] | None:
        """Lay a strip's blocks out anew with more of them; those that found no place, of the least worth.

        None, and nothing is changed, where one of those that were to come is among them.
        """
        mine = [one for one in self.strips[strip] if isinstance(one, Block)]
        found = laid_anew(self.task, strip, [*more, *mine], passes, chance)
        out = {one[5] for one in found.out}
        if any(one[5] in out for one in more):
            return None
        self.lift(strip, [one for one in mine if one[5] in out])
        self.strips[strip] = found.standing
        for one in more:
            self._stands(strip, one)
        return found.out

    def answer(self) -> Answer:
        """All that stands."""
        blocks = [one for standing in self.strips for one in standing if isinstance(one, Block)]
        return Answer(tuple(sorted(blocks, key=lambda block: block.wish)), self.worth)


def _worth(task: Task, block: Block) -> int:
    return task.wishes[block[5]][block[6]].worths[block[7]]


def block_of(way: Way, wish: int, number: int, size: int, start: int) -> Block:
    """A way of a wish in one of its sizes as a block that begins at a reading."""
    return Block(start, start + way.lengths[size], way.first, way.last, ALWAYS[0], wish, number, size)


def _needed(out: list[tuple[float, Block, int]], load: int, overfull: int) -> tuple[float, list[Block]]:
    """Of blocks, the cheapest first, as many as it takes, less those that can stay after all."""
    lifted = []
    for one in out:
        lifted.append(one)
        load -= one[2]
        if not load & overfull:
            break
    needed, total = [], 0.0
    for cost, block, mine in reversed(lifted):
        if (load + mine) & overfull:
            needed.append(block)
            total += cost
        else:
            load += mine
    return total, needed
