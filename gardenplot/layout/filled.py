"""Row lines filled with plants: cut by the bed's outline into runs, and kept clear of its obstacles.

The ends of a run keep what the ends of a block keep in a plain bed; beside an obstacle a plant may stand right at the
keep-clear distance. The edge distance is measured across the bed, as it is with a tape. All in whole nanometres.
"""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import cycle

from attrs import evolve

from gardenplot.layout.cells import planted
from gardenplot.layout.clearance import kept_by
from gardenplot.layout.outline import Interval, without
from gardenplot.layout.value import Ends, Grid, Line, Row, Run
from gardenplot.layout.zone import cuts_of, held, within
from gardenplot.plan import Bed, Pattern


def lines_of(grid: Grid, start: int, end: int) -> tuple[Line, ...]:
    """The row lines of a block: those of the grid or, of rows across the bed, one for each rank of the block."""
    if not grid.runs_across:
        return grid.lines
    return tuple(kind.at(offset) for offset, kind in zip(_ranks(grid, start, end), cycle(grid.kinds), strict=False))


def _ranks(grid: Grid, start: int, end: int) -> Sequence[int]:
    """Where the ranks of a block lie."""
    head, foot = grid.ends
    return range(start + head, end - foot + 1, grid.rank)


def line_ground(bed: Bed, grid: Grid, line: Line, start: int, end: int) -> tuple[Interval, ...]:
    """The ground that a row line of a block has between two tape readings, obstacles not counted.

    The bed is as the rows see it: turned, where they are (`turned.bed_for`).
    """
    runs = held(bed, line.low, line.high, across=grid.runs_across)
    return runs if grid.runs_across else within(runs, *grid.reach(line.low, line.high, start, end))


@lru_cache(maxsize=256)
def zone_rows(bed: Bed, grid: Grid, start: int, end: int) -> tuple[Row, ...]:
    """The rows of a block between two tape readings, each with all the plants that its ground holds."""
    rows: list[Row] = []
    across, in_cells, begins = grid.runs_across, grid.pattern is Pattern.CELLS, grid.begins(start)
    cut, kept = cuts_of(bed, across=across), [kept_by(one, across=across) for one in bed.obstacles]
    offsets = _ranks(grid, start, end) if across else grid.offsets
    for number, (offset, kind) in enumerate(zip(offsets, cycle(grid.kinds), strict=False)):
        low, high = offset + kind.low, offset + kind.high
        limits = (0, bed.width.nm) if across else grid.reach(low, high, start, end)
        first, last = (low, high) if kind.reach else (offset, offset)
        stretches = [one.blocked(first, last, number, kind.reach) for one in kept]
        runs = _filled(free_stretches(cut(low, high), limits, kind.ends, stretches), kind, begins)
        if in_cells:
            rows += planted(offset, runs, grid.cell, grid.per_cell)
        else:
            rows.append(Row(offset, runs))
    return tuple(rows)


def plants_in(rows: Iterable[Row]) -> int:
    """Plants of some rows together."""
    return sum([run.count for row in rows for run in row.runs])


def rows_of_cells(bed: Bed, grid: Grid, start: int, end: int) -> tuple[Row, ...]:
    """The rows of whole cells between two tape readings: a run holds cells, its readings are their head sides."""
    return zone_rows(bed, evolve(grid, pattern=Pattern.STRAIGHT), start, end)


def _filled(free: Iterable[Interval], kind: Line, begins: int) -> tuple[Run, ...]:
    """What the free stretches of a row hold: places from their beginnings on, or those of a phase that is kept."""
    step, phase = kind.step, begins + kind.first
    runs: list[Run] = []
    highs: list[int] = []
    behind: int | None = None
    for low, high in free:
        first = low if behind is None else max(low, behind)
        if kind.keeps_phase:
            first = phase + -(-(first - phase) // step) * step
        if first <= high:
            count = (high - first) // step + 1
            behind = first + count * step
            runs.append(Run(first, step, count))
            highs.append(high)
    return _centred(runs, highs) if kind.centred else tuple(runs)


def _centred(runs: list[Run], highs: list[int]) -> tuple[Run, ...]:
    """Runs that begin as early as they can, each moved half as far as it may go without taking a place from the next.

    `highs` are the last places that their ground has.
    """
    moved: list[Run] = []
    next_first: int | None = None
    for run, high in zip(reversed(runs), reversed(highs), strict=True):
        latest = high if next_first is None else min(high, next_first - run.step)
        moved.append(Run(run.first + (latest - run.last) // 2, run.step, run.count))
        next_first = latest - (run.count - 1) * run.step
    return tuple(reversed(moved))


def free_stretches(
    ground: Iterable[Interval], limits: Interval, ends: Ends, blocked: Iterable[Interval | None]
) -> list[Interval]:
    """Where on a row line places may lie: its ground between two limits, less what its ends keep free, less the
    blocked stretches."""
    (start, end), (head, foot) = limits, ends
    free = []
    for left, right in ground:
        low = (left if left > start else start) + head
        high = (right if right < end else end) - foot
        if low <= high:
            free.append((low, high))
    for stretch in blocked:
        if stretch is not None:
            free = without(free, *stretch)
    return free


def first_plants(rows: tuple[Row, ...], wanted: int) -> tuple[Row, ...]:
    """So many plants of the rows, those nearest to the head first and then from the base line across."""
    if wanted >= plants_in(rows):
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


def first_ranks(rows: tuple[Row, ...], wanted: int) -> tuple[Row, ...]:
    """So many plants of rows across the bed, row after row from the head on."""
    kept: list[Row] = []
    for row in rows:
        if wanted <= 0:
            break
        kept.append(Row(row.offset, tuple(_first_runs(row.runs, wanted))))
        wanted -= kept[-1].count
    return tuple(kept)


def _first_runs(runs: tuple[Run, ...], wanted: int) -> Iterable[Run]:
    for run in runs:
        if wanted > 0:
            yield Run(run.first, run.step, min(run.count, wanted))
        wanted -= run.count
