"""The programme of a season without places: columns for what could stand, rows for the ground of every day.

It asks only that on every day the lengths in use together fit the strips (a relaxation, as for the temporal knapsack
problem: Bartlett and others 2005), that each wish stands once, and, where several strips are alike, that pieces too
long to share one do not (dual feasible functions: Fekete and Schepers 2001). Any real filling fulfils all of these.
"""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from attrs import field, mutable

from gardenplot.filling.loads import taken_on
from gardenplot.filling.model import Strip, Task, Way
from gardenplot.filling.sizes import Sizes, progressions

_SHARES = range(1, 6)
"""Of the dual feasible functions that round a length down to a multiple of a half, a third ... of its strip."""

_COLUMNS = 12_000
"""Above it, strips that differ are thrown together: a looser bound, found in a moment."""


_WISHES_AT_ONCE, _DAYS_AT_ONCE = 32, 4
"""Wishes and days that are looked at before it is asked whether to go on."""


class _Used(NamedTuple):
    """A column in use on some days: what it takes of a strip's length, and the least length of its block."""

    column: int
    first: int
    last: int
    length: int
    block: int


class Stands(NamedTuple):
    """The columns of a run of sizes: whether one of them stands, and its steps beyond the first, if there are any."""

    stands: int
    steps: int | None
    wish: int
    way: int
    sizes: tuple[int, ...]


class Row(NamedTuple):
    """Columns times a factor each, together at most a limit, all in whole numbers.

    For the solver both are divided by `unit`, so that rows are of one size.
    """

    columns: list[int]
    factors: list[int]
    limit: int
    unit: int


@mutable
class Programme:
    """Columns with what they are worth and may reach, and rows.

    `alike` are the strips of each group of strips that are the same in every way; `ground` are the rows of ground by
    their numbers, each for a group and a day.
    """

    alike: tuple[tuple[int, ...], ...]
    worths: list[int] = field(factory=list)
    limits: list[int] = field(factory=list)
    rows: list[Row] = field(factory=list)
    runs: list[Stands] = field(factory=list)
    ground: list[int] = field(factory=list)

    def column(self, worth: int, limit: int) -> int:
        """Add a column; its number."""
        self.worths.append(worth)
        self.limits.append(limit)
        return len(self.worths) - 1

    def row(self, columns: Sequence[int], factors: Sequence[int], limit: int, unit: int = 1) -> None:
        """Add a row, unless it would have no columns."""
        if columns:
            self.rows.append(Row(list(columns), list(factors), limit, unit))


def programme_of(task: Task, goes_on: Callable[[], object] = lambda: True) -> Programme:
    """The programme of a task; it is not whole where `goes_on`, which is asked now and then, says False."""
    columns = sum(len(ways) for ways in task.wishes)
    groups = _alike(task.strips) if columns <= _COLUMNS else {None: [*range(len(task.strips))]}
    group_of = {strip: number for number, strips in enumerate(groups.values()) for strip in strips}
    programme, used = Programme(tuple(map(tuple, groups.values()))), [list[_Used]() for _group in groups]
    for wish, ways in enumerate(task.wishes):
        if wish % _WISHES_AT_ONCE == 0 and goes_on() is False:
            return programme
        once = []
        for number in told_apart(ways, group_of):
            for column, uses in _columns(programme, wish, number, ways[number]):
                once.append(column)
                used[group_of[ways[number].strip]] += uses
        programme.row(once, [1] * len(once), 1)
    for uses, strips in zip(used, groups.values(), strict=True):
        _ground_rows(programme, uses, [task.strips[number] for number in strips], goes_on)
    return programme


def _alike(strips: tuple[Strip, ...]) -> dict[Strip | None, list[int]]:
    """The numbers of strips that are the same in every way."""
    found: dict[Strip | None, list[int]] = {}
    for number, strip in enumerate(strips):
        found.setdefault(strip, []).append(number)
    return found


