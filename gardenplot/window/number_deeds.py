"""How numbers came about, asked for by a double click or a key where they stand, in tables and in panels."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QTreeWidgetItem, QWidget

from gardenplot.drawing import date_list, opened
from gardenplot.drawing.tables import CountRow
from gardenplot.findings import Finding
from gardenplot.plan import Plan
from gardenplot.supplies import shopping
from gardenplot.window import pattern_choice
from gardenplot.window.late import show_numbers
from gardenplot.window.tables import Table

if TYPE_CHECKING:
    from gardenplot.drawing.opened import Opened
    from gardenplot.window.main import MainWindow

_OF_ORDERS, _OF_WISHES = frozenset({3, 4, 5}), frozenset({3, 4})
"""The columns of numbers that are worked out; the others are typed, and a double click asks for changes to them."""


class NumberDeeds(QObject):
    """Knows for each table what a row is about, and for the rest of the window what is selected."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window, self._document = window, window.document
        ledger = window.ledger
        self._tables: dict[Table, Callable[[Plan, object], Opened | None]] = {
            ledger.counts: _count, ledger.crops: _crop, ledger.orders: _order, ledger.wishes.table: _wish,
            ledger.dates: _date, ledger.supplies.table: _thing, ledger.findings: _finding,
        }  # fmt: skip
        for table in (ledger.counts, ledger.crops):
            table.itemActivated.connect(self._at(table))
        for table in (ledger.dates, ledger.findings):
            # Return goes to the place there, as a click does.
            table.itemDoubleClicked.connect(self._at(table))
        for table, columns in ((ledger.orders, _OF_ORDERS), (ledger.wishes.table, _OF_WISHES)):
            table.worked_out = columns
            table.asked.connect(self._at(table))
        for made in (window.inspector.planting_made, window.inspector.bed_made):
            made.connect(self._watch)
        for words in (window.inspector.plan, window.total):
            words.installEventFilter(self)

    def ask(self) -> None:
        """Show the numbers of the row that the keyboard is on, else of what is selected, else of the plan."""
        focused = self._window.focusWidget()
        table = next((each for each in self._tables if each is focused), None)
        if isinstance(focused, pattern_choice.PatternButton):
            self._show(self.opened_by(focused))
        elif table is None or not self._show(self._opened_at(table)):
            self._show(self._of_selected())

    def opened_by(self, part: QWidget) -> "Opened | None":
        """What opens for a part of the window: for a table that of its current row."""
        if isinstance(part, Table) and part in self._tables:
            return self._opened_at(part)
        plan, planting = self._document.plan, self._window.sight.planting
        if isinstance(part, pattern_choice.PatternButton) and planting is not None:
            return opened.of_pattern(plan, planting, part.pattern)
        return opened.of_plan(plan) if part is self._window.total else self._of_selected()

    def _of_selected(self) -> "Opened":
        sight = self._window.sight
        return opened.of_selected(self._document.plan, sight.bed, sight.planting, self._document.today())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A double click on words, which nothing else has a use for, asks how their numbers came about."""
        if event.type() is QEvent.Type.MouseButtonDblClick and isinstance(watched, QWidget):
            return self._show(self.opened_by(watched))
        return super().eventFilter(watched, event)

    def _watch(self, part: QWidget) -> None:
        for each in (part, *part.findChildren(pattern_choice.PatternButton)):
            each.installEventFilter(self)

    def _opened_at(self, table: Table, item: QTreeWidgetItem | None = None) -> "Opened | None":
        key = table.key_of(item or table.currentItem())
        return self._tables[table](self._document.plan, key)

    def _at(self, table: Table) -> Callable[[QTreeWidgetItem], None]:
        def asked(item: QTreeWidgetItem) -> None:
            self._show(self._opened_at(table, item))

        return asked

    def _show(self, opened: "Opened | None") -> bool:
        if opened is None:
            return False
        show_numbers(self._document.plan, opened, self._window)
        return True


def _count(plan: Plan, row: object) -> "Opened | None":
    if not isinstance(row, CountRow):
        return None
    return opened.of_selected(plan, row.bed, row.planting)


def _crop(plan: Plan, crop: object) -> "Opened | None":
    return opened.of_crop(plan, crop) if isinstance(crop, str) else None


def _order(plan: Plan, row: object) -> "Opened | None":
    match row:
        case (str(order), int(market)):
            return opened.of_order(plan, order, market)
        case _:
            return None


def _wish(plan: Plan, wish: object) -> "Opened | None":
    return opened.of_wish(plan, wish) if isinstance(wish, str) else None


def _date(plan: Plan, row: object) -> "Opened | None":
    if isinstance(row, date_list.Week):
        return opened.of_week(plan, row)
    return opened.of_job(plan, row) if isinstance(row, date_list.DateRow) else None


def _thing(plan: Plan, item: object) -> "Opened | None":
    if isinstance(item, tuple):
        return opened.of_cost(plan, item)
    return opened.of_item(plan, item) if isinstance(item, shopping.Item) else None


def _finding(plan: Plan, finding: object) -> "Opened | None":
    return opened.of_finding(plan, finding) if isinstance(finding, Finding) else None
