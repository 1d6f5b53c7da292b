"""What the menus do with wishes."""

from typing import TYPE_CHECKING

from gardenplot.drawing.wish_table import lacks_anything
from gardenplot.plan import Crop, by_id, crop_of
from gardenplot.plan.edits import remove_wish
from gardenplot.window.late import ask_wish, fill_dialog
from gardenplot.window.reasons import CHOOSE_CROP, NO_BED
from gardenplot.window.theme import magnified
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.fill_dialog import FillDialog
    from gardenplot.window.main import MainWindow

CHOOSE_WISH = _("Choose a wish first, under Wishes.")

NOTHING_WANTED = _("Nothing is wished for and no order lacks plants: Season ▸ Add wish …")

_TALL = 300
"""Pixels that the dialog of a filling takes at most, with text of the usual size."""


class WishDeeds:
    """What is done to wishes."""

    def __init__(self, window: "MainWindow") -> None:
        self._window, self._document = window, window.document
        self._filling: FillDialog | None = None
        window.ledger.wishes.wanted.connect(self.edit)

    def edit(self, wish: str | None = None, crop: Crop | None = None) -> None:
        """Ask for changes to a wish, or for a new one, and show it among the others."""
        if ask_wish(self._document, self._window, wish, crop):
            self._window.ledger.turn_to(self._window.ledger.wishes.table)

    def from_shelf(self) -> None:
        """Ask for a wish for the crop that is chosen on the shelf."""
        crop = self._window.shelf.chosen()
        if crop is None:
            self._window.tell(CHOOSE_CROP)
            return
        self.edit(crop=crop)

    def remove(self) -> None:
        """Remove the wish chosen in the ledger; what was planted for it stays."""
        wish, plan = self._chosen(), self._document.plan
        if wish is None:
            self._window.tell(CHOOSE_WISH)
            return
        name = crop_of(plan, by_id(plan.wishes, wish).crop).name
        self._document.change(_("Remove the wish for {crop}").format(crop=name), remove_wish(plan, wish))

    def _chosen(self) -> str | None:
        """The wish of the chosen row; a table that is not in front may have rows of wishes that are gone."""
        wish = self._window.ledger.wishes.current()
        return wish if any(one.id == wish for one in self._document.plan.wishes) else None

    def fill(self) -> None:
        """Fill the season in a dialog beside the drawing; the one that is open comes to the front."""
        if self._filling is not None and self._filling.isVisible():
            self._filling.activateWindow()
            return
        if self._filling is not None:
            self._filling.deleteLater()
        self._filling = fill_dialog(self._document, self._window.canvas.stage, self._window)
        self._filling.show()
        # At the foot of the window, so that the drawing stays in sight.
        frame, beside = self._window.geometry(), self._filling
        beside.move(frame.center().x() - beside.width() // 2, frame.bottom() - round(_TALL * magnified()))

    def why_no_filling(self) -> str:
        """Why the season cannot be filled now."""
        if not self._document.plan.beds:
            return NO_BED
        return "" if lacks_anything(self._document.plan) else NOTHING_WANTED

    def why_no_removal(self) -> str:
        """Why no wish can be removed now."""
        if self._chosen() is not None:
            return ""
        return CHOOSE_WISH if self._document.plan.wishes else _("There is no wish yet.")
