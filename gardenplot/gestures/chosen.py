"""What the hand chooses for a planting among a few named values: its pattern, and how its rows lie."""

from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any

from attrs import field, frozen

from gardenplot.drawing.sayings import PATTERNS
from gardenplot.gestures.kept import layout_in
from gardenplot.layout.phase import may_shift
from gardenplot.layout.spread import may_spread
from gardenplot.layout.turned import may_turn
from gardenplot.plan import Direction, Pattern, Phase, Plan, Remainder, bed_of, planting_of
from gardenplot.plan.edits import change_planting
from gardenplot.units import length_of
from gardenplot.words import _


@frozen
class ChosenField:
    """A choice of one planting field: its values in words, when it matters, the edit that a value makes, and when a
    value is offered that is not always."""

    name: str
    label: str
    values: Mapping[Any, str]
    matters: Callable[[Plan, str], bool]
    edit: Callable[[Plan, str, StrEnum], Plan]
    only_where: Mapping[Any, Callable[[Plan, str], bool]] = field(factory=dict)

    def offered(self, plan: Plan, planting_id: str) -> tuple[Any, ...]:
        """The values that a planting may choose among, and the one that it has."""
        now = getattr(planting_of(plan, planting_id), self.name)
        return tuple(
            value for value in self.values if value == now or self.only_where.get(value, _always)(plan, planting_id)
        )


def change_pattern(plan: Plan, planting_id: str, pattern: StrEnum) -> Plan:
    """Plant in another pattern; rows run along the bed where it asks for that, own offsets begin as the rows lie now.

    Raises PlanError.
    """
    planting = planting_of(plan, planting_id)
    changes: dict[str, object] = {"pattern": Pattern(pattern)}
    if not Pattern(pattern).has_even_rows:
        changes["direction"] = Direction.ALONG
    if pattern is Pattern.OFFSETS and not planting.offsets:
        grid = layout_in(plan, planting_id).grid
        offsets = grid.offsets if grid.turn is None else ()
        middle = bed_of(plan, planting.bed).width.nm // 2
        changes["offsets"] = tuple(length_of(nm, plan.place.units) for nm in offsets or (middle,))
    return change_planting(plan, planting_id, **changes)


def _edit(attribute: str) -> Callable[[Plan, str, StrEnum], Plan]:
    return lambda plan, planting_id, value: change_planting(plan, planting_id, **{attribute: value})


def _always(_plan: Plan, _planting_id: str) -> bool:
    return True


def _is_plants(plan: Plan, planting_id: str) -> bool:
    """Whether it is planted, and no block of trays, which stand side by side."""
    return planting_of(plan, planting_id).hardens is None


def _may_run_across(plan: Plan, planting_id: str) -> bool:
    return planting_of(plan, planting_id).pattern.has_even_rows


def _may_spread(plan: Plan, planting_id: str) -> bool:
    return may_spread(planting_of(plan, planting_id))


def _may_shift(plan: Plan, planting_id: str) -> bool:
    planting = planting_of(plan, planting_id)
    return may_shift(bed_of(plan, planting.bed), planting)


def _may_turn(plan: Plan, planting_id: str) -> bool:
    planting = planting_of(plan, planting_id)
    return may_turn(bed_of(plan, planting.bed), planting)


CHOSEN_FIELDS = (
    ChosenField("pattern", _("Pattern"), PATTERNS, _is_plants, change_pattern),
    ChosenField(
        "direction",
        _("Rows run"),
        {Direction.ALONG: _("along the bed"), Direction.ACROSS: _("across the bed")},
        _may_run_across,
        _edit("direction"),
    ),
    ChosenField(
        "remainder",
        _("Remainder"),
        {Remainder.FOOT: _("at the foot end"), Remainder.SPREAD: _("spread over the plants")},
        _may_spread,
        _edit("remainder"),
    ),
    ChosenField(
        "phase",
        _("Rows lie"),
        {
            Phase.CENTRED: _("centred"),
            Phase.BEST: _("where most plants fit"),
            Phase.TURNED: _("where most plants fit, turned to an edge"),
        },
        _may_shift,
        _edit("phase"),
        {Phase.TURNED: _may_turn},
    ),
)
"""The choices of a planting, in the order of the panel."""
