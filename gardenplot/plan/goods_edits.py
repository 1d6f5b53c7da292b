"""Edits of goods, feeds and jugs: each gives another valid plan, or raises PlanError."""

from typing import Any

from attrs import evolve

from gardenplot.plan.find import by_id, fresh_id
from gardenplot.plan.goods import Feed, Good, Jugs
from gardenplot.plan.valid import check
from gardenplot.plan.value import Plan

Part = Good | Feed | Jugs
_LISTS: dict[type[Part], str] = {Good: "goods", Feed: "feeds", Jugs: "jugs"}


def add_supply(plan: Plan, part: Part) -> Plan:
    """Add a good, a feed or jugs; its id is made fresh if it is taken."""
    parts = _parts(plan, part)
    fresh = evolve(part, id=fresh_id(part.id, {one.id for one in parts}))
    return _with(plan, part, (*parts, fresh))


def change_supply(plan: Plan, part: Part, **changes: Any) -> Plan:
    """Change fields of a good, a feed or jugs of the plan."""
    parts = _parts(plan, part)
    here = by_id(parts, part.id)
    return _with(plan, part, tuple(evolve(one, **changes) if one is here else one for one in parts))


def remove_supply(plan: Plan, part: Part) -> Plan:
    """Remove a good, a feed or jugs."""
    parts = _parts(plan, part)
    here = by_id(parts, part.id)
    return _with(plan, part, tuple(one for one in parts if one is not here))


def _parts(plan: Plan, part: Part) -> tuple[Part, ...]:
    parts: tuple[Part, ...] = getattr(plan, _LISTS[type(part)])
    return parts


def _with(plan: Plan, part: Part, parts: tuple[Part, ...]) -> Plan:
    changes: dict[str, Any] = {_LISTS[type(part)]: parts}
    after = evolve(plan, **changes)
    return plan if after == plan else check(after, plan)
