"""What the menus do with the shapes of beds: outlines, new beds traced by hand, posts."""

from typing import TYPE_CHECKING

from gardenplot.drawing.handles import Grip, Handle
from gardenplot.errors import PlanError
from gardenplot.gestures import obstacle_moved, outline_drawn, outline_traced, stage
from gardenplot.window.reasons import CHOOSE_BED
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
            after = outline_drawn.outlined(self._stage.plan, bed)
        except PlanError as error:
            self._window.tell(str(error))
            return
        self._stage.commit(stage.Trial(after, bed, handle=Handle(Grip.CORNER, 0)), outline_drawn.RESHAPE)
        self._window.canvas.setFocus()
        self._window.tell(_("Drag a corner, or draw a new one out of a side. Keys: [ and ], arrows, Insert, Delete."))

    def trace(self) -> None:
        """Begin to trace a new bed on empty ground under the others."""
        self._stage.begin(outline_traced.trace_bed(self._stage), on_ground=True)
        self._window.canvas.setFocus()

    def place_post(self) -> None:
        """Place a post at a free spot of the selected bed, ready to be dragged."""
        bed = self._bed()
        if bed is None:
            return
        try:
            self._stage.commit(obstacle_moved.try_post(self._stage.plan, bed, self._stage.day), obstacle_moved.PLACE)
        except PlanError as error:
            self._window.tell(str(error))
        else:
            self._window.tell(_("Drag the post to its place. Keys: arrows, with Shift finely; Delete."))
        self._window.canvas.setFocus()

    def _bed(self) -> str | None:
        if self._sight.bed is None:
            self._window.tell(CHOOSE_BED)
        return self._sight.bed
