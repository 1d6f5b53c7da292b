"""What came about otherwise than planned, one planting after another, each with its answers."""

from fractions import Fraction

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QWidget

from gardenplot.drawing.again_table import GOES_AS_PLANNED
from gardenplot.drawing.days import day_words
from gardenplot.drawing.letters import keeping_letters
from gardenplot.drawing.remedies import Trouble
from gardenplot.errors import PlanError
from gardenplot.exports.apart import Work
from gardenplot.units import parse_share
from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.canvas import Canvas
from gardenplot.window.document import Document
from gardenplot.window.fields import Typed
from gardenplot.window.plain import PlainLabel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.words import _

_WORK = ("gardenplot.drawing.again_table", "again_troubles")
_FEW = 24
"""Plantings of a plan that is planned again within a tenth of a second; with more, in a process of its own."""
_LOSS = "again/loss"


class AgainDialog(AnswersDialog):
    """Asks for the share of seedlings lost between tray and bed; begins with the first wanted that deviates."""

    as_taken = staticmethod(keeping_letters)
    """Stakes and sheets are in somebody's hand by now: what was there keeps its letter."""

    def __init__(
        self, document: Document, canvas: Canvas, sight: Sight, parent: QWidget, wanted: tuple[str | None, ...] = ()
    ) -> None:
        super().__init__(document, canvas, sight, parent)
        self._wanted = wanted
        self._troubles: tuple[Trouble, ...] = ()
        self.setWindowTitle(_("Plan again on {day}").format(day=day_words(document.today())))
        self.loss, label = Typed(self._lose), PlainLabel(_("Lost from tray to bed"))
        self.loss.setAccessibleName(label.text())
        self.loss.setFixedWidth(round(72 * magnified()))
        self.loss.lay_below = lambda complaint: self.foot.insertWidget(2, complaint)
        label.setBuddy(self.loss)
        for at, part in enumerate((label, self.loss)):
            self.foot.insertWidget(at, part)
        self.loss.show_value(str(QSettings().value(_LOSS, "0 %")))
        self.which.activated.connect(self._chosen)
        self._seek()

    def _seek(self) -> None:
        plan, loss = self._document.plan, Fraction(parse_share(self.loss.text()).part)
        work = Work(*_WORK, (plan, self._document.today(), loss))
        self.seek(work, at_once=len(plan.plantings) <= _FEW)

    def _lose(self, text: str) -> None:
        """Plan again with another loss, which is kept for the next time."""
        share = parse_share(text or "0 %")
        if share.part >= 1:
            raise PlanError(_("“{typed}” leaves no plant: a share below 100 % is needed").format(typed=text))
        if self.view.trouble is not None:
            self._wanted = (self.view.trouble.about,)
        self.loss.show_value(share.text)
        QSettings().setValue(_LOSS, share.text)
        self._seek()
        self.loss.setFocus()

    def _found(self, value: object) -> None:
        """Begin with what is wanted, else with the first that deviates."""
        self._troubles = value if isinstance(value, tuple) else ()
        self.which.clear()
        self.which.addItems([one.title for one in self._troubles])
        self.which.setVisible(len(self._troubles) > 1)
        abouts = [one.about for one in self._troubles]
        number = next((abouts.index(one) for one in self._wanted if one in abouts), 0)
        if not self._troubles:
            self.show_nothing(GOES_AS_PLANNED)
            return
        self.which.setCurrentIndex(number)
        self._chosen(number)

    def _chosen(self, number: int) -> None:
        self.show_trouble(self._troubles[number])
