"""What no filling of a task can be worth more than: a small mixed-integer programme without places.

It asks only that on every day the lengths in use together fit the strips (a relaxation, as for the temporal knapsack
problem: Bartlett and others 2005), that each wish stands once, and, where several strips are alike, that pieces too
long to share one do not (dual feasible functions: Fekete and Schepers 2001). Any real filling fulfils all of these.
"""

from collections.abc import Collection, Iterator, Sequence
from importlib import import_module
from itertools import pairwise
from math import floor
from types import ModuleType
from typing import NamedTuple

from attrs import field, mutable

from gardenplot.filling.gap import Sizes, progressions
from gardenplot.filling.model import ALWAYS, Strip, Task, Way

_SOLVER = "highspy"
"""Loaded when a season is filled: it takes a tenth of a second."""

_SHARES = range(1, 6)
"""Of the dual feasible functions that round a length down to a multiple of a half, a third ... of its strip."""

_COLUMNS = 12_000
"""Above it, strips that differ are thrown together: a looser bound, found in a moment."""


class _Used(NamedTuple):
    """A column in use on some days: what it takes of a strip's length, and the least length of its block."""

    column: int
    first: int
    last: int
    length: int
    block: int


@mutable
class _Programme:
    """Columns with what they are worth and may reach, and rows of columns times a factor, at most a limit."""

    worths: list[float] = field(factory=list)
    limits: list[float] = field(factory=list)
    rows: list[tuple[list[int], list[float], float]] = field(factory=list)

    def column(self, worth: int, limit: int) -> int:
        self.worths.append(float(worth))
        self.limits.append(float(limit))
        return len(self.worths) - 1

    def row(self, columns: Sequence[int], factors: Sequence[float], limit: float) -> None:
        if columns:
            self.rows.append((list(columns), list(factors), limit))


def worth_alone(task: Task) -> int:
    """What the wishes would be worth together if each had the ground to itself."""
    return sum(max((way.worths[-1] for way in ways), default=0) for ways in task.wishes)


def most_worth(task: Task, nodes: int) -> int:
    """An upper bound on the worth of any filling of a task.

    Without nodes, parts of wishes may stand, which takes a moment; nodes of a search tree tighten it, the first one
    most. Without the solver it is what each wish would be worth alone.
    """
    alone = worth_alone(task)
    if alone == 0:
        return 0
    try:
        solver = import_module(_SOLVER)
    except ImportError:
        return alone
    return min(alone, floor(_solved(solver, _programme(task), nodes) + 1e-6 * alone + 1e-6))


def _programme(task: Task) -> _Programme:
    columns = sum(len(ways) for ways in task.wishes)
    groups = _alike(task.strips) if columns <= _COLUMNS else {None: [*range(len(task.strips))]}
    group_of = {strip: number for number, strips in enumerate(groups.values()) for strip in strips}
    programme, used = _Programme(), [list[_Used]() for _group in groups]
    for ways in task.wishes:
        once = []
        for group, way in _told_apart(ways, group_of):
            for column, uses in _columns(programme, way):
                once.append(column)
                used[group] += uses
        programme.row(once, [1.0] * len(once), 1.0)
    for uses, strips in zip(used, groups.values(), strict=True):
        _ground_rows(programme, uses, [task.strips[number] for number in strips])
    return programme


def _alike(strips: tuple[Strip, ...]) -> dict[Strip | None, list[int]]:
    """The numbers of strips that are the same in every way."""
    found: dict[Strip | None, list[int]] = {}
    for number, strip in enumerate(strips):
        found.setdefault(strip, []).append(number)
    return found


def _told_apart(ways: tuple[Way, ...], group_of: dict[int, int]) -> Iterator[tuple[int, Way]]:
    """Ways that differ by more than which of some strips they are in."""
    seen = set()
    for way in ways:
        kind = group_of[way.strip], way.first, way.last, way.least_lengths, way.worths
        if kind not in seen:
            seen.add(kind)
            yield group_of[way.strip], way


