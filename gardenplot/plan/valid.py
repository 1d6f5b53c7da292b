"""What every plan holds, whatever the grower does: known ids, sizes above nothing, dates in order.

Whether plantings fit their beds is not asked here: a plan that does not fit is still a plan (see findings).
"""

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Any

from attrs import frozen

from gardenplot.errors import PlanError
from gardenplot.plan.checks import SMALLEST, Says, above_nothing, known_id, whole
from gardenplot.plan.choices import Direction, Pattern
from gardenplot.plan.goods import Feed, Good, Jugs
from gardenplot.plan.lying import Tunnel, Walk
from gardenplot.plan.valid_goods import feed_says, good_says, hoop_says, jugs_say, watering_says
from gardenplot.plan.valid_ground import standing_says, strip_says
from gardenplot.plan.valid_season import (
    MOST_TOGETHER,
    crop_days,
    gaps_say,
    homes_in,
    past_says,
    planting_days,
    raised_in,
    series_of_markets,
    times_say,
    trays_say,
)
from gardenplot.plan.valid_shapes import obstacle_says, shape_says
from gardenplot.plan.value import (
    Bed,
    Cover,
    Crop,
    Order,
    Place,
    Plan,
    Planting,
    Wish,
)
from gardenplot.units import Length
from gardenplot.words import _

MOST_PLANTS = 10_000_000
MOST_ROWS = 10_000
MOST_IN_CELL = 100
_MOST_IN_CLUSTER = 20
_LETTER = re.compile("[A-Z]{1,3}")


@frozen
class Fault:
    """One thing a plan may not hold: the place in it, as in a plan file, and a sentence."""

    place: str
    says: str


def check(plan: Plan, sound: Plan | None = None) -> Plan:
    """Return the plan as it is; raises PlanError with the first fault's sentence if it is not valid.

    `sound` is a valid plan that it was made of: plantings that are the very same in it are not looked at again.
    """
    for fault in faults(plan, sound):
        raise PlanError(fault.says, place=fault.place)
    return plan


def faults(plan: Plan, sound: Plan | None = None) -> Iterator[Fault]:
    """All faults of a plan, in the order of its file; what it shares with a `sound` one has none."""
    anew = _Anew(plan, sound)
    for name in ("beds", "crops", "plantings", "orders", "wishes", "covers", "tunnels", "paths"):
        yield from _ids(name, plan, anew)
    if anew.has("place"):
        yield from _at("place", _place(plan.place))
    ids = tuple({part.id for part in parts} for parts in (plan.beds, plan.crops, plan.orders, plan.wishes))
    known = _Known(plan, ids[0], ids[1], ids[2], ids[3])
    yield from _each("beds", anew, _bed)
    yield from _each("crops", anew, _crop)
    yield from _each("plantings", anew, lambda one: (*_referred(one, known), *_planting(one)))
    beds, crops = {bed.id: bed for bed in plan.beds}, {crop.id: crop for crop in plan.crops}
    for number, planting in anew.parts("plantings"):
        bed, crop = beds.get(planting.bed), crops.get(planting.crop)
        if bed is not None and crop is not None and (found := _places(planting, bed, crop)):
            yield from _at(f"plantings[{number}]", found)
    yield from _each("orders", anew, lambda one: _order(one, known))
    yield from _each("wishes", anew, lambda one: _wish(one, known))
    yield from _each("covers", anew, lambda one: _cover(one, known))
    for name in ("goods", "feeds", "jugs"):
        yield from _ids(name, plan, anew)
    yield from _each("goods", anew, lambda one: good_says(one, known.crops))
    yield from _each("feeds", anew, lambda one: feed_says(one, known.beds))
    yield from _each("jugs", anew, lambda one: jugs_say(one, known.beds))
    if anew.has("ground"):
        yield from _ground(plan)
    for name in ("tunnels", "paths"):
        yield from _each(name, anew, strip_says)


