"""A table that is shown anew at every edit and touches only the rows that have changed."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest

from attrs import frozen
from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QBrush, QFontMetrics
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.window.plain import as_is
from gardenplot.window.script import Wrapped, keep_order
from gardenplot.window.theme import colour, palette

_KEY = Qt.ItemDataRole.UserRole
_MARGIN = 16
_LONG = 24
"""Cells of more letters may lack room; their tip tells all of them."""


@frozen(cache_hash=True)
class TableRow:
    """The cells of a row, what it is about, the rows it sums up; a grave one begins in bold, in the accent."""

    cells: tuple[str, ...]
    key: object = None
    inner: tuple["TableRow", ...] = ()
    bold: bool = False
    grave: bool = False


class Table(QTreeWidget):
    """Rows of words and whole numbers, perhaps with rows below them that are always shown; `numbers` are columns.

    Return or a double click in one of the columns that are `worked_out` is `asked`, elsewhere it is `wanted`.
    """

    asked, wanted = Signal(object), Signal(object)

    def __init__(
        self, name: str, columns: tuple[str, ...], numbers: tuple[int, ...] = (), parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._numbers: tuple[int, ...] = ()
        self._rows: tuple[TableRow, ...] = ()
        self.worked_out: frozenset[int] = frozenset()
        self.itemActivated.connect(self._activate)
        self.setAccessibleName(name)
        keep_order(self)
        self.show_columns(columns, numbers)
        self.setUniformRowHeights(True)
        self.setRootIsDecorated(False)
        self.setItemsExpandable(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        self.header().setStretchLastSection(False)

    def wrap_last(self) -> None:
        """Let the last column take the room that is left and wrap its words, so that all can be read at once."""
        self.setUniformRowHeights(False)
        self.setWordWrap(True)
        self.header().setStretchLastSection(True)
        self.setItemDelegateForColumn(self.columnCount() - 1, Wrapped(self))
        # Qt keeps the height of a row that was wrapped for another width.
        self.header().sectionResized.connect(self.scheduleDelayedItemsLayout)

    def show_columns(self, columns: tuple[str, ...], numbers: tuple[int, ...] = ()) -> None:
        """Show these columns, without rows."""
        self.clear()
        self._numbers, self._rows = numbers, ()
        self.setColumnCount(len(columns))
        self.setHeaderLabels(columns)
        for column in range(len(columns)):
            side = Qt.AlignmentFlag.AlignRight if column in numbers else Qt.AlignmentFlag.AlignLeft
            self.headerItem().setTextAlignment(column, side | Qt.AlignmentFlag.AlignVCenter)

    def show_rows(self, rows: Sequence[TableRow]) -> None:
        """Show these rows; where one is as before, nothing is done about it."""
        before, self._rows = self._rows, tuple(rows)
        if before == self._rows:
            return
        for number, row in enumerate(self._rows[: len(before)]):
            item = self.topLevelItem(number)
            if item is not None and row is not before[number]:
                self._show(item, row, before[number])
        for _number in range(len(self._rows), len(before)):
            self.takeTopLevelItem(len(self._rows))
        added = [self._made(row) for row in self._rows[len(before) :]]
        self.addTopLevelItems(added)
        for item in added:
            item.setExpanded(True)
        self._widen(before, whole=not before)

    def changeEvent(self, event: QEvent) -> None:
        """Grave rows take on the accent of a light or a dark screen when the system goes from one to the other."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange):
            for number, row in enumerate(self._rows):
                item = self.topLevelItem(number) if row.grave else None
                if item is not None:
                    self._dress(item, row)

    def _activate(self, item: QTreeWidgetItem, column: int) -> None:
        (self.asked if column in self.worked_out else self.wanted).emit(item)

    def key_of(self, item: QTreeWidgetItem | None) -> object:
        """What a row is about; None for no row."""
        return item.data(0, _KEY) if item is not None else None

    def _widen(self, before: tuple[TableRow, ...], *, whole: bool) -> None:
        """Make columns wide enough for what is new in them; none gets narrower, so that nothing jumps."""
        fitted = self.columnCount() - self.header().stretchLastSection()
        if whole:
            for column in range(fitted):
                self.resizeColumnToContents(column)
            return
        bold, plain = self._bold, self.fontMetrics()
        for row, old in _changed(self._rows, before):
            metrics = bold if row.bold or row.grave else plain
            had_room = old.cells if old is not None and (old.bold, old.grave) == (row.bold, row.grave) else ()
            for column, cell in enumerate(row.cells[:fitted]):
                if cell in had_room[column : column + 1]:
                    continue
                needed = metrics.horizontalAdvance(cell) + _MARGIN + (0 if column else self.indentation())
                if self.columnWidth(column) < needed:
                    self.setColumnWidth(column, needed)

    @property
    def _bold(self) -> QFontMetrics:
        font = self.font()
        font.setBold(True)
        return QFontMetrics(font)

    def _made(self, row: TableRow) -> QTreeWidgetItem:
        item = QTreeWidgetItem(list(row.cells))
        for column in self._numbers:
            item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if self.wordWrap():
            for column in range(len(row.cells)):
                item.setTextAlignment(column, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        item.setData(0, _KEY, row.key)
        for column, cell in enumerate(row.cells):
            if len(cell) > _LONG:
                item.setToolTip(column, as_is(cell))
        if row.bold or row.grave:
            self._dress(item, row)
        item.addChildren([self._made(inner) for inner in row.inner])
        return item

    def _show(self, item: QTreeWidgetItem, row: TableRow, before: TableRow) -> None:
        """Show a row in an item that showed another one before."""
        if row == before:
            return
        item.setData(0, _KEY, row.key)
        for column, (cell, was) in enumerate(zip_longest(row.cells, before.cells, fillvalue="")):
            if cell != was:
                item.setText(column, cell)
                item.setToolTip(column, as_is(cell) if len(cell) > _LONG else "")
        if (row.bold, row.grave) != (before.bold, before.grave):
            self._dress(item, row)
        old = before.inner
        children = [item.child(number) for number in range(len(old))]
        for child, inner, other in zip(children, row.inner, old, strict=False):
            if child is not None:
                self._show(child, inner, other)
        for _number in range(len(row.inner), len(old)):
            # One that is taken instead is kept with the others of its row until that goes, too.
            gone = item.child(len(row.inner))
            if gone is not None:
                item.removeChild(gone)
        item.addChildren([self._made(inner) for inner in row.inner[len(old) :]])

    def _dress(self, item: QTreeWidgetItem, row: TableRow) -> None:
        font, last = item.font(0), len(row.cells) - 1
        font.setBold(row.bold)
        for column in (last, *self._numbers):
            item.setFont(column, font)
        font.setBold(row.bold or row.grave)
        item.setFont(0, font)
        for column in (0, last):
            item.setForeground(column, QBrush(colour(palette(), Ink.ACCENT)) if row.grave else QBrush())


def _changed(rows: Sequence[TableRow], before: Sequence[TableRow]) -> Iterator[tuple[TableRow, TableRow | None]]:
    """The rows that are not as before, with the rows below them, each with the one that was in its place."""
    for row, old in zip_longest(rows, before):
        if row is not None and row is not old:
            yield row, old
            yield from _changed(row.inner, old.inner if old is not None else ())
