"""Counts as rows of words: per planting, bed and crop, and for the whole plan."""

from collections import Counter
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.days import day_words, short_day
from gardenplot.drawing.left_words import left_at_fullest
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.sayings import between, counted, rows_by_plants, so_many_planted
from gardenplot.drawing.so_many import so_many_in_all
from gardenplot.drawing.turns import walked
from gardenplot.layout import Grown, LaidOut, Layout, lay_out_plan, planted_for_orders, spacings_for_orders, stood
from gardenplot.plan import Plan, crop_of
from gardenplot.season import market_days, stand_for
from gardenplot.season.dates import wanted_ready
from gardenplot.units import Units
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext

LIST_COLUMNS = (_("what"), _("needed"), _("in store"), _("to buy"), _("cost"))
"""The heads of the list of what to buy and carry."""
LIST_NUMBERS = (4,)


@frozen(cache_hash=True)
class CountRow:
    """One row of the counts; `bed`, `planting` and `crop` say what it is about, `inner` are the rows it sums up.

    Of its `plants` so many are `clumps`, which stand in one place each.
    """

    name: str
    readings: str
    rows: str
    plants: int
    bed: str | None = None
    planting: str | None = None
    inner: tuple["CountRow", ...] = ()
    crop: str | None = None
    clumps: int = 0

    @property
    def told(self) -> str:
        """Its plants: a number alone, but with what they are where there are clumps among them."""
        return so_many_in_all(self.plants - self.clumps, self.clumps) if self.clumps else grouped(self.plants)

    @property
    def is_bed(self) -> bool:
        """Whether it is the sum of a bed."""
        return self.bed is not None and self.planting is None


def counts_by_bed(plan: Plan) -> tuple[CountRow, ...]:
    """A row for each bed with a row for each of its plantings."""
    look = looks(plan)
    return tuple(
        _bed_row(laid, tuple(look[layout.planting] for layout in walked(laid)), plan.place.units)
        for laid in lay_out_plan(plan)
    )


def counts_by_crop(plan: Plan) -> tuple[CountRow, ...]:
    """A row for each crop that is planted, by name."""
    plants, clumps = Counter[str](), Counter[str]()
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            plants[layout.crop] += layout.planted
            clumps[layout.crop] += layout.planted if one.crop.stand > 1 else 0
    rows = [
        CountRow(crop_of(plan, crop).name, "", "", count, crop=crop, clumps=clumps[crop])
        for crop, count in plants.items()
    ]
    return tuple(sorted(rows, key=lambda row: row.name.casefold()))


@lru_cache(maxsize=1024)
def _bed_row(laid: LaidOut, look: tuple[Look, ...], units: Units) -> CountRow:
    grown = {one.planting.id: one for one in laid.grown}
    inner = tuple(
        CountRow(
            _name(one, grown[layout.planting]),
            between(layout.start, layout.end, units),
            _rows(grown[layout.planting], layout),
            layout.planted,
            laid.bed.id,
            layout.planting,
            clumps=layout.planted if grown[layout.planting].crop.stand > 1 else 0,
        )
        for one, layout in zip(look, walked(laid), strict=True)
    )
    total, clumps = sum(row.plants for row in inner), sum(row.clumps for row in inner)
    left = left_at_fullest((laid,), units)
    return CountRow(laid.bed.name, left, "", total, laid.bed.id, None, inner, clumps=clumps)


def _name(look: Look, one: Grown) -> str:
    """A planting by its letter and crop, and since when it is there: "A  Leek, there since 9 Apr"."""
    name, came = f"{look.letter}  {one.crop.name}", one.planting.actual
    if came is None or came.set_out is None:
        return name
    return _("{name}, there since {day}").format(name=name, day=short_day(came.set_out))


def _rows(one: Grown, layout: Layout) -> str:
    """Rows by plants, and how many stand of them where that was counted: "3 × 55; 160 stand"."""
    if layout.holds_trays:
        return counted(layout)
    rows, standing = rows_by_plants(layout), stood(one, layout)
    if standing == layout.plants:
        return rows
    return _("{rows}; {count} stand").format(rows=rows, count=grouped(standing))


@lru_cache(maxsize=16)
def summary(plan: Plan) -> str:
    """The plan in one line: "3 beds · 259 plants · 11.45 m left in 2 pieces, each bed at its fullest"."""
    laid_out = lay_out_plan(plan)
    if not laid_out:
        return _("no bed yet")
    beds = ngettext("{count} bed", "{count} beds", len(laid_out)).format(count=len(laid_out))
    return " · ".join((beds, so_many_planted(laid_out), left_at_fullest(laid_out, plan.place.units)))


@frozen
class OrderRow:
    """One market day of an order: plants that must stand, plants planted for it, and whether that meets it."""

    order: str
    crop: str
    units: int
    day: str
    stand: int
    planted: int
    met: str
    market: int = 1


@lru_cache(maxsize=16)
def order_rows(plan: Plan) -> tuple[OrderRow, ...]:
    """A row for each market day of each order, in the plan's order."""
    laid_out = lay_out_plan(plan)
    planted, each, late = planted_for_orders(laid_out), spacings_for_orders(laid_out), _late(laid_out)
    clumps, rows = _clumps(laid_out), []
    for order in plan.orders:
        crop = crop_of(plan, order.crop)
        for market, day in enumerate(market_days(order), start=1):
            key = order.id, market
            stand, there = stand_for(order, crop, each.get(key)), planted.get(key, 0)
            met = _met(stand, there, late.get(key, ()), clumps.get(order.id, crop.stand))
            rows.append(OrderRow(order.id, crop.name, order.units, day_words(day), stand, there, met, market))
    return tuple(rows)


_Late = tuple[tuple[int, int], ...]
"""Plants that are ready too late for a market day, each lot with the days by which it is late."""


def _late(laid_out: tuple[LaidOut, ...]) -> dict[tuple[str, int], _Late]:
    late: dict[tuple[str, int], _Late] = {}
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            wanted, ready = wanted_ready(one.planting, one.order), one.dates.ready
            if one.order is not None and wanted is not None and ready is not None and ready > wanted:
                key = one.order.id, one.planting.market or 1
                late[key] = (*late.get(key, ()), (stood(one, layout), (ready - wanted).days))
    return late


def _clumps(laid_out: tuple[LaidOut, ...]) -> dict[str, int]:
    """How many plants are left in each place of what stands for an order, at most."""
    clumps: dict[str, int] = {}
    for one in (one for laid in laid_out for one in laid.grown):
        if one.order is not None:
            clumps[one.order.id] = max(clumps.get(one.order.id, 1), one.crop.stand)
    return clumps


def _met(stand: int, planted: int, late: _Late, clump: int) -> str:
    """Whether a market day is met by what is ready in time, else why not."""
    if planted - sum(plants for plants, _days in late) >= stand:
        return _("met")
    if not planted:
        return _("not planted")
    short, days = stand - planted, max((days for _plants, days in late), default=0)
    lacking = ngettext("short by {count} plant", "short by {count} plants", short)
    if clump > 1:
        lacking = ngettext("short by {count} clump", "short by {count} clumps", short)
    why = [
        lacking.format(count=grouped(short)) if short > 0 else "",
        ngettext("late by {count} day", "late by {count} days", days).format(count=days) if days else "",
    ]
    return ", ".join(words for words in why if words)
