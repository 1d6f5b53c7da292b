"""All plantings of a bed at their places: where each block begins, and what fills its gap."""

from fractions import Fraction
from functools import cached_property, lru_cache

from attrs import evolve, frozen

from gardenplot.layout.block import Block, Sized, lay_out, length_at, sized
from gardenplot.layout.reserved import Follower, follows, still_in_use, with_answer
from gardenplot.layout.spread import wider_spacings
from gardenplot.layout.trays import tray_crop
from gardenplot.layout.value import Layout
from gardenplot.plan import Bed, Crop, Establish, Order, Place, Plan, Planting, crop_of, order_of, planting_of
from gardenplot.plan.clumps import as_planted
from gardenplot.season import Dates, Site, counting_site, dates_for, share_days, tray_dates
from gardenplot.season.orders import Each


@frozen(cache_hash=True, slots=False)  # with a cached property, every attribute of a slotted class takes a search
class Grown:
    """A planting with what it refers to and when it has the ground: all that its layout depends on.

    `wider` are the spacings in nm on which its remainder may be spread, `site` is where short days are left out of
    the count, `hardened` the planting whose trays it is.
    """

    planting: Planting
    crop: Crop
    order: Order | None
    wider: tuple[int, ...] = ()
    site: Site | None = None
    hardened: "Grown | None" = None

    @cached_property
    def dates(self) -> Dates:
        """When it has the ground."""
        if self.hardened is not None:
            return tray_dates(self.hardened.dates)
        return dates_for(self.planting, self.crop, self.order, self.site)


@frozen(cache_hash=True, slots=False)  # as what has grown
class LaidOut:
    """A bed with its plantings, in the plan's order, and their layouts."""

    bed: Bed
    grown: tuple[Grown, ...]
    layouts: tuple[Layout, ...]

    def layout_of(self, planting_id: str) -> Layout:
        """The layout of one planting; raises KeyError if it is not in this bed."""
        for layout in self.layouts:
            if layout.planting == planting_id:
                return layout
        raise KeyError(planting_id)

    @cached_property
    def without_trays(self) -> "LaidOut":
        """The same bed with what grows in it alone; itself where no trays stand there."""
        if not any(layout.holds_trays for layout in self.layouts):
            return self
        kept = [pair for pair in zip(self.grown, self.layouts, strict=True) if not pair[1].holds_trays]
        return evolve(self, grown=tuple(one for one, _each in kept), layouts=tuple(each for _one, each in kept))


def lay_out_bed(plan: Plan, bed: Bed) -> LaidOut:
    """The layouts of one bed; the same values give the very same object again."""
    return _laid_out(bed, _growing(plan).in_bed(bed.id))


class _Growing:
    """The plantings of a plan by their bed, in the plan's order; what they refer to is looked up bed by bed."""

    def __init__(self, plan: Plan) -> None:
        self._plan = plan
        self._referred = Plan(plan.place, crops=plan.crops, orders=plan.orders)
        self._plantings: dict[str, list[Planting]] = {}
        for planting in plan.plantings:
            self._plantings.setdefault(planting.bed, []).append(planting)
        self._found: dict[str, tuple[Grown, ...]] = {}

    def in_bed(self, bed: str) -> tuple[Grown, ...]:
        """What grows in a bed."""
        found = self._found.get(bed)
        if found is None:
            plantings = tuple(self._plantings.get(bed, ()))
            if any(one.hardens is not None for one in plantings):
                found = tuple(grown_of(self._plan, one) for one in plantings)
            else:
                found = _grown_alone(self._referred, plantings)
            self._found[bed] = found
        return found


@lru_cache(maxsize=16)
def _growing(plan: Plan) -> _Growing:
    return _Growing(plan)


@lru_cache(maxsize=2048)
def _grown_alone(plan: Plan, plantings: tuple[Planting, ...]) -> tuple[Grown, ...]:
    """What grows in a bed without trays; `plan` has but what plantings refer to, so that it stays through edits."""
    return tuple(grown_of(plan, planting) for planting in plantings)


def grown_of(plan: Plan, planting: Planting) -> Grown:
    """A planting, of the plan or one that might come to it, with what it refers to in the plan."""
    order = order_of(plan, planting.order) if planting.order else None
    one = _grown(plan.place, planting, crop_of(plan, planting.crop), order)
    if planting.hardens is None:
        return one
    return evolve(one, hardened=grown_of(plan, planting_of(plan, planting.hardens)))


