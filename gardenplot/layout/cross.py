"""Rows across a plain bed, in closed form: each is a rank of the block, every second one moved where they stagger."""

from gardenplot.layout.along import length_of, ranks_in
from gardenplot.layout.value import Grid, Row, Run


def in_cross_rows(grid: Grid) -> tuple[int, int]:
    """Plants in a row across that is not moved, and in one that is (the same where none is)."""
    held = [
        max(0, (grid.width - line.ends[1] - line.first) // line.step + 1) if line.first >= line.ends[0] else 0
        for line in grid.kinds
    ]
    return (held[0], held[-1]) if held else (0, 0)


def cross_capacity(grid: Grid, length: int) -> int:
    """Plants that `length` nm of bed hold in rows across."""
    ranks = ranks_in(grid.rank, length, grid.ends)
    straight, moved = in_cross_rows(grid)
    return (ranks + 1) // 2 * straight + ranks // 2 * moved


def cross_length_for(grid: Grid, plants: int) -> int:
    """The least length in nm of bed that holds so many plants in rows across."""
    straight, moved = in_cross_rows(grid)
    if not straight or plants <= 0:
        return 0
    pairs, before_last = divmod(plants - 1, straight + moved)
    ranks = 2 * pairs + (1 if before_last < straight else 2)
    return length_of(grid.rank, ranks, grid.ends)


def cross_rows(grid: Grid, start: int, plants: int) -> tuple[Row, ...]:
    """So many plants in rows across from `start` on, the last row part-filled from the base line."""
    rows: list[Row] = []
    held = in_cross_rows(grid)
    while plants > 0 and held[0]:
        line = grid.kinds[len(rows) % len(grid.kinds)]
        count = min(plants, held[len(rows) % 2])
        rows.append(Row(start + grid.ends[0] + len(rows) * grid.rank, (Run(line.first, line.step, count),)))
        plants -= count
    return tuple(rows)