class _Anew:
    """What of a plan must be looked at: all that it does not share with a sound one.

    A list that is the very same there has no fault, as long as the beds, crops, orders and wishes it may refer to
    are the very same, too. Of plantings each is looked for by itself; one that refers to another is always looked at.
    """

    def __init__(self, plan: Plan, sound: Plan | None) -> None:
        self._plan = plan
        self._sound = sound if sound is not None and _refer_alike(plan, sound) else None

    def has(self, name: str) -> bool:
        """Whether a field of the plan is not the very same in the sound one."""
        return self._sound is None or getattr(self._plan, name) is not getattr(self._sound, name)

    def parts(self, name: str) -> Sequence[tuple[int, Any]]:
        """The parts of a list to look at, each with its place in it from 0."""
        if name == "plantings":
            return self._plantings
        return [*enumerate(getattr(self._plan, name))] if self.has(name) else ()

    @cached_property
    def _plantings(self) -> list[tuple[int, Planting]]:
        sound, mine = self._sound.plantings if self._sound is not None else (), self._plan.plantings
        if len(sound) == len(mine):
            pairs = enumerate(zip(mine, sound, strict=True))
            return [(number, one) for number, (one, was) in pairs if one is not was or _refers(one)]
        same = {id(one) for one in sound if not _refers(one)}
        return [(number, one) for number, one in enumerate(mine) if id(one) not in same]


def _refers(one: Planting) -> bool:
    return one.hardens is not None or one.gaps_of is not None


def _refer_alike(plan: Plan, sound: Plan) -> bool:
    referred = ("beds", "crops", "orders", "wishes")
    return all(getattr(plan, name) is getattr(sound, name) for name in referred)


def _ground(plan: Plan) -> Iterator[Fault]:
    seen: set[str] = set()
    beds = {bed.id for bed in plan.beds}
    for number, standing in enumerate(plan.ground):
        yield from _at(f"ground[{number}]", standing_says(beds, standing, seen))


class _Known:
    """The ids of a plan's parts, and what of its plantings those need that refer to others."""

    def __init__(self, plan: Plan, beds: set[str], crops: set[str], orders: set[str], wishes: set[str]) -> None:
        self._plan = plan
        self.beds, self.crops, self.orders, self.wishes = beds, crops, orders, wishes

    @cached_property
    def raised(self) -> dict[str, str]:
        """The crops of the plantings that trays can belong to."""
        return raised_in(self._plan)

    @cached_property
    def homes(self) -> dict[str, tuple[str, str | None]]:
        """The bed of each planting, and whose gaps it stands in."""
        return homes_in(self._plan)


_Said = tuple[str, str]


def _remembered(search: Callable[..., Says]) -> Callable[..., tuple[_Said, ...]]:
    """A search that looks at the same values once: an edit changes few parts of a plan, and is checked as a whole."""

    @lru_cache(maxsize=16_384)
    def found(*parts: object) -> tuple[_Said, ...]:
        return tuple(search(*parts))

    return found


def _each(name: str, anew: _Anew, search: Callable[[Any], Iterable[_Said]]) -> Iterator[Fault]:
    for number, part in anew.parts(name):
        for place, says in search(part):
            yield Fault(f"{name}[{number}].{place}", says)


_Part = Bed | Crop | Planting | Order | Wish | Cover | Tunnel | Walk | Good | Feed | Jugs


def _at(place: str, found: Iterable[_Said]) -> Iterator[Fault]:
    for name, says in found:
        yield Fault(f"{place}.{name}", says)


def _ids(name: str, plan: Plan, anew: _Anew) -> Iterator[Fault]:
    if not anew.has(name):
        return
    parts: Sequence[_Part] = getattr(plan, name)
    every, seen = {part.id for part in parts}, set[str]()
    looked_at = anew.parts(name) if len(every) == len(parts) and "" not in every else enumerate(parts)
    for number, part in looked_at:
        if not part.id:
            yield Fault(f"{name}[{number}].id", _("an id is needed"))
        for text in (part.id, getattr(part, "name", "")):
            if not text.isascii() and any("\ud800" <= sign <= "\udfff" for sign in text):
                yield Fault(f"{name}[{number}]", _("“{text}” holds half of a letter").format(text=text[:40]))
        if part.id in seen:
            yield Fault(f"{name}[{number}].id", _("“{id}” is there twice: each id stands once").format(id=part.id))
        seen.add(part.id)


