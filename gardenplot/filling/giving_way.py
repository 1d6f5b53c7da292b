"""The ways in which one of the plantings that claim the same ground could give way, as plans not yet looked at.

Those that do not give way come first and whole; the one that does takes what they leave, or goes elsewhere.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from enum import StrEnum
from fractions import Fraction

from attrs import evolve, frozen

from gardenplot.filling.claims import (
    Overflow,
    arranged,
    further_bed,
    of_size,
    overflow,
    placed_in_part,
    placed_whole,
    whole_plants,
    with_planting,
)
from gardenplot.filling.longer import longer_block
from gardenplot.filling.suits import is_too_early
from gardenplot.filling.task import comes_back
from gardenplot.layout import Layout, ground_for, lay_out_bed, lay_out_plan, nearest_rows, planted_for_orders
from gardenplot.layout.across import closer_than_packet
from gardenplot.layout.bed import grown_of
from gardenplot.layout.candidate import Changes, Reason
from gardenplot.layout.proposals import proposals
from gardenplot.plan import Crop, Pattern, Plan, Planting, bed_of, crop_of, fresh_id, order_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.plan.parted_record import parted_records
from gardenplot.season import Dates, dates_of, market_days, stand_for
from gardenplot.units import INCH, MM, Length, Units, length_of

_CLOSEST = Fraction(2, 3)
"""Of the packet's spacing: what stands closer is no answer to a lack of ground. A choice of this program."""


class WayKind(StrEnum):
    """What is done about it, from the smallest change on."""

    LONGER = "longer block"
    DATE = "another date"
    BED = "another bed"
    SPLIT = "split"
    PATTERN = "another pattern"
    CLOSER = "closer"
    LESS = "less"


@frozen
class Offer:
    """A plan in which one planting gives way; by how much it is still too long; what else it brought.

    `more` is by how many nm its block is longer.
    """

    kind: WayKind
    planting: str
    plan: Plan
    over: Overflow | None = None
    new_bed: str | None = None
    rest: str | None = None
    more: int = 0


@frozen
class Asked:
    """A plan, the same with every place written down, and the plantings that claim the same ground, whole.

    The last of the claims is `home`, the one that lacks ground, in the bed that it should have.
    """

    before: Plan
    plan: Plan
    home: Planting
    claims: tuple[Planting, ...]

    def with_last(self, planting: str, kind: WayKind = WayKind.LESS, **changes: object) -> Iterator[Offer]:
        """The plan in which a planting comes last, with some fields changed."""
        last = evolve(self.claim(planting), **changes)  # type: ignore[arg-type]  # fields of a planting
        yield Offer(kind, planting, arranged(self.plan, (*self.others(planting), last)))

    def others(self, planting: str) -> tuple[Planting, ...]:
        """All that claim ground but one."""
        return tuple(one for one in self.claims if one.id != planting)

    def claim(self, planting: str) -> Planting:
        """The planting as it wants to be."""
        return next(one for one in self.claims if one.id == planting)

    def without(self, planting: str) -> Plan:
        """The plan with all others placed and this one, if it stands, where it was."""
        waiting = {one.id for one in self.others(planting)} | {planting}
        plan = self.plan
        for one in self.others(planting):
            waiting.remove(one.id)
            there = placed_whole(plan, one, waiting) or placed_in_part(plan, one, waiting)
            plan = plan if there is None else with_planting(plan, there)
        return plan


def offers(asked: Asked) -> Iterator[Offer]:
    """All ways for each planting that claims the ground; of one that is not short itself, those that help."""
    for claim in asked.claims:
        least = next(asked.with_last(claim.id))
        if claim.id != asked.home.id and not _is_whole(asked, least.plan):
            continue
        yield least
        yield from _longer(asked, claim)
        yield from _other_beds(asked, claim)
        yield from _split(asked, claim, least.plan)
        yield from _dates(asked, claim)
        yield from _other_layouts(asked, claim, _plants(least.plan, claim.id))


def _is_whole(asked: Asked, plan: Plan) -> bool:
    """Whether the planting that lacked ground has all of it."""
    return _plants(plan, asked.home.id) >= whole_plants(asked.plan, asked.home)


def _plants(plan: Plan, planting: str) -> int:
    return next((each.plants for laid in lay_out_plan(plan) for each in laid.layouts if each.planting == planting), 0)


def _longer(asked: Asked, claim: Planting) -> Iterator[Offer]:
    """Longer at its place, where it leaves places empty that are kept for what follows."""
    found = longer_block(asked.plan, claim)
    if found is not None:
        there, more = found
        yield Offer(WayKind.LONGER, claim.id, with_planting(asked.plan, there), more=more)


