"""A plan as large as any, opened, edited, saved and printed in the window, and how long each holds the window up.

    .venv/bin/python -m tests.attack.large 200      beds of ten plantings and 500 plants each

prints for each thing that is done the longest time for which the window could not answer: seconds of the processor
in its own thread between two ticks of a clock, so that a busy machine counts for nothing. Waiting for a disk is no
part of it.
"""

import json
import os
import resource
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path
from unittest.mock import patch

from attrs import evolve
from PySide6.QtCore import QEvent, QEventLoop, QPoint, QSettings, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QLineEdit

from gardenplot.plan import Bed, Crop, Order, Place, Plan, Planting
from gardenplot.plan.file import read_plan, write_plan
from gardenplot.units import CM, Length, M, Units, length_of
from gardenplot.window.journal import Journal
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview
from gardenplot.window.start import made_app
from tests.today import TODAY

Key, Keys = Qt.Key, Qt.KeyboardModifier
_LEFT = Qt.MouseButton.LeftButton
_FROM = date(2027, 4, 1)


def long(nm: int) -> Length:
    """A length from its nanometres."""
    return length_of(nm, Units.METRIC)


def large(beds: int) -> Plan:
    """So many beds with five blocks in spring and five that follow them, of 50 plants each, of twelve crops."""
    crops = tuple(
        Crop(f"c{number}", f"Crop {number + 1}", long((18 + number % 3) * CM), (long(22 * CM),), tray_cells=84,
             raising_days=30 + number, field_days=50 + number)
        for number in range(12)
    )  # fmt: skip
    margin = long(30 * CM)
    ground = tuple(
        Bed(f"b{number}", f"Bed {number + 1}", long(24 * M), long(75 * CM), margin, margin, gap=long(20 * CM))
        for number in range(beds)
    )
    plantings = []
    for number, bed in enumerate(ground):
        for place in range(10):
            goes_in = _FROM + timedelta(days=number % 14 + (75 if place >= 5 else 0))
            one = Planting(f"p{number}-{place}", bed.id, crops[(number + place) % 12].id,
                           long((30 + 460 * (place % 5)) * CM), 50)  # fmt: skip
            plantings.append(evolve(one, in_ground=goes_in, out=goes_in + timedelta(days=70)))
    orders = tuple(Order(f"o{number}", crop.id, 100, date(2027, 7, 1)) for number, crop in enumerate(crops))
    farm = Place("Large", 52.0, 0.0, "Europe/London")
    return Plan(place=farm, beds=ground, crops=crops, plantings=tuple(plantings), orders=orders)


class Clock:
    """Ticks whenever the window can answer, and knows the longest time between two ticks."""

    def __init__(self) -> None:
        self._timer = QTimer()
        self._timer.setInterval(1)
        self._timer.timeout.connect(self._tick)
        self._last = time.thread_time()
        self.longest = 0.0
        self.told: dict[str, float] = {}

    def _tick(self) -> None:
        now = time.thread_time()
        self.longest, self._last = max(self.longest, now - self._last), now

    @contextmanager
    def over(self, what: str) -> Iterator[None]:
        """Keep the longest time for something that is done."""
        _rest()
        self._timer.start()
        self._last, self.longest = time.thread_time(), 0.0
        yield
        self._tick()
        _rest()
        self._tick()
        self._timer.stop()
        self.told[what] = max(self.told.get(what, 0.0), self.longest)


def _rest() -> None:
    for _turn in range(4):
        QApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)


def press(window: MainWindow, *keys: Qt.Key, held: Qt.KeyboardModifier = Keys.NoModifier) -> None:
    """Press keys one after another; the window is painted in between."""
    for key in keys:
        QTest.keyClick(window.windowHandle(), key, held)
        _rest()


