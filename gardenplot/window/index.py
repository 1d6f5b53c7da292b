"""The index of everything, as at the end of a book: typed words find actions, beds, plantings, fields and crops."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractListModel, QEvent, QModelIndex, QObject, QPersistentModelIndex, QPoint, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QListView, QVBoxLayout, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.gestures import sought
from gardenplot.window import index_lines
from gardenplot.window.index_delegate import IndexDelegate
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

AnyIndex = QModelIndex | QPersistentModelIndex
_WIDE, _DEEP = 820, 14
"""Pixels across and lines down, with text of the usual size, where the window has room for them."""
_WAYS: dict[int, int] = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -8, Qt.Key.Key_PageDown: 8}


class IndexModel(QAbstractListModel):
    """The lines that were found."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.lines: list[index_lines.IndexLine] = []

    def show_lines(self, lines: "list[index_lines.IndexLine]") -> None:
        """Show other lines."""
        self.beginResetModel()
        self.lines = lines
        self.endResetModel()

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.lines)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        line = self.lines[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return line.sought.name
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return line.spoken()
        if role == Qt.ItemDataRole.ToolTipRole:
            return as_is(line.spoken())
        return line if role == Qt.ItemDataRole.UserRole else None


class Index(QWidget):
    """Opens over the drawing; arrows choose a line, Return goes to it, Escape closes."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window = window
        self._lines: tuple[index_lines.IndexLine, ...] = ()
        self._before: QWidget | None = None
        self.line, self.list, self.none = QLineEdit(), QListView(), PlainLabel()
        self.line.setPlaceholderText(_("What to do, or a bed, a planting, a field, a crop"))
        self.line.setAccessibleName(_("Index of everything"))
        self.line.setClearButtonEnabled(True)
        self.list.setAccessibleName(_("What the index finds"))
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setUniformItemSizes(True)
        self.model = IndexModel(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(IndexDelegate(self.list))
        self.none.setWordWrap(True)
        self.none.setAlignment(Qt.AlignmentFlag.AlignLeading | Qt.AlignmentFlag.AlignTop)
        self.none.setContentsMargins(8, 12, 8, 12)
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 12, 12, 8)
        for part in (self.line, self.none, self.list):
            column.addWidget(part)
        self.line.textChanged.connect(self._seek)
        self.line.installEventFilter(self)
        self.list.clicked.connect(self._go)
        window.installEventFilter(self)
        self.hide()

    def open(self) -> None:
        """Open with nothing typed, or take the keyboard back where it is open."""
        if not self.isVisible():
            self._before = QApplication.focusWidget()
            self._lines = index_lines.index_lines(self._window)
            self.line.clear()
            self._seek("")
            self._settle()
            self.show()
            self.raise_()
        self.line.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def close_up(self) -> None:
        """Close, and give the keyboard back to what had it."""
        if self.isVisible():
            before = self._before
            # Were it hidden first, Qt would give the keyboard to the next field on the way.
            if before is not None and before.isVisible():
                before.setFocus(Qt.FocusReason.PopupFocusReason)
            else:
                self._window.views.take_keys()
            self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keys that the line has no use for go to the list; the window takes the index along when it is resized."""
        if watched is self._window and event.type() == QEvent.Type.Resize and self.isVisible():
            self._settle()
        if watched is self.line and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._press(event.key())
        if watched is self.line and event.type() == QEvent.Type.FocusOut and not _is_inside(self):
            self.hide()
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """A sheet of paper with a strong edge at the top, laid on the drawing."""
        painter, inks = QPainter(self), palette()
        painter.fillRect(self.rect(), colour(inks, Ink.INK))
        painter.fillRect(self.rect().adjusted(1, 3, -1, -1), colour(inks, Ink.PAPER))
        painter.end()

    def _press(self, key: int) -> bool:
        if key in _WAYS:
            row = self.list.currentIndex().row() + _WAYS[key]
            self._choose(max(0, min(row, self.model.rowCount() - 1)))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._go(self.list.currentIndex())
        elif key == Qt.Key.Key_Escape:
            self.close_up()
        else:
            return key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab)
        return True

    def _seek(self, text: str) -> None:
        found = sought.seek([line.sought for line in self._lines], text)
        self.model.show_lines([self._lines[number] for number in found])
        self._choose(0)
        none = _(
            "Nothing here is called “{text}”. Fewer letters find more; a menu's name finds all that stands in it."
        )
        self.none.setText(none.format(text=text[:60]))
        self.none.setVisible(not found)
        self.list.setVisible(bool(found))

    def _choose(self, row: int) -> None:
        """Choose a line, and have a screen reader say it as though the list had the keyboard."""
        chosen = self.model.index(row)
        self.list.setCurrentIndex(chosen)
        self.list.scrollTo(chosen)
        line = chosen.data(Qt.ItemDataRole.UserRole)
        self.line.setAccessibleDescription(
            line.spoken() if isinstance(line, index_lines.IndexLine) else self.none.text()
        )

    def _go(self, index: QModelIndex) -> None:
        line = index.data(Qt.ItemDataRole.UserRole)
        if not isinstance(line, index_lines.IndexLine):
            return
        if line.reason:
            self._window.tell(line.reason)
            return
        self.close_up()
        line.goes()

    def _settle(self) -> None:
        """Lie below the header, over the middle of the window."""
        times, room = magnified(), self._window.size()
        below = self._window.views.mapTo(self._window, QPoint(0, 0)).y()
        width = min(round(_WIDE * times), room.width() - 48)
        height = min(round((_DEEP * 28 + 60) * times), room.height() - below - 48)
        self.setGeometry((room.width() - width) // 2, below, width, height)


def _is_inside(index: QWidget) -> bool:
    focused = QApplication.focusWidget()
    return focused is None or index.isAncestorOf(focused)
