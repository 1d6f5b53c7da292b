"""The dates in the ledger: what is to be done by week, each row leading to its planting."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QTreeWidgetItem

from gardenplot.drawing.date_list import by_week
from gardenplot.plan.edits import change_planting
from gardenplot.window.document import Document
from gardenplot.window.main import MainWindow
from tests.drawing.hand_worked import hand_worked


def item(window: MainWindow, *cells: str) -> QTreeWidgetItem:
    """The row of the dates that begins so."""
    table = window.ledger.dates
    for number in range(table.topLevelItemCount()):
        week = table.topLevelItem(number)
        assert week is not None
        for inner in map(week.child, range(week.childCount())):
            if inner is not None and tuple(inner.text(at) for at in range(len(cells))) == cells:
                return inner
    raise AssertionError(f"no row {cells}")


def click(window: MainWindow, row: QTreeWidgetItem) -> None:
    table = window.ledger.dates
    table.scrollToItem(row)
    at = table.visualItemRect(row).center()
    QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=at)


def test_weeks_are_headings_over_what_is_to_be_done_in_them(window: MainWindow, document: Document) -> None:
    document.start(hand_worked("s1"))
    window.registry.made("edit.dates").trigger()
    table = window.ledger.dates
    assert window.ledger.tabText(window.ledger.currentIndex()) == "Dates"
    weeks = [table.topLevelItem(number) for number in range(table.topLevelItemCount())]
    assert [(week.text(0), week.text(1), week.childCount()) for week in weeks if week is not None] == [
        (week.name, week.days, len(week.rows)) for week in by_week(document.plan)
    ]
    first = weeks[0]
    assert first is not None
    assert (first.text(0), first.text(1), first.font(0).bold()) == ("Week 10", "3 – 9 Mar 2025", True)
    assert item(window, "Fri 11 Apr", "set out", "A Pak choi", "136 plants", "Tunnel, second bed").isHidden() is False


def test_a_row_leads_to_its_planting_on_its_day(window: MainWindow, document: Document) -> None:
    document.start(hand_worked("s1"))
    window.ledger.go_to(window.ledger.dates)
    click(window, item(window, "Fri 16 May", "ready to harvest", "B Kohlrabi"))
    assert (window.sight.planting, window.sight.day) == ("p2", date(2025, 5, 16))
    click(window, item(window, "Tue 18 Mar", "sow in trays", "A Pak choi"))
    assert (window.sight.planting, window.sight.day) == ("p1", date(2025, 4, 11))


def test_the_row_of_a_cover_leads_to_its_bed(window: MainWindow, document: Document) -> None:
    document.start(hand_worked("s2"))
    window.ledger.go_to(window.ledger.dates)
    click(window, item(window, "Wed 7 May", "cover on"))
    bed = document.plan.covers[0].bed
    assert (window.sight.bed, window.sight.planting, window.sight.day) == (bed, None, date(2025, 5, 7))


def test_an_edit_moves_what_follows_from_it(window: MainWindow, document: Document) -> None:
    document.start(hand_worked("s1"))
    window.ledger.go_to(window.ledger.dates)
    later = change_planting(document.plan, "p2", in_ground=date(2025, 4, 14))
    document.change("Later", later)
    assert item(window, "Mon 14 Apr", "set out", "B Kohlrabi").text(3) == "45 plants"
    assert item(window, "Mon 17 Mar", "sow in trays", "B Kohlrabi").text(3) == "58 seeds, 1 tray"
