"""Edits of several plantings at once: each gives another valid plan as one whole, or raises PlanError.

What is in the ground is never moved, planted otherwise or removed by any of them.
"""

from collections.abc import Collection, Mapping
from typing import Any

from attrs import evolve

from gardenplot.plan.find import fresh_id, planting_of, with_their_own
from gardenplot.plan.in_ground import check_stays
from gardenplot.plan.series import without_lone
from gardenplot.plan.valid import check
from gardenplot.plan.value import Plan, Planting

Fields = Mapping[str, Any]
_BARE: Fields = {"order": None, "market": None, "series": None, "actual": None}
"""What a copy does not have of what it is copied from."""


def change_plantings(plan: Plan, changes: Mapping[str, Fields]) -> Plan:
    """Change fields of several plantings, by their ids."""
    _known(plan, changes)
    return _with(plan, tuple(evolve(one, **changes[one.id]) if one.id in changes else one for one in plan.plantings))


def remove_plantings(plan: Plan, gone: Collection[str]) -> Plan:
    """Remove several plantings, by their ids."""
    _known(plan, gone)
    left = tuple(one for one in plan.plantings if one.id not in gone)
    return _with(plan, without_lone(left, (planting_of(plan, one) for one in gone)))


def copy_plantings(plan: Plan, copies: Mapping[str, Fields]) -> Plan:
    """Add a copy of each planting, by its id, with some fields changed and a fresh id, behind all others.

    A copy never carries the order, nor what came about: an order is planted once, and a copy is not in the ground.
    It is of no series.
    """
    _known(plan, copies)
    after = plan.plantings
    for one in plan.plantings:
        if one.id in copies:
            after = (*after, _fresh(evolve(one, **_BARE, **copies[one.id]), after))
    return _with(plan, after)


def split_planting(plan: Plan, planting_id: str, first: Fields, rest: Fields) -> Plan:
    """Give a planting some fields and add a second part of it with others; both parts stay with its order.

    They leave its series, whose plantings are all alike.
    """
    one = planting_of(plan, planting_id)
    parts = tuple(evolve(one, series=None, **first) if each is one else each for each in plan.plantings)
    return _with(plan, without_lone((*parts, _fresh(evolve(one, series=None, **rest), parts)), (one,)))


def join_plantings(plan: Plan, kept: str, gone: str, fields: Fields) -> Plan:
    """Give a planting some fields and remove the one that becomes part of it."""
    _known(plan, (kept, gone))
    changed = tuple(evolve(one, **fields) if one.id == kept else one for one in plan.plantings)
    left = tuple(one for one in changed if one.id == kept or one.id != gone)
    return _with(plan, without_lone(left, (planting_of(plan, gone),)))


def _known(plan: Plan, ids: Collection[str]) -> None:
    for wanted in ids:
        planting_of(plan, wanted)


def _fresh(planting: Planting, others: tuple[Planting, ...]) -> Planting:
    return evolve(planting, id=fresh_id(planting.id, {one.id for one in others}))


def _with(plan: Plan, plantings: tuple[Planting, ...]) -> Plan:
    kept = with_their_own(plantings)
    return plan if kept == plan.plantings else check(check_stays(plan, evolve(plan, plantings=kept)), plan)
