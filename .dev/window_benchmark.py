"""Measure the window against a floor taken in the same run: one opaque pixmap of the window's size, shown.

    .venv/bin/python .dev/window_benchmark.py            200 beds with 100,000 plants, all rows with their goals
    .venv/bin/python .dev/window_benchmark.py --quick    four beds, to see that it runs; goals are not judged

1600 x 900 without a screen, drawn by software. Every time is the best of several turns.
"""

import argparse
import os
import resource
import sys
from collections.abc import Iterator, Sequence
from datetime import date

from attrs import evolve, frozen

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from benchmark import machine, written
from measuring import Line, against, best_of, within
from PySide6.QtCore import QEvent, QPointF, QSettings, Qt, QtMsgType, qInstallMessageHandler
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPixmap, QRegion
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from starting import started

from gardenplot.plan import Bed, Crop, Plan, Planting
from gardenplot.units import CM, Length, M, Units, length_of
from gardenplot.window.canvas_changes import changed_between
from gardenplot.window.main import MainWindow
from gardenplot.window.start import made_app
from gardenplot.window.strip_pictures import StripPictures


@frozen
class Sizes:
    """How many beds of 500 plants, and how often everything is done."""

    beds: int = 200
    turns: int = 25
    judged: bool = True


QUICK = Sizes(beds=4, turns=1, judged=False)


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the machine and the table."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else "")
    parser.add_argument("--quick", action="store_true", help="few beds; goals are not judged")
    sizes = QUICK if parser.parse_args(arguments).quick else Sizes()
    qInstallMessageHandler(_listen)
    QSettings.setPath(QSettings.Format.NativeFormat, QSettings.Scope.UserScope, os.devnull)
    print(machine())
    print(written("", "time", "floor", "ratio", "goal", ""))
    for line in lines(sizes):
        verdict = ("met" if line.met else "MISSED") if sizes.judged else ""
        print(written(line.name, line.time, line.floor, line.ratio, line.goal, verdict), flush=True)
    return 0


def _listen(kind: QtMsgType, _context: object, words: str) -> None:
    """Let Qt say all but that there is no window manager."""
    if "propagateSizeHints" not in words:
        print(kind.name, words, file=sys.stderr)


def lines(sizes: Sizes) -> Iterator[Line]:
    """All rows of the table."""
    app = made_app()
    floor = floor_of(app, sizes)
    window = shown(planted(sizes.beds), app)
    yield from seen(window, floor, sizes)
    yield from dragged(window, floor, sizes)
    yield edited(window, sizes)
    yield memory()
    yield from started(sizes.turns > 1)


def long(nm: int) -> Length:
    """A length from its nanometres."""
    return length_of(nm, Units.METRIC)


def planted(count: int) -> Plan:
    """So many beds of 20 m with two crops and 500 plants each."""
    leek = Crop("leek", "Leek", long(10 * CM), (long(20 * CM),))
    kale = Crop("kale", "Kale", long(15 * CM), (long(25 * CM),))
    beds, plantings = [], list[Planting]()
    for number in range(count):
        bed = f"b{number}"
        margin = long(30 * CM)
        beds.append(Bed(bed, f"Bed {number + 1}", long(20 * M), long(80 * CM), margin, margin, gap=long(20 * CM)))
        for crop, start, plants in (("leek", 30 * CM, 260), ("kale", 720 * CM, 240)):
            one = Planting(f"{crop}{number}", bed, crop, long(start), plants)
            plantings.append(evolve(one, in_ground=date(2027, 4, 1), out=date(2027, 8, 1)))
    return Plan(beds=tuple(beds), crops=(leek, kale), plantings=tuple(plantings))


class Blit(QWidget):
    """The floor: a window that shows one opaque pixmap."""

    def __init__(self) -> None:
        super().__init__()
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.resize(1600, 900)
        self._picture = QPixmap(1600, 900)
        self._picture.fill(Qt.GlobalColor.white)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802  # Qt's own name
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._picture)
        painter.end()


