"""What the menus do with gaps: fill them with what is wished for."""

from typing import TYPE_CHECKING

from gardenplot.window import gap_keys
from gardenplot.window.late import fill_gaps
from gardenplot.window.reasons import no_wish
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


class GapDeeds:
    """Lets the hand go from gap to gap; it says why that cannot be."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window

    def fill(self) -> None:
        """Show the best blocks for each gap that the hand goes to; Escape puts this away."""
        window, stage, places = self._window, self._window.canvas.stage, self._window.canvas.places
        reason = no_wish(window)
        if reason:
            window.tell(reason)
            return
        window.views.show_ground(shown=False)
        window.canvas.setFocus()
        at = window.canvas.hand.at
        found = places.under(at) if at is not None else None
        first = (found.bed, found.x) if found is not None else None
        if first is None and window.sight.bed is not None:
            first = (window.sight.bed, 0)
        crop = window.shelf.chosen() if not stage.plan.wishes else None
        stage.begin(fill_gaps(stage, crop, first), filling=True)
        gap_keys.show_lines(stage, places)
        window.tell(
            _("Go over the gaps. A click or Enter takes the blocks; arrows go from gap to gap; Escape ends it.")
        )
