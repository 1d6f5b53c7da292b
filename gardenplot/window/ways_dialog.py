"""What orders lack that the plan cannot hold, one after another, each with its ways out."""

from PySide6.QtWidgets import QWidget

from gardenplot.drawing.remedies import Trouble
from gardenplot.drawing.ways_table import lack_title
from gardenplot.exports.apart import Work
from gardenplot.filling.ways_out import Lack
from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.sight import Sight
from gardenplot.words import _

_WORK = ("gardenplot.drawing.ways_table", "ways_trouble")
_FEW = 16
"""Plantings of a plan whose ways out are found within a tenth of a second; with more, in a process of its own."""


class WaysDialog(AnswersDialog):
    """Begins with the one of the lacks that has this number."""

    def __init__(
        self, document: Document, canvas: Canvas, sight: Sight, parent: QWidget, lacks: tuple[Lack, ...], number: int
    ) -> None:
        super().__init__(document, canvas, sight, parent)
        self._lacks = lacks
        self.setWindowTitle(_("Ways out of what does not fit"))
        for lack in lacks:
            self.which.addItem(lack_title(document.plan, lack))
        self.which.setVisible(len(lacks) > 1)
        self.which.setCurrentIndex(number)
        self.which.activated.connect(self._chosen)
        self._chosen(number)

    def _chosen(self, number: int) -> None:
        plan = self._document.plan
        self.seek(Work(*_WORK, (plan, self._lacks[number])), at_once=len(plan.plantings) <= _FEW)

    def _found(self, value: object) -> None:
        if isinstance(value, Trouble):
            self.show_trouble(value)
