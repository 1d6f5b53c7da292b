"""The best blocks for one gap on one day: an exact dynamic programme over its length, in numpy.

Each wish stands at none or one of its sizes, and the lengths together are no longer than the gap (the multiple-choice
knapsack problem: Kellerer, Pferschy and Pisinger, Knapsack Problems, 2004, chapter 11). Worth comes first, then
ground used. Lengths are counted in the greatest unit that divides them all.
"""

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from math import gcd
from typing import NamedTuple

import numpy as np
from attrs import evolve, frozen
from numpy.typing import NDArray

from gardenplot.filling.likely import Ends, priced

_FINEST = 2**16
"""Units that a gap is divided into at most: it takes a few ms for each hundred wishes."""

_IMPOSSIBLE = -(2**62)

_FEW, _PART = 2, 4
"""Wishes that are tried first: the likeliest quarter, and no fewer than a few."""


@frozen(cache_hash=True)
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


Room = tuple[int, int]
"""Between which readings of the gap a wish may stand."""


def fill_gap(length: int, wishes: Sequence[Sizes], rooms: Sequence[Room] | None = None) -> GapFilling:
    """The sizes of most worth that fit into a length together, and of these the ones that use most of it.

    With `rooms` each wish stands in its own, and those that stand follow one another as their wishes are listed.
    Rooms that grow from wish to wish at both ends leave out nothing by that: of two blocks that stand the other way
    round, each could have the other's place.
    """
    rooms = rooms or [(0, length)] * len(wishes)
    unit = max(1, gcd(*map(_step_of, wishes), *{low for low, _high in rooms}))
    if length // unit <= _FINEST:
        return _filled(length // unit, [_in_units(wish, unit) for wish in wishes], wishes, _narrow(rooms, unit))
    unit = -(-length // _FINEST)
    hopeful = [Sizes(tuple(each // unit for each in wish.lengths), wish.worths) for wish in wishes]
    found = _filled(length // unit, hopeful, wishes, [(low // unit, high // unit) for low, high in rooms])
    if packed(wishes, rooms, found.sizes) is not None:
        return found
    safe = [_in_units(wish, unit) for wish in wishes]
    return evolve(_filled(length // unit, safe, wishes, _narrow(rooms, unit)), proven=False)


def packed(wishes: Sequence[Sizes], rooms: Sequence[Room], sizes: Sequence[int | None]) -> tuple[int, ...] | None:
    """Where each wish begins if all stand as near to the head as they can; None where one leaves its room."""
    at, starts = 0, []
    for wish, (low, high), size in zip(wishes, rooms, sizes, strict=True):
        start = max(at, low)
        starts.append(start)
        if size is not None:
            at = start + wish.lengths[size]
            if at > high:
                return None
    return tuple(starts)


@lru_cache(maxsize=4096)
def _step_of(wish: Sizes) -> int:
    return gcd(*wish.lengths)


@lru_cache(maxsize=4096)
def _in_units(wish: Sizes, unit: int) -> Sizes:
    return Sizes(tuple(-(-each // unit) for each in wish.lengths), wish.worths)


def _narrow(rooms: Sequence[Room], unit: int) -> list[Room]:
    return [(-(-low // unit), high // unit) for low, high in rooms]


def _filled(units: int, counted: Sequence[Sizes], wishes: Sequence[Sizes], rooms: Sequence[Room]) -> GapFilling:
    """The best sizes within a number of units; a used unit counts for less than any worth.

    Where all have one room the likeliest wishes are tried first, and others only where one of them could be in a
    better filling. Rooms that differ leave so much of a gap empty that a price for all of it rules nothing out.
    """
    if len(set(rooms)) > 1:
        return _told(_best_of(units, counted, range(len(wishes)), rooms)[0], wishes)
    scale = units + 1
    fits = [min(units, high) - max(0, low) for low, high in rooms]
    by_price = priced(units, [_ends(wish, room, scale) for wish, room in zip(counted, fits, strict=True)])
    likely = by_price.first(max(_FEW, len(wishes) // _PART))
    found, most = _best_of(units, counted, likely, rooms)
    more = [number for number in range(len(wishes)) if by_price.could_be_in(number, most)]
    if not set(more) <= set(likely):
        found, most = _best_of(units, counted, sorted({*likely, *more}), rooms)
    return _told(found, wishes)


def _told(found: Mapping[int, int | None], wishes: Sequence[Sizes]) -> GapFilling:
    sizes = tuple(found.get(number) for number in range(len(wishes)))
    worth = sum(wish.worths[size] for wish, size in zip(wishes, sizes, strict=True) if size is not None)
    return GapFilling(sizes, worth, proven=True)


def _ends(wish: Sizes, room: int, scale: int) -> Ends:
    """The first and the last of each run of sizes that fits into a room, with what they count for."""
    found = []
    for length, worth, longer, dearer, count in progressions(wish):
        if length <= room:
            steps = min(count - 1, (room - length) // longer) if longer else 0
            last = length + steps * longer
            found += [(length, worth * scale + length), (last, (worth + steps * dearer) * scale + last)]
    return tuple(found)


def _best_of(
    units: int, counted: Sequence[Sizes], some: Sequence[int], rooms: Sequence[Room]
) -> tuple[dict[int, int | None], int]:
    """The best sizes of some of the wishes, by their numbers, and what they count for."""
    scale = units + 1
    best = np.full(units + 1, _IMPOSSIBLE, dtype=np.int64)
    best[0] = 0
    steps: list[_Step] = []
    for number in some:
        low, high = rooms[number]
        before = _begun_at(best, low)
        after = before.copy()
        for length, worth, longer, dearer, count in progressions(counted[number]):
            at_once = length, worth * scale + length, longer, dearer * scale + longer, count
            _with_sizes(before[: high + 1], after[: high + 1], *at_once)
        steps.append(_Step(best, before, after))
        best = after
    sizes = _traced(steps, best, [counted[number] for number in some], scale)
    return dict(zip(some, sizes, strict=True)), int(best.max())


class _Step(NamedTuple):
    """What each length is worth before a wish, where its room has begun, and with that wish."""

    earlier: NDArray[np.int64]
    before: NDArray[np.int64]
    after: NDArray[np.int64]


def _begun_at(best: NDArray[np.int64], low: int) -> NDArray[np.int64]:
    """What each length is worth where nothing more begins before `low`: the ground up to there is left as it is."""
    if low == 0:
        return best
    begun = best.copy()
    begun[:low] = _IMPOSSIBLE
    begun[low : low + 1] = best[: low + 1].max()
    return begun


def _with_sizes(
    best: NDArray[np.int64], better: NDArray[np.int64], length: int, worth: int, longer: int, dearer: int, count: int
) -> None:
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


def _traced(
    steps: list[_Step], last: NDArray[np.int64], counted: Sequence[Sizes], scale: int
) -> tuple[int | None, ...]:
    """Which size each wish has in the best of all lengths, from the last wish back."""
    at = int(np.argmax(last))
    found: list[int | None] = []
    for wish, step in zip(reversed(counted), reversed(steps), strict=True):
        here, size = step.after[at], None
        if step.before[at] != here:
            lengths = np.array(wish.lengths, dtype=np.int64)
            worths = np.array(wish.worths, dtype=np.int64) * scale + lengths
            fits = np.flatnonzero(lengths <= at)
            size = int(fits[np.flatnonzero(step.before[at - lengths[fits]] + worths[fits] == here)[0]])
            at -= int(lengths[size])
        found.append(size)
        if step.earlier[at] != step.before[at]:
            at = int(np.argmax(step.earlier[: at + 1]))
    return tuple(reversed(found))
