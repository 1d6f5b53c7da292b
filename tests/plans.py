"""Plans to test with: hypothesis strategies for any valid plan, and two small plans by name."""

import json
from collections.abc import Callable, Sequence
from datetime import date, timedelta
from functools import cache, lru_cache
from itertools import accumulate
from typing import Any, TypeVar

from attrs import frozen
from hypothesis import strategies as st

from gardenplot.plan import (
    Bed,
    Box,
    Cover,
    Crop,
    Direction,
    Establish,
    HoopShape,
    Order,
    Pattern,
    Phase,
    Place,
    Plan,
    Planting,
    Remainder,
    Sheeting,
    Standing,
    Tunnel,
    Walk,
    Wish,
)
from gardenplot.plan.shapes import reach_of
from gardenplot.plan.unknown import Unknown
from gardenplot.units import (
    CM,
    FOOT,
    INCH,
    MM,
    Degrees,
    Length,
    M,
    Share,
    Units,
    parse_area_rate,
    parse_degrees,
    parse_length,
    parse_rate,
    parse_share,
)
from tests.goods import feeds, goods, jugs, waterings
from tests.numbered import MANY, numbered, shared
from tests.seasons import crop_seasons, days, order_seasons, pasts, place_seasons, planting_seasons, some_of

T = TypeVar("T")

