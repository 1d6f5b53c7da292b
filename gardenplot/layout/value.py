"""What a layout is: where the plants of one planting stand, in whole nanometres in the frame of the bed."""

from collections.abc import Container, Iterable
from enum import StrEnum
from functools import cached_property
from itertools import cycle
from typing import NamedTuple

from attrs import field, frozen

from gardenplot.layout.turn import Turn
from gardenplot.plan import Direction, Pattern


class EdgeRule(StrEnum):
    """Who said how near to the bed's edge an outer row may stand."""

    PLANTING = "planting"
    CROP = "crop"
    BED = "bed"
    HALF_SPACING = "half the row spacing"
    MIDDLE = "the middle of the bed"

    @property
    def is_usual(self) -> bool:
        """Whether nobody asked for it, so that it follows from row spacing and bed."""
        return self in (EdgeRule.HALF_SPACING, EdgeRule.MIDDLE)


Ends = tuple[int, int]
"""What is kept free before the first and behind the last place of a row, in nm."""


class Line(NamedTuple):
    """A row line of a grid at `offset`, on which places lie `step` apart.

    Where a place lies, all from `low` to `high` across the line must be ground. `first` is how far inside the block
    the first place lies; with `keeps_phase` all runs of the line hold to the places that follow from it, otherwise
    each begins anew at its own end, or is `centred`. A place `reach` long is a cell with several plants in it.
    """

    offset: int
    low: int
    high: int
    step: int
    ends: Ends
    first: int
    keeps_phase: bool = False
    centred: bool = False
    reach: int = 0

    def at(self, offset: int) -> "Line":
        """The line moved across by `offset`."""
        return Line(self.offset + offset, self.low + offset, self.high + offset, *self[3:])


@frozen(cache_hash=True, slots=False)  # a dictionary of twenty fields is filled in half the time of twenty slots
class Grid:
    """How plants stand across and along a bed before any block is cut from it.

    `edge` and `between` are what came about; `edge_least` and `between_least` what was asked for; `rows_asked` is
    None where the width decides. `rank` is the length of bed by which a block grows, `ends` what is kept free before
    its first and behind its last rank, `end_margin` the margin that was asked for (None for half a spacing).
    Of a grid with a `turn`, width, edge and lines are those of the turned frame.
    `offsets` are those of rows along the bed, `kinds` a line at an offset of 0 for each kind of row, by turns. A
    broadcast band and rings have neither. `twin` is the spacing inside a pair, `cell` the side of a cell with
    `per_cell` plants in it.
    """

    pattern: Pattern
    in_row: int
    between: int
    between_least: int
    rows: int
    rows_asked: int | None
    edge: int
    edge_least: int
    edge_rule: EdgeRule
    width: int
    rank: int
    ends: Ends
    end_margin: int | None = None
    offsets: tuple[int, ...] = field(default=(), hash=False)
    kinds: tuple[Line, ...] = field(default=(), hash=False)
    direction: Direction = Direction.ALONG
    twin: int = 0
    cell: int = 0
    per_cell: int = 1
    in_row_least: int | None = None
    turn: Turn | None = None

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """The row lines of rows along the bed."""
        return tuple(kind.at(offset) for offset, kind in zip(self.offsets, cycle(self.kinds), strict=False))

    def begins(self, start: int) -> int:
        """From where, in a block that begins at `start`, places of lines that keep one phase are counted."""
        return 0 if self.runs_across or self.turn is not None else start

    def reach(self, low: int, high: int, start: int, end: int) -> Ends:
        """From where to where a row line may run in a block that has all from one offset to another as its ground."""
        if self.turn is None:
            return start, end
        kind = self.kinds[0]
        if not kind.reach:
            start, end = self.turn.inside(start, end, self.ends, kind.high)
        return self.turn.between(low, high, start, end)

    @property
    def runs_across(self) -> bool:
        """Whether the rows run across the bed."""
        return self.direction is Direction.ACROSS


