"""All that a plan needs of what is bought, added up by kind, less what is in store, in packs that a shop sells.

To buy = needed - in store, not less than nothing; packs = ceil(to buy / pack); cost = packs x price. Seed in store
whose own germination is known counts for as many seeds of the packet's as would give the same plants. Plants that are
bought in are needed on the day on which they are set out. Of trays so many are needed as are in use at once, what is
sown together shares them, and those that what was sown fills are there, however few are in store. Formulas: common
practice, no source.
"""

from collections.abc import Iterable, Iterator
from datetime import date
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.layout import Grown, LaidOut, lay_out_bed, lay_out_plan
from gardenplot.plan import Bed, Cover, Crop, Good, GoodKind, Plan, bed_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.plan.shapes import area_of
from gardenplot.supplies.covers import cover_cut, stock_width
from gardenplot.supplies.feeding import fed
from gardenplot.supplies.in_store import WITHOUT_SIZE, goods_for, in_store, in_unit, sold_good
from gardenplot.supplies.jugs import jug_heat
from gardenplot.supplies.needed import Need, Same, sum_of
from gardenplot.supplies.raising import Raising, raised_for, was_sown
from gardenplot.supplies.sown_together import Sown, filled_together, label_together
from gardenplot.supplies.trays import Filled, fullest_day
from gardenplot.supplies.water import bed_water
from gardenplot.working import RULES, Number, Rounding, Source, Unit, added, known, larger, worked

SHOP = Source.SHOP


@frozen
class Asked:
    """What a list is for: some beds, or all; what is sown, covered or set up from one day until another, or ever.

    With a `planting` it is for raising that one alone.
    """

    beds: frozenset[str] = frozenset()
    first: date | None = None
    last: date | None = None
    planting: str | None = None

    def has(self, bed: str) -> bool:
        """Whether a bed is asked for."""
        return not self.beds or bed in self.beds

    def is_on(self, day: date | None) -> bool:
        """Whether a day is; one that is not known is, unless days are asked for."""
        if day is None:
            return self.first is None and self.last is None
        return (self.first is None or self.first <= day) and (self.last is None or day <= self.last)


EVERYTHING = Asked()
"""The whole plan at any time."""


def week_of(day: date, beds: frozenset[str] = frozenset()) -> Asked:
    """The week of a day, from its Monday to its Sunday."""
    monday = day.toordinal() - day.weekday()
    first, last = (date.fromordinal(min(max(1, one), date.max.toordinal())) for one in (monday, monday + 6))
    return Asked(beds, first, last)


@frozen(cache_hash=True)
class Item:
    """One thing to buy or carry: how much is needed, what of it is in store, what lacks, in packs, and their cost.

    `crop` is whose seed or plants it is, `plantings` are those that these are for, in the order of what is needed;
    `size` tells it from others of its kind, the cells of a tray, the length of a hoop or
    a tape, the width of a cloth or what a tool marks in nm, and `name` does where words do: an amendment, what a jug
    holds. `in_all` are the trays that are filled one after another, of which `needed` are in use at once.
    """

    kind: GoodKind
    crop: str | None
    name: str
    size: int | None
    needed: Number
    in_store: Number
    lacking: Number
    packs: Number
    cost: Number
    good: Good | None = None
    plantings: tuple[str, ...] = ()
    in_all: Number | None = None


def shopping(plan: Plan, asked: Asked = EVERYTHING, more: tuple[Need, ...] = ()) -> tuple[Item, ...]:
    """All that is needed for what is asked, and more that others counted, by kind and size, else by the plan."""
    needs: dict[Same, list[Need]] = {}
    set_up = () if asked.planting else _set_up(plan, asked)
    for need in (*_grown(plan, asked), *_trays(plan, asked), *set_up, *more):
        needs.setdefault(need.same, []).append(need)
    order = [*GoodKind]
    shop = Plan(plan.place, crops=plan.crops, goods=plan.goods)
    grouped = sorted(
        needs.items(),
        key=lambda entry: (order.index(entry[0][0]), entry[1][0].is_sized * (entry[1][0].size or 0)),
    )
    return tuple(_items(shop, (tuple(ones) for _same, ones in grouped)))


def _items(shop: Plan, grouped: Iterable[tuple[Need, ...]]) -> Iterator[Item]:
    """Each thing; what is in store once goes to the first of its kind that needs it."""
    taken: dict[GoodKind, tuple[Number, ...]] = {}
    for needs in grouped:
        kind = needs[0].kind
        item = _item(shop, needs, taken.get(kind, ()))
        if kind in WITHOUT_SIZE and item.lacking.value is not None:
            taken[kind] = (*taken.get(kind, ()), _taken(item))
        yield item


def _taken(item: Item) -> Number:
    """What an item takes of what is in store."""
    took = worked("from_store", item.needed.unit, "needed − lacking", item.needed, item.lacking, source=RULES)
    return evolve(took, label=item.name)


