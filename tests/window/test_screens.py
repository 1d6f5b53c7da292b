"""Screens of one to three times the usual fineness: lines are seen and sharp, the hand hits the same places."""

import json
import os
import subprocess
import sys
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
FACTORS = pytest.mark.parametrize("factor", ["1", "1.5", "2", "3"])


@cache
def on_screen(factor: str) -> dict[str, Any]:
    """What a window on such a screen shows and does."""
    with TemporaryDirectory() as folder:
        run = subprocess.run(
            [sys.executable, "-m", "tests.as_program", "tests.window.on_screen", folder],
            cwd=ROOT,
            env=os.environ | {"QT_SCALE_FACTOR": factor, "QT_QPA_PLATFORM": "offscreen"},
            capture_output=True,
            encoding="utf-8",
            timeout=120,
            check=False,
        )
    assert run.returncode == 0, run.stderr
    found: dict[str, Any] = json.loads(run.stdout.splitlines()[-1])
    return found


@FACTORS
def test_the_screen_is_as_fine_as_was_asked_for(factor: str) -> None:
    assert on_screen(factor)["ratio"] == float(factor)


@FACTORS
def test_ticks_and_edges_are_seen(factor: str) -> None:
    assert on_screen(factor)["ticks"] >= 3
    assert on_screen(factor)["rows"] >= 2


@FACTORS
def test_lines_are_sharp(factor: str) -> None:
    """A picture that was painted coarser and drawn out has no step from paper to ink within a pixel or two."""
    assert on_screen(factor)["sharpest"] >= 0.8


@FACTORS
def test_the_hand_hits_the_same_readings(factor: str) -> None:
    assert on_screen(factor)["drag"] == 130
    assert on_screen(factor)["resized"] == on_screen("1")["resized"] < 1000
