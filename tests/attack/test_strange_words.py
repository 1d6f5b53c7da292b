"""Words of a strange plan, whatever they are, do nothing but stand where they belong."""

import csv
import io
import json
import os
import time
import unicodedata
from collections.abc import Iterator
from datetime import UTC, date, datetime
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from ezdxf.filemanagement import readfile
from icalendar import Calendar
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QTextDocument
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from gardenplot.errors import FileError
from gardenplot.exports import calendar, dxf, places, svg
from gardenplot.files import sample
from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.plan.file import file_name, plan_of_text, read_plan, text_of
from gardenplot.plan.json_text import MOST_PARTS
from gardenplot.sheets.paper import FACE, Paper, fitted, load_face
from gardenplot.window.main import MainWindow
from gardenplot.window.plain import PlainLabel, as_is
from tests.attack import turns
from tests.sheets.made import bed_sheets

WORDS = {
    "markup": "<b>bold</b><img src='file:///etc/hostname'><a href='x'>",
    "entities": "&amp; &lt;b&gt; & Co",
    "format": "{0} {name} {} %s %(a)s %n $x ${x}",
    "formula": "=1+1",
    "formula behind a tab": "\t@SUM(1)",
    "steering": "a\x00b\x1b[2Jc\x07\r\nd\u2028e",
    "turned": "abc\u202ecba\u2066",
    "not for text": "\uffff\ufdd0\U0010fffe",
    "calendar": "BEGIN:VEVENT\r\nSUMMARY:mine;X=1,2\\n\r\nEND:VCALENDAR",
    "path": "../../etc/passwd",
    "right to left": "גזר לבן " * 20,
    "marks without letters": "a" + "\u0301" * 3000,
    "as long as a book": "x" * 10_000,
    "as many words": "wide word " * 1000,
    "pictures": "🌱" * 3000,
}
every = pytest.mark.parametrize("words", WORDS.values(), ids=WORDS)
in_window = pytest.mark.parametrize("words", list(WORDS.values())[:: turns(3, 1)], ids=list(WORDS)[:: turns(3, 1)])
PARTS = ("beds", "crops", "plantings", "orders", "wishes", "covers")


def strange(words: str) -> Plan:
    """The example with all its names and ids made of some words."""
    raw = json.loads(sample("kestrel-howe.gardenplot").read_text(encoding="utf-8"))
    raw["place"]["name"] = words
    for part in raw["beds"] + raw["crops"]:
        part["name"] = words
    for crop in raw["crops"]:
        crop["family"] = words
    text = json.dumps(raw)
    for name in PARTS:
        for number, part in enumerate(raw.get(name, [])):
            text = text.replace(json.dumps(part["id"]), json.dumps(f"{words} {name} {number}"))
    return plan_of_text(text).plan


@pytest.fixture(autouse=True)
def no_longer_than_it_takes() -> Iterator[None]:
    """However long the words are, none of this takes long."""
    began = time.process_time()
    yield
    assert time.process_time() - began < 15


@every
def test_a_plan_of_them_is_saved_and_read_back(words: str) -> None:
    plan = strange(words)
    assert plan_of_text(text_of(plan)).plan == plan
    assert plan.place.name == words


@every
def test_a_spreadsheet_takes_none_for_a_formula(words: str) -> None:
    rows = list(csv.reader(io.StringIO(places.drawn(strange(words)).decode(), newline="")))
    assert len(rows) > 100
    assert all(len(row) == 6 for row in rows)
    assert not any(row[column].startswith(("=", "+", "-", "@", "\t", "\r")) for row in rows[1:] for column in (0, 1))


@every
def test_drawings_are_sound_files(words: str, tmp_path: Path) -> None:
    root = ET.fromstring(svg.drawn(strange(words)))
    assert {one.tag.rpartition("}")[2] for one in root.iter()} <= {
        "svg", "g", "title", "text", "tspan", "line", "path", "polygon", "defs", "pattern", "circle", "rect",
    }  # fmt: skip
    (tmp_path / "beds.dxf").write_bytes(dxf.drawn(strange(words)))
    assert not readfile(tmp_path / "beds.dxf").audit().has_errors


@cache
def usual_days(made: datetime) -> list[set[str]]:
    """What each day of the example's own calendar has."""
    content = calendar.written(read_plan(sample("kestrel-howe.gardenplot")).plan, made=made)
    return [set(one) for one in Calendar.from_ical(content).walk("VEVENT")]


@every
def test_a_calendar_has_no_days_of_theirs(words: str) -> None:
    made = datetime(2027, 1, 1, tzinfo=UTC)
    usual = usual_days(made)
    content = calendar.written(strange(words), made=made)
    days = Calendar.from_ical(content)
    assert [set(one) for one in days.walk("VEVENT")] == usual
    assert all(len(line) <= 75 for line in content.split(b"\r\n"))


