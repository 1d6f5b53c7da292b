"""What could stand in one bed on one day, in which sizes and on which days; and why the rest cannot."""

from collections.abc import Iterable, Iterator
from datetime import date
from enum import Enum
from fractions import Fraction
from functools import lru_cache
from math import lcm
from typing import Any, NamedTuple

from attrs import evolve, frozen

from gardenplot.filling.sizes import Sizes
from gardenplot.filling.suits import is_too_early, stretches_for, under_cover
from gardenplot.filling.task import comes_back
from gardenplot.filling.wanted import Wanted, Weights, wanted_on
from gardenplot.layout import Ground, LaidOut, has_room, lay_out_bed
from gardenplot.layout.block import sized
from gardenplot.layout.cold_edge import Stretch, both
from gardenplot.layout.sizes import block_sizes
from gardenplot.plan import Bed, Crop, Pattern, Plan, Wish, bed_of
from gardenplot.season import Dates, grown_on, share_days

_MOST_IN_ALL = 2**44
"""What all worths may come to together, so that they can be added up exactly with the ground used."""


class WhyNot(Enum):
    """Why something that is wanted does not stand in a gap."""

    DAY = "not on this day"
    BED = "not in this bed"
    FAMILY = "its family would be back too soon"
    FROST = "frost would find it in the open"
    COLD_EDGE = "the gap is in the cold edge"
    ROWS = "its rows do not fit across"
    LONG = "the least of it is longer than the gap"
    LATER = "something later takes the ground"
    OTHERS = "others are worth more"
    SERIES = "not all of its days find ground"
    WHOLE = "not all of it finds ground"
    EARLY = "the bed cannot be used yet"


Found = tuple[Dates, Stretch]
"""Days, and a stretch that is free on all of them."""

Where = tuple[tuple[Stretch, ...], ...]
"""For each of some days the stretches of a bed that suit something then."""


class Longest(NamedTuple):
    """The longest stretch that something could stand in, the days on which it has that, and the length of the longest
    that does not lie in it."""

    dates: Dates
    room: Stretch
    beyond: int


@frozen
class Offer:
    """Something wanted with the sizes that it could have, each with its plants, and the days that it could stand.

    `where` has for each of its days the stretches of the bed that suit it then. `is_sure` where no place can do with
    less than its lengths. Lengths have the bed's gap in them, at the foot.
    """

    one: Wanted
    days: tuple[Dates, ...]
    where: Where
    sizes: Sizes
    plants: tuple[int, ...]
    is_sure: bool


@frozen
class Offers:
    """All offers for a bed on a day; what cannot be among them, and why; and what a worth of one is in whole numbers.

    `is_exact` where no worth had to be rounded for that.
    """

    laid: LaidOut
    some: tuple[Offer, ...]
    none: tuple[tuple[Wanted, WhyNot], ...]
    scale: Fraction
    is_exact: bool

    @property
    def kept(self) -> int:
        """The gap in nm that the bed keeps between blocks."""
        return self.laid.bed.gap.nm if self.laid.bed.gap else 0

    def rooms(self, offer: Offer, within: Stretch, placed: tuple[Stretch, ...]) -> tuple[Found, ...]:
        """The stretches of a gap that suit an offer and are free on all of its days, beside blocks placed already."""
        return _on_days(self.laid, offer.days, offer.where, within, placed)

    def longest(self, offer: Offer, within: Stretch, placed: tuple[Stretch, ...]) -> Longest | None:
        """The longest of these."""
        return _longest(self.laid, offer.days, offer.where, within, placed)


@lru_cache(maxsize=1024)
def _longest(
    laid: LaidOut, days: tuple[Dates, ...], where: Where, within: Stretch, placed: tuple[Stretch, ...]
) -> Longest | None:
    """Most of what is wanted has its days in common with others, and so its rooms."""
    rooms = _on_days(laid, days, where, within, placed)
    if not rooms:
        return None
    dates, (begin, end) = max(rooms, key=lambda one: one[1][1] - one[1][0])
    beyond = max((high - low for _dates, (low, high) in rooms if low < begin or high > end), default=-1)
    return Longest(dates, (begin, end), beyond)


@lru_cache(maxsize=1024)
def _on_days(
    laid: LaidOut, days: tuple[Dates, ...], where: Where, within: Stretch, placed: tuple[Stretch, ...]
) -> tuple[Found, ...]:
    return tuple(
        (dates, room)
        for dates, suiting in zip(days, where, strict=True)
        for room in _rooms(laid, dates, within, suiting, placed)
    )


@lru_cache(maxsize=1024)
def _rooms(
    laid: LaidOut, dates: Dates, within: Stretch, where: tuple[Stretch, ...], placed: tuple[Stretch, ...]
) -> tuple[Stretch, ...]:
    """Reserved places are no free ground here: nothing comes to stand in their way."""
    taken = (
        (layout.start, layout.end)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.end > layout.start and share_days(one.dates, dates)
    )
    bed = laid.bed
    free = Ground(bed.zone, tuple(sorted((*taken, *placed))), bed.gap.nm if bed.gap else 0).gaps()
    return tuple(both(both([*free], [within]), [*where]))


def gaps_on(plan: Plan, bed_id: str, day: date | None) -> tuple[Stretch, ...]:
    """The gaps of a bed on a day, from the head on; without a day what nothing ever takes."""
    laid = lay_out_bed(plan, bed_of(plan, bed_id))
    blocks = (
        (layout.start, layout.end)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.end > layout.start and grown_on(one.dates, day)
    )
    return Ground(laid.bed.zone, tuple(sorted(blocks)), laid.bed.gap.nm if laid.bed.gap else 0).gaps()


