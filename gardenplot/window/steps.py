"""The steps of undo as a list: each by its name, the one that is reached, and the one that was saved."""

from PySide6.QtCore import QAbstractListModel, QModelIndex, QPersistentModelIndex, QSignalBlocker, QSize, Qt
from PySide6.QtGui import QBrush, QFont, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QListView, QWidget

from gardenplot.drawing.style import Ink
from gardenplot.window.document import Document
from gardenplot.window.theme import colour, magnified, palette
from gardenplot.words import _

AnyIndex = QModelIndex | QPersistentModelIndex
_ROW = 26


class StepsModel(QAbstractListModel):
    """Row 0 is the plan as it was opened, row n the plan after the nth step."""

    def __init__(self, document: Document, parent: QWidget) -> None:
        super().__init__(parent)
        self._document, self._stack = document, document.stack
        self._stack.indexChanged.connect(self.refresh)
        self._stack.cleanChanged.connect(self.refresh)
        document.opened.connect(self.refresh)
        document.saved.connect(self.refresh)

    def refresh(self) -> None:
        """Read the steps anew."""
        self.beginResetModel()
        self.endResetModel()

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else self._stack.count() + 1

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        row, now = index.row(), self._stack.index()
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return self._words(row)
            case Qt.ItemDataRole.AccessibleTextRole:
                state = _("now") if row == now else _("done") if row < now else _("taken back")
                return f"{self._words(row)}, {state}"
            case Qt.ItemDataRole.ForegroundRole if row > now:
                return QBrush(colour(palette(), Ink.SECOND))
            case Qt.ItemDataRole.FontRole:
                font = QFont()
                font.setBold(row == now)
                font.setItalic(row > now)
                return font
            case Qt.ItemDataRole.SizeHintRole:
                return QSize(100, round(_ROW * magnified()))
        return None

    def _words(self, row: int) -> str:
        """The name of a step, with the word that it is what stands in the file."""
        name = self._stack.text(row - 1) if row else _("The plan as it was opened")
        is_kept = row == self._stack.cleanIndex() and self._document.path is not None
        return _("{step}  ·  saved").format(step=name) if is_kept else name


class Steps(QListView):
    """A click, or Return, goes to the plan as it was after a step; later steps stay in the list until a new one."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._stack = document.stack
        self.setAccessibleName(_("Steps; Enter goes back or forward to one"))
        self.setViewportMargins(4, 0, 0, 0)
        self.setUniformItemSizes(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setModel(StepsModel(document, self))
        self.clicked.connect(self._go)
        self.model().modelReset.connect(self._show_reached)
        self.setMinimumWidth(round(160 * min(magnified(), 1.4)))
        self._show_reached()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._go(self.currentIndex())
            return
        super().keyPressEvent(event)

    def _go(self, index: QModelIndex) -> None:
        if index.isValid():
            self._stack.setIndex(index.row())

    def _show_reached(self) -> None:
        blocker = QSignalBlocker(self.selectionModel())
        self.setCurrentIndex(self.model().index(self._stack.index(), 0))
        del blocker
        self.scrollTo(self.currentIndex())
