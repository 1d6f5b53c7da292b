"""The choices beside the pages: which sheets, of which beds, and how they are drawn."""

from attrs import evolve
from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from gardenplot.one_line import one_line
from gardenplot.plan import Plan
from gardenplot.sheets.choices import NAMES, Kind
from gardenplot.sheets.paper import scales
from gardenplot.units import CM, INCH, Units
from gardenplot.units.figures import offset
from gardenplot.window.plain import PlainLabel
from gardenplot.window.prints import Print
from gardenplot.window.settings import keep_string, kept_string
from gardenplot.words import _

_BESIDE = {Units.METRIC: (3 * CM, 5 * CM, 10 * CM)}
_BESIDE_IN = (INCH, 2 * INCH, 4 * INCH)
_LARGEST, _SMALLEST = 2, 500
"""Scales between 1 to so many are offered; full size would take a ream."""
_MOST_LINES = 8


class PrintChoices(QWidget):
    """Tells when another print is asked for."""

    changed = Signal()

    def __init__(self, plan: Plan, asked: Print) -> None:
        super().__init__()
        self._asked = asked
        self.kinds = {
            kind: QCheckBox(NAMES[kind]) for kind in Kind if kind is not Kind.CHANGED or asked.choices.before
        }
        self.beds, self.scale, self.string = QListWidget(), QComboBox(), QComboBox()
        self._fill(plan)
        self.show_asked(asked)
        column = QVBoxLayout(self)
        column.addWidget(_heading(_("Sheets")))
        for box in self.kinds.values():
            column.addWidget(box)
            box.toggled.connect(self._change)
        for words, field in (
            (_("Of these beds"), self.beds),
            (_("Scale of the drawing"), self.scale),
            (_("Strings on the bed sheets"), self.string),
        ):
            column.addWidget(_heading(words, field))
            column.addWidget(field)
        column.addStretch()
        self.beds.itemChanged.connect(self._change)
        for field in (self.scale, self.string):
            field.activated.connect(self._change)

    @property
    def asked(self) -> Print:
        """What is asked for, as it is chosen now."""
        items = [self.beds.item(row) for row in range(self.beds.count())]
        ticked = [item.data(Qt.ItemDataRole.UserRole) for item in items if item.checkState() is Qt.CheckState.Checked]
        kinds = tuple(kind for kind, box in self.kinds.items() if box.isChecked()) if ticked or not items else ()
        choices = evolve(
            self._asked.choices,
            beds=frozenset(ticked) if len(ticked) < len(items) else frozenset(),
            scale=self.scale.currentData(),
            string=self.string.currentData(),
        )
        return evolve(self._asked, kinds=kinds, choices=choices)

    def show_asked(self, asked: Print) -> None:
        """Show a print as it is chosen, and tell nobody."""
        self.blockSignals(True)
        for kind, box in self.kinds.items():
            box.setChecked(kind in asked.kinds)
        for row in range(self.beds.count()):
            item = self.beds.item(row)
            is_of = not asked.choices.beds or item.data(Qt.ItemDataRole.UserRole) in asked.choices.beds
            item.setCheckState(Qt.CheckState.Checked if is_of else Qt.CheckState.Unchecked)
        self.scale.setCurrentIndex(max(0, self.scale.findData(asked.choices.scale)))
        self.string.setCurrentIndex(max(0, self.string.findData(asked.choices.string or kept_string())))
        self.blockSignals(False)

    def _fill(self, plan: Plan) -> None:
        units = plan.place.units
        for bed in plan.beds:
            item = QListWidgetItem(one_line(bed.name))
            item.setData(Qt.ItemDataRole.UserRole, bed.id)
            self.beds.addItem(item)
        rows = min(max(2, len(plan.beds)), _MOST_LINES)
        self.beds.setFixedHeight(rows * max(20, self.beds.sizeHintForRow(0)) + 2 * self.beds.frameWidth() + 2)
        self.scale.addItem(_("few pages each"), None)
        for scale in scales(units):
            if _LARGEST <= scale.ratio <= _SMALLEST:
                self.scale.addItem(scale.words, scale.ratio)
        self.string.addItem(_("on the rows"), 0)
        for far in _BESIDE.get(units, _BESIDE_IN):
            self.string.addItem(_("{far} beside the rows").format(far=offset(far, units)), far)

    def _change(self) -> None:
        keep_string(self.string.currentData())
        self.changed.emit()


def _heading(words: str, field: QWidget | None = None) -> PlainLabel:
    label = PlainLabel(words)
    label.setProperty("strong", True)
    if field is not None:
        label.setBuddy(field)
        field.setAccessibleName(words)
    return label
