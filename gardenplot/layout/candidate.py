"""One way to lay out a planting: what of it is changed, and what comes of that once it is really laid out."""

from datetime import date
from enum import StrEnum
from fractions import Fraction
from typing import Any

from attrs import field, frozen

from gardenplot.errors import PlanError
from gardenplot.layout.across import closer_than_packet
from gardenplot.layout.bed import Grown, LaidOut, compete, followers_of, lay_out_bed, planted_for_orders
from gardenplot.layout.block import has_room
from gardenplot.layout.leftover import free_on, fullest_day
from gardenplot.layout.markable import nearest_markable
from gardenplot.layout.positions import positions
from gardenplot.layout.reserved import in_the_way
from gardenplot.layout.value import Layout
from gardenplot.plan import Crop, Pattern, Place, Plan, Reserved, bed_of, planting_of
from gardenplot.plan.edits import suppose_planting
from gardenplot.plan.find import only
from gardenplot.season import grown_on, stand_for
from gardenplot.units import MM, Length

Changes = tuple[tuple[str, Any], ...]
"""Fields of a planting with the values that they are changed to."""
_TRIES = 12
"""How often a block is lengthened to make up for plants that places kept in it cost."""


class Reason(StrEnum):
    """Why a candidate is there to be looked at."""

    AS_IT_IS = "as it is"
    ANSWER = "another answer to the places kept"
    AVOIDS = "rows beside the places kept"
    PATTERN = "another pattern"
    MORE_ROWS = "more rows"
    FEWER_ROWS = "fewer rows"
    PACKET = "row spacing of the packet"
    MARKABLE = "spacing that can be marked"
    EDGE = "half a row spacing at the edge"
    ACROSS = "rows the other way"
    PHASE = "rows shifted to hold the most"
    TYPED = "typed"


class Reading(StrEnum):
    """What stays while a block is laid out in another way."""

    LENGTH = "the same length of bed"
    PLANTS = "the same plants or order"


@frozen
class Unmarkable:
    """A spacing in nm that no tool of the place marks, and the nearest that one does."""

    spacing: int
    nearest: int


@frozen
class Marking:
    """What of a layout cannot be marked; None where it can, or where the place names no tools for it.

    `pair` is of the rows of a pair; its `nearest` is 0 where nothing that can be marked is closer than the pairs.
    """

    in_row: Unmarkable | None
    rows: Unmarkable | None
    pair: Unmarkable | None = None


@frozen
class Candidate:
    """A planting laid out in one way, in the plan that it would make.

    `reading` is what stayed as it was; `other` is the block read the other way, None where it cannot be. `over` is
    how many plants stand beyond what the order or the plan asks for, less than nothing where they are short, None
    where nothing is asked for. `piece` and `left` are the longest piece and all of what the bed has left over on the
    day it is fullest, in nm; `in_the_way` the plants on reserved places; `closer_in_row` and `closer_rows` how much
    closer than the packet plants stand, and `near_edge` how much nearer to the edge than is asked for now, in nm;
    `fits` whether the block has its rows, and it and the blocks beside it keep to their ground.
    """

    changes: Changes
    reason: Reason
    plan: Plan
    laid: LaidOut = field(repr=False)
    layout: Layout
    reading: Reading
    other: Layout | None
    over: int | None
    piece: int
    left: int
    in_the_way: int
    closer_in_row: int
    closer_rows: int
    near_edge: int
    marking: Marking
    fits: bool

    @property
    def per_metre(self) -> Fraction | None:
        """Plants to a metre of bed; None where the block has no length."""
        return Fraction(self.layout.plants * 1000 * MM, self.layout.length) if self.layout.length else None

    @property
    def keeps_all(self) -> bool:
        """Whether it fits, meets what is asked for, can be marked, and keeps every distance."""
        nearer = (self.in_the_way, self.closer_in_row, self.closer_rows, self.near_edge)
        can_be_marked = self.marking.in_row is None and self.marking.rows is None
        return self.fits and (self.over or 0) >= 0 and can_be_marked and not any(nearer)

    @property
    def places(self) -> tuple[object, ...]:
        """What tells it from others: where its plants stand or, of a band, what ground it has."""
        if self.layout.grid.pattern is Pattern.BROADCAST:
            return (Pattern.BROADCAST, self.layout.start, self.layout.end, self.layout.plants)
        places = positions(self.layout)
        return (places[places[:, 1].argsort(kind="stable")].tobytes(),)


