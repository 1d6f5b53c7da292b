"""One candidate for a block as a column: its name, the head of the block to scale, and every measure in words."""

from collections.abc import Iterable

from attrs import frozen
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from gardenplot.drawing.bed import BedFigure
from gardenplot.drawing.measure_line import Cell
from gardenplot.drawing.style import Ink
from gardenplot.layout.candidate import Candidate
from gardenplot.window.painting import Scale, paint
from gardenplot.window.theme import colour, magnified, palette, widget_font
from gardenplot.words import _

PAD = 10
_PICTURE_PX, _BEFORE_PX = 104, 5
_NAME, _SMALL, _FIGURE, _WORDS = 14, 12, 14, 12
_WRAPPED = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


@frozen
class Shown:
    """What a column shows: a candidate, its words, and its bed drawn."""

    candidate: Candidate
    name: str
    reason: str
    best: str
    headings: tuple[str, ...]
    cells: tuple[Cell, ...]
    figure: BedFigure

    def says(self) -> str:
        """All of it in one sentence, for those who listen."""
        measures = (
            " ".join(part for part in (heading, cell.figure, cell.difference, cell.trouble) if part)
            for heading, cell in zip(self.headings, self.cells, strict=True)
        )
        return ", ".join(part for part in (self.name, self.reason, self.best, *measures) if part)


@frozen
class Heights:
    """How high the parts of all columns are in pixels, from the top: names, picture, each measure."""

    head: float
    picture: float
    rows: tuple[float, ...]

    @property
    def total(self) -> int:
        """The height of a column."""
        return round(self.head + self.picture + sum(self.rows) + PAD)


def column_width() -> int:
    """The width of a column, which grows with the system's text."""
    return round(190 * magnified())


def heights_of(columns: Iterable[Shown]) -> Heights:
    """The heights at which all columns have room for their words."""
    shown = tuple(columns)
    head = max(sum(_height(*one) for one in _head(each)) for each in shown) + 2 * PAD
    rows = zip(*(map(_cell_height, each.cells) for each in shown), strict=True)
    return Heights(head, _PICTURE_PX * min(magnified(), 1.5) + PAD, tuple(map(max, rows)))


def _room() -> float:
    return column_width() - 2 * PAD


def _head(shown: Shown) -> tuple[tuple[str, float, bool], ...]:
    """The lines above the picture: words, size, bold."""
    return (shown.name, _NAME, True), (shown.reason, _SMALL, False), (shown.best, _SMALL, True)


def _height(words: str, px: float, bold: bool = False) -> float:
    metrics = QFontMetricsF(widget_font(px, bold=bold))
    return metrics.boundingRect(QRectF(0, 0, _room(), 9999), _WRAPPED, words).height() if words else 0.0


def _cell_height(cell: Cell) -> float:
    line = QFontMetricsF(widget_font(_FIGURE, bold=True)).height()
    first = line if cell.figure or cell.difference else 0.0
    second = line if not _fit_one_line(cell) else 0.0
    return max(line, first + second + _height(trouble_words(cell), _WORDS, True)) + 9


def _fit_one_line(cell: Cell) -> bool:
    figure = QFontMetricsF(widget_font(_FIGURE, bold=_is_strong(cell))).horizontalAdvance(cell.figure)
    return figure + QFontMetricsF(widget_font(_WORDS)).horizontalAdvance(cell.difference) + 8 <= _room()


def _is_strong(cell: Cell) -> bool:
    """Numbers are set bold, unless they are those of now; words are not."""
    return cell.figure[:1].isdecimal() and not cell.same


def trouble_words(cell: Cell) -> str:
    """What is wrong, behind a sign."""
    return f"! {cell.trouble}" if cell.trouble else ""


