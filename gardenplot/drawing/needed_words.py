"""How many plants are to stand for the market day that plantings make, with all others that are cut for that day."""

from collections.abc import Iterator
from datetime import date
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.drawing.days import weekday_words, with_missing
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import TIMES
from gardenplot.drawing.so_many import so_many_clumps, so_many_short
from gardenplot.layout import Grown, LaidOut, lay_out_plan, spacings_for_orders, stood
from gardenplot.plan import Order, Plan
from gardenplot.season import market_day, market_made, markets_missed, stand_for
from gardenplot.season.orders import Each, units_from
from gardenplot.units import Share
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


@frozen
class Needed:
    """How many plants are to stand for units of an order, how many stand, and who else is cut for that market day.

    `day` is the market day that a planting makes, `missed` those from its own until that one, and `late` are the
    letters of others for the same day that make it later still. `earlier` are those that were cut for a market day
    before: what they bring is neither among `units` nor among the plants, though it is among the units that were
    `asked` for in all, of so many plants `each`. `loss` is the share that the plants allow for. Where a `clump` of
    several is left in each place, clumps are counted for plants.
    """

    count: int
    planted: int
    others: tuple[str, ...]
    day: date
    missed: tuple[date, ...] = ()
    late: tuple[str, ...] = ()
    units: int = 0
    asked: int = 0
    each: int = 1
    earlier: tuple[str, ...] = ()
    loss: Share | None = None
    clump: int = 1

    @property
    def ordered(self) -> str:
        """What is to be taken to that market, and by whom else: "120 ordered, with E"."""
        return self.taken + self._with_others

    @property
    def taken(self) -> str:
        """What is to be taken to that market: "120 ordered", "14 of 150 ordered, the rest from A"."""
        return self._count + self._rest

    @property
    def in_full(self) -> str:
        """The same with its day and how that is met: "120 ordered for Sat 17 May: 134 must be planted with 10 % loss,
        2 to spare"; "150 ordered for Sat 26 Jul, too late for 12 Jul, with B: …". With what is late: "B is late".
        """
        words = _("{count} for {day}").format(count=self._count, day=weekday_words(self.day))
        words = with_missing(words, self.missed) + self._rest + self._with_others
        told = _("{ordered}: {planted}").format(ordered=words, planted=self._planted)
        return ", ".join(part for part in (told, self._late) if part)

    @property
    def _count(self) -> str:
        if not self.earlier:
            return ordered_words(self.units, self.each)
        told = ordered_words(self.asked, self.each)
        return _("{count} of {ordered}").format(count=grouped(self.units), ordered=told)

    @property
    def _rest(self) -> str:
        return _(", the rest from {letters}").format(letters=", ".join(self.earlier)) if self.earlier else ""

    @property
    def _with_others(self) -> str:
        return _(", with {letters}").format(letters=", ".join(self.others)) if self.others else ""

    @property
    def _planted(self) -> str:
        """How many plants that takes, and whether so many stand: "134 must be planted with 10 % loss, 2 to spare"."""
        over = self.planted - self.count
        spare = _("{count} to spare").format(count=grouped(over)) if over else _("none to spare")
        answer = so_many_short(-over, self.clump) if over < 0 else spare
        words = _("{needed} must be planted with {loss} loss") if self.loss else _("{needed} must be planted")
        needed = grouped(self.count) if self.clump == 1 else so_many_clumps(self.count, self.clump)
        told = words.format(needed=needed, loss=self.loss.text if self.loss else "")
        return f"{told}, {answer}"

    @property
    def _late(self) -> str:
        """Which others are late: "B is late"."""
        words = ngettext("{letters} is late", "{letters} are late", len(self.late))
        return words.format(letters=", ".join(self.late)) if self.late else ""


def ordered_words(units: int, each: int) -> str:
    """ "120 ordered"; of bunches of five "40 × 5 plants ordered"."""
    if each == 1:
        return _("{count} ordered").format(count=grouped(units))
    return _("{count} plants ordered").format(count=f"{grouped(units)}{TIMES}{grouped(each)}")


@lru_cache(maxsize=16)
def needed_for_orders(plan: Plan) -> dict[str, Needed]:
    """What is needed of each planting that is for an order, by its id."""
    laid_out, found = lay_out_plan(plan), dict[str, Needed]()
    look, spacings = looks(plan), spacings_for_orders(laid_out)
    alike: dict[tuple[str, int], list[_For]] = {}
    rank = {one.id: number for number, one in enumerate(plan.plantings)}
    for one in sorted(_for_orders(laid_out), key=lambda each: rank[each.planting]):
        alike.setdefault((one.order.id, one.market), []).append(one)
    letters = {planting: each.letter for planting, each in look.items()}
    for key, several in alike.items():
        for one in several:
            found[one.planting] = _needed(one, several, letters, spacings.get(key))
    return found


def _needed(one: "_For", several: "list[_For]", letters: dict[str, str], each: Each | None) -> Needed:
    """What is needed of one of several plantings for the same market day of an order."""
    order, crop = one.order, one.grown.crop
    same, before = ([two for two in several if two.day == one.day], [two for two in several if two.day < one.day])
    units = max(0, order.units - units_from(order, crop, sum(two.stands for two in before), each))
    return Needed(
        # What was cut before has lost its own share, so what is left is counted anew and not by taking plants off.
        stand_for(evolve(order, units=units), crop, each) if units else 0,
        sum(two.stands for two in same),
        tuple(letters[two.planting] for two in same if two is not one),
        one.day,
        markets_missed(order, one.market, one.day),
        tuple(letters[two.planting] for two in several if two.day > one.day),
        units,
        order.units,
        order.plants_per_unit,
        tuple(letters[two.planting] for two in before),
        crop.field_loss,
        crop.stand,
    )


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
