"""What came about otherwise than planned: each with its answers, all that is ticked answered in one step."""

from fractions import Fraction

from attrs import evolve
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from gardenplot.drawing.again_table import GOES_AS_PLANNED
from gardenplot.drawing.again_together import Answered
from gardenplot.drawing.days import day_words
from gardenplot.drawing.letters import keeping_letters
from gardenplot.errors import PlanError
from gardenplot.exports.apart import Work
from gardenplot.units import parse_share
from gardenplot.window.answers_dialog import AnswersDialog
from gardenplot.window.canvas import Canvas
from gardenplot.window.deviations import Deviations, Wanted
from gardenplot.window.document import Document
from gardenplot.window.fields import LARGE, Typed
from gardenplot.window.plain import PlainLabel
from gardenplot.window.sight import Sight
from gardenplot.window.theme import magnified
from gardenplot.words import _, ngettext

_WORK = ("gardenplot.drawing.again_together", "answered")
_FEW = 24
"""Plantings of a plan that is planned again within a tenth of a second; with more, in a process of its own."""
_LOSS = "again/loss"
_ALL = Wanted()


class AgainDialog(AnswersDialog):
    """Asks for the share of seedlings lost between tray and bed; begins with the first wanted that deviates.

    All that deviates is ticked, or at first what is wanted only. What was answered before, in the order of
    the plan, is the ground for the next answer.
    """

    as_taken = staticmethod(keeping_letters)
    """Stakes and sheets are in somebody's hand by now: what was there keeps its letter."""

    def __init__(
        self, document: Document, canvas: Canvas, sight: Sight, parent: QWidget, wanted: Wanted = _ALL
    ) -> None:
        super().__init__(document, canvas, sight, parent)
        self._wanted = wanted
        self.all = Deviations()
        self._answered: Answered | None = None
        self.setWindowTitle(_("Plan again on {day}").format(day=day_words(document.today())))
        self.loss, label = Typed(self._lose), PlainLabel(_("Lost from tray to bed"))
        self.loss.setAccessibleName(label.text())
        self.loss.setFixedWidth(round(72 * magnified()))
        self.loss.lay_below = lambda complaint: self.column.insertWidget(self.column.count() - 1, complaint)
        label.setBuddy(self.loss)
        self._lay_in_front(label)
        self.loss.show_value(str(QSettings().value(_LOSS, "0 %")))
        self.column.insertWidget(0, self.all)
        self.all.hide()
        self.which.hide()
        self.all.turned.connect(self._show)
        self.all.picked.connect(lambda: self._seek(anew=False))
        self.view.picked.connect(self._pick)
        self._seek()

    def _lay_in_front(self, label: PlainLabel) -> None:
        """Lay the loss in front of the buttons, beside its label where there is room."""
        beside = QHBoxLayout()
        for part in (label, self.loss):
            beside.addWidget(part)
        if magnified() < LARGE:
            label.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
            self.foot.add_group(beside)
            self.foot.items.insert(0, self.foot.items.pop())
        else:
            label.setWordWrap(True)
            self.column.insertLayout(self.column.count() - 1, beside)

    def _seek(self, *, anew: bool = True) -> None:
        plan, loss = self._document.plan, Fraction(parse_share(self.loss.text()).part)
        work = Work(*_WORK, (plan, self._document.today(), loss, self.all.picks(self._wanted.only)))
        self.seek(work, at_once=len(plan.plantings) <= _FEW, anew=anew)

    def _pick(self, number: object) -> None:
        """Another answer is chosen to one of several."""
        if isinstance(number, int) and self._is_of_several:
            self.all.pick(number)

    def _lose(self, text: str) -> None:
        """Plan again with another loss, which is kept for the next time."""
        share = parse_share(text or "0 %")
        if share.part >= 1:
            raise PlanError(_("“{typed}” leaves no plant: a share below 100 % is needed").format(typed=text))
        self.loss.show_value(share.text)
        QSettings().setValue(_LOSS, share.text)
        self._seek()
        self.loss.setFocus()

    @property
    def _is_of_several(self) -> bool:
        return self._answered is not None and len(self._answered.deviations) > 1

    def _found(self, value: object) -> None:
        """Begin with what is wanted, else with the first that deviates."""
        self._answered = value if isinstance(value, Answered) and value.deviations else None
        only = self._wanted.only
        if self._answered is not None and only is not None and only not in self._answered.plantings:
            self._wanted = evolve(self._wanted, only=None)
            self._seek()
            return
        self.all.setVisible(self._is_of_several)
        if self._answered is None:
            self.show_nothing(GOES_AS_PLANNED)
        elif self._is_of_several:
            self.all.show_all(self._answered, self._wanted.plantings)
            if self.view.trouble is None:
                self.view.table.setFocus()
            self._show()
        else:
            self.show_trouble(self._answered.deviations[0].trouble)

    def _show(self) -> None:
        """Show the one of several that is looked at, and all that is chosen drawn together."""
        now = self.all.now
        if now is None or self._answered is None:
            return
        whole = self._answered.remedy
        if self.view.trouble == now.trouble and self.view.chosen == now.remedy:
            self.view.show_whole(whole)
        else:
            self.view.show_trouble(now.trouble, now.chosen, whole)
        count = sum(one.chosen is not None for one in self._answered.deviations)
        self.take.setText(ngettext("Take {count} answer", "Take {count} answers", count).format(count=count))
        self.take.setEnabled(count > 0)
