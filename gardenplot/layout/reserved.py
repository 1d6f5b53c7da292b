"""Places kept for the plants of a following crop, and what stands in their way.

A plant is in the way if it stands nearer to a reserved place than its keep-clear distance and is still in use when
the following crop is set out. Distances are compared as squares of whole nanometres.
"""

from collections.abc import Iterable
from math import isqrt

import numpy as np
from attrs import evolve, frozen

from gardenplot.layout.positions import positions
from gardenplot.layout.value import Layout, Ring, Row, Run
from gardenplot.plan import Pattern, Planting, Reserved
from gardenplot.season import Dates


@frozen
class Follower:
    """A following crop's layout and the distance in nm that is kept clear of its plants."""

    layout: Layout
    keep_clear: int


def follows(later: Planting, later_dates: Dates, earlier_dates: Dates) -> bool:
    """Whether a planting has its places reserved in another's ground: set out later, with something to keep clear."""
    if later.keep_clear is None or later_dates.in_ground is None:
        return False
    return earlier_dates.in_ground is None or earlier_dates.in_ground < later_dates.in_ground


def still_in_use(earlier: Dates, later: Dates) -> bool:
    """Whether a planting still stands when the one that follows it is set out."""
    return earlier.out is None or later.in_ground is None or later.in_ground < earlier.out


def with_answer(layout: Layout, followers: tuple[Follower, ...], answer: Reserved) -> Layout:
    """The layout without the plants that the answer gives up; cut first gives up none."""
    if answer is Reserved.CUT_FIRST or not followers or layout.grid.pattern is Pattern.BROADCAST:
        return layout
    places = tuple((_places(one, across=layout.grid.runs_across), one.keep_clear) for one in followers)
    rows = tuple(_answered(row, places, answer) for row in layout.rows)
    rings = tuple(_ring_answered(ring, followers, answer) for ring in layout.rings)
    return evolve(
        layout, rows=rows, rings=rings, plants=sum(row.count for row in rows) + sum(ring.count for ring in rings)
    )


def in_the_way(layout: Layout, followers: tuple[Follower, ...]) -> int:
    """How many plants of a layout stand in the way of the crops that follow."""
    return layout.plants - with_answer(layout, followers, Reserved.PLACES_EMPTY).plants


_Kept = tuple[tuple[tuple[int, int], ...], int]
"""Reserved places as a row of plants sees them, along it and across it, and what is kept clear of each."""


def _places(follower: Follower, *, across: bool) -> tuple[tuple[int, int], ...]:
    return tuple((y, x) if across else (x, y) for x, y in positions(follower.layout).tolist())


def _ring_answered(ring: Ring, followers: tuple[Follower, ...], answer: Reserved) -> Ring:
    stays = tuple(place for place in ring.places if not any(_is_near(place, one) for one in followers))
    return Ring(ring.radius, () if answer is Reserved.ROW_EMPTY and len(stays) < ring.count else stays)


def _is_near(place: tuple[int, int], follower: Follower) -> bool:
    away = positions(follower.layout) - np.array(place)
    return any(x * x + y * y < follower.keep_clear**2 for x, y in away.tolist())


def _answered(row: Row, kept: tuple[_Kept, ...], answer: Reserved) -> Row:
    runs = tuple(part for run in row.runs for part in _without(run, _in_way(row.offset, run, kept)))
    if answer is Reserved.ROW_EMPTY and sum(run.count for run in runs) < row.count:
        return Row(row.offset, ())
    return Row(row.offset, runs)


def _in_way(offset: int, run: Run, kept: tuple[_Kept, ...]) -> set[int]:
    """The numbers from 0 of the plants of a run that stand in the way."""
    found: set[int] = set()
    for places, keep_clear in kept:
        for x, y in places:
            square = keep_clear**2 - (y - offset) ** 2
            if square <= 0:
                continue
            reach = isqrt(square - 1)
            first = max(0, -(-(x - reach - run.first) // run.step))
            last = min(run.count - 1, (x + reach - run.first) // run.step)
            found.update(range(first, last + 1))
    return found


def _without(run: Run, gone: set[int]) -> Iterable[Run]:
    """What is left of a run without some of its plants."""
    begin: int | None = None
    for number in range(run.count + 1):
        stays = number < run.count and number not in gone
        if stays and begin is None:
            begin = number
        if not stays and begin is not None:
            yield Run(run.first + begin * run.step, run.step, number - begin)
            begin = None
