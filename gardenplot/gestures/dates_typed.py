"""The days of a planting as they are typed: those that are planned, and what they are counted with."""

from collections.abc import Callable
from datetime import date
from typing import Any

from attrs import evolve

from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.reading import text_of, whole_from
from gardenplot.gestures.typed import Edit, Held, Shown, TypedField
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Establish, Plan, crop_of, order_of, planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.season import Dates, dates_of, market_days
from gardenplot.season.dates import wanted_ready
from gardenplot.supplies import raised_for
from gardenplot.units import Temperature, parse_temperature
from gardenplot.units.figures import grouped
from gardenplot.words import _


def planned_dates(plan: Plan, planting_id: str) -> Dates:
    """The dates of a planting as they were meant, whatever came about."""
    return dates_of(plan, evolve(planting_of(plan, planting_id), actual=None))


def is_raised(plan: Plan, planting_id: str) -> bool:
    """Whether a planting is raised and set out, and not sown in its bed."""
    return crop_of(plan, planting_of(plan, planting_id).crop).establish is Establish.TRANSPLANT


def has_markets(plan: Plan, planting_id: str) -> bool:
    """Whether the order of a planting has more than one market day, or one is named that it does not have."""
    planting = planting_of(plan, planting_id)
    if planting.order is None:
        return False
    return planting.market is not None or len(market_days(order_of(plan, planting.order))) > 1


def _shown(attribute: str) -> Shown:
    return lambda plan, planting_id: text_of(getattr(planting_of(plan, planting_id), attribute))


def _edit(attribute: str, read: Callable[[str], Any]) -> Edit:
    return lambda plan, planting_id, text, _before: change_planting(plan, planting_id, **{attribute: read(text)})


def _temperature_from(text: str) -> Temperature | None:
    return parse_temperature(text) if text else None


def _follows(day: date | None, words: str) -> Held:
    return Held(words if day is not None else _("no day yet"))


def _sow_held(plan: Plan, planting_id: str) -> Held:
    return _follows(planned_dates(plan, planting_id).sow, _("counted back"))


def _in_ground_held(plan: Plan, planting_id: str) -> Held:
    planting = planting_of(plan, planting_id)
    words = _("by the order") if planting.order else _("counted back")
    if planting.sow is not None:
        words = _("by sowing")
    elif planting.ready is not None:
        words = _("by ready")
    return _follows(planned_dates(plan, planting_id).in_ground, words)


def _ready_held(plan: Plan, planting_id: str) -> Held:
    planting, ready = planting_of(plan, planting_id), planned_dates(plan, planting_id).ready
    order = order_of(plan, planting.order) if planting.order else None
    is_for_market = ready is not None and ready == wanted_ready(planting, order)
    return _follows(ready, _("for the market") if is_for_market else _("counted on"))


def _out_held(plan: Plan, planting_id: str) -> Held:
    return _follows(planned_dates(plan, planting_id).out, _("when ready"))


def _cells_held(plan: Plan, planting_id: str) -> Held:
    planting = planting_of(plan, planting_id)
    bare = evolve(planting, sow_cells=None, actual=None)
    made = raised_for(grown_of(plan, bare), layout_in(plan, planting_id))
    return Held(_("not known") if made.cells is None else _("packet: {value}").format(value=grouped(made.cells)))


def _cool_held(plan: Plan, planting_id: str) -> Held:
    days = crop_of(plan, planting_of(plan, planting_id).crop).cool_days
    return Held(_("none") if days is None else _("packet: {value}").format(value=days))


DATE_FIELDS = (
    TypedField("sow", _("Sow"), _shown("sow"), _edit("sow", date_from), "16 Mar 2027", _sow_held),
    TypedField(
        "sow_cells", _("Cells to sow"), _shown("sow_cells"), _edit("sow_cells", whole_from), "28", _cells_held
    ),
    TypedField(
        "in_ground", _("Set out"), _shown("in_ground"), _edit("in_ground", date_from), "9 Apr 2027", _in_ground_held
    ),
    TypedField("ready", _("Ready"), _shown("ready"), _edit("ready", date_from), "27 May 2027", _ready_held),
    TypedField("out", _("Ground free"), _shown("out"), _edit("out", date_from), "28 May 2027", _out_held),
    TypedField(
        "cool_days", _("Days for the cool"), _shown("cool_days"), _edit("cool_days", whole_from), held=_cool_held
    ),
    TypedField("soil", _("Soil at sowing"), _shown("soil"), _edit("soil", _temperature_from), "10 °C"),
    TypedField("market", _("For market day"), _shown("market"), _edit("market", whole_from), held=_("the first")),
)
"""The days of a planting, in the order of the panel."""
DATE_MATTERS: dict[str, Callable[[Plan, str], bool]] = {
    "sow": is_raised,
    "sow_cells": is_raised,
    "soil": lambda plan, planting_id: not is_raised(plan, planting_id),
    "market": has_markets,
}
"""When a field matters that does not always."""
