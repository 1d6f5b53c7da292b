"""The shelf: the crops of the plan and of the catalogue, each with its spacing as a true-scale swatch."""

from collections.abc import Sequence
from functools import lru_cache

from PySide6.QtCore import (
    QAbstractListModel,
    QItemSelectionModel,
    QMimeData,
    QModelIndex,
    QPersistentModelIndex,
    QPoint,
    QRect,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QDrag, QFocusEvent, QFont, QFontMetricsF, QKeyEvent, QPainter, QPen, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemView,
    QAbstractScrollArea,
    QLineEdit,
    QListView,
    QPushButton,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from gardenplot.drawing.planting_words import source_words, spacing_words
from gardenplot.drawing.style import Ink
from gardenplot.drawing.swatch import SWATCH_SCALE, swatch
from gardenplot.plan import Crop
from gardenplot.plan.catalogue import found_crops
from gardenplot.units import Units
from gardenplot.window.document import Document
from gardenplot.window.mime import CROP, with_crop
from gardenplot.window.panel_switch import bring_forward
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.script import runs
from gardenplot.window.theme import colour, drawing_font, magnified, palette
from gardenplot.words import _

_SWATCH = QSize(62, 44)
_PX_PER_MM = 96 / 25.4 / SWATCH_SCALE
"""Swatches are to scale on a screen of 96 dots an inch."""

_WRAPPED = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap

_BY_KEY = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)

AnyIndex = QModelIndex | QPersistentModelIndex
_Line = tuple[str, QFont, float]
"""Words, their font, and their height in pixels."""


class ShelfModel(QAbstractListModel):
    """Crops that can be carried to a bed: the plan's own first."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.crops: tuple[Crop, ...] = ()
        self._spacings: tuple[str, ...] = ()
        self.units = Units.METRIC

    def show_crops(self, crops: tuple[Crop, ...], units: Units) -> None:
        """Show other crops, their spacing in units of the plan."""
        if (crops, units) != (self.crops, self.units):
            self.beginResetModel()
            self.crops, self.units = crops, units
            self._spacings = tuple(spacing_words(crop, units) for crop in crops)
            self.endResetModel()

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        return 0 if parent is not None and parent.isValid() else len(self.crops)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        crop = self.crops[index.row()]
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{crop.name}, {self._spacings[index.row()]}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return as_is(source_words(crop))
        return crop if role == Qt.ItemDataRole.UserRole else None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        drag = Qt.ItemFlag.ItemIsDragEnabled if index.isValid() else Qt.ItemFlag.NoItemFlags
        return super().flags(index) | drag

    def mimeTypes(self) -> list[str]:
        return [CROP]

    def mimeData(self, indexes: Sequence[QModelIndex]) -> QMimeData:
        return with_crop(self.crops[indexes[0].row()])


class CropDelegate(QStyledItemDelegate):
    """Paints a crop: swatch, name, spacing."""

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        view = option.widget
        width = view.viewport().width() if isinstance(view, QAbstractScrollArea) else 170
        room = _room(width)
        lines = sum(height for _words, _font, height in _lines(index, room))
        return QSize(120, round(max(_SWATCH.height(), lines) + 16))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        crop = index.data(Qt.ItemDataRole.UserRole)
        state = option.state
        rect: QRect = option.rect
        inks = palette()
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if state & QStyle.StateFlag.State_Selected:
            focused = bool(state & QStyle.StateFlag.State_HasFocus)
            painter.setPen(QPen(colour(inks, Ink.ACCENT if focused else Ink.EDGE), 2 if focused else 1))
            painter.setBrush(colour(inks, Ink.PAPER))
            painter.drawRoundedRect(QRectF(rect).adjusted(3, 3, -3, -3), 4, 4)
        swatch_frame = QRect(QPoint(rect.left() + 7, rect.top() + 8), _SWATCH)
        paint_swatch(painter, crop, QStyle.visualRect(option.direction, rect, swatch_frame))
        words_frame = QRect(swatch_frame.right() + 9, swatch_frame.top(), _room(rect.width()), rect.height())
        words_frame = QStyle.visualRect(option.direction, rect, words_frame)
        side, top = QStyle.visualAlignment(option.direction, Qt.AlignmentFlag.AlignLeft), float(words_frame.top())
        lines = _lines(index, words_frame.width())
        for (words, font, height), ink in zip(lines, (Ink.INK, Ink.SECOND), strict=True):
            painter.setFont(font)
            painter.setPen(colour(inks, ink))
            painter.setLayoutDirection(runs(words))
            line = QRectF(words_frame.left(), top, words_frame.width(), height)
            painter.drawText(line, side.value | Qt.TextFlag.TextWordWrap, words)
            top += height
        painter.restore()


def _room(width: int) -> int:
    """How wide the words beside a swatch may be."""
    return max(40, width - _SWATCH.width() - 20)


def _lines(index: AnyIndex, room: int) -> tuple[_Line, ...]:
    """A crop's name and its spacing."""
    name: str = index.data(Qt.ItemDataRole.UserRole).name
    spacing = index.data(Qt.ItemDataRole.DisplayRole).removeprefix(f"{name}, ")
    return _set(name, spacing, room, magnified())


