"""What a layout is: where the plants of one planting stand, in whole nanometres in the frame of the bed."""

from enum import StrEnum

from attrs import frozen

from gardenplot.plan import Pattern


class EdgeRule(StrEnum):
    """Who said how near to the bed's edge an outer row may stand."""

    PLANTING = "planting"
    CROP = "crop"
    BED = "bed"
    HALF_SPACING = "half the row spacing"


@frozen(cache_hash=True)
class Grid:
    """How plants stand across and along a bed before any block is cut from it.

    `edge` and `between` are what came about; `edge_least` and `between_least` what was asked for; `rows_asked` is
    None where the width decides. `ends` is what is kept free before the first and behind the last plant of a row,
    `end_margin` the margin that was asked for (None for half a spacing).
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
    ends: tuple[int, int]
    end_margin: int | None = None


@frozen(cache_hash=True)
class Run:
    """Evenly spaced plants on one row line: the first stands at `first`, the next `step` further, `count` in all."""

    first: int
    step: int
    count: int

    @property
    def last(self) -> int:
        """Tape reading of the last plant; meaningless for a run of none."""
        return self.first + (self.count - 1) * self.step


@frozen(cache_hash=True)
class Row:
    """A row line at `offset` from the base line with its runs of plants."""

    offset: int
    runs: tuple[Run, ...]

    @property
    def count(self) -> int:
        """Plants in this row."""
        return sum(run.count for run in self.runs)


@frozen(cache_hash=True)
class Layout:
    """Where the plants of one planting stand: its block from `start` to `end` and its rows.

    `wanted` is the number of plants that order or plan asks for (None where length rules), `plants` those that
    stand inside the planting zone. A broadcast band has no rows.
    """

    planting: str
    bed: str
    crop: str
    start: int
    end: int
    grid: Grid
    rows: tuple[Row, ...]
    plants: int
    wanted: int | None = None

    @property
    def length(self) -> int:
        """Length of the block."""
        return self.end - self.start

    @property
    def runs(self) -> tuple[Run, ...]:
        """All runs that hold plants, row by row."""
        return tuple(run for row in self.rows for run in row.runs if run.count)

    @property
    def first_plant(self) -> int | None:
        """Tape reading of the plant nearest to the head, None if there is none on a row."""
        return min((run.first for run in self.runs), default=None)

    @property
    def last_plant(self) -> int | None:
        """Tape reading of the plant farthest from the head, None if there is none on a row."""
        return max((run.last for run in self.runs), default=None)

    @property
    def per_row(self) -> tuple[int, ...]:
        """Plants in each row, from the base line across."""
        return tuple(row.count for row in self.rows)
