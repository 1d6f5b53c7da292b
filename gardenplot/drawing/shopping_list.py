"""The list of what to buy and carry: short, grouped, each number with its working behind it."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from functools import lru_cache, partial

from attrs import frozen

from gardenplot.drawing.carried import in_wholes, marking_needs, turn_days, whole_words
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import looks
from gardenplot.drawing.number_words import name_words, value_words
from gardenplot.drawing.so_many import so_many_plants, so_many_sown
from gardenplot.drawing.turns import turns
from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import GoodKind, Place, Plan, crop_of, planting_of
from gardenplot.plan.clumps import clump_of
from gardenplot.season import dates_of
from gardenplot.supplies.needed import Need
from gardenplot.supplies.raising import seed_grams
from gardenplot.supplies.shopping import EVERYTHING, Asked, Item, shopping, total_cost
from gardenplot.units import Units
from gardenplot.units.figures import apart, grouped, span
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Number, Unit, added

_GROUPS: Mapping[str, tuple[GoodKind, ...]] = {
    _("Seed"): (GoodKind.SEED,),
    _("Plants to buy in"): (GoodKind.PLANT,),
    _("Raising"): (GoodKind.TRAY, GoodKind.MIX),
    _("Covers"): (GoodKind.HOOP, GoodKind.CLOTH, GoodKind.FILM, GoodKind.WEIGHT),
    _("Water"): (GoodKind.DRIP_LINE, GoodKind.JUG),
    _("Soil"): (GoodKind.COMPOST, GoodKind.AMENDMENT),
    _("Marking"): (
        GoodKind.STAKE,
        GoodKind.PEG,
        GoodKind.STRING,
        GoodKind.TAPE,
        GoodKind.ROW_MARKER,
        GoodKind.SPACER,
        GoodKind.DIBBLE,
    ),
}


@frozen(cache_hash=True)
class ShopRow:
    """One thing in words: what it is, how much is needed, in store and to buy, and what it costs."""

    cells: tuple[str, ...]
    item: Item
    lacks: bool = False


@frozen(cache_hash=True)
class ShopGroup:
    """Things of a kind, under their heading."""

    name: str
    rows: tuple[ShopRow, ...]


def shop_groups(plan: Plan, asked: Asked = EVERYTHING) -> tuple[ShopGroup, ...]:
    """All that is needed for what is asked, group by group; groups of nothing are left out."""
    by_kind: dict[GoodKind, list[Item]] = {}
    for item in shopping(plan, asked, tuple(_marking(plan, asked))):
        by_kind.setdefault(item.kind, []).append(item)
    groups = (
        ShopGroup(name, tuple(_row(plan, item) for kind in kinds for item in by_kind.get(kind, ())))
        for name, kinds in _GROUPS.items()
    )
    return tuple(group for group in groups if group.rows)


def cost_cells(plan: Plan, groups: tuple[ShopGroup, ...]) -> tuple[str, ...]:
    """The cells behind "Cost" in a table of the list: how much has no price, and what all else costs.

    None where nothing has a price.
    """
    items = [row.item for group in groups for row in group.rows]
    bought = [item for item in items if item.lacking.value != 0]
    free = sum(item.cost.value is None for item in bought)
    if free == len(bought):
        return ()
    without = ngettext("without one thing that has no price", "without {count} things that have no price", free)
    cost = value_words(total_cost(tuple(items)), plan.place.units, plan.place.money)
    return without.format(count=grouped(free)) if free else "", "", "", cost


def cost_words(plan: Plan, groups: tuple[ShopGroup, ...]) -> str:
    """The same in a line: "€ 41.20, without 3 things that have no price"; empty where nothing has one."""
    cells = cost_cells(plan, groups)
    return ", ".join(part for part in reversed(cells) if part)


def list_text(groups: tuple[ShopGroup, ...]) -> str:
    """The list as text, to paste anywhere: a heading for each group, a line for each thing with what to buy."""
    lines = []
    for group in groups:
        lines.append(group.name)
        lines += [f"  {row.cells[0]}: {row.cells[3] or row.cells[1]}" for row in group.rows]
    return "\n".join(lines)


_LEFT = frozenset((GoodKind.STAKE, GoodKind.PEG))
"""What is left in a bed until its turn is over: each bed needs its own. The rest serves one bed after another."""


def _marking(plan: Plan, asked: Asked) -> Iterator[Need]:
    """What marks the beds: what is left in them for the turn that takes most of it, and tools once for all."""
    once = dict[tuple[GoodKind, int | None], Need]()
    for laid in lay_out_plan(plan):
        bed = laid.without_trays
        for need in _for_bed(plan.place, bed, asked) if asked.has(laid.bed.id) else ():
            if need.kind in _LEFT:
                yield need
            else:
                size = None if need.kind is GoodKind.TAPE else need.size
                once[need.kind, size] = max(once.get((need.kind, size), need), need, key=_measure)
    yield from sorted(once.values(), key=lambda need: need.size or 0)


@lru_cache(maxsize=1024)
def _for_bed(place: Place, bed: LaidOut, asked: Asked) -> tuple[Need, ...]:
    """Each kind and size of thing for the turn of a bed that takes most of it, of the turns that are asked for.

    It is worked out of the bed alone, so that an edit does not have it worked out for all others again.
    """
    most: dict[tuple[GoodKind, int | None], Need] = {}
    crops = {one.crop.id: one.crop for one in bed.grown}
    alone = Plan(place, (bed.bed,), tuple(crops.values()), tuple(one.planting for one in bed.grown))
    for layouts, day in zip(turns(bed), turn_days(bed), strict=True):
        for need in marking_needs(alone, bed, layouts) if layouts and asked.is_on(day) else ():
            most[need.kind, need.size] = max(most.get((need.kind, need.size), need), need, key=_measure)
    return tuple(most.values())


def _measure(need: Need) -> Fraction:
    return Fraction(need.size or 0) if need.kind is GoodKind.TAPE else need.number.value or Fraction(0)


def _words(plan: Plan, item: Item, number: Number) -> str:
    """A number of a thing: seeds are called so, and whole metres or feet have no further digits."""
    units = plan.place.units
    if item.kind is GoodKind.SEED and number.unit is Unit.COUNT and number.value is not None:
        return so_many_sown(crop_of(plan, item.crop or ""), int(number.value))
    if number.unit is Unit.LENGTH and in_wholes(number.name, number, units).value == number.value is not None:
        return whole_words(number.whole or 0, units)
    return value_words(number, units, plan.place.money)


def _row(plan: Plan, item: Item) -> ShopRow:
    words = partial(_words, plan, item)
    if item.needed.value is None:
        return ShopRow((what_words(plan, item), _not_known(item), "", "", ""), item, lacks=True)
    stored = words(item.in_store) if item.in_store.terms else ""
    cost = words(item.cost) if item.cost.value else ""
    needed = words(item.needed)
    if item.in_all is not None and item.in_all.value is not None and item.in_all.value != item.needed.value:
        told = _("{needed} at once, {in_all} in all")
        if item.in_all.value < item.needed.value:
            told = _("{needed} at once, {in_all} of them still to fill")
        needed = told.format(needed=needed, in_all=words(item.in_all))
    cells = (what_words(plan, item), needed, stored, _to_buy(item, _lacking_words(plan, item)), cost)
    return ShopRow(cells, item)


@lru_cache(maxsize=128)
def _not_known(item: Item) -> str:
    """Why it is not known how much is needed: "not in the plan: cloth beyond each end".

    Of seed also for how much it is bought: "seed for 106 plants; not in the plan: germination".
    """
    lacks, plants = ", ".join(name_words(name) for name in item.needed.lacks()), seed_for(item)
    words = _("not in the plan: {lacks}").format(lacks=lacks) if lacks else _("not known")
    if plants is None:
        return words
    return _("seed for {plants}; {lacks}").format(plants=so_many_plants(plants.whole or 0), lacks=words)


def seed_for(item: Item) -> Number | None:
    """The plants that seed is bought for of which it is not known how much it takes."""
    if item.kind is not GoodKind.SEED or item.needed.value is not None:
        return None
    found = list(_planted(item.needed))
    return added("planted_for", Unit.COUNT, found, RULES) if found else None


def _planted(number: Number) -> Iterator[Number]:
    """The plants that are raised or sown for, of each planting."""
    if number.name in ("planted", "raised_for"):
        yield number
        return
    for term in number.terms:
        yield from _planted(term)


def _lacking_words(plan: Plan, item: Item) -> str:
    """What lacks; of what is sold by its length in whole metres or feet, of seed also how much it weighs."""
    if item.lacking.unit is not Unit.LENGTH or not item.lacking.value:
        return ", ".join(part for part in (_words(plan, item, item.lacking), _weight(plan, item)) if part)
    units = plan.place.units
    return whole_words(in_wholes("buy_length", item.lacking, units).whole or 0, units)


def _weight(plan: Plan, item: Item) -> str:
    """What seed weighs that is counted: "13.9 g"; empty where the packet does not say."""
    number = weight_to_buy(plan, item)
    return "" if number is None else value_words(number, plan.place.units)


def weight_to_buy(plan: Plan, item: Item) -> Number | None:
    """What seed that is counted and not sold in packs weighs; None where the packet does not say."""
    crop = crop_of(plan, item.crop) if item.kind is GoodKind.SEED and item.crop else None
    if crop is None or crop.seeds_per_gram is None or item.lacking.unit is not Unit.COUNT or not item.lacking.value:
        return None
    return seed_grams(crop, item.lacking) if item.packs.value is None else None


def in_whole_lengths(plan: Plan, item: Item) -> Iterator[Number]:
    """What is told in whole metres or feet and otherwise than its number: to buy, needed or in store."""
    told = ("buy_length", item.lacking), ("needed_length", item.needed), ("stored_length", item.in_store)
    units = plan.place.units
    for name, number in told:
        whole = in_wholes(name, number, units) if number.unit is Unit.LENGTH and number.value else None
        is_told = name == "buy_length" or (whole is not None and whole.value == number.value)
        if whole is not None and is_told and (whole.value != number.value or units is not Units.METRIC):
            yield whole


def _to_buy(item: Item, lacking: str) -> str:
    """What lacks, in packs where it is known how it is sold."""
    if item.lacking.value is not None and not item.lacking.value:
        return _("nothing")
    if item.kind in (GoodKind.SPACER, GoodKind.ROW_MARKER):
        return _("1, or a printed strip")
    if item.packs.value is None or item.good is None or item.good.pack is None:
        return lacking
    if item.good.pack.pieces == 1:
        return grouped(int(item.packs.value))
    return _("{count} × {pack}").format(count=grouped(int(item.packs.value)), pack=item.good.pack.text)


def what_words(plan: Plan, item: Item) -> str:
    """What it is: "Pak choi", "trays of 84 cells", "hoops, each 2.38 m"."""
    units = plan.place.units
    match item.kind:
        case GoodKind.SEED | GoodKind.PLANT if item.crop:
            return _of_crop(plan, item, item.crop)
        case GoodKind.TRAY:
            return _("trays of {cells} cells").format(cells=item.size)
        case GoodKind.HOOP if item.size:
            return _("hoops, each {length}").format(length=span(item.size, units))
        case GoodKind.CLOTH | GoodKind.FILM if item.size:
            return _("{what}, {width} wide").format(what=_KINDS[item.kind], width=span(item.size, units))
        case GoodKind.TAPE:
            return _("tape of {length} or more").format(length=whole_words(item.size or 0, units))
        case GoodKind.ROW_MARKER:
            return _("row marker, rows {spacing} apart").format(spacing=apart(item.size or 0, units))
        case GoodKind.SPACER:
            return _("spacing tool, every {spacing}").format(spacing=apart(item.size or 0, units))
        case GoodKind.JUG if item.name:
            return _("jugs of {volume}").format(volume=item.name)
        case GoodKind.AMENDMENT if item.name:
            return item.name
        case _:
            return _KINDS[item.kind]


def _of_crop(plan: Plan, item: Item, crop: str) -> str:
    """Seed or plants of a crop: "Pak choi", "Bulb fennel: for B by 12 May"."""
    name, plantings = crop_of(plan, crop).name, ", ".join(_bought_for(plan, item))
    return _("{crop}: {plantings}").format(crop=name, plantings=plantings) if plantings else name


def _bought_for(plan: Plan, item: Item) -> Iterator[str]:
    """Which plantings plants are bought in for, and until when: "16 for B by 12 May"; alone, "for B by 12 May".

    What stands in clumps is bought in these: "clumps of 4 for B by 12 May".
    """
    look = looks(plan)
    for planting, number in zip(item.plantings, item.needed.terms, strict=False):  # of seed no plantings are told
        day = dates_of(plan, planting_of(plan, planting)).in_ground
        words = _("for {letter}") if day is None else _("for {letter} by {day}")
        told = words.format(letter=look[planting].letter, day=short_day(day) if day else "")
        clump = clump_of(plan, planting)
        told = told if clump == 1 else _("clumps of {clump} {told}").format(clump=grouped(clump), told=told)
        count = grouped(number.whole or 0)
        yield told if len(item.plantings) == 1 else _("{count} {told}").format(count=count, told=told)


_KINDS: Mapping[GoodKind, str] = {
    GoodKind.SEED: _("seed"),
    GoodKind.PLANT: _("plants"),
    GoodKind.TRAY: _("trays"),
    GoodKind.MIX: _("mix for trays"),
    GoodKind.HOOP: _("hoops"),
    GoodKind.CLOTH: _("cloth"),
    GoodKind.FILM: _("clear film"),
    GoodKind.WEIGHT: _("weights or pegs"),
    GoodKind.JUG: _("jugs"),
    GoodKind.COMPOST: _("compost"),
    GoodKind.AMENDMENT: _("amendment"),
    GoodKind.DRIP_LINE: _("drip line"),
    GoodKind.STAKE: _("stakes"),
    GoodKind.STRING: _("string, one for all beds"),
    GoodKind.PEG: _("pegs for kept places"),
    GoodKind.DIBBLE: _("dibble"),
}