def _columns(programme: _Programme, way: Way) -> Iterator[tuple[int, list[_Used]]]:
    """For each run of even sizes a column that says whether one of them stands, and one for the steps beyond the
    first."""
    for length, worth, longer, dearer, count in progressions(Sizes(way.least_lengths, way.worths)):
        stands = programme.column(worth, 1)
        uses = [_Used(stands, way.first, way.last, length, length)]
        if count > 1:
            steps = programme.column(dearer, count - 1)
            programme.row([steps, stands], [1.0, 1.0 - count], 0.0)
            uses.append(_Used(steps, way.first, way.last, longer, 0))
        yield stands, uses


def _ground_rows(programme: _Programme, uses: list[_Used], strips: list[Strip]) -> None:
    """On every day that some block is the last to begin before another ends, what stands there fits the strips."""
    lengths = {strip.length for strip in strips}
    taken = {(one.first, one.last) for strip in strips for one in strip.taken}
    for day in _busy_days(taken | {(use.first, use.last) for use in uses}):
        here = [use for use in uses if use.first <= day < use.last]
        ground = sum(strip.length - _taken_on(strip, day) for strip in strips)
        programme.row([use.column for use in here], [float(use.length) for use in here], float(ground))
        if len(lengths) == 1 and len(strips) > 1:
            (length,) = lengths
            for columns, factors, limit in _too_long_to_share(here, length, len(strips)):
                programme.row(columns, factors, limit)


def _busy_days(spans: Collection[tuple[int, int]]) -> list[int]:
    """Days on which no less is in use than on any near them: those of a beginning that an end comes next to."""
    begins, ends = {first for first, _last in spans}, {last for _first, last in spans}
    days = sorted(begins | ends)
    return [day for day, following in pairwise(days) if day in begins and following in ends]


def _taken_on(strip: Strip, day: int) -> int:
    """How much of a strip is taken on a day, apart from what blocks that were there before may share."""
    taken = sorted(
        (one.start, one.end) for one in strip.taken if one.first <= day < one.last and one.since == ALWAYS[0]
    )
    length = at = 0
    for start, end in taken:
        length += max(0, min(end, strip.length) - max(at, start))
        at = max(at, min(end, strip.length))
    return length


def _too_long_to_share(here: list[_Used], length: int, strips: int) -> Iterator[tuple[list[int], list[float], float]]:
    """Rows by dual feasible functions: what blocks count for, so that together they count for one strip at most.

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


def _shared(block: int, length: int, share: int) -> float:
    whole, rest = divmod(block * (share + 1), length)
    return float(whole) if rest else block * share / length


def _past(block: int, length: int, short: int) -> float:
    if block > length - short:
        return 1.0
    return 0.0 if block < short else block / length


def _row(counted: list[tuple[int, float]], limit: int) -> tuple[list[int], list[float], float]:
    kept = [(column, factor) for column, factor in counted if factor]
    return [column for column, _factor in kept], [factor for _column, factor in kept], float(limit)


def _solved(solver: ModuleType, programme: _Programme, nodes: int) -> float:
    """The bound that the solver proves within so many nodes: one thread and a fixed seed give the same again."""
    highs = solver.Highs()
    for name, value in (("log_to_console", False), ("output_flag", False), ("threads", 1), ("random_seed", 1)):
        highs.setOptionValue(name, value)
    count = len(programme.worths)
    every = [*range(count)]
    highs.addVars(count, [0.0] * count, programme.limits)
    highs.changeColsCost(count, every, [-worth for worth in programme.worths])
    if nodes:
        highs.setOptionValue("mip_max_nodes", nodes)
        highs.changeColsIntegrality(count, every, [solver.HighsVarType.kInteger] * count)
    for columns, factors, limit in programme.rows:
        highs.addRow(-solver.kHighsInf, limit, len(columns), columns, factors)
    highs.run()
    found = highs.getInfo()
    return float(-(found.mip_dual_bound if nodes else found.objective_function_value))
