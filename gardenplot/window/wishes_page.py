"""The wishes below the drawing: a table, and beside it the buttons that add, remove and fill."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton

from gardenplot.drawing.wish_table import WISH_COLUMNS, WISH_NUMBERS, wish_rows
from gardenplot.plan import Plan
from gardenplot.window.beside import Beside
from gardenplot.window.tables import Table, TableRow
from gardenplot.words import _


class WishesPage(Beside):
    """A row for each wish; Return or a double click on one asks for changes to it."""

    wanted = Signal(object)

    def __init__(self) -> None:
        self.table = Table(_("Wishes"), WISH_COLUMNS, WISH_NUMBERS)
        self.add, self.remove = QPushButton(_("Add wish …")), QPushButton(_("Remove wish"))
        self.fill = QPushButton(_("Fill the season …"))
        super().__init__(self.table, (self.add, self.remove, self.fill))
        self.add.clicked.connect(lambda: self.wanted.emit(None))
        self.table.wanted.connect(lambda item: self.wanted.emit(self.table.key_of(item)))

    def show_plan(self, plan: Plan) -> None:
        """Show the wishes of a plan."""
        self.table.show_rows([TableRow(row.cells, row.wish) for row in wish_rows(plan)])

    def current(self) -> str | None:
        """The id of the wish whose row is chosen."""
        wish = self.table.key_of(self.table.currentItem())
        return wish if isinstance(wish, str) else None
