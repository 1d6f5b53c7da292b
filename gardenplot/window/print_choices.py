"""The choices beside the pages: which sheets, of which beds, and how they are drawn."""

from attrs import evolve, frozen
from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QIntValidator
from PySide6.QtWidgets import QCheckBox, QComboBox, QLineEdit, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.sheets.choices import NAMES, Choices, Kind, Labelled
from gardenplot.sheets.label_sizes import LABEL_SIZES, label_size
from gardenplot.sheets.paper import scales
from gardenplot.units import CM, FOOT, INCH, Units
from gardenplot.units.figures import offset
from gardenplot.window.plain import PlainLabel
from gardenplot.window.prints import Print
from gardenplot.window.settings import keep_choice, kept_choice
from gardenplot.words import _

_BESIDE = {Units.METRIC: (3 * CM, 5 * CM, 10 * CM)}
_BESIDE_IN = (INCH, 2 * INCH, 4 * INCH)
_BOARDS = {Units.METRIC: (60 * CM, 180 * CM, 240 * CM)}
_BOARDS_IN = (2 * FOOT, 6 * FOOT, 8 * FOOT)
_USUAL_BOARD = {Units.METRIC: 120 * CM}
_LARGEST, _SMALLEST = 2, 500
"""Scales between 1 to so many are offered; full size would take a ream."""
_MOST_LINES = 8
_LABELLED = {
    Labelled.BOTH: _("blocks and trays"),
    Labelled.BLOCKS: _("blocks alone"),
    Labelled.TRAYS: _("trays alone"),
}


@frozen(eq=False)
class _Field:
    """A choice under its heading, which concerns some kinds alone."""

    heading: QWidget
    field: QWidget
    kind: Kind

    def show(self, kinds: set[Kind]) -> None:
        """Show it where its kind is among those that are printed."""
        for part in (self.heading, self.field):
            part.setVisible(self.kind in kinds)


