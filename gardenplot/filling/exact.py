"""The best of all fillings of a small task, by trying them all but those that cannot be better (branch and bound).

Any filling can be slid towards the heads of its strips until every block begins at the head, at the end of something
that is taken, or at the end of another block. So a block begins where one of these lies, or lengths of other wishes
farther (normal patterns: Herz 1972; Christofides and Whitlock 1977), and only such starts are tried.
"""

from collections.abc import Callable, Iterator

from gardenplot.filling.model import ALWAYS, Answer, Block, Task, Way, overlap

_MOST_STARTS, _STEPS_A_TURN = 400, 500


class _TooLargeError(Exception):
    """The task is too large for it, or somebody said to stop."""


def best_of_all(task: Task, known: Answer, steps: int, turned: Callable[[], object] = lambda: None) -> Answer | None:
    """The best filling, `known` if none is better; None where so many steps do not do.

    `turned` is called for every few steps, and ends it by saying False.
    """
    tried = _Tried(task, known, steps, turned)
    try:
        tried.go(0, 0)
    except _TooLargeError:
        return None
    return tried.best


class _Tried:
    """Fillings tried so far: the blocks that stand in the one being tried, and the best of all."""

    def __init__(self, task: Task, known: Answer, steps: int, turned: Callable[[], object]) -> None:
        self.best = known
        self._turned = turned
        self._task = task
        self._steps = steps
        self._stand: list[list[Block]] = [[] for _strip in task.strips]
        top = [max((way.worths[-1] for way in ways), default=0) for ways in task.wishes]
        self._order = sorted(range(len(top)), key=lambda wish: (-top[wish], wish))
        self._to_come = [sum(top[wish] for wish in self._order[at:]) for at in range(len(top) + 1)]
        self._starts: dict[tuple[int, int], list[int]] = {}

    def go(self, at: int, worth: int) -> None:
        """Try the wish at a place of the order, and then those after it."""
        self._step()
        if worth > self.best.worth:
            blocks = sorted((block for ones in self._stand for block in ones), key=lambda block: block.wish)
            self.best = Answer(tuple(blocks), worth)
        if worth + self._to_come[at] <= self.best.worth:
            return
        wish = self._order[at]
        for block, strip, gained in self._blocks(wish):
            self._step()
            if worth + gained + self._to_come[at + 1] <= self.best.worth:
                break
            if not self._is_taken(strip, block):
                self._stand[strip].append(block)
                self.go(at + 1, worth + gained)
                self._stand[strip].pop()
        self.go(at + 1, worth)

    def _step(self) -> None:
        self._steps -= 1
        if self._steps < 0 or (self._steps % _STEPS_A_TURN == 0 and self._turned() is False):
            raise _TooLargeError

    def _is_taken(self, strip: int, block: Block) -> bool:
        return any(overlap(block, one) for one in self._task.strips[strip].taken) or any(
            overlap(block, one) for one in self._stand[strip]
        )

    def _blocks(self, wish: int) -> Iterator[tuple[Block, int, int]]:
        """All that a wish could be, the dearest first, each with its strip and what it is worth."""
        ways = self._task.wishes[wish]
        sizes = [
            (-way.worths[size], number, size) for number, way in enumerate(ways) for size in range(len(way.lengths))
        ]
        for worth, number, size in sorted(sizes):
            way = ways[number]
            length = way.lengths[size]
            last = min(self._task.strips[way.strip].length, way.high) - length
            for start in self._starts_of(wish, way):
                if way.low <= start <= last:
                    block = Block(start, start + length, way.first, way.last, ALWAYS[0], wish, number, size)
                    yield block, way.strip, -worth

    def _starts_of(self, wish: int, way: Way) -> list[int]:
        """Where blocks of a wish may begin in a strip: heads and ends of what is taken, and lengths of others on."""
        key = way.strip, wish
        if key not in self._starts:
            strip = self._task.strips[way.strip]
            here = [
                {length for each in ways if each.strip == way.strip for length in each.lengths}
                for other, ways in enumerate(self._task.wishes)
                if other != wish
            ]
            lows = {each.low for ways in self._task.wishes for each in ways if each.strip == way.strip}
            starts = {0, *lows, *(one.end for one in strip.taken)}
            for lengths in here:
                starts |= {start + length for start in starts for length in lengths if start + length < strip.length}
                if len(starts) > _MOST_STARTS:
                    raise _TooLargeError
            self._starts[key] = sorted(starts)
        return self._starts[key]
