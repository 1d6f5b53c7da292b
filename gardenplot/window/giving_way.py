"""A table of which some columns give way where all lack room, so that the numbers behind them stay in sight."""

from collections.abc import Sequence

from PySide6.QtGui import QResizeEvent

from gardenplot.window.tables import Table, TableRow
from gardenplot.window.theme import magnified

_LEAST = 150
"""Pixels that are left of a column that gives way, with text of the usual size."""


class GivingWay(Table):
    """The columns `gives` give way one after the other: their ends are left out, which a tip tells.

    They get their width back where there is room.
    """

    def __init__(self, name: str, columns: tuple[str, ...], numbers: tuple[int, ...], gives: tuple[int, ...]) -> None:
        self._full = dict.fromkeys(gives, 0)
        super().__init__(name, columns, numbers)

    def show_rows(self, rows: Sequence[TableRow]) -> None:
        """Show these rows."""
        super().show_rows(rows)
        self._full = {at: max(full, self.columnWidth(at)) for at, full in self._full.items()}
        self._give_way()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give way, or take back what there is room for."""
        super().resizeEvent(event)
        self._give_way()

    def _give_way(self) -> None:
        widths = {at: self._full.get(at) or self.columnWidth(at) for at in range(self.columnCount())}
        lack, least = sum(widths.values()) - self.viewport().width(), round(_LEAST * magnified())
        for at, full in self._full.items():
            given = max(0, min(lack, full - least))
            lack -= given
            self.setColumnWidth(at, full - given)
