"""Places kept for the plants of a following crop, and what stands in their way.

A plant is in the way if it stands nearer to a reserved place than its keep-clear distance and is still in use when
the following crop is set out. Distances are compared as squares of whole nanometres.
"""

from collections.abc import Callable
from math import isqrt

import numpy as np
from attrs import evolve, frozen

from gardenplot.layout.positions import positions
from gardenplot.layout.turn import Turn
from gardenplot.layout.value import Grid, Layout, Ring, Row, Run
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
    found = _turned_in_way(layout.grid.turn, followers) if layout.grid.turn else _in_way(layout.grid, followers)
    rows = tuple(_answered(row, found, answer) for row in layout.rows)
    rings = tuple(_ring_answered(ring, followers, answer) for ring in layout.rings)
    return evolve(
        layout,
        fills=tuple(row.runs for row in rows),
        rings=rings,
        plants=sum(row.count for row in rows) + sum(ring.count for ring in rings),
    )


def in_the_way(layout: Layout, followers: tuple[Follower, ...]) -> int:
    """How many plants of a layout stand in the way of the crops that follow."""
    return layout.plants - with_answer(layout, followers, Reserved.PLACES_EMPTY).plants


_InWay = Callable[[int, Run], set[int]]
"""The numbers from 0 of the plants of a run, on a row line at an offset, that stand in the way."""


def _ring_answered(ring: Ring, followers: tuple[Follower, ...], answer: Reserved) -> Ring:
    stays = tuple(place for place in ring.places if not any(_is_near(place, one) for one in followers))
    return Ring(ring.radius, () if answer is Reserved.ROW_EMPTY and len(stays) < ring.count else stays)


def _is_near(place: tuple[int, int], follower: Follower) -> bool:
    away = positions(follower.layout) - np.array(place)
    close = away[(abs(away) < follower.keep_clear).all(axis=1)]
    return any(x * x + y * y < follower.keep_clear**2 for x, y in close.tolist())


def _answered(row: Row, in_way: _InWay, answer: Reserved) -> Row:
    runs = tuple(part for run in row.runs for part in run.without(in_way(row.offset, run)))
    if answer is Reserved.ROW_EMPTY and sum(run.count for run in runs) < row.count:
        return Row(row.offset, ())
    return Row(row.offset, runs)


def _turned_in_way(turn: Turn, followers: tuple[Follower, ...]) -> _InWay:
    """Plant by plant, at their places in the bed."""

    def found(offset: int, run: Run) -> set[int]:
        places = (turn.place(run.first + number * run.step, offset) for number in range(run.count))
        return {number for number, place in enumerate(places) if any(_is_near(place, one) for one in followers)}

    return found


def _in_way(grid: Grid, followers: tuple[Follower, ...]) -> _InWay:
    """From the reserved places as a row sees them, along it and across it."""
    kept = tuple(
        ([(y, x) if grid.runs_across else (x, y) for x, y in positions(one.layout).tolist()], one.keep_clear)
        for one in followers
    )

    def found(offset: int, run: Run) -> set[int]:
        numbers: set[int] = set()
        for places, keep_clear in kept:
            for x, y in places:
                square = keep_clear**2 - (y - offset) ** 2
                if square <= 0:
                    continue
                reach = isqrt(square - 1)
                first = max(0, -(-(x - reach - run.first) // run.step))
                last = min(run.count - 1, (x + reach - run.first) // run.step)
                numbers.update(range(first, last + 1))
        return numbers

    return found
