"""A table that is shown anew at every edit and touches only the rows that have changed.

However long it is, a row out of sight is asked for nothing but the width of its words.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import zip_longest
from math import ceil

from attrs import frozen
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QBrush, QFont, QFontMetricsF
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTreeWidget, QTreeWidgetItem, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.window.fields import LARGE
from gardenplot.window.plain import as_is
from gardenplot.window.script import Wrapped, keep_order
from gardenplot.window.theme import colour, magnified, palette

_Role, _Side = Qt.ItemDataRole, Qt.AlignmentFlag
_TOP_LEFT, _MIDDLE_RIGHT = (_Side.AlignLeft | _Side.AlignTop).value, (_Side.AlignRight | _Side.AlignVCenter).value
_LONG = 24
"""Cells of more letters may lack room; their tip tells all of them."""
_EDGES = 8
"""Pixels of height round the rows of a table."""


@frozen(cache_hash=True)
class TableRow:
    """The cells of a row, what it is about, the rows it sums up; a grave one begins in bold, in the accent."""

    cells: tuple[str, ...]
    key: object = None
    inner: tuple["TableRow", ...] = ()
    bold: bool = False
    grave: bool = False

    def is_last(self, column: int) -> bool:
        """Whether a column is the last that it has a cell in."""
        return column == len(self.cells) - 1

    def is_bold(self, column: int, numbers: tuple[int, ...]) -> bool:
        """Whether a cell is bold: the first, and of a bold row the last one and the `numbers` too."""
        return (self.bold or self.grave) if column == 0 else self.bold and (self.is_last(column) or column in numbers)


class Line(QTreeWidgetItem):
    """The place of a row in a table; what the row holds is told when somebody looks at it."""

    def __init__(self, row: TableRow, depth: int = 0) -> None:
        super().__init__()
        self.row, self.depth = row, depth
        self.inner = [Line(one, depth + 1) for one in row.inner] if row.inner else []
        if self.inner:
            self.addChildren(self.inner)

    def data(self, column: int, role: int) -> object:
        row, table = self.row, self.treeWidget()
        if column >= len(row.cells) or not isinstance(table, Table):
            return super().data(column, role)
        match role:
            case _Role.DisplayRole:
                return row.cells[column]
            case _Role.ToolTipRole:
                return as_is(row.cells[column]) if len(row.cells[column]) > _LONG else None
            case _Role.TextAlignmentRole:
                return table.side_of(column)
            case _Role.FontRole:
                return _bold() if row.is_bold(column, table.numbers) else None
            case _Role.ForegroundRole:
                is_marked = row.grave and (column == 0 or row.is_last(column))
                return QBrush(colour(palette(), Ink.ACCENT)) if is_marked else None
            case _:
                return super().data(column, role)

    def _tell(self) -> None:
        """Tell the table that it is another row; Qt's own way tells nothing of an item that holds no cells itself."""
        table = self.treeWidget()
        if table is not None:
            first = table.indexFromItem(self, 0)
            table.model().dataChanged.emit(first, first.siblingAtColumn(table.columnCount() - 1), [])

    def become(self, row: TableRow) -> Iterator["Line"]:
        """Be the place of another row from now on; this line and those below it, as far as they are not as before."""
        before, self.row = self.row, row
        if row == before:
            return
        self._tell()
        yield self
        for line, inner, old in zip(self.inner, row.inner, before.inner, strict=False):
            if inner is not old:
                yield from line.become(inner)
        while len(self.inner) > len(row.inner):
            # One that is taken instead is kept with the others of its row until that goes, too.
            self.removeChild(self.inner.pop())
        added = [Line(one, self.depth + 1) for one in row.inner[len(self.inner) :]]
        self.inner += added
        self.addChildren(added)
        yield from _with_inner(added)