def drag(window: MainWindow, bed: str, start: int, end: int) -> None:
    """Drag a block along its bed, step by step; readings in nm."""
    canvas, handle = window.canvas, window.windowHandle()

    def point(at: int) -> QPoint:
        return canvas.viewport().mapTo(window, canvas.places.point_of(bed, at, 37 * CM).toPoint())

    QTest.mousePress(handle, _LEFT, Keys.NoModifier, point(start))
    for step in range(1, 11):
        QTest.mouseMove(handle, point(start + (end - start) * step // 10))
        _rest()
    QTest.mouseRelease(handle, _LEFT, Keys.NoModifier, point(end))


def edited(window: MainWindow, clock: Clock) -> None:
    """What is edited again and again, with each of the tables in front."""
    window.sight.select("b1", "p1-1")
    window.canvas.setFocus()
    for tab in range(window.ledger.count()):
        name = window.ledger.tabText(tab).partition(" (")[0]
        with clock.over(f"{name}: turned to"):
            window.ledger.setCurrentIndex(tab)
        window.canvas.setFocus()
        with clock.over(f"{name}: a block moved by key"):
            press(window, *(Key.Key_Right, Key.Key_Left) * 3, held=Keys.ShiftModifier)
        with clock.over(f"{name}: undone"):
            press(window, Key.Key_Z, held=Keys.ControlModifier)
    window.ledger.setCurrentIndex(0)


def worked(window: MainWindow, clock: Clock) -> None:
    """Mouse, typing, copying, many at once, the other views."""
    window.canvas.view.fit()
    with clock.over("a block dragged"):
        drag(window, "b1", 6 * M, 7 * M)
    with clock.over("undone"):
        press(window, Key.Key_Z, held=Keys.ControlModifier)
    window.sight.select("b1", "p1-1")
    with clock.over("typed into the panel"):
        press(window, Key.Key_F2)
        field = QApplication.focusWidget()
        assert isinstance(field, QLineEdit)
        field.selectAll()
        QTest.keyClicks(field, "4")
        press(window, Key.Key_Return)
    window.canvas.setFocus()
    with clock.over("copied and put in the next gap"):
        press(window, Key.Key_C, held=Keys.ControlModifier)
        press(window, Key.Key_V, held=Keys.ControlModifier)
    with clock.over("all of the plan chosen"):
        press(window, Key.Key_A, Key.Key_A, held=Keys.ControlModifier)
    with clock.over("all of the plan moved"):
        press(window, Key.Key_Right, held=Keys.ShiftModifier)
    press(window, Key.Key_Z, held=Keys.ControlModifier)
    window.sight.select("b1", "p1-1")
    with clock.over("season map shown"):
        window.season_maps.show()
        window.panels.docks[3].raise_()
        window.panels.docks[3].show()
    window.canvas.setFocus()
    with clock.over("moved beside the season map"):
        press(window, Key.Key_Right, Key.Key_Left, held=Keys.ShiftModifier)
    with clock.over("ground shown"):
        press(window, Key.Key_G, held=Keys.ControlModifier)
    with clock.over("bed moved on the ground"):
        press(window, Key.Key_Right, Key.Key_Left)
    with clock.over("ground left"):
        press(window, Key.Key_G, held=Keys.ControlModifier)
    with clock.over("all beds at once"):
        press(window, Key.Key_9, held=Keys.ControlModifier)
    window.canvas.view.fit()


def printed(window: MainWindow, clock: Clock, folder: Path) -> int:
    """The bed sheets laid out, looked through and kept, and the other ways out; the size of the PDF."""
    pdf = folder / "sheets.pdf"

    def keep() -> None:
        shown = QApplication.activeModalWidget()
        if isinstance(shown, Preview):
            shown.after.click()
            shown.keep.click()
            shown.reject()
        else:
            QTimer.singleShot(50, keep)

    def close() -> None:
        shown = QApplication.activeModalWidget()
        if isinstance(shown, Preview):
            shown.reject()
        else:
            QTimer.singleShot(50, close)

    deeds: tuple[tuple[str, str, Callable[[], None]], ...] = (
        ("sheets.bed", "sheets.pdf", keep), ("sheets.dates", "", close), ("sheets.list", "", close),
        ("sheets.calendar", "days.ics", lambda: None), ("sheets.drawing", "beds.svg", lambda: None),
    )  # fmt: skip
    for action, file, answer in deeds:
        with (
            patch.object(QFileDialog, "getSaveFileName", lambda *_asked, file=file: (str(folder / file), "")),
            clock.over(action),
        ):
            QTimer.singleShot(50, answer)
            window.registry.made(action).trigger()
    return pdf.stat().st_size


def asked(window: MainWindow, clock: Clock) -> None:
    """Windows that look at all of the plan."""

    def close() -> None:
        for shown in QApplication.topLevelWidgets():
            if isinstance(shown, QDialog) and shown.isVisible():
                shown.reject()

    for action in ("order.ways", "planting.again", "planting.compare", "help.index", "supply.numbers"):
        window.sight.select("b1", "p1-1")
        made = window.registry.made(action)
        if made.isEnabled():
            with clock.over(action):
                QTimer.singleShot(300, close)
                made.trigger()
                _rest()
            close()
    # What would still close something must not meet the sheets that come next.
    QTest.qWait(400)


def attack(beds: int, folder: Path) -> dict[str, object]:
    """Do all of it; what each thing came to in ms, and the memory in MB."""
    app = made_app()
    QSettings.setDefaultFormat(QSettings.Format.IniFormat)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(folder))
    path, clock = folder / "large.gardenplot", Clock()
    write_plan(path, large(beds))
    window = MainWindow()
    window.document.today = lambda: TODAY
    window.resize(1600, 900)
    window.show()
    window.activateWindow()
    with clock.over("opened"):
        assert window.filing.open(path)
    # A screen gives the keyboard back when the dialog that waited is gone.
    window.activateWindow()
    journal = Journal(window.document)
    edited(window, clock)
    worked(window, clock)
    asked(window, clock)
    with clock.over("saved"):
        press(window, Key.Key_S, held=Keys.ControlModifier)
    assert read_plan(path).plan == window.document.plan
    assert window.document.is_saved
    pdf = printed(window, clock, folder)
    assert journal.wait()
    journal.end()
    plants = large(beds).plantings
    window.close()
    window.deleteLater()
    app.sendPostedEvents(window, QEvent.Type.DeferredDelete)
    memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return {
        "plantings": len(plants),
        "PDF, kB": pdf // 1024,
        "MB": round(memory),
        "ms": {name: round(1000 * took, 1) for name, took in sorted(clock.told.items(), key=lambda one: -one[1])},
    }


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as made:
        os.environ["GARDENPLOT_FOLDER"] = made
        print(json.dumps(attack(int(sys.argv[1]), Path(made)), indent=1))
