"""The two ways to look at the beds, of which one is shown: as strips on one tape, or where they lie on the ground."""

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from gardenplot.drawing.ground_words import scale_line
from gardenplot.drawing.tape_words import scale_words
from gardenplot.gestures import kept
from gardenplot.plan import bed_of
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.late import ground_view
from gardenplot.window.sight import Sight
from gardenplot.window.tab_order import put_behind

if TYPE_CHECKING:
    from gardenplot.window.ground_view import GroundView


class Views(QStackedWidget):
    """What the menu asks of the drawing goes to the one that is shown."""

    turned = Signal(bool)
    """Emitted when the other one is shown, with whether that is the ground."""
    ground_looked = Signal()
    """Emitted when the ground is looked at in another way."""
    pointed = Signal(object)
    refused = Signal(str)
    menu_wanted = Signal(QPoint)
    """What the drawing of the ground has to say, and asks for."""

    def __init__(self, document: Document, sight: Sight, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.canvas = canvas
        self.addWidget(canvas)
        self.canvas.stage.ground_wanted.connect(lambda traced: self.show_ground(False) if traced else None)
        # Corners and posts are taken hold of on the strips alone.
        sight.selected.connect(lambda: self.show_ground(False) if sight.handle is not None else None)

    @cached_property
    def ground(self) -> "GroundView":
        """The drawing of the ground, made when it is first asked for."""
        ground = ground_view(self._document, self._sight, self.canvas)
        self.addWidget(ground)
        put_behind(self.canvas, ground)
        ground.strip_wanted.connect(self._go_to_strip)
        ground.eye.changed.connect(self.ground_looked)
        ground.hand.pointed.connect(self.pointed)
        ground.stage.refused.connect(self.refused)
        ground.menu_wanted.connect(self.menu_wanted)
        return ground

    @property
    def shows_ground(self) -> bool:
        """Whether the ground is shown, and not the strips."""
        return self.currentWidget() is not self.canvas

    def show_ground(self, shown: bool) -> None:
        """Show the ground or the strips; the keyboard goes along."""
        if shown == self.shows_ground:
            return
        before, after = (self.canvas, self.ground) if shown else (self.ground, self.canvas)
        had_focus = before.hasFocus()
        self.setCurrentWidget(after)
        if had_focus:
            after.setFocus(Qt.FocusReason.OtherFocusReason)
        if shown and self._sight.bed is not None:
            self.ground.eye.reveal(self._sight.bed)
        if not shown:
            _lead_alone(self._sight)
        self.turned.emit(shown)

    def take_keys(self) -> None:
        """Put the keyboard into the drawing that is shown."""
        (self.ground if self.shows_ground else self.canvas).setFocus(Qt.FocusReason.ShortcutFocusReason)

    def zoom(self, factor: float) -> None:
        """Zoom at the middle."""
        (self.ground.eye if self.shows_ground else self.canvas.view).zoom(factor)

    def fit(self) -> None:
        """Show the whole ground, or the whole length of the longest bed."""
        (self.ground.eye if self.shows_ground else self.canvas.view).fit()

    def fit_all(self) -> None:
        """Show all beds at once."""
        if self.shows_ground:
            self.ground.eye.fit()
        else:
            self.canvas.view.fit(all_beds=True)

    def zoom_to_selection(self) -> None:
        """Show what is selected as large as fits: the bed on the ground; the planting or the bed on its strip."""
        plan, sight = self._document.plan, self._sight
        if sight.bed is None:
            return
        if self.shows_ground:
            self.ground.eye.zoom_to(sight.bed)
        elif sight.planting is not None:
            block = kept.layout_in(plan, sight.planting)
            self._zoom_strip(sight.bed, block.start, block.end)
        else:
            self._zoom_strip(sight.bed, 0, bed_of(plan, sight.bed).length.nm)

    def _zoom_strip(self, bed: str, first: int, last: int) -> None:
        self.canvas.view.zoom_to(first, last)
        self.canvas.view.reveal(bed)

    def scale_words(self, dots_per_inch: float) -> str:
        """The scale of the drawing that is shown."""
        if self.shows_ground:
            return scale_line(self.ground.eye.eye.scale, dots_per_inch)
        return scale_words(self._document.plan.place.units, self.canvas.view.strips(), dots_per_inch)

    def _go_to_strip(self, bed: str, planting: str | None) -> None:
        self.show_ground(False)
        self._sight.select(bed, planting)
        self.canvas.view.reveal(bed)
        self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)


def _lead_alone(sight: Sight) -> None:
    """Keep of several chosen beds the one that leads: a strip does not show that others are chosen too."""
    sight.select(sight.bed, sight.planting, sight.handle, sight.others)
