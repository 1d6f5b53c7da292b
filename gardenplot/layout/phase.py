"""Row lines and grids of cells shifted together so that the ground of a block holds the most plants.

Rows that begin anew in each run shift across only. Grids that keep one phase shift along as well; for one shift
across, the best shift along is found exactly: a stretch of length q s + r holds q + 1 places for shifts in an arc of
r out of every s, and q for all others, so a sweep round the circle finds where most arcs lie over one another.

Shifts across are searched by branch and bound in whole nanometres. The lines of an interval of shifts, with strips
only as wide as what all its shifts ask for, hold at least as many plants as those of any shift in it: where that is
no more than the best so far, the interval is done. No shift is taken that holds fewer plants than none; after `TRIES`
intervals the best so far is.
"""

from collections.abc import Iterable
from functools import lru_cache
from heapq import heappop, heappush
from itertools import pairwise

from attrs import evolve, frozen

from gardenplot.layout.cells import sub_row_offsets
from gardenplot.layout.clearance import blocked
from gardenplot.layout.filled import free_stretches
from gardenplot.layout.lines import cell_lines, row_lines, steps_of
from gardenplot.layout.outline import Interval
from gardenplot.layout.value import Grid, Line
from gardenplot.layout.zone import is_metric, is_plain
from gardenplot.plan import Bed, Pattern
from gardenplot.units import CM, INCH, MM

