"""Each market day of a plan in words: what is taken there, how much of it is ordered, and what is too late for it."""

from collections.abc import Iterator
from datetime import date

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.needed_words import Needed, needed_for_orders, ordered_words
from gardenplot.plan import Order, Plan, crop_of
from gardenplot.season import market_days
from gardenplot.words import ngettext


@frozen
class MarketRow:
    """A day on which something is taken to market: for which order and which of its days, counted from 1.

    `about` is an id of it, another one for a later day that what was meant for that day makes. `name` has the letters
    of what is cut for it, `amount` what is ordered, `late` the letters of what is cut later.
    """

    day: date
    order: str
    market: int
    about: str
    name: str
    amount: str
    late: str


def market_id(order: str, market: int) -> str:
    """The id of a market day of an order, counted from 1."""
    return f"{order} {market}"


def market_rows(plan: Plan) -> Iterator[MarketRow]:
    """All market days of a plan's orders, planted or not, and the later ones that something late makes."""
    needed = needed_for_orders(plan)
    alike: dict[tuple[str, int], list[str]] = {}
    for one in plan.plantings:
        if one.order is not None and one.id in needed:
            alike.setdefault((one.order, one.market or 1), []).append(one.id)
    for order in plan.orders:
        for market, day in enumerate(market_days(order), 1):
            for_it = {planting: needed[planting] for planting in alike.get((order.id, market), ())}
            for made in sorted({day, *(one.day for one in for_it.values())}):
                about = market_id(order.id, market) + ("" if made == day else f" {made.isoformat()}")
                yield _row(plan, order, (market, about), made, for_it)


def _row(plan: Plan, order: Order, which: tuple[int, str], day: date, for_it: dict[str, Needed]) -> MarketRow:
    look, crop = looks(plan), crop_of(plan, order.crop).name
    cut = [planting for planting, one in for_it.items() if one.day == day]
    later = [look[planting].letter for planting, one in for_it.items() if one.day > day]
    late = ngettext("{letters} is late", "{letters} are late", len(later)).format(letters=", ".join(later))
    return MarketRow(
        day, order.id, *which,
        f"{', '.join(look[planting].letter for planting in cut)} {crop}".strip(),
        for_it[cut[0]].taken if cut else ordered_words(order.units, order.plants_per_unit),
        late if later else "",
    )  # fmt: skip