@lru_cache(maxsize=8192)
def _grown(place: Place, planting: Planting, crop: Crop, order: Order | None) -> Grown:
    if planting.hardens is not None:
        return Grown(planting, tray_crop(crop, planting), None)
    crop = as_planted(crop, planting)
    wider = wider_spacings(place, planting, (planting.in_row or crop.in_row).nm)
    return Grown(planting, crop, order, wider, counting_site(place))


@lru_cache(maxsize=16)
def lay_out_plan(plan: Plan) -> tuple[LaidOut, ...]:
    """The layouts of all beds, in the plan's order."""
    growing = _growing(plan)
    return tuple(_laid_out(bed, growing.in_bed(bed.id)) for bed in plan.beds)


@lru_cache(maxsize=2048)
def _laid_out(bed: Bed, grown: tuple[Grown, ...]) -> LaidOut:
    sizes = [sized(bed, one.crop, one.planting, one.order) for one in grown]
    blocks = _blocks(bed, grown, sizes)
    layouts = tuple(
        [
            lay_out(bed, one.crop, one.planting, size, blocks[number], one.wider)
            for number, (one, size) in enumerate(zip(grown, sizes, strict=True))
        ]
    )
    if any(one.planting.keep_clear is not None for one in grown):
        layouts = tuple(
            with_answer(layout, _followers(one, grown, layouts), one.planting.reserved)
            for one, layout in zip(grown, layouts, strict=True)
        )
    return LaidOut(bed, grown, layouts)


def _followers(one: Grown, grown: tuple[Grown, ...], layouts: tuple[Layout, ...]) -> tuple[Follower, ...]:
    """The crops whose places are reserved while a planting still stands."""
    return tuple(
        Follower(layout, other.planting.keep_clear.nm)
        for other, layout in zip(grown, layouts, strict=True)
        if other.planting.keep_clear is not None
        and follows(other.planting, other.dates, one.dates)
        and still_in_use(one.dates, other.dates)
    )


def followers_of(laid: LaidOut, planting_id: str) -> tuple[Follower, ...]:
    """The crops whose places are reserved while a planting of the bed still stands."""
    one = next(each for each in laid.grown if each.planting.id == planting_id)
    return _followers(one, laid.grown, laid.layouts)


def kept_for(laid: LaidOut, layouts: tuple[Layout, ...]) -> tuple[Follower, ...]:
    """The crops that have places kept among some layouts of a bed and are none of these themselves, each once."""
    shown = {layout.planting for layout in layouts}
    kept = {
        follower.layout.planting: follower
        for layout in layouts
        for follower in followers_of(laid, layout.planting)
        if follower.layout.planting not in shown
    }
    return tuple(kept.values())


def stood(one: Grown, layout: Layout) -> int:
    """The plants that stand of a planting: as many as were counted last, less those of rows that failed, if known.

    Seedlings beyond those that there is room for are thinned out. What was counted in a length of row stands for all.
    """
    came = one.planting.actual
    if came is None:
        return layout.plants
    if came.standing is not None:
        return came.standing
    return max(0, _set_out(one, layout) - sum(layout.per_row[row - 1] for row in failed_rows(one, layout)))


def failed_rows(one: Grown, layout: Layout) -> tuple[int, ...]:
    """The rows of a planting that failed, by their numbers from 1; those that it does not have are left out."""
    came = one.planting.actual
    return tuple(sorted({row for row in came.failed_rows if row <= len(layout.per_row)})) if came is not None else ()


