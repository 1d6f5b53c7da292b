"""The benchmark of paper runs and prints every row; how fast anything is, is not asked here."""

import os
import re
import subprocess
import sys

from tests.rules.source_tree import ROOT

ROWS = [
    "marks of 2,000 plants on 2 pages",
    "the book of 2 bed sheets",
    "the same with the drawing over pages",
]


def test_every_row_has_its_figure_and_its_goal() -> None:
    command = [sys.executable, str(ROOT / ".dev" / "paper_benchmark.py"), "--quick"]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert (run.returncode, run.stderr) == (0, "")
    *printed, size = run.stdout.splitlines()[1:]
    assert [re.split(r" {2,}", line)[0] for line in printed] == ROWS
    assert all(re.search(r"  [\d,.]+ (ms|µs)  .*<= [\d,.]+", line) for line in printed)
    assert re.fullmatch(r"the book of bed sheets: \d+ kB, at most 500 kB", size)
