"""What stands where while a task is being filled: blocks set into gaps and lifted again, turn by turn."""

from bisect import bisect_right, insort
from collections.abc import Iterable

from gardenplot.filling.model import ALWAYS, Answer, Block, Taken, Task, Way

Standing = list[Taken | Block]
"""What is not free in a strip or a part of it, from its head on."""

Stretch = tuple[int, Standing, int, int]
"""A strip's number, what stands in a part of it, and where that part begins and ends."""

Gap = tuple[int, int, Standing, int, int]
"""A way and a size by their numbers, what stands in its stretch, and the gap between which readings they fit."""


class Ground:
    """Strips with what stands in them, the wishes that are left over, and what all that stands is worth."""

    def __init__(self, task: Task) -> None:
        self.task = task
        self.strips: list[Standing] = [[*sorted(strip.taken)] for strip in task.strips]
        self.left = [*range(len(task.wishes))]
        self.worth = 0
        self._ways = [_by_strip(ways) for ways in task.wishes]
        self._before: tuple[int, list[int], dict[int, Standing]] = 0, [], {}

    def begin_turn(self) -> None:
        """Remember how it is, so that the turn can be taken back."""
        self._before = self.worth, list(self.left), {}

    def take_back(self) -> None:
        """Put everything back as it was when the turn began."""
        self.worth, self.left, strips = self._before
        for number, strip in strips.items():
            self.strips[number] = strip

    @property
    def touched(self) -> tuple[int, ...]:
        """The strips in which something was lifted in this turn."""
        return tuple(self._before[2])

    @property
    def lost(self) -> int:
        """How much less all is worth than when the turn began."""
        return self._before[0] - self.worth

    def worth_of(self, block: Block) -> int:
        """What one block is worth."""
        return self.task.wishes[block.wish][block.way].worths[block.size]

    def lift(self, strip: int, blocks: Iterable[Block]) -> None:
        """Take blocks up from a strip; their wishes are left over."""
        standing = self.strips[strip]
        self._before[2].setdefault(strip, list(standing))
        for block in blocks:
            standing.remove(block)
            self.left.append(block.wish)
            self.worth -= self.worth_of(block)

    def set(self, wish: int, way: int, size: int, start: int) -> Block:
        """Let a wish that is left over stand there; the ground must be free."""
        chosen = self.task.wishes[wish][way]
        block = Block(start, start + chosen.lengths[size], chosen.first, chosen.last, ALWAYS[0], wish, way, size)
        insort(self.strips[chosen.strip], block)
        self.left.remove(wish)
        self.worth += chosen.worths[size]
        return block

    def best_gap(self, wish: int, stretches: Iterable[Stretch]) -> Gap | None:
        """The way and size of a wish that are worth most and then leave least, in the gap that they fit into."""
        best, most, least = None, -1, 0
        for strip, standing, begin, end in stretches:
            for number, way in self._ways[wish].get(strip, ()):
                lengths, shortest = way.lengths, way.lengths[0]
                until = min(end, way.high)
                for low, high in _gaps(standing, max(begin, way.low), until, way.first, way.last, shortest):
                    size = bisect_right(lengths, high - low) - 1
                    worth, left = way.worths[size], high - low - lengths[size]
                    if worth > most or (worth == most and left < least):
                        best, most, least = (number, size, standing, low, high), worth, left
        return best

    def answer(self) -> Answer:
        """All that stands."""
        blocks = [one for standing in self.strips for one in standing if isinstance(one, Block)]
        return Answer(tuple(sorted(blocks, key=lambda block: block.wish)), self.worth)


def _gaps(standing: Standing, at: int, until: int, first: int, last: int, shortest: int) -> list[tuple[int, int]]:
    """The gaps of a stretch that are free from one day until another and not too short.

    The innermost loop of the search: fields are read by their numbers, which takes half the time of names.
    """
    found = []
    for one in standing:
        if one[2] < last and first < one[3] and first >= one[4]:
            if one[0] - at >= shortest:
                found.append((at, min(one[0], until)))
            if one[1] > at:  # noqa: PLR1730  (a call of max takes longer)
                at = one[1]
    if until - at >= shortest:
        found.append((at, until))
    return [gap for gap in found if gap[1] - gap[0] >= shortest]


def _by_strip(ways: tuple[Way, ...]) -> dict[int, list[tuple[int, Way]]]:
    found: dict[int, list[tuple[int, Way]]] = {}
    for number, way in enumerate(ways):
        found.setdefault(way.strip, []).append((number, way))
    return found
