"""Row lines and grids of cells shifted together so that the ground of a block holds the most plants.

Rows that begin anew in each run shift across only. Grids that keep one phase shift along as well; for one shift
across, the best shift along is found exactly: a stretch of length q s + r holds q + 1 places for shifts in an arc of
r out of every s, and q for all others, so a sweep round the circle finds where most arcs lie over one another.

Shifts across are searched by branch and bound in whole nanometres. The lines of an interval of shifts, with strips
only as wide as what all its shifts ask for, hold at least as many plants as those of any shift in it: where that is
no more than the best so far, the interval is done. Lines without a strip, at an edge distance of 0, are tried at
the corners of the bed and evenly between, which proves nothing. No shift is taken that holds fewer plants than none;
after `TRIES` intervals the best so far is.
"""

from bisect import bisect_left
from collections.abc import Callable, Iterable
from functools import lru_cache
from heapq import heappop, heappush
from itertools import cycle

from attrs import evolve, frozen

from gardenplot.layout.cells import sub_row_offsets
from gardenplot.layout.clearance import Kept, kept_by
from gardenplot.layout.filled import free_stretches
from gardenplot.layout.lines import steps_of
from gardenplot.layout.outline import Interval
from gardenplot.layout.value import Grid, Line
from gardenplot.layout.zone import corners_of, cuts_of, is_metric, is_plain
from gardenplot.plan import Bed, Direction, Pattern, Planting
from gardenplot.units import CM, INCH, MM