def total_cost(items: tuple[Item, ...]) -> Number:
    """What all of a list costs that has a price; how many have none is the list's to say."""
    priced = [evolve(item.cost, label=item.name) for item in items if item.cost.value is not None]
    return added("cost", Unit.MONEY, priced, RULES)


def _grown(plan: Plan, asked: Asked) -> Iterator[Need]:
    """The seed and the plants that are bought; what was sown already needs no seed any more."""
    for laid in _laid_out(plan, asked):
        yield from _grown_in(laid, plan.goods, asked)


def _laid_out(plan: Plan, asked: Asked) -> Iterator[LaidOut]:
    """The beds that are asked for."""
    if not asked.beds:
        return iter(lay_out_plan(plan))
    return (lay_out_bed(plan, bed) for bed in plan.beds if asked.has(bed.id))


@lru_cache(maxsize=1024)
def _grown_in(laid: LaidOut, goods: tuple[Good, ...], asked: Asked) -> tuple[Need, ...]:
    """The seed and the plants that are bought for one bed: an edit has it worked out for its own bed alone."""
    found: list[Need] = []
    for one, made in _raised_in(laid, asked):
        label = _label(one, laid.bed)
        if asked.is_on(one.dates.sow) and not was_sown(one.planting):
            seed = _seed(goods, one.crop, made)
            found += [Need(GoodKind.SEED, seed, one.crop.id, label=label)] if seed is not None else []
        if made.bought is not None and asked.is_on(one.dates.in_ground) and not is_in_ground(one.planting):
            found.append(Need(GoodKind.PLANT, made.bought, one.crop.id, label=label, planting=one.planting.id))
    return tuple(found)


def _raised_in(laid: LaidOut, asked: Asked) -> Iterator[tuple[Grown, Raising]]:
    """The plantings of a bed, or the one that is asked for, and what is raised for each."""
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        if not layout.holds_trays and asked.planting in (None, layout.planting):
            yield one, raised_for(one, layout)


def _label(one: Grown, bed: Bed) -> str:
    return f"{one.crop.name}, {bed.name}"


def _trays(plan: Plan, asked: Asked) -> Iterator[Need]:
    """The trays of each size that are to be filled when asked, with their mix, and those in use beside them when most
    are.
    """
    by_cells: dict[int, list[tuple[str, Filled]]] = {}
    for (_crop, cells, _sow, _out, _was, _which), (label, filled) in _filled(plan, asked).items():
        by_cells.setdefault(cells, []).append((label, filled))
    for cells, ones in by_cells.items():
        day, tray = fullest_day(tuple(filled for _label, filled in ones)), _tray(plan.goods, cells)
        for label, filled in ones:
            at_once = day is not None and filled.are_in_use(day)
            if filled.is_asked or at_once:
                yield _tray_need(cells, label, filled, at_once)
            if filled.is_asked and tray is not None and tray.mix is not None:
                each = known("mix_per_tray", tray.mix.nm3, Unit.BULK, source=SHOP)
                mix = worked("mix", Unit.BULK, "trays × mix_per_tray", filled.number, each, source=RULES)
                yield Need(GoodKind.MIX, mix, label=label)


@lru_cache(maxsize=16_384)
def _tray_need(cells: int, label: str, filled: Filled, at_once: bool) -> Need:
    return Need(GoodKind.TRAY, filled.number, size=cells, label=label, filled=filled, at_once=at_once)


_Batch = tuple[str, int, date | None, date | None, bool, str]
"""What is sown together: crop, cells of a tray, days of sowing and setting out, whether it was sown already; which
planting where no day is known.
"""


def _filled(plan: Plan, asked: Asked) -> dict[_Batch, tuple[str, Filled]]:
    """The trays that are filled for what is asked, by what is sown together; what these are called."""
    batches: dict[_Batch, list[Sown]] = {}
    for laid in _laid_out(plan, asked):
        for batch, sown in _sown_in(laid, asked.planting):
            batches.setdefault(batch, []).append(sown)
    found = {}
    for batch, ones in batches.items():
        _crop, _cells, sow, set_out, was, _which = batch
        filled = Filled(filled_together(ones), sow, set_out, asked.is_on(sow) and not was, is_there=was)
        found[batch] = label_together(ones), filled
    return found


@lru_cache(maxsize=1024)
def _sown_in(laid: LaidOut, planting: str | None) -> tuple[tuple[_Batch, Sown], ...]:
    """What each planting of a bed has sown in trays, or the one that is asked for, and together with what."""
    found = []
    for one, made in _raised_in(laid, Asked(planting=planting)):
        if made.to_sow is not None and made.filled is not None and one.crop.tray_cells is not None:
            days, which = one.dates, one.planting.id if one.dates.sow is None else ""
            batch = one.crop.id, one.crop.tray_cells, days.sow, days.set_out, was_sown(one.planting), which
            found.append((batch, Sown(_label(one, laid.bed), made.to_sow, made.filled, one.crop.tray_cells)))
    return tuple(found)


