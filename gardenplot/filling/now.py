"""One gap of one bed on one day, filled at once: the best blocks of all that is wanted and could stand in it.

All of them stand there on that day, so that the question is which go in and how long each is, one after another
along the bed: an exact dynamic programme, and for one thing alone as many as fit. What comes later into a part of the
gap leaves those that are out by then all of it and others a part: rooms of their own. Where these grow towards the
foot at both ends the programme is exact still; elsewhere several orders are tried, and it is proven the best only
where it is worth as much as if all that comes later were not there.
"""

from collections.abc import Iterator, Sequence
from datetime import date
from functools import lru_cache
from itertools import pairwise

from attrs import evolve, frozen

from gardenplot.filling.gap import Filler, GapFilling, packed
from gardenplot.filling.offers import Offer, Offers, WhyNot, gaps_on, offers_for, unsuited, worths_of
from gardenplot.filling.placed import Placed
from gardenplot.filling.task import planting_of_block
from gardenplot.filling.wanted import Wanted
from gardenplot.layout import lay_out_bed
from gardenplot.layout.cold_edge import Stretch, both
from gardenplot.layout.sizes import block_within
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Plan, Planting
from gardenplot.plan.edits import add_plantings
from gardenplot.season import Dates
from gardenplot.units import Length, length_of

_ROUNDS = 4
"""How often what found no room in one part of a gap is tried in what else is free."""


@frozen
class NoRoom:
    """Something wanted that does not stand in the gap, and why."""

    wanted: str
    crop: str
    why: WhyNot


@frozen
class GapNow:
    """A gap filled: the plan with its blocks, its worth, whether none is better, and what is left out."""

    plan: Plan
    bed: str
    gap: Stretch
    blocks: tuple[Placed, ...]
    worth: float
    proven: bool
    without: tuple[NoRoom, ...]


@frozen
class _Seat:
    """An offer with the longest room that it could stand in, and the days on which it has that."""

    offer: Offer
    dates: Dates
    room: Stretch
    is_only: bool


@frozen
class _Seated:
    """An offer that stands: from where on, with how many plants, what its length comes to in nm, and its worth."""

    seat: _Seat
    start: int
    plants: int
    length: int
    worth: int


def gap_at(plan: Plan, bed_id: str, at: int, day: date | None) -> Stretch | None:
    """The gap of a bed round a tape reading in nm on a day; None where something stands there."""
    return next((gap for gap in gaps_on(plan, bed_id, day) if gap[0] <= at <= gap[1]), None)


def fill_now(plan: Plan, bed_id: str, at: int, day: date | None, crop: str | None = None) -> GapNow | None:
    """The best blocks for the gap round a tape reading, of the plan's wishes and orders or of one of its crops.

    None where there is no gap.
    """
    gap = gap_at(plan, bed_id, at, day)
    return best_for(plan, bed_id, gap, day, crop) if gap is not None else None


@lru_cache(maxsize=64)
def best_for(plan: Plan, bed_id: str, gap: Stretch, day: date | None, crop: str | None) -> GapNow:
    """The best blocks for one gap of a bed."""
    offers = offers_for(plan, bed_id, day, crop)
    seats = [seat for offer in offers.some if (seat := _seat(offers, offer, gap, ())) is not None]
    seated, proven = _alone(offers, gap) if len(offers.some) == 1 else _best(offers, gap, seats)
    after, stand = _standing(plan, offers, sorted(seated, key=lambda each: each.start))
    worth = sum(worths_of(one, (block.plants,), offers.scale)[0] for one, block in stand)
    without = tuple(_without(plan, offers, gap, seats, [each.seat.offer for each in seated]))
    return GapNow(
        after, bed_id, gap, tuple(block for _one, block in stand), float(worth / offers.scale),
        proven and offers.is_exact and len(stand) == len(seated), without,
    )  # fmt: skip


