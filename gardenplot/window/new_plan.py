"""A new plan from four answers: units, place, beds, first crop."""

from collections.abc import Mapping

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from gardenplot.gestures.bed_typed import SIZES, usual
from gardenplot.gestures.begun import begin
from gardenplot.plan import Plan
from gardenplot.plan.catalogue import found_crops
from gardenplot.units import Units
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.window.plan_panel import UNITS
from gardenplot.window.settings import measures_in_inches
from gardenplot.words import _


class NewPlanDialog(AskDialog):
    """What is left empty takes the usual size that it says in grey, which goes with the units that are chosen."""

    def __init__(self, document: Document, parent: QWidget) -> None:
        self._document = document
        note = _("What is left empty is as it says in grey. All of it can be changed later.")
        super().__init__(_("New plan"), _asks(), self._take, _("Make plan"), note=note, parent=parent)
        units = self.fields["units"]
        if isinstance(units, QComboBox):
            units.currentIndexChanged.connect(self._show_defaults)
        self._show_defaults()

    def _units(self) -> Units:
        return Units(str(self.typed()["units"]))

    def _show_defaults(self) -> None:
        """Show the sizes that stand for what is left empty, in the units that are chosen."""
        size = SIZES[self._units()]
        for name, value in (("beds", size.beds), ("length", size.length), ("width", size.width)):
            line = self.fields[name]
            if isinstance(line, QLineEdit):
                line.setPlaceholderText(usual(value))

    def _take(self, typed: Mapping[str, object]) -> Mapping[str, str]:
        texts = {name: str(value or "") for name, value in typed.items()}
        begun, wrong = begin(texts, self._units(), texts["crop"])
        if begun is not None:
            self._document.start(begun.plan, kept=False)
        return wrong


def _asks() -> tuple[Ask, ...]:
    units = tuple((name, unit) for unit, name in UNITS.items())
    usual = Units.FEET_AND_INCHES if measures_in_inches() else Units.METRIC
    crops, _own = found_crops(Plan(), "")
    names = tuple((crop.name, crop.id) for crop in crops)
    return (
        Ask("units", _("1  Units"), choices=units, chosen=usual),
        Ask("name", _("2  Place, by its name"), default=_("without a name")),
        Ask("beds", _("3  How many beds")),
        Ask("length", _("     each this long")),
        Ask("width", _("     and this wide")),
        Ask("margin", _("     with end margins of"), default=_("nothing")),
        Ask("crop", _("4  First crop"), default=_("none yet"), choices=names, is_typed=True),
    )


def ask_new_plan(document: Document, parent: QWidget) -> bool:
    """Ask four things and begin a new plan."""
    return NewPlanDialog(document, parent).exec() == AskDialog.DialogCode.Accepted
