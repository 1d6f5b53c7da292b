"""Why an action cannot be done now, each in a sentence that says what would help; nothing where it can."""

from typing import TYPE_CHECKING

from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


class Reasons:
    """Looks at the plan, the selection, the shelf and the ledger; each answer is quick enough for every change."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def bed(self) -> str:
        """For what needs any bed."""
        return "" if self._document.plan.beds else _("There is no bed yet: Bed ▸ Add bed …")

    def chosen_bed(self) -> str:
        """For what is done to the selected bed."""
        chosen = _("Choose a bed first: click its name.")
        return self.bed() or ("" if self._sight.bed is not None else chosen)

    def planting(self) -> str:
        """For what is done to the selected planting."""
        if self._sight.planting is not None:
            return ""
        some = self._document.plan.plantings
        return _("Choose a planting first: click its block.") if some else _("Nothing is planted yet.")

    def selection(self) -> str:
        """For what is done to whatever is selected."""
        return "" if self._sight.bed is not None else _("Nothing is selected: click a bed's name or a block.")

    def shelf_crop(self) -> str:
        """For what is done with the crop on the shelf."""
        none = _("Choose a crop on the shelf first.")
        return self.bed() or ("" if self._window.shelf.chosen() is not None else none)

    def order(self) -> str:
        """For what is done to the order chosen in the ledger."""
        if self._window.ledger.current_order() is not None:
            return ""
        some = self._document.plan.orders
        return _("Choose an order first, under Orders.") if some else _("There is no order yet.")

    def undo(self) -> str:
        """For taking the last step back."""
        return "" if self._document.stack.canUndo() else _("No step was done yet.")

    def redo(self) -> str:
        """For doing a step again that was taken back."""
        return "" if self._document.stack.canRedo() else _("No step was taken back.")
