"""What is met of orders, and of plantings without one, in a plan."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from attrs import frozen

from gardenplot.filling.claims import whole_plants
from gardenplot.layout import lay_out_plan, planted_for_orders, spacings_for_orders
from gardenplot.plan import Order, Plan, Planting, order_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season import dates_of, market_day, stand_for
from gardenplot.season.dates import wanted_ready
from gardenplot.season.orders import units_from


@frozen
class Met:
    """What stands for an order on a market day, of the units that are wanted; or of a planting without an order.

    The units of one without an order are its plants.
    `late` is how many days after the day that it was meant for it is ready or sold; less than nothing is earlier.
    """

    order: str | None
    market: int
    planting: str
    plants: int
    stand: int
    units: int
    wanted: int
    late: int = 0

    @property
    def share(self) -> Fraction:
        """The share that is met, at most all."""
        return min(Fraction(1), Fraction(self.units, self.wanted)) if self.wanted else Fraction(1)

    @property
    def is_whole(self) -> bool:
        """Whether all is met, on its day."""
        return self.units >= self.wanted and not self.late


def met_in(plan: Plan, claims: tuple[Planting, ...]) -> tuple[Met, ...]:
    """What is met in a plan of all that some plantings were meant for, each order once, in their order."""
    return tuple({(one.order or one.planting, one.market): one for one in _met(plan, claims)}.values())


def _met(plan: Plan, claims: tuple[Planting, ...]) -> Iterator[Met]:
    laid_out = lay_out_plan(plan)
    planted, row = planted_for_orders(laid_out), spacings_for_orders(laid_out)
    stands = {layout.planting: layout.plants for laid in laid_out for layout in laid.layouts}
    now = {one.id: one for one in plan.plantings}
    for claim in claims:
        one = now.get(claim.id, claim)
        if claim.order is None:
            count = stands.get(claim.id, 0)
            wanted = whole_plants(plan, claim)
            yield Met(None, 1, claim.id, count, wanted, count, wanted, _moved(plan, claim, one))
            continue
        order, crop, market = order_of(plan, claim.order), crop_as_planted(plan, claim), one.market or 1
        plants, each = planted.get((order.id, market), 0), row.get((order.id, market))
        yield Met(
            order.id, market, claim.id, plants, stand_for(order, crop, each),
            units_from(order, crop, plants, each), order.units, _late(plan, claim, one, order),
        )  # fmt: skip


def _late(plan: Plan, was: Planting, one: Planting, order: Order) -> int:
    """How late for its market day: by the market day that it is for now, else by the day that it is ready."""
    moved = _days(market_day(order, was.market), market_day(order, one.market))
    return moved or max(0, _days(wanted_ready(one, order), dates_of(plan, one).ready))


def _moved(plan: Plan, was: Planting, one: Planting) -> int:
    return _days(dates_of(plan, was).in_ground, dates_of(plan, one).in_ground)


def _days(first: date | None, last: date | None) -> int:
    return 0 if first is None or last is None else (last - first).days
