"""What stands on a spacing strip: the marks of plants, rows, cells or rings, in nm of ground from the 0 of the strip.

All of it comes from the grid of a layout, which says where the first place of a row lies and how far apart places
are; a strip repeats that up to the length of a board, so that laid on with its 0 where it ended it goes on exactly.
"""

from collections.abc import Iterable
from enum import StrEnum
from itertools import cycle
from typing import NamedTuple

from attrs import field, frozen

from gardenplot.layout import Grid, Layout
from gardenplot.layout.cells import planted, sub_row_offsets, sub_rows
from gardenplot.layout.cross import in_cross_rows
from gardenplot.layout.positions import positions
from gardenplot.layout.row_ends import block_ground
from gardenplot.layout.value import Line, Run
from gardenplot.layout.zone import clip, corners_of, is_plain
from gardenplot.plan import Bed, Pattern
from gardenplot.units import MM

CLEAR = 4 * MM
"""A mark nearer to the end of a strip than this would be cut through, so the strip goes on."""
BEYOND = 15 * MM
"""How far a strip goes on beyond such a mark."""


class Purpose(StrEnum):
    """What a strip marks."""

    IN_ROW = "in row"
    IN_RANK = "in rank"
    RANKS = "ranks"
    ROWS = "rows"
    ACROSS = "across"
    CELLS_ALONG = "cells along"
    CELLS_ACROSS = "cells across"
    RADII = "radii"


class Anchor(StrEnum):
    """What is laid on what: the 0 of a strip on a place, or its first mark on the first plant of a row."""

    BLOCK = "block"
    MARGIN = "margin"
    ROW = "row"
    EDGE = "edge"
    BASE = "base"
    CENTRE = "centre"


class What(StrEnum):
    """What a mark is for; the other one is for every second row, or every second row inside a cell."""

    PLANT = "plant"
    OTHER = "other"
    SIDE = "side"
    CENTRE = "centre"


class Mark(NamedTuple):
    """A mark so many nm from the 0 of its strip, at its upper or lower edge; of a row or a ring also its number."""

    at: int
    what: What = What.PLANT
    lower: bool = False
    number: int = 0


@frozen
class Strip:
    """A strip from its 0 to `length`, where its 0 comes next if it `repeats`; `spacing` is that of even marks.

    All lengths in nm. `begin` and `end` are those of the strip as it is cut out: at 0 and at its length, or beyond
    where a mark lies there. `times` says how many steps it holds, `on_rings` how many plants stand on each ring
    that has some, from the outermost in; `rows` in how many rows plants stand, where every second one is moved.
    """

    purpose: Purpose
    anchor: Anchor
    length: int
    marks: tuple[Mark, ...]
    spacing: int = 0
    repeats: bool = False
    times: int = 1
    cell: tuple[int, int] = (0, 0)
    between: int = 0
    on_rings: tuple[int, ...] = ()
    rows: int = field(default=0, eq=False)

    @property
    def lies_across(self) -> bool:
        """Whether it is laid across the bed."""
        return self.purpose in (Purpose.IN_RANK, Purpose.ROWS, Purpose.ACROSS, Purpose.CELLS_ACROSS)

    @property
    def begin(self) -> int:
        """Where the strip is cut off before its 0."""
        first = min((mark.at for mark in self.marks), default=CLEAR)
        return 0 if first >= CLEAR else first - BEYOND

    @property
    def end(self) -> int:
        """Where the strip is cut off behind its length."""
        last = max((mark.at for mark in self.marks), default=0)
        return self.length if last <= self.length - CLEAR else max(self.length, last + BEYOND)


