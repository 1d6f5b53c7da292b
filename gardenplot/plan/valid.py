"""What every plan holds, whatever the grower does: known ids, sizes above nothing, dates in order.

Whether plantings fit their beds is not asked here: a plan that does not fit is still a plan (see findings).
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Any

from attrs import frozen

from gardenplot.errors import PlanError
from gardenplot.plan.choices import Direction, Pattern
from gardenplot.plan.shapes import FOLLOWS, inside_of, reach_of, shapes_of
from gardenplot.plan.simple import fault_of
from gardenplot.plan.valid_ground import standing_says, strip_says
from gardenplot.plan.valid_season import crop_days, past_says, planting_days, raised_in, series_of_markets, trays_say
from gardenplot.plan.value import (
    Bed,
    Box,
    Cover,
    Crop,
    Obstacle,
    Order,
    Place,
    Plan,
    Planting,
    Tunnel,
    Walk,
    Wish,
)
from gardenplot.units import LONGEST, MM, Length
from gardenplot.words import _

MOST_PLANTS = 10_000_000
MOST_ROWS = 10_000
MOST_IN_CELL = 100
SMALLEST = MM


@frozen
class Fault:
    """One thing a plan may not hold: the place in it, as in a plan file, and a sentence."""

    place: str
    says: str


def check(plan: Plan) -> Plan:
    """Return the plan as it is; raises PlanError with the first fault's sentence if it is not valid."""
    for fault in faults(plan):
        raise PlanError(fault.says, place=fault.place)
    return plan


def faults(plan: Plan) -> Iterator[Fault]:
    """All faults of a plan, in the order of its file."""
    yield from _ids("beds", plan.beds)
    yield from _ids("crops", plan.crops)
    yield from _ids("plantings", plan.plantings)
    yield from _ids("orders", plan.orders)
    yield from _ids("wishes", plan.wishes)
    yield from _ids("covers", plan.covers)
    yield from _ids("tunnels", plan.tunnels)
    yield from _ids("paths", plan.paths)
    yield from _at("place", _place(plan.place))
    ids = tuple({part.id for part in parts} for parts in (plan.beds, plan.crops, plan.orders, plan.wishes))
    known = _Known(ids[0], ids[1], ids[2], ids[3], raised_in(plan))
    yield from _each("beds", plan.beds, _bed)
    yield from _each("crops", plan.crops, _crop)
    yield from _each("plantings", plan.plantings, lambda one: (*_referred(one, known), *_planting(one)))
    beds, crops = {bed.id: bed for bed in plan.beds}, {crop.id: crop for crop in plan.crops}
    for number, planting in enumerate(plan.plantings):
        bed, crop = beds.get(planting.bed), crops.get(planting.crop)
        if bed is not None and crop is not None and (found := _places(planting, bed, crop)):
            yield from _at(f"plantings[{number}]", found)
    yield from _each("orders", plan.orders, lambda one: _order(one, known))
    yield from _each("wishes", plan.wishes, lambda one: _wish(one, known))
    yield from _each("covers", plan.covers, lambda one: _cover(one, known))
    yield from _ground(plan)


def _ground(plan: Plan) -> Iterator[Fault]:
    seen: set[str] = set()
    beds = {bed.id for bed in plan.beds}
    for number, standing in enumerate(plan.ground):
        yield from _at(f"ground[{number}]", standing_says(beds, standing, seen))
    for name, strips in (("tunnels", plan.tunnels), ("paths", plan.paths)):
        yield from _each(name, strips, lambda strip: strip_says(strip, _above_nothing))


@frozen
class _Known:
    beds: set[str]
    crops: set[str]
    orders: set[str]
    wishes: set[str]
    raised: dict[str, str]


_Said = tuple[str, str]
_Says = Iterator[_Said]


def _remembered(search: Callable[..., _Says]) -> Callable[..., tuple[_Said, ...]]:
    """A search that looks at the same values once: an edit changes few parts of a plan, and is checked as a whole."""

    @lru_cache(maxsize=16_384)
    def found(*parts: object) -> tuple[_Said, ...]:
        return tuple(search(*parts))

    return found


def _each(name: str, parts: Sequence[Any], search: Callable[[Any], Iterable[_Said]]) -> Iterator[Fault]:
    for number, part in enumerate(parts):
        for place, says in search(part):
            yield Fault(f"{name}[{number}].{place}", says)


def _at(place: str, found: Iterable[_Said]) -> Iterator[Fault]:
    for name, says in found:
        yield Fault(f"{place}.{name}", says)


def _ids(name: str, parts: Sequence[Bed | Crop | Planting | Order | Wish | Cover | Tunnel | Walk]) -> Iterator[Fault]:
    seen: set[str] = set()
    for number, part in enumerate(parts):
        if not part.id:
            yield Fault(f"{name}[{number}].id", _("an id is needed"))
        for text in (part.id, getattr(part, "name", "")):
            if not text.isascii() and any("\ud800" <= sign <= "\udfff" for sign in text):
                yield Fault(f"{name}[{number}]", _("“{text}” holds half of a letter").format(text=text[:40]))
        if part.id in seen:
            yield Fault(f"{name}[{number}].id", _("“{id}” is there twice: each id stands once").format(id=part.id))
        seen.add(part.id)


