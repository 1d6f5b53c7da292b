"""Columns of candidates beside one another, scrolled sideways while the headings of their measures stay."""

from functools import partial

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QScrollArea, QWidget

from gardenplot.window.candidate_column import CandidateColumn, MeasureHeadings, Shown, column_width, heights_of
from gardenplot.words import _


class CandidateColumns(QScrollArea):
    """One column is chosen at all times; `chosen` tells its number, `taken` and `put_away` what is asked for it."""

    chosen = Signal(int)
    taken = Signal()
    put_away = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        # Pictures of beds and their numbers, with the head at the left as in the drawing.
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self.columns: list[CandidateColumn] = []
        self._window = QWidget(self)
        self.headings = MeasureHeadings(self._window)
        inner = QWidget()
        self._row = QHBoxLayout(inner)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(4)
        self._row.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self._group = QButtonGroup(self)
        self._group.buttonToggled.connect(self._toggled)
        self.setWidget(inner)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(_("Candidates"))
        self.verticalScrollBar().valueChanged.connect(lambda value: self.headings.move(0, -value))

    @property
    def chosen_number(self) -> int:
        """The number of the chosen column, from 0."""
        return next(number for number, column in enumerate(self.columns) if column.isChecked())

    def show_columns(self, shown: list[Shown], chosen: int) -> None:
        """Show other columns, with one of them chosen and under the keyboard."""
        for column in self.columns:
            self._group.removeButton(column)
            self._row.removeWidget(column)
            column.hide()
            column.deleteLater()
        heights = heights_of(shown)
        self.columns = [self._made(number, each) for number, each in enumerate(shown)]
        for column in self.columns:
            column.show_words(column.shown, heights)
            column.show()
        self.headings.show_headings(shown[0].headings, heights)
        self._arrange()
        self.choose(chosen)

    def sizeHint(self) -> QSize:
        """Room for the whole height of the columns and for a few of them side by side."""
        bar = self.horizontalScrollBar().sizeHint().height()
        return QSize(self.headings.width() + 5 * column_width(), self.headings.height() + bar + 8)

    def choose(self, number: int) -> None:
        """Choose a column and bring it into sight sideways; what is read up and down stays where it is."""
        column, down = self.columns[number], self.verticalScrollBar()
        column.setChecked(True)
        column.setFocus(Qt.FocusReason.OtherFocusReason)
        self._row.activate()
        at = down.value()
        self.ensureWidgetVisible(column, 4, 0)
        down.setValue(at)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def _made(self, number: int, shown: Shown) -> CandidateColumn:
        column = CandidateColumn(shown, self)
        column.moved.connect(partial(self._move, number))
        column.taken.connect(self.taken)
        column.put_away.connect(self.put_away)
        self._group.addButton(column, number)
        self._row.addWidget(column)
        return column

    def _move(self, number: int, step: int) -> None:
        self.choose(max(0, min(number + step, len(self.columns) - 1)))

    def _toggled(self, column: CandidateColumn, checked: bool) -> None:
        if checked:
            self.chosen.emit(self._group.id(column))

    def _arrange(self) -> None:
        """Give the headings the strip left of the columns."""
        wide = self.headings.width()
        self.setViewportMargins(wide, 0, 0, 0)
        inside = self.contentsRect()
        self._window.setGeometry(inside.left(), inside.top(), wide, self.viewport().height())
