"""One more candidate, typed: its fields begin with what the chosen candidate has, and each says what is wrong."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QLabel, QPushButton, QVBoxLayout, QWidget

from gardenplot.drawing.compare_words import pattern_words
from gardenplot.drawing.style import Ink
from gardenplot.gestures.candidate_typed import CANDIDATE_FIELDS, patterns_for, typed_candidate
from gardenplot.gestures.typed import TypedField
from gardenplot.plan import Direction, Pattern, Plan, planting_of
from gardenplot.window.fields import LARGE, Typed
from gardenplot.window.plain import PlainLabel
from gardenplot.window.theme import magnified, write_in
from gardenplot.window.wrapping import Wrapping
from gardenplot.words import _

_DIRECTIONS = {Direction.ALONG: _("along the bed"), Direction.ACROSS: _("across the bed")}


class CandidateForm(QWidget):
    """Emits `added` with the plan that was typed, once nothing in it is wrong.

    Where text is large it is folded up to its button, so that what is compared keeps its room, until it is asked for.
    """

    added = Signal(object)

    def __init__(self, plan: Plan, planting: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._plan, self._planting = plan, planting
        self.pattern, self.direction = QComboBox(), QComboBox()
        self.fields: dict[str, Typed] = {}
        self.add = QPushButton()
        self.add.setAutoDefault(False)
        self.add.clicked.connect(self._press)
        self._is_folded = False
        self._foldable: list[QWidget] = []
        self.complaint = _quiet(Ink.ACCENT)
        self._row = Wrapping()
        self._add_cell(_("Pattern"), self.pattern)
        self._add_cell(_("Rows run"), self.direction)
        for field in CANDIDATE_FIELDS:
            self._add_field(field)
        if magnified() < LARGE:
            self._add_cell(" ", self.add)
        else:
            self._row.addWidget(self.add)
        self.fold()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(self._row)
        column.addWidget(self.complaint)
        self.pattern.activated.connect(self._follow_pattern)
        for direction, words in _DIRECTIONS.items():
            self.direction.addItem(words, direction)

    def begin_with(self, plan: Plan) -> None:
        """Show what a candidate's plan has in the fields."""
        self._plan = plan
        planting = planting_of(plan, self._planting)
        self.pattern.clear()
        for pattern in patterns_for(plan, self._planting):
            self.pattern.addItem(pattern_words(pattern), pattern)
        self.pattern.setCurrentIndex(self.pattern.findData(planting.pattern))
        self.direction.setCurrentIndex(self.direction.findData(planting.direction))
        for field in CANDIDATE_FIELDS:
            self.fields[field.name].show_value(field.shown(plan, self._planting))
            self.fields[field.name].stand_empty(field.grey(plan, self._planting))
        self.complain("")
        self._follow_pattern()

    def fold(self) -> None:
        """Fold it up, where text is large."""
        self._show_fields(magnified() < LARGE)

    def _show_fields(self, shown: bool) -> None:
        self._is_folded = not shown
        self.add.setText(_("Add a candidate") if shown else _("Add a candidate …"))
        for part in self._foldable:
            part.setVisible(shown)

    def _press(self) -> None:
        """Add what is typed, or first show where to type it."""
        if self._is_folded:
            self._show_fields(True)
            self.pattern.setFocus()
        else:
            self.try_to_add()

    def try_to_add(self) -> None:
        """Add what is typed, or go to the first field that is wrong."""
        after, wrong = self._typed()
        self.complain(wrong.get("", ""))
        for name, field in self.fields.items():
            field.complain(wrong.get(name, ""))
        first = next((field for name, field in self.fields.items() if name in wrong), None)
        if first is not None:
            first.setFocus()
        if not wrong:
            self.added.emit(after)

    def complain(self, words: str) -> None:
        """Say what is wrong with all of it together."""
        self.complaint.setText(words)
        self.complaint.setVisible(bool(words))

    def _typed(self) -> tuple[Plan, dict[str, str]]:
        texts = {name: field.text().strip() for name, field in self.fields.items()}
        pattern, direction = Pattern(self.pattern.currentData()), Direction(self.direction.currentData())
        return typed_candidate(self._plan, self._planting, pattern, direction, texts)

    def _read(self, field: TypedField, text: str) -> None:
        """Read a finished text; raises what is wrong with it, for its field to say."""
        field.apply(self._plan, self._planting, text)

    def _follow_pattern(self) -> None:
        """Only some patterns can be turned across the bed."""
        turned = Pattern(self.pattern.currentData()).has_even_rows
        self.direction.setEnabled(turned)
        if not turned:
            self.direction.setCurrentIndex(self.direction.findData(Direction.ALONG))

    def _add_field(self, field: TypedField) -> None:
        line = Typed(partial(self._read, field))
        line.setObjectName(field.name)
        line.setMaximumWidth(round(180 * magnified()))
        self.fields[field.name] = line
        self._add_cell(field.label, line)

    def _add_cell(self, label: str, field: QWidget) -> None:
        words = _quiet(Ink.SECOND)
        words.setText(label)
        words.setBuddy(field)
        if not isinstance(field, QPushButton):
            field.setAccessibleName(label)
        cell = QVBoxLayout()
        cell.setSpacing(2)
        cell.setAlignment(Qt.AlignmentFlag.AlignTop)
        for part in (words, field, field.complaint if isinstance(field, Typed) else None):
            if part is not None:
                cell.addWidget(part)
        if field is not self.add:
            self._foldable += [words, field]
        self._row.add_group(cell)


def _quiet(ink: Ink) -> QLabel:
    label = PlainLabel()
    write_in(label, ink)
    label.setWordWrap(ink is Ink.ACCENT)
    return label
