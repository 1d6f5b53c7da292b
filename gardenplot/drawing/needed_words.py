"""How many plants must stand for the market day that plantings make, with all others that are ready by then."""

from collections.abc import Iterator
from datetime import date
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.layout import Grown, LaidOut, lay_out_plan, spacings_for_orders, stood
from gardenplot.plan import Order, Plan
from gardenplot.season import market_day, market_made, markets_missed, stand_for
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


@frozen
class Needed:
    """How many plants must stand for units of an order, how many stand by a market day, and who else counts by then.

    `day` is the market day that a planting makes, `missed` those from its own until that one, and `late` are the
    letters of others for the same day that make it later still.
    """

    count: int
    planted: int
    others: tuple[str, ...]
    day: date
    missed: tuple[date, ...] = ()
    late: tuple[str, ...] = ()
    units: int = 0

    def __str__(self) -> str:
        words = ngettext("{count} must stand", "{count} must stand", self.count).format(count=grouped(self.count))
        return words + self._with_others

    @property
    def ordered(self) -> str:
        """What is to be taken to that market: "120 ordered, with E"."""
        words = ngettext("{count} ordered", "{count} ordered", self.units).format(count=grouped(self.units))
        return words + self._with_others

    @property
    def _with_others(self) -> str:
        return _(", with {letters}").format(letters=", ".join(self.others)) if self.others else ""

    @property
    def late_words(self) -> str:
        """Which others are late: "B is late"."""
        words = ngettext("{letters} is late", "{letters} are late", len(self.late))
        return words.format(letters=", ".join(self.late)) if self.late else ""


@lru_cache(maxsize=16)
def needed_for_orders(plan: Plan) -> dict[str, Needed]:
    """What is needed of each planting that is for an order, by its id."""
    laid_out, found = lay_out_plan(plan), dict[str, Needed]()
    look, spacings = looks(plan), spacings_for_orders(laid_out)
    alike: dict[tuple[str, int], list[_For]] = {}
    rank = {one.id: number for number, one in enumerate(plan.plantings)}
    for one in sorted(_for_orders(laid_out), key=lambda each: rank[each.planting]):
        alike.setdefault((one.order.id, one.market), []).append(one)
    for key, several in alike.items():
        for one in several:
            in_time = [each for each in several if each.day <= one.day]
            found[one.planting] = Needed(
                stand_for(one.order, one.grown.crop, spacings.get(key)),
                sum(each.stands for each in in_time),
                tuple(look[each.planting].letter for each in in_time if each is not one),
                one.day,
                markets_missed(one.order, one.market, one.day),
                tuple(look[each.planting].letter for each in several if each.day > one.day),
                one.order.units,
            )
    return found


@frozen
class _For:
    """A planting with its order, which of its market days it is for and which day it makes, and how many stand."""

    grown: Grown
    order: Order
    market: int
    day: date
    stands: int

    @property
    def planting(self) -> str:
        """Its id."""
        return self.grown.planting.id


def _for_orders(laid_out: tuple[LaidOut, ...]) -> Iterator[_For]:
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            order, market, ready = one.order, one.planting.market or 1, one.dates.ready
            if order is not None:
                made = market_made(order, market, ready) if ready is not None else None
                day = made or market_day(order, market) or order.on
                yield _For(one, order, market, day, stood(one, layout))