def floor_of(app: QApplication, sizes: Sizes) -> float:
    """What the floor takes, in seconds."""
    blit = Blit()
    blit.show()
    app.processEvents()
    return best_of(4 * sizes.turns, blit.repaint)


def shown(plan: Plan, app: QApplication) -> MainWindow:
    """The program's window with a plan, its panels away so that the drawing has it all."""
    window = MainWindow()
    window.resize(1600, 900)
    window.document.start(plan)
    window.show()
    for dock in window.panels.docks[:2]:
        dock.hide()
    for _turn in range(5):
        app.processEvents()
    return window


def seen(window: MainWindow, floor: float, sizes: Sizes) -> Iterator[Line]:
    """Painting at several zooms."""
    canvas, view = window.canvas, window.canvas.view
    paint = canvas.viewport().repaint

    def anew() -> None:
        canvas._pictures = StripPictures()
        paint()

    view.fit(all_beds=True)
    yield against(f"all {sizes.beds} beds in sight, as they were", best_of(sizes.turns, paint), floor, 20)
    yield against("the same, painted anew", best_of(sizes.turns, anew), floor, 100)
    view.fit()
    yield against("whole length, beds as strips, painted anew", best_of(sizes.turns, anew), floor, 15)
    view.zoom_to(0, 5 * M)
    yield against("5 m in sight, painted anew", best_of(sizes.turns, anew), floor, 15)
    bar = canvas.horizontalScrollBar()

    def pan() -> None:
        bar.setValue(bar.value() + 12)
        paint()

    yield against("panned by a step of 12 px", best_of(sizes.turns, pan), floor, 3)
    view.fit()


def dragged(window: MainWindow, floor: float, sizes: Sizes) -> Iterator[Line]:
    """One block dragged along its bed."""
    canvas, viewport = window.canvas, window.canvas.viewport()
    grip = canvas.places.point_of("b1", 8 * M, 40 * CM)
    QTest.mousePress(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, grip.toPoint())
    steps = iter(range(10**6))

    def move() -> None:
        to = grip + QPointF(10 + 3 * (next(steps) % 20), 0)
        at = QPointF(viewport.mapToGlobal(to.toPoint()))
        left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
        QApplication.sendEvent(viewport, QMouseEvent(QEvent.Type.MouseMove, to, at, none_button(), left, none))

    def chain() -> None:
        move()
        QApplication.processEvents()

    chain()
    yield within("a drag, from the mouse to painted", best_of(2 * sizes.turns, chain), 8e-3)
    shown = canvas._repaint.shown
    area = QRegion(changed_between(shown, canvas._scene(), canvas._frame())) if shown else QRegion()
    painted = best_of(2 * sizes.turns, lambda: viewport.repaint(area), before=move)
    yield against("of it, painting", painted, floor, 2)
    QTest.keyClick(canvas, Qt.Key.Key_Escape)
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton)


def none_button() -> Qt.MouseButton:
    """The button of a move: none."""
    return Qt.MouseButton.NoButton


def edited(window: MainWindow, sizes: Sizes) -> Line:
    """A block nudged by a key, until all of the window shows it."""
    for dock in window.panels.docks:
        dock.show()
    window.sight.select("b1", "leek1")
    window.canvas.setFocus()
    QApplication.processEvents()
    ways = iter((Qt.Key.Key_Right, Qt.Key.Key_Left) * 10**4)

    def nudge() -> None:
        QTest.keyClick(window.canvas, next(ways), Qt.KeyboardModifier.ShiftModifier)
        QApplication.processEvents()

    nudge()
    return within("an edit, from the key to painted", best_of(sizes.turns, nudge), 16e-3)


def memory() -> Line:
    """The most memory that this process has had."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return Line("memory", f"{most:.0f} MB", "", "", "<= 300 MB", most <= 300)


if __name__ == "__main__":
    sys.exit(main())
