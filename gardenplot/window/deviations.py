"""All that deviates with the answer chosen to each: ticked are those that are answered together."""

from attrs import frozen
from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QTreeWidgetItem, QVBoxLayout, QWidget

from gardenplot.drawing.again_together import About, Answered, Deviation, Pick, Picks
from gardenplot.drawing.together_words import AIMS
from gardenplot.filling.together import Aim
from gardenplot.window.fields import LARGE, Choice
from gardenplot.window.plain import PlainLabel
from gardenplot.window.tables import Table, TableRow, height_of
from gardenplot.window.theme import magnified
from gardenplot.words import _

_COLUMNS = (_("deviates"), _("answer"), _("takes"), _("to sell"), _("market"), _("stakes"))
_FIRST_NUMBER = 2
_ROWS, _ROWS_OF_LARGE = 3, 2
"""So many rows are in sight, if there are as many, with text of the usual size, and at least with large text."""


@frozen
class Wanted:
    """The plantings that are wanted first, the best first, and the one that alone is ticked then, if it deviates."""

    plantings: tuple[str | None, ...] = ()
    only: str | None = None


class Deviations(QWidget):
    """Tells with `turned` that another one is looked at, with `picked` that other answers are to be found."""

    turned, picked = Signal(), Signal()

    def __init__(self) -> None:
        super().__init__()
        self.table, self.aim = (
            Table(_("What deviates"), _COLUMNS, tuple(range(_FIRST_NUMBER, len(_COLUMNS)))),
            Choice(),
        )
        self._found: tuple[Deviation, ...] = ()
        self._picked: dict[About, Pick | None] = {}
        label = PlainLabel(_("Answer all that is ticked"))
        label.setBuddy(self.aim)
        self.aim.setAccessibleName(label.text())
        self.aim.addItems([_("each as chosen below"), *AIMS.values()])
        self.aim.take_what_there_is()
        line, column = QHBoxLayout(), QVBoxLayout(self)
        if magnified() < LARGE:
            line.addWidget(label)
        line.addWidget(self.aim, 1)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addLayout(line)
        column.addWidget(self.table)
        self.aim.activated.connect(self.picked)
        self.table.itemChanged.connect(self._tick)
        self.table.currentItemChanged.connect(self.turned)

    @property
    def now(self) -> Deviation | None:
        """The one that is looked at."""
        about = self.table.key_of(self.table.currentItem())
        return next((one for one in self._found if one.about == about), None)

    def picks(self, only: str | None) -> Picks:
        """What is picked of all; at first the smallest change, `only` of one planting."""
        aims: list[Aim | None] = [None, *AIMS]
        return Picks(dict(self._picked), only, aims[self.aim.currentIndex()])

    def pick(self, number: int) -> None:
        """Choose an answer to the one that is looked at, which ticks it."""
        now = self.now
        if now is not None:
            self._pick(now, now.picks[number])

    def show_all(self, answered: Answered, wanted: tuple[str | None, ...]) -> None:
        """Show what was found; the one that is looked at stays, else it is the first that is wanted."""
        now, self._found = self.now, answered.deviations
        self._picked = {one.about: one.pick for one in self._found}
        blockers = [QSignalBlocker(one) for one in (self.table, self.aim)]
        self.table.show_rows([_row(one) for one in self._found])
        for number, one in enumerate(self._found):
            self._show_tick(self.table.topLevelItem(number), one)
        abouts = [one.about for one in self._found]
        plantings = [one.trouble.about for one in self._found]
        number = next((plantings.index(one) for one in wanted if one in plantings), 0)
        number = abouts.index(now.about) if now is not None and now.about in abouts else number
        item = self.table.topLevelItem(number)
        if item is not None:
            self.table.setCurrentItem(item)
        self.table.resizeColumnToContents(0)
        count = len(self._found)
        least, most = (min(count, _ROWS),) * 2 if magnified() < LARGE else (min(count, _ROWS_OF_LARGE), count)
        self.table.setMinimumHeight(height_of(self.table, least))
        self.table.setMaximumHeight(height_of(self.table, most))
        del blockers

    @staticmethod
    def _show_tick(item: QTreeWidgetItem | None, one: Deviation) -> None:
        if item is None:
            return
        states = Qt.CheckState
        item.setCheckState(0, states.Checked if one.remedy is not None else states.Unchecked)
        usable = Qt.ItemFlag.ItemIsUserCheckable
        item.setFlags(item.flags() | usable if one.picks else item.flags() & ~usable)

    def _tick(self, item: QTreeWidgetItem) -> None:
        """Answer one together with the others, by its smallest change, or leave it as it is."""
        about = self.table.key_of(item)
        one = next((each for each in self._found if each.about == about), None)
        is_ticked = item.checkState(0) == Qt.CheckState.Checked
        if one is not None and is_ticked != (one.remedy is not None):
            self._pick(one, one.picks[0] if is_ticked else None)

    def _pick(self, one: Deviation, pick: Pick | None) -> None:
        self._picked[one.about] = pick
        self.aim.setCurrentIndex(0)
        self.picked.emit()


def _row(one: Deviation) -> TableRow:
    """What deviates, and of the answer chosen what it takes and gives."""
    if one.remedy is None:
        left = _("left as it is") if one.picks else _("no answer was found")
        return TableRow((one.trouble.title, left, *("" for _column in _COLUMNS[_FIRST_NUMBER:])), one.about)
    told = dict(zip(one.trouble.columns, one.remedy.cells, strict=True))
    return TableRow((one.trouble.title, *(told.get(column, "") for column in _COLUMNS[1:])), one.about)
