"""How many plants must stand for the market day that plantings are for, all plantings for it together."""

from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.layout import lay_out_plan, planted_for_orders, spacings_for_orders
from gardenplot.plan import Plan
from gardenplot.season import stand_for
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


@frozen
class Needed:
    """How many plants must stand for an order's market day, how many are planted for it, and which others count."""

    count: int
    planted: int
    others: tuple[str, ...]

    def __str__(self) -> str:
        words = ngettext("{count} must stand", "{count} must stand", self.count).format(count=grouped(self.count))
        return words + _(", with {letters}").format(letters=", ".join(self.others)) if self.others else words


@lru_cache(maxsize=16)
def needed_for_orders(plan: Plan) -> dict[str, Needed]:
    """What is needed of each planting that is for an order, by its id."""
    look, laid_out = looks(plan), lay_out_plan(plan)
    planted, spacings = planted_for_orders(laid_out), spacings_for_orders(laid_out)
    letters: dict[tuple[str, int], list[str]] = {}
    for one in plan.plantings:
        if one.order is not None and one.id in look:
            letters.setdefault((one.order, one.market or 1), []).append(one.id)
    found = {}
    for laid in laid_out:
        for grown in laid.grown:
            order = grown.order
            if order is None:
                continue
            key = order.id, grown.planting.market or 1
            others = tuple(look[one].letter for one in letters.get(key, ()) if one != grown.planting.id)
            count = stand_for(order, grown.crop, spacings.get(key))
            found[grown.planting.id] = Needed(count, planted.get(key, 0), others)
    return found
