"""Supplies in the window: the list, how its numbers came about, what is in store, jugs, feeds and water."""

from datetime import date
from pathlib import Path

import pytest
from attrs import evolve
from PySide6.QtCore import QModelIndex, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog

from gardenplot.drawing.cautions import WATER
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.units import parse_length, parse_share
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from gardenplot.window.working_dialog import WorkingDialog
from tests.journeys.person import rows_of
from tests.window.test_wishes import Typing

Key, Keys = Qt.Key, Qt.KeyboardModifier


def with_numbers(plan: Plan) -> Plan:
    """The plan with a packet that tells enough to raise pak choi from, and with drip lines in the tunnel."""
    pak_choi = evolve(plan.crops[0], spare=parse_share("15 %"), germination=parse_share("90 %"), tray_cells=84)
    tunnel = evolve(plan.beds[0], drip_lines=(parse_length("20 cm"), parse_length("55 cm")))
    return evolve(plan, crops=(pak_choi, plan.crops[1]), beds=(tunnel, plan.beds[1]))


@pytest.fixture
def stocked(window: MainWindow, document: Document) -> MainWindow:
    document.start(with_numbers(document.plan))
    return window


def cells(window: MainWindow) -> list[list[str]]:
    """The rows of the list, headings too, in plain spaces."""
    table, found = window.ledger.supplies.table, []
    for number in range(table.topLevelItemCount()):
        heading = table.topLevelItem(number)
        assert heading is not None
        for item in (heading, *(heading.child(inner) for inner in range(heading.childCount()))):
            assert item is not None
            found.append([item.text(column).replace("\u2009", " ") for column in range(table.columnCount())])
    return found


def choose(window: MainWindow, what: str) -> None:
    """Go to a thing on the list as the keyboard does."""
    table = window.ledger.supplies.table
    QTest.keyClick(window.canvas, Key.Key_L, Keys.ControlModifier | Keys.ShiftModifier)
    assert table.hasFocus()
    found = table.findItems(what, Qt.MatchFlag.MatchExactly | Qt.MatchFlag.MatchRecursive, 0)
    table.setCurrentItem(found[0])


class Reading:
    """Keeps the lines of the working that is about to be shown, copies it, and closes it by its key."""

    def __init__(self) -> None:
        self.lines: list[tuple[str, str, str]] = []
        self.copied = ""
        QTimer.singleShot(0, self._read)

    def _read(self) -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, WorkingDialog)
        self.lines = [(line.name, line.sum, line.value) for line in dialog.lines]
        assert len(rows_of(dialog.table)) == len(self.lines)
        QTest.mouseClick(dialog.copy, Qt.MouseButton.LeftButton)
        self.copied = QApplication.clipboard().text()
        QTest.keyClick(dialog, Key.Key_Escape)


def test_the_list_is_that_of_the_plan_and_every_thing_on_it_opens_its_working(stocked: MainWindow) -> None:
    choose(stocked, "Pak choi")
    rows = cells(stocked)
    groups = shop_groups(stocked.document.plan)
    assert [row[0] for row in rows] == [
        name.replace("\u2009", " ")
        for group in groups
        for name in (group.name, *(row.cells[0] for row in group.rows))
    ]
    table = stocked.ledger.supplies.table
    for group in range(table.topLevelItemCount()):
        heading = table.topLevelItem(group)
        assert heading is not None
        for number in range(heading.childCount()):
            thing = heading.child(number)
            assert thing is not None
            table.setCurrentItem(thing)
            reading = Reading()
            QTest.keyClick(table, Key.Key_Return)
            assert reading.lines[0][0]
            assert reading.copied.count("\n") == len(reading.lines) - 1


def test_the_working_of_seed_goes_down_to_what_was_typed(stocked: MainWindow) -> None:
    """120 x 1.15 = 138 and 45 x 1.15 = 51.75, up; / 0.9 = 153.3 and 57.8, up: worked by hand."""
    choose(stocked, "Pak choi")
    reading = Reading()
    QTest.mouseClick(stocked.ledger.supplies.working, Qt.MouseButton.LeftButton)
    told = {(name, value) for name, _sum, value in reading.lines}
    assert ("raise", "138") in told
    assert ("cells", "154 (153.33, up)") in told
    assert ("germination", "90\u2009%") in told
    assert ("spare", "15\u2009%") in told