@frozen
class Ladder:
    """A strip that repeats, before it is known how long a board is: the marks of one step, steps and rows in use."""

    purpose: Purpose
    anchor: Anchor
    rungs: tuple[Mark, ...]
    step: int
    spacing: int
    between: int = 0
    cell: tuple[int, int] = (0, 0)
    count: int = field(default=1, eq=False)
    rows: int = field(default=1, eq=False)

    def strip(self, board: int) -> Strip:
        """As many steps as a board of so many nm holds, no more than are in use and never less than one."""
        times = max(1, min(board // self.step, self.count))
        marks = (rung._replace(at=rung.at + number * self.step) for number in range(times) for rung in self.rungs)
        length = times * self.step
        kept = sorted(mark for mark in marks if mark.what is not What.SIDE or 0 < mark.at < length)
        return Strip(
            self.purpose, self.anchor, length, tuple(kept), self.spacing, True, times, self.cell, self.between,
            rows=self.rows,
        )  # fmt: skip


def strips_of(bed: Bed, layout: Layout) -> Iterable[Ladder | Strip]:
    """What strips mark a planting; none for a broadcast band, and none across the bed where rows run slantwise."""
    grid = layout.grid
    if grid.pattern is Pattern.BROADCAST or not layout.plants:
        return
    if grid.pattern is Pattern.RINGS:
        yield _radii(layout)
    elif grid.pattern is Pattern.CELLS:
        yield _cells_along(bed, layout)
        if grid.turn is None:
            yield _cells_across(bed, layout)
    elif grid.runs_across:
        yield _in_row_across(bed, layout)
        yield _ranks(bed, layout)
    else:
        yield _in_row(bed, layout)
        if grid.turn is None:
            yield _rows(bed, layout)


def firsts(grid: Grid) -> tuple[int, ...]:
    """How far inside a block the first place of each kind of line lies, in nm, where all keep one phase with it."""
    return tuple(_first(kind) for kind in grid.kinds)


def _first(kind: Line) -> int:
    """A line that was shifted along may have a place nearer to the block's beginning than the one it counts from."""
    head = kind.ends[0]
    return head + (kind.first - head) % kind.step if kind.keeps_phase else kind.first


def is_anchored(bed: Bed, grid: Grid) -> bool:
    """Whether all rows of a block are counted from its beginning, and not each from where its own ground begins."""
    return grid.turn is None and (is_plain(bed) or (grid.kinds[0].keeps_phase and grid.pattern is not Pattern.CELLS))


def along(bed: Bed, layout: Layout) -> tuple[Anchor, tuple[int, ...]]:
    """What a strip along the rows is laid on, and how far from its 0 the first place of each kind of line is, in nm.

    Where each row begins for itself, or farther inside the block than a spacing, its first mark is laid on the first
    plant, and lies half a spacing from the 0.
    """
    grid = layout.grid
    if not is_anchored(bed, grid):
        return Anchor.ROW, (grid.in_row // 2,)
    return _near(begins_at(bed, layout), firsts(grid), grid.in_row)


def ranks(bed: Bed, layout: Layout) -> tuple[Anchor, tuple[int, ...]]:
    """The same of the rows across a bed, a kind after another."""
    grid = layout.grid
    begins = tuple(grid.ends[0] + number * grid.rank for number in range(len(grid.kinds)))
    return _near(begins_at(bed, layout), begins, grid.rank)


def begins_late(bed: Bed, layout: Layout) -> bool:
    """Whether rows that are counted from the beginning of their block have their first plants only further on."""
    grid = layout.grid
    if is_plain(bed) or not grid.kinds or not is_anchored(bed, grid):
        return False
    start = grid.begins(block_ground(bed, layout)[0])
    firsts_of = cycle(kind.first for kind in grid.kinds) if grid.runs_across else cycle(firsts(grid))
    return any(
        next((run.first for run in row.runs if run.count), 0) >= start + first + grid.in_row
        for row, first in zip(layout.rows, firsts_of, strict=False)
    )


def _near(anchor: Anchor, begins: tuple[int, ...], step: int) -> tuple[Anchor, tuple[int, ...]]:
    first = min(begins)
    if first <= step:
        return anchor, begins
    return Anchor.ROW, tuple(at - first + step // 2 for at in begins)


def begins_at(bed: Bed, layout: Layout) -> Anchor:
    """Where the ground of a block begins: with the block or, where that reaches into it, at the head margin."""
    return Anchor.BLOCK if block_ground(bed, layout)[0] == layout.start else Anchor.MARGIN


def _in_use(layout: Layout, step: int) -> int:
    """How many steps there are from the first plant of a block to its last."""
    first, last = layout.first_plant, layout.last_plant
    return 1 if first is None or last is None else (last - first) // step + 1


def _in_row(bed: Bed, layout: Layout) -> Ladder:
    """The plants of rows along the bed; those of every second row at the lower edge where it is moved."""
    grid, (anchor, begins) = layout.grid, along(bed, layout)
    if len(layout.offsets) == 1:
        begins = begins[:1]
    count = _in_use(layout, grid.in_row)
    if grid.turn is not None:
        count = max(sum(run.count for run in row.runs) for row in layout.rows)
    between = grid.between if len(begins) > 1 else 0
    rows = max(number for number, row in enumerate(layout.rows, 1) if row.count)
    rungs = _rungs(begins)
    return Ladder(Purpose.IN_ROW, anchor, rungs, grid.in_row, grid.in_row, between, count=count, rows=rows)


def _rungs(begins: Iterable[int]) -> tuple[Mark, ...]:
    kinds = ((What.PLANT, False), (What.OTHER, True))
    return tuple(Mark(at, what, lower) for at, (what, lower) in zip(begins, kinds, strict=False))


def _rows(bed: Bed, layout: Layout) -> Strip:
    """The rows from the left edge, and the centre line."""
    rows = [Mark(row.offset, number=number) for number, row in enumerate(layout.rows, 1) if row.count]
    return _across(bed, layout, Purpose.ROWS, rows)


def _across(bed: Bed, layout: Layout, purpose: Purpose, marks: list[Mark]) -> Strip:
    """A strip from the base line to where the ground of the block ends, with the centre line of the bed's width."""
    grid, far = layout.grid, _far_side(bed, layout)
    anchor = Anchor.EDGE if is_plain(bed) else Anchor.BASE
    kept = [mark for mark in marks if mark.at <= far]
    if far == grid.width:
        kept.append(Mark(grid.width // 2, What.CENTRE, lower=True))
    spacing = {Purpose.ROWS: 0, Purpose.ACROSS: grid.in_row}.get(purpose, 0)
    cell = (grid.cell, grid.per_cell) if purpose is Purpose.CELLS_ACROSS else (0, 0)
    rows = len(layout.rows) if purpose is Purpose.ACROSS else 0
    return Strip(purpose, anchor, far, tuple(sorted(kept)), spacing, cell=cell, rows=rows)


def _far_side(bed: Bed, layout: Layout) -> int:
    """How far from the base line a strip across is needed, in nm: all over the bed, if not the block's ground is
    slimmer by a row or more.
    """
    whole = layout.grid.width
    if is_plain(bed):
        return whole
    ground = (y for _x, y in clip(corners_of(bed), *block_ground(bed, layout)))
    places = (y for _x, y in positions(layout).tolist())
    far = max((*ground, *places), default=whole)
    return far if far + layout.grid.between <= whole else whole


def _in_row_across(bed: Bed, layout: Layout) -> Ladder | Strip:
    """The plants of rows across the bed from its left edge, or from their own first where the outline cuts them."""
    grid = layout.grid
    kinds = grid.kinds
    if not (is_plain(bed) or kinds[0].keeps_phase):
        most = max(row.count for row in layout.rows)
        rung = Mark(grid.in_row // 2)
        return Ladder(Purpose.IN_RANK, Anchor.ROW, (rung,), grid.in_row, grid.in_row, count=most)
    rows = zip(kinds, in_cross_rows(grid), ((What.PLANT, False), (What.OTHER, True)), strict=False)
    marks = [
        Mark(kind.first + number * kind.step, what, lower)
        for kind, count, (what, lower) in rows
        for number in range(count)
    ]
    return _across(bed, layout, Purpose.ACROSS, marks)


def _ranks(bed: Bed, layout: Layout) -> Ladder:
    """The rows across the bed along the tape, every second one at the lower edge where it is moved."""
    grid, (anchor, begins) = layout.grid, ranks(bed, layout)
    step = grid.rank * len(begins)
    count = _in_use(layout, step)
    return Ladder(Purpose.RANKS, anchor, _rungs(begins), step, grid.rank, count=count, rows=len(layout.rows))


def _cells_along(bed: Bed, layout: Layout) -> Ladder:
    """The sides of cells along the bed at the upper edge, the plants in them at the lower one."""
    grid = layout.grid
    anchor = begins_at(bed, layout) if is_anchored(bed, grid) else Anchor.ROW
    rows = planted(0, (Run(0, grid.cell, 1),), grid.cell, grid.per_cell)
    plants = {
        Mark(run.first + number * run.step, What.OTHER if at % 2 and len(set(kinds)) > 1 else What.PLANT, lower=True)
        for kinds in [sub_rows(grid.per_cell)]
        for at, row in enumerate(rows)
        for run in row.runs
        for number in range(run.count)
    }
    rungs = (Mark(0, What.SIDE), *sorted(plants))
    count = max(1, -(-layout.length // grid.cell))
    cell = grid.cell, grid.per_cell
    return Ladder(Purpose.CELLS_ALONG, anchor, rungs, grid.cell, grid.cell, cell=cell, count=count)


def _cells_across(bed: Bed, layout: Layout) -> Strip:
    """The sides of cells from the left edge at the upper edge, the rows of plants in them at the lower one."""
    grid = layout.grid
    sides = {at for offset in grid.offsets for at in (offset, offset + grid.cell)}
    inside = sub_row_offsets(grid.cell, grid.per_cell)
    marks = [Mark(at, What.SIDE) for at in sides if 0 < at < grid.width]
    marks += [Mark(offset + at, lower=True) for offset in grid.offsets for at in inside]
    return _across(bed, layout, Purpose.CELLS_ACROSS, marks)


def _radii(layout: Layout) -> Strip:
    """The radius of each ring from the centre."""
    rings = [(number, ring) for number, ring in enumerate(layout.rings, 1) if ring.count]
    marks = sorted(Mark(ring.radius, number=number) for number, ring in rings)
    counts = tuple(ring.count for _number, ring in rings)
    return Strip(Purpose.RADII, Anchor.CENTRE, marks[-1].at, tuple(marks), on_rings=counts)
