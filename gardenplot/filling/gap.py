"""The best blocks for one gap on one day: an exact dynamic programme over its length, in numpy.

Each wish stands at none or one of its sizes, and the lengths together are no longer than the gap (the multiple-choice
knapsack problem: Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004, chapter 11). Worth comes first, then
ground used. Lengths are counted in the greatest unit that divides them all.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import gcd

import numpy as np
from attrs import frozen
from numpy.typing import NDArray

_FINEST = 2**16
"""Units that a gap is divided into at most: it takes a few ms for each hundred wishes."""

_IMPOSSIBLE = -(2**62)


@frozen
class Sizes:
    """The sizes that a wish could have in a gap: lengths that grow, and what each is worth."""

    lengths: tuple[int, ...]
    worths: tuple[int, ...]


@frozen
class GapFilling:
    """The number of the size that each wish has, or None; the worth; and whether there is none better."""

    sizes: tuple[int | None, ...]
    worth: int
    proven: bool


def fill_gap(length: int, wishes: Sequence[Sizes]) -> GapFilling:
    """The sizes of most worth that fit into a length together, and of these the ones that use most of it."""
    unit = max(1, gcd(*(each for wish in wishes for each in wish.lengths)))
    if length // unit <= _FINEST:
        return _filled(length // unit, [_in_units(wish, unit) for wish in wishes], wishes, proven=True)
    unit = -(-length // _FINEST)
    hopeful = [Sizes(tuple(each // unit for each in wish.lengths), wish.worths) for wish in wishes]
    found = _filled(length // unit, hopeful, wishes, proven=True)
    used = (wish.lengths[size] for wish, size in zip(wishes, found.sizes, strict=True) if size is not None)
    if sum(used) <= length:
        return found
    safe = [_in_units(wish, unit) for wish in wishes]
    return _filled(length // unit, safe, wishes, proven=False)


def _in_units(wish: Sizes, unit: int) -> Sizes:
    return Sizes(tuple(-(-each // unit) for each in wish.lengths), wish.worths)


def _filled(units: int, counted: Sequence[Sizes], wishes: Sequence[Sizes], *, proven: bool) -> GapFilling:
    """The best sizes within a number of units; a used unit counts for less than any worth."""
    scale = units + 1
    best = np.full(units + 1, _IMPOSSIBLE, dtype=np.int64)
    best[0] = 0
    steps = [best]
    for wish in counted:
        better = best.copy()
        for length, worth, longer, dearer, count in progressions(wish):
            _with_sizes(best, better, length, worth * scale + length, longer, dearer * scale + longer, count)
        steps.append(best := better)
    sizes = _traced(steps, counted, scale)
    worth = sum(wish.worths[size] for wish, size in zip(wishes, sizes, strict=True) if size is not None)
    return GapFilling(sizes, worth, proven)


def _with_sizes(
    best: NDArray[np.int64], better: NDArray[np.int64], length: int, worth: int, longer: int, dearer: int, count: int
) -> None:
    """Improve `better` by one of `count` sizes on top of `best`, each a step longer and dearer than the one before.

    The best of 2, 4, 8 ... sizes follows from the best of half as many, and the best of any number from two that
    overlap, since a maximum may be taken twice.
    """
    if length >= len(best):
        return
    run = np.full(len(best), _IMPOSSIBLE, dtype=np.int64)
    run[length:] = best[: len(best) - length] + worth
    held = 1
    while held < count:
        more = min(held, count - held)
        moved = more * longer
        if moved >= len(best):
            break
        np.maximum(run[moved:], run[: len(best) - moved] + more * dearer, out=run[moved:])
        held += more
    np.maximum(better, run, out=better)


@lru_cache(maxsize=4096)
def progressions(wish: Sizes) -> tuple[tuple[int, int, int, int, int], ...]:
    """The sizes as runs with even steps: first length and worth, the step of both, and how many there are.

    Rows by turns grow by turns, so every second or third size may be one run.
    """
    fewest = _runs(wish, 1)
    for apart in (2, 3, 4):
        if len(fewest) < apart:
            break
        fewest = min(fewest, _runs(wish, apart), key=len)
    return fewest


def _runs(wish: Sizes, apart: int) -> tuple[tuple[int, int, int, int, int], ...]:
    return tuple(
        run
        for turn in range(min(apart, len(wish.lengths)))
        for run in _even(wish.lengths[turn::apart], wish.worths[turn::apart])
    )


def _even(lengths: tuple[int, ...], worths: tuple[int, ...]) -> Iterator[tuple[int, int, int, int, int]]:
    """Runs of sizes with one step."""
    longer, dearer = np.diff(lengths), np.diff(worths)
    breaks = np.flatnonzero((np.diff(longer) != 0) | (np.diff(dearer) != 0)) + 1
    at = 0
    for end in (*breaks.tolist(), len(lengths) - 1):
        if end < at:
            continue
        step = (lengths[at + 1] - lengths[at], worths[at + 1] - worths[at]) if end > at else (0, 0)
        yield lengths[at], worths[at], *step, end - at + 1
        at = end + 1


def _traced(steps: list[NDArray[np.int64]], counted: Sequence[Sizes], scale: int) -> tuple[int | None, ...]:
    """Which size each wish has in the best of all lengths, from the last wish back."""
    at = int(np.argmax(steps[-1]))
    found: list[int | None] = []
    for number in range(len(counted) - 1, -1, -1):
        here, before = steps[number + 1][at], steps[number]
        if before[at] == here:
            found.append(None)
            continue
        lengths = np.array(counted[number].lengths, dtype=np.int64)
        worths = np.array(counted[number].worths, dtype=np.int64) * scale + lengths
        fits = np.flatnonzero(lengths <= at)
        size = int(fits[np.flatnonzero(before[at - lengths[fits]] + worths[fits] == here)[0]])
        found.append(size)
        at -= int(lengths[size])
    return tuple(reversed(found))
