"""Rows in a bed that is no plain rectangle: cut by its outline into runs, and kept clear of its obstacles.

The ends of a run keep what the ends of a block keep in a plain bed; beside an obstacle a plant may stand right at the
keep-clear distance. The edge distance is measured across the bed, as it is with a tape. All in whole nanometres.
"""

from collections.abc import Iterable
from fractions import Fraction
from math import ceil, isqrt, pi

from gardenplot.layout.along import first_in_row
from gardenplot.layout.outline import Interval, Point, runs_across, without
from gardenplot.layout.round import area_between, chord, corners, strip_held
from gardenplot.layout.value import Grid, Row, Run
from gardenplot.plan import Bed, Obstacle, Pattern
from gardenplot.plan.shapes import is_rectangle, straight_corners
from gardenplot.plan.simple import twice_area


def is_plain(bed: Bed) -> bool:
    """Whether a bed is a rectangle with nothing in it, which closed formulas count."""
    return is_rectangle(bed) and not bed.obstacles


def corners_of(bed: Bed) -> tuple[Point, ...]:
    """The corners of a bed, also of a rectangle; of a disc those of the polygon that it is drawn as."""
    return straight_corners(bed) if bed.diameter is None else corners(bed.diameter.nm)


def row_ground(bed: Bed, grid: Grid, number: int, start: int, end: int) -> tuple[Interval, ...]:
    """The ground that row `number`, from 0, has between two tape readings, obstacles not counted."""
    offset, edge = grid.edge + number * grid.between, max(0, min(grid.edge_least, grid.edge))
    runs = _held_along(bed, offset - edge, offset + edge)
    return tuple((max(left, start), min(right, end)) for left, right in runs if max(left, start) < min(right, end))


def _held_along(bed: Bed, low: int, high: int) -> tuple[Interval, ...]:
    """The tape readings at which a bed holds everything between two offsets."""
    if bed.diameter is not None:
        return strip_held(bed.diameter.nm, low, high)
    return runs_across(corners_of(bed), low, high)


def held_across(bed: Bed, reading: int) -> tuple[Interval, ...]:
    """The offsets from the base line between which a bed lies at a tape reading."""
    if bed.diameter is not None:
        return chord(bed.diameter.nm, reading)
    turned = [(y, x) for x, y in corners_of(bed)]
    return runs_across(turned, reading, reading)


def zone_rows(bed: Bed, grid: Grid, start: int, end: int) -> tuple[Row, ...]:
    """The rows of a block between two tape readings, each with all the plants that its ground holds."""
    return tuple(
        Row(grid.edge + number * grid.between, tuple(_filled(bed, grid, number, start, end)))
        for number in range(grid.rows)
    )


def _filled(bed: Bed, grid: Grid, number: int, start: int, end: int) -> Iterable[Run]:
    head, foot = grid.ends
    blocked = [_blocked(one, grid.edge + number * grid.between, number) for one in bed.obstacles]
    keeps_phase = grid.pattern in (Pattern.STAGGERED, Pattern.TRIANGULAR)
    phase = start + first_in_row(grid.pattern, number, grid.in_row, grid.ends) if keeps_phase else None
    last: int | None = None
    for left, right in row_ground(bed, grid, number, start, end):
        free: tuple[Interval, ...] = ((left + head, right - foot),) if right - left >= head + foot else ()
        for first, end_of_it in (one for one in blocked if one is not None):
            free = without(free, first, end_of_it)
        for low, high in free:
            run = _run(low if last is None else max(low, last + grid.in_row), high, grid.in_row, phase)
            if run.count > 0:
                last = run.last
                yield run


