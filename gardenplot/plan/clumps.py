"""How many plants stand together in a place: as the packet says, or as it was typed for a planting."""

from functools import lru_cache

from attrs import fields, frozen

from gardenplot.plan.find import crop_of, planting_of
from gardenplot.plan.value import Crop, Order, Plan, Planting

OF_PLANTING = ("clump", "seeds_per_cell")
"""What a planting may say in place of its crop."""


@frozen(cache_hash=True)
class CropAsPlanted(Crop):
    """A crop as a planting has it: `own` are the fields that were typed for the planting."""

    own: frozenset[str] = frozenset()


@lru_cache(maxsize=4096)
def as_planted(crop: Crop, planting: Planting) -> Crop:
    """The crop with what a planting says in its place; the very crop where it says nothing."""
    own = {name: number for name in OF_PLANTING if (number := getattr(planting, name)) is not None}
    if not own:
        return crop
    packet = {each.name: getattr(crop, each.name) for each in fields(Crop)}
    return CropAsPlanted(**packet | own, own=frozenset(own))


def is_own(crop: Crop, name: str) -> bool:
    """Whether a field of a crop was typed for a planting of it."""
    return isinstance(crop, CropAsPlanted) and name in crop.own


def clump_for(plan: Plan, order: Order) -> int:
    """How many plants are left in each place of what stands for an order, at most, or would if anything did."""
    crop = crop_of(plan, order.crop)
    return max((as_planted(crop, one).stand for one in plan.plantings if one.order == order.id), default=crop.stand)


def crop_as_planted(plan: Plan, planting: Planting) -> Crop:
    """The crop of a planting, with what that says in its place."""
    return as_planted(crop_of(plan, planting.crop), planting)


def clump_of(plan: Plan, planting_id: str) -> int:
    """How many plants are left in each place of a planting; raises PlanError if there is none."""
    return crop_as_planted(plan, planting_of(plan, planting_id)).stand
