"""Dates leave the window: the dates sheet and the door cards in the preview, a calendar file."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pypdfium2
import pytest
from attrs import evolve
from icalendar import Calendar
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from gardenplot.exports.kinds import calendar_file
from gardenplot.plan import Plan
from gardenplot.window.document import Document
from gardenplot.window.drawing_made import FEW_PLANTINGS, made_calendar
from gardenplot.window.main import MainWindow
from gardenplot.window.preview import Preview
from tests.drawing.hand_worked import hand_worked
from tests.window.shared_window import window

__all__ = ["window"]

Looks = Callable[[Preview], None]


def opened(window: MainWindow, action: str, look: Looks) -> None:
    """Take an action of the menus and look at the preview that it opens."""
    seen: list[Preview] = []

    def meet() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, Preview)
        seen.append(dialog)
        try:
            look(dialog)
        finally:
            dialog.reject()

    QTimer.singleShot(0, meet)
    window.registry.made(action).trigger()
    assert seen


def test_the_dates_sheet_is_shown_upright_and_kept(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    document.start(hand_worked("s1"))
    proposed: list[str] = []

    def name(*asked: str) -> tuple[str, str]:
        proposed.append(asked[2])
        return str(tmp_path / "dates.pdf"), ""

    monkeypatch.setattr(QFileDialog, "getSaveFileName", name)

    def look(shown: Preview) -> None:
        assert shown.windowTitle().startswith("Dates by week: ")
        assert shown.number.text() == "page 1 of 1"
        shown.keep.click()

    opened(window, "sheets.dates", look)
    assert proposed[0].endswith(" dates by week.pdf")
    page = pypdfium2.PdfDocument((tmp_path / "dates.pdf").read_bytes())[0]
    width, height = page.get_size()
    assert width < height
    assert "Week 10" in page.get_textpage().get_text_range()


def test_the_door_cards_open_at_the_week_that_the_drawing_shows(window: MainWindow, document: Document) -> None:
    """The cover of S2 stands from Wed 7 May 2025: Sat 24 May lies in its third week."""
    document.start(hand_worked("s2"))
    window.sight.show_day(date(2025, 5, 24))
    numbers: list[str] = []
    opened(window, "sheets.card", lambda shown: numbers.append(shown.number.text()))
    window.sight.show_day(None)
    opened(window, "sheets.card", lambda shown: numbers.append(shown.number.text()))
    assert numbers == ["page 3 of 6", "page 1 of 6"]


def test_a_calendar_file_is_written(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    document.start(hand_worked("s1"))
    out = tmp_path / "s1.ics"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(out), ""))
    window.registry.made("sheets.calendar").trigger()
    days = {event.decoded("dtstart") for event in Calendar.from_ical(out.read_bytes()).walk("VEVENT")}
    assert {date(2025, 3, 7), date(2025, 4, 11), date(2025, 5, 16)} <= days


def test_a_calendar_file_that_cannot_be_written_is_told(
    window: MainWindow, document: Document, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    document.start(hand_worked("s1"))
    told: list[str] = []
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_asked: (str(tmp_path / "no" / "s1.ics"), ""))
    monkeypatch.setattr(QMessageBox, "warning", lambda _parent, _title, words: told.append(words))
    window.registry.made("sheets.calendar").trigger()
    assert "cannot be written" in told[0]


def test_what_there_is_nothing_of_cannot_be_chosen_and_says_why(window: MainWindow, document: Document) -> None:
    document.start(Plan())
    made = window.registry.made
    for action in ("sheets.dates", "sheets.calendar", "sheets.card"):
        assert not made(action).isEnabled()
    assert "Nothing is planted yet" in made("sheets.dates").toolTip()
    assert "There is no cover yet" in made("sheets.card").toolTip()
    document.start(hand_worked("s2"))
    assert all(made(action).isEnabled() for action in ("sheets.dates", "sheets.calendar", "sheets.card"))


@pytest.mark.parametrize("action", ["sheets.dates", "sheets.calendar"])
def test_a_plan_without_a_day_is_told_so(window: MainWindow, document: Document, action: str) -> None:
    plan = hand_worked("s1")
    undated = tuple(evolve(one, order=None, in_ground=None, out=None) for one in plan.plantings)
    document.start(evolve(plan, plantings=undated, orders=()))
    window.registry.made(action).trigger()
    assert QApplication.activeModalWidget() is None
    assert "no day is known" in window.statusBar().currentMessage()


def test_the_calendar_of_many_plantings_is_the_one_made_at_once(window: MainWindow) -> None:
    plan = hand_worked("s1")
    block = plan.plantings[0]
    many = tuple(evolve(block, id=f"p{number}", plants=1, order=None) for number in range(FEW_PLANTINGS + 1))
    crowded = evolve(plan, plantings=tuple(evolve(one, in_ground=date(2025, 4, 11)) for one in many))
    made = made_calendar(crowded, "S1", window)
    assert made is not None
    days = [event.decoded("dtstart") for event in Calendar.from_ical(made).walk("VEVENT")]
    at_once = [event.decoded("dtstart") for event in Calendar.from_ical(calendar_file(crowded, "S1")).walk("VEVENT")]
    assert days == at_once
