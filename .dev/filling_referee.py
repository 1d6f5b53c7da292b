"""Compare filling, its proof and its bound, and the programme of a gap, with a referee that tries everything.

    nice -n 19 .venv/bin/python .dev/filling_referee.py                20,000 each, and middle ones
    .venv/bin/python .dev/filling_referee.py --draws 40                to see that it runs
    .venv/bin/python .dev/filling_referee.py --only plans --first 5000 one kind, from one number on

Each number gives the same task, plan or gap again. The referee shares no code with the fillings: ground is cells, one
for each unit of length and day, a block is a whole number with the bits of its cells set, and every place of every
wish is tried. Middle tasks, which are too large for that, are for a second library where it is installed (ortools is
no dependency; put it into an environment of its own): its CP-SAT solver must find the same worth where both prove it.
"""

import argparse
import json
import sys
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from importlib import import_module
from itertools import product
from random import Random
from typing import Any

from gardenplot.filling import fill
from gardenplot.filling.bound import most_worth
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.gap import fill_gap
from gardenplot.filling.model import ALWAYS, Answer, Strip, Taken, Task, Way, wrongs
from gardenplot.filling.search import Search
from gardenplot.filling.season import solve
from gardenplot.filling.sizes import Sizes
from gardenplot.plan.file import plan_of_text

DRAWS = 20_000
TURNS, MORE_TURNS = 100, 5_000
STEPS = 10_000_000

