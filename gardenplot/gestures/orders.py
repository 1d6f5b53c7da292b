"""Orders taken away: what was planted for them stays as it stands."""

from gardenplot.gestures.trials import layout_in
from gardenplot.plan import Plan
from gardenplot.plan.edits import remove_order
from gardenplot.season import dates_of


def drop_order(plan: Plan, order_id: str) -> Plan:
    """Remove an order; its plantings keep their plants and their days in the ground."""
    kept: dict[str, dict[str, object]] = {}
    for planting in plan.plantings:
        if planting.order != order_id:
            continue
        dates = dates_of(plan, planting)
        kept[planting.id] = {"in_ground": dates.in_ground, "out": planting.out}
        if planting.length is None and planting.plants is None:
            layout = layout_in(plan, planting.id)
            kept[planting.id]["plants"] = layout.wanted or layout.plants or 1
    return remove_order(plan, order_id, kept)
