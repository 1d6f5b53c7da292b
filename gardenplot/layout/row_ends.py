"""Where rows along a bed begin or end inside their block, since the ground for them does, in whole nanometres.

A run that is cut by an obstacle ends no row: the row goes on behind it.
"""

from collections.abc import Iterable

from attrs import evolve, frozen

from gardenplot.layout.filled import line_ground, rows_of_cells
from gardenplot.layout.outline import Interval
from gardenplot.layout.value import Layout, Line, Row
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern
from gardenplot.units import CM

NEAR = 5 * CM
"""A row that begins or ends no farther than this from the end of its block does so with it: no two stakes are driven
so near to each other."""


@frozen
class RowEnd:
    """A row that begins or ends at a tape reading though its block does not.

    `row` is its number from 0 at the base line; of cells that of the row of cells. It lies at `offset` and reaches
    `reach` further across.
    """

    at: int
    row: int
    begins: bool
    offset: int
    reach: int = 0


def row_ends(bed: Bed, layout: Layout) -> tuple[RowEnd, ...]:
    """The row ends of a block from the head on; none of rows across the bed, turned rows, rings or a sown band."""
    grid = layout.grid
    if is_plain(bed) or grid.runs_across or grid.turn is not None:
        return ()
    found: list[RowEnd] = []
    for row, line in enumerate(grid.lines):
        first, last = _whole_row(bed, layout, line)
        for begin, end in _planted(bed, layout, row):
            if begin > first + NEAR:
                found.append(RowEnd(begin, row, begins=True, offset=line.offset, reach=line.reach))
            if end < last - NEAR:
                found.append(RowEnd(end, row, begins=False, offset=line.offset, reach=line.reach))
    return tuple(sorted(found, key=lambda one: (one.at, one.begins, one.row)))


def block_ground(bed: Bed, layout: Layout) -> Interval:
    """The part of a block that lies between the end margins of its bed."""
    return max(layout.start, bed.zone[0]), min(layout.end, bed.zone[1])


def _whole_row(bed: Bed, layout: Layout, line: Line) -> Interval:
    """Where a row that nothing cuts short begins and ends: with its block or, of cells, with its whole cells."""
    start, end = block_ground(bed, layout)
    if layout.grid.pattern is not Pattern.CELLS:
        return start, end
    first = start + line.first
    return first, first + max(0, end - first) // line.step * line.step


def _planted(bed: Bed, layout: Layout, row: int) -> Iterable[Interval]:
    """The stretches of ground that a row has in its block, obstacles not counted, as far as plants stand in them."""
    rows = _rows_of_plants(layout, row)
    for begin, end in _stretches(bed, layout, row):
        if any(begin <= run.first <= end for one in rows for run in one.runs if run.count):
            yield begin, end


def _rows_of_plants(layout: Layout, row: int) -> tuple[Row, ...]:
    """The rows of plants on a row line: one, or as many as a row of cells has."""
    each = len(layout.rows) // len(layout.grid.offsets)
    return layout.rows[row * each : (row + 1) * each]


def _stretches(bed: Bed, layout: Layout, row: int) -> Iterable[Interval]:
    grid, (start, end) = layout.grid, block_ground(bed, layout)
    if grid.pattern is not Pattern.CELLS:
        return line_ground(bed, grid, grid.lines[row], start, end)
    cells = rows_of_cells(evolve(bed, obstacles=()), grid, start, end)[row]
    return ((run.first, run.last + grid.cell) for run in cells.runs)
