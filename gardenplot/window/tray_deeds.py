"""What the menus do with trays: set out where they harden off."""

from typing import TYPE_CHECKING

from gardenplot.errors import PlanError
from gardenplot.gestures import hardening
from gardenplot.window import canvas_keys
from gardenplot.window.reasons import CHOOSE_PLANTING

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


class TrayDeeds:
    """What is done with the trays of the selected planting; it says why it cannot be."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window

    def harden(self) -> None:
        """Set its trays out where they harden off, and show the first of those days."""
        window, planting = self._window, self._window.sight.planting
        if planting is None:
            window.tell(CHOOSE_PLANTING)
            return
        stage = window.canvas.stage
        try:
            trial = hardening.try_trays(stage.plan, planting)
            canvas_keys.settle(trial, hardening.HARDEN, stage)
        except PlanError as error:
            window.tell(str(error))
        else:
            window.sight.show_day(window.sight.day_for(stage.plan, trial.planting))
            window.sight.select(trial.bed, trial.planting)
        window.canvas.setFocus()
