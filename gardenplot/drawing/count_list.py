"""What is to be counted at the beds: bed by bed in walking order, a box for each row or each few rows."""

from itertools import groupby
from operator import itemgetter

from attrs import frozen

from gardenplot.drawing.actual_words import planted_words
from gardenplot.drawing.days import days_between, short_day
from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.needed_words import needed_for_orders
from gardenplot.drawing.sayings import between, counted
from gardenplot.drawing.turns import turns
from gardenplot.layout import (
    Grown,
    LaidOut,
    Layout,
    lay_out_plan,
)
from gardenplot.layout.staked import staked
from gardenplot.plan import Establish, Pattern, Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import tape
from gardenplot.words import _

MOST_BOXES = 12
"""More rows than this are counted several at once."""
_SEVERAL = (2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000, 10_000)
BLANK = "□"
"""Stands in a sentence for a place that is left to write in."""


@frozen(cache_hash=True)
class CountBox:
    """What is counted at once: which rows, where the last of them lies if they run across, plants planted there."""

    rows: str
    at: str
    plants: int


@frozen(cache_hash=True)
class CountBlock:
    """A planting to count: its letter and name, where and when it stands, what was planted, and its boxes.

    `needs` is what the order needs; `rows` says whether the boxes are for rows or rings; `sample` is a sentence with
    blanks for counting only a part.
    """

    planting: str
    letter: str
    name: str
    readings: str
    planted: str
    days: str
    needs: str
    rows: str
    sample: str
    boxes: tuple[CountBox, ...]
    plants: int


@frozen(cache_hash=True)
class CountTurn:
    """The plantings that stand in a bed at one turn and in none before it, from the head on."""

    bed: str
    name: str
    blocks: tuple[CountBlock, ...]

    @property
    def plants(self) -> int:
        """The plants planted."""
        return sum(block.plants for block in self.blocks)


def count_turns(plan: Plan, beds: frozenset[str] = frozenset()) -> tuple[CountTurn, ...]:
    """What is counted in some beds, all where none is named; each planting once, trays that harden off left out."""
    look = looks(plan)
    return tuple(
        turn
        for laid in lay_out_plan(plan)
        if not beds or laid.bed.id in beds
        for turn in _turns(plan, laid.without_trays, look)
    )


def _turns(plan: Plan, laid: LaidOut, look: dict[str, Look]) -> list[CountTurn]:
    grown, seen, found = {one.planting.id: one for one in laid.grown}, set[str](), []
    every = turns(laid)
    for number, turn in enumerate(every, 1):
        new = [layout for layout in turn if layout.planting not in seen]
        seen.update(layout.planting for layout in new)
        name = laid.bed.name
        if len(every) > 1:
            name = _("{bed}, turn {number} of {count} on this ground").format(
                bed=name, number=number, count=len(every)
            )
        if new:
            blocks = tuple(_block(plan, grown[layout.planting], layout, look) for layout in new)
            found.append(CountTurn(laid.bed.id, name, blocks))
    return found


def _block(plan: Plan, one: Grown, layout: Layout, look: dict[str, Look]) -> CountBlock:
    units = plan.place.units
    standing, count = planted_words(one, layout), counted(layout, clump=one.crop.stand)
    return CountBlock(
        planting=layout.planting,
        letter=look[layout.planting].letter,
        name=one.crop.name,
        readings=between(*staked(bed_of(plan, layout.bed), layout), units),
        planted=f"{count}; {standing}" if standing else count,
        days=_days(one),
        needs=_needs(plan, one),
        rows=_("ring") if layout.rings else _("row"),
        sample=_sample(one, layout, units),
        boxes=count_boxes(layout, units),
        plants=layout.plants,
    )


def _days(one: Grown) -> str:
    """When it stands there."""
    first, out = one.dates.in_ground, one.dates.out
    if first is None:
        return ""
    return (
        days_between(first, out)
        if out is not None and first < out
        else _("from {day}").format(day=f"{short_day(first)} {first:%Y}")
    )


def _needs(plan: Plan, one: Grown) -> str:
    """What is ordered for the market day that it makes, and whether so much stands as that takes."""
    return needed_for_orders(plan)[one.planting.id].in_full if one.order is not None else ""


def _sample(one: Grown, layout: Layout, units: Units) -> str:
    """Room for a count of a part, where so many stand that nobody counts all: what is sown in its bed."""
    unit = "m" if units is Units.METRIC else _("ft")
    if layout.grid.pattern is Pattern.BROADCAST:
        return _("counted in {blank} {unit} of the block, all across: {blank} plants").format(blank=BLANK, unit=unit)
    if one.crop.establish is Establish.DIRECT:
        return _("or in {blank} {unit} of row: {blank} plants").format(blank=BLANK, unit=unit)
    return ""


def count_boxes(layout: Layout, units: Units) -> tuple[CountBox, ...]:
    """A box for each row that has plants, or for each few rows where there are many; none for a sown band.

    Rows are numbered from the base line, those across the bed from the head, rings from the outside in; of cells the
    rows of cells.
    """
    rows = [(number, count) for number, count in enumerate(_plants_by_row(layout), 1) if count]
    each = 1 if len(rows) <= MOST_BOXES else next(
        size for size in (*_SEVERAL, len(rows)) if -(-rows[-1][0] // size) <= MOST_BOXES or size == len(rows)
    )  # fmt: skip
    found = []
    for _place, several in groupby(rows, key=lambda row: (row[0] - 1) // each):
        together = list(several)
        first, last = together[0][0], together[-1][0]
        found.append(
            CountBox(
                str(first) if first == last else f"{first}–{last}",
                _at(layout, last, units, is_one=first == last),
                sum(map(itemgetter(1), together)),
            )
        )
    return tuple(found)


def _plants_by_row(layout: Layout) -> list[int]:
    """Plants in each row; of cells in each row of cells, which holds several rows of plants."""
    rows, lines = layout.per_row, len(layout.grid.offsets)
    each = len(rows) // lines if layout.grid.pattern is Pattern.CELLS and lines and len(rows) % lines == 0 else 1
    return [sum(rows[start : start + each]) for start in range(0, len(rows), max(1, each))]


def _at(layout: Layout, row: int, units: Units, *, is_one: bool) -> str:
    """Where a row across the bed lies, or up to where several do."""
    if not layout.grid.runs_across or layout.grid.turn is not None:
        return ""
    reading = tape(layout.rows[row - 1].offset, units).number
    return _("at {reading}").format(reading=reading) if is_one else _("to {reading}").format(reading=reading)