def _alone(offers: Offers, gap: Stretch) -> tuple[list[_Seated], bool]:
    """As many as fit of the one thing that can stand there, in the room that holds most of it."""
    offer, bed = offers.some[0], offers.laid.bed
    best: _Seated | None = None
    for dates, room in offers.rooms(offer, gap, ()):
        long = room[1] - room[0]
        plants, length = block_within(bed, offer.one.crop, offer.one.trial, offer.one.most, room[0], long)
        if plants >= offer.one.least and length <= long and (best is None or plants > best.plants):
            (worth,) = worths_of(offer.one, (plants,), offers.scale)
            best = _Seated(_Seat(offer, dates, room, is_only=True), room[0], plants, length, worth)
    return ([best] if best is not None else []), is_plain(bed)


def _best(offers: Offers, gap: Stretch, found: Sequence[_Seat]) -> tuple[list[_Seated], bool]:
    """The best blocks of many offers, of which some have found a seat, and whether they are proven to be."""
    seats = sorted(found, key=lambda seat: seat.room)
    is_sure = all(offer.is_sure for offer in offers.some)
    row = _Row(offers, gap, seats)
    grow = all(one.room[1] <= other.room[1] for one, other in pairwise(seats))
    if grow and all(seat.is_only for seat in seats):
        filled, proven = row.best()
        return filled, proven and is_sure
    bound, anywhere = row.anywhere()
    if anywhere is not None:
        return anywhere, is_sure
    best = _with_more(offers, gap, row.best()[0])
    if _worth(best) < bound and not grow:
        other = _with_more(offers, gap, row.best(by_end=True)[0])
        best = max(best, other, key=_worth)
    return best, is_sure and _worth(best) >= bound


class _Row:
    """Offers that stand one after another in a gap, each in its room; a block has its gap at its foot."""

    def __init__(self, offers: Offers, gap: Stretch, seats: list[_Seat]) -> None:
        self._seats, self._begin, self._kept = seats, gap[0], offers.kept
        self._rooms = [(seat.room[0] - gap[0], seat.room[1] - gap[0] + offers.kept) for seat in seats]
        self._filler = Filler(gap[1] - gap[0] + offers.kept, [seat.offer.sizes for seat in seats], self._rooms)

    def best(self, *, by_end: bool = False) -> tuple[list[_Seated], bool]:
        """The best of offers in the order in which they are listed, or in that in which their rooms end."""
        order = range(len(self._seats))
        numbers = sorted(order, key=lambda number: self._rooms[number][::-1]) if by_end else [*order]
        found = self._filler.filled(numbers)
        return self._seated(numbers, found), found.proven

    def anywhere(self) -> tuple[int, list[_Seated] | None]:
        """What the offers can be worth at most in any order, and blocks that are worth it, if they are found."""
        bound, found, order = self._filler.anywhere()
        return bound, self._seated(order, found) if found is not None else None

    def _seated(self, numbers: Sequence[int], found: GapFilling) -> list[_Seated]:
        seats = [self._seats[number] for number in numbers]
        sizes, rooms = [seat.offer.sizes for seat in seats], [self._rooms[number] for number in numbers]
        starts = packed(sizes, rooms, found.sizes) or ()
        return [
            _Seated(
                seat, self._begin + start, seat.offer.plants[size], of.lengths[size] - self._kept, of.worths[size]
            )
            for seat, of, start, size in zip(seats, sizes, starts, found.sizes, strict=True)
            if size is not None
        ]


def _seat(offers: Offers, offer: Offer, gap: Stretch, placed: tuple[Stretch, ...]) -> _Seat | None:
    """The longest room of an offer in a gap, on the first days that have it; None where none holds its least size."""
    kept, shortest, longest = offers.kept, offer.sizes.lengths[0], offers.longest(offer, gap, placed)
    if longest is None or longest.room[1] + kept - longest.room[0] < shortest:
        return None
    return _Seat(offer, longest.dates, longest.room, is_only=longest.beyond + kept < shortest)


