"""Which way words are written: readings and Latin names keep their order in a window that runs from right to left."""

from unicodedata import bidirectional

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, Qt
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
        option.direction = runs(option.text)
