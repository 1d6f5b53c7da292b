"""Sessions that edit and save and are killed at a random moment; run as a program it prints what that came to.

A session runs in a child of this program, so that its modules are loaded once. It tells through a pipe what it has
done, and what it told before it was killed is what a person would have seen.
"""

import json
import os
import random
import signal
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from attrs import frozen

from gardenplot.errors import FileError
from gardenplot.files import sample
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import mark_of, read_plan, text_of, write_plan
from gardenplot.window.document import Document
from gardenplot.window.journal import Journal
from gardenplot.window.left_work import left_work
from gardenplot.window.own_folder import VARIABLE, versions

PLAN = read_plan(sample("kestrel-howe.gardenplot")).plan
LONGEST = 2.5
"""Seconds that a session lives at most."""


@frozen
class Deed:
    """What a session told: an "edit" or a "save" of the plan of that number, and when it was done."""

    kind: str
    number: int
    at: float


def numbered(number: int) -> Plan:
    """The plan of a number, no two of a size."""
    return change_place(PLAN, name=f"{'x' * (number % 977)} {number}")


def number_of(plan: Plan) -> int:
    """The number of a plan."""
    return int(plan.place.name.split()[-1])


def session(seed: int, path: Path, tell: int) -> None:
    """Edit and save without an end."""
    dice, document = random.Random(seed), Document()
    document.open(path)
    journal = Journal(document)
    number = number_of(document.plan)
    while True:
        number += 1
        document.change("Edit", numbered(number))
        os.write(tell, f"edit {number} {time.monotonic()}\n".encode())
        if dice.random() < 0.3:
            document.save(path)
            os.write(tell, f"save {number} {time.monotonic()}\n".encode())
        if dice.random() < 0.05:
            journal.wait(1)
        time.sleep(dice.choice((0, 0.001, 0.01, 0.05, 0.3)))


def killed(seed: int, path: Path) -> tuple[list[Deed], float]:
    """What a session told before it was killed, and when that was."""
    ours, theirs = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(ours)
        try:
            session(seed, path, theirs)
        finally:
            os._exit(1)
    os.close(theirs)
    time.sleep(random.Random(-seed).uniform(0.01, LONGEST))
    os.kill(child, signal.SIGKILL)
    at = time.monotonic()
    _pid, status = os.waitpid(child, 0)
    assert os.WTERMSIG(status) == signal.SIGKILL, "the session ended by itself"
    with os.fdopen(ours, "rb") as told:
        lines = told.read().decode().splitlines()
    return [Deed(kind, int(number), float(when)) for kind, number, when in map(str.split, lines)], at


def attack(seed: int, folder: Path) -> dict[str, float]:
    """Kill a session once and look at what is there: how many seconds of work were lost, and what there was.

    Raises AssertionError where a plan is lost or cannot be read, or more than a second is.
    """
    os.environ[VARIABLE] = str(folder / "own")
    path = folder / "plans" / "spring.gardenplot"
    path.parent.mkdir()
    write_plan(path, numbered(0))
    deeds, at = killed(seed, path)
    in_file = number_of(read_plan(path).plan)
    assert in_file >= max((deed.number for deed in deeds if deed.kind == "save"), default=0), "what was saved is lost"
    for version in versions().of(path):
        version.read()
    left, reached = left_work(), in_file
    assert len(left) <= 1
    for one in left:
        assert one.unsaved is not None, one.says
        assert one.unsaved.path == path
        reached = max(reached, number_of(one.unsaved.plan))
        if number_of(one.unsaved.plan) > in_file:
            assert one.unsaved.seen in set(_marks(path)), "it is known on what it was built"
        one.remove()
    lost = max((at - deed.at for deed in deeds if deed.kind == "edit" and deed.number > reached), default=0.0)
    assert lost <= 1.0, f"{lost:.2f} s of work are lost"
    # What is left of a write that was cut off lies beside and is hidden, and is no plan that anybody looks for.
    assert [one.name for one in path.parent.iterdir() if not one.name.startswith(".")] == [path.name]
    return {"lost": lost, "edits": len(deeds), "offered": len(left), "beside": len(list(path.parent.glob(".*")))}


def _marks(path: Path) -> Iterator[str]:
    """The marks of what the file holds and held."""
    for one in (path, *(version.path for version in versions().of(path))):
        with suppress(FileError):
            yield mark_of(text_of(read_plan(one).plan).encode())


def attacks(first: int, count: int) -> dict[str, float]:
    """Kill so many sessions, one after another."""
    most, offered, beside, edits = 0.0, 0.0, 0.0, 0.0
    for seed in range(first, first + count):
        with tempfile.TemporaryDirectory() as folder:
            try:
                came = attack(seed, Path(folder))
            except AssertionError as error:
                error.add_note(f"seed {seed}")
                raise
        most = max(most, came["lost"])
        offered, beside, edits = offered + came["offered"], beside + came["beside"], edits + came["edits"]
    return {"killed": count, "edits and saves": edits, "most lost, s": most, "offered": offered, "cut off": beside}


if __name__ == "__main__":
    print(json.dumps(attacks(int(sys.argv[1]), int(sys.argv[2]))))