Choice = tuple[int, int]
"""The cells of a block, and what it is worth."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Print what was compared; 1 if anything differs."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--draws", type=int, default=DRAWS)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--only", choices=sorted(KINDS))
    asked = parser.parse_args(arguments)
    wrong = 0
    for kind, compared in KINDS.items():
        if asked.only in (None, kind):
            draws = min(asked.draws, 200) if kind == "middle" else asked.draws
            found = list(_all_of(kind, compared, range(asked.first, asked.first + draws)))
            wrong += sum(map(bool, found))
            print(f"{kind}: {len(found)} compared, {sum(map(bool, found))} differ", flush=True)
    return int(wrong > 0)


def _all_of(kind: str, compared: Callable[[Random], str | None], numbers: range) -> Iterator[str]:
    """What differs at each number, nothing where nothing does; not told where there is nothing to compare with."""
    for number in numbers:
        if number % 1000 == 0 and number > numbers.start:
            print(f"{kind}: {number - numbers.start} compared so far", file=sys.stderr, flush=True)
        differs = compared(Random(f"{kind} {number}"))
        if differs is not None:
            if differs:
                print(f"{kind} {number}: {differs}", flush=True)
            yield differs


def most_of(choices: Sequence[Sequence[Choice]]) -> int:
    """The most worth of blocks that share no cell, at most one of each wish: every combination."""

    @cache
    def most(wish: int, used: int) -> int:
        if wish == len(choices):
            return 0
        best = most(wish + 1, used)
        for cells, worth in choices[wish]:
            if not cells & used:
                best = max(best, worth + most(wish + 1, used | cells))
        return best

    return most(0, 0)


def cells(days: int, longest: int, strip: int, units: range, when: range) -> int:
    """The bits of some units of a strip on some days."""
    return sum(1 << ((strip * days + day) * longest + unit) for day in when for unit in units)


# Tasks.

_DAYS, _LONGEST = 5, 8


def task_of(chance: Random) -> Task:
    """Up to three strips, two rectangles taken in each, five wishes, three ways, three sizes."""
    strips = []
    for _number in range(chance.choice((1, 1, 2, 2, 3))):
        length = chance.randint(1, _LONGEST)
        strips.append(Strip(length, tuple(sorted(_taken(chance, length) for _one in range(chance.randint(0, 2))))))
    if chance.random() < 0.4:
        strips = [strips[0]] * len(strips)
    wishes = [
        tuple(_way(chance, len(strips)) for _one in range(chance.choice((0, 1, 1, 2, 2, 3))))
        for _number in range(chance.randint(0, 5))
    ]
    return Task(tuple(strips), tuple(wishes))


def _taken(chance: Random, length: int) -> Taken:
    start, first = chance.randrange(length), chance.randrange(_DAYS)
    since = first if chance.random() < 0.3 else ALWAYS[0]
    return Taken(start, chance.randint(start + 1, length), first, chance.randint(first + 1, _DAYS), since)


def _way(chance: Random, strips: int) -> Way:
    first = chance.randrange(_DAYS)
    lengths = sorted(chance.sample(range(1, _LONGEST + 1), chance.randint(1, 3)))
    worths = sorted(chance.randint(0, 9) for _length in lengths)
    low, high = chance.choice((0, 0, 0, 1, 2)), chance.choice((2**62, 2**62, _LONGEST - 1, _LONGEST - 2))
    shortest = tuple(sorted(max(1, length - chance.randint(0, 1)) for length in lengths))
    return Way(
        chance.randrange(strips), first, chance.randint(first + 1, _DAYS), tuple(lengths), tuple(worths), low, high,
        shortest if chance.random() < 0.2 else (),
    )  # fmt: skip


def _choices(task: Task) -> Iterator[list[Choice]]:
    for ways in task.wishes:
        found = set[Choice]()
        for way in ways:
            strip = task.strips[way.strip]
            shut = 0
            for one in strip.taken:
                if way.first >= one.since:
                    shut |= cells(_DAYS, _LONGEST, way.strip, range(one.start, one.end), range(one.first, one.last))
            for length, worth in zip(way.lengths, way.worths, strict=True):
                for start in range(way.low, min(strip.length, way.high) - length + 1):
                    units, when = range(start, start + length), range(way.first, way.last)
                    mine = cells(_DAYS, _LONGEST, way.strip, units, when)
                    if not mine & shut:
                        found.add((mine, worth))
        yield sorted(found)


def compared_task(chance: Random) -> str | None:
    """Filling and proof, and the exact method, the search and the bound by themselves."""
    task = task_of(chance)
    best = most_of(tuple(_choices(task)))
    answer, bound = solve(task, TURNS, _go_on)
    if answer.worth < bound:
        answer, bound = solve(task, MORE_TURNS, _go_on)
    alone = best_of_all(task, Answer((), 0), STEPS)
    search = Search(task)
    search.run(TURNS // 2, best, lambda _better: True)
    least = most_worth(task, chance.choice((0, 50)))
    faults = [fault for each in (answer, search.best, alone or answer) for fault in wrongs(task, each)]
    is_equal = (answer.worth, bound, alone and alone.worth) == (best, best, best)
    if not is_equal or not search.best.worth <= best <= least or faults:
        found = f"search {search.best.worth}, bound alone {least}"
        told = f"filled {answer.worth} of {bound}, exact {alone and alone.worth}, {found}"
        return f"best {best}, {told}, {faults}"
    return ""


def _go_on(_answer: Answer, _bound: int) -> bool:
    return True


# Plans.

_RANK = 20
"""Centimetres from rank to rank, of two rows."""
_STARTS = ("2027-04-01", "2027-04-15", "2027-05-01", "2027-05-15", "2027-06-01")
"""Days of the plans; something in the ground from one of them on is out on another."""


def compared_plan(chance: Random) -> str | None:
    """A small plan filled, beside every combination of places, counted in ranks of two plants."""
    gap = chance.choice((0, 0, 1))
    beds = [chance.randint(1, 5) for _number in range(chance.choice((1, 1, 2)))]
    stands = [one for bed, ranks in enumerate(beds) if chance.random() < 0.4 for one in [_stand(chance, bed, ranks)]]
    wishes = [_wish(chance, len(beds)) for _number in range(chance.randint(0, 4))]
    plan = plan_of_text(json.dumps(_written(beds, gap, stands, wishes))).plan
    filling = fill(plan, TURNS)
    if not filling.proven:
        filling = fill(plan, MORE_TURNS)
    best = most_of(tuple(_places(beds, gap, stands, wish) for wish in wishes))
    return "" if (filling.worth, filling.bound) == (best, best) else f"best {best}, {filling.worth}, {filling.bound}"


def _stand(chance: Random, bed: int, ranks: int) -> dict[str, int]:
    start, first = chance.randrange(ranks), chance.randrange(len(_STARTS) - 1)
    return {
        "bed": bed, "start": start, "end": chance.randint(start + 1, ranks),
        "first": first, "last": chance.randint(first + 1, len(_STARTS) - 1),
    }  # fmt: skip


def _wish(chance: Random, beds: int) -> dict[str, Any]:
    first = chance.randrange(len(_STARTS) - 1)
    least = chance.choice((0, 0, 1, 2, 3, 4))
    return {
        "first": first, "last": chance.randint(first + 1, len(_STARTS) - 1), "least": least,
        "most": chance.choice((None, *range(max(1, least), 9))), "worth": chance.randint(1, 4),
        "beds": [bed for bed in range(beds) if chance.random() < 0.7] if chance.random() < 0.5 else [],
    }  # fmt: skip


def _written(beds: list[int], gap: int, stands: list[dict[str, int]], wishes: list[dict[str, Any]]) -> dict[str, Any]:
    """The plan as a file has it."""
    plantings = [
        {
            "id": f"p{number}", "bed": f"b{one['bed']}", "crop": "c", "from": f"{one['start'] * _RANK} cm",
            "length": f"{(one['end'] - one['start']) * _RANK} cm", "in_ground": _STARTS[one["first"]],
            "out": _STARTS[one["last"]],
        } for number, one in enumerate(stands)
    ]  # fmt: skip
    return {
        "gardenplot": 1,
        "beds": [
            {"id": f"b{number}", "name": f"Bed {number}", "length": f"{ranks * _RANK} cm", "width": "80 cm"}
            | ({"gap": f"{gap * _RANK} cm"} if gap else {})
            for number, ranks in enumerate(beds)
        ],
        "crops": [{"id": "c", "name": "Leek", "in_row": f"{_RANK} cm", "row_spacing": "40 cm", "edge": "20 cm"}],
        "plantings": plantings,
        "wishes": [
            {
                "id": f"w{number}", "crop": "c", "worth": one["worth"], "least": one["least"],
                "earliest": _STARTS[one["first"]], "latest": _STARTS[one["last"]],
                "days": _days_between(one["first"], one["last"]),
            }
            | ({"most": one["most"]} if one["most"] is not None else {})
            | ({"beds": [f"b{bed}" for bed in one["beds"]]} if one["beds"] else {})
            for number, one in enumerate(wishes)
        ],
    }  # fmt: skip


def _days_between(first: int, last: int) -> int:
    days = (0, 14, 30, 44, 61)
    return days[last] - days[first]


def _places(beds: list[int], gap: int, stands: list[dict[str, int]], wish: dict[str, Any]) -> list[Choice]:
    """Where a wish could stand: whole ranks from any rank on, with the gap after it if a block or the foot does."""
    longest, days = max(beds) + gap, len(_STARTS)
    found = set[Choice]()
    for bed, ranks in enumerate(beds):
        if wish["beds"] and bed not in wish["beds"]:
            continue
        shut = 0
        for one in stands:
            if one["bed"] == bed:
                units = range(one["start"], min(longest, one["end"] + gap))
                shut |= cells(days, longest, bed, units, range(one["first"], one["last"]))
        for start, end in product(range(ranks), range(1, ranks + 1)):
            plants = 2 * (end - start)
            if wish["most"] is not None:
                if plants >= wish["most"] + 2:
                    continue
                plants = min(plants, wish["most"])
            if end <= start or plants < max(1, wish["least"]):
                continue
            mine = cells(days, longest, bed, range(start, end + gap), range(wish["first"], wish["last"]))
            if not mine & shut:
                found.add((mine, plants * wish["worth"]))
    return sorted(found)


# Gaps.


def compared_gap(chance: Random) -> str | None:
    """The programme of one gap, half of them with rooms that grow at both ends; worth and then ground used."""
    length, count = chance.randint(1, 12), chance.randint(0, 5)
    wishes = []
    for _number in range(count):
        lengths = sorted(chance.sample(range(1, 13), chance.randint(1, 3)))
        wishes.append(Sizes(tuple(lengths), tuple(sorted(chance.randint(0, 9) for _length in lengths))))
    rooms = [(0, length)] * count
    if chance.random() < 0.5:
        lows = sorted(chance.randint(0, length // 2) for _wish in wishes)
        highs = sorted(chance.randint(length // 2, length) for _wish in wishes)
        rooms = list(zip(lows, highs, strict=True))
    choices = []
    for wish, (low, high) in zip(wishes, rooms, strict=True):
        places = [
            (cells(1, 12, 0, range(start, start + size), range(1)), 100 * worth + size)
            for size, worth in zip(wish.lengths, wish.worths, strict=True)
            for start in range(low, high - size + 1)
        ]
        choices.append(places)
    found = fill_gap(length, wishes, rooms)
    used = sum(wish.lengths[size] for wish, size in zip(wishes, found.sizes, strict=True) if size is not None)
    best = most_of(choices)
    return "" if found.proven and 100 * found.worth + used == best else f"best {best}, {100 * found.worth + used}"


# Middle tasks, for a second library.


def compared_middle(chance: Random) -> str | None:
    """Ten to sixteen wishes in one to three beds: the same worth where both prove theirs, else no bound is beaten."""
    try:
        solver = import_module("ortools.sat.python.cp_model")
    except ImportError:
        return None
    beds, length = chance.randint(1, 3), 40
    wishes = []
    for _number in range(chance.randint(10, 16)):
        first, size = chance.randrange(12), chance.randint(4, 22)
        last, worth = first + chance.randint(2, 9), size * chance.randint(3, 9)
        wishes.append(tuple(Way(bed, first, last, (size,), (worth,)) for bed in range(beds)))
    task = Task((Strip(length),) * beds, tuple(wishes))
    answer, bound = solve(task, MORE_TURNS, _go_on)
    other, above = _by_library(solver, task, length)
    is_wrong = answer.worth > above or other > bound or (answer.worth == bound and other == above and bound != above)
    faults = wrongs(task, answer)
    return f"filled {answer.worth} of {bound}, CP-SAT {other} of {above} {faults}" if is_wrong or faults else ""


def _by_library(solver: Any, task: Task, length: int) -> tuple[int, int]:
    """Rectangles that do not overlap, beds one after another on one axis; the best found and what none is above."""
    model = solver.CpModel()
    along, days, worth = [], [], []
    for ways in task.wishes:
        way, size = ways[0], ways[0].lengths[0]
        starts = [[bed * length, (bed + 1) * length - size] for bed in range(len(task.strips))]
        stands = model.NewBoolVar("")
        start = model.NewIntVarFromDomain(solver.Domain.FromIntervals(starts), "")
        along.append(model.NewOptionalIntervalVar(start, size, start + size, stands, ""))
        days.append(model.NewOptionalIntervalVar(way.first, way.last - way.first, way.last, stands, ""))
        worth.append(way.worths[0] * stands)
    model.AddNoOverlap2D(days, along)
    model.Maximize(sum(worth))
    found = solver.CpSolver()
    found.parameters.num_workers, found.parameters.max_deterministic_time = 1, 5.0
    found.Solve(model)
    return round(found.ObjectiveValue()), round(found.BestObjectiveBound())


KINDS: dict[str, Callable[[Random], str | None]] = {
    "tasks": compared_task,
    "plans": compared_plan,
    "gaps": compared_gap,
    "middle": compared_middle,
}

if __name__ == "__main__":
    sys.exit(main())
