"""Below the drawing: counts, orders, wishes, dates, supplies and findings, each row leading to its place."""

from PySide6.QtCore import Qt, Signal, SignalInstance
from PySide6.QtWidgets import QDockWidget, QPushButton, QTabWidget, QTreeWidgetItem, QWidget

from gardenplot.drawing import date_list
from gardenplot.drawing.sayings import findings_title
from gardenplot.drawing.tables import CountRow
from gardenplot.findings import Finding, find_all
from gardenplot.window.beside import Beside, FindingsPage
from gardenplot.window.document import Document
from gardenplot.window.giving_way import GivingWay
from gardenplot.window.ledger_lines import count_lines, crop_lines, date_lines, finding_lines, order_lines
from gardenplot.window.sight import Sight
from gardenplot.window.supplies_page import SuppliesPage
from gardenplot.window.tables import Table
from gardenplot.window.wishes_page import WishesPage
from gardenplot.words import _


class Ledger(QTabWidget):
    """Tables of the plan's numbers, days and troubles."""

    shown = Signal(object)
    order_wanted = Signal(object)

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        columns = (_("crop"), _("tape"), _("rows × plants"), _("plants"))
        self.counts = GivingWay(_("Counts"), columns, (3,), gives=(1, 0))
        self.crops = Table(_("By crop"), (_("crop"), _("plants")), (1,))
        self.orders = Table(
            _("Orders"), (_("crop"), _("units"), _("market day"), _("must stand"), _("planted"), ""), (1, 3, 4)
        )
        self.dates = Table(_("Dates"), (_("day"), _("what"), _("crop"), _("how many"), _("bed"), ""))
        self.findings = Table(_("Findings"), (_("finding"), _("where"), _("what")))
        self.wishes, self.supplies = WishesPage(), SuppliesPage(sight)
        self.add_order, self.remove_order = QPushButton(_("Add order …")), QPushButton(_("Remove order"))
        self.ways = QPushButton(_("Ways out …"))
        self.findings.wrap_last()
        self.findings.lets_go = True
        self.of_findings = FindingsPage(self.findings)
        self.addTab(self.counts, _("Counts"))
        self.addTab(self.crops, _("By crop"))
        self.addTab(Beside(self.orders, (self.add_order, self.remove_order, self.ways)), _("Orders"))
        self.addTab(self.wishes, _("Wishes"))
        self.addTab(self.dates, _("Dates"))
        self.addTab(self.supplies, _("Supplies"))
        self.addTab(self.of_findings, _("Findings"))
        self.setDocumentMode(True)
        self.counts.itemSelectionChanged.connect(self._go)
        self.dates.itemClicked.connect(self._go_day)
        self.dates.itemActivated.connect(self._go_day)
        self.findings.itemClicked.connect(self._go_finding)
        self.findings.itemActivated.connect(self._go_finding)
        self.add_order.clicked.connect(lambda: self.order_wanted.emit(None))
        self.orders.wanted.connect(lambda: self.order_wanted.emit(self.current_order()))
        self.currentChanged.connect(self.refresh)
        self.supplies.asked_otherwise.connect(self._ask_otherwise)
        document.changed.connect(self.refresh)

    @property
    def chosen(self) -> tuple[SignalInstance, ...]:
        """What tells that another row may be chosen, in the tables whose rows something can be done to."""
        tables = (self.orders, self.wishes.table, self.supplies.table)
        return tuple(table.currentItemChanged for table in tables)

    def go_to(self, table: Table) -> None:
        """Bring a table to the front, with the keyboard in it."""
        panel = self.parentWidget()
        if isinstance(panel, QDockWidget):
            panel.show()
            panel.raise_()
        self.turn_to(table)
        table.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def turn_to(self, table: Table) -> None:
        """Show a table in place of the one that is shown; panel and keyboard stay as they are."""
        self.setCurrentIndex(next(at for at in range(self.count()) if _holds(self.widget(at), table)))

    def refresh(self) -> None:
        """Show the plan's numbers as they are now, in the table that is in front."""
        plan = self._document.plan
        at, title = self.indexOf(self.of_findings), findings_title(find_all(plan, self._document.today()))
        if title != self.tabText(at):
            # All panels are laid out and painted anew for it, though it be the same.
            self.setTabText(at, title)
        match self.currentIndex():
            case 0:
                self.counts.show_rows(count_lines(plan))
            case 1:
                self.crops.show_rows(crop_lines(plan))
            case 2:
                self.orders.show_rows(order_lines(plan))
            case 3:
                self.wishes.show_plan(plan)
            case 4:
                self.dates.show_rows(date_lines(plan))
            case 5:
                self.supplies.show_plan(plan)
            case _:
                self.findings.show_rows(finding_lines(plan, self._document.today()))

    def _ask_otherwise(self) -> None:
        """The list is for another bed or another week, while it is in front."""
        if self.currentWidget() is self.supplies:
            self.refresh()

    def current_order(self) -> str | None:
        """The id of the order whose row is chosen; a table that is not in front may have rows that are gone."""
        row = self.orders.key_of(self.orders.currentItem())
        known = {one.id for one in self._document.plan.orders}
        return str(row[0]) if isinstance(row, tuple) and row[0] in known else None

    def _go(self) -> None:
        """Select what the chosen row is about; the keyboard that comes by makes a row current and chooses none."""
        chosen = self.counts.selectedItems() if self.counts.hasFocus() else []
        row = self.counts.key_of(chosen[0]) if chosen else None
        if isinstance(row, CountRow):
            self._show(row.bed, row.planting)

    def _show(self, bed: str | None, planting: str | None) -> None:
        """Select a bed or a planting, on a day on which it stands."""
        self._sight.show_day(self._sight.day_for(self._document.plan, planting))
        self._sight.select(bed, planting)

    def _go_day(self, item: QTreeWidgetItem) -> None:
        """Select the planting of a job on its day, where it stands then, or a cover's bed; a market has none."""
        row = self.dates.key_of(item)
        if isinstance(row, date_list.DateRow):
            self._sight.show_day(row.day)
            if row.market is None:
                self._show(row.bed, row.planting)

    def _go_finding(self, item: QTreeWidgetItem) -> None:
        finding = self.findings.key_of(item)
        if isinstance(finding, Finding) and finding.bed is not None:
            self._show(finding.bed, finding.planting)
            self.shown.emit(finding)


def _holds(page: QWidget | None, table: Table) -> bool:
    return page is not None and (page is table or page.isAncestorOf(table))