def _set_out(one: Grown, layout: Layout) -> int:
    """The plants that were set out, or came up of what was sown in the bed."""
    came, is_raised = one.planting.actual, one.crop.establish is Establish.TRANSPLANT
    if came is not None and is_raised and came.planted is not None:
        return came.planted
    if came is None or is_raised or came.stand is None:
        return layout.plants
    if came.stand_row is None:
        return min(came.stand, layout.plants)
    return min(layout.plants, came.stand * row_of(layout) // came.stand_row.nm)


def row_of(layout: Layout) -> int:
    """The length of row in nm that all plants of a layout have together; of a sown band the length of its block."""
    return layout.plants * layout.grid.in_row if layout.per_row else layout.length


def planted_for_orders(laid_out: tuple[LaidOut, ...]) -> dict[tuple[str, int], int]:
    """The plants that stand for each market day that something is planted for, by its order and its number."""
    planted: dict[tuple[str, int], int] = {}
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.order is not None:
                wanted = one.order.id, one.planting.market or 1
                planted[wanted] = planted.get(wanted, 0) + stood(one, layout)
    return planted


def planted_for_wishes(laid_out: tuple[LaidOut, ...]) -> dict[tuple[str, int], int]:
    """The plants that stand for each wish that something is planted for, by which time of it they are for."""
    planted: dict[tuple[str, int], int] = {}
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            wish = one.planting.wish
            if wish is not None:
                wanted = wish, one.planting.market or 1
                planted[wanted] = planted.get(wanted, 0) + stood(one, layout)
    return planted


def spacings_for_orders(laid_out: tuple[LaidOut, ...]) -> dict[tuple[str, int], Each]:
    """What a place has for each market day, on average over all that is planted for it."""
    places: dict[tuple[str, int], int] = {}
    plants: dict[tuple[str, int], int] = {}
    row: dict[tuple[str, int], int] = {}
    for laid in laid_out:
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            if one.order is not None and layout.plants:
                wanted = one.order.id, one.planting.market or 1
                places[wanted] = places.get(wanted, 0) + layout.plants
                plants[wanted] = plants.get(wanted, 0) + layout.plants * one.crop.stand
                row[wanted] = row.get(wanted, 0) + layout.plants * layout.grid.in_row
    return {
        wanted: Each(-(-row[wanted] // count), Fraction(plants[wanted], count)) for wanted, count in places.items()
    }


def compete(one: Grown, other: Grown) -> bool:
    """Whether two plantings want the same ground on the same days; reserved places share it with what was earlier.

    What stands in the gaps of a planting shares its ground.
    """
    if _in_gaps(one, other):
        return False
    relay = follows(one.planting, one.dates, other.dates) or follows(other.planting, other.dates, one.dates)
    return share_days(one.dates, other.dates) and not relay


def _in_gaps(one: Grown, other: Grown) -> bool:
    """Whether one of two stands in the gaps of the other, or both in those of a third."""
    gaps = one.planting.gaps_of, other.planting.gaps_of
    if gaps == (None, None):
        return False
    return (gaps[0] or one.planting.id) == (gaps[1] or other.planting.id)


def _blocks(bed: Bed, grown: tuple[Grown, ...], sizes: list[Sized]) -> dict[int, Block]:
    """The blocks of all plantings, by their number: one without a place follows those listed before it; then those
    without a size fill gaps."""
    blocks: dict[int, Block] = {}
    for number, one in enumerate(grown):
        size = sizes[number]
        if not size.fills:
            start = one.planting.start.nm if one.planting.start else _after_others(bed, one, grown, blocks)
            blocks[number] = start, start + length_at(bed, one.crop, one.planting, size, start)
    for number, one in enumerate(grown):
        if number not in blocks:
            blocks[number] = _gap_for(bed, one, grown, blocks)
    return blocks


def _competing(one: Grown, grown: tuple[Grown, ...], blocks: dict[int, Block]) -> list[Block]:
    """The blocks, of those that have a place so far, on whose days a planting wants ground."""
    return [block for number, block in blocks.items() if compete(one, grown[number])]


def _after_others(bed: Bed, one: Grown, grown: tuple[Grown, ...], blocks: dict[int, Block]) -> int:
    gap = bed.gap.nm if bed.gap else 0
    return max([bed.zone[0], *(end + gap for _start, end in _competing(one, grown, blocks))])


def _gap_for(bed: Bed, one: Grown, grown: tuple[Grown, ...], blocks: dict[int, Block]) -> Block:
    """The gap that a planting without a size fills: from its place to the next block or the foot margin."""
    others = _competing(one, grown, blocks)
    gap = bed.gap.nm if bed.gap else 0
    (first, last), given = bed.zone, one.planting.start
    start = given.nm if given is not None else _first_free(first, sorted(others), gap)
    for begin, _end in others:
        if begin >= start:
            last = min(last, begin - gap)
    return start, max(start, last)


def _first_free(start: int, blocks: list[Block], gap: int) -> int:
    for block in blocks:
        if block[0] - gap <= start < block[1] + gap:
            start = block[1] + gap
    return start
