"""Measure filling against floors taken in the same run.

    .venv/bin/python .dev/filling_benchmark.py            all rows, with their goals
    .venv/bin/python .dev/filling_benchmark.py --quick    few wishes, to see that it runs; goals are not judged

A gap is measured as the mouse meets it: what the wishes of a plan could be in its bed is known from the first gap on,
and has a row of its own. The floor of a gap is one numpy maximum for each wish over as many lengths as it is
counted in. Times are the processor's, the best of some turns.
"""

import argparse
import sys
from collections.abc import Iterator, Sequence
from datetime import date
from functools import partial
from random import Random
from time import process_time

import numpy as np
from measuring import Line, best_of, forget, within

from gardenplot.filling import now
from gardenplot.filling.now import GapNow, fill_now
from gardenplot.plan import Bed, Crop, Plan, Planting, Wish
from gardenplot.units import CM, Length, M, Units, length_of

DAY = date(2027, 5, 1)
GOALS = {50: 0.008, 200: 0.020}
"""Seconds that filling one gap may take, by the number of wishes."""
QUICK = {5: 1.0}
SEEDS = range(1, 5)
_UNITS = 30 * M // CM
"""Lengths that the gap is counted in: a bed of 30 m in centimetres."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the table; 1 if a filling is not proven where it should be."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--quick", action="store_true", help="few wishes; goals are not judged")
    quick = parser.parse_args(arguments).quick
    for name, *cells in (
        ("", "time", "floor", "ratio", "goal", ""),
        *_rows(QUICK if quick else GOALS, judged=not quick),
    ):
        print(f"{name:<60}" + "".join(f"{cell:>13}" for cell in cells), flush=True)
    proven = [_filled(plan_of(count)).proven for count in (QUICK if quick else GOALS)]
    print("every gap proven the best" if all(proven) else "A GAP IS NOT PROVEN")
    return 0 if all(proven) else 1


def _rows(goals: dict[int, float], *, judged: bool) -> Iterator[tuple[str, ...]]:
    for line in gaps(goals, turns=15 if judged else 1):
        verdict = ("met" if line.met else "MISSED") if judged else ""
        yield line.name, line.time, line.floor, line.ratio, line.goal, verdict


def plan_of(count: int, *, later: bool = False, seed: int = 1) -> Plan:
    """A bed of 30 m and so many wishes of many sizes; perhaps with two blocks that come later."""
    random = Random(seed)
    crops = tuple(
        Crop(
            f"c{number}",
            f"Crop {number}",
            _cm(random.choice((8, 10, 15, 20, 25, 30))),
            (_cm(random.choice((20, 30))),),
        )
        for number in range(12)
    )
    wishes = []
    for number in range(count):
        least = random.randint(1, 30)
        crop, most = random.choice(crops).id, least + random.randint(0, 120)
        days, worth = random.choice((30, 60, 90)), random.choice((0.5, 1, 1.5, 2, 3))
        wishes.append(Wish(f"w{number}", crop, least, most, days, worth=worth))
    stand = tuple(
        Planting(f"p{at}", "b", "c0", _cm(at), length=_cm(200), in_ground=date(2027, 6, 20), out=date(2027, 9, 1))
        for at in ((800, 2000) if later else ())
    )
    return Plan(beds=(Bed("b", "Bed", _cm(3000), _cm(80)),), crops=crops, plantings=stand, wishes=tuple(wishes))


def _cm(length: int) -> Length:
    return length_of(length * CM, Units.METRIC)


def _filled(plan: Plan) -> GapNow:
    found = fill_now(plan, "b", M, DAY)
    assert found is not None
    return found


def gaps(goals: dict[int, float], turns: int) -> Iterator[Line]:
    """One gap with so many wishes: the next that the mouse meets, with later blocks too, and the first of a plan."""
    for count, goal in goals.items():
        floor = best_of(turns, partial(_floor, count), now=process_time)
        yield within(f"a gap, {count} wishes", _next(plan_of(count), turns), goal, floor)
        later = [_next(plan_of(count, later=True, seed=seed), turns) for seed in SEEDS]
        yield within(f"a gap, {count} wishes, two blocks later", later[0], goal, floor)
        yield within("the same, the longest of four seeds", max(later), goal, floor)
        first = best_of(min(turns, 3), partial(_filled, plan_of(count)), forget, process_time)
        yield within(f"the first gap of a plan, {count} wishes", first, 1.0)


def _next(plan: Plan, turns: int) -> float:
    """The time of a gap that was not filled before, in a bed whose wishes are known."""
    _filled(plan)
    return best_of(turns, partial(_filled, plan), now.best_for.cache_clear, process_time)


def _floor(count: int) -> None:
    best = np.zeros(_UNITS + 1, dtype=np.int64)
    for _wish in range(count):
        np.maximum(best, best, out=best)


if __name__ == "__main__":
    sys.exit(main())