class Run(NamedTuple):
    """Evenly spaced plants on one row line: the first stands at `first`, the next `step` further, `count` in all."""

    first: int
    step: int
    count: int  # type: ignore[assignment]  # of plants: nobody counts the fields of a run

    @property
    def last(self) -> int:
        """Tape reading of the last plant; meaningless for a run of none."""
        return self.first + (self.count - 1) * self.step

    def without(self, gone: Container[int]) -> "Iterable[Run]":
        """What is left of it without some of its plants, by their numbers from 0."""
        begin: int | None = None
        for number in range(self.count + 1):
            stays = number < self.count and number not in gone
            if stays and begin is None:
                begin = number
            if not stays and begin is not None:
                yield Run(self.first + begin * self.step, self.step, number - begin)
                begin = None


Runs = tuple[Run, ...]


class Row(NamedTuple):
    """A row line at `offset` from the base line with its runs of plants."""

    offset: int
    runs: Runs

    @property
    def count(self) -> int:  # type: ignore[override]  # of plants, as in a run
        """Plants in this row."""
        return sum([run.count for run in self.runs])


@frozen(cache_hash=True)
class Ring:
    """Plants at equal distances on a circle: its radius, and their tape readings and offsets to the nearest nm."""

    radius: int
    places: tuple[tuple[int, int], ...]

    @property
    def count(self) -> int:
        """Plants on this ring."""
        return len(self.places)


@frozen(cache_hash=True, slots=False)  # as a grid
class Layout:
    """Where the plants of one planting stand: its block from `start` to `end` and its rows, or its rings.

    Its rows lie at `offsets` and have `fills` by turns: one for each row, or fewer that come again and again.
    `wanted` is the number of plants that order or plan asks for (None where length rules), `plants` those that
    stand inside the planting zone, `gain` those that the best phase brought. Of rows across the bed, offsets are tape
    readings and runs are counted from the base line; rows of a turned grid lie in its turned frame. A broadcast band
    has no rows. Where it `holds_trays`, what stands at the places are trays.
    """

    planting: str
    bed: str
    crop: str
    start: int
    end: int
    grid: Grid = field(hash=False)
    offsets: tuple[int, ...] = field(hash=False)
    fills: tuple[Runs, ...] = field(hash=False)
    plants: int
    wanted: int | None = None
    rings: tuple[Ring, ...] = ()
    gain: int | None = None
    holds_trays: bool = False

    @property
    def planted(self) -> int:
        """The plants that grow there; of trays that stand there for a while, none."""
        return 0 if self.holds_trays else self.plants

    @property
    def length(self) -> int:
        """Length of the block."""
        return self.end - self.start

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """The rows, from the base line on; of rows across, from the head on."""
        return tuple(map(Row, self.offsets, cycle(self.fills)))

    @property
    def runs(self) -> tuple[Run, ...]:
        """All runs that hold plants, row by row."""
        return tuple(run for row in self.rows for run in row.runs if run.count)

    @property
    def _reach(self) -> list[int]:
        """Tape readings among which are the first and the last plant's."""
        turn = self.grid.turn
        if turn is not None:
            ends = ((at, row.offset) for row in self.rows for run in row.runs for at in (run.first, run.last))
            return [turn.place(*end)[0] for end in ends]
        readings = [x for ring in self.rings for x, _y in ring.places]
        if self.grid.runs_across:
            return readings + [row.offset for row in self.rows if row.count]
        return readings + [at for run in self.runs for at in (run.first, run.last)]

    @property
    def first_plant(self) -> int | None:
        """Tape reading of the plant nearest to the head, None if there is none on a row."""
        return min(self._reach, default=None)

    @property
    def last_plant(self) -> int | None:
        """Tape reading of the plant farthest from the head, None if there is none on a row."""
        return max(self._reach, default=None)

    @cached_property
    def per_row(self) -> tuple[int, ...]:
        """Plants in each row, from the base line on; of rows across, from the head on; of rings, from outside in."""
        return tuple([row.count for row in self.rows] + [ring.count for ring in self.rings])

    @property
    def rows_planted(self) -> int:
        """How many rows or rings hold a plant; all that it would have where none holds any."""
        return sum(map(bool, self.per_row)) or len(self.per_row)
