"""Beside the drawing: whatever is selected, a planting, a bed, or the plan."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QStackedWidget, QWidget

from gardenplot.drawing.hand_words import together_words
from gardenplot.window.bed_panel import BedPanel
from gardenplot.window.document import Document
from gardenplot.window.plan_panel import PlanPanel
from gardenplot.window.planting_panel import PlantingPanel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.words import _


class Inspector(QStackedWidget):
    """Three panels, of which the one for the selection is shown."""

    def __init__(self, document: Document, sight: Sight, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.plan = PlanPanel(document)
        self.bed = BedPanel(document)
        self.planting = PlantingPanel(document)
        for panel in (self.plan, self.bed, self.planting):
            self.addWidget(_scrolled(panel))
        self.setAccessibleName(_("What is selected"))
        document.changed.connect(self.refresh)
        document.opened.connect(self.refresh)
        sight.selected.connect(self.refresh)
        sight.day_changed.connect(self._sum)
        self.setMinimumWidth(round(264 * min(magnified(), 1.4)))

    def refresh(self) -> None:
        """Show the selection as it is now."""
        if self._sight.planting is not None:
            self.planting.show_planting(self._sight.planting)
            self._sum()
            self.setCurrentIndex(2)
        elif self._sight.bed is not None:
            self.bed.show_bed(self._sight.bed)
            self.setCurrentIndex(1)
        else:
            self.plan.show_plan()
            self.setCurrentIndex(0)

    def _sum(self) -> None:
        """Show what several chosen plantings come to on the day that is shown."""
        if self._sight.planting is not None:
            words = together_words(self._document.plan, self._sight.chosen, self._sight.day)
            self.planting.together.setText(words)
            self.planting.together.setVisible(bool(words))

    def focus(self) -> None:
        """Put the keyboard into the first field of the panel."""
        panel = (self.plan, self.bed, self.planting)[self.currentIndex()]
        shown = (field for field in panel.form.fields.values() if not field.isHidden())
        next(shown).setFocus(Qt.FocusReason.ShortcutFocusReason)


def _scrolled(panel: QWidget) -> QScrollArea:
    area = QScrollArea()
    area.setWidget(panel)
    area.setWidgetResizable(True)
    area.setAccessibleName(_("What is selected, to scroll"))
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return area
