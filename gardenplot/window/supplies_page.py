"""What to buy and carry, below the drawing: a list less what is in store, for all beds or the selected one."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton

from gardenplot.drawing.shopping_list import (
    LIST_COLUMNS,
    LIST_NUMBERS,
    ShopGroup,
    ShopRow,
    cost_cells,
    shop_groups,
)
from gardenplot.plan import Plan
from gardenplot.supplies.shopping import Asked, Item, week_of
from gardenplot.window.beside import Beside
from gardenplot.window.fields import Choice
from gardenplot.window.sight import Sight
from gardenplot.window.tables import Table, TableRow
from gardenplot.words import _

_SCOPES = (
    (_("Whole plan"), (False, False)),
    (_("Selected bed"), (True, False)),
    (_("Week shown"), (False, True)),
    (_("Bed, that week"), (True, True)),
)
"""What a list can be for: whether for the selected bed alone, and whether for the week of the day shown."""


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
        super().__init__(self.table, (self.scope, self.working, self.store))
        for changed in (self.scope.currentIndexChanged, sight.selected, sight.day_changed):
            changed.connect(self.asked_otherwise)
        self.table.wanted.connect(lambda item: self.wanted.emit(self.table.key_of(item)))

    def show_plan(self, plan: Plan) -> None:
        """Show what a plan needs, or what of it the selected bed does, or the week of the day that is shown."""
        self.groups = shop_groups(plan, self.asked())
        rows = [TableRow((group.name, "", "", "", ""), None, tuple(map(_row, group.rows)), bold=True)
                for group in self.groups]  # fmt: skip
        cost = cost_cells(plan, self.groups)
        if cost:
            rows.append(TableRow((_("Cost"), *cost), self.groups, bold=True))
        self.table.show_rows(rows)

    def asked(self) -> Asked:
        """What the list is for."""
        of_bed, of_week = self.scope.currentData()
        beds = frozenset({self._sight.bed}) if of_bed and self._sight.bed else frozenset()
        day = self._sight.day if of_week else None
        return Asked(beds) if day is None else week_of(day, beds)

    def current(self) -> Item | None:
        """What the chosen row is about."""
        item = self.table.key_of(self.table.currentItem())
        return item if isinstance(item, Item) else None


def _row(row: ShopRow) -> TableRow:
    return TableRow(row.cells, row.item, grave=row.lacks)