@every
def test_sheets_are_made_of_them(words: str) -> None:
    assert bed_sheets(strange(words), Paper.A4, name=words, printed=date(2027, 1, 1)).pdf.startswith(b"%PDF")


@pytest.fixture
def window(dressed: QApplication, qtbot: QtBot) -> Iterator[MainWindow]:
    """A window without a plan."""
    assert dressed.styleSheet()
    shown = MainWindow()
    shown.resize(1440, 900)
    shown.show()
    qtbot.waitExposed(shown)
    yield shown
    shown.document.start(Plan())
    shown.close()
    shown.deleteLater()
    dressed.sendPostedEvents(shown, QEvent.Type.DeferredDelete)


@in_window
@pytest.mark.qt_log_ignore("plugin does not support", extend=True)
def test_the_window_shows_them_and_takes_none_for_rich_text(window: MainWindow, words: str) -> None:
    plan = strange(words)
    window.document.start(plan)
    window.sight.select(plan.beds[0].id, None)
    QApplication.processEvents()
    planting = plan.plantings[0]
    window.sight.select(planting.bed, planting.id)
    window.season_maps.show()
    window.views.show_ground(True)
    QApplication.processEvents()
    assert not window.grab().isNull()
    labels = [one for one in window.findChildren(QWidget) if isinstance(one, QLabel)]
    assert len(labels) > 10
    ours = [one for one in labels if isinstance(one, PlainLabel)]
    assert all(one.textFormat() is Qt.TextFormat.PlainText for one in ours)
    # Qt's own labels, as those of a status bar, hold nothing of the plan.
    assert not any("bold" in one.text() for one in labels if one not in ours)
    tips = [one.toolTip() for one in window.findChildren(QWidget)]
    assert not any("<b>" in tip or "<img" in tip for tip in tips)


@pytest.mark.parametrize("words", ["<b>x</b>", "a &lt; b", "<img src=x>\nmore", "a < b"])
def test_what_a_tip_shows_is_what_was_written(words: str) -> None:
    shown = QTextDocument()
    shown.setHtml(as_is(words))
    assert shown.toPlainText() == words


def test_words_without_marks_are_left_alone() -> None:
    assert as_is("Pak choi & leek, 2' 6\"") == "Pak choi & leek, 2' 6\""


def test_signs_that_turn_what_follows_are_left_out_of_a_line() -> None:
    assert one_line("abc\u202ecba\u2066x\u2069") == "abc cba x "
    assert one_line("שלום\u200f!") == "שלום\u200f!", "marks that turn nothing else are kept"


def test_of_all_signs_there_are_none_that_steers_is_left_in_a_line() -> None:
    every = [chr(code) for code in range(0x110000)]
    steering = [sign for sign in every if unicodedata.category(sign) in ("Cc", "Cs", "Zl", "Zp")]
    assert {one_line(sign) for sign in steering} == {" "}
    others = "".join(sign for sign in every if unicodedata.category(sign)[0] in "LMNPS")
    assert one_line(others) == others


def test_a_long_text_is_cut_at_once_and_at_the_same_place() -> None:
    load_face()
    began = time.process_time()
    cut = fitted("wide words " * 5000, FACE, 10, 100)
    assert time.process_time() - began < 1
    assert cut == fitted("wide words " * 5, FACE, 10, 100)
    assert cut.endswith("…")
    assert fitted("wide", FACE, 10, 1) == "…"


@pytest.mark.parametrize(
    "name", ["CON", "nul.txt", "com1", "LPT9 ", "../../x", "a/b\\c:d", "...", "", "x" * 300, "a\0b"]
)
def test_a_name_makes_a_file_in_the_folder_that_was_chosen(name: str, tmp_path: Path) -> None:
    made = file_name(name)
    assert (tmp_path / made).parent == tmp_path
    assert made.upper() not in ("CON", "NUL", "COM1", "LPT9", "NUL.TXT")
    (tmp_path / made).write_text("")
    assert [one.name for one in tmp_path.iterdir() if one.is_file()] == [made]


@pytest.mark.parametrize("part", ["[]", "0", "{}", '""', "[[]]"])
def test_more_values_than_any_plan_are_refused_before_they_are_made(part: str) -> None:
    text = '{"gardenplot": 1, "x": [' + ",".join([part] * (MOST_PARTS + 1)) + "]}"
    began = time.process_time()
    with pytest.raises(FileError, match="holds more than any plan"):
        plan_of_text(text)
    assert time.process_time() - began < 0.5


def test_a_pipe_is_no_file_to_wait_for(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe.gardenplot"
    if not hasattr(os, "mkfifo"):
        pytest.skip("this system has no pipes with names")
    os.mkfifo(pipe)
    with pytest.raises(FileError, match="that is no file"):
        read_plan(pipe)
