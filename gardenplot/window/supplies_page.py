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
from gardenplot.supplies.shopping import Item
from gardenplot.window.beside import Beside
from gardenplot.window.tables import Table, TableRow
from gardenplot.words import _


class SuppliesPage(Beside):
    """A group for each kind of thing and a row for each thing; Return or a double click shows how it came about."""

    wanted = Signal(object)

    def __init__(self) -> None:
        self.table = Table(_("Supplies"), LIST_COLUMNS, LIST_NUMBERS)
        self.working, self.store = QPushButton(_("How it came about …")), QPushButton(_("In store and prices …"))
        self.save, self.copy = QPushButton(_("Save as a table …")), QPushButton(_("Copy"))
        self.groups: tuple[ShopGroup, ...] = ()
        super().__init__(self.table, (self.working, self.store, self.save, self.copy))
        self.table.itemActivated.connect(lambda item: self.wanted.emit(self.table.key_of(item)))

    def show_plan(self, plan: Plan) -> None:
        """Show what a plan needs."""
        self.groups = shop_groups(plan)
        rows = [TableRow((group.name, "", "", "", ""), None, tuple(map(_row, group.rows)), bold=True)
                for group in self.groups]  # fmt: skip
        cost = cost_cells(plan, self.groups)
        if cost:
            rows.append(TableRow((_("Cost"), *cost), None, bold=True))
        self.table.show_rows(rows)

    def current(self) -> Item | None:
        """What the chosen row is about."""
        item = self.table.key_of(self.table.currentItem())
        return item if isinstance(item, Item) else None


def _row(row: ShopRow) -> TableRow:
    return TableRow(row.cells, row.item, grave=row.lacks)
