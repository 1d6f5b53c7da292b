"""Solving the task of a season: the best filling that is found, with a proof of how good it is.

A search finds the blocks, a solver the bound that no filling can be above. The same task and effort give the same
filling.
"""

from collections.abc import Callable

from gardenplot.filling.bound import most_worth, worth_alone
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.model import Answer, Task
from gardenplot.filling.search import Search

_SEEDS, _FEW_WISHES = (1, 2, 3), 60
"""Searches from the same start, each with numbers of its own; with more wishes one long search finds more."""

_FEW_WAYS, _NODES = 400, 200
"""With so few ways the bound is tightened by so many nodes of the solver's tree at once: it takes a moment."""

_STEPS_A_TURN = 20
"""Blocks tried when all fillings of a small task are, for each turn that it had."""

_TURNS_A_NODE = 1000
"""With more, there is a node for so many turns when the search has ended."""


def solve(
    task: Task, turns: int, told: Callable[[Answer, int], bool], turned: Callable[[], object] = lambda: None
) -> tuple[Answer, int]:
    """The best filling of a task that so many turns find, and a bound that none is above.

    `told` is called with each better one and the bound so far, and says whether to go on; `turned` at
    each turn.
    """
    bound = worth_alone(task)
    best = Search(task).best
    if best.worth < bound:
        bound = most_worth(task, 0)
        if sum(map(len, task.wishes)) <= _FEW_WAYS:
            bound = min(bound, most_worth(task, _NODES))
    seeds = _SEEDS if len(task.wishes) <= _FEW_WISHES else _SEEDS[:1]
    for seed in seeds:
        if best.worth >= bound:
            return best, bound
        search = Search(task, seed)
        goes_on = told(search.best, bound) and search.run(
            -(-turns // len(seeds)), bound, lambda better: told(better, bound), turned
        )
        best = max(best, search.best, key=lambda answer: answer.worth)
        if not goes_on:
            return best, bound
    return _proved(task, best, bound, turns)


def _proved(task: Task, best: Answer, bound: int, turns: int) -> tuple[Answer, int]:
    """What a search has found, with its bound tightened as far as so many turns allow."""
    proved = best_of_all(task, best, _STEPS_A_TURN * turns) if best.worth < bound else None
    if proved is not None:
        return proved, proved.worth
    nodes = turns // _TURNS_A_NODE
    return best, min(bound, most_worth(task, nodes)) if nodes and best.worth < bound else bound
