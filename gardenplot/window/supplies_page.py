"""What to buy and carry, below the drawing: a list less what is in store, for all beds or the selected one."""

from enum import Enum
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing import shopping_list
from gardenplot.drawing.tables import LIST_COLUMNS, LIST_NUMBERS
from gardenplot.plan import Plan
from gardenplot.supplies import shopping
from gardenplot.window.beside import Beside
from gardenplot.window.days_asked import DaysAsked
from gardenplot.window.fields import Choice
from gardenplot.window.sight import Sight
from gardenplot.window.tables import Table, TableRow
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.drawing.shopping_list import ShopGroup, ShopRow


class Days(Enum):
    """Which days a list is for."""

    ALL = "all"
    WEEK = "week"
    TYPED = "typed"


_SCOPES = (
    (_("Whole plan"), (False, Days.ALL)),
    (_("Selected bed"), (True, Days.ALL)),
    (_("Week shown"), (False, Days.WEEK)),
    (_("Bed, that week"), (True, Days.WEEK)),
    (_("By days"), (False, Days.TYPED)),
    (_("Bed, by days"), (True, Days.TYPED)),
)
"""What a list can be for: whether for the selected bed alone, and for which days."""


class SuppliesPage(Beside):
    """A group for each kind of thing and a row for each thing; Return or a double click shows how it came about."""

    wanted = Signal(object)
    asked_otherwise = Signal()

    def __init__(self, sight: Sight) -> None:
        self._sight = sight
        self.scope = Choice()
        self.scope.setAccessibleName(_("What the list is for"))
        for words, scope in _SCOPES:
            self.scope.addItem(words, scope)
        self.table = Table(_("Supplies"), LIST_COLUMNS, LIST_NUMBERS)
        self.working, self.store = QPushButton(_("How it came about …")), QPushButton(_("In store and prices …"))
        self.groups: tuple[ShopGroup, ...] = ()
        self.days = DaysAsked()
        self.days.hide()
        asked = QWidget()
        column = QVBoxLayout(asked)
        column.setContentsMargins(0, 0, 0, 0)
        for part in (self.scope, self.days):
            column.addWidget(part)
        super().__init__(self.table, (asked, self.working, self.store))
        self.scope.currentIndexChanged.connect(self._show_days)
        for changed in (self.scope.currentIndexChanged, self.days.changed, sight.selected, sight.day_changed):
            changed.connect(self.asked_otherwise)
        self.table.wanted.connect(lambda item: self.wanted.emit(self.table.key_of(item)))

    def show_plan(self, plan: Plan) -> None:
        """Show what a plan needs, or what of it the selected bed does, or the week of the day that is shown."""
        self.groups = shopping_list.shop_groups(plan, self.asked())
        rows = [TableRow((group.name, "", "", "", ""), None, tuple(map(_row, group.rows)), bold=True)
                for group in self.groups]  # fmt: skip
        cost = shopping_list.cost_cells(plan, self.groups)
        if cost:
            rows.append(TableRow((_("Cost"), *cost), self.groups, bold=True))
        self.table.show_rows(rows)

    def asked(self) -> "shopping.Asked":
        """What the list is for."""
        of_bed, days = self.scope.currentData()
        beds = frozenset({self._sight.bed}) if of_bed and self._sight.bed else frozenset()
        if days is Days.TYPED:
            return shopping.Asked(beds, self.days.first, self.days.last)
        day = self._sight.day if days is Days.WEEK else None
        return shopping.Asked(beds) if day is None else shopping.week_of(day, beds)

    def _show_days(self) -> None:
        """Have the two lines for days where the list is for those that are typed."""
        _of_bed, days = self.scope.currentData()
        self.days.setVisible(days is Days.TYPED)

    def current(self) -> "shopping.Item | None":
        """What the chosen row is about."""
        item = self.table.key_of(self.table.currentItem())
        return item if item is not None and isinstance(item, shopping.Item) else None


def _row(row: "ShopRow") -> TableRow:
    return TableRow(row.cells, row.item, grave=row.lacks)
