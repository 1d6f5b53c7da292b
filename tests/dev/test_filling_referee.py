"""The referee of fillings and the benchmark of seasons run; how good or fast anything is, is not asked here."""

import os
import subprocess
import sys

from tests.rules.source_tree import ROOT


def printed(script: str, *arguments: str) -> list[str]:
    """The lines that a script prints."""
    command = [sys.executable, str(ROOT / ".dev" / script), *arguments]
    env = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env)
    assert (run.returncode, run.stderr) == (0, "")
    return run.stdout.splitlines()


def test_the_referee_agrees_on_a_few_of_each_kind() -> None:
    compared = {line.partition(":")[0]: line for line in printed("filling_referee.py", "--draws", "25")}
    for kind in ("tasks", "plans", "gaps"):
        assert compared[kind] == f"{kind}: 25 compared, 0 differ"


def test_the_benchmark_of_seasons_has_a_row_for_each_goal() -> None:
    lines = printed("season_benchmark.py", "--quick")
    assert [line.partition(",")[0] for line in lines[:5]] == ["50 wishes"] * 2 + ["200 wishes"] * 3
    assert all("bound's" in line for line in lines[:5])
    assert [line.split("  ")[0] for line in lines[5:]] == [
        "50 wishes, 8 beds, all fit", "between two questions to go on", "a filling in a process, stopped",
        "memory of all this",
    ]  # fmt: skip
