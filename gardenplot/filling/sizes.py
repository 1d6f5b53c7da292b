"""The sizes that a wish could have in a gap, as they are and counted in units of length."""

from collections.abc import Iterator
from functools import lru_cache
from math import gcd

import numpy as np
from attrs import frozen


@frozen(cache_hash=True)
class Sizes:
    """The sizes that a wish could have in a gap: lengths that grow, and what each is worth."""

    lengths: tuple[int, ...]
    worths: tuple[int, ...]


@lru_cache(maxsize=4096)
def step_of(wish: Sizes) -> int:
    """The greatest unit that divides all lengths of a wish."""
    return gcd(*wish.lengths)


@lru_cache(maxsize=4096)
def in_units(wish: Sizes, unit: int) -> Sizes:
    """A wish with its lengths counted in units, rounded up."""
    return Sizes(tuple(-(-each // unit) for each in wish.lengths), wish.worths)


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