TRIES = 400
_UNKNOWN = 10**12
_Interval = tuple[int, int, int, int]
_ROUND = {True: (CM, CM // 2, MM), False: (INCH, INCH // 2, INCH // 4, INCH // 8)}


def may_shift(bed: Bed, planting: Planting) -> bool:
    """Whether a planting's rows or cells can be shifted to some gain: along a bed that is no plain rectangle."""
    return _shifts(planting.pattern) and planting.direction is Direction.ALONG and not is_plain(bed)


def _shifts(pattern: Pattern) -> bool:
    return pattern.has_even_rows or pattern in (Pattern.TWIN, Pattern.CELLS)


@lru_cache(maxsize=512)
def best_phase(bed: Bed, grid: Grid, start: int, end: int) -> Grid:
    """The grid with its lines shifted for the block from `start` to `end`; as it is where no shift gains a plant.

    Rows across the bed, own offsets and rings are not shifted, and in a plain bed there is nothing to gain.
    """
    return searched_phase(bed, grid, start, end)[0]


def searched_phase(
    bed: Bed, grid: Grid, start: int, end: int, tries: int = TRIES, beat: int = 0
) -> tuple[Grid, bool]:
    """The grid shifted as by `best_phase`, and whether it is proved that no shift holds more.

    A shift that holds no more than `beat` plants, or cells, is not worth finding.
    """
    if is_plain(bed) or grid.runs_across or not _shifts(grid.pattern) or not grid.offsets:
        return grid, True
    search = _search(bed, grid, start, end)
    unshifted = search.unshifted
    known = evolve(unshifted, plants=max(unshifted.plants, beat))
    found, proved = search.best(known, tries)
    return grid if found is known else search.shifted(search.rounded(found)), proved


@frozen
class _Shift:
    """The offset of the first line, a shift along, and the plants held."""

    first: int
    along: int
    plants: int


@frozen
class _Search:
    """The shifts of a block's lines: how far each lies from the first, the first offsets that are tried, from `least`
    to `most`, the offset beyond which no line lies, from where the places of each kind of line are counted, what cuts
    the ground and what obstacles keep of it."""

    bed: Bed
    grid: Grid
    start: int
    end: int
    steps: tuple[int, ...]
    least: int
    most: int
    last: int
    befores: tuple[int, ...]
    ground: Callable[[int, int], tuple[Interval, ...]]
    kept: tuple[Kept, ...]

    @property
    def unshifted(self) -> _Shift:
        """The lines as they are."""
        first = self.grid.offsets[0]
        return _Shift(first, 0, self.held(first, first, along=0)[0])

    def best(self, best: _Shift, tries: int) -> tuple[_Shift, bool]:
        """A shift that holds more plants than the best so far, the most there are, and whether that is proved."""
        for first in sorted({self.least, self.most, *self._at_corners()}):
            best = self._better(best, first)
        queue: list[_Interval] = []
        self._push(queue, best, self.least, self.most)
        for _try in range(tries):
            if not queue or -queue[0][0] <= best.plants:
                return best, True
            _bound, _width, one, other = heappop(queue)
            if other - one < 2:
                continue
            middle = (one + other) // 2
            best = self._better(best, middle)
            self._push(queue, best, one, middle)
            self._push(queue, best, middle, other)
        return best, False

    def _at_corners(self) -> Iterable[int]:
        """First offsets that bring a line without a strip to a corner of the bed, where alone most may be held."""
        kind = self.grid.kinds[0]
        if kind.low == kind.high:
            for level in {y for _x, y in corners_of(self.bed)}:
                yield from (level - by for by in self.steps if self.least <= level - by <= self.most)

    def _better(self, best: _Shift, first: int) -> _Shift:
        plants, along = self.held(first, first)
        return _Shift(first, along, plants) if plants > best.plants else best

    def _push(self, queue: list[_Interval], best: _Shift, one: int, other: int) -> None:
        """Keep an interval that may hold more than the best; where all its shifts have no strip in common, nothing is
        known of it, and the widest such goes first."""
        kind = self.grid.kinds[0]
        bound = self.held(one, other)[0] if other - one <= kind.high - kind.low else _UNKNOWN
        if bound > best.plants:
            heappush(queue, (-bound, one - other, one, other))

    def held(self, one: int, other: int, along: int | None = None) -> tuple[int, int]:
        """The plants held at most by a shift from `one` to `other`, exactly where they are the same, and the shift
        along that does it (the one given, or the best)."""
        kind, plants = self.grid.kinds[0], 0
        step, arcs = kind.step, []
        for number, (by, before) in enumerate(zip(self.steps, cycle(self.befores), strict=False)):
            if one + by > self.last:
                break
            free = self._free(kind, one + by, other + by, number)
            if not kind.keeps_phase:
                plants += _anew(free, step)
                continue
            for low, high in free:
                whole, rest = divmod(high - low, step)
                plants += whole
                arcs.append(((low - before) % step, rest))
        if not arcs:
            return plants, 0
        if along is not None:
            return plants + sum((along - begin) % step <= rest for begin, rest in arcs), along
        more, along = _most_over(arcs, step)
        return plants + more, along

    def _free(self, kind: Line, one: int, other: int, number: int) -> list[Interval]:
        """Where places may lie on a line of a kind between two offsets, at any offset between them."""
        low, high = other + kind.low, one + kind.high
        limits = self.grid.reach(low, high, self.start, self.end)
        across = (low, high) if kind.reach else (other, one)
        stretches = [kept.blocked(*across, number, kind.reach) for kept in self.kept]
        return free_stretches(self.ground(low, high), limits, kind.ends, stretches)

    def rounded(self, found: _Shift) -> _Shift:
        """The same number of plants with the first line at a reading that is easily marked, where there is one."""
        for step in _ROUND[is_metric(self.bed)]:
            near = found.first // step * step
            for first in (near, near + step):
                plants, along = self.held(first, first)
                if self.least <= first <= self.most and plants >= found.plants:
                    return _Shift(first, along, plants)
        return found

    def shifted(self, found: _Shift) -> Grid:
        """The grid with its lines shifted."""
        grid = self.grid
        offsets = tuple(found.first + step for step in self.steps if found.first + step <= self.last)
        kinds = tuple(kind._replace(first=kind.first + found.along) for kind in grid.kinds)
        inside = grid.edge - grid.offsets[0]
        last = grid.width - offsets[-1] - kinds[0].reach
        edge = min(found.first, last) + max(0, inside)
        return evolve(grid, offsets=offsets, kinds=kinds, rows=len(offsets), edge=edge)


def _search(bed: Bed, grid: Grid, start: int, end: int) -> _Search:
    """As many lines as were asked for or as fit, kept from either edge of the bed as the grid keeps its own."""
    kind = grid.kinds[0]
    kept = kind.high
    if kind.reach:
        kept = max(0, grid.edge_least - sub_row_offsets(grid.cell, grid.per_cell)[0])
    last, rows, most = grid.width - kept - kind.reach, grid.rows + 2, kept + grid.between
    if grid.rows_asked is not None:
        rows = grid.rows
        most = max(kept, last - (grid.offsets[-1] - grid.offsets[0]))
    steps = steps_of(grid.pattern, rows, grid.between, grid.twin)
    befores = tuple(grid.begins(start) + kind.first for kind in grid.kinds)
    obstacles = tuple(kept_by(one) for one in bed.obstacles)
    return _Search(bed, grid, start, end, steps, kept, most, last, befores, cuts_of(bed), obstacles)


def _anew(free: Iterable[Interval], step: int) -> int:
    """Plants in stretches of a row that are each filled from their own beginning."""
    plants, last = 0, None
    for low, high in free:
        first = low if last is None else max(low, last + step)
        if first <= high:
            held = (high - first) // step
            plants, last = plants + held + 1, first + held * step
    return plants


def _most_over(arcs: list[tuple[int, int]], circle: int) -> tuple[int, int]:
    """How many arcs, each of a beginning and a length, lie over one point of a circle at most, and that point: 0, or
    else where the last of them begins."""
    over_0 = sum([begin + length >= circle for begin, length in arcs])
    ends = sorted([(begin + length) % circle for begin, length in arcs])
    most, at = over_0, 0
    for begun, point in enumerate(sorted([begin for begin, _length in arcs]), 1):
        over = over_0 + begun - bisect_left(ends, point)
        if over > most:
            most, at = over, point
    return most, at