class PrintChoices(QWidget):
    """Tells when another print is asked for."""

    changed = Signal()

    def __init__(self, plan: Plan, asked: Print) -> None:
        super().__init__()
        self._asked = asked
        kinds = (kind for kind in Kind if kind is not Kind.CHANGED or asked.choices.before)
        self.kinds = {kind: QCheckBox(NAMES[kind]) for kind in kinds}
        self.beds, self.scale, self.string, self.board = QListWidget(), QComboBox(), QComboBox(), QComboBox()
        self.label, self.labels_from, self.labelled = QComboBox(), QLineEdit(), QComboBox()
        self.slip = QComboBox()
        self._fill_beds(plan)
        self._fill(plan.place.units)
        column = QVBoxLayout(self)
        column.addWidget(PlainLabel(_("Sheets")))
        for box in self.kinds.values():
            column.addWidget(box)
        column.addWidget(_heading(_("Of these beds"), self.beds))
        column.addWidget(self.beds)
        self._fields = tuple(
            _Field(_heading(words, field), field, kind)
            for words, field, kind in (
                (_("Strings on the bed sheets"), self.string, Kind.BEDS),
                (_("Scale of the drawing"), self.scale, Kind.DRAWING),
                (_("Board for spacing strips"), self.board, Kind.STRIPS),
                (_("Size of labels"), self.label, Kind.LABELS),
                (_("First free label on the sheet"), self.labels_from, Kind.LABELS),
                (_("Labels for"), self.labelled, Kind.LABELS),
                (_("Plan name, if a sheet has no margin"), self.slip, Kind.LABELS),
            )
        )
        for one in self._fields:
            column.addWidget(one.heading)
            column.addWidget(one.field)
        column.addStretch()
        self.show_asked(asked)
        self._listen()

    @property
    def asked(self) -> Print:
        """What is asked for, as it is chosen now; raises PlanError for a size of labels that is none."""
        items = [self.beds.item(row) for row in range(self.beds.count())]
        ticked = [item.data(Qt.ItemDataRole.UserRole) for item in items if item.checkState() is Qt.CheckState.Checked]
        kinds = tuple(kind for kind, box in self.kinds.items() if box.isChecked()) if ticked or not items else ()
        choices = evolve(
            self._asked.choices,
            beds=frozenset(ticked) if len(ticked) < len(items) else frozenset(),
            scale=self.scale.currentData(),
            string=self.string.currentData(),
            board=self.board.currentData(),
            label=label_size(self.label.currentText()),
            labels_from=int(self.labels_from.text() or 1),
            labelled=self.labelled.currentData(),
            slip=self.slip.currentData(),
        )
        return evolve(self._asked, kinds=kinds, choices=choices)

    def show_asked(self, asked: Print) -> None:
        """Show a print as it is chosen, and tell nobody."""
        self.blockSignals(True)
        choices = asked.choices
        for kind, box in self.kinds.items():
            box.setChecked(kind in asked.kinds)
        for row in range(self.beds.count()):
            item = self.beds.item(row)
            is_of = not choices.beds or item.data(Qt.ItemDataRole.UserRole) in choices.beds
            item.setCheckState(Qt.CheckState.Checked if is_of else Qt.CheckState.Unchecked)
        kept = kept_choice("string")
        _choose(self.string, choices.string or (int(kept) if kept.isdigit() else 0))
        _choose(self.scale, choices.scale)
        _choose(self.board, choices.board)
        _choose(self.labelled, choices.labelled)
        _choose(self.slip, choices.slip)
        size = choices.label.name if choices.label != Choices().label else kept_choice("label") or choices.label.name
        self.label.setCurrentText(size)
        self.labels_from.setText(str(choices.labels_from))
        self._show_fields()
        self.blockSignals(False)

    def _fill_beds(self, plan: Plan) -> None:
        for bed in plan.beds:
            item = QListWidgetItem(one_line(bed.name))
            item.setData(Qt.ItemDataRole.UserRole, bed.id)
            self.beds.addItem(item)
        rows = min(max(2, len(plan.beds)), _MOST_LINES)
        self.beds.setFixedHeight(rows * max(20, self.beds.sizeHintForRow(0)) + 2 * self.beds.frameWidth() + 2)

    def _fill(self, units: Units) -> None:
        self.scale.addItem(_("few pages each"), None)
        for scale in scales(units):
            if _LARGEST <= scale.ratio <= _SMALLEST:
                self.scale.addItem(scale.words, scale.ratio)
        self.string.addItem(_("on the rows"), 0)
        for far in _BESIDE.get(units, _BESIDE_IN):
            self.string.addItem(_("{far} beside the rows").format(far=offset(far, units)), far)
        self.board.addItem(str(offset(_USUAL_BOARD.get(units, 4 * FOOT), units)), None)
        for long in _BOARDS.get(units, _BOARDS_IN):
            self.board.addItem(str(offset(long, units)), long)
        self.label.setEditable(True)
        self.label.addItems([size.name for size in LABEL_SIZES])
        self.label.setMinimumContentsLength(_MOST_LINES)
        self.label.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.labels_from.setValidator(QIntValidator(1, 999, self))
        for what, words in _LABELLED.items():
            self.labelled.addItem(words, what)
        self.slip.addItem(_("on its first free label"), True)
        self.slip.addItem(_("left out"), False)

    def _listen(self) -> None:
        for box in self.kinds.values():
            box.toggled.connect(self._change)
        self.beds.itemChanged.connect(self._change)
        for field in (self.scale, self.string, self.board, self.labelled, self.slip, self.label):
            field.activated.connect(self._change)
        line = self.label.lineEdit()
        if line is not None:
            line.editingFinished.connect(self._change)
        self.labels_from.editingFinished.connect(self._change)

    def _change(self) -> None:
        self._show_fields()
        keep_choice("string", str(self.string.currentData()))
        keep_choice("label", self.label.currentText())
        self.changed.emit()

    def _show_fields(self) -> None:
        kinds = {kind for kind, box in self.kinds.items() if box.isChecked()}
        for one in self._fields:
            one.show(kinds)


def _choose(field: QComboBox, value: object) -> None:
    field.setCurrentIndex(max(0, field.findData(value)))


def _heading(words: str, field: QWidget) -> PlainLabel:
    label = PlainLabel(words)
    label.setBuddy(field)
    field.setAccessibleName(words)
    return label