class CandidateColumn(QAbstractButton):
    """Chosen by mouse or when the keyboard comes to it; `moved` asks for the next column, `taken` for this one."""

    moved = Signal(int)
    taken = Signal()
    put_away = Signal()

    def __init__(self, shown: Shown, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown = shown
        self._heights = Heights(0, 0, ())
        self.setCheckable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_words(self, shown: Shown, heights: Heights) -> None:
        """Show a candidate with the heights that all columns share."""
        self.shown, self._heights = shown, heights
        self.setAccessibleName(shown.says())
        self.setFixedSize(self.sizeHint())
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(column_width(), self._heights.total)

    def focusInEvent(self, event: QFocusEvent) -> None:
        self.setChecked(True)
        super().focusInEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self.setChecked(True)
            self.taken.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go from one column to the next, Home and End to the outer ones; Delete takes this one away."""
        far = 10_000
        steps: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Home: -far, Qt.Key.Key_End: far}
        step = steps.get(event.key())
        if step is not None:
            self.moved.emit(step)
        elif event.key() == Qt.Key.Key_Delete:
            self.put_away.emit()
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setLayoutDirection(self.layoutDirection())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        inks = palette()
        frame = QRectF(self.rect()).adjusted(1, 1, -1, -1)
        painter.setPen(QPen(colour(inks, Ink.ACCENT), 2) if self.isChecked() else Qt.PenStyle.NoPen)
        painter.setBrush(colour(inks, Ink.PAPER if self.isChecked() else Ink.PANEL))
        painter.drawRoundedRect(frame, 3, 3)
        self._paint_head(painter)
        self._paint_picture(painter)
        at = self._heights.head + self._heights.picture
        for cell, height in zip(self.shown.cells, self._heights.rows, strict=True):
            _rule(painter, PAD, self.width() - PAD, at)
            _paint_cell(painter, cell, at)
            at += height
        if self.hasFocus():
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(colour(inks, Ink.ACCENT), 1, Qt.PenStyle.DotLine))
            painter.drawRoundedRect(frame.adjusted(3, 3, -3, -3), 2, 2)
        painter.end()

    def _paint_head(self, painter: QPainter) -> None:
        at = float(PAD)
        for (words, px, bold), ink in zip(_head(self.shown), (Ink.INK, Ink.SECOND, Ink.GOOD), strict=True):
            at = _written(painter, words, at, px, bold, ink)

    def _paint_picture(self, painter: QPainter) -> None:
        """The head of the block with all the bed's width, as long as the column is wide."""
        figure, layout = self.shown.figure, self.shown.candidate.layout
        room = QRectF(PAD, self._heights.head, _room(), self._heights.picture - PAD)
        scale = room.height() / figure.width
        start = max(0.0, layout.start / 1e6 - _BEFORE_PX / scale)
        painter.save()
        painter.setClipRect(room.adjusted(0, -1, 0, 1))
        painter.translate(QPointF(room.left() - start * scale, room.top()))
        paint(painter, figure.unlabelled, Scale(scale, scale, start, start + room.width() / scale), palette())
        painter.restore()


def _rule(painter: QPainter, left: float, right: float, at: float) -> None:
    painter.setPen(QPen(colour(palette(), Ink.RULE), 1))
    painter.drawLine(QPointF(left, at), QPointF(right, at))


def _written(painter: QPainter, words: str, at: float, px: float, bold: bool, ink: Ink) -> float:
    """Words over the width of a column from `at` down; gives where they end."""
    height = _height(words, px, bold)
    painter.setFont(widget_font(px, bold=bold))
    painter.setPen(colour(palette(), ink))
    painter.drawText(QRectF(PAD, at, _room(), height + 1), _WRAPPED, words)
    return at + height


def _paint_cell(painter: QPainter, cell: Cell, top: float) -> None:
    line = QFontMetricsF(widget_font(_FIGURE, bold=True)).height()
    at = top + 4
    painter.setFont(widget_font(_FIGURE, bold=_is_strong(cell)))
    painter.setPen(colour(palette(), Ink.SECOND if cell.same else Ink.INK))
    middle = Qt.AlignmentFlag.AlignVCenter
    painter.drawText(QRectF(PAD, at, _room(), line), Qt.AlignmentFlag.AlignLeft | middle, cell.figure)
    if not _fit_one_line(cell):
        at += line
    painter.setFont(widget_font(_WORDS))
    painter.setPen(colour(palette(), Ink.INK if cell.worse else Ink.SECOND))
    painter.drawText(QRectF(PAD, at, _room(), line), Qt.AlignmentFlag.AlignRight | middle, cell.difference)
    if cell.figure or cell.difference:
        at += line
    _written(painter, trouble_words(cell), at, _WORDS, True, Ink.ACCENT)


class MeasureHeadings(QWidget):
    """What is measured, beside the columns, each heading at the height of its measure."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._headings: tuple[str, ...] = ()
        self._heights = Heights(0, 0, ())

    def show_headings(self, headings: tuple[str, ...], heights: Heights) -> None:
        """Show headings at the heights that the columns have."""
        self._headings, self._heights = headings, heights
        metrics = QFontMetricsF(widget_font(_WORDS))
        widest = max(metrics.horizontalAdvance(words) for words in (*headings, _scale_words()))
        self.setFixedSize(round(widest) + 2 * PAD, heights.total)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setLayoutDirection(self.layoutDirection())
        painter.setFont(widget_font(_WORDS))
        line = QFontMetricsF(widget_font(_FIGURE, bold=True)).height()
        at = self._heights.head
        self._write(painter, _scale_words(), at - 4, line)
        at += self._heights.picture
        for words, height in zip(self._headings, self._heights.rows, strict=True):
            _rule(painter, PAD, self.width(), at)
            self._write(painter, words, at, line)
            at += height
        painter.end()

    def _write(self, painter: QPainter, words: str, at: float, line: float) -> None:
        painter.setPen(colour(palette(), Ink.SECOND))
        place = QRectF(PAD, at + 4, self.width(), line)
        painter.drawText(place, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, words)


def _scale_words() -> str:
    return _("Head end, to scale")
