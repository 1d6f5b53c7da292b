"""What came about of a planting, as it is typed: days, seedlings, plants that were set out and that stand."""

from collections.abc import Callable
from datetime import date
from typing import Any

from gardenplot.drawing.days import short_day
from gardenplot.errors import PlanError
from gardenplot.gestures.dates_typed import is_raised, planned_dates
from gardenplot.gestures.days_read import date_from
from gardenplot.gestures.kept import kept_in_ground, layout_in
from gardenplot.gestures.reading import length_from, text_of, whole_from
from gardenplot.gestures.typed import Edit, Held, Shown, TypedField
from gardenplot.plan import Actual, Plan, crop_of, planting_of
from gardenplot.plan.edits import record_actual
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.units.figures import grouped
from gardenplot.words import _

_PREFIX = "actual_"


def record(plan: Plan, planting_id: str, name: str, value: date | int | None) -> Plan:
    """Record a day or a count of a planting; raises PlanError.

    Once it is in the ground its block stays as it is. Where its last rank is part-filled, so many plants were set out
    unless another number is known.
    """
    planting = planting_of(plan, planting_id)
    if name != "set_out" or value is None or is_in_ground(planting):
        return record_actual(plan, planting_id, {name: value}, {})
    before = layout_in(plan, planting_id).plants
    after = record_actual(plan, planting_id, {name: value}, kept_in_ground(plan, planting))
    counted = planting.actual is not None and planting.actual.planted is not None
    if counted or layout_in(after, planting_id).plants == before:
        return after
    return record_actual(after, planting_id, {"planted": before}, {})


def _shown(name: str) -> Shown:
    return lambda plan, planting_id: text_of(getattr(planting_of(plan, planting_id).actual or Actual(), name))


def _edit(name: str, read: Callable[[str], Any]) -> Edit:
    return lambda plan, planting_id, text, _before: record(plan, planting_id, name, read(text))


def _meant(name: str) -> Callable[[Plan, str], Held]:
    """The day that was planned for it."""

    def held(plan: Plan, planting_id: str) -> Held:
        day: date | None = getattr(planned_dates(plan, planting_id), name)
        return Held(_("not yet") if day is None else _("due {day}").format(day=short_day(day)))

    return held


def _planted_held(plan: Plan, planting_id: str) -> Held:
    if not is_in_ground(planting_of(plan, planting_id)):
        return Held(_("not yet"))
    return Held(_("all {plants}").format(plants=grouped(layout_in(plan, planting_id).plants)))


def _is_potted_up(plan: Plan, planting_id: str) -> bool:
    """Whether its packet has it potted up on the way, or it was."""
    planting = planting_of(plan, planting_id)
    was = planting.actual is not None and planting.actual.potted_up is not None
    return was or (is_raised(plan, planting_id) and crop_of(plan, planting.crop).pot_up_days is not None)


def _day(name: str, label: str, planned: Callable[[Plan, str], Held] | str) -> TypedField:
    return TypedField(_PREFIX + name, label, _shown(name), _edit(name, date_from), "9 Apr 2027", planned)


def _count(name: str, label: str, held: Callable[[Plan, str], Held] | str) -> TypedField:
    return TypedField(_PREFIX + name, label, _shown(name), _edit(name, whole_from), "120", held)


def _rows_from(text: str) -> tuple[int, ...]:
    """Numbers of rows as they are typed: "2; 3", or apart by commas."""
    return tuple(row for part in text.replace(",", ";").split(";") if (row := whole_from(part.strip())) is not None)


def _rows_failed(plan: Plan, planting_id: str, text: str, _before: str) -> Plan:
    rows, there = _rows_from(text), len(layout_in(plan, planting_id).per_row)
    beyond = next((row for row in rows if row > there), None)
    if beyond is not None:
        raise PlanError(_("there is no row {row}: it has {rows}").format(row=beyond, rows=there))
    return record_actual(plan, planting_id, {"failed_rows": rows}, {})


def _rows_shown(plan: Plan, planting_id: str) -> str:
    return "; ".join(str(row) for row in (planting_of(plan, planting_id).actual or Actual()).failed_rows)


def _stand_row(plan: Plan, planting_id: str, text: str, before: str) -> Plan:
    return record_actual(plan, planting_id, {"stand_row": length_from(text, before, plan.place.units)}, {})


def _is_there(name: str) -> Callable[[Plan, str], bool]:
    """Whether a planting is in the ground, or something of that name was typed all the same."""

    def matters(plan: Plan, planting_id: str) -> bool:
        planting = planting_of(plan, planting_id)
        return is_in_ground(planting) or bool(_shown_of(planting.actual, name))

    return matters


def _shown_of(actual: Actual | None, name: str) -> object:
    return getattr(actual, name) if actual is not None else None


def _is_sown_direct(plan: Plan, planting_id: str) -> bool:
    """Whether it is sown in its bed, where a stand may be counted in a length of row."""
    return not is_raised(plan, planting_id)


ACTUAL_FIELDS = (
    _day("sown", _("Sown"), _meant("sow")),
    _count("cells", _("Cells sown"), _("not counted")),
    _day("emerged", _("Emerged"), _("not yet")),
    _count("stand", _("Seedlings that stand"), _("not counted")),
    TypedField(
        _PREFIX + "stand_row", _("Counted in a row of"), _shown("stand_row"), _stand_row, "2 m", _("all of it")
    ),
    _count("bought", _("Plants bought in"), _("none")),
    _day("potted_up", _("Potted up"), _meant("pot_up")),
    _day("hardened", _("Hardened from"), _meant("harden")),
    _day("set_out", _("Was set out"), _meant("in_ground")),
    _count("planted", _("Plants set out"), _planted_held),
    _count("standing", _("Plants that stand now"), _("not counted")),
    _day("counted", _("Counted on"), _("not counted")),
    TypedField(_PREFIX + "failed_rows", _("Rows that failed"), _rows_shown, _rows_failed, "2; 3", _("none")),
    _day("harvested", _("First harvest"), _meant("ready")),
    _day("cleared", _("Ground was free"), _meant("out")),
)
"""What came about, in the order of the panel."""
ACTUAL_MATTERS: dict[str, Callable[[Plan, str], bool]] = {
    **{_PREFIX + name: is_raised for name in ("sown", "cells", "bought", "hardened", "planted")},
    **{_PREFIX + name: _is_there(name) for name in ("standing", "counted", "failed_rows")},
    _PREFIX + "stand_row": _is_sown_direct,
    _PREFIX + "potted_up": _is_potted_up,
}
"""When a field matters that does not always: what is sown in its bed is neither raised nor set out."""