@frozen
class Comparison:
    """A planting that is laid out in several ways: its plan, and what stays the same for all of them.

    `planted` are the plants that stand for its order in other beds; `day` is the day for which leftover is told.
    `alone` is the plan as far as the layout of its bed depends on it.
    """

    plan: Plan
    alone: Plan
    planting: str
    now: Layout
    reading: Reading
    planted: int
    day: date | None

    def candidate(self, changes: Changes, reason: Reason) -> Candidate:
        """The planting with some fields changed; raises PlanError where that makes no valid plan."""
        plan = suppose_planting(self.plan, self.planting, **dict(changes))
        laid = _laid(plan, self.planting)
        layout = laid.layout_of(self.planting)
        one = next(each for each in laid.grown if each.planting.id == self.planting)
        free = free_on(laid, self.day)
        closer_in_row, closer_rows = closer_than_packet(one.crop, layout)
        return Candidate(
            changes=changes, reason=reason, plan=plan, laid=laid, layout=layout, reading=self.reading,
            other=self._other(dict(changes)),
            over=self._over(one, laid, layout),
            piece=max((stretch.length for stretch in free.leftover), default=0),
            left=free.total,
            in_the_way=in_the_way(layout, followers_of(laid, self.planting)),
            closer_in_row=closer_in_row,
            closer_rows=closer_rows,
            near_edge=self._near_edge(layout),
            marking=marking(plan.place, layout, one.crop),
            fits=fits_its_ground(laid, one, layout),
        )  # fmt: skip

    def _other(self, changes: dict[str, Any]) -> Layout | None:
        """The block read the other way."""
        if self.reading is Reading.PLANTS:
            return in_length_of(self.alone, self.now, changes) if self.now.length else None
        return for_plants_of(self.alone, self.now, changes)

    def _near_edge(self, layout: Layout) -> int:
        """How much nearer to the edge than is asked for now rows stand, in nm; half a row spacing goes with them."""
        follows = self.now.grid.edge_rule.is_usual
        return max(0, (layout.grid if follows else self.now.grid).edge_least - layout.grid.edge)

    def _over(self, one: Grown, laid: LaidOut, layout: Layout) -> int | None:
        if one.order is not None:
            here = planted_for_orders((laid,)).get(_wanted(one), 0)
            return self.planted + here - stand_for(one.order, one.crop, layout.grid.in_row)
        return layout.plants - one.planting.plants if one.planting.plants is not None else None


def comparison(plan: Plan, planting_id: str) -> Comparison:
    """What stays the same while a planting is laid out in other ways."""
    laid = _laid(plan, planting_id)
    one = next(each for each in laid.grown if each.planting.id == planting_id)
    now, planted = laid.layout_of(planting_id), 0
    if one.order is not None:
        others = tuple(lay_out_bed(plan, bed) for bed in plan.beds if bed.id != now.bed)
        planted = planted_for_orders(others).get(_wanted(one), 0)
    by_length = one.planting.length is not None or now.wanted is None
    reading = Reading.LENGTH if by_length else Reading.PLANTS
    holds_trays = any(each.planting.hardens is not None for each in laid.grown)
    alone = plan if holds_trays else only(plan, now.bed)  # without what is raised elsewhere there would be no trays
    return Comparison(plan, alone, planting_id, now, reading, planted, _fullest_of(laid, one))


def _wanted(one: Grown) -> tuple[str, int]:
    """The market day that a planting is for, as plants for orders are counted."""
    return one.order.id if one.order else "", one.planting.market or 1


def in_length_of(plan: Plan, now: Layout, changes: dict[str, Any]) -> Layout | None:
    """A planting with some fields changed in the very block that it has; None where that makes no valid plan."""
    block = Length(max(now.length, MM), "")
    return _changed(plan, now, changes | {"start": Length(max(now.start, 0), ""), "length": block, "plants": None})


def for_plants_of(plan: Plan, now: Layout, changes: dict[str, Any]) -> Layout | None:
    """A planting with some fields changed in a block just long enough for the plants that stand there now.

    None where there are none, where no row fits, and where the answer to places kept leaves too few in the bed.
    """
    laid, wanted = _laid(plan, now.planting), now.plants
    answer = changes.get("reserved", planting_of(plan, now.planting).reserved)
    gives_up = answer is not Reserved.CUT_FIRST and bool(followers_of(laid, now.planting))
    for _try in range(_TRIES):
        layout = long_enough_for(plan, now, wanted, changes)
        if layout is None or layout.plants >= now.plants:
            return layout
        if layout.end > laid.bed.zone[1]:
            return None if gives_up else layout
        wanted += now.plants - layout.plants
    return None


