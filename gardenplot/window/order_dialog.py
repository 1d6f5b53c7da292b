"""The dialog of an order: how many units of what, what a unit is, on which market days."""

from collections.abc import Mapping

from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from gardenplot.errors import GardenplotError
from gardenplot.gestures.crop_named import crop_named, name_of_crop
from gardenplot.gestures.examples import grey
from gardenplot.gestures.order_typed import (
    MEASURE_WORDS,
    ONE_PLANT,
    UNIT_WORDS,
    Unit,
    example_of,
    line_of,
    order_values,
    texts_of_order,
    unit_of_order,
)
from gardenplot.plan import Crop, Order, order_of
from gardenplot.plan.catalogue import found_crops
from gardenplot.plan.edits import add_order, carry_crop, change_order
from gardenplot.window.ask import Ask
from gardenplot.window.document import Document
from gardenplot.window.forms import AskDialog
from gardenplot.words import _


class OrderDialog(AskDialog):
    """An order, new or to be changed; what is asked about a unit goes with what a unit is."""

    def __init__(self, document: Document, order_id: str | None, parent: QWidget) -> None:
        self._document = document
        self._order = order_of(document.plan, order_id) if order_id else None
        self._crops, _own = found_crops(document.plan, "")
        does = _("Add order") if self._order is None else _("Change order")
        note = _("Units are those of one market day.")
        super().__init__(_("Order"), _asks(self._order, self._crops), self._take, does, note=note, parent=parent)
        unit = self.fields["unit"]
        if isinstance(unit, QComboBox):
            unit.currentIndexChanged.connect(self._ask_of_unit)
        self._ask_of_unit()

    def _ask_of_unit(self) -> None:
        """Ask for what there is to know of the unit that is chosen."""
        unit, line = Unit(str(self.typed()["unit"])), self.fields["measure"]
        self.call("measure", MEASURE_WORDS[unit])
        if isinstance(line, QLineEdit):
            default = ONE_PLANT if unit is Unit.PLANTS else ""
            line.setPlaceholderText(grey(example_of(unit, self._document.plan.place.units), default))

    def _take(self, typed: Mapping[str, object]) -> Mapping[str, str]:
        plan, texts = self._document.plan, {name: str(value or "") for name, value in typed.items()}
        values, wrong = order_values(texts, plan.place.units)
        try:
            crop = crop_named(self._crops, texts["crop"], self._order.crop if self._order else None)
        except GardenplotError as error:
            wrong["crop"] = error.says
        if wrong:
            return wrong
        if self._order is None and not values["units"]:
            return {"units": _("an order is for one unit or more; one of none is an order that was withdrawn")}
        values["crop"] = crop.id
        try:
            after = carry_crop(plan, crop)
            if self._order is None:
                after = add_order(after, Order(id=f"{crop.id}-{values['on'].isoformat()}", **values))
            else:
                after = change_order(after, self._order.id, **values)
            self._document.change(_("Order"), after)
        except GardenplotError as error:
            return {line_of(error.field): error.says}
        return {}


def _asks(order: Order | None, crops: tuple[Crop, ...]) -> tuple[Ask, ...]:
    texts = texts_of_order(order)
    names = tuple((crop.name, crop.id) for crop in crops)
    units = tuple((words, unit) for unit, words in UNIT_WORDS.items())
    return (
        Ask(
            "crop",
            _("Crop"),
            name_of_crop(crops, order.crop if order else None),
            _("Leek"),
            choices=names,
            is_typed=True,
        ),
        Ask("units", _("Units"), texts.get("units", ""), "120"),
        Ask("unit", _("A unit is"), choices=units, chosen=unit_of_order(order)),
        Ask("measure", MEASURE_WORDS[Unit.PLANTS], texts.get("measure", "")),
        Ask("on", _("Market day"), texts.get("on", ""), "15 May 2027"),
        Ask("times", _("Market days"), texts.get("times", ""), default=_("one")),
        Ask("every_days", _("Days between them"), texts.get("every_days", ""), default="7"),
        Ask("lead_days", _("Days from cutting to market"), texts.get("lead_days", "1"), default="1"),
    )
