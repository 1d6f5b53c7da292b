"""The panel of the season: the map of the bed in sight, or those of all beds in small, and a switch between them."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QCheckBox, QFrame, QScrollArea, QStackedLayout, QWidget

from gardenplot.gestures.season_words import season_line, several_season_line
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.season_beds import SeasonBeds
from gardenplot.window.season_panel import SeasonPanel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.words import _

_NEAR = 24
"""How near in pixels to the end of the scrolled list the hand gets before it is scrolled on."""
_BESIDE = 12
"""Pixels right of the switch, and the bar of a scrolled list besides."""


class SeasonMaps(QWidget):
    """The switch lies in the line of the bed's name, so that the days lose no room to it."""

    def __init__(self, document: Document, sight: Sight, canvas: Canvas, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document, self._sight = document, sight
        self.switch = QCheckBox(_("all beds"), self)
        self.panel = SeasonPanel(document, sight, canvas)
        self.beds = SeasonBeds(document, sight, self.panel, canvas.stage)
        self.scrolled = QScrollArea()
        self.scrolled.setWidget(self.beds)
        self.scrolled.setWidgetResizable(True)
        self.scrolled.setFrameShape(QFrame.Shape.NoFrame)
        self.scrolled.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.scrolled.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        # The tape runs from left to right in whichever way words run elsewhere.
        self.setLayoutDirection(Qt.LayoutDirection.LeftToRight)
        self._sheets = QStackedLayout(self)
        for each in (self.panel, self.scrolled):
            self._sheets.addWidget(each)
        # First of all, since Tab goes on in this order, from the line of names down.
        self.switch.lower()
        self.switch.setToolTip(_("Show the season maps of all beds in small"))
        self.switch.toggled.connect(self._turn)
        self.beds.opened.connect(lambda: self.switch.setChecked(False))
        for map_of in (self.panel, self.beds):
            map_of.menu_wanted.connect(canvas.menu_wanted)
        self.beds.hand.moved.connect(lambda at: self.scrolled.ensureVisible(0, round(at.y()), 0, _NEAR))
        sight.selected.connect(self._reveal)
        for signal in (sight.selected, document.changed):
            signal.connect(self._describe)
        self._describe()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_switch()

    def _place_switch(self) -> None:
        """Put the switch at the right end of the line of names, before the bar of the scrolled list."""
        self.switch.adjustSize()
        bar = self.scrolled.verticalScrollBar().sizeHint().width()
        self.switch.move(self.width() - self.switch.width() - _BESIDE - bar, 3)
        self.switch.raise_()
        self.panel.room = self.beds.room = (self.switch.width() + _BESIDE + bar) / magnified()

    def _turn(self, shows_all: bool) -> None:
        """Show all beds or one, and leave the keyboard with what is shown."""
        self._sheets.setCurrentWidget(self.scrolled if shows_all else self.panel)
        self._place_switch()
        (self.beds if shows_all else self.panel).setFocus()
        self._reveal()

    def _describe(self) -> None:
        """What is chosen in words, with its days and its place, for a screen reader."""
        plan, known = self._document.plan, {one.id for one in self._document.plan.plantings}
        chosen = [one for one in self._sight.chosen if one in known]
        words = "" if not chosen else season_line(plan, chosen[0])
        words = several_season_line(plan, chosen) if len(chosen) > 1 else words
        for map_of in (self.panel, self.beds):
            map_of.setAccessibleDescription(words)

    def _reveal(self) -> None:
        """Scroll to the bed that is chosen."""
        place = self.beds.place_of(self._sight.bed)
        if place is not None and self.switch.isChecked():
            half = (place[1] - place[0]) // 2
            self.scrolled.ensureVisible(0, place[0] + half, 0, half)
