"""Laying the blocks of one strip out anew: one after the other, each as near to the head as it can be.

Every way to lay blocks out comes about like that in some order. One that fails goes first in the next order (squeaky
wheel optimization: Joslin and Clements 1999).
"""

from bisect import insort
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from gardenplot.filling.gaps import Standing
from gardenplot.filling.model import Block, Taken, Task

_LEAST, _MORE = 0.7, 0.6
"""A block's length and days are taken by chance for between 0.7 and 1.3 of what they are."""

_BEGUN_AGAIN = 0.2
"""How often the next order is one near to the best so far, and does not follow from the last one."""

_EXCHANGED = 0.3
"""How often two blocks change their places in the order besides."""


_Asked = tuple[int, int, int, int]


class Laid(NamedTuple):
    """What stands in a strip, and the blocks that found no place, which are worth so much."""

    standing: Standing
    out: list[Block]
    lost: int


class _Try(NamedTuple):
    """The same while orders are tried: blocks are bare tuples."""

    standing: list[tuple[int, ...]]
    out: list[Block]
    lost: int

    @property
    def laid(self) -> Laid:
        """With names again."""
        return Laid([one if isinstance(one, Taken) else Block(*one) for one in self.standing], self.out, self.lost)


def laid_anew(task: Task, strip: int, blocks: Sequence[Block], passes: int, chance: Callable[[], float]) -> Laid:
    """Blocks of a strip laid out in so many orders at most, until all have a place; what loses least.

    The first order is the one that they are handed over in; where they stand does not count.
    """
    order, best, begun = list(blocks), None, list(blocks)
    taken, asked = [*sorted(task.strips[strip].taken)], {one.wish: _asked(task, strip, one) for one in blocks}
    for number in range(passes):
        if number == 1:
            order.sort(key=lambda one: (one[1] - one[0]) * -(_LEAST + _MORE * chance()))
        elif number == 2:
            order.sort(key=lambda one: (one[3] - one[2]) * -(_LEAST + _MORE * chance()))
        found = _laid(taken, order, asked)
        if best is None or found.lost < best.lost:
            best, begun = found, order
        if not found.out:
            break
        order = _near(begun, best.out, chance) if chance() < _BEGUN_AGAIN else _next(order, found.out, chance)
    return best.laid if best is not None else Laid([*taken], list(blocks), 0)


def _next(order: list[Block], out: list[Block], chance: Callable[[], float]) -> list[Block]:
    """Those that failed before the others, and sometimes two exchanged."""
    squeaky = {one[5] for one in out}
    changed = out + [one for one in order if one[5] not in squeaky]
    if chance() < _EXCHANGED:
        here, there = int(chance() * len(changed)), int(chance() * len(changed))
        changed[here], changed[there] = changed[there], changed[here]
    return changed


def _near(order: list[Block], out: list[Block], chance: Callable[[], float]) -> list[Block]:
    """One of those that failed before some others, and any one somewhere else."""
    changed = order.copy()
    place = changed.index(out[int(chance() * len(out))])
    changed.insert(int(chance() * place), changed.pop(place))
    mover = changed.pop(int(chance() * len(changed)))
    changed.insert(int(chance() * (len(changed) + 1)), mover)
    return changed


def _asked(task: Task, strip: int, block: Block) -> _Asked:
    """What a block asks for: from where on it may begin, its length, where it must end, and its worth."""
    way = task.wishes[block.wish][block.way]
    return max(0, way.low), block.end - block.start, min(task.strips[strip].length, way.high), way.worths[block.size]


def _laid(taken: Sequence[Taken], order: Sequence[Block], asked: Mapping[int, _Asked]) -> _Try:
    """Blocks laid out in one order.

    The innermost loop of all: fields are read by their numbers and blocks made without names, which takes half the
    time. What begins beyond a block's end ends the looking, whatever its days: all that follows lies farther on.
    """
    standing: list[tuple[int, ...]] = [*taken]
    out, lost = [], 0
    for block in order:
        _begin, _end, first, last, since, wish, way, size = block
        at, length, limit, worth = asked[wish]
        until = at + length
        for one in standing:
            if one[0] >= until:
                break
            if one[2] < last and one[1] > at and first < one[3] and first >= one[4]:
                at = one[1]
                until = at + length
                if until > limit:
                    break
        if until > limit:
            out.append(block)
            lost += worth
        else:
            insort(standing, (at, until, first, last, since, wish, way, size))
    return _Try(standing, out, lost)
