"""The dibble pattern of a block as a template: plants of two rows or more, of whole pairs or of whole cells, in nm.

A template holds at least one whole repeat of its pattern along the bed; laid on with its 0 line where its last line
was, it goes on exactly. Across the bed its row lines are laid on rows that are marked already.
"""

from collections.abc import Iterable
from enum import StrEnum
from typing import NamedTuple

from attrs import field, frozen

from gardenplot.drawing.spacing_marks import Anchor, along, begins_at, is_anchored, ranks
from gardenplot.layout import Layout
from gardenplot.layout.cells import planted
from gardenplot.layout.value import Run
from gardenplot.plan import Bed, Pattern
from gardenplot.units import MM

HEADROOM = 31 * MM
"""What a template has above its first row for its words, without plants."""
AROUND = 12 * MM
"""What a template has beyond an outer plant that would be cut through."""
_WHOLE = 7 * MM
"""A plant nearer to the end of its template than this would be cut through."""


class Way(StrEnum):
    """Which way the rows of a template run, or that it is one of cells."""

    ALONG = "along"
    ACROSS = "across"
    CELLS = "cells"


class Spot(NamedTuple):
    """A plant along the bed from the 0 line and across it from the first row, or from the left edge or first cell."""

    x: int
    y: int
    moved: bool = False


@frozen
class Template:
    """Plants, the lines that go through it along and across the bed, and the box that is cut out, all in nm.

    `repeat` is how far along the bed its 0 line comes next, `rows` how many rows or rows of cells it holds; `of_rows`
    how many the block has, of rows along the bed or of cells.
    """

    way: Way
    anchor: Anchor
    spots: tuple[Spot, ...]
    upright: tuple[int, ...]
    level: tuple[int, ...]
    repeat: int
    rows: int
    spacing: tuple[int, int]
    cell: tuple[int, int] = (0, 0)
    of_rows: int = 0

    @property
    def box(self) -> tuple[int, int, int, int]:
        """Left, top, right and bottom; y grows away from the left edge of the bed."""
        xs, ys = [spot.x for spot in self.spots], [spot.y for spot in self.spots]
        left = 0 if min(xs) >= _WHOLE else min(xs) - AROUND
        right = self.repeat if max(xs) <= self.repeat - _WHOLE else max(self.repeat, max(xs) + AROUND)
        bottom = self.level[-1] if self.way is Way.CELLS and max(ys) <= self.level[-1] - _WHOLE else max(ys) + AROUND
        return left, min(self.level[0], *ys) - HEADROOM, right, bottom


