"""How a line of the index is painted: kind in the margin, name, dots that lead to its place, keys at the end."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from gardenplot.drawing.style import Ink, Palette
from gardenplot.window import index_lines
from gardenplot.window.theme import colour, magnified, palette, widget_font

AnyIndex = QModelIndex | QPersistentModelIndex
_ROW, _MARGIN, _KEYS, _GAP = 28, 74, 112, 8
"""Pixels with text of the usual size: height, the margin of the kinds, the column of the keys, between two texts."""
_LEAST_DOTS = 24


class IndexDelegate(QStyledItemDelegate):
    """Paints a line; what cannot be done now is in the second ink, with the reason before its place."""

    def sizeHint(self, _option: QStyleOptionViewItem, _index: AnyIndex) -> QSize:
        return QSize(200, round(_ROW * magnified()))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        line = index.data(Qt.ItemDataRole.UserRole)
        if not isinstance(line, index_lines.IndexLine):
            return
        inks, rect = palette(), QRectF(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, colour(inks, Ink.SOIL))
            painter.fillRect(QRectF(rect.left(), rect.top(), 3, rect.height()), colour(inks, Ink.INK))
        if _is_first_of_kind(index, line):
            _text(painter, inks, rect.adjusted(_GAP, 0, 0, 0), line.kind, widget_font(11), Ink.SECOND)
        times = magnified()
        keys = QRectF(rect.right() - (_KEYS + _GAP) * times, rect.top(), _KEYS * times, rect.height())
        _text(painter, inks, keys, line.keys, widget_font(12), Ink.SECOND, Qt.AlignmentFlag.AlignRight)
        middle = QRectF(rect)
        middle.setLeft(rect.left() + _MARGIN * times)
        middle.setRight(keys.left() - _GAP)
        _paint_named(painter, inks, middle, line)
        painter.restore()


def _paint_named(painter: QPainter, inks: Palette, room: QRectF, line: "index_lines.IndexLine") -> None:
    """The name, dots, and at the end where it stands, before that why it cannot be done."""
    font, plain = widget_font(13, bold=not line.reason), widget_font(12)
    ink, last = Ink.SECOND if line.reason else Ink.INK, line.sought.where
    if line.reason:
        last = f"{line.reason}   {last}"
    name = _fitted(line.sought.name, font, room.width() * 0.62)
    wide = QFontMetricsF(font).horizontalAdvance(name)
    where = _fitted(last, plain, room.width() - wide - _LEAST_DOTS - 2 * _GAP)
    _text(painter, inks, room, name, font, ink)
    _text(painter, inks, room, where, plain, Ink.SECOND, Qt.AlignmentFlag.AlignRight)
    dots = QPen(colour(inks, Ink.EDGE), 1.2)
    dots.setDashPattern([1, 4])
    painter.setPen(dots)
    base = room.center().y() + 4 * magnified()
    end = room.right() - QFontMetricsF(plain).horizontalAdvance(where) - _GAP
    painter.drawLine(round(room.left() + wide + _GAP), round(base), round(end), round(base))


def _text(
    painter: QPainter,
    inks: Palette,
    room: QRectF,
    words: str,
    font: QFont,
    ink: Ink,
    side: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
) -> None:
    painter.setFont(font)
    painter.setPen(colour(inks, ink))
    painter.drawText(room, side | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine, words)


def _fitted(words: str, font: QFont, width: float) -> str:
    return QFontMetricsF(font).elidedText(words, Qt.TextElideMode.ElideRight, max(0.0, width))


def _is_first_of_kind(index: AnyIndex, line: "index_lines.IndexLine") -> bool:
    before = index.model().index(index.row() - 1, 0).data(Qt.ItemDataRole.UserRole) if index.row() else None
    return not isinstance(before, index_lines.IndexLine) or before.kind != line.kind
