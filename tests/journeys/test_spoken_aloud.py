"""A screen reader reads the drawing over a real accessibility bus: beds, plantings, and where one is."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.journeys.listener import NEEDED, launcher

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.screen
@pytest.mark.skipif(
    not all(map(shutil.which, NEEDED)) or launcher() is None, reason="needs a display and an accessibility bus"
)
def test_beds_and_plantings_are_heard_and_the_chosen_one_has_the_focus(tmp_path: Path) -> None:
    run = subprocess.run(
        ["dbus-run-session", "--", sys.executable, "-m", "tests.journeys.listener", str(tmp_path)],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    assert run.returncode == 0, run.stderr
    # The registry of the bus may say a word of its own.
    heard = [line for line in run.stdout.splitlines() if line.count("|") == 2]
    assert heard[0].startswith("tree|Drawing of the beds|")
    assert [line for line in heard if line.startswith("tree item|") and ", bed of " in line] == [
        "tree item|Tunnel, east, bed of 15.00 m × 75 cm, 1 planting, 4.40 m left on 9 Apr|",
        "tree item|Field, upper, bed of 20.00 m × 1.20 m, 2 plantings, 85 cm left on 9 Apr|",
    ]
    assert "tree item|A Pak choi, 3 × 40 = 120, 0.30 to 10.30 m|" in heard
    chosen = [line for line in heard if line.endswith("|selected focused")]
    assert len(chosen) == 1
    assert chosen[0].startswith("tree item|B Leek, ")
