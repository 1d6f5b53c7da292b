"""Long work: the same result as at once, its progress, stopped without a trace, and a window that lives on."""

import time
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from attrs import evolve
from PySide6.QtCore import QTimer
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from gardenplot.errors import GardenplotError
from gardenplot.exports import dxf, places, svg
from gardenplot.exports.apart import Work
from gardenplot.plan import Plan
from gardenplot.sheets.choices import Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper
from gardenplot.window.long_work import Waiting, carried_out
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import print_pages
from gardenplot.window.prints import print_of
from gardenplot.window.sheets_made import FEW_BEDS, StoppedError, made_sheets
from tests.plans import metric_plan
from tests.sheets.made import bed_sheets

FREEZE = 0.1
"""Seconds for which a window may not answer."""


def many_beds(count: int) -> Plan:
    """So many beds with so many blocks."""
    plan = metric_plan()
    bed, block = plan.beds[0], plan.plantings[0]
    numbers = range(count)
    return evolve(
        plan,
        beds=tuple(evolve(bed, id=f"b{number}", name=f"Bed {number}") for number in numbers),
        plantings=tuple(evolve(block, id=f"p{number}", bed=f"b{number}") for number in numbers),
    )


class Watch:
    """Ticks as long as the window's loop runs; acts on the waiting.

    It knows the most that this process has worked between two ticks, which no other program's work makes longer.
    """

    def __init__(self, act: Callable[[Waiting], None] = lambda _waiting: None) -> None:
        self._act, self._last = act, time.process_time()
        self.longest, self.seen = 0.0, list[tuple[int, int]]()
        self._timer = QTimer()
        self._timer.timeout.connect(self._tick)
        self._timer.start(5)

    def _tick(self) -> None:
        now = time.process_time()
        waiting = QApplication.activeModalWidget()
        if isinstance(waiting, Waiting):
            if self.seen:
                self.longest = max(self.longest, now - self._last)
            self.seen.append((waiting.bar.value(), waiting.bar.maximum()))
            self._act(waiting)
        self._last = now

    def end(self) -> None:
        self._timer.stop()


def test_sheets_of_many_beds_are_those_made_at_once_and_the_window_lives_on(window: MainWindow) -> None:
    plan, watch = many_beds(40), Watch()
    sheets = made_sheets(plan, Paper.A4, "Upper Sill", print_of(Kind.BEDS), window)
    watch.end()
    assert sheets.first_page == bed_sheets(plan, Paper.A4).first_page
    assert len(pypdfium2.PdfDocument(sheets.pdf)) == 40
    assert len({done for done, of in watch.seen if of == 40}) > 3
    assert watch.longest < FREEZE


def test_sheets_of_few_beds_are_there_at_once(window: MainWindow) -> None:
    watch = Watch()
    assert made_sheets(many_beds(FEW_BEDS), Paper.A4, "", print_of(Kind.BEDS), window).pdf
    watch.end()
    assert not watch.seen


def test_stopped_sheets_leave_no_process_and_open_nothing(window: MainWindow) -> None:
    watch = Watch(lambda waiting: waiting.stop.click())
    with pytest.raises(StoppedError):
        made_sheets(many_beds(40), Paper.A4, "", print_of(Kind.BEDS), window)
    window.document.start(many_beds(40))
    window.sheets.one(Kind.BEDS)
    watch.end()
    assert QApplication.activeModalWidget() is None


@pytest.mark.parametrize(("kind", "drawn"), [("svg", svg.drawn), ("csv", places.drawn)])
def test_a_drawing_is_written_as_at_once(
    window: MainWindow,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    kind: str,
    drawn: Callable[[Plan], bytes],
) -> None:
    out = tmp_path / f"out.{kind}"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(out), ""))
    window.sheets.export()
    assert out.read_bytes() == drawn(window.document.plan)
    assert str(out) in window.statusBar().currentMessage()


def test_a_stopped_drawing_leaves_the_file_that_was_there(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out.dxf"
    out.write_bytes(b"before")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(out), ""))
    window.document.start(many_beds(60))
    watch = Watch(lambda waiting: waiting.reject() if waiting.bar.value() > 2 else None)
    window.sheets.export()
    watch.end()
    assert out.read_bytes() == b"before"
    assert list(tmp_path.glob("out*")) == [out]
    assert "stopped" in window.statusBar().currentMessage()


def test_a_kind_that_there_is_not_is_told(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "out.bmp"), ""))
    monkeypatch.setattr(QMessageBox, "warning", lambda *words: told.append(str(words[-1])))
    window.sheets.export()
    assert "must end in" in told[0]


def test_what_ends_the_work_is_raised_here(window: MainWindow) -> None:
    with pytest.raises(GardenplotError, match="no bed in the plan"):
        carried_out("sheets", Work(printed.__module__, "printed", (Plan(), Paper.A4, (Kind.BEDS,))), window)


def test_work_whose_process_ends_without_a_word_is_told_too(window: MainWindow) -> None:
    with pytest.raises(GardenplotError, match="ended before it was done"):
        carried_out("nothing", Work("os", "_exit"), window)


def test_dxf_tells_of_its_beds() -> None:
    told: list[tuple[int, int]] = []
    dxf.drawn(metric_plan(), lambda done, of: told.append((done, of)))
    assert told == [(0, 4), (1, 4)]


def test_printing_that_is_stopped_ends_with_a_whole_page(window: MainWindow, tmp_path: Path) -> None:
    del window
    out = tmp_path / "paper.pdf"
    printer = QPrinter(QPrinter.PrinterMode.ScreenResolution)
    printer.setOutputFileName(str(out))
    asked: list[int] = []

    def goes_on(done: int, _pages: int) -> bool:
        asked.append(done)
        return done < 2

    print_pages(bed_sheets(many_beds(3), Paper.A4).pdf, printer, goes_on)
    assert asked == [1, 2]
    assert len(pypdfium2.PdfDocument(out)) == 2