def _with_more(offers: Offers, gap: Stretch, seated: list[_Seated]) -> list[_Seated]:
    """The same blocks and, in what else of the gap is free, the best of what is left, as often as anything is."""
    for _round in range(_ROUNDS):
        placed = tuple((one.start, one.start + one.length) for one in seated)
        stand = {id(one.seat.offer) for one in seated}
        seats = [
            seat
            for offer in offers.some
            if id(offer) not in stand and (seat := _seat(offers, offer, gap, placed)) is not None
        ]
        # What is left stands in one room at a time: elsewhere it would have to keep off blocks of other days.
        room = max((seat.room for seat in seats), key=lambda each: each[1] - each[0], default=None)
        more = _Row(offers, gap, [seat for seat in seats if seat.room == room]).best()[0] if room else []
        if not more:
            break
        seated = [*seated, *more]
    return seated


def _worth(seated: list[_Seated]) -> int:
    return sum(one.worth for one in seated)


def _standing(plan: Plan, offers: Offers, seated: list[_Seated]) -> tuple[Plan, list[tuple[Wanted, Placed]]]:
    """The plan with blocks as they are really laid out, and these blocks.

    Where the plants of one would need more ground at its place its length rules; one that then holds less than the
    least of it is left out.
    """
    bed, units = offers.laid.bed, plan.place.units
    plantings = [
        planting_of_block(plan, one.seat.offer.one, bed, one.start, one.plants, one.seat.dates) for one in seated
    ]
    after, stand = _added(plan, offers, seated, plantings)
    if all(block.end <= one.start + one.length for one, (_wanted, block) in zip(seated, stand, strict=True)):
        return after, stand
    plantings = [
        planting if block.end <= one.start + one.length else _by_length(planting, length_of(one.length, units))
        for one, planting, (_wanted, block) in zip(seated, plantings, stand, strict=True)
    ]
    after, stand = _added(plan, offers, seated, plantings)
    kept = [number for number, (wanted, block) in enumerate(stand) if block.plants >= wanted.least]
    return _added(plan, offers, [seated[number] for number in kept], [plantings[number] for number in kept])


def _by_length(planting: Planting, length: Length) -> Planting:
    return evolve(planting, plants=None, length=length)


def _added(
    plan: Plan, offers: Offers, seated: list[_Seated], plantings: list[Planting]
) -> tuple[Plan, list[tuple[Wanted, Placed]]]:
    after = add_plantings(plan, plantings)
    laid = lay_out_bed(after, offers.laid.bed)
    stand = []
    for one, planting in zip(seated, after.plantings[len(plan.plantings) :], strict=True):
        wanted, dates, block = one.seat.offer.one, one.seat.dates, laid.layout_of(planting.id)
        reading = block.plants, block.start, block.end
        stand.append((wanted, Placed(wanted.id, planting.id, planting.bed, *reading, dates.in_ground, dates.out)))
    return after, stand


def _without(
    plan: Plan, offers: Offers, gap: Stretch, seats: Sequence[_Seat], stand: Sequence[Offer]
) -> Iterator[NoRoom]:
    """What of all that is wanted does not stand, and why."""
    for one, why in offers.none:
        yield NoRoom(one.id, one.crop.id, why)
    standing, could = {id(offer) for offer in stand}, {id(seat.offer) for seat in seats}
    for offer in offers.some:
        if id(offer) not in standing:
            why = WhyNot.OTHERS if id(offer) in could else _why(plan, offers, offer, gap)
            yield NoRoom(offer.one.id, offer.one.crop.id, why)


def _why(plan: Plan, offers: Offers, offer: Offer, gap: Stretch) -> WhyNot:
    """Why what found no seat in a gap found none."""
    if offer.sizes.lengths[0] > gap[1] - gap[0] + offers.kept:
        return WhyNot.LONG
    if not any(both([*where], [gap]) for where in offer.where):
        return unsuited(plan, offers.laid.bed, offer.one.crop, offer.days, gap)
    return WhyNot.LATER
