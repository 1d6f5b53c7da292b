"""The plan as a whole, shown while nothing is selected: place, units, totals by crop, frost and daylight."""

from functools import partial

from PySide6.QtWidgets import QVBoxLayout, QWidget

from gardenplot.drawing.tables import CountRow, counts_by_crop, summary
from gardenplot.gestures.examples import grey
from gardenplot.gestures.reading import list_from, list_text, text_of
from gardenplot.plan.edits import change_place
from gardenplot.units import Units, parse_degrees
from gardenplot.units.figures import THIN, grouped
from gardenplot.window.document import Document
from gardenplot.window.fields import Form
from gardenplot.window.headed_area import SIDE
from gardenplot.window.labels import heading, quiet, rule, words
from gardenplot.window.place_form import PlaceForm
from gardenplot.words import _

UNITS = {
    Units.METRIC: _("metres and centimetres"),
    Units.FEET_AND_INCHES: _("feet and inches"),
    Units.DECIMAL_FEET: _("decimal feet"),
}


FIGURE_SPACE = "\u2007"
"""As wide as a figure, so that numbers of any length end in one line."""
_MARKABLE = {
    "markable_in_row": _("In the row, tools can mark"),
    "markable_rows": _("Between rows, tools can mark"),
}


def _in_column(count: int) -> str:
    """A count that ends below the others, whether its thousands stand apart or it has none."""
    thousands, _gap, rest = grouped(count).rpartition(THIN)
    return f"{thousands.rjust(3, FIGURE_SPACE)}{THIN}{rest.rjust(3, FIGURE_SPACE)}"


def _named(row: CountRow) -> str:
    """The name of a crop, with what its number counts where these are clumps, all or some of them."""
    if not row.clumps:
        return row.name
    words = _("{crop}, clumps") if row.clumps == row.plants else _("{crop}, {clumps} of them clumps")
    return words.format(crop=row.name, clumps=grouped(row.clumps))


class PlanPanel(QWidget):
    """Goes one way: plan to fields when it changes, a finished field to an edit."""

    def __init__(self, document: Document, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document = document
        self.title, self.total, self.crops, self.help = heading(), quiet(), words(), quiet()
        self.help.setText(
            _("Drag a crop from the shelf on a bed. Click a block to change it, or type its sizes here.")
        )
        self.form = Form(self)
        self.form.add_typed("place", _("Place"), self._rename, wide=True)
        for attribute, label in _MARKABLE.items():
            finish = partial(self._mark, attribute)
            self.form.add_typed(attribute, label, finish, empty=_("any spacing"), wide=True)
        self.form.add_typed(
            "north", _("North, degrees clockwise from up"), self._turn_north, empty=grey("20°"), wide=True
        )
        self.units = self.form.add_choice("units", _("Units"), self._pick_units)
        for unit, name in UNITS.items():
            self.units.addItem(name, unit)
        column = QVBoxLayout(self)
        column.setContentsMargins(SIDE, 4, SIDE, 12)
        column.setSpacing(8)
        self.place = PlaceForm(document, self)
        self._below_crops = rule()
        for part in (self.total, self.form, self.help, rule(), self.crops, self._below_crops, self.place):
            column.addWidget(part)
        column.addStretch(1)

    def show_plan(self) -> None:
        """Show the document's plan."""
        plan = self._document.plan
        self.title.setText(self._document.name)
        self.total.setText(summary(plan))
        self.form.fields["place"].show_value(plan.place.name)
        self.units.setCurrentIndex(self.units.findData(plan.place.units))
        for attribute in _MARKABLE:
            self.form.fields[attribute].show_value(list_text(getattr(plan.place, attribute)))
        self.form.fields["north"].show_value(text_of(plan.place.north))
        self.place.show_plan()
        lines = [f"{_in_column(row.plants)}  {_named(row)}" for row in counts_by_crop(plan)]
        self.crops.setText("\n".join((_("Plants by crop"), *lines)) if lines else "")
        for part in (self.crops, self._below_crops):
            part.setVisible(bool(lines))

    def _rename(self, text: str) -> None:
        self._document.change(_("Name of the place"), change_place(self._document.plan, name=text))

    def _turn_north(self, text: str) -> None:
        north = parse_degrees(text) if text else None
        self._document.change(_("Where north is"), change_place(self._document.plan, north=north))

    def _mark(self, attribute: str, text: str) -> None:
        plan = self._document.plan
        lengths = list_from(text, plan.place.units)
        self._document.change(_MARKABLE[attribute], change_place(plan, **{attribute: lengths}))

    def _pick_units(self, row: int) -> None:
        units = Units(self.units.itemData(row))
        self._document.change(
            _("Show {units}").format(units=UNITS[units]), change_place(self._document.plan, units=units)
        )
