"""Square cells with several plants in each: how the plants of a cell stand, and cells turned into rows of plants.

A cell with k plants has at most as many sub-rows as the root of k, rounded up, which hold a, b, a, b ... plants by
turns. Of all such ways the one is taken that keeps plants farthest apart where cell lies beside cell, then one that
reads the same from both sides, then the one with the fewest sub-rows, then the most even. A sub-row of m plants has
them at 1/2m, 3/2m ... of the side, sub-row j of r lies at (2j + 1)/2r of it. Common practice, no source.
"""

from collections.abc import Iterable
from fractions import Fraction
from functools import cache
from math import isqrt, lcm

from gardenplot.layout.value import Row, Run


@cache
def sub_rows(plants: int) -> tuple[int, ...]:
    """How many plants each sub-row of a cell holds: 4 is 2, 2; 5 is 2, 1, 2; 8 is 3, 2, 3."""
    ways = [way for rows in range(1, isqrt(plants - 1) + 2) for way in _by_turns(plants, rows)]
    return max(ways, key=lambda way: (_least_square(way), way == way[::-1], -len(way), -max(way)))


def _by_turns(plants: int, rows: int) -> Iterable[tuple[int, ...]]:
    """All ways to share plants over so many rows that hold a, b, a, b ... of them."""
    odd, even = (rows + 1) // 2, rows // 2
    for one in range(1, plants // odd + 1):
        other, rest = divmod(plants - odd * one, even) if even else (0, plants - odd * one)
        if rest == 0 and (other > 0 or not even):
            yield tuple(other if row % 2 else one for row in range(rows))


def _least_square(way: tuple[int, ...]) -> Fraction:
    """The square of the least distance between plants of a cell and of those beside it, in sides of a cell."""
    rows, parts = len(way), 2 * lcm(*way)
    least = (Fraction(1), Fraction(1, max(way)) ** 2)
    pairs = ((one, other) for one in range(rows) for other in range(one))
    apart = (
        Fraction(min(one - other, rows - one + other), rows) ** 2
        + Fraction(_beside(way[one], way[other], parts), parts) ** 2
        for one, other in pairs
    )
    return min(*least, *apart)


def _beside(one: int, other: int, parts: int) -> int:
    """How far plants of two sub-rows stand apart along them at least, in so many parts of a side."""
    places = [[(2 * number + 1) * parts // (2 * count) for number in range(count)] for count in (one, other)]
    away = (abs(first - second) for first in places[0] for second in places[1])
    return min(min(distance, parts - distance) for distance in away)


def closest(cell: int, plants: int) -> int:
    """The least distance in nm between plants in a row of cells."""
    return cell // max(sub_rows(plants))


def sub_row_offsets(cell: int, plants: int) -> tuple[int, ...]:
    """How far each sub-row lies inside its cell, in nm."""
    rows = len(sub_rows(plants))
    return tuple((2 * row + 1) * cell // (2 * rows) for row in range(rows))


def planted(top: int, cells: Iterable[Run], cell: int, plants: int) -> tuple[Row, ...]:
    """The rows of plants in runs of cells whose near side is `top` nm from the base line."""
    runs = tuple(cells)
    return tuple(
        Row(top + inside, tuple(part for run in runs for part in _sub_row(run, cell, count)))
        for inside, count in zip(sub_row_offsets(cell, plants), sub_rows(plants), strict=True)
    )


def _sub_row(cells: Run, cell: int, count: int) -> Iterable[Run]:
    """The plants of one sub-row through a run of cells: one run where the side divides evenly, else one a cell."""
    first, step = cells.first + cell // (2 * count), cell // count
    if cell % count == 0:
        yield Run(first, step, cells.count * count)
        return
    yield from (Run(first + number * cell, step, count) for number in range(cells.count))
