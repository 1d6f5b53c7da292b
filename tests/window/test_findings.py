"""Findings in the window: listed by weight, counted as they are listed, and marked above the bed where they are."""

from datetime import date

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QApplication

from gardenplot.drawing.style import Ink
from gardenplot.findings import find_all
from gardenplot.plan.edits import change_planting
from gardenplot.units import MM, parse_length
from gardenplot.window.canvas_faults import middle_of
from gardenplot.window.document import Document
from gardenplot.window.headed_area import HeadedArea
from gardenplot.window.main import MainWindow
from gardenplot.window.theme import colour, palette
from tests.journeys.person import rows_of
from tests.window.shared_window import window
from tests.window.test_panels import finish
from tests.window.test_planting_days import BEETS, plan_of

__all__ = ["window"]

OUT_OF_BED = parse_length("13 m")


@pytest.fixture
def with_fault(window: MainWindow, document: Document) -> Document:
    """The plan of the window with a block that runs past the foot margin of the first bed."""
    plan = change_planting(document.plan, "p1", start=OUT_OF_BED, length=parse_length("4 m"), plants=None)
    document.change("From of Pak choi", plan)
    window.ledger.setCurrentWidget(window.ledger.of_findings)
    return document


def marks_above(window: MainWindow, bed: str, tape_mm: float) -> int:
    """How many pixels of the accent stand right above a bed at a tape reading."""
    canvas = window.canvas
    strips, (left, top) = canvas.view.strips(), canvas.view.origin
    strip = next(one for one in strips.strips if one.bed == bed)
    image = canvas.viewport().grab().toImage()
    x, y = round(left + tape_mm * strips.along), round(strip.top + top)
    accent = QColor(colour(palette(), Ink.ACCENT)).rgb()
    return sum(image.pixel(x + dx, y - dy) == accent for dx in range(-4, 5) for dy in range(2, 9))


@pytest.mark.usefixtures("with_fault")
def test_what_cannot_be_done_comes_first_with_a_mark_and_words(window: MainWindow) -> None:
    rows = rows_of(window.ledger.findings)
    weights = [row[0] for row in rows]
    assert weights[0] == "▼ cannot be done"
    assert weights == sorted(weights, key=["▼ cannot be done", "risk", "note"].index)
    assert "past the foot margin" in rows[0][2]


@pytest.mark.usefixtures("with_fault")
def test_the_tab_counts_the_rows_that_are_listed(window: MainWindow) -> None:
    words = window.ledger.tabText(window.ledger.indexOf(window.ledger.of_findings))
    assert sum(int(part.split(" ")[0]) for part in words.split(" · ")) == len(rows_of(window.ledger.findings))


def test_a_fault_has_a_mark_above_its_bed_until_it_is_mended(window: MainWindow, with_fault: Document) -> None:
    (fault,) = [one for one in find_all(with_fault.plan) if one.cannot_be_done]
    middle = middle_of(fault, with_fault.plan.beds[0]) / MM
    assert fault.start / MM < middle < 15_000
    assert marks_above(window, "b1", middle) > 10
    assert marks_above(window, "b1", middle / 2) == 0
    with_fault.stack.undo()
    assert marks_above(window, "b1", middle) == 0


def test_a_fault_of_another_day_has_no_mark(window: MainWindow, with_fault: Document) -> None:
    (fault,) = [one for one in find_all(with_fault.plan) if one.cannot_be_done]
    window.sight.show_day(date(2026, 4, 9))
    assert marks_above(window, "b1", middle_of(fault, with_fault.plan.beds[0]) / MM) == 0


@pytest.mark.usefixtures("with_fault")
def test_the_panel_of_the_planting_wears_the_mark_too(window: MainWindow) -> None:
    window.sight.select("b1", "p1")
    assert window.inspector.planting.findings.text().startswith("▼ runs ")


@pytest.mark.usefixtures("with_fault")
def test_a_finding_leads_to_its_words_in_the_panel_wherever_that_was_scrolled_to(window: MainWindow) -> None:
    panel, table = window.inspector.planting, window.ledger.findings
    window.sight.select("b1", "p1")
    QApplication.processEvents()
    area = window.inspector.currentWidget()
    assert isinstance(area, HeadedArea)
    bar = area.verticalScrollBar()
    bar.setValue(bar.maximum())
    assert panel.findings.visibleRegion().isEmpty()
    table.itemClicked.emit(table.topLevelItem(0), 0)
    QApplication.processEvents()
    assert not panel.findings.visibleRegion().isEmpty()


def look_on(window: MainWindow, today: date) -> Document:
    """The window on a plan of kale for a market and of beet, on some day, with the findings in front."""
    window.document.today = lambda: today
    window.document.start(plan_of(BEETS | {"in_ground": "2027-05-01"}))
    window.ledger.setCurrentWidget(window.ledger.of_findings)
    return window.document


def past(window: MainWindow) -> list[tuple[str, ...]]:
    return [tuple(row) for row in rows_of(window.ledger.findings) if "ago" in row[2] or "past" in row[2]]


def test_a_sowing_day_past_is_listed_leads_to_its_planting_and_goes_when_it_is_recorded(window: MainWindow) -> None:
    """Kale for 5 June 2027 is to be sown on 23 March (test_planting_days.py)."""
    document = look_on(window, date(2027, 4, 2))
    ((weight, place, words),) = past(window)
    assert (weight, place.partition(",")[0]) == ("risk", "A Kale")
    assert words == (
        "sowing day Tue 23 Mar 2027, 10 days ago, is not recorded; "
        "sown today, it is ready 10 days too late for the market on Sat 5 Jun 2027"
    )
    table = window.ledger.findings
    table.itemClicked.emit(table.topLevelItem(0), 0)
    assert window.sight.planting == "p1"
    panel = window.inspector.planting
    assert panel.findings.text() == words
    finish(panel.form.fields["actual_sown"], "2027-03-23")
    assert past(window) == []
    assert panel.findings.isHidden()
    document.stack.undo()
    assert len(past(window)) == 1


def test_a_slip_of_the_year_in_what_came_about_is_told_at_the_planting(window: MainWindow) -> None:
    look_on(window, date(2027, 4, 2))
    window.sight.select("b1", "p1")
    panel = window.inspector.planting
    finish(panel.form.fields["actual_sown"], "2028-03-24")
    assert (
        panel.findings.text().splitlines()[-1] == "is recorded as sown on Fri 24 Mar 2028, which is 357 days from now"
    )


def test_a_plan_of_last_year_has_one_note_and_its_orders_none(window: MainWindow) -> None:
    look_on(window, date(2028, 9, 1))
    assert past(window) == [
        ("note", "plan", "all days of this plan are past, the last was Thu 1 Jul 2027; "
         "nothing is recorded of 2 plantings"),
    ]  # fmt: skip
    window.sight.select("b1", "p1")
    assert "ago" not in window.inspector.planting.findings.text()