def _place(place: Place) -> Says:
    for name in ("markable_in_row", "markable_rows"):
        for length in getattr(place, name):
            yield from above_nothing(name, length)
    for name, degrees, most in (("latitude", place.latitude, 90), ("longitude", place.longitude, 180)):
        if degrees is not None and not -most <= degrees <= most:
            yield (
                name,
                _("{typed} does not lie between {least} and {most}").format(typed=degrees, least=-most, most=most),
            )
    yield from whole("family_gap", place.family_gap, 0, 100)
    yield from whole("cover_before", place.cover_before, 0, 720)
    if place.watering is not None:
        yield from ((f"watering.{name}", says) for name, says in watering_says(place.watering))


@_remembered
def _bed(bed: Bed) -> Says:
    for name, length in (("length", bed.length), ("width", bed.width)):
        yield from above_nothing(name, length if length.text else None)
    yield from shape_says(bed)
    first, last = bed.zone
    if last <= first:
        yield "head_margin", _("the end margins leave nothing of the bed")
    for number, obstacle in enumerate(bed.obstacles):
        yield from ((f"obstacles[{number}].{name}", says) for name, says in obstacle_says(obstacle))
    for number, past in enumerate(bed.history):
        yield from ((f"history[{number}].{name}", says) for name, says in past_says(past))


def _rows_apart(spacing: tuple[Length, ...]) -> Says:
    for length in spacing:
        yield from above_nothing("row_spacing", length)
    if len(spacing) > 2:
        yield "row_spacing", _("one length, or the least and the most")
    if len(spacing) == 2 and spacing[0].nm > spacing[1].nm:
        yield (
            "row_spacing",
            _("the least, {least}, is more than the most, {most}").format(least=spacing[0], most=spacing[1]),
        )


@_remembered
def _crop(crop: Crop) -> Says:
    yield from above_nothing("in_row", crop.in_row)
    yield from above_nothing("spread", crop.spread)
    yield from above_nothing("height", crop.height)
    yield from _rows_apart(crop.row_spacing)
    if not crop.row_spacing:
        yield "row_spacing", _('a row spacing is needed, for example "30 cm"')
    if crop.field_loss is not None and crop.field_loss.part == 1:
        yield "field_loss", _("a loss of 100 % leaves nothing to sell")
    if crop.germination is not None and crop.germination.part == 0:
        yield "germination", _("a germination of 0 % gives no plants")
    if crop.seeds_per_gram is not None and not 0 < crop.seeds_per_gram < 1e6:
        yield (
            "seeds_per_gram",
            _("{typed:g} does not lie above 0 and below a million").format(typed=crop.seeds_per_gram),
        )
    if crop.plants_per_area is not None and crop.plants_per_area.per_nm2 == 0:
        yield "plants_per_area", _("a rate of nothing sows nothing")
    if crop.seeds_per_row is not None and crop.seeds_per_row.per_nm == 0:
        yield "seeds_per_row", _("a rate of nothing sows nothing")
    yield from whole("seeds_per_cell", crop.seeds_per_cell, 1, MOST_TOGETHER)
    yield from whole("clump", crop.clump, 1, MOST_TOGETHER)
    if crop.seedlings_per_seed is not None and not 1 <= crop.seedlings_per_seed <= _MOST_IN_CLUSTER:
        words = _("{typed} does not lie between 1 and {most}")
        yield "seedlings_per_seed", words.format(typed=crop.seedlings_per_seed, most=_MOST_IN_CLUSTER)
    yield from whole("tray_cells", crop.tray_cells, 1, 10_000)
    yield from crop_days(crop)


def _referred(planting: Planting, known: _Known) -> Says:
    yield from known_id("bed", planting.bed, known.beds)
    yield from known_id("crop", planting.crop, known.crops)
    if planting.order is not None:
        yield from known_id("order", planting.order, known.orders)
    if planting.wish is not None:
        yield from known_id("wish", planting.wish, known.wishes)
    if planting.hardens is not None:
        yield from trays_say(planting, planting.hardens, known.raised)
    if planting.gaps_of is not None:
        yield from gaps_say(planting, planting.gaps_of, known.homes)


@_remembered
def _planting(planting: Planting) -> Says:
    if planting.plants is not None and planting.length is not None:
        yield "plants", _("either plants or a length, not both")
    yield from whole("plants", planting.plants, 1, MOST_PLANTS)
    yield from whole("rows", planting.rows, 1, MOST_ROWS)
    yield from above_nothing("length", planting.length)
    yield from above_nothing("in_row", planting.in_row)
    yield from above_nothing("round_up_to", planting.round_up_to)
    yield from _rows_apart(planting.row_spacing)
    yield from _pattern(planting)
    yield from planting_days(planting)
    if planting.letter is not None and not _LETTER.fullmatch(planting.letter):
        yield "letter", _("“{typed}” is no letter: A, B or AA").format(typed=planting.letter)