def test_the_numbers_of_a_plan_that_is_opened_again_are_told(stocked: MainWindow) -> None:
    document = stocked.document
    for plan in (document.plan, plan_of_text(text_of(document.plan)).plan):
        document.start(plan)
        stocked.sight.select("b1", "p1")
        reading = Reading()
        QTest.keyClick(stocked.canvas, Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
        assert "cells" in {name for name, _sum, _value in reading.lines}


def test_what_is_in_store_is_typed_and_taken_off_in_one_step(stocked: MainWindow) -> None:
    document = stocked.document
    before = document.plan
    choose(stocked, "Pak choi")
    Typing({"in_store": "60", "pack": "250 seeds", "price": "4,20", "germination": "45 %"})
    QTest.mouseClick(stocked.ledger.supplies.store, Qt.MouseButton.LeftButton)
    (row,) = [row for row in cells(stocked) if row[0] == "Pak choi"]
    assert row[2:] == ["30 seeds", "2 × 250 seeds", "8.40"]
    assert cells(stocked)[-1][0] == "Cost"
    document.stack.undo()
    assert document.plan is before


@pytest.mark.parametrize(
    ("texts", "field", "words"),
    [
        ({"in_store": "-3"}, "in_store", "is no amount"),
        ({"price": "1,250"}, "price", "is no price"),
        ({"germination": "0 %"}, "germination", "gives no plants"),
        ({"germination": "140 %"}, "germination", "is no share"),
        ({"pack": "0"}, "pack", "holds nothing"),
    ],
)
def test_what_makes_no_sense_is_told_at_its_field(
    stocked: MainWindow, texts: dict[str, str], field: str, words: str
) -> None:
    before = stocked.document.plan
    choose(stocked, "Pak choi")
    typing = Typing(texts)
    QTest.mouseClick(stocked.ledger.supplies.store, Qt.MouseButton.LeftButton)
    assert any(words in said for said in typing.said)
    assert typing.focus == field
    assert stocked.document.plan is before


def test_jugs_round_the_selected_block_are_counted_weighed_and_told_as_minutes(stocked: MainWindow) -> None:
    """The tunnel's block is 10 m long: 2 x floor((10 + 0.32) / 0.16) + 2 x floor(0.75 / 0.16) = 136, 680 kg."""
    stocked.sight.select("b1", "p1")
    Typing({"warm": "13 C", "cold": "4 C", "loss": "60 W / m2"})
    stocked.feeds.jugs()
    (jugs,) = stocked.document.plan.jugs
    assert (jugs.start.text, jugs.end.text) == ("30 cm", "10.3 m")
    stocked.sight.select("b1")
    line = stocked.inspector.bed.supplies.text().replace("\u2009", " ")
    assert "136 jugs of 5 l, 680 kg to carry" in line
    assert "about " in line
    assert "°" not in line
    reading = Reading()
    QTest.keyClick(stocked.canvas, Key.Key_N, Keys.ControlModifier | Keys.ShiftModifier)
    assert any(name.startswith("makes up") for name, _sum, _value in reading.lines)


def test_a_bed_is_fed_and_watered_and_its_numbers_follow(stocked: MainWindow) -> None:
    """0.75 m x 15 m = 11.25 m²: 2 cm are 225 l; 25 mm are 281.25 l, by 30 m of drip at 5 l/h / m in 1.9 h."""
    stocked.sight.select("b1")
    Typing({"depth": "2 cm"})
    stocked.feeds.feed()
    stocked.sight.select(None)
    form = stocked.inspector.plan.place
    for name, text in (("line_flow", "5 l/h / m"), ("weekly_depth", "25 mm"), ("tank", "1 m3")):
        form.fields[name].setFocus()
        QTest.keyClicks(form.fields[name], text)
        QTest.keyClick(form.fields[name], Key.Key_Return)
    stocked.sight.select("b1")
    lines = stocked.inspector.bed.supplies.text().replace("\u2009", " ").splitlines()
    assert lines[1:] == [
        "281 l a week, by drip in 1.9 h, drip lines take 150 l/h, a full tank lasts 24 days",
        "compost: 225 l",
        WATER,
    ]


def test_the_list_is_for_the_selected_bed_or_the_week_that_is_shown(stocked: MainWindow) -> None:
    """Pak choi stands in both beds: 154 seeds for the 120 of the tunnel; it is sown on 16 March, 24 days before."""
    choose(stocked, "Pak choi")
    page = stocked.ledger.supplies
    stocked.sight.select("b1")
    page.scope.setFocus()
    QTest.keyClick(page.scope, Key.Key_Down)
    assert ["Pak choi", "154 seeds"] in [row[:2] for row in cells(stocked)]
    for _turn in range(2):
        QTest.keyClick(page.scope, Key.Key_Down)
    stocked.sight.show_day(date(2027, 3, 18))
    assert ["Pak choi", "154 seeds"] in [row[:2] for row in cells(stocked)]
    assert "stakes" not in [row[0] for row in cells(stocked)]
    stocked.sight.show_day(date(2027, 3, 25))
    assert cells(stocked) == []


def test_the_list_is_for_the_days_that_are_typed(stocked: MainWindow) -> None:
    """Pak choi is sown on 16 March, 24 days before the tunnel is set out on 9 April; its stakes go in then."""
    choose(stocked, "Pak choi")
    page = stocked.ledger.supplies
    assert not page.days.isVisible()
    page.scope.setFocus()
    QTest.keyClick(page.scope, Key.Key_End)
    QTest.keyClick(page.scope, Key.Key_Up)
    QTest.keyClicks(page.days.begin, "2027-03-01")
    QTest.keyClick(page.days.begin, Key.Key_Return)
    QTest.keyClicks(page.days.end, "2027-03-31")
    QTest.keyClick(page.days.end, Key.Key_Return)
    assert [row[0] for row in cells(stocked)] == ["Seed", "Pak choi", "Raising", "trays of 84 cells"]
    page.days.end.selectAll()
    QTest.keyClicks(page.days.end, "2027-04-09")
    QTest.keyClick(page.days.end, Key.Key_Return)
    assert "stakes" in [row[0] for row in cells(stocked)]


@pytest.mark.parametrize(("typed", "says"), [("2027-02-30", "is no date"), ("2027-02-01", "is before 1 Mar 2027")])
def test_days_that_cannot_be_are_told_below_their_line_and_change_nothing(
    stocked: MainWindow, typed: str, says: str
) -> None:
    choose(stocked, "Pak choi")
    page = stocked.ledger.supplies
    page.scope.setCurrentIndex(page.scope.count() - 2)
    QTest.keyClicks(page.days.begin, "2027-03-01")
    QTest.keyClick(page.days.begin, Key.Key_Return)
    before = cells(stocked)
    QTest.keyClicks(page.days.end, typed)
    QTest.keyClick(page.days.end, Key.Key_Return)
    assert says in page.days.end.complaint.text()
    assert page.days.last is None
    assert cells(stocked) == before


def test_the_list_is_copied_and_saved_as_a_table(
    stocked: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose(stocked, "Pak choi")
    stocked.registry.made("supply.copy").trigger()
    assert "  Pak choi: " in QApplication.clipboard().text()
    path = tmp_path / "list.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(path), ""))
    stocked.registry.made("supply.save").trigger()
    assert path.read_text().splitlines()[0] == "group,what,needed,in store,to buy,cost"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(tmp_path / "no" / "list.csv"), ""))


def test_without_anything_chosen_it_is_said_what_would_help(stocked: MainWindow) -> None:
    stocked.ledger.supplies.table.setCurrentIndex(QModelIndex())
    stocked.supplies.store()
    assert "Choose a thing" in stocked.statusBar().currentMessage()