def _set_up(plan: Plan, asked: Asked) -> Iterator[Need]:
    """What stands and lies in the beds besides plants."""
    for bed in plan.beds:
        if asked.has(bed.id):
            yield from _watered(plan, bed, asked)
    for cover in plan.covers:
        if asked.has(cover.bed) and asked.is_on(cover.on):
            yield from covered(plan, cover)
    for jugs in plan.jugs:
        bed = bed_of(plan, jugs.bed)
        if asked.has(bed.id) and asked.is_on(None):
            yield Need(GoodKind.JUG, jug_heat(bed, jugs).count, name=jugs.volume.text, label=bed.name)
    yield from _fed(plan, asked)


def _seed(goods: tuple[Good, ...], crop: Crop, made: Raising) -> Number | None:
    """Seeds, or their weight where that is how the crop's seed is sold, and what others are counted in as well."""
    ours = [good for good in goods if good.kind is GoodKind.SEED and good.crop == crop.id]
    sold, is_known = sold_good(ours), crop.seeds_per_gram is not None
    weighed = [one for one in ours if (amount := one.pack or one.in_store) and amount.grams is not None]
    return made.weight if sold in weighed and (is_known or len(weighed) == len(ours)) else made.seed


def _tray(goods: tuple[Good, ...], cells: int) -> Good | None:
    return next((good for good in goods if good.kind is GoodKind.TRAY and good.cells == cells), None)


def covered(plan: Plan, cover: Cover) -> Iterator[Need]:
    """The hoops, the cloth, the film and the weights of a cover."""
    bed = bed_of(plan, cover.bed)
    cut = cover_cut(bed, cover)
    if cover.hoop_spacing is not None:
        yield Need(GoodKind.HOOP, cut.count, size=cut.hoop_length, label=bed.name)
    for sheet in cut.sheets:
        sold = stock_width(sheet, plan.goods)
        width = sold.width.nm if sold and sold.width else sheet.width.whole
        name = str(sheet.kind)
        long = worked(name, Unit.LENGTH, f"{name}_length × layers", sheet.length, sheet.layers, source=RULES)
        pieces = sheet.layers.whole or 1
        yield Need(sheet.kind, long, size=width, good=sold, label=bed.name, pieces=pieces)
    if cut.weights is not None:
        yield Need(GoodKind.WEIGHT, cut.weights, label=bed.name)


def _watered(plan: Plan, bed: Bed, asked: Asked) -> Iterator[Need]:
    if bed.drip_lines and asked.is_on(None):
        found = bed_water(plan.place, bed, area_of(bed))
        yield Need(GoodKind.DRIP_LINE, found.line_length, label=bed.name)


def _fed(plan: Plan, asked: Asked) -> Iterator[Need]:
    for feed in plan.feeds if asked.is_on(None) else ():
        kind = GoodKind.COMPOST if feed.depth else GoodKind.AMENDMENT
        for bed in plan.beds:
            if asked.has(bed.id) and (not feed.beds or bed.id in feed.beds):
                yield Need(kind, fed(feed, area_of(bed)), name=feed.name, label=bed.name)


@lru_cache(maxsize=128)
def _item(plan: Plan, needs: tuple[Need, ...], taken: tuple[Number, ...]) -> Item:
    """Needs of the same thing as one; of the plan it takes what is in the shop, so that most edits change no item.

    `taken` is what others of its kind take of what is in store.
    """
    first, unit = needs[0], needs[0].number.unit
    needed = sum_of("needed", [need for need in needs if need.at_once])
    goods = goods_for(plan, first)
    stored = in_store(plan, needs, goods, taken)
    lacking = worked("lacking", unit, "larger(needed − in_store, 0)", needed, stored, source=RULES,
                     using={"larger": larger})  # fmt: skip
    sold = sold_good(goods)
    pack = known("pack", in_unit(sold, unit), unit, source=SHOP)
    packs = worked("packs", Unit.COUNT, "lacking ÷ pack", lacking, pack, rounding=Rounding.UP, source=RULES)
    money = sold.price.money if sold is not None and sold.price is not None else None
    price = known("price", money, Unit.MONEY, source=SHOP)
    return Item(
        first.kind, first.crop, first.name, first.size, needed, stored, lacking, packs,
        worked("cost", Unit.MONEY, "packs × price", packs, price, source=RULES), sold,
        tuple(need.planting for need in needs if need.planting), _in_all(needs),
    )  # fmt: skip


def _in_all(needs: Iterable[Need]) -> Number | None:
    """All trays that are filled when asked; None of what is no tray."""
    filled = [need for need in needs if need.filled is not None and need.filled.is_asked]
    return sum_of("in_all", filled) if filled else None
