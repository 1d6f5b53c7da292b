"""The benchmark runs and prints every row; how fast anything is, is not asked here."""

import os
import re
import subprocess
import sys

import pytest

from tests.rules.source_tree import ROOT

ROWS = [
    "one rectangle, straight / bare array",
    "one rectangle, staggered / bare array",
    "4 rectangles, ten sizes / bare arrays",
    "4 rectangles, no two alike / bare arrays",
    "4 L with 2 obstacles",
    "L / contains_xy",
    "L / point by point",
    "circle of 129 corners / contains_xy",
    "circle of 129 corners / point by point",
    "L with 6 obstacles / contains_xy",
    "L with 6 obstacles / point by point",
    "time for each",
    "memory for each",
    "a row of 6 corners",
    "a row of 129 corners",
    "a row of 500 corners",
    "whether a circle of 500 corners is simple",
    "whether a comb of 500 corners is simple",
]


@pytest.fixture(scope="module")
def printed() -> list[str]:
    command = [sys.executable, str(ROOT / ".dev" / "benchmark.py"), "--quick"]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert (run.returncode, run.stderr) == (0, "")
    return run.stdout.splitlines()


@pytest.mark.parametrize("row", ROWS)
def test_every_row_has_its_figure_and_its_goal(printed: list[str], row: str) -> None:
    found = [line for line in printed if re.search(rf"(^|, |\d ){re.escape(row)}  ", line)]
    assert found
    for line in found:
        assert re.search(r"  [\d,.]+ (ms|µs|ns|B)  .*(<= |not growing)", line)
        assert not line.endswith(("met", "MISSED"))


def test_it_names_the_machine_and_asks_shapely(printed: list[str]) -> None:
    assert all(f"{name} " in printed[0] for name in ("Python", "numpy", "shapely"))
    assert printed[-1] == "every place as shapely says"
