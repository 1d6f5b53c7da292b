"""What is in store of what is needed, counted as it is needed.

Seed in store whose own germination is known counts for as many seeds of the packet's as would give the same plants.
Of trays those that what was sown fills are there, however few are in store. Of hoops, jugs and compost nobody says
what size those in store have: they are there once, and what one size takes is not there for the next. Formulas:
common practice, no source.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from attrs import evolve

from gardenplot.plan import Crop, Good, GoodKind, Plan, crop_of
from gardenplot.supplies.needed import Need, sum_of
from gardenplot.supplies.raising import PACKET, part
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, added, known, larger, worked

STORE = Source.STORE
WITHOUT_SIZE = frozenset((GoodKind.HOOP, GoodKind.JUG, GoodKind.COMPOST))
"""What is listed by size or by name, though nobody tells these of what is in store."""


def goods_for(plan: Plan, need: Need) -> tuple[Good, ...]:
    """The goods of a plan that are what is needed."""
    return tuple(good for good in plan.goods if _is_of(good, need))


def sold_good(goods: Sequence[Good]) -> Good | None:
    """The one of them whose pack is known, else the first."""
    return next((good for good in goods if good.pack is not None), goods[0] if goods else None)


def in_store(plan: Plan, needs: tuple[Need, ...], goods: Iterable[Good], taken: tuple[Number, ...] = ()) -> Number:
    """What is in store of those goods, and of the place's own tools, less what others took of it before."""
    first, unit = needs[0], needs[0].number.unit
    stores = [*_own_tools(plan, first), *(_stored(plan, good, unit) for good in goods if good.in_store)]
    return _less(_or_filled(added("in_store", unit, stores, STORE), needs), taken)


def _less(stored: Number, taken: tuple[Number, ...]) -> Number:
    if not taken or not stored.terms:
        return stored
    on_hand, others = evolve(stored, name="on_hand"), added("for_others", stored.unit, taken, RULES)
    return worked("in_store", stored.unit, "larger(on_hand − for_others, 0)", on_hand, others,
                  using={"larger": larger}, source=RULES)  # fmt: skip


def _or_filled(stored: Number, needs: Iterable[Need]) -> Number:
    """What is in store; of trays at least as many as what was sown fills."""
    there = [need for need in needs if need.filled is not None and need.filled.is_there]
    if not there:
        return stored
    on_hand, filled = evolve(stored, name="on_hand"), sum_of("filled_already", there)
    return worked("in_store", Unit.COUNT, "larger(on_hand, filled_already)", on_hand, filled,
                  using={"larger": larger}, source=RULES)  # fmt: skip


def is_own_tool(plan: Plan, kind: GoodKind, size: int | None) -> bool:
    """Whether a spacing tool or a row marker is on the place's list of what its tools can mark."""
    of_kind = {GoodKind.SPACER: plan.place.markable_in_row, GoodKind.ROW_MARKER: plan.place.markable_rows}
    return any(one.nm == size for one in of_kind.get(kind, ()))


def _own_tools(plan: Plan, need: Need) -> Iterator[Number]:
    if is_own_tool(plan, need.kind, need.size):
        yield known("own_tool", 1, Unit.COUNT, source=Source.OF_PLACE)


def _is_of(good: Good, need: Need) -> bool:
    """Whether a good is what is needed."""
    if good.kind is not need.kind:
        return False
    match need.kind:
        case GoodKind.SEED | GoodKind.PLANT:
            return good.crop == need.crop
        case GoodKind.TRAY:
            return good.cells == need.size
        case GoodKind.CLOTH | GoodKind.FILM:
            return need.good is not None and good.width == need.good.width
        case GoodKind.TAPE:
            return good.length is not None and good.length.nm >= (need.size or 0)
        case GoodKind.ROW_MARKER | GoodKind.SPACER:
            return good.length is not None and good.length.nm == need.size
        case GoodKind.AMENDMENT:
            return good.name == need.name
        case _:
            return True


def in_unit(good: Good | None, unit: Unit, *, stored: bool = False) -> Fraction | int | None:
    """A pack, or what is in store, in a unit; None where it is sold by another."""
    amount = None if good is None else good.in_store if stored else good.pack
    if amount is None:
        return None
    by_unit: Mapping[Unit, Fraction | int | None] = {
        Unit.COUNT: amount.pieces, Unit.LENGTH: amount.nm, Unit.BULK: amount.nm3, Unit.VOLUME: amount.nm3,
        Unit.GRAMS: amount.grams,
    }  # fmt: skip
    return by_unit.get(unit)


def _stored(plan: Plan, good: Good, unit: Unit) -> Number:
    """What is in store of a good; of seed with a germination of its own, as much as the packet's would have to be."""
    label = good.name or (str(good.year) if good.year else "")
    crop = crop_of(plan, good.crop) if good.crop else None
    there, packet = _there(good, crop, unit), crop.germination if crop else None
    if good.germination is None or packet is None:
        return evolve(there, label=label)
    as_good = worked(
        "usable_store", unit, "in_store × store_germination ÷ germination", there,
        part("store_germination", good.germination, source=STORE), part("germination", packet, source=PACKET),
        rounding=Rounding.DOWN if unit is Unit.COUNT else Rounding.NONE, source=RULES,
    )  # fmt: skip
    return evolve(as_good, label=label)


def _there(good: Good, crop: Crop | None, unit: Unit) -> Number:
    """So much of it; seed that was weighed is counted, and seed that was counted is weighed, where that is needed."""
    there = known("in_store", in_unit(good, unit, stored=True), unit, source=STORE)
    if there.value is not None or crop is None or crop.seeds_per_gram is None:
        return there
    each = known("seeds_per_gram", crop.seeds_per_gram, Unit.PER_GRAM, source=PACKET)
    if unit is Unit.COUNT:
        weight = known("store_weight", in_unit(good, Unit.GRAMS, stored=True), Unit.GRAMS, source=STORE)
        return worked("in_store", unit, "store_weight × seeds_per_gram", weight, each, rounding=Rounding.DOWN,
                      trust=Trust.GOOD, source=RULES)  # fmt: skip
    seeds = known("store_seeds", in_unit(good, Unit.COUNT, stored=True), Unit.COUNT, source=STORE)
    return worked("in_store", unit, "store_seeds ÷ seeds_per_gram", seeds, each, trust=Trust.GOOD, source=RULES)