@lru_cache(maxsize=4096)
def _set(name: str, spacing: str, room: int, times: float) -> tuple[_Line, ...]:
    """Two lines of words in a width; the second is broken at its dot where it has no room."""
    bold, plain = drawing_font(13 * times, bold=True), drawing_font(12 * times)
    if QFontMetricsF(plain).horizontalAdvance(spacing) > room:
        spacing = spacing.replace(" · ", "\n")
    return tuple((words, font, _height(words, font, room)) for words, font in ((name, bold), (spacing, plain)))


def _height(words: str, font: QFont, room: int) -> float:
    return QFontMetricsF(font).boundingRect(QRectF(0, 0, room, 9999), _WRAPPED, words).height() + 1


def paint_swatch(painter: QPainter, crop: Crop, frame: QRect) -> None:
    """A crop's spacing as dots on soil, to scale."""
    inks = palette()
    painter.save()
    painter.setPen(QPen(colour(inks, Ink.RULE), 1))
    painter.setBrush(colour(inks, Ink.SOIL))
    painter.drawRect(frame)
    painter.setClipRect(frame)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(inks, Ink.INK, 0.8))
    width, height = frame.width() / _PX_PER_MM, frame.height() / _PX_PER_MM
    for x, y, radius in swatch(crop, width, height):
        size = max(1.1, radius * _PX_PER_MM)
        centre_x, centre_y = frame.left() + x * _PX_PER_MM, frame.top() + y * _PX_PER_MM
        painter.drawEllipse(QRectF(centre_x - size, centre_y - size, 2 * size, 2 * size))
    painter.restore()


class CropList(QListView):
    """The list that crops are dragged from; Enter places one without the mouse."""

    chosen = Signal(object)

    def startDrag(self, _actions: Qt.DropAction) -> None:
        indexes = self.selectedIndexes()
        if not indexes:
            return
        crop = indexes[0].data(Qt.ItemDataRole.UserRole)
        picture = QPixmap(_SWATCH)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        paint_swatch(painter, crop, QRect(QPoint(0, 0), _SWATCH - QSize(1, 1)))
        painter.end()
        drag = QDrag(self)
        drag.setMimeData(with_crop(crop))
        drag.setPixmap(picture.scaledToHeight(22, Qt.TransformationMode.SmoothTransformation))
        drag.setHotSpot(QPoint(-6, -6))
        drag.exec(Qt.DropAction.CopyAction)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Choose the first crop where none is chosen and the keyboard comes: Qt would go by it without showing it."""
        super().focusInEvent(event)
        if event.reason() in _BY_KEY and self.currentIndex().isValid() and not self.selectedIndexes():
            self.selectionModel().select(self.currentIndex(), QItemSelectionModel.SelectionFlag.ClearAndSelect)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.chosen.emit(self.currentIndex().data(Qt.ItemDataRole.UserRole))
            return
        super().keyPressEvent(event)


class CropSearch(QLineEdit):
    """The line in which a crop is looked for; from it Enter and Down lead to what was found."""

    done = Signal()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Down):
            self.done.emit()
            return
        super().keyPressEvent(event)


class Shelf(QWidget):
    """Search on top, crops below it, and the way to enter one from its packet."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.search = CropSearch()
        self.search.setPlaceholderText(_("Find a crop"))
        self.search.setAccessibleName(_("Find a crop"))
        self.search.setClearButtonEnabled(True)
        self.list = CropList()
        self.list.setAccessibleName(_("Crops; Enter places one in the selected bed"))
        self.model = ShelfModel(self)
        self.list.setModel(self.model)
        self.list.setItemDelegate(CropDelegate(self.list))
        self.list.setDragEnabled(True)
        self.list.setDragDropMode(QAbstractItemView.DragDropMode.DragOnly)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setWordWrap(True)  # rows are measured anew when the list gets wider or narrower
        self.list.setResizeMode(QListView.ResizeMode.Adjust)
        self.list.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.scale = PlainLabel(_("swatches 1 : {scale}").format(scale=SWATCH_SCALE))
        self.from_packet = QPushButton(_("From a seed packet …"))
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 8, 4, 8)
        for part in (self.search, self.list, self.scale, self.from_packet):
            column.addWidget(part)
        self.search.textChanged.connect(self.refresh)
        self.search.done.connect(self._go_to_found)
        document.changed.connect(self.refresh)
        # What was looked for belongs to the plan that was open; in another one it may hide all crops.
        document.opened.connect(self.search.clear)
        self.setMinimumWidth(max(round(190 * min(magnified(), 1.3)), self.minimumSizeHint().width()))

    def refresh(self) -> None:
        """Show the crops that the search finds."""
        current = self.list.currentIndex().data(Qt.ItemDataRole.UserRole)
        crops, _own = found_crops(self._document.plan, self.search.text())
        self.model.show_crops(crops, self._document.plan.place.units)
        if current in crops:
            self.list.setCurrentIndex(self.model.index(crops.index(current)))

    def choose(self, crop: Crop) -> None:
        """Choose a crop in the list, with the keyboard on it; a search that hides it is over."""
        if crop not in self.model.crops:
            self.search.clear()
        if crop in self.model.crops:
            self.list.setCurrentIndex(self.model.index(self.model.crops.index(crop)))
        bring_forward(self)
        self.list.setFocus()

    def _go_to_found(self) -> None:
        """Lead the keyboard to the crops that are found, the first of them chosen where none is."""
        if self.model.crops:
            self.list.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def chosen(self) -> Crop | None:
        """The crop that is chosen."""
        crop = self.list.currentIndex().data(Qt.ItemDataRole.UserRole)
        return crop if isinstance(crop, Crop) else None