def _run(low: int, high: int, step: int, phase: int | None) -> Run:
    """The plants from `low` to `high`: from `low` on, or at the places of a phase kept all over the block."""
    first = low if phase is None else phase + -(-(low - phase) // step) * step
    return Run(first, step, (high - first) // step + 1 if first <= high else 0)


def _blocked(obstacle: Obstacle, offset: int, number: int) -> Interval | None:
    """The stretch of a row in which no plant may stand because of an obstacle; its very ends are free."""
    if obstacle.rows and number + 1 not in obstacle.rows:
        return None
    twice_clear = 2 * (obstacle.keep_clear.nm if obstacle.keep_clear else 0)
    twice_beside = 2 * abs(offset - obstacle.y.nm)
    if obstacle.diameter is not None:
        twice_reach, twice_half = obstacle.diameter.nm + twice_clear, 0
    else:
        twice_reach, twice_half = twice_clear, obstacle.length.nm if obstacle.length else 0
        twice_beside = max(0, twice_beside - (obstacle.width.nm if obstacle.width else 0))
    if twice_beside >= twice_reach and (twice_beside or twice_reach):
        return None
    square = twice_reach**2 - twice_beside**2
    root = isqrt(square)
    twice_away = twice_half + root + (0 if root * root == square else 1)
    away = (twice_away + 1) // 2
    return (obstacle.x.nm - away, obstacle.x.nm + away) if away else None


def first_plants(rows: tuple[Row, ...], wanted: int) -> tuple[Row, ...]:
    """So many plants of the rows, those nearest to the head first and then from the base line across."""
    total = sum(row.count for row in rows)
    if wanted >= total:
        return rows
    low = min(run.first for row in rows for run in row.runs) - 1
    high = max(run.last for row in rows for run in row.runs)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if _up_to(rows, middle) >= wanted else (middle, high)
    left_at_it = wanted - _up_to(rows, high - 1)
    kept = []
    for row in rows:
        here = sum(_count(run, high) - _count(run, high - 1) for run in row.runs)
        taken = min(here, left_at_it)
        left_at_it -= taken
        kept.append(Row(row.offset, tuple(_cut(row.runs, high if taken else high - 1))))
    return tuple(kept)


def _up_to(rows: tuple[Row, ...], reading: int) -> int:
    return sum(_count(run, reading) for row in rows for run in row.runs)


def _count(run: Run, reading: int) -> int:
    return max(0, min(run.count, (reading - run.first) // run.step + 1))


def _cut(runs: tuple[Run, ...], reading: int) -> Iterable[Run]:
    return (Run(run.first, run.step, count) for run in runs if (count := _count(run, reading)))


def area(bed: Bed, start: int, end: int) -> int:
    """Square nanometres of a bed between two tape readings, less its obstacles and what is kept clear of them."""
    return max(0, _held(bed, start, end) - sum(_kept_clear(one) for one in bed.obstacles if start <= one.x.nm <= end))


def _held(bed: Bed, start: int, end: int) -> int:
    if bed.diameter is not None:
        return area_between(bed.diameter.nm, start, end)
    clipped = clip(corners_of(bed), start, end)
    return twice_area(clipped) // 2 if len(clipped) > 2 else 0


def _kept_clear(obstacle: Obstacle) -> int:
    clear = obstacle.keep_clear.nm if obstacle.keep_clear else 0
    if obstacle.diameter is not None:
        return ceil(pi * (obstacle.diameter.nm / 2 + clear) ** 2)
    length = obstacle.length.nm if obstacle.length else 0
    width = obstacle.width.nm if obstacle.width else 0
    return length * width + 2 * clear * (length + width) + ceil(pi * clear**2)


def clip(corners: tuple[Point, ...], start: int, end: int) -> tuple[Point, ...]:
    """A polygon between two tape readings; where it falls apart, its parts hang together by lines without area.

    Cut points are rounded to whole nanometres (Sutherland and Hodgman's reentrant clipping).
    """
    points = corners
    for limit, side in ((start, 1), (end, -1)):
        kept: list[Point] = []
        for one, other in zip(points, [*points[1:], *points[:1]], strict=True):
            inside, next_inside = side * (one[0] - limit) >= 0, side * (other[0] - limit) >= 0
            if inside:
                kept.append(one)
            if inside != next_inside:
                kept.append(
                    (limit, one[1] + round(Fraction((other[1] - one[1]) * (limit - one[0]), other[0] - one[0])))
                )
        points = tuple(kept)
    return points
