"""What the menus do with the shapes of beds: outlines, new beds traced by hand, posts."""

from typing import TYPE_CHECKING

from gardenplot.drawing.handles import Grip, Handle
from gardenplot.errors import PlanError
from gardenplot.gestures.obstacle_moved import PLACE, try_post
from gardenplot.gestures.outline_drawn import RESHAPE, outlined
from gardenplot.gestures.outline_traced import trace_bed
from gardenplot.gestures.stage import Trial
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.window.main import MainWindow


class ShapeDeeds:
    """What is done to the shapes of beds."""

    def __init__(self, window: "MainWindow") -> None:
        self._window = window
        self._stage, self._sight = window.canvas.stage, window.sight

    def reshape(self) -> None:
        """Show the corners of the selected bed; a rectangle becomes an outline with its four corners."""
        bed = self._bed()
        if bed is None:
            return
        try:
            after = outlined(self._stage.plan, bed)
        except PlanError as error:
            self._window.tell(str(error))
            return
        self._stage.commit(Trial(after, bed, handle=Handle(Grip.CORNER, 0)), RESHAPE)
        self._window.canvas.setFocus()
        self._window.tell(_("Drag a corner, or draw a new one out of a side. Keys: [ and ], arrows, Insert, Delete."))

    def trace(self) -> None:
        """Begin to trace a new bed on empty ground under the others."""
        self._stage.begin(trace_bed(self._stage), on_ground=True)
        self._window.canvas.setFocus()

    def place_post(self) -> None:
        """Place a post at a free spot of the selected bed, ready to be dragged."""
        bed = self._bed()
        if bed is None:
            return
        try:
            self._stage.commit(try_post(self._stage.plan, bed, self._stage.day), PLACE)
        except PlanError as error:
            self._window.tell(str(error))
        self._window.canvas.setFocus()

    def _bed(self) -> str | None:
        if self._sight.bed is None:
            self._window.tell(_("Choose a bed first: click its name."))
        return self._sight.bed
