"""What no filling of a task can be worth more than, and what would then stand: a programme without places, solved."""

from collections.abc import Callable
from importlib import import_module
from math import floor
from threading import Event, Thread
from types import ModuleType
from typing import Any, NamedTuple

from gardenplot.filling.model import Task
from gardenplot.filling.prices import most_at, whole_worth
from gardenplot.filling.programme import Programme, programme_of, told_apart

_SOLVER = "highspy"
"""Loaded when a season is filled: it takes a tenth of a second."""

_LOOK = 0.02
"""Seconds between two questions whether to go on."""

_WHOLE = 0.5
"""A column that is nearer to one than to nothing stands."""

_MARGIN = 1e-6
"""What a search tree's bound may be wrong by, as a part of what the wishes would be worth alone."""

Sizes = dict[int, int]
"""For a wish the ways in which it may stand, by their numbers, each with how many of its sizes it may have."""


class Asked(NamedTuple):
    """What is asked of the solver, counted, so that it answers the same on every machine.

    Without nodes, parts of wishes may stand, which takes a moment; nodes of a search tree tighten the bound, the
    first one most. It ends as `near` to the best, as a part of it. With a `part` of the ground there is
    no bound, but what stands is easier to place.
    """

    nodes: int = 0
    near: float = 0.0
    part: float = 1.0


class Relaxed(NamedTuple):
    """An upper bound on the worth of any filling, and for each wish how it stands in the best without places.

    Nothing stands where the solver was stopped, is missing, or was asked for the bound alone.
    """

    bound: int
    stand: tuple[Sizes, ...] = ()


def worth_alone(task: Task) -> int:
    """What the wishes would be worth together if each had the ground to itself."""
    return sum(max((way.worths[-1] for way in ways), default=0) for ways in task.wishes)


def most_worth(task: Task, nodes: int) -> int:
    """An upper bound on the worth of any filling of a task; see `relaxed`."""
    return relaxed(task, Asked(nodes)).bound


def relaxed(
    task: Task, asked: Asked, goes_on: Callable[[], object] = lambda: True, programme: Programme | None = None
) -> Relaxed:
    """The best of a task when places do not count; `programme` is its programme where that is there already.

    Without the solver it is what each wish would be worth alone, and so it is when `goes_on`, which is asked now and
    then, says False.
    """
    alone = worth_alone(task)
    if alone == 0:
        return Relaxed(0)
    try:
        solver = import_module(_SOLVER)
    except ImportError:
        return Relaxed(alone)
    programme = programme or programme_of(task)
    highs = _posed(solver, programme, asked) if goes_on() is not False else None
    if highs is None or not _ran(highs, goes_on):
        return Relaxed(alone)
    found = highs.getInfo()
    is_whole = asked.nodes and found.primal_solution_status == solver.kSolutionStatusFeasible
    stand = _standing(task, programme, highs.getSolution().col_value) if is_whole else ()
    if asked.part < 1:
        return Relaxed(alone, stand)
    return Relaxed(min(alone, _proved(highs, programme, alone, asked)), stand)


def _proved(highs: Any, programme: Programme, alone: int, asked: Asked) -> int:
    """The bound that the solver came to: exactly by its prices, and of a search tree, which has none, with a margin
    for what is lost in floating point.
    """
    if not asked.nodes:
        return most_at(programme, [-price for price in highs.getSolution().row_dual] or [0.0] * len(programme.rows))
    proved = -float(highs.getInfo().mip_dual_bound) + _MARGIN * (alone + 1)
    return whole_worth(programme, floor(min(float(alone), proved)))


def _ran(highs: Any, goes_on: Callable[[], object]) -> bool:
    """Whether the solver came to its end; it works in a thread, since it answers a stop after a second only."""
    stopped = Event()
    for interrupt in (highs.cbMipInterrupt, highs.cbSimplexInterrupt):
        interrupt.subscribe(lambda event: event.interrupt() if stopped.is_set() else None)
    work = Thread(target=highs.run)
    work.start()
    while work.is_alive():
        work.join(_LOOK)
        if goes_on() is False:
            stopped.set()
            return False
    return True


def _posed(solver: ModuleType, programme: Programme, asked: Asked) -> Any:
    """The solver with a programme: one thread and a fixed seed give the same again."""
    highs = solver.Highs()
    options = {"log_to_console": False, "output_flag": False, "threads": 1, "random_seed": 1}
    for name, value in (options | {"mip_rel_gap": asked.near}).items():
        highs.setOptionValue(name, value)
    count = len(programme.worths)
    every = [*range(count)]
    highs.addVars(count, [0.0] * count, [float(limit) for limit in programme.limits])
    highs.changeColsCost(count, every, [-float(worth) for worth in programme.worths])
    if asked.nodes:
        highs.setOptionValue("mip_max_nodes", asked.nodes)
        highs.changeColsIntegrality(count, every, [solver.HighsVarType.kInteger] * count)
    ground = set(programme.ground)
    for number, (columns, factors, limit, unit) in enumerate(programme.rows):
        most = limit / unit * asked.part if number in ground else limit / unit
        highs.addRow(-solver.kHighsInf, most, len(columns), columns, [factor / unit for factor in factors])
    return highs


def _standing(task: Task, programme: Programme, values: list[float]) -> tuple[Sizes, ...]:
    """How each wish stands: in any of the strips that are alike, in no larger a size than is chosen."""
    group_of = {strip: number for number, strips in enumerate(programme.alike) for strip in strips}
    stand: list[Sizes] = [{} for _ways in task.wishes]
    for run in programme.runs:
        if values[run.stands] > _WHOLE:
            step = 0 if run.steps is None else min(len(run.sizes) - 1, round(values[run.steps]))
            alike = told_apart(task.wishes[run.wish], group_of)[run.way]
            stand[run.wish] = dict.fromkeys(alike, run.sizes[step] + 1)
    return tuple(stand)
