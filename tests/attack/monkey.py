"""A monkey at the window: random real events by a seed, through all of the window, its menus and its dialogs.

    .venv/bin/python -m tests.attack.monkey 0 10 5000      ten seeds from 0 on, 5,000 events each

prints what that came to. What breaks is told with its seed and made short: events are left out as long as the same
goes wrong, and the numbers of those that are left are told. Each monkey is a process of its own (`monkey_run.py`).
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from attrs import frozen

ROOT = Path(__file__).resolve().parents[2]
_TRIES = 60
"""So often a failing run is made shorter at most."""


@frozen
class Came:
    """What a run came to: what it counted, what it broke, and the last event that it began."""

    counted: dict[str, float]
    broken: str
    last: int

    @property
    def kind(self) -> str:
        """What it broke in one line, without the numbers that may differ from run to run."""
        lines = [line for line in self.broken.splitlines() if line.strip()]
        said = next((line for line in lines if line.startswith("Qt says")), lines[-1] if lines else "")
        return "".join(sign for sign in said if not sign.isdigit())[:100]


def run(seed: int, numbers: int | list[int]) -> Came:
    """Let a monkey do so many events, or those of these numbers."""
    with _folder() as folder:
        progress = Path(folder) / "progress"
        own = dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "GARDENPLOT_FOLDER"), folder)
        # Nothing else than its seed decides what a monkey does, as far as that can be.
        same = {"QT_QPA_PLATFORM": "offscreen", "PYTHONHASHSEED": "0", "QT_HASH_SEED": "0"}
        env = {**os.environ, **own, **same, "PYTHONPATH": str(ROOT)}
        words = (str(seed), json.dumps(numbers), folder, str(progress))
        command = [sys.executable, "-m", "tests.as_program", "tests.attack.monkey_run", *words]
        done = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=folder, env=env)
        last = int(progress.read_text() or 0) if progress.exists() else 0
    try:
        counted = json.loads(done.stdout)
    except ValueError:
        return Came({}, f"{done.stderr[-6000:]}\nthe process ended with {done.returncode}", last)
    broken = counted.pop("broken")
    return Came(counted, broken[0] if broken else done.stderr, last)


@contextmanager
def _folder() -> Iterator[str]:
    """A folder whose name is as wide each time, since the window shows it and the monkey hits what it meets."""
    for number in range(100, 1000):
        folder = Path(tempfile.gettempdir()) / f"gardenplot-monkey-{number}"
        with suppress(FileExistsError):
            folder.mkdir(mode=0o700)
            break
    try:
        yield str(folder)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def shortened(seed: int, came: Came, numbers: list[int]) -> list[int]:
    """Numbers of few events that break the same: what does not matter is left out, half by half."""
    kept = [one for one in numbers if one <= came.last]
    size, tries = len(kept) // 2, 0
    while size and tries < _TRIES:
        at = 0
        while at < len(kept) and tries < _TRIES:
            fewer = kept[:at] + kept[at + size :]
            tries += 1
            if fewer and run(seed, fewer).kind == came.kind:
                kept = fewer
            else:
                at += size
        size //= 2
    return kept


def attack(first: int, seeds: int, events: int) -> dict[str, float]:
    """So many monkeys one after another; raises AssertionError with the seed and the few events that break it."""
    total: Counter[str] = Counter()
    most = 0.0
    for seed in range(first, first + seeds):
        came = run(seed, events)
        if came.broken:
            few = shortened(seed, came, list(range(events)))
            told = (
                f"seed {seed}, event {came.last}; few events that break it: python -m tests.attack.monkey_run {seed}"
            )
            raise AssertionError(f"{came.broken}\n{told} '{json.dumps(few)}' FOLDER PROGRESS")
        most = max(most, came.counted.pop("MB"))
        del came.counted["course"]
        total.update(came.counted)
    return {"events": seeds * events, "MB": most, **total}


if __name__ == "__main__":
    print(json.dumps(attack(*map(int, sys.argv[1:4]))))
