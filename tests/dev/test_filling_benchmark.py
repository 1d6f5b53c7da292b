"""The benchmark of filling runs and prints every row; how fast anything is, is not asked here."""

import os
import re
import subprocess
import sys

from tests.rules.source_tree import ROOT

ROWS = [
    "a gap, 5 wishes",
    "a gap, 5 wishes, two blocks later",
    "the same, the longest of four seeds",
    "the first gap of a plan, 5 wishes",
]


def test_every_row_has_its_figure_and_its_goal() -> None:
    command = [sys.executable, str(ROOT / ".dev" / "filling_benchmark.py"), "--quick"]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert (run.returncode, run.stderr) == (0, "")
    *printed, verdict = run.stdout.splitlines()[1:]
    assert [re.split(r" {2,}", line)[0] for line in printed] == ROWS
    assert all(re.search(r"  [\d,.]+ (ms|µs)  .*<= [\d,.]+", line) for line in printed)
    assert verdict == "every gap proven the best"
