"""Other fillings of the same plan that differ in kind: in what is met, in part or not at all, not in where it stands.

Each comes of other weights than those that were asked for, with a part of the effort; one that meets the same as
another is no other.
"""

from collections.abc import Callable
from enum import StrEnum

from attrs import evolve, frozen

from gardenplot.filling.filled import Filling, filled
from gardenplot.filling.wanted import Weights
from gardenplot.plan import Plan

_PART = 4
"""An other filling is looked for with the turns of the first, divided by this."""
_ALL = 1000.0
_FAR = 9.0


class Kind(StrEnum):
    """What counts more in another filling."""

    ORDERS = "orders before any wish"
    WISHES = "wishes as much as orders"
    WHOLE = "an order whole or not at all"
    PARTS = "parts of orders for what they have"
    APART = "what is repeated whenever it finds ground"


@frozen
class Other:
    """Another filling, and what counts more in it."""

    kind: Kind
    filling: Filling


def others(
    plan: Plan, first: Filling, weights: Weights, turns: int, turned: Callable[[], object] = lambda: None
) -> tuple[Other, ...]:
    """Other fillings of a plan than the first, which was found with those weights and turns, if any differs."""
    seen = {_met(first)}
    found = []
    for kind, other in _weights(plan, weights):
        filling = filled(plan, max(1, turns // _PART), other, lambda _made: True, turned)
        met = _met(filling)
        if met not in seen:
            seen.add(met)
            found.append(Other(kind, filling))
    return tuple(found)


def turns_for_others(plan: Plan, weights: Weights, turns: int) -> int:
    """How many turns looking for others takes, after so many for the first."""
    return len(_weights(plan, weights)) * max(1, turns // _PART)


def _weights(plan: Plan, weights: Weights) -> list[tuple[Kind, Weights]]:
    """Weights that can lead to something else in this plan."""
    ways = []
    if plan.orders and plan.wishes:
        ways += [(Kind.ORDERS, evolve(weights, orders=_ALL)), (Kind.WISHES, evolve(weights, orders=1.0))]
    if plan.orders:
        ways += [(Kind.WHOLE, evolve(weights, whole=_FAR)), (Kind.PARTS, evolve(weights, whole=0.0))]
    if any(one.times > 1 for one in plan.orders) or any(one.times > 1 for one in plan.wishes):
        ways.append((Kind.APART, evolve(weights, apart=True)))
    return [way for way in ways if way[1] != weights]


def _met(filling: Filling) -> frozenset[tuple[str, str]]:
    """What of a filling is met wholly, in part or not at all."""
    lacking = {one.wanted: "part" if one.plants else "none" for one in filling.lacking}
    placed = {one.wanted: "whole" for one in filling.placed}
    return frozenset((placed | lacking).items())
