"""A table that is shown anew shows just what one made for it would."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QApplication, QListWidget, QTreeWidgetItem

from gardenplot.window.main import MainWindow
from gardenplot.window.tables import Table, TableRow
from tests.window.painted import Painted

words = st.sampled_from(("", "A", "leek", "12", "a much longer cell than the others"))
cells = st.tuples(words, words)
inner = st.lists(st.builds(TableRow, cells, words), max_size=3).map(tuple)
_AROUND = 3
"""Pixels that a cell keeps free on both sides of its words."""
rows = st.lists(st.builds(TableRow, cells, words, inner, st.booleans(), st.booleans()), max_size=4)


def shown(table: Table) -> list[object]:
    """All that can be seen of a table, row by row."""
    return [_seen(table, item) for number in range(table.topLevelItemCount()) if (item := table.topLevelItem(number))]


def _seen(table: Table, item: QTreeWidgetItem) -> object:
    looks = [(item.text(at), item.font(at).bold(), item.foreground(at).color().name()) for at in range(2)]
    sides = [item.textAlignment(at) for at in range(2)]
    children = [_seen(table, child) for number in range(item.childCount()) if (child := item.child(number))]
    return looks, sides, table.key_of(item), children, item.isExpanded() or not children


@given(st.lists(rows, min_size=1, max_size=5))
def test_whatever_was_shown_before_a_table_shows_its_rows(dressed: QApplication, turns: list[list[TableRow]]) -> None:
    assert dressed
    table = Table("Counts", ("crop", "plants"), (1,))
    for turn in turns:
        table.show_rows(turn)
    fresh = Table("Counts", ("crop", "plants"), (1,))
    fresh.show_rows(turns[-1])
    assert shown(table) == shown(fresh)
    widths = [(table.columnWidth(column), table.sizeHintForColumn(column)) for column in range(2)]
    assert all(width >= least for width, least in widths), widths


def test_a_row_that_stays_the_same_keeps_its_item_and_its_selection(dressed: QApplication) -> None:
    assert dressed
    table = Table("Counts", ("crop", "plants"), (1,))
    first, second = TableRow(("leek", "12")), TableRow(("kale", "8"))
    table.show_rows([first, second])
    kept = table.topLevelItem(1)
    assert kept is not None
    table.setCurrentItem(kept)
    table.show_rows([TableRow(("leek", "14")), second])
    assert table.topLevelItem(1) is kept
    assert table.currentItem() is kept


@pytest.mark.parametrize("lets_go", [False, True])
def test_what_is_chosen_stays_chosen_wherever_its_row_goes(dressed: QApplication, lets_go: bool) -> None:
    assert dressed
    table = Table("Orders", ("crop", "plants"), (1,))
    table.lets_go = lets_go
    leek, kale, chard = (TableRow((name, "12"), name) for name in ("leek", "kale", "chard"))
    table.show_rows([leek, kale])
    table.setCurrentIndex(table.model().index(1, 0))
    for rows in ([chard, leek, kale], [kale, chard], [TableRow(("kale", "14"), "kale")], [leek, chard, kale]):
        table.show_rows(rows)
        assert table.key_of(table.currentItem()) == "kale"
        assert [table.key_of(item) for item in table.selectedItems()] == ["kale"]
    table.show_rows([leek, chard, TableRow(("beet", "2"), "beet")])
    assert table.key_of(table.currentItem()) == (None if lets_go else "beet")
    assert bool(table.selectedItems()) is not lets_go


def test_the_row_that_has_changed_is_painted_anew_and_no_other(dressed: QApplication) -> None:
    assert dressed
    table, painted = Table("Counts", ("crop", "plants"), (1,)), Painted()
    rows = [TableRow((f"leek {number}", "12"), number) for number in range(6)]
    table.show_rows(rows)
    table.resize(400, 300)
    table.show()
    QApplication.processEvents()
    table.viewport().installEventFilter(painted)
    table.show_rows([*rows[:2], TableRow(("leek 2", "14"), 2), *rows[3:]])
    QApplication.processEvents()
    (seen,) = painted.rects
    changed = table.topLevelItem(2)
    assert changed is not None
    row = table.visualItemRect(changed)
    assert (seen.top(), seen.bottom()) == (row.top(), row.bottom())
    assert seen.left() <= table.columnViewportPosition(0)
    assert seen.right() >= table.columnViewportPosition(1) + table.columnWidth(1) - 1


@pytest.mark.parametrize("width", [300, 420, 900])
def test_the_last_column_wraps_so_that_all_of_it_is_read_without_scrolling(dressed: QApplication, width: int) -> None:
    table = Table("Findings", ("finding", "where", "what"))
    table.wrap_last()
    what = "rows 20 cm apart, the packet says 50 cm: plants have two fifths of their ground"
    table.show_rows([TableRow(("risk", "Corner bed", what)), TableRow(("note", "Corner bed", "short"))])
    table.resize(width, 200)
    table.show()
    dressed.processEvents()
    assert not table.horizontalScrollBar().isVisible()
    items = (table.topLevelItem(number) for number in range(2))
    heights = [table.visualItemRect(item).height() for item in items if item is not None]
    room = QRect(0, 0, table.columnWidth(2) - 2 * _AROUND, 1000)
    wanted = table.fontMetrics().boundingRect(room, Qt.TextFlag.TextWordWrap, what).height()
    assert heights[0] >= wanted
    assert (heights[0] > heights[1]) is (width < 900)
    table.close()


def test_in_a_narrow_window_the_tape_gives_way_and_the_plants_are_read(window: MainWindow) -> None:
    """They are right again where there is room: what is left of a bed is told whole."""
    counts = window.ledger.counts
    whole = counts.columnWidth(1)
    plants = sum(counts.columnWidth(at) for at in range(4))
    counts.resize(plants - 40, counts.height())
    assert sum(counts.columnWidth(at) for at in range(4)) <= counts.viewport().width()
    assert counts.columnWidth(1) < whole
    counts.resize(plants + 80, counts.height())
    assert counts.columnWidth(1) == whole


def test_rows_have_air_between_them(window: MainWindow) -> None:
    listed = QListWidget()
    listed.addItem("Tunnel, north")
    for one in (window.ledger.counts, listed):
        one.ensurePolished()
        assert one.sizeHintForRow(0) >= one.fontMetrics().height() + 2
