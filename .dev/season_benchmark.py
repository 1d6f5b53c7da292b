"""Fill seasons made from a seed, 30 weeks and 1.2 times overfull, and print how far from the bound they are.

    .venv/bin/python .dev/season_benchmark.py            2 and 5 seconds of turns
    .venv/bin/python .dev/season_benchmark.py --long     60 seconds as well
    .venv/bin/python .dev/season_benchmark.py --quick    a few turns of one seed, to see that it runs

Beds are 200 units of half a foot; a wish is 4 to 14 weeks in the ground, of a length from 1 to 4 as the seed has it,
scaled so that the fullest week wants 1.2 times the beds, and may go in up to 4 weeks later. Turns are counted, so the
gaps are the same on every machine; the time beside them is that of the processor, the longest of the seeds. A part of
the gap is the bound's: at least what it comes down by when its solver has many more nodes.
"""

import argparse
import resource
import sys
from collections.abc import Sequence
from functools import partial
from itertools import pairwise, product
from random import Random
from statistics import median
from time import perf_counter, process_time, sleep, thread_time

from attrs import frozen
from filling_benchmark import plan_of
from measuring import clock

from gardenplot.exports.apart import Apart, Work
from gardenplot.filling.bound import most_worth
from gardenplot.filling.model import Answer, Strip, Task, Way, wrongs
from gardenplot.filling.season import solve
from gardenplot.filling.wanted import Weights

WEEKS, UNITS = 30, 200
SEEDS = (7, 8, 9, 10)
QUICK_TURNS, NODES = 30, 400
ASKED_TURNS = 2_000
"""Turns in which all is done that a filling does."""


@frozen
class Goal:
    """So many wishes on so many beds, turns, the seconds they may take, and the gap that is the goal, in %."""

    wishes: int
    beds: int
    turns: int
    seconds: float
    most: float


SHORT = (
    Goal(50, 1, 1_600, 2, 0.5), Goal(50, 8, 16_000, 2, 2),
    Goal(200, 1, 2_000, 5, 2), Goal(200, 8, 3_200, 5, 2.5), Goal(200, 40, 12_000, 5, 4),
)  # fmt: skip
LONG = (Goal(200, 1, 20_000, 60, 1), Goal(200, 8, 60_000, 60, 1.5), Goal(200, 40, 300_000, 60, 2))


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table; 1 if a filling has anything wrong, whatever the gaps."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--long", action="store_true", help="a minute for each of the larger seasons as well")
    parser.add_argument("--quick", action="store_true", help="a few turns; goals are not judged")
    wanted = parser.parse_args(arguments)
    wrong = False
    for goal in (*SHORT, *(LONG if wanted.long else ())):
        found = [filled(goal, seed, few=wanted.quick) for seed in SEEDS[: 1 if wanted.quick else None]]
        wrong = wrong or any(one.faults for one in found)
        show(judged(goal, found), judged=not wanted.quick)
    show(fits(), judged=not wanted.quick)
    show(asked(few=wanted.quick), judged=not wanted.quick)
    show(ended(few=wanted.quick), judged=not wanted.quick)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    show(Line("memory of all this", "", f"{memory:.0f} MB", "<= 400 MB", memory <= 400), judged=not wanted.quick)
    return int(wrong)


@frozen
class Filled:
    """The gap to the bound in %, the part of the bound's that more nodes take away, seconds, and what is wrong."""

    gap: float
    loose: float
    took: float
    faults: tuple[str, ...]


@frozen
class Line:
    """What was measured, the longest time, what came out, and the goal."""

    name: str
    time: str
    found: str
    goal: str
    met: bool


def show(line: Line, *, judged: bool) -> None:
    """Print a row."""
    verdict = ("met" if line.met else "MISSED") if judged else ""
    print(f"{line.name:<32}{line.time:>12}{line.found:>54}{line.goal:>16}{verdict:>10}", flush=True)


