"""An order as it is typed: how many units, what a unit is, its market days; texts into an order's values and back."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.reading import length_from, text_of, whole_from
from gardenplot.plan import Order
from gardenplot.units import Units
from gardenplot.words import _

Texts = Mapping[str, str]


class Unit(StrEnum):
    """What is sold as one unit; by the field of an order that measures it."""

    PLANTS = "plants_per_unit"
    FROM_PLANT = "units_per_plant"
    ROW = "row_per_unit"


UNIT_WORDS = {
    Unit.PLANTS: _("one plant or more"),
    Unit.FROM_PLANT: _("part of a plant"),
    Unit.ROW: _("a length of row"),
}
MEASURE_WORDS = {
    Unit.PLANTS: _("Plants in a unit"),
    Unit.FROM_PLANT: _("Units from a plant"),
    Unit.ROW: _("Row for a unit"),
}
"""What is asked about a unit of each kind."""
ONE_PLANT = _("1, each plant is a unit")
_EVERY = 7


@frozen
class OrderField:
    """A line of the order: its name, how its text is read, and what holds while it is empty."""

    name: str
    read: Callable[[str], Any]
    default: Any = None


def _units(text: str) -> int:
    units = whole_from(text)
    if units is None:
        raise PlanError(_("how many units are wanted, for example 120?"))
    return units


def _market_day(text: str) -> Any:
    day = date_from(text)
    if day is None:
        raise PlanError(_("a market day is needed, for example 15 May 2027"))
    return day


_LINES = (
    OrderField("units", _units),
    OrderField("on", _market_day),
    OrderField("times", whole_from, 1),
    OrderField("every_days", whole_from, _EVERY),
    OrderField("lead_days", whole_from, 1),
)


def unit_of_order(order: Order | None) -> Unit:
    """What a unit of an order is."""
    if order is not None and order.row_per_unit is not None:
        return Unit.ROW
    return Unit.FROM_PLANT if order is not None and order.units_per_plant is not None else Unit.PLANTS


def texts_of_order(order: Order | None) -> dict[str, str]:
    """The values of an order as they are typed; nothing where none is there yet."""
    if order is None:
        return {}
    measure = getattr(order, unit_of_order(order))
    texts = {line.name: text_of(getattr(order, line.name)) for line in _LINES}
    return texts | {"measure": str(measure)}


def example_of(unit: Unit, units: Units) -> str:
    """What could be typed for the measure of a unit."""
    return {Unit.PLANTS: "1", Unit.FROM_PLANT: "6"}.get(unit, "50 cm" if units is Units.METRIC else "1.5 ft")


def order_values(texts: Texts, units: Units) -> tuple[dict[str, Any], dict[str, str]]:
    """The values of typed texts by the order's fields, and the words of what is wrong by the name of the line.

    `texts` has units, unit, measure, on, times, every_days and lead_days.
    """
    values: dict[str, Any] = {}
    wrong: dict[str, str] = {}
    for line in _LINES:
        try:
            read = line.read(texts.get(line.name, "").strip())
            values[line.name] = line.default if read is None else read
        except GardenplotError as error:
            wrong[line.name] = error.says
    try:
        values |= _measured(Unit(texts["unit"]), texts.get("measure", "").strip(), units)
    except GardenplotError as error:
        wrong["measure"] = error.says
    return values, wrong


def _measured(unit: Unit, text: str, units: Units) -> dict[str, Any]:
    """The three fields of which one says what a unit is."""
    none: dict[str, Any] = {Unit.PLANTS.value: 1, Unit.FROM_PLANT.value: None, Unit.ROW.value: None}
    measure = length_from(text, example_of(unit, units), units) if unit is Unit.ROW else whole_from(text)
    if measure is None and unit is Unit.FROM_PLANT:
        raise PlanError(_("how many units does a plant give, for example 6?"))
    if measure is None and unit is Unit.ROW:
        raise PlanError(_("how much row is a unit cut from, for example {row}?").format(row=example_of(unit, units)))
    return none if measure is None else none | {unit.value: measure}


def line_of(field: str) -> str:
    """The name of the line in which a field of an order is typed."""
    return "measure" if field in tuple(Unit) else field
