"""What the menus do when the season does not go as planned: plan again."""

from typing import TYPE_CHECKING

from gardenplot.findings import Finding
from gardenplot.window import beside_drawing
from gardenplot.window.in_question import in_question
from gardenplot.window.late import again_dialog

if TYPE_CHECKING:
    from gardenplot.window.again_dialog import AgainDialog
    from gardenplot.window.main import MainWindow


class AgainDeeds:
    """Opens the dialog at the planting that is in question."""

    def __init__(self, window: "MainWindow") -> None:
        self._window, self._document = window, window.document
        self.dialog: AgainDialog | None = None

    def open(self) -> None:
        """Show what deviates with its answers, beginning with the finding or the planting that is chosen."""
        window = self._window
        if not self._document.plan.plantings:
            window.tell(window.registry.actions["planting.again"].why_not())
            return
        if self.dialog is not None:
            self.dialog.reject()
            self.dialog.deleteLater()
        window.views.show_ground(shown=False)
        row = in_question(window.ledger)
        of_row = row.planting if isinstance(row, Finding) else None
        in_bed = (one.id for one in self._document.plan.plantings if one.bed == window.sight.bed)
        wanted = (of_row, window.sight.planting, *in_bed)
        self.dialog = again_dialog(self._document, window.canvas, window.sight, window, wanted, of_row)
        self.dialog.told.connect(window.tell)
        beside_drawing.show_beside_drawing(self.dialog, window, window.canvas)
