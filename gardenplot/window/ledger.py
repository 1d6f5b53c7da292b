"""Below the drawing: counts, orders and findings, each row leading to its place."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QBrush
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTabWidget,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, where
from gardenplot.drawing.style import Ink
from gardenplot.drawing.tables import CountRow, OrderRow, counts_by_bed, counts_by_crop, order_rows
from gardenplot.findings import Finding, find_all
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight
from gardenplot.window.theme import colour, palette
from gardenplot.words import _, ngettext

_KEY = Qt.ItemDataRole.UserRole


class Ledger(QTabWidget):
    """Three tables of the plan's numbers and troubles."""

    shown = Signal(object)
    order_wanted = Signal(object)

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.counts = _table(_("Counts"), (_("crop"), _("tape"), _("rows × plants"), _("plants")))
        self.crops = _table(_("By crop"), (_("crop"), _("plants")))
        self.orders = _table(_("Orders"), (_("crop"), _("units"), _("market day"), _("must stand"), _("planted"), ""))
        self.findings = _table(_("Findings"), (_("where"), _("what")))
        self.add_order, self.remove_order = QPushButton(_("Add order …")), QPushButton(_("Remove order"))
        self.addTab(self.counts, _("Counts"))
        self.addTab(self.crops, _("By crop"))
        self.addTab(self._orders_page(), _("Orders"))
        self.addTab(self.findings, _("Findings"))
        self.setDocumentMode(True)
        self.counts.currentItemChanged.connect(self._go)
        self.findings.itemClicked.connect(self._go_finding)
        self.findings.itemActivated.connect(self._go_finding)
        self.orders.itemActivated.connect(lambda item: self.order_wanted.emit(item.data(0, _KEY)))
        self.currentChanged.connect(self.refresh)
        document.changed.connect(self.refresh)
        document.opened.connect(self.refresh)

    def refresh(self) -> None:
        """Show the plan's numbers as they are now, in the table that is in front."""
        plan = self._document.plan
        troubles = sum(1 for one in find_all(plan) if not one.is_note)
        words = ngettext("{count} finding", "{count} findings", troubles).format(count=troubles)
        self.setTabText(3, words if troubles else _("Findings"))
        match self.currentIndex():
            case 0:
                _fill_counts(self.counts, counts_by_bed(plan))
            case 1:
                _fill(self.crops, [(None, (row.name, str(row.plants))) for row in counts_by_crop(plan)])
            case 2:
                _fill(self.orders, [(row.order, _order_cells(row)) for row in order_rows(plan)])
            case _:
                self._show_findings()

    def _show_findings(self) -> None:
        plan, look, found = self._document.plan, looks(self._document.plan), find_all(self._document.plan)
        _fill(self.findings, [(one, (where(plan, one, look), says(plan, one, look))) for one in found])
        accent = QBrush(colour(palette(), Ink.ACCENT))
        for number, one in enumerate(found):
            item = self.findings.topLevelItem(number)
            if one.cannot_be_done and item is not None:
                item.setForeground(1, accent)

    def _orders_page(self) -> QWidget:
        page = QWidget()
        column, row = QVBoxLayout(page), QHBoxLayout()
        column.setContentsMargins(0, 0, 0, 4)
        row.setContentsMargins(8, 0, 8, 0)
        row.addWidget(self.add_order)
        row.addWidget(self.remove_order)
        row.addStretch(1)
        column.addWidget(self.orders)
        column.addLayout(row)
        self.add_order.clicked.connect(lambda: self.order_wanted.emit(None))
        return page

    def current_order(self) -> str | None:
        """The id of the order whose row is chosen."""
        item = self.orders.currentItem()
        return item.data(0, _KEY) if item is not None else None

    def _go(self, item: QTreeWidgetItem | None) -> None:
        row = item.data(0, _KEY) if item is not None and self.counts.hasFocus() else None
        if isinstance(row, CountRow):
            self._sight.select(row.bed, row.planting)

    def _go_finding(self, item: QTreeWidgetItem) -> None:
        finding = item.data(0, _KEY)
        if isinstance(finding, Finding) and finding.bed is not None:
            self._sight.select(finding.bed, finding.planting)
            self.shown.emit(finding)


def _table(name: str, columns: tuple[str, ...]) -> QTreeWidget:
    table = QTreeWidget()
    table.setAccessibleName(name)
    table.setHeaderLabels(columns)
    table.setUniformRowHeights(True)
    table.setRootIsDecorated(False)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    table.header().setStretchLastSection(False)
    return table


def _fill(table: QTreeWidget, rows: list[tuple[object, tuple[str, ...]]]) -> None:
    table.clear()
    for key, cells in rows:
        item = QTreeWidgetItem(list(cells))
        item.setData(0, _KEY, key)
        for column in (number for number, cell in enumerate(cells) if cell.isdecimal()):
            item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        table.addTopLevelItem(item)


def _fill_counts(table: QTreeWidget, beds: tuple[CountRow, ...]) -> None:
    table.clear()
    for bed in beds:
        top = _count_item(bed)
        font = top.font(0)
        font.setBold(True)
        for column in (0, 3):
            top.setFont(column, font)
        top.addChildren([_count_item(row) for row in bed.inner])
        table.addTopLevelItem(top)
        top.setExpanded(True)
    total = sum(bed.plants for bed in beds)
    table.addTopLevelItem(_count_item(CountRow(_("In all"), "", "", total)))


def _count_item(row: CountRow) -> QTreeWidgetItem:
    item = QTreeWidgetItem([row.name, row.readings, row.rows, str(row.plants)])
    item.setTextAlignment(3, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    item.setData(0, _KEY, row)
    return item


def _order_cells(row: OrderRow) -> tuple[str, ...]:
    return row.crop, str(row.units), row.day, str(row.stand), str(row.planted), row.met
