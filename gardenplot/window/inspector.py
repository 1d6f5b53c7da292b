"""Beside the drawing: whatever is selected, a planting, a bed, or the plan."""

from functools import cached_property
from typing import TypeVar

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QScrollArea, QStackedWidget, QWidget

from gardenplot.drawing.hand_words import together_words
from gardenplot.window.bed_panel import BedPanel
from gardenplot.window.document import Document
from gardenplot.window.plan_panel import PlanPanel
from gardenplot.window.planting_panel import PlantingPanel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.words import _

_Panel = TypeVar("_Panel", bound=QWidget)


class Inspector(QStackedWidget):
    """Three panels, each made when it is first needed, of which the one for the selection is shown."""

    compare_wanted = Signal()

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self._areas: dict[QWidget, QScrollArea] = {}
        self.plan = self._added(PlanPanel(document))
        self.setAccessibleName(_("What is selected"))
        document.changed.connect(self.refresh)
        document.opened.connect(self.refresh)
        sight.selected.connect(self.refresh)
        sight.day_changed.connect(self._sum)
        self.setMinimumWidth(round(264 * min(magnified(), 1.4)))

    @cached_property
    def bed(self) -> BedPanel:
        """The panel of a bed."""
        return self._added(BedPanel(self._document))

    @cached_property
    def planting(self) -> PlantingPanel:
        """The panel of a planting."""
        panel = self._added(PlantingPanel(self._document))
        panel.compare.clicked.connect(self.compare_wanted)
        return panel

    def _added(self, panel: _Panel) -> _Panel:
        self._areas[panel] = _scrolled(panel)
        self.addWidget(self._areas[panel])
        return panel

    def refresh(self) -> None:
        """Show the selection as it is now."""
        if self._sight.planting is not None:
            self.planting.show_planting(self._sight.planting)
            self._sum()
            self.setCurrentWidget(self._areas[self.planting])
        elif self._sight.bed is not None:
            self.bed.show_bed(self._sight.bed)
            self.setCurrentWidget(self._areas[self.bed])
        else:
            self.plan.show_plan()
            self.setCurrentWidget(self._areas[self.plan])

    def _sum(self) -> None:
        """Show what several chosen plantings come to on the day that is shown."""
        if self._sight.planting is not None:
            words = together_words(self._document.plan, self._sight.chosen, self._sight.day)
            self.planting.together.setText(words)
            self.planting.together.setVisible(bool(words))

    def focus(self) -> None:
        """Put the keyboard into the first field of the panel."""
        panel: PlanPanel | BedPanel | PlantingPanel = self.plan
        if self._sight.planting is not None:
            panel = self.planting
        elif self._sight.bed is not None:
            panel = self.bed
        shown = (field for field in panel.form.fields.values() if not field.isHidden())
        next(shown).setFocus(Qt.FocusReason.ShortcutFocusReason)


def _scrolled(panel: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setWidget(panel)
    area.setWidgetResizable(True)
    area.setAccessibleName(_("What is selected, to scroll"))
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return area
