"""Plantings of one crop that follow one another as a series: made together, changed together, each free to leave.

What is in the ground stands by itself: it is neither changed with the others of its series nor do they follow it.
A series of one is none.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from attrs import evolve

from gardenplot.plan.find import by_id, fresh_id, planting_of
from gardenplot.plan.valid import check
from gardenplot.plan.value import Plan, Planting

Fields = Mapping[str, Any]
SHARED = frozenset(
    {
        "pattern", "direction", "rows", "in_row", "row_spacing", "edge", "twin_spacing", "offsets", "cell",
        "plants_per_cell", "plants", "length", "slack", "round_up_to", "end_margin", "remainder", "phase",
        "clump", "seeds_per_cell",
    }
)  # fmt: skip
"""What plantings of a series have in common: how they are planted and how large they are, not where and when."""


def series_of(plan: Plan, planting_id: str) -> tuple[Planting, ...]:
    """The plantings of the series that a planting belongs to, in the plan's order; none where it has none."""
    series = planting_of(plan, planting_id).series
    return tuple(one for one in plan.plantings if series is not None and one.series == series)


def repeat(plan: Plan, planting_id: str, copies: Sequence[Fields]) -> Plan:
    """Add a copy of a planting for each of some fields, all of them one series with it, behind all other plantings.

    Raises PlanError where one of them is not valid; without copies the plan stays as it is.
    """
    one = planting_of(plan, planting_id)
    if not copies:
        return plan
    series = one.series or fresh_id(one.id, {each.series for each in plan.plantings if each.series})
    taken = {each.id for each in plan.plantings}
    made = []
    for fields in copies:
        copy = evolve(one, **{"actual": None, **fields, "series": series, "id": fresh_id(one.id, taken)})
        taken.add(copy.id)
        made.append(copy)
    there = (evolve(one, series=series) if each is one else each for each in plan.plantings)
    return check(evolve(plan, plantings=(*there, *made)), plan)


def leave_series(plan: Plan, planting_id: str) -> Plan:
    """Take a planting out of its series; it stays as it is, and so do the others."""
    one = planting_of(plan, planting_id)
    if one.series is None:
        return plan
    left = tuple(evolve(each, series=None) if each is one else each for each in plan.plantings)
    return check(evolve(plan, plantings=without_lone(left, (one,))), plan)


def spread(plantings: tuple[Planting, ...], changed: str, changes: Fields) -> tuple[Planting, ...]:
    """The plantings with what was changed of one of them changed in all of its series that are not in the ground.

    A change of order is the planting's own, with all that comes with it.
    """
    shared = {name: value for name, value in changes.items() if name in SHARED}
    one = by_id(plantings, changed)
    if one.series is None or not shared or "order" in changes or _is_in_ground(one):
        return plantings
    return tuple(
        evolve(each, **shared) if each.series == one.series and each is not one and not _is_in_ground(each) else each
        for each in plantings
    )


def without_lone(plantings: tuple[Planting, ...], gone: Iterable[Planting]) -> tuple[Planting, ...]:
    """The plantings that are left when some are gone; one that is left alone of its series has none."""
    names = {one.series for one in gone if one.series is not None}
    if not names:
        return plantings
    left: dict[str, int] = {}
    for one in plantings:
        if one.series in names:
            left[one.series] = left.get(one.series, 0) + 1
    return tuple(
        evolve(one, series=None) if one.series in names and left[one.series] == 1 else one for one in plantings
    )


def _is_in_ground(planting: Planting) -> bool:
    return planting.actual is not None and planting.actual.set_out is not None