def told_apart(ways: tuple[Way, ...], group_of: Mapping[int, int]) -> dict[int, list[int]]:
    """Ways that differ by more than which of some strips they are in: the first of a kind, and all of it."""
    kinds: dict[tuple[object, ...], list[int]] = {}
    for number, way in enumerate(ways):
        kind = group_of[way.strip], way.first, way.last, way.least_lengths, way.worths
        kinds.setdefault(kind, []).append(number)
    return {numbers[0]: numbers for numbers in kinds.values()}


def _columns(programme: Programme, wish: int, number: int, way: Way) -> Iterator[tuple[int, list[_Used]]]:
    """For each run of even sizes a column that says whether one of them stands, and one for the steps beyond the
    first."""
    size_of = {size: place for place, size in enumerate(zip(way.least_lengths, way.worths, strict=True))}
    for length, worth, longer, dearer, count in progressions(Sizes(way.least_lengths, way.worths)):
        stands, steps = programme.column(worth, 1), None
        uses = [_Used(stands, way.first, way.last, length, length)]
        if count > 1:
            steps = programme.column(dearer, count - 1)
            programme.row([steps, stands], [1, 1 - count], 0)
            uses.append(_Used(steps, way.first, way.last, longer, 0))
        sizes = tuple(size_of[length + step * longer, worth + step * dearer] for step in range(count))
        programme.runs.append(Stands(stands, steps, wish, number, sizes))
        yield stands, uses


def _ground_rows(programme: Programme, uses: list[_Used], strips: list[Strip], goes_on: Callable[[], object]) -> None:
    """On every day that some block is the last to begin before another ends, what stands there fits the strips."""
    lengths = {strip.length for strip in strips}
    taken = {(one.first, one.last) for strip in strips for one in strip.taken}
    for place, day in enumerate(_busy_days(taken | {(use.first, use.last) for use in uses}), 1):
        if place % _DAYS_AT_ONCE == 0 and goes_on() is False:
            return
        here = [use for use in uses if use.first <= day < use.last]
        ground = sum(strip.length - taken_on(strip, day) for strip in strips)
        if here:
            programme.ground.append(len(programme.rows))
        programme.row([use.column for use in here], [use.length for use in here], ground)
        if len(lengths) == 1 and len(strips) > 1:
            (length,) = lengths
            for columns, factors, limit in _too_long_to_share(here, length, len(strips)):
                programme.row(columns, factors, limit * length, length)


def _busy_days(spans: Collection[tuple[int, int]]) -> list[int]:
    """Days on which no less is in use than on any near them: those of a beginning that an end comes next to."""
    begins, ends = {first for first, _last in spans}, {last for _first, last in spans}
    days = sorted(begins | ends)
    return [day for day, following in pairwise(days) if day in begins and following in ends]


def _too_long_to_share(here: list[_Used], length: int, strips: int) -> Iterator[tuple[list[int], list[int], int]]:
    """Rows by dual feasible functions: what blocks count for, so that together they count for so many strips at most,
    in parts of a strip's length.

    The first rounds (k + 1) x / k down unless it is whole; the others count a block longer than the strip less some
    length as a whole strip, and one shorter than it as nothing.
    """
    blocks = [use for use in here if use.block]
    for share in _SHARES:
        counted = [(use.column, _shared(use.block, length, share)) for use in blocks]
        yield _row(counted, strips * share)
    shorts = sorted({min(use.block, length - use.block) for use in blocks})
    for short in [each for each in shorts if 0 < each <= length // 2][:: max(1, len(shorts) // 8)]:
        counted = [(use.column, _past(use.block, length, short)) for use in blocks]
        yield _row(counted, strips)


def _shared(block: int, length: int, share: int) -> int:
    whole, rest = divmod(block * (share + 1), length)
    return whole * length if rest else block * share


def _past(block: int, length: int, short: int) -> int:
    if block > length - short:
        return length
    return 0 if block < short else block


def _row(counted: list[tuple[int, int]], limit: int) -> tuple[list[int], list[int], int]:
    kept = [(column, factor) for column, factor in counted if factor]
    return [column for column, _factor in kept], [factor for _column, factor in kept], limit
