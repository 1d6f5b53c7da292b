"""What is left of a bed, and the plants that stand for an order, as numbers with their workings."""

from collections.abc import Iterable
from datetime import date

from attrs import evolve

from gardenplot.layout.bed import Grown, LaidOut, stood
from gardenplot.layout.leftover import free_on, standing
from gardenplot.layout.row_numbers import plants_number, row_numbers
from gardenplot.layout.value import Layout
from gardenplot.plan import Bed
from gardenplot.working import RULES, Number, Source, Unit, added, known, worked


def left_number(laid: LaidOut, day: date | None) -> Number:
    """What is left of a bed on a day: what can be used of it, less the blocks and the gaps between them.

    Where blocks lie on one another or past a margin that does not add up; then the pieces themselves are added.
    """
    free, layouts = free_on(laid, day), standing(laid, day)
    usable = usable_number(laid.bed)
    blocks = _summed("blocks", Unit.LENGTH, [_block(laid, layout) for layout in layouts])
    gaps = _summed("gaps", Unit.LENGTH, [_piece("gap", one.length) for one in free.gaps])
    formula = "usable − blocks − gaps" if free.gaps else "usable − blocks"
    terms = (usable, blocks, gaps) if free.gaps else (usable, blocks)
    left = worked("left", Unit.LENGTH, formula, *terms, source=RULES)
    if left.value != free.total:
        left = added("left", Unit.LENGTH, [_piece("piece", one.length) for one in free.leftover], Source.MEASURED)
    return evolve(left, label=laid.bed.name)


def pieces_number(laid: LaidOut, day: date | None) -> Number:
    """In how many pieces that is."""
    return known("pieces", len(free_on(laid, day).leftover), Unit.COUNT, source=Source.COUNTED)


def usable_number(bed: Bed) -> Number:
    """The length of a bed between its margins."""
    first, last = bed.zone
    long = known("bed_length", bed.length.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    head = known("head_margin", first, Unit.LENGTH, source=Source.OF_BED)
    foot = known("foot_margin", bed.length.nm - last, Unit.LENGTH, source=Source.OF_BED)
    return worked("usable", Unit.LENGTH, "bed_length − head_margin − foot_margin", long, head, foot, source=RULES)


def _block(laid: LaidOut, layout: Layout) -> Number:
    one = grown_in(laid, layout)
    found = next((each for each in row_numbers(laid.bed, one, layout) if each.name == "block"), None)
    block = found or known("block", layout.length, Unit.LENGTH, source=Source.MEASURED)
    return evolve(block, label=one.crop.name)


def _piece(name: str, length: int) -> Number:
    return known(name, length, Unit.LENGTH, source=Source.MEASURED)


def grown_in(laid: LaidOut, layout: Layout) -> Grown:
    """The planting of a layout."""
    return next(each for each in laid.grown if each.planting.id == layout.planting)


def standing_number(laid: LaidOut, layout: Layout) -> Number:
    """The plants that stand of a planting: as they were counted last, else those of its rows."""
    one = grown_in(laid, layout)
    plants, stands = plants_number(laid.bed, one, layout), stood(one, layout)
    number = plants if stands == layout.plants else known("stands", stands, Unit.COUNT, source=Source.CAME_ABOUT)
    return evolve(number, label=f"{one.crop.name}, {laid.bed.name}")


def planted_number(laid_out: Iterable[LaidOut], order: str, market: int) -> Number:
    """The plants that stand for a market day of an order, of all that is planted for it."""
    parts = [
        standing_number(laid, layout)
        for laid in laid_out
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if one.order is not None and one.order.id == order and (one.planting.market or 1) == market
    ]
    return _summed("planted_for", Unit.COUNT, parts)


def wished_number(laid_out: Iterable[LaidOut], wish: str) -> Number:
    """The plants that stand for a wish, at all its times."""
    parts = [
        standing_number(laid, layout)
        for laid in laid_out
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if one.planting.wish == wish
    ]
    return _summed("planted_for", Unit.COUNT, parts)


def total_number(laid_out: tuple[LaidOut, ...], crop: str | None = None) -> Number:
    """All plants of some beds, or those of one crop."""
    parts = [
        evolve(
            plants_number(laid.bed, one, layout),
            label=one.crop.name if len(laid_out) == 1 else f"{one.crop.name}, {laid.bed.name}",
        )
        for laid in laid_out
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if not layout.holds_trays and crop in (None, layout.crop)
    ]
    return _summed("plants", Unit.COUNT, parts)


def _summed(name: str, unit: Unit, parts: list[Number]) -> Number:
    """All of some numbers; of one alone nothing has to be added up."""
    return evolve(parts[0], name=name, label="") if len(parts) == 1 else added(name, unit, parts, RULES)