class Table(QTreeWidget):
    """Rows of words and whole numbers, perhaps with rows below them that are always shown; `numbers` are columns.

    Return or a double click in one of the columns that are `worked_out` is `asked`, elsewhere it is `wanted`. What is
    chosen stays chosen wherever its row moves; where that is gone a table that `lets_go` has none chosen.
    """

    asked, wanted = Signal(object), Signal(object)

    def __init__(
        self, name: str, columns: tuple[str, ...], numbers: tuple[int, ...] = (), parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.numbers: tuple[int, ...] = ()
        self._rows: tuple[TableRow, ...] = ()
        self._around: dict[tuple[int, int], int] = {}
        self.worked_out: frozenset[int] = frozenset()
        self.lets_go = False
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
        self.numbers, self._rows = numbers, ()
        self.setColumnCount(len(columns))
        self.setHeaderLabels(columns)
        for column in range(len(columns)):
            side = Qt.AlignmentFlag.AlignRight if column in numbers else Qt.AlignmentFlag.AlignLeft
            self.headerItem().setTextAlignment(column, side | Qt.AlignmentFlag.AlignVCenter)

    def show_rows(self, rows: Sequence[TableRow]) -> None:
        """Show these rows; where one is as before, nothing is done about it."""
        chosen = self.key_of(self.currentItem())
        before, self._rows = self._rows, tuple(rows)
        if before == self._rows:
            return
        anew: list[Line] = []
        for number, (row, old) in enumerate(zip(self._rows, before, strict=False)):
            if row is not old and isinstance(line := self.topLevelItem(number), Line):
                anew += line.become(row)
        for _number in range(len(self._rows), len(before)):
            self.takeTopLevelItem(len(self._rows))
        added = [Line(row) for row in self._rows[len(before) :]]
        self.addTopLevelItems(added)
        for line in added:
            line.setExpanded(True)
        self._widen([*anew, *_with_inner(added)], whole=not before)
        if chosen is not None and self.key_of(self.currentItem()) != chosen:
            self._go_after(chosen)

    def _go_after(self, chosen: object) -> None:
        """Choose what was chosen before where it stands now; where it is gone, what came in its place or nothing."""
        moved = next((number for number, row in enumerate(self._rows) if row.key == chosen), None)
        if moved is not None or self.lets_go:
            self.setCurrentIndex(self.model().index(-1 if moved is None else moved, 0))

    def _activate(self, item: QTreeWidgetItem, column: int) -> None:
        (self.asked if column in self.worked_out else self.wanted).emit(item)

    def key_of(self, item: QTreeWidgetItem | None) -> object:
        """What a row is about; None for no row."""
        return item.row.key if isinstance(item, Line) else None

    def side_of(self, column: int) -> int | None:
        """The side at which the cells of a column stand, as Qt counts it; None for the usual one."""
        if self.wordWrap():
            return _TOP_LEFT
        return _MIDDLE_RIGHT if column in self.numbers else None

    def _widen(self, anew: Iterable[Line], *, whole: bool) -> None:
        """Make columns wide enough for what is new in them; none gets narrower, so that nothing jumps."""
        self.ensurePolished()
        fitted = self.columnCount() - self.header().stretchLastSection()
        least = self.header().sectionSizeHint if whole else self.columnWidth
        widths = [least(column) for column in range(fitted)]
        alike = defaultdict[tuple[int, bool, bool], list[Line]](list)
        for line in anew:
            alike[line.depth, line.row.bold, line.row.grave].append(line)
        for lines in alike.values():
            cells = zip_longest(*(line.row.cells for line in lines), fillvalue="")
            for column, words in enumerate(cells):
                if column < fitted:
                    widths[column] = max(widths[column], self._room(lines, column, words, widths[column]))
        for column, width in enumerate(widths):
            self.setColumnWidth(column, width)

    def _room(self, lines: Sequence[Line], column: int, words: Sequence[str], has: int) -> int:
        """The width in pixels that a column needs for its words in lines as deep and as bold as one another.

        Qt takes its time to tell what a cell keeps free around its words, so it is asked once, and where the column
        `has` too little.
        """
        font = self.font()
        font.setBold(lines[0].row.is_bold(column, self.numbers))
        metrics, depth = QFontMetricsF(font), lines[0].depth
        widest = max(set(words), key=metrics.horizontalAdvance)
        taken = ceil(metrics.horizontalAdvance(widest))
        if taken + self._around.get((column, depth), (depth + 2) * self.indentation()) <= has:
            return has
        line = lines[words.index(widest)]
        room = self.sizeHintForIndex(self.indexFromItem(line, column)).width()
        room += 0 if column else depth * self.indentation()
        self._around[column, depth] = room - taken
        return room


def height_of(table: Table, rows: int) -> int:
    """The height in pixels in which so many rows of a table are in sight, and with large text a bar."""
    bar = table.horizontalScrollBar().sizeHint().height() if magnified() >= LARGE else 0
    return table.header().sizeHint().height() + rows * table.sizeHintForRow(0) + bar + _EDGES


@lru_cache(maxsize=1)
def _bold() -> QFont:
    font = QFont()
    font.setBold(True)
    return font


def _with_inner(lines: Iterable[Line]) -> Iterator[Line]:
    """Lines with those below them."""
    for line in lines:
        yield line
        if line.inner:
            yield from _with_inner(line.inner)
