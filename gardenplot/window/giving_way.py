"""A table of which one column gives way where all lack room, so that the numbers behind it stay in sight."""

from collections.abc import Sequence

from PySide6.QtGui import QResizeEvent

from gardenplot.window.tables import Table, TableRow

_LEAST_SHARE = 0.5
"""No column gives away more than this share of its width."""


class GivingWay(Table):
    """The column `gives` is left out at its end, which a tip tells, and gets its width back where there is room."""

    def __init__(self, name: str, columns: tuple[str, ...], numbers: tuple[int, ...], gives: int) -> None:
        self._gives, self._full = gives, 0
        super().__init__(name, columns, numbers)

    def show_rows(self, rows: Sequence[TableRow]) -> None:
        """Show these rows."""
        super().show_rows(rows)
        self._full = max(self._full, self.columnWidth(self._gives))
        self._give_way()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give way, or take back what there is room for."""
        super().resizeEvent(event)
        self._give_way()

    def _give_way(self) -> None:
        others = sum(self.columnWidth(at) for at in range(self.columnCount()) if at != self._gives)
        room = self.viewport().width() - others
        if self._full and self._full * _LEAST_SHARE <= room:
            self.setColumnWidth(self._gives, min(self._full, room))