# another bed, or a part of it


def _other_beds(asked: Asked, claim: Planting) -> Iterator[Offer]:
    """Whole in each bed of the plan that has it free; in a further bed where none has."""
    plan = asked.without(claim.id)
    found = [*_in_beds(plan, claim, claim.bed)]
    yield from (Offer(WayKind.BED, claim.id, with_planting(plan, there)) for there in found)
    if not found:
        longer, there = further_bed(plan, claim, bed_of(plan, claim.bed))
        yield Offer(WayKind.BED, claim.id, with_planting(longer, there), new_bed=there.bed)


def _in_beds(plan: Plan, claim: Planting, left_out: str | None) -> Iterator[Planting]:
    """The planting whole in each bed that has it free, can be used by then and may have its family again."""
    crop, dates = crop_of(plan, claim.crop), grown_of(plan, claim).dates
    for bed in plan.beds:
        if (
            bed.id == left_out
            or is_too_early(bed, dates)
            or comes_back(plan.place, lay_out_bed(plan, bed), crop, claim.id, dates)
        ):
            continue
        there = placed_whole(plan, evolve(claim, bed=bed.id, start=None))
        if there is not None:
            yield there


def _split(asked: Asked, claim: Planting, least: Plan) -> Iterator[Offer]:
    """What the bed holds here, and the rest in another gap, in another bed or in a further one."""
    here = next((one for one in least.plantings if one.id == claim.id), None)
    plants = _plants(least, claim.id)
    lacks = whole_plants(asked.plan, claim) - plants
    if here is None or lacks <= 0 or claim.pattern is Pattern.BROADCAST:
        return
    bare = evolve(of_size(claim, lacks), id=fresh_id(claim.id, {one.id for one in least.plantings}), start=None)
    goes, stays = parted_records(claim, plants, lacks)
    least, bare = with_planting(least, evolve(here, **goes)), evolve(bare, series=None, **stays)
    found = [*_in_beds(least, bare, None)]
    for there in found:
        yield Offer(WayKind.SPLIT, claim.id, with_planting(least, there), rest=there.id)
    if not found:
        longer, there = further_bed(least, bare, bed_of(least, claim.bed))
        yield Offer(WayKind.SPLIT, claim.id, with_planting(longer, there), new_bed=there.bed, rest=there.id)


# another date


def _dates(asked: Asked, claim: Planting) -> Iterator[Offer]:
    """On other days: another market day of its order, earlier while it can wait to be cut, or once ground is free."""
    if claim.actual is not None or dates_of(asked.plan, claim).in_ground is None:
        return
    plan = asked.without(claim.id)
    for others in (_other_markets(plan, claim), _earlier(plan, claim), _later(plan, claim)):
        there = next((each for one in others if (each := placed_whole(plan, one)) is not None), None)
        if there is not None:
            yield Offer(WayKind.DATE, claim.id, with_planting(plan, there))


def _other_markets(plan: Plan, claim: Planting) -> Iterator[Planting]:
    """For other market days of its order that lack plants, the nearest first."""
    if claim.order is None:
        return
    order, now = order_of(plan, claim.order), claim.market or 1
    planted = planted_for_orders(lay_out_plan(plan))
    stand = stand_for(order, crop_as_planted(plan, claim))
    numbers = range(1, len(market_days(order)) + 1)
    for market in sorted(numbers, key=lambda number: (abs(number - now), number)):
        if market != now and planted.get((order.id, market), 0) < stand:
            yield evolve(claim, market=market, sow=None, in_ground=None, ready=None, out=None)


def _earlier(plan: Plan, claim: Planting) -> Iterator[Planting]:
    """On earlier days, as long as it can wait for its market to be cut."""
    wait, dates = crop_of(plan, claim.crop).harvest_days or 0, dates_of(plan, claim)
    if claim.order is None or dates.in_ground is None or dates.ready is None:
        return
    for days in range(1, wait + 1):
        one = _on(claim, dates, dates.in_ground - timedelta(days=days))
        last = dates_of(plan, one).last
        if last is not None and last >= dates.ready:
            yield one


def _later(plan: Plan, claim: Planting) -> Iterator[Planting]:
    """On the days on which ground comes free in its bed, the first first."""
    dates = dates_of(plan, claim)
    laid = lay_out_bed(plan, bed_of(plan, claim.bed))
    freed = {one.dates.out for one in laid.grown if one.planting.id != claim.id}
    for day in sorted(day for day in freed if day is not None):
        if dates.in_ground is not None and day > dates.in_ground:
            yield _on(claim, dates, day)


