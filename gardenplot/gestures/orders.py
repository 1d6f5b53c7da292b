"""Orders taken away: what was planted for them stays as it stands."""

from gardenplot.gestures.kept import kept_without_order
from gardenplot.plan import Plan
from gardenplot.plan.edits import remove_order


def drop_order(plan: Plan, order_id: str) -> Plan:
    """Remove an order; its plantings keep their plants and their days in the ground."""
    kept = {one.id: kept_without_order(plan, one) for one in plan.plantings if one.order == order_id}
    return remove_order(plan, order_id, kept)