def _above_nothing(name: str, length: Length | None) -> _Says:
    if length is not None and length.nm < SMALLEST:
        yield name, _("“{typed}” is too small: at least 1 mm is needed").format(typed=length.text)


def _whole(name: str, number: int | None, least: int, most: int) -> _Says:
    if number is not None and not least <= number <= most:
        yield name, _("{typed} does not lie between {least} and {most}").format(typed=number, least=least, most=most)


def _known_id(name: str, wanted: str, ids: set[str]) -> _Says:
    if wanted not in ids:
        yield name, _("there is no “{id}” in the plan").format(id=wanted)


def _place(place: Place) -> _Says:
    for name in ("markable_in_row", "markable_rows"):
        for length in getattr(place, name):
            yield from _above_nothing(name, length)
    for name, degrees, most in (("latitude", place.latitude, 90), ("longitude", place.longitude, 180)):
        if degrees is not None and not -most <= degrees <= most:
            yield (
                name,
                _("{typed} does not lie between {least} and {most}").format(typed=degrees, least=-most, most=most),
            )
    yield from _whole("family_gap", place.family_gap, 0, 100)
    yield from _whole("cover_before", place.cover_before, 0, 720)


@_remembered
def _bed(bed: Bed) -> _Says:
    for name, length in (("length", bed.length), ("width", bed.width)):
        yield from _above_nothing(name, length if length.text else None)
    yield from _shape(bed)
    first, last = bed.zone
    if last <= first:
        yield "head_margin", _("the end margins leave nothing of the bed")
    for number, obstacle in enumerate(bed.obstacles):
        yield from ((f"obstacles[{number}].{name}", says) for name, says in _obstacle(obstacle))
    for number, past in enumerate(bed.history):
        yield from ((f"history[{number}].{name}", says) for name, says in past_says(past, _whole))


def _shape(bed: Bed) -> _Says:
    first, *others = shapes_of(bed) or ("",)
    for other in others:
        yield other, _("a bed has one shape: {first} or {other}, not both").format(first=first, other=other)
    if bed.outline:
        yield from _outline(bed)
    yield from _above_nothing("diameter", bed.diameter)
    if bed.box is not None:
        yield from ((f"box.{name}", says) for name, says in _box(bed.box))
    if bed.map_length is not None:
        yield from _map_length(bed)
    yield from _reach(bed)


def _reach(bed: Bed) -> _Says:
    """Nothing is said twice; only beside an outline may length and width stand, if they are right."""
    for name, said in FOLLOWS.items():
        if getattr(bed, name) in (None, ()):
            continue
        for typed in (one for one in said if getattr(bed, one).text and name != "outline"):
            yield name, _("the bed's {said} follows from it: leave {said} out").format(said=typed)
        if (bed.length.nm, bed.width.nm) != reach_of(bed):
            yield name, _("length and width are not what it reaches: leave them out")


def _map_length(bed: Bed) -> _Says:
    yield from _above_nothing("map_length", bed.map_length)
    if bed.slope is None:
        yield "map_length", _('a length on the map needs a slope, for example "12 %"')
    for shape in shapes_of(bed):
        yield "map_length", _("follows from {field}: leave it out").format(field=shape)
    if bed.length.nm > LONGEST:
        yield "map_length", _("the bed is longer than 10 km on the ground")


def _box(box: Box) -> _Says:
    for name in ("length", "width", "board", "post"):
        yield from _above_nothing(name, getattr(box, name))
    least = min(inside_of(box))
    if least < SMALLEST:
        yield "board", _("boards of {board} leave nothing between them").format(board=box.board)
    elif box.post is not None and 2 * box.post.nm >= least:
        yield "post", _("posts of {post} leave nothing between them").format(post=box.post)


_OUTLINE_FAULTS = {
    "points": _("an outline needs three points or more"),
    "repeat": _("a point stands twice in the outline"),
    "area": _("the outline has no area"),
    "crossing": _("the outline crosses or touches itself"),
}
MOST_CORNERS = 500


def _outline(bed: Bed) -> _Says:
    points = [(x.nm, y.nm) for x, y in bed.outline]
    if len(points) > MOST_CORNERS:
        yield "outline", _("more than {most} points").format(most=MOST_CORNERS)
        return
    fault = fault_of(points)
    if fault is not None:
        yield "outline", _OUTLINE_FAULTS[fault]


def _obstacle(obstacle: Obstacle) -> _Says:
    for name in ("diameter", "length", "width"):
        yield from _above_nothing(name, getattr(obstacle, name))
    sides = (obstacle.length, obstacle.width)
    if (obstacle.diameter is None) == (None in sides) or (obstacle.diameter and any(sides)):
        yield "diameter", _("either a diameter, or a length and a width")
    if any(row < 1 for row in obstacle.rows):
        yield "rows", _("rows are counted from 1")


