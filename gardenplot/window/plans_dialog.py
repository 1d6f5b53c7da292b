"""A dialog that shows plans in a table, to choose one and what is to become of it."""

from collections.abc import Callable, Sequence

from attrs import frozen
from PySide6.QtCore import QSize, QTimer
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QSizePolicy,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from gardenplot.errors import GardenplotError
from gardenplot.plan import Plan
from gardenplot.window.end_buttons import EnterPresses, make_strong
from gardenplot.window.plain import PlainLabel, as_is
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.words import _


@frozen(eq=False)
class PlanRow:
    """A row: the words of its first columns, how its plan is read, and the words of the other columns for it.

    Reading raises GardenplotError.
    """

    cells: tuple[str, ...]
    read: Callable[[], Plan]
    words: Callable[[Plan], tuple[str, ...]]


class PlansDialog(EnterPresses):
    """A sentence, the table, and a button for each thing that can be done with the chosen plan.

    Plans are read one after another once it is shown. A plan that cannot be read says why, and only the buttons
    that `need_no_plan` can be pressed for it. `chosen` is the row and `deed` the button's number.
    """

    def __init__(
        self,
        title: str,
        says: str,
        heads: Sequence[str],
        rows: Sequence[PlanRow],
        deeds: Sequence[str],
        parent: QWidget,
        *,
        leave: str,
        need_no_plan: Sequence[int] = (),
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self._rows, self._need_no_plan = rows, need_no_plan
        self.plans: list[Plan | None] = []
        self.deed: int | None = None
        self.table = QTreeWidget()
        self.table.setAccessibleName(title)
        self.table.setHeaderLabels(list(heads))
        self.table.setRootIsDecorated(False)
        self.table.setUniformRowHeights(True)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.table.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.buttons = [QPushButton(words) for words in deeds]
        self._lay_out(says, leave)
        blank = [""] * len(heads)
        for row in rows:
            self.table.addTopLevelItem(QTreeWidgetItem([*row.cells, *blank[len(row.cells) :]]))
        if (first := self.table.topLevelItem(0)) is not None:
            self.table.setCurrentItem(first)
        self.table.currentItemChanged.connect(self._show_what_can_be_done)
        self.table.itemActivated.connect(lambda _item: self.buttons[0].click())
        self.table.setFocus()
        self._show_what_can_be_done()
        QTimer.singleShot(0, self, self._read_next)

    @property
    def chosen(self) -> int:
        """The number of the chosen row."""
        item = self.table.currentItem()
        return -1 if item is None else self.table.indexOfTopLevelItem(item)

    @property
    def plan(self) -> Plan | None:
        """The plan of the chosen row, None while it is not read or cannot be."""
        return self.plans[self.chosen] if 0 <= self.chosen < len(self.plans) else None

    def _lay_out(self, says: str, leave: str) -> None:
        column, last, words = QVBoxLayout(self), QHBoxLayout(), PlainLabel(says)
        words.setWordWrap(True)
        words.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        close = QPushButton(leave)
        close.clicked.connect(self.reject)
        make_strong(self.buttons[0])
        for number, button in enumerate(self.buttons):
            button.clicked.connect(lambda _checked=False, number=number: self._take(number))
        for button in (*self.buttons[1:], close, self.buttons[0]):
            button.setAutoDefault(False)
            last.addWidget(button)
        last.insertStretch(len(self.buttons) - 1, 1)
        column.addWidget(words)
        column.addWidget(self.table)
        column.addLayout(last)
        wanted = QSize(self.fontMetrics().averageCharWidth() * 110, self.fontMetrics().height() * 26)
        self.resize(wanted.boundedTo(room_on_screen(self) * 0.94))

    def _read_next(self) -> None:
        """Read one more plan and show its words; the window lives on between two."""
        number = len(self.plans)
        item = self.table.topLevelItem(number)
        if item is None:
            return
        row = self._rows[number]
        try:
            plan = row.read()
        except GardenplotError as error:
            self.plans.append(None)
            item.setText(len(row.cells), _("cannot be read"))
            item.setToolTip(len(row.cells), as_is(str(error)))
        else:
            self.plans.append(plan)
            for place, words in enumerate(row.words(plan), len(row.cells)):
                item.setText(place, words)
        self._show_what_can_be_done()
        QTimer.singleShot(0, self, self._read_next)

    def _show_what_can_be_done(self) -> None:
        for number, button in enumerate(self.buttons):
            button.setEnabled(self.plan is not None or (number in self._need_no_plan and self.chosen >= 0))

    def _take(self, number: int) -> None:
        self.deed = number
        self.accept()
