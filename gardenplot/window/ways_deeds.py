"""What the menus do about what does not fit: show the ways out of it."""

from typing import TYPE_CHECKING

from gardenplot.findings import Finding, Kind, find_all
from gardenplot.plan import planting_of
from gardenplot.window import beside_drawing
from gardenplot.window.in_question import in_question
from gardenplot.window.late import lacks_of, ways_dialog
from gardenplot.window.reasons import NO_BED
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow
    from gardenplot.window.ways_dialog import WaysDialog

NOTHING_YET = _("Nothing is ordered or planted yet: Season ▸ Add order …")
ALL_FITS = _("All fits: no order lacks plants, no block lacks ground.")
_LACKS = frozenset({Kind.OVERLAP, Kind.OUTSIDE, Kind.ORDER_SHORT, Kind.ORDER_UNPLANTED})


class WaysDeeds:
    """Opens the dialog at what is in question, and tells why there is nothing to be done."""

    def __init__(self, window: "MainWindow") -> None:
        self._window, self._document = window, window.document
        self.dialog: WaysDialog | None = None

    def open(self) -> None:
        """Show the ways out, beginning with the order, the finding or the planting that is chosen."""
        window = self._window
        lacks = lacks_of(self._document) if self._document.plan.beds else ()
        if not lacks:
            window.tell(self.why_not() or ALL_FITS)
            return
        if self.dialog is not None:
            self.dialog.reject()
            self.dialog.deleteLater()
        window.views.show_ground(shown=False)
        marks = [(one.order, one.market) if one.order is not None else one.block for one in lacks]
        number = next((marks.index(one) for one in self._wanted() if one in marks), 0)
        self.dialog = ways_dialog(self._document, window.canvas, window.sight, window, lacks, number)
        self.dialog.told.connect(window.tell)
        beside_drawing.show_beside_drawing(self.dialog, window, window.canvas)

    def why_not(self) -> str:
        """Why no ways out can be sought now."""
        plan = self._document.plan
        if not plan.beds:
            return NO_BED
        found = find_all(plan, self._document.today())
        if any(one.kind in _LACKS for one in found):
            return ""
        return ALL_FITS if plan.plantings or plan.orders else NOTHING_YET

    def _wanted(self) -> list[object]:
        """The market days or plantings in question: the ledger's row where the keyboard is, then what is selected."""
        row, chosen = in_question(self._window.ledger), self._window.sight.planting
        if not isinstance(row, Finding):
            return [row, *self._marks_of(chosen)]
        return [(row.order, row.market), *self._marks_of(row.planting, row.other, chosen)]

    def _marks_of(self, *plantings: str | None) -> list[object]:
        found = [planting_of(self._document.plan, one) for one in plantings if one is not None]
        return [(one.order, one.market or 1) if one.order is not None else one.id for one in found]
