"""Why an action cannot be done now, each in a sentence that says what would help; nothing where it can."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QUndoStack

from gardenplot.plan import planting_of
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow

NO_BED = _("There is no bed yet: Bed ▸ Add bed …")
CHOOSE_BED = _("Choose a bed first: click its name, or Bed ▸ Next bed.")
CHOOSE_PLANTING = _("Choose a planting first: click its block, or Up and Down on the drawing.")
NO_COVER = _("There is no cover yet: Planting ▸ Cover this block at night …")
CHOOSE_CROP = _("Choose a crop on the shelf first.")
OF_TRAYS = _("These are trays that harden off: layouts are compared of the planting that they are for.")


class Reasons:
    """Looks at the plan, the selection, the shelf and the ledger; each answer is quick enough for every change."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._document, self._sight = window.document, window.sight

    def bed(self) -> str:
        """For what needs any bed."""
        return "" if self._document.plan.beds else NO_BED

    def chosen_bed(self) -> str:
        """For what is done to the selected bed."""
        return self.bed() or ("" if self._sight.bed is not None else CHOOSE_BED)

    def planting(self) -> str:
        """For what is done to the selected planting."""
        if self._sight.planting is not None:
            return ""
        some = self._document.plan.plantings
        return CHOOSE_PLANTING if some else _("Nothing is planted yet.")

    def series(self) -> str:
        """For what is done to a planting of a series."""
        one = self._sight.planting
        if one is None or planting_of(self._document.plan, one).series is not None:
            return self.planting()
        return _("This planting belongs to no series: Planting ▸ Repeat as a series …")

    def layouts(self) -> str:
        """For comparing ways to plant the selected planting."""
        one = self._sight.planting
        if one is None or planting_of(self._document.plan, one).hardens is None:
            return self.planting()
        return OF_TRAYS

    def selection(self) -> str:
        """For what is done to whatever is selected."""
        return "" if self._sight.bed is not None else _("Nothing is selected: click a bed's name or a block.")

    def shelf_crop(self) -> str:
        """For what is done with the crop on the shelf."""
        return self.bed() or ("" if self._window.shelf.chosen() is not None else CHOOSE_CROP)

    def order(self) -> str:
        """For what is done to the order chosen in the ledger."""
        if self._window.ledger.current_order() is not None:
            return ""
        some = self._document.plan.orders
        return _("Choose an order first, under Orders.") if some else _("There is no order yet.")

    def planted(self) -> str:
        """For what tells when anything is to be done."""
        plan = self._document.plan
        return "" if plan.plantings or plan.covers else _("Nothing is planted yet.")

    def anything_planted(self) -> str:
        """For planning again."""
        return "" if self._document.plan.plantings else _("Nothing is planted yet.")

    def cover(self) -> str:
        """For what needs a cover."""
        return "" if self._document.plan.covers else NO_COVER


def no_file(window: "MainWindow") -> str:
    """For what is done with the plan's file."""
    return "" if window.document.path is not None else _("The plan has no file yet: File ▸ Save.")


def no_undo(stack: QUndoStack) -> str:
    """For taking the last step back."""
    return "" if stack.canUndo() else _("No step was done yet.")


def no_redo(stack: QUndoStack) -> str:
    """For doing a step again that was taken back."""
    return "" if stack.canRedo() else _("No step was taken back.")


def no_wish(window: "MainWindow") -> str:
    """For filling gaps with what is wished for."""
    plan = window.document.plan
    if not plan.beds:
        return NO_BED
    wanted = plan.wishes or plan.orders or window.shelf.chosen() is not None
    return "" if wanted else _("Nothing is wished for or ordered yet: choose a crop on the shelf to fill gaps with.")
