"""How long the program takes from its start to its first painted window, beside a bare window of the same build."""

import os
import subprocess
import sys
from collections.abc import Iterator
from tempfile import TemporaryDirectory

from measuring import Line, against

BARE = """
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDockWidget, QListWidget, QMainWindow, QWidget
app = QApplication([])
window = QMainWindow()
for number in range(7):
    menu = window.menuBar().addMenu(f"Menu {number}")
    for entry in range(5):
        menu.addAction(f"Entry {entry}")
for area in (Qt.DockWidgetArea.LeftDockWidgetArea, Qt.DockWidgetArea.RightDockWidgetArea):
    dock = QDockWidget("Panel", window)
    dock.setWidget(QListWidget())
    window.addDockWidget(area, dock)
window.setCentralWidget(QWidget())
"""
OURS = """
from gardenplot.__main__ import load_window
from gardenplot.files import sample
start = load_window()
app = start.made_app()
window = start.MainWindow()
window.filing.open(sample(start.EXAMPLE), example=True)
"""
_BEGIN = "from time import perf_counter\nbegin = perf_counter()\n"
_END = """
window.resize(1440, 900)
window.show()
for turn in range(3):
    app.processEvents()
print(perf_counter() - begin)
import sys
late = {"reportlab", "ezdxf", "scipy", "shapely", "pypdfium2"} & set(sys.modules)
print(" ".join(sorted(late)))
"""


def started(judged: bool) -> Iterator[Line]:
    """The start with the sample against the bare window, and what was loaded by then that should not be."""
    bare, ours, late = float("inf"), float("inf"), ""
    with TemporaryDirectory() as compiled:
        for turn in range(6 if judged else 1):
            plain, (took, late) = _run(BARE, compiled)[0], _run(OURS, compiled)
            if turn or not judged:
                bare, ours = min(bare, plain), min(ours, took)
    yield against("start with the sample / a bare window", ours, bare, 2)
    yield Line("loaded by then of what is slow", late or "nothing", "", "", "nothing", not late)


def _run(program: str, compiled: str) -> tuple[float, str]:
    """Seconds of a start, and what slow libraries it loaded; modules are kept compiled, as on a grower's machine."""
    env = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": os.devnull}
    env |= {"PYTHONPYCACHEPREFIX": compiled, "PYTHONDONTWRITEBYTECODE": ""}
    command = [sys.executable, "-c", _BEGIN + program + _END]
    run = subprocess.run(command, capture_output=True, encoding="utf-8", check=True, env=env)
    took, late = run.stdout.splitlines()
    return float(took), late
