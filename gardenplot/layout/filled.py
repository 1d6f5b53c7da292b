"""Row lines filled with plants: cut by the bed's outline into runs, and kept clear of its obstacles.

The ends of a run keep what the ends of a block keep in a plain bed; beside an obstacle a plant may stand right at the
keep-clear distance. The edge distance is measured across the bed, as it is with a tape. All in whole nanometres.
"""

from collections.abc import Iterable
from functools import lru_cache

from attrs import evolve

from gardenplot.layout.cells import planted
from gardenplot.layout.clearance import blocked
from gardenplot.layout.outline import Interval, without
from gardenplot.layout.value import Grid, Line, Row, Run
from gardenplot.layout.zone import held, within
from gardenplot.plan import Bed, Pattern


def lines_of(grid: Grid, start: int, end: int) -> tuple[Line, ...]:
    """The row lines of a block: those of the grid or, of rows across the bed, one for each rank of the block."""
    if not grid.runs_across or not grid.kinds:
        return grid.lines
    head, foot = grid.ends
    ranks = range((end - start - head - foot) // grid.rank + 1) if end - start >= head + foot else ()
    return tuple(grid.kinds[rank % len(grid.kinds)].at(start + head + rank * grid.rank) for rank in ranks)


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
    for number, line in enumerate(lines_of(grid, start, end)):
        runs = tuple(_filled(bed, grid, line, number, start, end))
        if grid.pattern is Pattern.CELLS:
            rows += planted(line.offset, runs, grid.cell, grid.per_cell)
        else:
            rows.append(Row(line.offset, runs))
    return tuple(rows)


def rows_of_cells(bed: Bed, grid: Grid, start: int, end: int) -> tuple[Row, ...]:
    """The rows of whole cells between two tape readings: a run holds cells, its readings are their head sides."""
    return zone_rows(bed, evolve(grid, pattern=Pattern.STRAIGHT), start, end)


def _filled(bed: Bed, grid: Grid, line: Line, number: int, start: int, end: int) -> Iterable[Run]:
    stretches = [blocked(one, line, number, across=grid.runs_across) for one in bed.obstacles]
    phase = grid.begins(start) + line.first if line.keeps_phase else None
    found: list[tuple[Run, int]] = []
    for low, high in free_stretches(bed, grid, line, stretches, start, end):
        run = _run(max(low, found[-1][0].last + line.step) if found else low, high, line.step, phase)
        if run.count > 0:
            found.append((run, high))
    return _centred(found) if line.centred else (run for run, _high in found)


def _centred(found: list[tuple[Run, int]]) -> Iterable[Run]:
    """Runs that begin as early as they can, each moved half as far as it may go without taking a place from the next.

    Each comes with the last place that its ground has.
    """
    moved: list[Run] = []
    next_first: int | None = None
    for run, high in reversed(found):
        latest = high if next_first is None else min(high, next_first - run.step)
        moved.append(Run(run.first + (latest - run.last) // 2, run.step, run.count))
        next_first = latest - (run.count - 1) * run.step
    return reversed(moved)


def free_stretches(
    bed: Bed, grid: Grid, line: Line, stretches: Iterable[Interval | None], start: int, end: int
) -> Iterable[Interval]:
    """Where on a row line places may lie: its ground less what its ends keep free, less the blocked stretches."""
    head, foot = line.ends
    for left, right in line_ground(bed, grid, line, start, end):
        free: tuple[Interval, ...] = ((left + head, right - foot),) if right - left >= head + foot else ()
        for stretch in stretches:
            if stretch is not None:
                free = without(free, *stretch)
        yield from free


def _run(low: int, high: int, step: int, phase: int | None) -> Run:
    """The places from `low` to `high`: from `low` on, or those of a phase kept over the block."""
    first = low if phase is None else phase + -(-(low - phase) // step) * step
    return Run(first, step, (high - first) // step + 1 if first <= high else 0)


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