def long_enough_for(plan: Plan, now: Layout, plants: int, changes: dict[str, Any]) -> Layout | None:
    """A planting with some fields changed that is sized by plants; None where there are none, or no row fits."""
    if not plants:
        return None
    start = Length(max(now.start, 0), "")
    sized = {"start": start, "plants": plants, "length": None, "slack": None, "round_up_to": None}
    layout = _changed(plan, now, changes | sized)
    return layout if layout is not None and layout.length else None


def _changed(plan: Plan, now: Layout, changes: dict[str, Any]) -> Layout | None:
    try:
        return _laid(suppose_planting(plan, now.planting, **changes), now.planting).layout_of(now.planting)
    except PlanError:
        return None


def _laid(plan: Plan, planting_id: str) -> LaidOut:
    """The bed of a planting."""
    return lay_out_bed(plan, bed_of(plan, planting_of(plan, planting_id).bed))


def _fullest_of(laid: LaidOut, one: Grown) -> date | None:
    """The first of a planting's days on which least of its bed is left; None where nothing has a date."""
    if one.dates.in_ground is None:
        return fullest_day(laid)
    begins = (each.dates.in_ground for each in laid.grown)
    days = {one.dates.in_ground, *(day for day in begins if day is not None and grown_on(one.dates, day))}
    return min(sorted(days), key=lambda day: free_on(laid, day).total)


def marking(place: Place, layout: Layout, crop: Crop) -> Marking:
    """What of a layout no tool of the place marks; a seeder that drops seed by the row needs no marks in it."""
    grid = layout.grid
    if grid.pattern in (Pattern.BROADCAST, Pattern.CELLS) or not grid.rows:
        return Marking(None, None)
    rows = _unmarkable(grid.between, place.markable_rows) if has_even_rows(layout) else None
    in_row = None if crop.is_drilled else _unmarkable(grid.in_row, place.markable_in_row)
    return Marking(in_row, rows, _unmarkable_pair(place, layout))


def _unmarkable_pair(place: Place, layout: Layout) -> Unmarkable | None:
    """What no tool marks of the rows of a pair, which is marked as other rows are."""
    grid = layout.grid
    if grid.pattern is not Pattern.TWIN or grid.rows < 2 or not place.markable_rows:
        return None
    if any(one.nm == grid.twin for one in place.markable_rows):
        return None
    narrower = tuple(one for one in place.markable_rows if one.nm < grid.between_least)
    return _unmarkable(grid.twin, narrower) or Unmarkable(grid.twin, 0)


def has_even_rows(layout: Layout) -> bool:
    """Whether a row marker of one spacing draws the rows of a layout; of twin rows the pairs, if there are some."""
    if layout.grid.pattern is Pattern.TWIN:
        return layout.grid.rows > 2
    return layout.grid.rows > 1 and layout.grid.pattern not in (
        Pattern.BROADCAST, Pattern.CELLS, Pattern.OFFSETS, Pattern.RINGS,
    )  # fmt: skip


def _unmarkable(spacing: int, markable: tuple[Length, ...]) -> Unmarkable | None:
    nearest = nearest_markable(spacing, markable)
    return Unmarkable(spacing, nearest.nm) if nearest is not None else None


def fits_its_ground(laid: LaidOut, one: Grown, layout: Layout) -> bool:
    """Whether a block has its rows, and it and the blocks beside it neither leave the bed nor overlap."""
    grid, (first, last) = layout.grid, laid.bed.zone
    as_asked = grid.rows_asked is None or grid.pattern is Pattern.BROADCAST or grid.rows_asked <= grid.rows
    beside = [each for other, each in zip(laid.grown, laid.layouts, strict=True) if _is_beside(one, other)]
    inside = all(first <= each.start and each.end <= last for each in (layout, *beside))
    alone = all(each.end <= layout.start or layout.end <= each.start for each in beside)
    return has_room(grid) and as_asked and inside and alone


def _is_beside(one: Grown, other: Grown) -> bool:
    return other is not one and compete(one, other)
