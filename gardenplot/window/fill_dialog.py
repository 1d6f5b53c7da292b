"""Filling the season: what counts, the best so far drawn over the plan while it is looked for, then take or leave."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.filling_words import FOUND_COLUMNS, found_rows, worth_words
from gardenplot.drawing.opened import Opened
from gardenplot.drawing.opened_choices import of_filling, of_placed
from gardenplot.errors import GardenplotError
from gardenplot.exports.apart import Parts, Work
from gardenplot.filling import Filling
from gardenplot.filling.effort import turns_in
from gardenplot.gestures.proposal import hold, proposed
from gardenplot.plan import Plan
from gardenplot.units.figures import grouped
from gardenplot.window.canvas_stage import CanvasStage
from gardenplot.window.document import Document
from gardenplot.window.end_buttons import EnterPresses, make_strong
from gardenplot.window.fill_offers import FillOffers
from gardenplot.window.fill_weights import WeightsForm
from gardenplot.window.long_work import Watched
from gardenplot.window.numbers_button import NumbersButton
from gardenplot.window.plain import PlainLabel
from gardenplot.window.tables import Table, TableRow
from gardenplot.window.theme import magnified
from gardenplot.words import _

SECONDS = 15.0
"""How long it is looked for the best, about; it can be stopped before."""
_WORK = ("gardenplot.filling.telling", "fill_and_others")


class FillDialog(EnterPresses):
    """Stands beside the drawing, which can be looked at meanwhile; the plan is untouched until the proposal is taken.

    What changes the plan gives the proposal up, as does Escape in the dialog or on the drawing.
    """

    def __init__(self, document: Document, stage: CanvasStage, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Dialog)
        self.setWindowTitle(_("Fill the season"))
        self._document, self._stage = document, stage
        self._work: Watched | None = None
        self.filling: Filling | None = None
        self.weights, self.offers = WeightsForm(), FillOffers()
        self.says, self.bar = PlainLabel(), QProgressBar()
        self.found = Table(_("What was placed and what was not"), FOUND_COLUMNS, (3,))
        self.begin, self.stop = QPushButton(_("Fill")), QPushButton(_("Stop, keep the best so far"))
        self.take, self.leave = QPushButton(_("Take")), QPushButton(_("Cancel"))
        self.numbers = NumbersButton(partial(_numbers, self), self)
        self._lay_out()
        stage.ended.connect(lambda: self.reject() if self._work is not None else None)
        self.offers.picked.connect(self._offer)
        self.found.wanted.connect(self.numbers.click)
        self.begin.clicked.connect(self._begin)
        self.stop.clicked.connect(self._stop)
        self.take.clicked.connect(self._take)
        self.leave.clicked.connect(self.reject)
        self.offers.hide()
        self._show_step(_("Ground that is free is filled with wishes and with what orders lack."), self.begin)

    def _lay_out(self) -> None:
        self.says.setWordWrap(True)
        self.bar.setAccessibleName(_("turns"))
        self.found.setFixedHeight(round(170 * magnified()))
        self.setMinimumWidth(round(560 * min(magnified(), 1.25)))
        column, row = QVBoxLayout(self), QHBoxLayout()
        column.setSpacing(12)
        for part in (self.says, self.weights, self.bar, self.offers, self.found):
            column.addWidget(part)
        row.addWidget(self.numbers)
        row.addStretch(1)
        for button in (self.leave, self.stop, self.begin, self.take):
            button.setAutoDefault(False)
            row.addWidget(button)
        for button in (self.begin, self.take):
            make_strong(button)
        column.addLayout(row)

    def _show_step(self, words: str, button: QPushButton) -> None:
        """Show what belongs to a step, with the keyboard on its button."""
        self.says.setText(words)
        for part, step in (
            (self.weights, self.begin), (self.begin, self.begin), (self.bar, self.stop), (self.stop, self.stop),
            (self.found, self.take), (self.take, self.take), (self.numbers, self.take),
        ):  # fmt: skip
            part.setVisible(button is step)
        button.setDefault(True)
        button.setFocus()
        self.adjustSize()

    def done(self, outcome: int) -> None:
        """However it is closed, the work ends and the drawing shows the plan again."""
        if self._work is not None:
            self._work.end()
            self._work = None
            self._stage.give_up()
        super().done(outcome)

    def _begin(self) -> None:
        self._stage.begin(hold(), measuring=True)
        turns = turns_in(self._document.plan, SECONDS)
        self.bar.setRange(0, turns)
        self._work = Watched(Work(*_WORK, (self._document.plan, turns, self.weights.weights())), self)
        self._work.told.connect(self._hear)
        self._work.ended.connect(self._propose)
        self._work.failed.connect(self._fail)
        self._show_step(_("Looking for the best that there is …"), self.stop)

    def _hear(self, parts: Parts) -> None:
        """Show how far it has come, and draw what is better than before."""
        self.bar.setRange(0, parts.of)
        self.bar.setValue(parts.done)
        if isinstance(parts.best, Filling):
            self._draw(parts.best, in_bits=True)
        if self.filling is not None:
            turns = _("{done} of {turns} turns").format(done=grouped(parts.done), turns=grouped(parts.of))
            self.says.setText(_("{turns}, best so far: {worth}").format(turns=turns, worth=worth_words(self.filling)))

    def _draw(self, filling: Filling, *, in_bits: bool = False) -> None:
        """Draw a filling over the plan, unless it is what is drawn already."""
        if filling != self.filling or self._stage.trial is None:
            self.filling = filling
            self._stage.show(proposed(self._document.plan, filling.plan), in_bits=in_bits)

    def _stop(self) -> None:
        """End the looking; the best so far is the proposal."""
        if self._work is not None:
            self._work.end()
        if self.filling is None:
            self._fail(GardenplotError(_("stopped before anything was found")))
            return
        self._propose(self.filling)

    def _propose(self, found: object) -> None:
        """Offer what was found, and others that differ in kind where it was looked for them too."""
        first, others = found if isinstance(found, tuple) else (found, ())
        if isinstance(first, Filling):
            self._draw(first, in_bits=True)
            self._offer(first)
            self.offers.show_fillings(first, others)
            self.adjustSize()

    def _offer(self, filling: Filling) -> None:
        self._draw(filling)
        rows = enumerate(found_rows(filling))
        self.found.show_rows([TableRow(row.cells, number, grave=row.lacks) for number, row in rows])
        self.take.setEnabled(bool(filling.placed))
        self.leave.setText(_("Leave"))
        self._show_step(_("Proposed, not planted yet: {worth}.").format(worth=worth_words(filling)), self.take)

    def _fail(self, error: GardenplotError) -> None:
        """Nothing came of it: say why, the plan is as it was."""
        self.reject()
        self._stage.refused.emit(_("{says}; the plan is as it was").format(says=error.says))

    def _take(self) -> None:
        """Make the proposal the plan, in one step."""
        if self.filling is None:
            return
        after = proposed(self._document.plan, self.filling.plan).plan
        self.accept()
        self._document.change(_("Fill the season"), after)


def _numbers(dialog: FillDialog) -> tuple[Plan, Opened] | None:
    """Those of the row that the keyboard is on, else of the whole filling."""
    filling, found = dialog.filling, dialog.found
    if filling is None:
        return None
    number = found.key_of(found.currentItem()) if found.hasFocus() else None
    return filling.plan, of_placed(filling, number) if isinstance(number, int) else of_filling(filling)