@lru_cache(maxsize=64)
def offers_for(plan: Plan, bed_id: str, day: date | None, crop: str | None) -> Offers:
    """What could stand in a bed of a plan on a day: its wishes and what its orders lack, or one crop alone.

    A crop without a wish of its own is wished for as often as it fits.
    """
    laid, wanted = lay_out_bed(plan, bed_of(plan, bed_id)), _wanted(plan, day, crop)
    scale, is_exact = _scale(wanted, laid.bed)
    found = [(one, _offer(plan, laid, one, day, scale)) for one in wanted]
    some = tuple(_alike(offer for _one, offer in found if isinstance(offer, Offer)))
    none = tuple((one, why) for one, why in found if isinstance(why, WhyNot))
    return Offers(laid, some, none, scale, is_exact)


def _alike(offers: Iterable[Offer]) -> Iterator[Offer]:
    """Offers with the very same days, stretches and sizes where these are equal, so that they are found sooner."""
    days, where, sizes = dict[Any, Any](), dict[Any, Any](), dict[Any, Any]()
    for one in offers:
        yield evolve(
            one,
            days=days.setdefault(one.days, one.days),
            where=where.setdefault(one.where, one.where),
            sizes=sizes.setdefault(one.sizes, one.sizes),
        )


@lru_cache(maxsize=16)
def _wanted(plan: Plan, day: date | None, crop: str | None) -> tuple[Wanted, ...]:
    if crop is None:
        return wanted_on(plan, day, Weights())
    own = tuple(wish for wish in plan.wishes if wish.crop == crop)
    asked = evolve(plan, wishes=own or (Wish(crop, crop),))
    # Orders stay in the plan, where plantings stand for them.
    wanted = tuple(one for one in wanted_on(asked, day, Weights()) if one.trial.order is None)
    return wanted if own else tuple(evolve(one, trial=evolve(one.trial, wish=None)) for one in wanted)


def _scale(wanted: tuple[Wanted, ...], bed: Bed) -> tuple[Fraction, bool]:
    """What a worth of one is in whole numbers: exact, unless the sums would leave what a machine can add up."""
    exact = lcm(*(part.denominator for one in wanted for part in (one.worth, one.whole)))
    area = bed.length.nm * bed.width.nm
    most = sum(
        (one.worth * (one.most or 1 + area // (one.crop.in_row.nm * one.crop.row_spacing[0].nm)) + one.whole)
        for one in wanted
    )
    if not most or exact * most <= _MOST_IN_ALL:
        return Fraction(exact), True
    return Fraction(_MOST_IN_ALL) / most, False


def _offer(plan: Plan, laid: LaidOut, one: Wanted, day: date | None, scale: Fraction) -> Offer | WhyNot:
    bed = laid.bed
    if one.beds and bed.id not in one.beds:
        return WhyNot.BED
    days = tuple(dates for dates in one.days if grown_on(dates, day) and _in_order(dates))
    if not days:
        return WhyNot.DAY
    days = tuple(dates for dates in days if not comes_back(plan.place, laid, one.crop, one.trial.id, dates))
    if not days:
        return WhyNot.FAMILY
    suiting = {dates: where for dates in days if (where := stretches_for(plan, bed, one.crop, dates))}
    if not suiting:
        return unsuited(plan, bed, one.crop, days, bed.zone)
    grid = sized(bed, one.crop, one.trial, None).grid
    is_band = grid.pattern is Pattern.BROADCAST
    if not has_room(grid) or (not is_band and (grid.rows_asked or 0) > grid.rows):
        return WhyNot.ROWS
    sizes = block_sizes(bed, one.crop, one.trial, one.least, one.most)
    if not sizes.plants:
        return WhyNot.LONG
    gap = bed.gap.nm if bed.gap else 0
    worths = worths_of(one, sizes.plants, scale)
    lengths = tuple(length + gap for length in sizes.lengths)
    return Offer(
        one, tuple(suiting), tuple(suiting.values()), Sizes(lengths, worths), sizes.plants,
        sizes.lengths == sizes.shortest,
    )  # fmt: skip


def unsuited(plan: Plan, bed: Bed, crop: Crop, days: tuple[Dates, ...], within: Stretch) -> WhyNot:
    """Why no stretch of a bed within two tape readings suits a crop on any of some days."""
    in_time = [dates for dates in days if not is_too_early(bed, dates)]
    if not in_time:
        return WhyNot.EARLY
    is_bare = not any(both([*under_cover(plan, bed, crop, dates)], [within]) for dates in in_time)
    return WhyNot.FROST if is_bare else WhyNot.COLD_EDGE


def _in_order(dates: Dates) -> bool:
    return dates.in_ground is None or dates.out is None or dates.in_ground < dates.out


def worths_of(one: Wanted, plants: Iterable[int], scale: Fraction) -> tuple[int, ...]:
    """What numbers of plants of it are worth; more than are wanted are worth no more."""
    most, (each, whole, parts) = one.most, _counted(one.worth, one.whole, scale)
    if most is None:
        return tuple(count * each // parts for count in plants)
    return tuple((min(count, most) * each + (whole if count >= most else 0)) // parts for count in plants)


@lru_cache(maxsize=1024)
def _counted(worth: Fraction, whole: Fraction, scale: Fraction) -> tuple[int, int, int]:
    """What one plant of it counts for and all of them besides, in whole numbers, and how many of these make one."""
    each, all_of_it = worth * scale, whole * scale
    parts = lcm(each.denominator, all_of_it.denominator)
    return int(each * parts), int(all_of_it * parts), parts