def _on(claim: Planting, dates: Dates, day: date) -> Planting:
    """A planting that goes in on another day; a day that was typed for when it is out moves along."""
    moved = claim.out + (day - dates.in_ground) if claim.out and dates.in_ground else None
    return evolve(claim, sow=None, in_ground=day, ready=None, out=moved)


# other rows


def _other_layouts(asked: Asked, claim: Planting, plants: int) -> Iterator[Offer]:
    """In other patterns and closer, where it then has more than so many plants; also whole where that is too long."""
    crop = crop_of(asked.plan, claim.crop)
    for changes in _changes(asked, claim, crop):
        (offer,) = asked.with_last(claim.id, WayKind.PATTERN, **dict(changes))
        if _plants(offer.plan, claim.id) <= plants:
            continue
        nearer = _nearer(offer.plan, claim.id)
        kind = WayKind.CLOSER if nearer is None or any(nearer[:3]) else WayKind.PATTERN
        if nearer is None or nearer[3] < _CLOSEST:
            continue
        yield evolve(offer, kind=kind)
        whole = evolve(claim, **dict(changes))
        plan = asked.without(claim.id)
        over = overflow(plan, whole)
        if over.short > 0:
            there = evolve(whole, start=length_of(over.begins, plan.place.units))
            yield Offer(kind, claim.id, with_planting(plan, there), over=over)


def _changes(asked: Asked, claim: Planting, crop: Crop) -> Iterator[Changes]:
    """The changes of the rows and patterns proposed for it, and the spacing in the row at which it would fit."""
    first = length_of(bed_of(asked.plan, claim.bed).zone[0], asked.plan.place.units)
    alone = with_planting(asked.plan, evolve(claim, start=first))
    for one in proposals(alone, claim.id):
        if one.reason in (Reason.PATTERN, Reason.MORE_ROWS):
            yield one.changes
    closer = _closer_in_row(asked, claim, crop)
    if closer is not None:
        yield (("in_row", closer),)


def _closer_in_row(asked: Asked, claim: Planting, crop: Crop) -> Length | None:
    """The widest spacing in the row, closer than now, with which as many ranks fit into the longest gap.

    None where units are cut from a length of row, which is no longer for that.
    """
    if claim.order is not None and order_of(asked.plan, claim.order).row_per_unit is not None:
        return None
    plan = asked.without(claim.id)
    layout = _alone(asked.plan, claim)
    gaps = ground_for(plan, claim, claim.bed).gaps()
    longest, now = max((end - start for start, end in gaps), default=0), (claim.in_row or crop.in_row).nm
    if not layout.grid.rows or layout.grid.cell or (claim.in_row is not None and claim.in_row.nm < crop.in_row.nm):
        return None
    ranks = -(-whole_plants(asked.plan, claim) // layout.grid.rows)
    most = longest // ranks if ranks else 0
    markable = asked.plan.place.markable_in_row
    if markable:
        return max((one for one in markable if one.nm <= min(most, now - 1)), key=lambda one: one.nm, default=None)
    finest = 5 * MM if asked.plan.place.units is Units.METRIC else INCH // 4
    spacing = most // finest * finest
    return length_of(spacing, asked.plan.place.units) if 0 < spacing < now else None


def _alone(plan: Plan, claim: Planting) -> Layout:
    first = length_of(bed_of(plan, claim.bed).zone[0], plan.place.units)
    there = with_planting(plan, evolve(claim, start=first))
    return lay_out_bed(there, bed_of(there, claim.bed)).layout_of(claim.id)


def _nearer(plan: Plan, planting: str) -> tuple[int, int, int, Fraction] | None:
    """How much closer than the packet it stands in the row, between rows and to the edge, in nm, and the least share
    of what is asked for; None where it does not stand."""
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if layout.planting == planting:
                grid, crop = layout.grid, one.crop
                in_row, rows = closer_than_packet(crop, layout)
                edge = max(0, grid.edge_least - grid.edge)
                shares = [
                    Fraction(grid.in_row, crop.in_row.nm) if in_row else Fraction(1),
                    Fraction(nearest_rows(grid), crop.row_spacing[0].nm) if rows else Fraction(1),
                    Fraction(grid.edge, grid.edge_least) if edge else Fraction(1),
                ]
                return in_row, rows, edge, min(shares)
    return None
