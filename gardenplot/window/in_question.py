"""The order or the finding in question below the drawing, and what is offered beside it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from gardenplot.window.ledger import Ledger
from gardenplot.window.registry import Registry


def in_question(ledger: Ledger) -> object:
    """The finding, or the order with the number of its market day, whose row is chosen where the keyboard is."""
    page, focused = ledger.currentWidget(), QApplication.focusWidget()
    if page is None or focused is None or not page.isAncestorOf(focused):
        return None
    tables = (ledger.orders, ledger.findings)
    return next((table.key_of(table.currentItem()) for table in tables if page.isAncestorOf(table)), None)


def offer_answers(ledger: Ledger, registry: Registry) -> None:
    """Let what can be done about an order or a finding be reached from its row, by button and by right button."""
    registry.tie(ledger.ways, "order.ways")
    registry.tie(ledger.of_findings.ways, "order.ways")
    registry.tie(ledger.of_findings.again, "planting.again")
    for table, actions in ((ledger.orders, ("order.ways",)), (ledger.findings, ("order.ways", "planting.again"))):
        table.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        table.addActions([registry.made(action) for action in actions])