def judged(goal: Goal, found: Sequence[Filled]) -> Line:
    """The median gap of some seeds beside the goal; the time is shown, since it is the machine's."""
    gaps, took = [one.gap for one in found], max(one.took for one in found)
    loose = median(one.loose for one in found)
    return Line(
        f"{goal.wishes} wishes, {goal.beds} beds, {goal.turns} turns", clock(took),
        f"{median(gaps):.2f} % ({min(gaps):.2f} to {max(gaps):.2f} %), bound's {loose:.2f} %",
        f"<= {goal.most:g} %, {goal.seconds:g} s", median(gaps) <= goal.most,
    )  # fmt: skip


def filled(goal: Goal, seed: int, *, few: bool) -> Filled:
    """One season filled."""
    task = season(goal.wishes, goal.beds, seed, 1.2)
    begin = process_time()
    answer, bound = solve(task, QUICK_TURNS if few else goal.turns, _go_on)
    took = process_time() - begin
    tight = min(bound, most_worth(task, 1 if few else NODES))
    return Filled(
        100 * (bound - answer.worth) / bound, 100 * (bound - tight) / bound, took, tuple(wrongs(task, answer))
    )


def fits() -> Line:
    """A season in which everything fits, proved so."""
    task = season(50, 8, 7, 0.6)
    begin = process_time()
    answer, bound = solve(task, 2000, _go_on)
    took = process_time() - begin
    met = answer.worth == bound and took <= 1
    return Line("50 wishes, 8 beds, all fit", clock(took), "proved" if met else "not proved", "<= 1 s", met)


def asked(*, few: bool) -> Line:
    """How long a filling works at most before it asks whether to go on, or ends: what a stop waits for.

    It is the time of the processor, without the solver's thread, which is left to end by itself.
    """
    longest = 0.0
    tried = product((50, 200), (1, 8, 40), SEEDS[:2])
    for wishes, beds, seed in [(50, 8, SEEDS[0])] if few else tried:
        at = [thread_time()]
        solve(season(wishes, beds, seed, 1.2), QUICK_TURNS if few else ASKED_TURNS, _go_on, partial(_asked, at))
        at.append(thread_time())
        longest = max(longest, *(after - before for before, after in pairwise(at)))
    return Line("between two questions to go on", clock(longest), "", "<= 100 ms", longest <= 0.1)


def _asked(at: list[float]) -> None:
    at.append(thread_time())


def ended(*, few: bool) -> Line:
    """How long it takes until a filling in a process of its own, as the window has it, is gone."""
    work = Apart(
        Work("gardenplot.filling.telling", "fill_and_others", (plan_of(20 if few else 200), 1_000_000, Weights()))
    )
    while work.told() is None:
        sleep(0.05)
    begin = perf_counter()
    work.end()
    took = perf_counter() - begin
    return Line("a filling in a process, stopped", clock(took), "", "<= 100 ms", took <= 0.1)


def _go_on(_better: Answer, _bound: int) -> bool:
    return True


def season(wishes: int, beds: int, seed: int, fullness: float) -> Task:
    """A season from a seed: in its fullest week the wishes want so many times the beds' length."""
    chance = Random(seed)
    raw = []
    for _number in range(wishes):
        weeks = chance.randint(4, 14)
        first = chance.randint(0, WEEKS - weeks)
        later = min(chance.choice([0, 0, 1, 2, 4]), WEEKS - weeks - first)
        raw.append((chance.uniform(1, 4), weeks, first, later))
    load = [
        sum(length for length, weeks, first, _later in raw if first <= week < first + weeks) for week in range(WEEKS)
    ]
    scale = fullness * UNITS * beds / max(load)
    found = []
    for raw_length, weeks, first, later in raw:
        length = max(1, min(UNITS, round(raw_length * scale)))
        worth = round(length * weeks * chance.uniform(0.5, 1.5))
        days = range(first, first + later + 1)
        found.append(
            tuple(Way(bed, day, day + weeks, (length,), (worth,)) for bed, day in product(range(beds), days))
        )
    return Task((Strip(UNITS),) * beds, tuple(found))


if __name__ == "__main__":
    sys.exit(main())
