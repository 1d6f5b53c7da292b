"""A trouble and its remedies: by how much, a table of differences, and of the one looked at its price and stakes."""

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QScrollArea, QVBoxLayout, QWidget

from gardenplot.drawing.opened import Opened
from gardenplot.drawing.remedies import Remedy, Trouble
from gardenplot.units.figures import THIN
from gardenplot.window.fields import LARGE
from gardenplot.window.labels import words
from gardenplot.window.tables import Table, TableRow
from gardenplot.window.theme import magnified, widget_font
from gardenplot.words import _

_ACROSS, _DOWN = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_BESIDE = 1100
"""From this width in pixels on, with text of the usual size, the price of a remedy stands beside the table."""
_WIDE, _HIGH = 1376, 300
"""The size in pixels that it would like to have, with text of the usual size."""


class RemedyTable(Table):
    """Rows of differences; `looked` tells the number of the one under the mouse, else of the one chosen.

    A double click takes the one whose name is clicked; on a difference it asks how that came about.
    """

    looked = Signal(object)
    taken, explained = Signal(), Signal()

    def __init__(self) -> None:
        super().__init__(_("What can be done"), ("",))
        self.setMouseTracking(True)
        self.itemEntered.connect(lambda item: self.looked.emit(self.key_of(item)))
        self.currentItemChanged.connect(lambda item: self.looked.emit(self.key_of(item)))
        self.itemDoubleClicked.connect(lambda _item, column: (self.explained if column else self.taken).emit())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What is chosen stays in sight."""
        super().resizeEvent(event)
        chosen = self.currentItem()
        if chosen is not None:
            self.scrollToItem(chosen)

    def viewportEvent(self, event: QEvent) -> bool:
        """The mouse that goes away leaves the one that is chosen."""
        if event.type() is QEvent.Type.Leave:
            self.looked.emit(self.key_of(self.currentItem()))
        return super().viewportEvent(event)


class AnswersView(QWidget):
    """Tells with `looked` which remedy is under the mouse or the keyboard, and when its numbers are asked for."""

    looked = Signal(object)
    explained = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.trouble: Trouble | None = None
        self._more: tuple[str, ...] = ()
        self._seen: Remedy | None = None
        self.says, self.more, self.table, self.price = words(), words(), RemedyTable(), words()
        self._body = QBoxLayout(_ACROSS)
        self.says.setFont(widget_font(14, bold=True))
        self.price.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.price.setContentsMargins(8, 4, 8, 4)
        self._body.addWidget(self.table, 5)
        self._body.addWidget(_scrolled(self.price), 2)
        self.table.setMinimumHeight(round(80 * magnified()))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.says)
        column.addWidget(self.more)
        column.addLayout(self._body, 1)
        self.table.looked.connect(self._look)
        self.table.explained.connect(self.explained)
        for part in (self.says, self.more, self.price):
            part.installEventFilter(self)

    def sizeHint(self) -> QSize:
        times = magnified()
        return QSize(round(_WIDE * times), round(_HIGH * min(times, 1.5)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The price goes below the table where that would lack the width."""
        super().resizeEvent(event)
        self._body.setDirection(_DOWN if self.width() < _BESIDE * magnified() else _ACROSS)

    @property
    def chosen(self) -> Remedy | None:
        """The remedy whose row is chosen."""
        return self._remedy(self.table.key_of(self.table.currentItem()))

    def opened(self) -> Opened | None:
        """The numbers of what is looked at and of its trouble."""
        if self.trouble is None:
            return None
        if self._seen is None:
            return Opened(self.trouble.title, tuple(self.trouble.numbers()))
        return Opened(self._seen.step, (*self._seen.numbers(), *self.trouble.numbers()))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A double click on words asks how their numbers came about."""
        if event.type() is QEvent.Type.MouseButtonDblClick:
            self.explained.emit()
            return True
        return super().eventFilter(watched, event)

    def show_trouble(self, trouble: Trouble) -> None:
        """Show a trouble with its remedies, the best of them chosen and under the keyboard."""
        self.trouble, self._seen = trouble, None
        self._say(*trouble.says)
        self.table.show_columns(trouble.columns, tuple(range(1, len(trouble.columns))))
        self.table.show_rows(
            [TableRow(one.cells, number, grave=not one.fits) for number, one in enumerate(trouble.remedies)]
        )
        best = self.table.topLevelItem(0)
        if best is not None:
            self.table.setCurrentItem(best)
        self.table.setFocus()

    def show_nothing(self, says: str) -> None:
        """Show no remedy, and say why."""
        self.trouble = None
        self._say(says)
        self.table.show_columns(("",))
        self.price.setText("")

    def _say(self, says: str, *more: str) -> None:
        self._more = more
        self.says.setText(says)
        self.more.setText("\n".join(more))
        # Where text is large, they are read below the price, which is scrolled, so that the drawing stays in sight.
        self.more.setVisible(bool(more) and magnified() < LARGE)

    def _remedy(self, number: object) -> Remedy | None:
        return self.trouble.remedies[number] if self.trouble is not None and isinstance(number, int) else None

    def _look(self, number: object) -> None:
        """Say what a remedy costs and which stakes move."""
        remedy = self._remedy(number)
        if remedy is None:
            return
        self._seen = remedy
        stakes = (_("Marked anew:"), *remedy.stakes) if remedy.stakes else (_("Nothing is marked anew."),)
        below = ("", *self._more) if self._more and magnified() >= LARGE else ()
        # No line ends inside a reading.
        self.price.setText("\n".join((remedy.says, "", *stakes, *below)).replace(THIN, "\u202f"))
        self.looked.emit(remedy)


def _scrolled(price: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setWidget(price)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setMinimumHeight(round(44 * magnified()))
    area.setAccessibleName(_("What it costs, and the stakes that move"))
    return area
