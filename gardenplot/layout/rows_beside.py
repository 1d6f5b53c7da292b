"""Row lines of one's own that put no plant in the way of a following crop: as many as the free ground has room for.

Rows from the base line on, each as near as its row spacing and the places kept allow, and the same from the other
edge, give the first and the last offset of every row; the middles of these keep the row spacing.
"""

from itertools import pairwise

from gardenplot.layout.outline import Interval, without
from gardenplot.layout.positions import positions
from gardenplot.layout.reserved import Follower
from gardenplot.layout.value import Grid


def rows_beside(grid: Grid, followers: tuple[Follower, ...], *, apart: int, finest: int) -> tuple[int, ...]:
    """Offsets in nm of rows at least `apart` that keep clear of all places kept, centred where their ground is free.

    They are whole multiples of `finest` where that keeps every distance. None where there is no such row.
    """
    free = _free(grid, followers)
    low = _first_rows(free, apart)
    high = tuple(-at for at in reversed(_first_rows(_mirrored(free), apart)))
    sides = tuple(low[number] if 2 * number < len(low) else high[number] for number in range(len(low)))
    middles = tuple((one + other) // 2 for one, other in zip(low, high, strict=True))
    wanted = (_marked(middles, finest), middles, _marked(sides, finest), sides)
    return next(rows for rows in wanted if _keeps(rows, free, apart))


def _free(grid: Grid, followers: tuple[Follower, ...]) -> tuple[Interval, ...]:
    """Where across the bed a row line may lie, its very ends included."""
    if grid.width < 2 * grid.edge_least:
        return ()
    free = [(grid.edge_least, grid.width - grid.edge_least)]
    for follower in followers:
        for y in sorted(set(positions(follower.layout)[:, 1].tolist())):
            free = without(free, y - follower.keep_clear, y + follower.keep_clear)
    return tuple(free)


def _first_rows(free: tuple[Interval, ...], apart: int) -> tuple[int, ...]:
    """Rows `apart` nm from one another, each as early as it may be."""
    rows: list[int] = []
    for low, high in free:
        at = max(low, rows[-1] + apart) if rows else low
        while at <= high:
            rows.append(at)
            at += apart
    return tuple(rows)


def _mirrored(free: tuple[Interval, ...]) -> tuple[Interval, ...]:
    return tuple((-high, -low) for low, high in reversed(free))


def _marked(rows: tuple[int, ...], finest: int) -> tuple[int, ...]:
    return tuple(at // finest * finest for at in rows)


def _keeps(rows: tuple[int, ...], free: tuple[Interval, ...], apart: int) -> bool:
    inside = all(any(low <= at <= high for low, high in free) for at in rows)
    return inside and all(after - one >= apart for one, after in pairwise(rows))