def _pattern(planting: Planting) -> Says:
    """What a pattern needs of its own."""
    yield from above_nothing("twin_spacing", planting.twin_spacing)
    yield from above_nothing("cell", planting.cell)
    yield from whole("plants_per_cell", planting.plants_per_cell, 1, MOST_IN_CELL)
    if planting.pattern is Pattern.OFFSETS and not planting.offsets:
        yield "offsets", _('own offsets are needed, from the base line, for example ["15 cm", "60 cm"]')
    if planting.direction is Direction.ACROSS and not planting.pattern.has_even_rows:
        yield "direction", _("only straight, staggered and triangular rows run across")
    for one, after in pairwise(planting.offsets):
        if after.nm - one.nm < SMALLEST:
            yield "offsets", _("{after} is not beyond {one}").format(after=after, one=one)


@_remembered
def _places(planting: Planting, bed: Bed, crop: Crop) -> Says:
    """No more places than can be counted, however small the spacing and however large the bed."""
    spacing = planting.row_spacing or crop.row_spacing
    in_row, between = (planting.in_row or crop.in_row).nm, min((length.nm for length in spacing), default=0)
    if in_row <= 0 or between <= 0:
        return
    twin = planting.twin_spacing
    if planting.pattern is Pattern.TWIN and twin is not None and twin.nm >= between:
        yield (
            "twin_spacing",
            _("rows {twin} apart do not fit into pairs {pairs} apart").format(twin=twin, pairs=spacing[0]),
        )
    closest = min(between, in_row, *(one.nm for one in (twin, planting.cell) if one is not None and one.nm > 0))
    rows = bed.width.nm // closest + 1
    in_cell = (planting.plants_per_cell or 1) if planting.cell is not None else 1
    along = max(bed.length.nm // closest if planting.cell or planting.direction is Direction.ACROSS else 0,
                bed.length.nm // in_row)  # fmt: skip
    if rows > MOST_ROWS or rows * (along + 1) * in_cell > MOST_PLANTS:
        yield (
            "bed",
            _("at this spacing the bed has more than {most} places: is a size a slip?").format(most=MOST_PLANTS),
        )


def _order(order: Order, known: _Known) -> Says:
    yield from known_id("crop", order.crop, known.crops)
    yield from whole("units", order.units, 0, MOST_PLANTS)
    yield from whole("plants_per_unit", order.plants_per_unit, 1, 10_000)
    yield from above_nothing("row_per_unit", order.row_per_unit)
    yield from series_of_markets(order)


def _wish(wish: Wish, known: _Known) -> Says:
    yield from known_id("crop", wish.crop, known.crops)
    for bed in wish.beds:
        yield from known_id("beds", bed, known.beds)
    if wish.pattern is Pattern.OFFSETS:
        yield "pattern", _("a wish has no offsets of its own")
    yield from whole("least", wish.least, 0, MOST_PLANTS)
    yield from whole("most", wish.most, wish.least, MOST_PLANTS)
    yield from whole("piece", wish.piece, 1, MOST_PLANTS if wish.most is None else wish.most)
    yield from whole("days", wish.days, 1, 1500)
    yield from times_say(wish)
    yield from whole("rows", wish.rows, 1, MOST_ROWS)
    if not 0 <= wish.worth < 1e9:
        yield "worth", _("{typed} does not lie between 0 and a thousand million").format(typed=wish.worth)


def _cover(cover: Cover, known: _Known) -> Says:
    yield from known_id("bed", cover.bed, known.beds)
    if cover.end.nm <= cover.start.nm:
        yield "to", _("{end} is not beyond {start}").format(end=cover.end, start=cover.start)
    yield from above_nothing("hoop_spacing", cover.hoop_spacing)
    yield from whole("layers", cover.layers, 1, 10)
    yield from hoop_says(cover)
    if cover.on and cover.off and cover.off <= cover.on:
        yield "off", _("{off} is not after {on}").format(off=cover.off, on=cover.on)
