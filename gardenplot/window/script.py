"""Which way words are written: readings and Latin names keep their order in a window that runs from right to left."""

from unicodedata import bidirectional

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtWidgets import QApplication, QStyle, QStyledItemDelegate, QStyleOptionViewItem, QTreeWidget

_FROM_RIGHT, _FROM_LEFT = ("R", "AL"), ("L",)


def runs(words: str) -> Qt.LayoutDirection:
    """From which side words are read: that of their first letter, and from the left where there is none."""
    kinds = (bidirectional(letter) for letter in words)
    first = next((kind for kind in kinds if kind in (*_FROM_RIGHT, *_FROM_LEFT)), "L")
    return Qt.LayoutDirection.RightToLeft if first in _FROM_RIGHT else Qt.LayoutDirection.LeftToRight


def keep_order(table: QTreeWidget) -> None:
    """Let each cell of a table be written its own way; in a window that runs from the left they are already."""
    if QApplication.layoutDirection() == Qt.LayoutDirection.RightToLeft:
        table.setItemDelegate(_OwnWay(table))


class _OwnWay(QStyledItemDelegate):
    """Keeps the side that a cell stands at, and writes its words from the side that they are read from."""

    def initStyleOption(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> None:
        super().initStyleOption(option, index)
        option.displayAlignment = QStyle.visualAlignment(option.direction, option.displayAlignment)
        if QApplication.layoutDirection() == Qt.LayoutDirection.RightToLeft:
            option.direction = runs(option.text)


class Wrapped(_OwnWay):
    """Gives a cell as many lines as its words need in its column, which Qt does not ask for in a tree."""

    def __init__(self, table: QTreeWidget) -> None:
        super().__init__(table)
        self._table = table

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        option.rect = QRect(0, 0, self._table.columnWidth(index.column()), 1)
        return super().sizeHint(option, index)
