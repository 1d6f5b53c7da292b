"""Candidates for a block side by side, as pictures to scale and as differences; the one that is taken is planted."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QDialog, QHBoxLayout, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from gardenplot.drawing.bed import draw_turn
from gardenplot.drawing.compare_words import (
    best_words,
    candidate_name,
    comparison_title,
    measure_lines,
    reading_words,
    reason_words,
    step_name,
)
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.measure_line import MeasureLine
from gardenplot.drawing.opened_choices import of_candidate
from gardenplot.errors import PlanError
from gardenplot.gestures.candidate_typed import changes_between
from gardenplot.layout.candidate import Candidate, Reason, comparison
from gardenplot.layout.proposals import best_of, proposals
from gardenplot.plan import Plan
from gardenplot.window.candidate_column import Shown
from gardenplot.window.candidate_columns import CandidateColumns
from gardenplot.window.candidate_form import CandidateForm
from gardenplot.window.document import Document
from gardenplot.window.end_buttons import make_strong
from gardenplot.window.numbers_button import NumbersButton
from gardenplot.window.plain import PlainLabel
from gardenplot.window.room_on_screen import room_on_screen
from gardenplot.window.theme import widget_font
from gardenplot.words import _


class CompareDialog(QDialog):
    """Closes with `taken`, the candidate to plant, or with none."""

    def __init__(self, plan: Plan, planting: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ways = comparison(plan, planting)
        self._candidates = list(proposals(plan, planting))
        self.taken: Candidate | None = None
        self.columns = CandidateColumns()
        self.form = CandidateForm(plan, planting)
        self.take, self.away, self.cancel = (
            QPushButton(words) for words in (_("Take it"), _("Take the column away"), _("Cancel"))
        )
        self.numbers = NumbersButton(lambda: (self.chosen.plan, of_candidate(self.chosen, self._candidates[0])), self)
        self.setWindowTitle(_("Compare layouts: {planting}").format(planting=comparison_title(plan, planting)))
        self._lay_out()
        self.form.added.connect(self._add)
        self.columns.chosen.connect(self._choose)
        self.columns.taken.connect(self._take)
        self.columns.put_away.connect(self._put_away)
        self.take.clicked.connect(self._take)
        self.away.clicked.connect(self._put_away)
        self.cancel.clicked.connect(self.reject)
        self._show(0)
        room = room_on_screen(self)
        self.resize(self.sizeHint().boundedTo(QSize(room.width() * 9 // 10, room.height() * 9 // 10)))

    def _lay_out(self) -> None:
        title = PlainLabel(comparison_title(self._ways.plan, self._ways.planting))
        title.setFont(widget_font(17, bold=True))
        column, row = QVBoxLayout(self), QHBoxLayout()
        for part in (title, PlainLabel(reading_words(self._candidates[0]))):
            part.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
            column.addWidget(part)
        column.addWidget(self.columns, 1)
        column.addWidget(self.form)
        make_strong(self.take)
        self.take.setToolTip(_("Enter, or a double click on the column"))
        self.away.setToolTip(_("Delete"))
        for button in (self.away, self.numbers, self.cancel, self.take):
            button.setAutoDefault(False)
            row.addWidget(button)
            if button is self.numbers:
                row.addStretch(1)
        column.addLayout(row)

    @property
    def chosen(self) -> Candidate:
        """The candidate whose column is chosen."""
        return self._candidates[self.columns.chosen_number]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter adds what is typed, presses the button it is on, or takes the chosen column."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
            return
        focused = self.focusWidget()
        if isinstance(focused, QPushButton):
            focused.click()
        elif focused is not None and self.form.isAncestorOf(focused):
            self.form.try_to_add()
        else:
            self._take()

    def _show(self, chosen: int) -> None:
        """Show all candidates, with one of them chosen."""
        candidates = tuple(self._candidates)
        lines, best = measure_lines(candidates), best_of(candidates)
        praise = best_words(best, candidates) if best is not None else ""
        # As the drawing behind it shows the plan now: a candidate's own letters could be others.
        look = looks(self._ways.plan)
        shown = [
            _shown(one, number, lines, praise if one is best else "", look) for number, one in enumerate(candidates)
        ]
        self.columns.show_columns(shown, chosen)

    def _choose(self, number: int) -> None:
        self.away.setEnabled(number > 0)
        self.form.begin_with(self._candidates[number].plan)

    def _add(self, plan: Plan) -> None:
        """Add a typed candidate, or go to the column whose plants stand in the same places."""
        try:
            changes = changes_between(self._ways.plan, plan, self._ways.planting)
            candidate = self._ways.candidate(changes, Reason.TYPED)
        except PlanError as error:
            self.form.complain(str(error))
            return
        places = [one.places for one in self._candidates]
        if candidate.places in places:
            self.columns.choose(places.index(candidate.places))
            self.form.complain(_("Its plants would stand in the very places of the column chosen now."))
            return
        self._candidates.append(candidate)
        self.form.fold()
        self._show(len(self._candidates) - 1)

    def _put_away(self) -> None:
        """Take the chosen column away; what is there now always stays."""
        number = self.columns.chosen_number
        if number > 0:
            del self._candidates[number]
            self._show(min(number, len(self._candidates) - 1))

    def _take(self) -> None:
        self.taken = self.chosen
        self.accept()


def _shown(
    candidate: Candidate, number: int, lines: tuple[MeasureLine, ...], best: str, look: dict[str, Look]
) -> Shown:
    return Shown(
        candidate=candidate,
        name=candidate_name(candidate),
        reason=reason_words(candidate),
        best=best,
        headings=tuple(line.heading for line in lines),
        cells=tuple(line.cells[number] for line in lines),
        figure=draw_turn(candidate.laid, (candidate.layout,), look, candidate.plan.place.units),
    )


def compare_layouts(document: Document, planting: str, parent: QWidget) -> bool:
    """Show candidates for a planting and plant the one that is taken, in one step of undo."""
    dialog = CompareDialog(document.plan, planting, parent)
    dialog.exec()
    taken = dialog.taken
    dialog.deleteLater()
    return taken is not None and document.change(step_name(taken), taken.plan)
