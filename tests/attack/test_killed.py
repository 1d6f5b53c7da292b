"""Sessions killed at a random moment of editing and saving lose no plan, and no more than a second of work."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.attack import turns

ROOT = Path(__file__).resolve().parents[2]
needs_fork = pytest.mark.skipif(not hasattr(os, "fork"), reason="the attack forks its victims")


def run(module: str, *words: object) -> dict[str, float]:
    """Run an attack as a program of its own and give what it prints."""
    command = [sys.executable, "-m", f"tests.attack.{module}", *map(str, words)]
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)}
    done = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert done.returncode == 0, done.stderr[-3000:]
    found: dict[str, float] = json.loads(done.stdout)
    return found


@needs_fork
def test_a_killed_session_loses_no_plan_and_at_most_a_second() -> None:
    count = turns(4, 1000)
    came = run("killing", 0, count)
    assert came["killed"] == count
    assert came["most lost, s"] <= 1.0
    assert came["edits and saves"] > count
    assert came["offered"] > 0


def test_a_strange_file_is_a_plan_or_refused_at_its_place() -> None:
    count = turns(400, 100_000)
    came = run("mutating", 0, count)
    assert came["plan"] + came["refused"] == count
    assert came["plan"] > count / 100
    assert came["slowest"] <= 1.0
    assert came["MB"] <= 500
