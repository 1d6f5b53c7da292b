"""What wishes are worth at most together for each length that they take up: a dynamic programme, in numpy.

Each wish stands at none or one of its sizes (the multiple-choice knapsack problem: Kellerer, Pferschy and Pisinger,
Knapsack Problems, 2004, chapter 11). A worth is counted so often that a used unit of length counts for less than any.
"""

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from gardenplot.filling.sizes import Sizes, progressions

Row = NDArray[np.signedinteger[Any]]
"""For each length, exactly as long, what can be worth most; less than nothing where nothing is so long."""

_SMALL = 2**30
"""Numbers below it are kept in half of the room, in half of the time."""


def counts_for(worth: int, length: int, scale: int) -> int:
    """What a worth and a used length count for together."""
    return worth * scale + length


def start_of(units: int, wishes: Sequence[Sizes], scale: int) -> Row:
    """The row before any wish: nothing of the length is used. It is of numbers that can count all of the wishes."""
    most = counts_for(sum(wish.worths[-1] for wish in wishes if wish.worths), units, scale)
    row: Row = np.empty(units + 1, dtype=np.int32 if most < _SMALL else np.int64)
    row[:] = _impossible(row)
    row[0] = 0
    return row


def _impossible(row: Row) -> int:
    """So far below nothing that two of them can be added up, and all wishes to them, without coming to anything."""
    return int(np.iinfo(row.dtype).min) // 2


def begun_at(row: Row, low: int) -> Row:
    """A row where nothing more begins before a reading: the ground up to there is left as it is."""
    if low == 0:
        return row
    begun = row.copy()
    begun[:low] = _impossible(row)
    begun[low : low + 1] = row[: low + 1].max()
    return begun


class Table:
    """A row for each of some wishes on top of another row: what is worth most with it and those before it."""

    def __init__(self, first: Row, wishes: Sequence[Sizes], scale: int) -> None:
        self._wishes, self._scale = wishes, scale
        self._rows = np.empty((len(wishes) + 1, len(first)), dtype=first.dtype)
        self._rows[0] = first
        for wish, best, better in zip(wishes, self._rows, self._rows[1:], strict=False):
            better[:] = best
            for length, worth, longer, dearer, count in progressions(wish):
                at_once = length, counts_for(worth, length, scale), longer, counts_for(dearer, longer, scale), count
                _with_sizes(best, better, *at_once)

    @property
    def last(self) -> Row:
        """The row with all wishes."""
        found: Row = self._rows[-1]
        return found

    def traced(self, at: int) -> tuple[list[int | None], int]:
        """Which size each wish has in the best of a length, and the length before the first of them."""
        sizes: list[int | None] = [None] * len(self._wishes)
        column = self._rows[:, at]
        stand = np.flatnonzero(column[1:] != column[:-1])
        while len(stand):
            number = int(stand[-1])
            sizes[number] = self._size_at(number, at)
            at -= self._wishes[number].lengths[sizes[number] or 0]
            column = self._rows[: number + 1, at]
            stand = np.flatnonzero(column[1:] != column[:-1])
        return sizes, at

    def _size_at(self, number: int, at: int) -> int:
        """The size with which a wish makes the row what it is at a length."""
        wish, before, here = self._wishes[number], self._rows[number].item, self._rows[number + 1].item(at)
        return next(
            size
            for size, (length, worth) in enumerate(zip(wish.lengths, wish.worths, strict=True))
            if length <= at and before(at - length) + counts_for(worth, length, self._scale) == here
        )


def _with_sizes(best: Row, better: Row, length: int, worth: int, longer: int, dearer: int, count: int) -> None:
    """Improve `better` by one of `count` sizes on top of `best`, each a step longer and dearer than the one before.

    The best of 2, 4, 8 ... sizes follows from the best of half as many, and the best of any number from two that
    overlap, since a maximum may be taken twice.
    """
    room = len(best) - length
    if room <= 0:
        return
    run, held = best[:room] + worth, 1
    moved_on = np.empty_like(run)
    while held < count:
        more = min(held, count - held)
        moved = more * longer
        if moved >= room:
            break
        before = np.add(run[:-moved], more * dearer, out=moved_on[moved:])
        np.maximum(run[moved:], before, out=run[moved:])
        held += more
    np.maximum(better[length:], run, out=better[length:])
