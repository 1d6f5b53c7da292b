"""Eight hours of edits in quick motion: random ones through the window's one door, and what stays of them in memory.

    .venv/bin/python -m tests.attack.enduring 50000      so many edits, undoings and looks at the window

prints how many objects Python and Qt hold at each tenth of the way, and the memory of the process. Each time the plan
is begun anew before, so that no step of undo is left, and what is remembered by value up to some number is forgotten:
whatever there is more of than before then has leaked.
"""

import gc
import json
import os
import random
import resource
import sys
import tempfile
import tracemalloc
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QSettings
from PySide6.QtWidgets import QApplication

from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.gestures.copies import try_next_gap
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_bed, change_place, change_planting, copy_bed, remove_bed, remove_planting
from gardenplot.plan.file import read_plan
from gardenplot.units import CM, Units, length_of
from gardenplot.window.journal import Journal
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from tests.today import TODAY

PARTS = 10


def edit(dice: random.Random, plan: Plan) -> Plan:
    """Another plan; raises PlanError where there is none."""
    one = dice.choice(plan.plantings) if plan.plantings else None
    length = length_of(dice.randint(5, 1500) * CM, Units.METRIC)
    if one is None or dice.random() < 0.1:
        return change_place(plan, name=f"Place {dice.random()}")
    ways: tuple[Callable[[], Plan], ...] = (
        lambda: change_planting(plan, one.id, start=length),
        lambda: change_planting(plan, one.id, note=str(dice.random())),
        lambda: change_planting(plan, one.id, plants=dice.randint(1, 300), length=None, order=None),
        lambda: change_bed(plan, one.bed, gap=length_of(dice.randint(0, 40) * CM, Units.METRIC)),
        lambda: try_next_gap(plan, [one.id]).plan if len(plan.plantings) < 60 else remove_planting(plan, one.id),
        lambda: remove_planting(plan, one.id) if len(plan.plantings) > 30 else copy_bed(plan, one.bed),
        lambda: remove_bed(plan, one.bed) if len(plan.beds) > 10 else copy_bed(plan, one.bed),
    )
    return dice.choice(ways)()


def turn(window: MainWindow, dice: random.Random) -> int:
    """One edit, or a step back or forth, and now and then a look at something else; how many edits it was."""
    document = window.document
    before = document.plan
    try:
        match dice.randrange(10):
            case 0:
                document.stack.undo()
            case 1:
                document.stack.redo()
            case _:
                document.change("Edit", edit(dice, document.plan))
    except PlanError:
        return 0
    plan = document.plan
    if plan.plantings and dice.random() < 0.2:
        chosen = dice.choice(plan.plantings)
        window.sight.select(chosen.bed, dice.choice((None, chosen.id)))
    if dice.random() < 0.02:
        window.ledger.setCurrentIndex(dice.randrange(window.ledger.count()))
    if dice.random() < 0.01:
        window.views.show_ground(not window.views.shows_ground)
    if dice.random() < 0.3:
        QApplication.processEvents()
    return int(plan is not before)


def held(window: MainWindow, begun: Plan) -> dict[str, int]:
    """What is held once the plan is begun anew, garbage is gone and what is remembered is forgotten."""
    megabytes = _resident()
    window.document.start(begun)
    window.views.show_ground(False)
    window.ledger.setCurrentIndex(0)
    for _turn in range(3):
        QApplication.processEvents()
        _forget()
        gc.unfreeze()
        gc.collect()
    return {"Python objects": len(gc.get_objects()), "Qt objects": _qt_objects(window), "MB": round(megabytes)}


def _forget() -> None:
    """Forget what is remembered by value and with a limit; where there is none, it stays and is counted."""
    for name, module in list(sys.modules.items()):
        if name.startswith("gardenplot"):
            for each in list(vars(module).values()):
                if hasattr(each, "cache_parameters") and each.cache_parameters()["maxsize"] is not None:
                    each.cache_clear()


def _resident() -> float:
    """Memory of the process in MB, the most so far where the system does not tell how much it is now."""
    status = Path("/proc/self/statm")
    if status.exists():
        return int(status.read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE") / 2**20
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _qt_objects(window: MainWindow) -> int:
    return len(window.findChildren(QObject))


def growth(first: tracemalloc.Snapshot, last: tracemalloc.Snapshot) -> dict[str, int]:
    """The lines of the program that hold the most kB more than they did."""
    more = last.compare_to(first, "lineno")[:8]
    return {f"{Path(str(one.traceback[0].filename)).name}:{one.traceback[0].lineno}": one.size_diff // 1024
            for one in more}  # fmt: skip


def attack(edits: int, folder: Path, *, traced: bool) -> dict[str, object]:
    """Make so many edits; what is held at each part of the way."""
    made_app()
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(folder))
    window, dice = MainWindow(), random.Random(edits)
    window.document.today = lambda: TODAY
    window.resize(1440, 900)
    window.show()
    begun = read_plan(sample("kestrel-howe.gardenplot")).plan
    window.document.start(begun)
    journal = Journal(window.document)
    found, snapshots, counted = [], [], Counter[str]()
    for part in range(PARTS + 1):
        # What is remembered by value fills up in the first part.
        if part == 1 and traced:
            tracemalloc.start()
        made = 0
        while made < edits // PARTS:
            made += turn(window, dice)
        counted["edits"] += made
        counted["steps kept"] = max(counted["steps kept"], window.document.stack.count())
        found.append(held(window, begun))
        if tracemalloc.is_tracing() and part in (2, PARTS):
            snapshots.append(tracemalloc.take_snapshot())
    journal.end()
    grown = growth(*snapshots) if len(snapshots) == 2 else {}
    tracemalloc.stop()
    window.close()
    window.deleteLater()
    return {**counted, "held": found, "grown": grown}


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as made:
        os.environ["GARDENPLOT_FOLDER"] = made
        print(json.dumps(attack(int(sys.argv[1]), Path(made), traced=len(sys.argv) > 2), indent=1))