TURNED = (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR)
"""Patterns whose rows may run across the bed."""
_SIGNS = ("", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞")
_ZONES = ("Europe/London", "America/Chicago", "Pacific/Auckland", "Asia/Kolkata")


@frozen
class Spelling:
    """A way to write lengths that are whole multiples of `grain` nm."""

    grain: int
    write: Callable[[int], str]


def _decimal(number: int, places: int, sign: str = ".") -> str:
    digits = str(number).rjust(places + 1, "0")
    return f"{digits[:-places]}{sign}{digits[-places:]}"


def _plain_decimal(number: int, places: int) -> str:
    """A decimal without noughts at its end: 53.5, 8."""
    return _decimal(number, places).rstrip("0").rstrip(".")


def _parted(number: int, parts: int) -> str:
    """A number of parts as people write it: 2 1/2, 3/4, 8, 0."""
    whole, rest = divmod(number, parts)
    words = [str(whole)] if whole or not rest else []
    return " ".join([*words, f"{rest}/{parts}"] if rest else words)


def _signed(eighths: int) -> str:
    whole, rest = divmod(eighths, 8)
    return f"{whole or ''}{_SIGNS[rest]}" if eighths else "0"


SPELLINGS = (
    Spelling(MM, lambda n: f"{n} mm"),
    Spelling(MM, lambda n: f"{_plain_decimal(n, 1)} cm"),
    Spelling(MM, lambda n: f"{_decimal(n, 1, ',')}cm"),
    Spelling(CM, lambda n: f"{_plain_decimal(n, 2)} m"),
    Spelling(CM, lambda n: f"{_decimal(n, 2, ',')} m"),
    Spelling(CM, lambda n: f"{n // 100} m {n % 100} cm"),
    Spelling(INCH // 8, lambda n: f"{_parted(n, 8)} in"),
    Spelling(INCH // 8, lambda n: f"{_signed(n)}″"),
    Spelling(INCH // 4, lambda n: f"{n // 48}' {_parted(n % 48, 4)}\""),
    Spelling(INCH // 8, lambda n: f"{n // 96}′ {_signed(n % 96)}″"),
    Spelling(INCH, lambda n: f"{n // 12}ft {n % 12}in"),
    Spelling(FOOT // 100, lambda n: f"{_plain_decimal(n, 2)} ft"),
    Spelling(FOOT // 2, lambda n: f"{_parted(n, 2)} feet"),
)


@lru_cache(maxsize=2048)
def maybe(part: st.SearchStrategy[T]) -> st.SearchStrategy[T | None]:
    """Something or nothing. Strategies are made once: making them anew takes longer than drawing from them."""
    return st.none() | part


@lru_cache(maxsize=2048)
def lengths(least: int, most: int) -> st.SearchStrategy[Length]:
    """Lengths between two numbers of nanometres, in any spelling that has one there."""
    counts = [(one, -(-least // one.grain), most // one.grain) for one in SPELLINGS]
    fitting = [(one, first, last) for one, first, last in counts if first <= last]

    def spelt(number: int) -> Length:
        spelling, first, last = fitting[number % len(fitting)]
        count = first + number // len(fitting) % (last - first + 1)
        return Length(count * spelling.grain, spelling.write(count))

    widest = max(last - first + 1 for _one, first, last in fitting)
    return st.integers(0, len(fitting) * widest - 1).map(spelt)


@cache
def names() -> st.SearchStrategy[str]:
    """Names in any script, as they can be typed on one line."""
    return st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=12)


@cache
def notes() -> st.SearchStrategy[str]:
    """Notes over several lines."""
    return st.lists(names(), max_size=3).map("\n".join)


@cache
def ids() -> st.SearchStrategy[str]:
    """Ids: short, of any letters, never empty."""
    return st.text("ab12-", min_size=1, max_size=4) | names().filter(bool)


@cache
def json_values() -> st.SearchStrategy[Any]:
    """Any value that JSON can hold."""
    values = maybe(st.booleans()) | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | names()
    for _deeper in range(2):
        values |= st.lists(values, max_size=2) | st.dictionaries(names(), values, max_size=2)
    return values


@cache
def unknowns() -> st.SearchStrategy[Unknown]:
    """Fields that no version of the program knows, in one of eight: they take longest to draw."""
    fields = st.tuples(names().map("x-{}".format), json_values().map(_json_text))
    some = st.lists(fields, min_size=1, max_size=2, unique_by=lambda one: one[0]).map(tuple)
    return st.integers(0, 7).flatmap(lambda kind: some if kind == 7 else st.just(()))


def _json_text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


@cache
def shares(least: int = 0, most: int = 100) -> st.SearchStrategy[Share]:
    """Shares from `least` to `most` %, in several spellings."""

    def spelt(twentieths: int) -> Share:
        return parse_share(f"{_plain_decimal(twentieths // 2, 1)}{' ' * (twentieths % 2)}%")

    return st.integers(least * 20, most * 20).map(spelt)


@cache
def places() -> st.SearchStrategy[Place]:
    """Holdings anywhere on earth."""
    return st.builds(
        lambda season, **said: Place(**season, **said),
        season=place_seasons(),
        name=names(),
        latitude=maybe(st.floats(-90, 90)),
        longitude=maybe(st.floats(-180, 180)),
        time_zone=maybe(st.sampled_from(_ZONES)),
        units=st.sampled_from(Units),
        unknown=unknowns(),
        north=maybe(turns()),
        watering=maybe(waterings()),
    )


@cache
def rectangles() -> st.SearchStrategy[dict[str, Any]]:
    """Beds with a length and a width, the most common ones."""
    return st.fixed_dictionaries({"length": lengths(M // 2, 60 * M), "width": lengths(30 * CM, 3 * M // 2)})


@cache
def discs() -> st.SearchStrategy[dict[str, Any]]:
    """Round beds from half a metre across."""
    return lengths(M // 2, 3 * M).map(lambda across: _reaching({"diameter": across}))


@st.composite
def boxes(draw: st.DrawFn) -> dict[str, Any]:
    """Boarded boxes, with posts in their corners or without."""
    board, post = draw(lengths(MM, 6 * CM)), draw(maybe(lengths(MM, 12 * CM)))
    length, width = draw(lengths(M, 4 * M)), draw(lengths(50 * CM, 3 * M // 2))
    return _reaching({"box": Box(length, width, board, post, draw(unknowns()))})


@st.composite
def on_slopes(draw: st.DrawFn) -> dict[str, Any]:
    """Rectangles on a slope, measured on the ground or on the map."""
    along, width, slope = draw(lengths(M // 2, 40 * M)), draw(lengths(30 * CM, 3 * M // 2)), draw(shares())
    if draw(st.booleans()):
        return {"length": along, "width": width, "slope": slope}
    return _reaching({"width": width, "slope": slope, "map_length": along})


def _reaching(shape: dict[str, Any]) -> dict[str, Any]:
    """A shape with the length and width that follow from it."""
    nothing = Length(0, "")
    length, width = reach_of(Bed("", "", **({"length": nothing, "width": nothing} | shape)))
    return {"length": Length(length, ""), "width": Length(width, "")} | shape


@st.composite
def beds(draw: st.DrawFn) -> Bed:
    """Beds of any shape from half a metre to 60 m, with any margins that leave some of them."""
    shape: dict[str, Any] = draw(st.one_of(rectangles(), discs(), boxes(), on_slopes()))
    length, width = shape["length"], shape["width"]
    margin = lengths(0, length.nm * 2 // 5)
    said = {
        "head_margin": margin,
        "foot_margin": margin,
        "edge": lengths(0, width.nm),
        "gap": lengths(0, M),
        "note": notes(),
        "unknown": unknowns(),
        "drip_lines": st.lists(lengths(0, width.nm), max_size=3).map(tuple),
        "history": pasts(),
        "usable_from": days(),
    }
    return Bed(id=draw(ids()), name=draw(names()), **shape, **draw(some_of(said)))


@cache
def row_spacings() -> st.SearchStrategy[tuple[Length, ...]]:
    """One row spacing, or the least and the most."""
    spacing = st.lists(lengths(5 * CM, M), min_size=1, max_size=2)
    return spacing.map(lambda some: tuple(sorted(some, key=lambda length: length.nm)))


@cache
def crops() -> st.SearchStrategy[Crop]:
    """Crops whose packets tell much, little or next to nothing."""
    more = some_of(
        {
            "family": names(),
            "edge": lengths(0, M // 2),
            "plants_per_area": st.integers(1, 900).map(lambda n: parse_area_rate(f"{n} / m2")),
            "spread": lengths(CM, M),
            "field_loss": shares(most=99),
            "spare": shares(),
            "germination": shares(least=1),
            "seeds_per_cell": st.integers(1, 6),
            "clump": st.integers(1, 6),
            "seedlings_per_seed": st.sampled_from([1.0, 2.5, 4.0]),
            "tray_cells": st.integers(1, 400),
            "seeds_per_row": st.integers(1, 90).map(lambda n: parse_rate(f"{n} / ft")),
            "seeder_slack": shares(),
            "seeds_per_gram": st.integers(1, 9000).map(float) | st.just(12.5),
            "note": notes(),
            "unknown": unknowns(),
        }
    )
    return st.builds(
        lambda season, more, **said: Crop(**season, **more, **said),
        season=crop_seasons(),
        more=more,
        id=ids(),
        name=names(),
        in_row=lengths(2 * CM, M),
        row_spacing=row_spacings(),
        establish=st.sampled_from(Establish),
    )


def orders(crop_ids: Sequence[str]) -> st.SearchStrategy[Order]:
    """Orders of known crops."""
    return st.builds(
        lambda season, **said: Order(**season, **said),
        season=order_seasons(),
        id=ids(),
        crop=st.sampled_from(crop_ids),
        units=st.integers(1, 400),
        note=notes(),
        unknown=unknowns(),
    )


@st.composite
def plantings(
    draw: st.DrawFn, bed_ids: Sequence[str], crop_ids: Sequence[str], order_ids: Sequence[str] = ()
) -> Planting:
    """Plantings of known crops in known beds, of any size: they may overlap and stick out."""
    return Planting(
        **draw(planting_seasons()),
        id=draw(ids()),
        bed=draw(st.sampled_from(bed_ids)),
        crop=draw(st.sampled_from(crop_ids)),
        order=draw(maybe(st.sampled_from(order_ids))) if order_ids else None,
        **draw(_said_of_plantings()),
        **draw(_sizes()),
        **draw(_patterns()),
    )


@cache
def _said_of_plantings() -> st.SearchStrategy[dict[str, Any]]:
    return some_of(
        {
            "start": lengths(0, 70 * M),
            "rows": st.integers(1, 12),
            "in_row": lengths(2 * CM, M),
            "row_spacing": row_spacings(),
            "edge": lengths(0, M // 2),
            "slack": lengths(0, 2 * M),
            "round_up_to": lengths(CM, 2 * M),
            "note": notes(),
            "unknown": unknowns(),
            "remainder": st.sampled_from(Remainder),
            "phase": st.sampled_from(Phase),
            "clump": st.integers(1, 6),
            "seeds_per_cell": st.integers(1, 5),
        }
    )


@cache
def _patterns() -> st.SearchStrategy[dict[str, Any]]:
    """A pattern with what it needs of its own."""
    steps = st.lists(st.integers(1, 100), min_size=1, max_size=5)
    own = steps.map(lambda apart: tuple(parse_length(f"{at} cm") for at in accumulate(apart)))
    return st.one_of(
        st.fixed_dictionaries({"pattern": st.sampled_from([one for one in Pattern if one is not Pattern.OFFSETS])}),
        st.fixed_dictionaries({"pattern": st.just(Pattern.OFFSETS), "offsets": own}),
        st.fixed_dictionaries({"pattern": st.just(Pattern.TWIN), "twin_spacing": lengths(CM, 2 * CM)}),
        st.fixed_dictionaries(
            {"pattern": st.just(Pattern.CELLS), "cell": lengths(10 * CM, M), "plants_per_cell": st.integers(1, 16)}
        ),
        st.fixed_dictionaries(
            {"pattern": st.sampled_from(TURNED), "direction": st.just(Direction.ACROSS)},
        ),
    )


@cache
def _sizes() -> st.SearchStrategy[dict[str, Any]]:
    plants = st.fixed_dictionaries({"plants": st.integers(1, 500)})
    length = st.fixed_dictionaries({"length": lengths(CM, 30 * M)})
    return st.just({}) | plants | length


@cache
def _two_days() -> st.SearchStrategy[tuple[date | None, date | None]]:
    apart = st.builds(lambda day, more: (day, day + timedelta(days=more)), days(), st.integers(1, 300))
    return apart | st.tuples(maybe(days()), st.none()) | st.tuples(st.none(), days())


@st.composite
def wishes(draw: st.DrawFn, bed_ids: Sequence[str], crop_ids: Sequence[str]) -> Wish:
    """Wishes for known crops, in all beds or some."""
    least = draw(st.integers(0, 200))
    earliest = draw(maybe(days()))
    return Wish(
        id=draw(ids()),
        crop=draw(st.sampled_from(crop_ids)),
        least=least,
        most=(most := draw(maybe(st.integers(least, 400)))),
        days=draw(maybe(st.integers(1, 200))),
        earliest=earliest,
        latest=draw(maybe(days())),
        times=1 if earliest is None else draw(st.sampled_from((1, 1, 4))),
        every_days=draw(st.integers(1, 30)),
        worth=draw(st.floats(0, 100)),
        beds=tuple(draw(st.lists(st.sampled_from(bed_ids), unique=True))) if bed_ids else (),
        pattern=draw(st.sampled_from([one for one in Pattern if one is not Pattern.OFFSETS])),
        rows=draw(maybe(st.integers(1, 12))),
        unknown=draw(unknowns()),
        piece=None if most == 0 else draw(maybe(st.integers(1, most or 400))),
    )


@st.composite
def covers(draw: st.DrawFn, bed_ids: Sequence[str]) -> Cover:
    """Covers over known beds; they may stick out."""
    start = draw(lengths(0, 30 * M))
    on, off = draw(_two_days())
    return Cover(
        id=draw(ids()),
        bed=draw(st.sampled_from(bed_ids)),
        start=start,
        end=draw(lengths(start.nm + CM, start.nm + 30 * M)),
        on=on,
        off=off,
        **draw(_said_of_covers()),
    )


@cache
def _said_of_covers() -> st.SearchStrategy[dict[str, Any]]:
    return some_of(
        {
            "hoop_spacing": lengths(30 * CM, 3 * M),
            "leg": lengths(0, M // 2),
            "apron": lengths(0, M // 2),
            "cloth_end": lengths(0, M),
            "layers": st.integers(1, 3),
            "sheeting": st.sampled_from(Sheeting),
            "buried": lengths(0, M // 2),
            "unknown": unknowns(),
        }
    ).flatmap(lambda said: st.just(said) | lengths(10 * CM, M).map(lambda rise: said | _half_ellipse(rise)))


def _half_ellipse(rise: Length) -> dict[str, Any]:
    return {"hoop_shape": HoopShape.HALF_ELLIPSE, "rise": rise}


@cache
def turns() -> st.SearchStrategy[Degrees]:
    """Directions on the ground, right angles often, in several spellings."""
    tenths = st.integers(0, 3600) | st.sampled_from([0, 900, 1800, 2700])
    spellings = st.sampled_from(["{}°", "{}", "-{} deg"])
    return st.builds(lambda n, spelling: parse_degrees(spelling.format(_plain_decimal(n, 1))), tenths, spellings)


@st.composite
def standings(draw: st.DrawFn, bed_ids: Sequence[str]) -> tuple[Standing, ...]:
    """Places on the ground for some of the beds; they may lie on one another."""
    some = draw(st.lists(st.sampled_from(bed_ids), unique=True))
    return tuple(
        Standing(bed, draw(from_peg()), draw(from_peg()), draw(maybe(turns())), draw(unknowns())) for bed in some
    )


@st.composite
def tunnels(draw: st.DrawFn) -> Tunnel:
    """Tunnels anywhere on the ground, with a cold edge or without."""
    edge = maybe(lengths(CM, 90 * CM))
    size = draw(lengths(5 * M, 50 * M)), draw(lengths(2 * M, 9 * M))
    return Tunnel(draw(ids()), draw(names()), **draw(_lying()), length=size[0], width=size[1], cold_edge=draw(edge))


@st.composite
def walks(draw: st.DrawFn) -> Walk:
    """Paths anywhere on the ground."""
    size = draw(lengths(M, 50 * M)), draw(lengths(20 * CM, 2 * M))
    return Walk(draw(ids()), draw(names()), **draw(_lying()), length=size[0], width=size[1])


@cache
def from_peg() -> st.SearchStrategy[Length]:
    """How far something lies from the peg, on either side of it."""
    right = lengths(0, 60 * M)
    return right | right.map(lambda length: Length(-length.nm, f"-{length}"))


@cache
def _lying() -> st.SearchStrategy[dict[str, Any]]:
    return st.fixed_dictionaries({"x": from_peg(), "y": from_peg(), "turn": maybe(turns()), "unknown": unknowns()})


@st.composite
def _plans(draw: st.DrawFn, least_beds: int = 0, least_plantings: int = 0) -> Plan:
    needed = min(least_plantings, 1)
    ground = draw(_some(beds(), most=3, least=max(least_beds, needed)))
    grown = draw(_some(crops(), most=3, least=needed))
    bed_ids, crop_ids = [bed.id for bed in ground], [crop.id for crop in grown]
    wanted = draw(_some(orders(crop_ids), most=2)) if crop_ids else ()
    order_ids = [order.id for order in wanted]
    return Plan(
        place=draw(places()),
        beds=ground,
        crops=grown,
        plantings=draw(_some(plantings(bed_ids, crop_ids, order_ids), most=4, least=least_plantings))
        if bed_ids and crop_ids
        else (),
        orders=wanted,
        wishes=draw(_some(wishes(bed_ids, crop_ids), most=2)) if crop_ids else (),
        covers=draw(_some(covers(bed_ids), most=2)) if bed_ids else (),
        unknown=draw(unknowns()),
        ground=draw(standings(bed_ids)) if bed_ids else (),
        tunnels=draw(_some(tunnels(), most=2)),
        paths=draw(_some(walks(), most=2)),
        goods=draw(_some(goods(crop_ids), most=2)),
        feeds=draw(_some(feeds(bed_ids), most=1)),
        jugs=draw(_some(jugs(bed_ids), most=1)) if bed_ids else (),
    )


_ANY, _PLANTED = numbered(_plans()), numbered(_plans(least_plantings=1))


def _plan_of(number: int) -> Plan:
    """A plan by number; of those that are just any plan only one in four has plantings."""
    return (_PLANTED if number % 2 else _ANY)(number)


@cache
def plans(least_beds: int = 0, least_plantings: int = 0) -> st.SearchStrategy[Plan]:
    """Any valid plan: beds and crops up to three, and what can be made of them.

    What a test cannot do without is asked for here: a plan that is thrown away takes as long to draw as any other.
    """

    def next_of(number: int) -> Plan:
        """The next plan by number that has enough."""
        numbers = (later % MANY for later in range(number, number + MANY))
        return next(
            plan
            for plan in map(_plan_of, numbers)
            if len(plan.beds) >= least_beds and len(plan.plantings) >= least_plantings
        )

    return shared(_plans(least_beds, least_plantings), next_of)


def _some(parts: st.SearchStrategy[Any], most: int, least: int = 0) -> st.SearchStrategy[tuple[Any, ...]]:
    return st.lists(parts, min_size=least, max_size=most, unique_by=lambda part: part.id).map(tuple)


def metric_plan() -> Plan:
    """Two beds, two crops and three plantings that fit, in metres and centimetres."""
    cm_25, cm_30, cm_7 = parse_length("25 cm"), parse_length("30 cm"), parse_length("7.5 cm")
    tunnel = Bed("b1", "Tunnel, east", parse_length("15 m"), parse_length("75 cm"), cm_30, cm_30, edge=cm_7)
    field = Bed("b2", "Field, upper", parse_length("20 m"), parse_length("1.20 m"), cm_30, cm_30)
    pak_choi = Crop("pak-choi", "Pak choi", cm_25, (cm_30, parse_length("45 cm")), field_days=48, raising_days=24)
    leek = Crop("leek", "Leek", parse_length("15 cm"), (cm_30,), field_days=120, raising_days=75)
    april, may, august = date(2027, 4, 9), date(2027, 5, 28), date(2027, 8, 20)
    return Plan(
        place=Place("Upper Sill", 57.2, -4.1, "Europe/London"),
        beds=(tunnel, field),
        crops=(pak_choi, leek),
        plantings=(
            Planting("p1", "b1", "pak-choi", cm_30, plants=120, in_ground=april, out=may),
            Planting("p2", "b2", "leek", cm_30, length=parse_length("11.85 m"), in_ground=april, out=august),
            Planting(
                "p3", "b2", "pak-choi", parse_length("13 m"), pattern=Pattern.STAGGERED, in_ground=april, out=may
            ),
        ),
    )


def feet_plan() -> Plan:
    """Two beds, two crops, an order and three plantings that fit, in feet and inches."""
    one_foot, edge = parse_length("1 ft"), parse_length("3 in")
    tunnel = Bed("t1", "Tunnel, south", parse_length("53.5 ft"), parse_length('30"'), one_foot, one_foot, edge=edge)
    field = Bed("f1", "Field, by the pond", parse_length("100 ft"), parse_length("4'"), gap=one_foot)
    lettuce = Crop("lettuce", "Head lettuce", parse_length("8 in"), (parse_length("12 in"),), field_days=45)
    beet = Crop(
        "beet", "Beetroot", parse_length("3 in"), (parse_length("1 ft"),), establish=Establish.DIRECT, field_days=65
    )
    april, june = date(2028, 4, 3), date(2028, 6, 1)
    return Plan(
        place=Place("Long Reach", 44.5, -84.0, "America/Detroit", Units.FEET_AND_INCHES),
        beds=(tunnel, field),
        crops=(lettuce, beet),
        plantings=(
            Planting("p1", "t1", "lettuce", one_foot, plants=180, in_ground=april, out=june),
            Planting("p2", "f1", "beet", parse_length("0 ft"), order="o1"),
            Planting("p3", "f1", "lettuce", parse_length("20' 6 1/2\""), length=parse_length("16 ft")),
        ),
        orders=(Order("o1", "beet", units=40, on=date(2028, 7, 8), plants_per_unit=5),),
    )
