"""Solving the task of a season: the best filling that is found, with a proof of how good it is.

A search finds the blocks, a solver the bound that no filling can be above. The same task and effort give the same
filling.
"""

from collections.abc import Callable

from gardenplot.filling.model import Answer, Task
from gardenplot.filling.rounds import Rounds


def solve(
    task: Task, turns: int, told: Callable[[Answer, int], bool], turned: Callable[[], object] = lambda: None
) -> tuple[Answer, int]:
    """The best filling of a task that so many turns find, and a bound that none is above.

    `told` is called with each better one and the bound so far, and says whether to go on; `turned` at each turn, and
    while the bound is looked for, and ends it all by saying False.
    """
    rounds = Rounds(task, turns, told, turned)
    rounds.all()
    return rounds.best, rounds.bound
