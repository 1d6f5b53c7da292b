"""Sessions killed at a random moment of editing and saving lose no plan, and no more than a second of work."""

import json
import os
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from gardenplot.plan.file import read_plan, write_plan
from tests.attack import IS_LONG, turns
from tests.plans import metric_plan

ROOT = Path(__file__).resolve().parents[2]
needs_fork = pytest.mark.skipif(not hasattr(os, "fork"), reason="the attack forks its victims")


def run(module: str, *words: object) -> dict[str, Any]:
    """Run an attack as a program of its own and give what it prints."""
    command = [sys.executable, "-m", "tests.as_program", f"tests.attack.{module}", *map(str, words)]
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)}
    # Nobody waits for ever for an attack that hangs on a dialog; the long form may take its hours.
    most = None if IS_LONG else 900
    done = subprocess.run(
        command, capture_output=True, encoding="utf-8", check=False, cwd=ROOT, env=env, timeout=most
    )
    assert done.returncode == 0, done.stderr[-3000:]
    found: dict[str, Any] = json.loads(done.stdout)
    return found


@needs_fork
def test_a_killed_session_loses_no_plan_and_at_most_a_second() -> None:
    count = turns(4, 1000)
    came = run("killing", 0, count)
    assert came["killed"] == count
    assert came["most lost, s"] <= 1.0
    assert came["edits and saves"] > count
    assert came["offered"] > 0


EDITS_AND_DIES = """
import os, signal, sys
from PySide6.QtCore import QTimer
from gardenplot.plan.edits import change_place
from gardenplot.window import start
from gardenplot.window.main import MainWindow

def edit(window):
    window.document.change("Name", change_place(window.document.plan, name="Never saved"))
    QTimer.singleShot(1000, lambda: os.kill(os.getpid(), signal.SIGKILL))

made = MainWindow.__init__
def make(window):
    made(window)
    QTimer.singleShot(0, lambda: edit(window))
MainWindow.__init__ = make
start.run(sys.argv[1])
"""
IS_OFFERED = """
import sys
from PySide6.QtCore import QTimer
from gardenplot.window import start
from gardenplot.window.main import MainWindow
from gardenplot.window.plans_dialog import PlansDialog

def go_on(dialog):
    while len(dialog.plans) < dialog.table.topLevelItemCount():
        dialog._read_next()
    dialog.buttons[0].click()
    return dialog.result()
PlansDialog.exec = go_on

def look(window):
    document = window.document
    print(document.plan.place.name, document.path, document.is_saved, sep="|", flush=True)
    document.save(document.path)
    window.close()

made = MainWindow.__init__
def make(window):
    made(window)
    QTimer.singleShot(500, lambda: look(window))
MainWindow.__init__ = make
sys.exit(start.run(sys.argv[1]))
"""


def program(source: str, path: Path, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a program of a few lines on a plan, with folders of its own."""
    own = {name: str(folder) for name in ("XDG_CONFIG_HOME", "GARDENPLOT_FOLDER", "HOME")}
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT), **own}
    command = [sys.executable, "-c", source, str(path)]
    return subprocess.run(command, capture_output=True, encoding="utf-8", check=False, env=env, timeout=120)


@needs_fork
def test_the_program_itself_offers_what_was_on_the_screen_when_it_was_killed(tmp_path: Path) -> None:
    path, own = tmp_path / "sill.gardenplot", tmp_path / "own"
    write_plan(path, metric_plan())
    killed = program(EDITS_AND_DIES, path, own)
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    assert read_plan(path).plan == metric_plan()
    again = program(IS_OFFERED, path, own)
    assert again.stdout.splitlines() == [f"Never saved|{path}|False"], again.stderr
    assert again.returncode == 0
    assert read_plan(path).plan.place.name == "Never saved"
    assert list((own / "journal").iterdir()) == [], "a finished session leaves nothing"


def test_a_strange_file_is_a_plan_or_refused_at_its_place() -> None:
    count = turns(400, 100_000)
    came = run("mutating", 0, count)
    assert came["plan"] + came["refused"] == count
    assert came["plan"] > count / 100
    assert came["slowest"] <= 1.0
    assert came["MB"] <= 500