def _rows_apart(spacing: tuple[Length, ...]) -> _Says:
    for length in spacing:
        yield from _above_nothing("row_spacing", length)
    if len(spacing) > 2:
        yield "row_spacing", _("one length, or the least and the most")
    if len(spacing) == 2 and spacing[0].nm > spacing[1].nm:
        yield (
            "row_spacing",
            _("the least, {least}, is more than the most, {most}").format(least=spacing[0], most=spacing[1]),
        )


@_remembered
def _crop(crop: Crop) -> _Says:
    yield from _above_nothing("in_row", crop.in_row)
    yield from _above_nothing("spread", crop.spread)
    yield from _rows_apart(crop.row_spacing)
    if not crop.row_spacing:
        yield "row_spacing", _('a row spacing is needed, for example "30 cm"')
    if crop.field_loss is not None and crop.field_loss.part == 1:
        yield "field_loss", _("a loss of 100 % leaves nothing to sell")
    if crop.germination is not None and crop.germination.part == 0:
        yield "germination", _("a germination of 0 % gives no plants")
    if crop.seeds_per_gram is not None and not 0 < crop.seeds_per_gram < 1e6:
        yield "seeds_per_gram", _("{typed} does not lie between 0 and a million").format(typed=crop.seeds_per_gram)
    if crop.plants_per_area is not None and crop.plants_per_area.per_nm2 == 0:
        yield "plants_per_area", _("a rate of nothing sows nothing")
    yield from _whole("seeds_per_cell", crop.seeds_per_cell, 1, 100)
    yield from _whole("tray_cells", crop.tray_cells, 1, 10_000)
    yield from crop_days(crop, _whole)


def _referred(planting: Planting, known: _Known) -> _Says:
    yield from _known_id("bed", planting.bed, known.beds)
    yield from _known_id("crop", planting.crop, known.crops)
    if planting.order is not None:
        yield from _known_id("order", planting.order, known.orders)
    if planting.wish is not None:
        yield from _known_id("wish", planting.wish, known.wishes)
    yield from trays_say(planting, known.raised)


@_remembered
def _planting(planting: Planting) -> _Says:
    if planting.plants is not None and planting.length is not None:
        yield "plants", _("either plants or a length, not both")
    yield from _whole("plants", planting.plants, 1, MOST_PLANTS)
    yield from _whole("rows", planting.rows, 1, MOST_ROWS)
    yield from _above_nothing("length", planting.length)
    yield from _above_nothing("in_row", planting.in_row)
    yield from _above_nothing("round_up_to", planting.round_up_to)
    yield from _rows_apart(planting.row_spacing)
    yield from _pattern(planting)
    yield from planting_days(planting, _whole)


def _pattern(planting: Planting) -> _Says:
    """What a pattern needs of its own."""
    yield from _above_nothing("twin_spacing", planting.twin_spacing)
    yield from _above_nothing("cell", planting.cell)
    yield from _whole("plants_per_cell", planting.plants_per_cell, 1, MOST_IN_CELL)
    if planting.pattern is Pattern.OFFSETS and not planting.offsets:
        yield "offsets", _('own offsets are needed, from the base line, for example ["15 cm", "60 cm"]')
    if planting.direction is Direction.ACROSS and not planting.pattern.has_even_rows:
        yield "direction", _("only straight, staggered and triangular rows run across")
    for one, after in pairwise(planting.offsets):
        if after.nm - one.nm < SMALLEST:
            yield "offsets", _("{after} is not beyond {one}").format(after=after, one=one)


@_remembered
def _places(planting: Planting, bed: Bed, crop: Crop) -> _Says:
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


def _order(order: Order, known: _Known) -> _Says:
    yield from _known_id("crop", order.crop, known.crops)
    yield from _whole("units", order.units, 1, MOST_PLANTS)
    yield from _whole("plants_per_unit", order.plants_per_unit, 1, 10_000)
    yield from _above_nothing("row_per_unit", order.row_per_unit)
    yield from series_of_markets(order, _whole)


def _wish(wish: Wish, known: _Known) -> _Says:
    yield from _known_id("crop", wish.crop, known.crops)
    for bed in wish.beds:
        yield from _known_id("beds", bed, known.beds)
    if wish.pattern is Pattern.OFFSETS:
        yield "pattern", _("a wish has no offsets of its own")
    yield from _whole("least", wish.least, 0, MOST_PLANTS)
    yield from _whole("most", wish.most, wish.least, MOST_PLANTS)
    yield from _whole("days", wish.days, 1, 1500)
    yield from _whole("rows", wish.rows, 1, MOST_ROWS)
    if not 0 <= wish.worth < 1e9:
        yield "worth", _("{typed} does not lie between 0 and a thousand million").format(typed=wish.worth)


def _cover(cover: Cover, known: _Known) -> _Says:
    yield from _known_id("bed", cover.bed, known.beds)
    if cover.end.nm <= cover.start.nm:
        yield "to", _("{end} is not beyond {start}").format(end=cover.end, start=cover.start)
    yield from _above_nothing("hoop_spacing", cover.hoop_spacing)
    yield from _whole("layers", cover.layers, 1, 10)
    if cover.on and cover.off and cover.off <= cover.on:
        yield "off", _("{off} is not after {on}").format(off=cover.off, on=cover.on)
