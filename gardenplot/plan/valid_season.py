"""What the days of a plan must hold: in order where they were typed, and no further off than anybody plans."""

from datetime import date
from itertools import pairwise

from gardenplot.plan.checks import Says, above_nothing, whole
from gardenplot.plan.value import CAME, Actual, Crop, Order, Past, Plan, Planting, Wish
from gardenplot.words import _

MOST_DAYS = 1500
MOST_TOGETHER = 100
"""Seeds in a cell, or plants in a place."""
MOST_MARKETS = 1000


_CROP_DAYS = (
    "field_days", "raising_days", "hardening_days", "cool_days", "harvest_days", "pot_up_days", "oldest_days",
)  # fmt: skip


def crop_days(crop: Crop) -> Says:
    """What stands against the days of a crop."""
    for name in _CROP_DAYS:
        yield from whole(name, getattr(crop, name), 0, MOST_DAYS)


def planting_days(planting: Planting) -> Says:
    """What stands against the days that were typed for a planting, and those that came about."""
    typed = {name: getattr(planting, name) for name in ("sow", "in_ground", "ready", "out")}
    yield from _in_order({name: day for name, day in typed.items() if day is not None})
    yield from whole("cool_days", planting.cool_days, 0, MOST_DAYS)
    yield from whole("market", planting.market, 1, MOST_MARKETS)
    yield from whole("sow_cells", planting.sow_cells, 1, 10_000_000)
    yield from whole("clump", planting.clump, 1, MOST_TOGETHER)
    yield from whole("seeds_per_cell", planting.seeds_per_cell, 1, MOST_TOGETHER)
    if planting.actual is not None:
        yield from ((f"actual.{name}", says) for name, says in _actual(planting.actual))


def _actual(actual: Actual) -> Says:
    came = {name: getattr(actual, name) for name in CAME}
    days = {name: day for name, day in came.items() if day is not None}
    if actual.sown is None or actual.sown == actual.set_out:
        # Sown in its bed, it emerges there; nothing says which of the two was first.
        days.pop("emerged", None)
    yield from _in_order(days, may_be_one=True)
    yield from whole("stand", actual.stand, 0, 10_000_000)
    for name in ("planted", "standing", "cells", "bought"):
        yield from whole(name, getattr(actual, name), 0, 10_000_000)
    yield from above_nothing("stand_row", actual.stand_row)
    if any(row < 1 for row in actual.failed_rows):
        yield "failed_rows", _("rows are counted from 1")
    if actual.counted is not None and actual.set_out is not None and actual.counted < actual.set_out:
        yield "counted", _("{day} is not after {first}").format(day=actual.counted, first=actual.set_out)


def _in_order(days: dict[str, date], *, may_be_one: bool = False) -> Says:
    """Days that follow one another, given in their order; a crop that is ready when it goes in is no crop."""
    for (before, first), (name, day) in pairwise(days.items()):
        late = day < first if may_be_one or before == "sow" else day <= first
        if late:
            yield name, _("{day} is not after {first}").format(day=day, first=first)


def times_say(wish: Wish) -> Says:
    """What stands against a wish for several times."""
    yield from whole("times", wish.times, 1, MOST_MARKETS)
    yield from whole("every_days", wish.every_days, 1, MOST_DAYS)
    if wish.times > 1 and wish.earliest is None:
        yield "times", _("a wish for several times needs the first day of the first")


def series_of_markets(order: Order) -> Says:
    """What stands against an order's days, and against more than one way of saying what a unit is."""
    yield from whole("lead_days", order.lead_days, 0, MOST_DAYS)
    yield from whole("times", order.times, 1, MOST_MARKETS)
    yield from whole("every_days", order.every_days, 1, MOST_DAYS)
    yield from whole("units_per_plant", order.units_per_plant, 1, 10_000)
    said = [
        name
        for name, is_said in (
            ("plants_per_unit", order.plants_per_unit > 1),
            ("units_per_plant", order.units_per_plant is not None),
            ("row_per_unit", order.row_per_unit is not None),
        )
        if is_said
    ]
    for other in said[1:]:
        yield (
            other,
            _("a unit is measured in one way: {first} or {other}, not both").format(first=said[0], other=other),
        )


def past_says(past: Past) -> Says:
    """What stands against a season that is over."""
    yield from whole("season", past.season, 1, 9999)
    if not past.family.strip():
        yield "family", _("a family is needed, for example Brassicaceae")


def raised_in(plan: Plan) -> dict[str, str]:
    """The crops of the plantings that trays can belong to, by the id of the planting."""
    return {one.id: one.crop for one in plan.plantings if one.hardens is None}


def trays_say(planting: Planting, hardens: str, raised: dict[str, str]) -> Says:
    """What stands against a block of trays: whose they are, and days of their own."""
    if hardens not in raised:
        yield "hardens", _("there is no planting “{id}” whose trays these could be").format(id=hardens)
    elif raised[hardens] != planting.crop:
        yield "hardens", _("trays are of the crop that they are raised for: {crop}").format(crop=raised[hardens])
    for name in ("order", "sow", "in_ground", "ready", "out", "actual", "series"):
        if getattr(planting, name) is not None:
            yield name, _("follows from the planting that the trays are for: leave it out")


def homes_in(plan: Plan) -> dict[str, tuple[str, str | None]]:
    """The bed of each planting, and whose gaps it stands in, by its id."""
    return {one.id: (one.bed, one.gaps_of) for one in plan.plantings}


def gaps_say(planting: Planting, gaps_of: str, homes: dict[str, tuple[str, str | None]]) -> Says:
    """What stands against a planting in the gaps of another one: they share a bed, and each place is said."""
    bed, whose = homes.get(gaps_of, (None, None))
    if bed is None:
        yield "gaps_of", _("there is no planting “{id}” whose gaps these could be").format(id=gaps_of)
    elif bed != planting.bed or whose is not None or gaps_of == planting.id:
        yield "gaps_of", _("“{id}” has no gaps in this bed").format(id=gaps_of)
    if planting.start is None or planting.hardens is not None:
        yield "gaps_of", _("what stands in gaps is planted, and begins at a tape reading of its own")
