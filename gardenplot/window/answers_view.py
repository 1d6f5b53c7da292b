"""A trouble and its remedies: by how much, a table of differences, and of the one looked at its price and stakes."""

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QScrollArea, QVBoxLayout, QWidget

from gardenplot.drawing.opened import Opened
from gardenplot.drawing.remedies import Remedy, Trouble
from gardenplot.units.figures import THIN
from gardenplot.window.fields import LARGE
from gardenplot.window.labels import words
from gardenplot.window.tables import Table, TableRow, height_of
from gardenplot.window.theme import magnified, widget_font
from gardenplot.words import _

_ACROSS, _DOWN = QBoxLayout.Direction.LeftToRight, QBoxLayout.Direction.TopToBottom
_BESIDE = 1100
"""From this width in pixels on, with text of the usual size, the price of a remedy stands beside the table."""
_LEAST_ROWS = 2
"""A table with large text has room for so many rows, also where it has fewer."""
_WIDE, _HIGH = 1376, 300
"""The size in pixels that it would like to have, with text of the usual size."""


class RemedyTable(Table):
    """Rows of differences; `looked` tells the number of the one under the mouse, else of the one chosen by `picked`.

    A double click takes the one whose name is clicked; on a difference it asks how that came about.
    """

    looked, picked = Signal(object), Signal(object)
    taken, explained = Signal(), Signal()

    def __init__(self) -> None:
        super().__init__(_("What can be done"), ("",))
        self.setMouseTracking(True)
        self.itemEntered.connect(lambda item: self.looked.emit(self.key_of(item)))
        self.currentItemChanged.connect(lambda item: self._choose(self.key_of(item)))
        self.itemDoubleClicked.connect(lambda _item, column: (self.explained if column else self.taken).emit())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What is chosen stays in sight."""
        super().resizeEvent(event)
        chosen = self.currentItem()
        if chosen is not None:
            self.scrollToItem(chosen)

    def _choose(self, number: object) -> None:
        """Tell what is chosen before it is looked at."""
        self.picked.emit(number)
        self.looked.emit(number)

    def viewportEvent(self, event: QEvent) -> bool:
        """The mouse that goes away leaves the one that is chosen."""
        if event.type() is QEvent.Type.Leave:
            self.looked.emit(self.key_of(self.currentItem()))
        return super().viewportEvent(event)


class AnswersView(QWidget):
    """Tells with `looked` which remedy is to be drawn, with `picked` the number of one that somebody chooses.

    `looked` is of the one under the mouse, else of the one chosen along with others. `explained` asks
    for its numbers.
    """

    looked, picked = Signal(object), Signal(object)
    explained = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.trouble: Trouble | None = None
        self.whole: Remedy | None = None
        """What the chosen remedy comes to along with those of other troubles, where there are any."""
        self._more: tuple[str, ...] = ()
        self._seen: Remedy | None = None
        self.says, self.more, self.table, self.price = words(), words(), RemedyTable(), words()
        self._body = QBoxLayout(_ACROSS)
        self.says.setFont(widget_font(14 if magnified() < LARGE else 13, bold=True))
        self.price.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.price.setContentsMargins(8, 4, 8, 4)
        self._body.addWidget(self.table, 5)
        self._body.addWidget(_scrolled(self.price), 2)
        self.table.setMinimumHeight(round(68 * magnified()))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.says)
        column.addWidget(self.more)
        column.addLayout(self._body, 1)
        self.table.picked.connect(self._pick)
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
        return _remedy(self.trouble, self.table.key_of(self.table.currentItem()))

    def opened(self) -> Opened | None:
        """The numbers of what is looked at and of its trouble."""
        if self.trouble is None:
            return None
        told: list[Remedy | Trouble] = [one for one in (self._seen, self.whole) if one is not None]
        title = self._seen.step if self._seen is not None else self.trouble.title
        return Opened(title, tuple(number for one in (*told, self.trouble) for number in one.numbers()))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A double click on words asks how their numbers came about."""
        if event.type() is QEvent.Type.MouseButtonDblClick:
            self.explained.emit()
            return True
        return super().eventFilter(watched, event)

    def show_trouble(self, trouble: Trouble, chosen: int | None = 0, whole: Remedy | None = None) -> None:
        """Show a trouble with its remedies, one of them chosen, at first the best, or none."""
        self.trouble, self._seen, self.whole = trouble, None, whole
        self._say(*trouble.says)
        # Nobody picks anything by that.
        blocker = QSignalBlocker(self.table)
        self.table.show_columns(trouble.columns, tuple(range(1, len(trouble.columns))))
        self.table.show_rows(
            [TableRow(one.cells, number, grave=not one.fits) for number, one in enumerate(trouble.remedies)]
        )
        if magnified() >= LARGE:
            # What it would take beyond its rows, the price and the other table can use.
            self.table.setMaximumHeight(height_of(self.table, max(_LEAST_ROWS, len(trouble.remedies))))
        item = None if chosen is None else self.table.topLevelItem(chosen)
        self.table.setCurrentItem(item)  # type: ignore[arg-type]  # Qt takes None for no row
        del blocker
        self._look(chosen)

    def show_nothing(self, says: str) -> None:
        """Show no remedy, and say why."""
        self.trouble = self.whole = None
        self._say(says)
        self.table.show_columns(("",))
        self.price.setText("")

    def _say(self, says: str, *more: str) -> None:
        is_short = self.whole is not None and magnified() >= LARGE
        self._more = (says, *more) if is_short else more
        self.says.setText(says)
        self.says.setVisible(not is_short)
        self.more.setText("\n".join(more))
        # Where text is large, or several are shown, they are read below the price, which is scrolled, so that the
        # drawing stays in sight.
        self.more.setVisible(bool(more) and self.whole is None and magnified() < LARGE)

    def show_whole(self, whole: Remedy) -> None:
        """Show what the remedy that is chosen comes to along with others."""
        self.whole = whole
        self._look(self.table.key_of(self.table.currentItem()))

    def _pick(self, number: object) -> None:
        """Another one is chosen: what it comes to along with others is not known until that is shown."""
        self.whole = None
        self.picked.emit(number)

    def _look(self, number: object) -> None:
        """Say what a remedy costs and which stakes move, and of the one chosen what all come to."""
        remedy = _remedy(self.trouble, number)
        whole = self.whole if remedy is self.chosen else None
        told = whole or remedy
        if told is None:
            return
        self._seen = remedy
        says = (one.says for one in (whole, remedy) if one is not None)
        stakes = (_("Marked anew:"), *told.stakes) if told.stakes else (_("Nothing is marked anew."),)
        below = ("", *self._more) if self._more and not self.more.isVisibleTo(self) else ()
        # No line ends inside a reading.
        self.price.setText("\n".join((*says, "", *stakes, *below)).replace(THIN, "\u202f"))
        self.looked.emit(told)


def _remedy(trouble: Trouble | None, number: object) -> Remedy | None:
    remedies = trouble.remedies if trouble is not None else ()
    return remedies[number] if isinstance(number, int) and number < len(remedies) else None


def _scrolled(price: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setWidget(price)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setMinimumHeight(round(44 * magnified()))
    area.setAccessibleName(_("What it costs, and the stakes that move"))
    return area
