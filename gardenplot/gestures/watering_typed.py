"""How the place waters, as it is typed: what its drip lines and its supply give, its tank, a week's depth; money."""

from collections.abc import Callable
from typing import Any

from attrs import evolve

from gardenplot.gestures.reading import length_from, text_of
from gardenplot.gestures.typed import TypedField
from gardenplot.plan import Plan, Watering
from gardenplot.plan.edits import change_place
from gardenplot.units import parse_flow, parse_length, parse_line_flow, parse_share, parse_volume
from gardenplot.words import _


def _field(name: str, label: str, parse: Callable[[str], Any], example: str) -> TypedField:
    """A field of the watering; one that has nothing left is no watering."""

    def shown(plan: Plan, _part: str) -> str:
        return text_of(getattr(plan.place.watering, name, None))

    def edit(plan: Plan, _part: str, text: str, before: str) -> Plan:
        read = length_from(text, before, plan.place.units) if parse is parse_length else parse(text) if text else None
        changes: dict[str, Any] = {name: read}
        watering = evolve(plan.place.watering or Watering(), **changes)
        return change_place(plan, watering=None if watering == Watering() else watering)

    return TypedField(name, label, shown, edit, example)


def _type_money(plan: Plan, _part: str, text: str, _shown: str) -> Plan:
    return change_place(plan, money=text[:4])


WATER_FIELDS = (
    _field("line_flow", _("A drip line gives"), parse_line_flow, "5 l/h / m"),
    _field("supply", _("The supply gives"), parse_flow, "900 l/h"),
    _field("tank", _("The tank holds"), parse_volume, "1000 l"),
    _field("weekly_depth", _("Water a week"), parse_length, "25 mm"),
    _field("efficiency", _("Gets to roots"), parse_share, "90 %"),
    TypedField("money", _("Prices are in"), lambda plan, _part: plan.place.money, _type_money, "€"),
)
"""The fields of watering and of money, in the panel of the plan."""
