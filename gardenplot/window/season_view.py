"""Which days the season map shows: all that a plan is made for, or some of them, drawn out."""

from datetime import date

from PySide6.QtCore import QObject, Signal

from gardenplot.season import Span

_FEWEST, _MOST = 21, 1500
"""Days that the map shows at least and at most."""


class SeasonView(QObject):
    """All days until the grower zooms or scrolls; then the same ones until all are shown again."""

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._own: Span | None = None

    def span(self, whole: Span) -> Span:
        """The days to show, of a plan that is made for some."""
        return self._own or whole

    def zoom(self, whole: Span, times: float, day: date) -> None:
        """Show so many times fewer days, with one of them staying where it is."""
        now = self.span(whole)
        days = max(_FEWEST, min(round(now.days / times), _MOST))
        share = (day - now.first).days / now.days
        self._show(day.toordinal() - round(share * days), days)

    def scroll(self, whole: Span, by: int) -> None:
        """Show days that lie so many later."""
        now = self.span(whole)
        self._show(now.first.toordinal() + by, now.days)

    def reveal(self, whole: Span, day: date) -> None:
        """Scroll no further than to have a day in sight."""
        now = self.span(whole)
        if day < now.first:
            self.scroll(whole, (day - now.first).days)
        elif day > now.last:
            self.scroll(whole, (day - now.last).days)

    def show_all(self) -> None:
        """Show all days again."""
        self._own = None
        self.changed.emit()

    def _show(self, first: int, days: int) -> None:
        first = max(1, min(first, date.max.toordinal() - days))
        self._own = Span(date.fromordinal(first), date.fromordinal(first + days - 1))
        self.changed.emit()
