"""A table that is shown anew shows just what one made for it would."""

from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtWidgets import QApplication, QTreeWidgetItem

from gardenplot.window.tables import Table, TableRow

words = st.sampled_from(("", "A", "leek", "12", "a much longer cell than the others"))
cells = st.tuples(words, words)
inner = st.lists(st.builds(TableRow, cells, words), max_size=3).map(tuple)
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
