"""What to buy and carry, below the drawing: a list less what is in store, for all beds or the selected one."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QPushButton

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
from gardenplot.window.sight import Sight
from gardenplot.window.tables import Table, TableRow
from gardenplot.words import _


class SuppliesPage(Beside):
    """A group for each kind of thing and a row for each thing; Return or a double click shows how it came about."""

    wanted = Signal(object)
    asked_otherwise = Signal()

    def __init__(self, sight: Sight) -> None:
        self._sight = sight
        self.only_bed, self.only_week = QCheckBox(_("Selected bed only")), QCheckBox(_("Week shown only"))
        self.table = Table(_("Supplies"), LIST_COLUMNS, LIST_NUMBERS)
        self.working, self.store = QPushButton(_("How it came about …")), QPushButton(_("In store and prices …"))
        self.save, self.copy = QPushButton(_("Save as a table …")), QPushButton(_("Copy"))
        self.groups: tuple[ShopGroup, ...] = ()
        super().__init__(self.table, (self.working, self.store, self.save, self.copy, self.only_bed, self.only_week))
        for changed in (self.only_bed.toggled, self.only_week.toggled, sight.selected, sight.day_changed):
            changed.connect(self.asked_otherwise)
        self.table.itemActivated.connect(lambda item: self.wanted.emit(self.table.key_of(item)))

    def show_plan(self, plan: Plan) -> None:
        """Show what a plan needs, or what of it the selected bed does, or the week of the day that is shown."""
        self.groups = shop_groups(plan, self.asked())
        rows = [TableRow((group.name, "", "", "", ""), None, tuple(map(_row, group.rows)), bold=True)
                for group in self.groups]  # fmt: skip
        cost = cost_cells(plan, self.groups)
        if cost:
            rows.append(TableRow((_("Cost"), *cost), None, bold=True))
        self.table.show_rows(rows)

    def asked(self) -> Asked:
        """What the list is for."""
        beds = frozenset({self._sight.bed}) if self.only_bed.isChecked() and self._sight.bed else frozenset()
        day = self._sight.day if self.only_week.isChecked() else None
        return Asked(beds) if day is None else week_of(day, beds)

    def current(self) -> Item | None:
        """What the chosen row is about."""
        item = self.table.key_of(self.table.currentItem())
        return item if isinstance(item, Item) else None


def _row(row: ShopRow) -> TableRow:
    return TableRow(row.cells, row.item, grave=row.lacks)
