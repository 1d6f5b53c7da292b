"""What no filling of a task can be worth more than, and what would then stand: a programme without places, solved."""

from collections.abc import Callable
from importlib import import_module
from math import floor
from types import ModuleType
from typing import Any, NamedTuple

from gardenplot.filling.model import Task
from gardenplot.filling.programme import Programme, programme_of, told_apart

_SOLVER = "highspy"
"""Loaded when a season is filled: it takes a tenth of a second."""

_WHOLE = 0.5
"""A column that is nearer to one than to nothing stands."""

Sizes = dict[int, int]
"""For a wish the ways in which it may stand, by their numbers, each with how many of its sizes it may have."""


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
    return relaxed(task, nodes).bound


def relaxed(
    task: Task, nodes: int, part: float = 1.0, goes_on: Callable[[], object] = lambda: True, near: float = 0.0
) -> Relaxed:
    """The best of a task when places do not count; with part of the ground alone it is no bound, but easier to place.

    Without nodes, parts of wishes may stand, which takes a moment; nodes of a search tree tighten it, the first one
    most. Without the solver it is what each wish would be worth alone. `goes_on` is asked now and then, and what was
    proved until it said False is what is told. With `near` the solver ends that near to the best, as a part of it.
    """
    alone = worth_alone(task)
    if alone == 0:
        return Relaxed(0)
    try:
        solver = import_module(_SOLVER)
    except ImportError:
        return Relaxed(alone)
    programme = programme_of(task)
    highs = _posed(solver, programme, nodes, part, near)
    for asked in (highs.cbMipInterrupt, highs.cbSimplexInterrupt):
        asked.subscribe(lambda event: event.interrupt() if goes_on() is False else None)
    highs.run()
    found = highs.getInfo()
    proved = -(found.mip_dual_bound if nodes else found.objective_function_value)
    is_proved = nodes or highs.getModelStatus() == solver.HighsModelStatus.kOptimal
    bound = min(alone, floor(proved + 1e-6 * alone + 1e-6)) if is_proved and proved < float(alone) else alone
    is_whole = nodes and found.primal_solution_status == solver.kSolutionStatusFeasible
    return Relaxed(bound, _standing(task, programme, highs.getSolution().col_value) if is_whole else ())


def _posed(solver: ModuleType, programme: Programme, nodes: int, part: float, near: float) -> Any:  # noqa: ANN401  (the solver has no types)
    """The solver with a programme: one thread and a fixed seed give the same again."""
    highs = solver.Highs()
    options = {"log_to_console": False, "output_flag": False, "threads": 1, "random_seed": 1, "mip_rel_gap": near}
    for name, value in options.items():
        highs.setOptionValue(name, value)
    count = len(programme.worths)
    every = [*range(count)]
    highs.addVars(count, [0.0] * count, programme.limits)
    highs.changeColsCost(count, every, [-worth for worth in programme.worths])
    if nodes:
        highs.setOptionValue("mip_max_nodes", nodes)
        highs.changeColsIntegrality(count, every, [solver.HighsVarType.kInteger] * count)
    ground = set(programme.ground)
    for number, (columns, factors, limit) in enumerate(programme.rows):
        most = limit * part if number in ground else limit
        highs.addRow(-solver.kHighsInf, most, len(columns), columns, factors)
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
