"""The gaps of a strip that are free from one day until another, and the one that a way fits best."""

from bisect import bisect_right
from typing import NamedTuple

from gardenplot.filling.model import Block, Taken, Way

Standing = list[Taken | Block]
"""What is not free in a strip, from its head on."""


class Gap(NamedTuple):
    """Where a way would stand: from which reading on, in which size, what that is worth and how snug it lies."""

    start: int
    size: int
    worth: int
    snug: float


def best_gap(standing: Standing, way: Way, length: int, most: int) -> Gap | None:
    """Where a way is worth most in a strip of some length, in a size up to `most`, and then lies against most.

    How much a block touches tells of good packings (touching perimeter: Lodi, Martello and Vigo 1999).
    """
    best, lengths, days = None, way.lengths, way.last - way.first
    for low, high, before, after in _gaps(standing, way, length):
        size = min(bisect_right(lengths, high - low) - 1, most)
        worth, block = way.worths[size], lengths[size]
        if best is not None and worth < best.worth:
            continue
        snug = (before + after if high - low == block else max(before, after)) / days - (high - low) / (8 * length)
        if best is None or worth > best.worth or snug > best.snug:
            best = Gap(low if before >= after else high - block, size, worth, snug)
    return best


def _gaps(standing: Standing, way: Way, length: int) -> list[tuple[int, int, int, int]]:
    """The gaps that a way fits into: from, to, and for how many of its days something lies against either end.

    The innermost loop of the search: fields are read by their numbers, which takes half the time of names.
    """
    first, last, shortest = way.first, way.last, way.lengths[0]
    at, until = max(0, way.low), min(length, way.high)
    before = last - first if at == 0 else 0
    found: list[tuple[int, int, int, int]] = []
    for one in standing:
        if one[2] < last and first < one[3] and first >= one[4]:
            begin, end = one[2], one[3]
            shared = (end if end < last else last) - (begin if begin > first else first)
            if one[0] - at >= shortest:
                found.append((at, one[0] if one[0] < until else until, before, shared))
            if one[1] > at:
                at, before = one[1], shared
            elif one[1] == at:
                before += shared
    if until - at >= shortest:
        found.append((at, until, before, last - first if until == length else 0))
    return [gap for gap in found if gap[1] - gap[0] >= shortest]