TRIES = 400
_PARTS = 16
_PATTERNS = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR, Pattern.TWIN, Pattern.CELLS)
_ROUND = {True: (CM, CM // 2, MM), False: (INCH, INCH // 2, INCH // 4, INCH // 8)}


@lru_cache(maxsize=512)
def best_phase(bed: Bed, grid: Grid, start: int, end: int) -> Grid:
    """The grid with its lines shifted for the block from `start` to `end`; as it is where no shift gains a plant.

    Rows across the bed, own offsets and rings are not shifted, and in a plain bed there is nothing to gain.
    """
    if is_plain(bed) or grid.runs_across or grid.pattern not in _PATTERNS or not grid.lines:
        return grid
    search = _Search(bed, grid, start, end)
    found = search.best()
    return grid if found == search.unshifted else search.shifted(search.rounded(found))


@frozen
class _Shift:
    """The offset of the first line, a shift along, and the plants held."""

    first: int
    along: int
    plants: int


@frozen
class _Search:
    """The shifts of a block's lines."""

    bed: Bed
    grid: Grid
    start: int
    end: int

    @property
    def strip(self) -> int:
        """What is kept at either edge of the bed: the edge distance of a row, or of a row of cells."""
        line = self.grid.lines[0]
        if not line.reach:
            return line.high - line.offset
        return max(0, self.grid.edge_least - sub_row_offsets(self.grid.cell, self.grid.per_cell)[0])

    @property
    def unshifted(self) -> _Shift:
        """The lines as they are."""
        first = self.grid.lines[0].offset
        return _Shift(first, 0, self.held(first, first, along=0)[0])

    def lines(self, first: int) -> tuple[Line, ...]:
        """As many lines as were asked for, or as fit, where the first lies at an offset."""
        grid = self.grid
        last = grid.width - self.strip - grid.lines[0].reach
        most = grid.rows if grid.rows_asked is not None else grid.rows + 2
        steps = steps_of(grid.pattern, most, grid.between, grid.twin)
        offsets = tuple(first + step for step in steps if first + step <= last)
        if grid.pattern is Pattern.CELLS:
            return cell_lines(offsets, grid.cell)
        return row_lines(grid.pattern, offsets, self.strip, grid.in_row, grid.ends)

    def interval(self) -> tuple[int, int]:
        """The offsets of the first line that are tried."""
        grid = self.grid
        if grid.rows_asked is None:
            return self.strip, self.strip + grid.between - 1
        span = grid.lines[-1].offset - grid.lines[0].offset + grid.lines[0].reach
        return self.strip, max(self.strip, grid.width - self.strip - span)

    def best(self) -> _Shift:
        """The shift that holds the most plants, the lines as they are before any other that holds as many."""
        best = self.unshifted
        low, high = self.interval()
        marks = sorted({low, high, *(low + (high - low) * part // _PARTS for part in range(1, _PARTS))})
        queue: list[tuple[int, int, int]] = []
        for first in marks:
            best = self._better(best, first)
        for one, other in pairwise(marks):
            self._push(queue, one, other)
        for _try in range(TRIES):
            if not queue or -queue[0][0] <= best.plants:
                break
            _bound, one, other = heappop(queue)
            if other - one < 2:
                continue
            middle = (one + other) // 2
            best = self._better(best, middle)
            self._push(queue, one, middle)
            self._push(queue, middle, other)
        return best

    def _better(self, best: _Shift, first: int) -> _Shift:
        plants, along = self.held(first, first)
        return _Shift(first, along, plants) if plants > best.plants else best

    def _push(self, queue: list[tuple[int, int, int]], one: int, other: int) -> None:
        heappush(queue, (-self.held(one, other)[0], one, other))

    def held(self, one: int, other: int, along: int | None = None) -> tuple[int, int]:
        """The plants held at most by a shift from `one` to `other`, exactly where they are the same, and the shift
        along that does it (the one given, or the best)."""
        arcs: list[tuple[int, int]] = []
        plants, step, by = 0, self.grid.lines[0].step, other - one
        for number, line in enumerate(self.lines(one)):
            free = self._free(line, number, by)
            if not line.keeps_phase:
                plants += _anew(free, step)
                continue
            for low, high in free:
                whole, rest = divmod(high - low, step)
                plants += whole
                arcs.append(((low - self.start - line.first) % step, rest))
        if not arcs:
            return plants, 0
        if along is not None:
            return plants + sum((along - begin) % step <= rest for begin, rest in arcs), along
        more, along = _most_over(arcs, step)
        return plants + more, along

    def _free(self, line: Line, number: int, by: int) -> list[Interval]:
        """Where places may lie on a line that is shifted by 0 to `by`, at any of these shifts."""
        beyond = evolve(line, offset=line.offset + by, low=line.low + by, high=line.high + by)
        stretches = [_smaller(blocked(one, line, number), blocked(one, beyond, number)) for one in self.bed.obstacles]
        common = evolve(line, low=min(beyond.low, line.high), high=max(line.high, min(beyond.low, line.high)))
        return list(free_stretches(self.bed, self.grid, common, stretches, self.start, self.end))

    def rounded(self, found: _Shift) -> _Shift:
        """The same number of plants with the first line at a reading that is easily marked, where there is one."""
        low, high = self.interval()
        for step in _ROUND[is_metric(self.bed)]:
            near = found.first // step * step
            for first in (near, near + step):
                plants, along = self.held(first, first)
                if low <= first <= high and plants >= found.plants:
                    return _Shift(first, along, plants)
        return found

    def shifted(self, found: _Shift) -> Grid:
        """The grid with its lines shifted."""
        lines = tuple(evolve(line, first=line.first + found.along) for line in self.lines(found.first))
        inside = self.grid.edge - self.grid.lines[0].offset
        last = self.grid.width - lines[-1].offset - lines[-1].reach
        return evolve(self.grid, lines=lines, rows=len(lines), edge=min(found.first, last) + max(0, inside))


def _anew(free: Iterable[Interval], step: int) -> int:
    """Plants in stretches of a row that are each filled from their own beginning."""
    plants, last = 0, None
    for low, high in free:
        first = low if last is None else max(low, last + step)
        if first <= high:
            held = (high - first) // step
            plants, last = plants + held + 1, first + held * step
    return plants


def _smaller(one: Interval | None, other: Interval | None) -> Interval | None:
    """The smaller of two blocked stretches round the same middle; none where one of them is none."""
    return None if one is None or other is None else min(one, other, key=lambda stretch: stretch[1] - stretch[0])


def _most_over(arcs: list[tuple[int, int]], circle: int) -> tuple[int, int]:
    """How many arcs, each of a beginning and a length, lie over one point of a circle at most, and that point."""
    turns: list[tuple[int, int]] = []
    over = 0
    for begin, length in arcs:
        turns += [(begin, 1), ((begin + length) % circle + 1, -1)]
        over += begin + length >= circle
    most, at = over, 0
    for point, change in sorted(turns, key=lambda turn: (turn[0], turn[1])):
        over += change
        if over > most and point < circle:
            most, at = over, point
    return most, at
