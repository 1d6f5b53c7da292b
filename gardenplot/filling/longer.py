"""A block that loses plants to places reserved in it, longer by so much that all that is needed stands beside them.

Ranks = the fewest with which the order has the plants that must stand. Formula: common practice, no source.
"""

from bisect import bisect_left

from attrs import evolve

from gardenplot.filling.claims import with_planting
from gardenplot.layout import ground_for, lay_out_bed, lay_out_plan, planted_for_orders
from gardenplot.plan import Plan, Planting, Reserved, bed_of, order_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season import stand_for
from gardenplot.units import length_of


def longer_block(plan: Plan, claim: Planting) -> tuple[Planting, int] | None:
    """A planting in whole ranks at its place with all plants of its order, and by how many nm it is longer.

    None where it leaves no places empty, does not stand yet, or has no room behind it.
    """
    stands = any(one.id == claim.id for one in plan.plantings)
    if claim.order is None or claim.reserved is Reserved.CUT_FIRST or not stands:
        return None
    layout = lay_out_bed(plan, bed_of(plan, claim.bed)).layout_of(claim.id)
    rank, room = layout.grid.rank, ground_for(plan, claim, claim.bed).end_of_room(layout.start) - layout.start
    order = order_of(plan, claim.order)
    needed = stand_for(order, crop_as_planted(plan, claim), layout.grid.in_row)
    if not rank:
        return None

    def of_ranks(ranks: int) -> Planting:
        length = length_of(ranks * rank, plan.place.units)
        return evolve(
            claim, start=length_of(layout.start, plan.place.units), length=length, plants=None, slack=None,
            round_up_to=None,
        )  # fmt: skip

    def has_all(ranks: int) -> bool:
        planted = planted_for_orders(lay_out_plan(with_planting(plan, of_ranks(ranks))))
        return planted.get((order.id, claim.market or 1), 0) >= needed

    more = range(layout.length // rank + 1, room // rank + 1)
    at = bisect_left(more, True, key=has_all)
    return None if at == len(more) else (of_ranks(more[at]), more[at] * rank - layout.length)
