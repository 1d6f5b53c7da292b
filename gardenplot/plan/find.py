"""Finding the parts of a plan by their id."""

from collections.abc import Mapping
from functools import lru_cache
from typing import Any, Protocol, TypeVar

from attrs import evolve, field, frozen

from gardenplot.errors import PlanError
from gardenplot.plan.value import Bed, Crop, Order, Plan, Planting
from gardenplot.words import _


class _Named(Protocol):
    @property
    def id(self) -> str: ...


T = TypeVar("T", bound=_Named)
_FEW = 24
"""So many parts are looked through as quickly as an index is."""


@frozen
class _Same:
    """Parts that are the very same ones: to compare thousands by value would take as long as to look through them."""

    parts: tuple[_Named, ...] = field(eq=id)


@lru_cache(maxsize=16)
def _index(same: _Same) -> Mapping[str, Any]:
    """Parts by their id, the first of those that share one."""
    return {part.id: part for part in reversed(same.parts)}


def by_id(parts: tuple[T, ...], wanted: str) -> T:
    """The part with that id; raises PlanError if there is none."""
    if len(parts) > _FEW:
        found: T | None = _index(_Same(parts)).get(wanted)
        if found is not None:
            return found
    for part in parts:
        if part.id == wanted:
            return part
    raise PlanError(_("there is no “{id}” in the plan").format(id=wanted))


def bed_of(plan: Plan, bed_id: str) -> Bed:
    """The bed with that id; raises PlanError if there is none."""
    return by_id(plan.beds, bed_id)


def crop_of(plan: Plan, crop_id: str) -> Crop:
    """The crop with that id; raises PlanError if there is none."""
    return by_id(plan.crops, crop_id)


def planting_of(plan: Plan, planting_id: str) -> Planting:
    """The planting with that id; raises PlanError if there is none."""
    return by_id(plan.plantings, planting_id)


def order_of(plan: Plan, order_id: str) -> Order:
    """The order with that id; raises PlanError if there is none."""
    return by_id(plan.orders, order_id)


def plantings_in(plan: Plan, bed_id: str) -> tuple[Planting, ...]:
    """The plantings of one bed, in the plan's order."""
    return tuple(planting for planting in plan.plantings if planting.bed == bed_id)


def only(plan: Plan, bed_id: str) -> Plan:
    """The plan as if it had that one bed; what is asked of it alone is answered as fast in a plan of any size.

    Trays of plantings that lie elsewhere are left out with those. Of the wishes those stay that something was planted
    for, which may have any bed.
    """
    plantings = with_their_own(plantings_in(plan, bed_id))
    planted_for = {one.wish for one in plantings}
    return evolve(
        plan, beds=(bed_of(plan, bed_id),), plantings=plantings,
        wishes=tuple(evolve(one, beds=()) for one in plan.wishes if one.id in planted_for),
        covers=(), ground=tuple(one for one in plan.ground if one.bed == bed_id), tunnels=(), paths=(),
        feeds=(), jugs=(),
    )  # fmt: skip


def with_their_own(plantings: tuple[Planting, ...]) -> tuple[Planting, ...]:
    """Plantings without the trays of any that is not among them; the same where there are none.

    What stood in the gaps of one that is not among them, or no longer in its bed, has the ground for itself.
    """
    if all(one.hardens is None and one.gaps_of is None for one in plantings):
        return plantings
    beds = {one.id: one.bed for one in plantings}
    kept = (one for one in plantings if one.hardens is None or one.hardens in beds)
    return tuple(
        one if one.gaps_of is None or beds.get(one.gaps_of) == one.bed else evolve(one, gaps_of=None) for one in kept
    )


def fresh_id(wish: str, taken: set[str]) -> str:
    """An id like `wish` that is not taken: wish, wish-2, wish-3 ..."""
    number, candidate = 1, wish
    while candidate in taken:
        number += 1
        candidate = f"{wish}-{number}"
    return candidate