@frozen
class Lattice:
    """A pattern before it is known how much of it a page holds: one step along, its rows or cells, what is in use.

    `rows` are the offsets of the rows from the first; of rows across the bed how far they lie in the block.
    """

    way: Way
    anchor: Anchor
    step: int
    begins: tuple[int, ...]
    rows: tuple[int, ...]
    least: int
    cell: tuple[int, int] = (0, 0)
    count: int = field(default=1, eq=False)

    def template(self, room: tuple[int, int]) -> Template:
        """As many repeats as so much paper holds, along and across, no more than are in use, and at least one."""
        along, across = room[0] - 2 * AROUND, room[1] - HEADROOM - AROUND
        match self.way:
            case Way.ALONG:
                return self._along(along, across)
            case Way.ACROSS:
                return self._across(along, across)
            case Way.CELLS:
                return self._cells(along, across)

    def _times(self, room: int, step: int) -> int:
        return max(1, min(self.count, room // step))

    def _along(self, along: int, across: int) -> Template:
        times = self._times(along, self.step)
        rows = sum(at <= across for at in self.rows)
        if rows < len(self.rows):
            # Laid on further rows it must meet the same kinds of row in the same order.
            rows = max(self.least, rows // self.least * self.least)
        spots = tuple(
            Spot(
                self.begins[row % len(self.begins)] + number * self.step, self.rows[row], bool(row % len(self.begins))
            )
            for row in range(rows)
            for number in range(times)
        )
        repeat = times * self.step
        spacing, upright, level = (self.step, self.rows[1]), (0, repeat), self.rows[:rows]
        return Template(self.way, self.anchor, spots, upright, level, repeat, rows, spacing, of_rows=len(self.rows))

    def _across(self, along: int, across: int) -> Template:
        """Rows across the bed: their plants from the left edge, which is the first level line."""
        rank = self.rows[1] - self.rows[0]
        pairs = self._times(along, 2 * rank)
        most = max(1, (across - max(self.begins)) // self.step + 1)
        spots = tuple(
            Spot(self.rows[0] + row * rank, self.begins[row % 2] + number * self.step, bool(row % 2))
            for row in range(2 * pairs)
            for number in range(most)
        )
        repeat, spacing = 2 * pairs * rank, (rank, self.step)
        upright = (0, *(self.rows[0] + row * rank for row in range(2 * pairs)), repeat)
        return Template(self.way, self.anchor, spots, upright, (0,), repeat, 2 * pairs, spacing)

    def _cells(self, along: int, across: int) -> Template:
        side, each = self.cell
        times, rows = self._times(along, side), max(1, min(len(self.rows), across // side))
        spots = tuple(
            Spot(run.first + number * run.step, line.offset)
            for row in range(rows)
            for line in planted(row * side, (Run(0, side, times),), side, each)
            for run in line.runs
            for number in range(run.count)
        )
        upright = tuple(number * side for number in range(times + 1))
        level = tuple(number * side for number in range(rows + 1))
        return Template(
            self.way,
            self.anchor,
            spots,
            upright,
            level,
            times * side,
            rows,
            (side, side),
            self.cell,
            of_rows=len(self.rows),
        )


def lattice_of(bed: Bed, layout: Layout) -> Iterable[Lattice]:
    """The pattern of a planting that is staggered, triangular, in pairs or in cells; others need none."""
    grid = layout.grid
    if not layout.plants:
        return
    if grid.pattern is Pattern.CELLS:
        rows = tuple(range(0, len(grid.offsets) * grid.cell, grid.cell))
        cell, count = (grid.cell, grid.per_cell), max(1, -(-layout.length // grid.cell))
        anchor = begins_at(bed, layout) if is_anchored(bed, grid) else Anchor.ROW
        yield Lattice(Way.CELLS, anchor, grid.cell, (0,), rows, 1, cell, count=count)
    elif grid.pattern.staggers and grid.runs_across:
        if len(layout.offsets) > 1:
            yield _lattice_across(bed, layout)
    elif grid.pattern in (Pattern.STAGGERED, Pattern.TRIANGULAR, Pattern.TWIN) and _last_row(layout) > 1:
        yield _lattice_along(bed, layout)


def _lattice_along(bed: Bed, layout: Layout) -> Lattice:
    grid, (anchor, begins) = layout.grid, along(bed, layout)
    kinds = grid.kinds
    if not is_anchored(bed, grid):
        begins = tuple(begins[0] + (kind.first - kinds[0].first) % grid.in_row for kind in kinds)
    rows = tuple(offset - grid.offsets[0] for offset in grid.offsets[: _last_row(layout)])
    count = max(1, -(-layout.length // grid.in_row))
    return Lattice(Way.ALONG, anchor, grid.in_row, begins, rows, 2, count=count)


def _last_row(layout: Layout) -> int:
    """The number of the last row in which something grows: where the bed is slim, a grid has rows beyond it."""
    return max(number for number, row in enumerate(layout.rows, 1) if row.count)


def _lattice_across(bed: Bed, layout: Layout) -> Lattice:
    grid, (anchor, rows) = layout.grid, ranks(bed, layout)
    begins = tuple(kind.first for kind in grid.kinds)
    count = max(1, -(-layout.length // (2 * grid.rank)))
    return Lattice(Way.ACROSS, anchor, grid.in_row, begins, rows, 2, count=count)
