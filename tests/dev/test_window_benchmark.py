"""The window's benchmark runs and prints every row; how fast anything is, is not asked here."""

import os
import re
import subprocess
import sys

from tests.rules.source_tree import ROOT

ROWS = [
    "all 4 beds in sight, as they were",
    "the same, painted anew",
    "whole length, beds as strips, painted anew",
    "5 m in sight, painted anew",
    "panned by a step of 12 px",
    "a drag, from the mouse to painted",
    "of it, painting",
    "an edit, from the key to painted",
    "memory",
    "start with the sample / a bare window",
    "loaded by then of what is slow",
]


def test_every_row_has_its_figure_and_its_goal() -> None:
    command = [sys.executable, str(ROOT / ".dev" / "window_benchmark.py"), "--quick"]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert (run.returncode, run.stderr) == (0, "")
    printed = run.stdout.splitlines()[2:]
    assert [re.split(r" {2,}", line)[0] for line in printed] == ROWS
    for line in printed[:-1]:
        assert re.search(r"  [\d,.]+ (ms|µs|MB)  .*<= [\d.]+", line)
    assert re.search(r"  nothing  +nothing", printed[-1])
