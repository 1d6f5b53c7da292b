"""Beside the drawing: whatever is selected, a planting, a bed, or the plan."""

from functools import cached_property
from typing import TYPE_CHECKING, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from gardenplot.drawing import hand_words
from gardenplot.drawing.letters import looks
from gardenplot.window.document import Document
from gardenplot.window.fields import Form, labelled
from gardenplot.window.headed_area import HeadedArea
from gardenplot.window.late import bed_panel, planting_panel
from gardenplot.window.panel_switch import go_to
from gardenplot.window.plan_panel import PlanPanel
from gardenplot.window.sight import Sight
from gardenplot.window.tab_order import put_behind
from gardenplot.window.theme import magnified
from gardenplot.words import _

AnyPanel = TypeVar("AnyPanel", PlanPanel, "BedPanel", "PlantingPanel")

if TYPE_CHECKING:
    from gardenplot.window.bed_panel import BedPanel
    from gardenplot.window.planting_panel import PlantingPanel

    Panel = PlanPanel | BedPanel | PlantingPanel


class Inspector(QStackedWidget):
    """Three panels, of which the one for the selection is shown; each is made when it is first asked for."""

    planting_made = Signal(object)
    """Emitted with the panel of a planting once it is made."""
    bed_made = Signal(object)
    """Emitted with the panel of a bed once it is made."""

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self._areas: dict[QWidget, HeadedArea] = {}
        self.setAccessibleName(_("What is selected"))
        document.changed.connect(self.refresh)
        sight.selected.connect(self.refresh)
        sight.day_changed.connect(self._sum)
        self.setMinimumWidth(round(264 * min(magnified(), 1.35)))

    @cached_property
    def plan(self) -> PlanPanel:
        """The panel of the plan as a whole."""
        area = self._area()
        return self._filled(area, PlanPanel(self._document, area))

    @cached_property
    def bed(self) -> "BedPanel":
        """The panel of a bed."""
        area = self._area()
        panel = self._filled(area, bed_panel(self._document, area))
        self.bed_made.emit(panel)
        return panel

    @cached_property
    def planting(self) -> "PlantingPanel":
        """The panel of a planting."""
        area = self._area()
        panel = self._filled(area, planting_panel(self._document, area))
        self.planting_made.emit(panel)
        return panel

    def _area(self) -> HeadedArea:
        """Room for a panel: what is made in its place has its looks from the beginning."""
        area = HeadedArea(self)
        area.setAccessibleName(_("What is selected, to scroll"))
        self.addWidget(area)
        return area

    def _filled(self, area: HeadedArea, panel: AnyPanel) -> AnyPanel:
        area.setWidget(panel)
        area.stay(panel.title)
        self._areas[panel] = area
        put_behind(self, area)
        return panel

    def _panel(self) -> "Panel":
        """The panel for what is selected."""
        if self._sight.planting is not None:
            return self.planting
        return self.bed if self._sight.bed is not None else self.plan

    def refresh(self) -> None:
        """Show the selection as it is now."""
        if self._sight.planting is not None:
            self.planting.show_planting(self._sight.planting)
            self._sum()
        elif self._sight.bed is not None:
            self.bed.show_bed(self._sight.bed)
        else:
            self.plan.show_plan()
        self.setCurrentWidget(self._areas[self._panel()])

    def _sum(self) -> None:
        """Show what several chosen plantings come to on the day that is shown."""
        if self._sight.planting is not None:
            plan, chosen = self._document.plan, self._sight.chosen
            words = hand_words.together_words(plan, chosen, self._sight.day, looks(plan))
            self.planting.together.setText(words)
            self.planting.together.setVisible(bool(words))

    def show_top(self) -> None:
        """Scroll the panel back to its beginning, where what is found of it stands with what answers that."""
        self._areas[self._panel()].verticalScrollBar().setValue(0)

    def fields(self) -> tuple[str, list[tuple[str, QWidget]]]:
        """What is selected by its name, and the fields that are shown for it, each with its label."""
        panel = self._panel()
        return panel.title.text(), [pair for form in panel.findChildren(Form) for pair in labelled(form)]

    def focus(self) -> None:
        """Put the keyboard into the first field of the panel."""
        shown = (field for field in self._panel().form.fields.values() if not field.isHidden())
        go_to(next(shown))
