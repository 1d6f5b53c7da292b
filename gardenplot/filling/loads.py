"""How much of a strip is in use on each day, kept in one whole number, so that all days are added and asked at once.

Each day has a field of bits. It begins so far below half its range as the strip is long, less what is taken, so that
its topmost bit is set as soon as the strip is overfull on that day. Sums in fields of one word: Lamport 1975,
"Multiple byte processing with full-word instructions".
"""

from collections.abc import Mapping
from itertools import pairwise

from gardenplot.filling.model import ALWAYS, Strip, Task


class _More(dict[tuple[int, int, int], int]):
    """Worked out when it is asked for first: the search asks for little else."""

    def __init__(self, spans: Mapping[tuple[int, int], int]) -> None:
        super().__init__()
        self._spans = spans

    def __missing__(self, key: tuple[int, int, int]) -> int:
        first, last, length = key
        self[key] = self._spans[first, last] * length
        return self[key]


class Loads:
    """Numbers for the days of a task: what an empty strip has, and what a block adds to it."""

    def __init__(self, task: Task) -> None:
        spans = {(way.first, way.last) for ways in task.wishes for way in ways}
        spans |= {(one.first, one.last) for strip in task.strips for one in strip.taken}
        days = sorted({day for span in spans for day in span})
        self._place = {day: place for place, day in enumerate(days)}
        self._bits = max((strip.length for strip in task.strips), default=0).bit_length() + 2
        self._top = 1 << (self._bits - 1)
        every = self._ones(0, max(0, len(days) - 1))
        self.overfull = every * self._top
        """The topmost bit of every field: what a number has of these is too much."""
        self._spans = {span: self._ones(*map(self._place.__getitem__, span)) for span in sorted(spans)}
        self.more = _More(self._spans)
        """What a block adds to the number of its strip, by its first and last day and its length."""
        self.empty = [self._of(strip, days) for strip in task.strips]

    def _ones(self, begin: int, end: int) -> int:
        return ((1 << (self._bits * max(begin, end))) - (1 << (self._bits * begin))) // ((1 << self._bits) - 1)

    def _of(self, strip: Strip, days: list[int]) -> int:
        return sum(
            (self._top - 1 - strip.length + taken_on(strip, day)) << (self._bits * place)
            for place, (day, _next) in enumerate(pairwise(days))
        )


def taken_on(strip: Strip, day: int) -> int:
    """How much of a strip is taken on a day, apart from what blocks that were there before may share."""
    taken = sorted(
        (one.start, one.end) for one in strip.taken if one.first <= day < one.last and one.since == ALWAYS[0]
    )
    length = at = 0
    for start, end in taken:
        length += max(0, min(end, strip.length) - max(at, start))
        at = max(at, min(end, strip.length))
    return length
