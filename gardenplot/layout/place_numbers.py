"""Where a block lies, what stands beyond its order, and the other answer for its rows, as numbers with workings."""

from collections.abc import Iterator

from gardenplot.layout.across import row_answers
from gardenplot.layout.bed import Grown, LaidOut
from gardenplot.layout.bed_numbers import grown_in, planted_number
from gardenplot.layout.row_numbers import row_numbers
from gardenplot.layout.value import Layout
from gardenplot.plan import Pattern
from gardenplot.season.orders import Each, sold_number, stand_number
from gardenplot.units import MM
from gardenplot.working import RULES, Number, Rounding, Source, Unit, known, worked


def readings(laid: LaidOut, layout: Layout) -> tuple[Number, Number]:
    """The tape readings between which a block lies: the first as it was typed, or behind the block before it."""
    one = grown_in(laid, layout)
    begins = _begins(laid, one, layout)
    found = next((each for each in row_numbers(laid.bed, one, layout) if each.name == "block"), None)
    block = found or known("block", layout.length, Unit.LENGTH, source=Source.MEASURED)
    return begins, worked("ends", Unit.READING, "begins + block", begins, block, source=RULES)


def _begins(laid: LaidOut, one: Grown, layout: Layout) -> Number:
    if one.planting.start is not None:
        return known("begins", one.planting.start.nm, Unit.READING, source=Source.OF_PLANTING)
    if layout.start == laid.bed.zone[0]:
        margin = known("head_margin", layout.start, Unit.LENGTH, source=Source.OF_BED)
        return worked("begins", Unit.READING, "head_margin", margin, source=RULES)
    gap = laid.bed.gap.nm if laid.bed.gap is not None else 0
    if any(other.end + gap == layout.start for other in laid.layouts if other is not layout):
        before = known("before_ends", layout.start - gap, Unit.READING, source=Source.MEASURED)
        wide = known("bed_gap", gap, Unit.LENGTH, source=Source.OF_BED if gap else Source.NOT_TYPED)
        return worked("begins", Unit.READING, "before_ends + bed_gap", before, wide, source=RULES)
    return known("begins", layout.start, Unit.READING, source=Source.MEASURED)


def answer_numbers(layout: Layout) -> Iterator[Number]:
    """The other answer for rows, and what no rank of the block fills."""
    grid = layout.grid
    has_no_sum = grid.runs_across or not grid.pattern.has_even_rows
    if has_no_sum and grid.pattern is not Pattern.BROADCAST and grid.turn is None:
        yield known("edge", grid.edge, Unit.SPACING, source=Source.MEASURED)
    if grid.pattern is not Pattern.BROADCAST and grid.turn is None and grid.rows:
        for other in row_answers(grid)[1:]:
            width = known("bed_width", grid.width, Unit.SPACING, source=Source.SIZE_OF_BED)
            rows = known("rows_else", other.rows, Unit.COUNT, source=Source.COMPARED)
            apart = known("row_spacing", grid.between_least, Unit.SPACING, source=Source.PACKET)
            yield rows
            yield worked("edge_else", Unit.SPACING, "(bed_width − (rows_else − 1) × row_spacing) ÷ 2", width, rows,
                         apart, rounding=Rounding.DOWN, source=RULES)  # fmt: skip
    last = layout.last_plant
    if grid.pattern in (Pattern.BROADCAST, Pattern.RINGS) or grid.turn is not None or last is None:
        return
    behind = grid.in_row // 2 if grid.pattern is Pattern.CELLS else grid.ends[1]
    ends = known("ends", layout.end, Unit.READING, source=Source.MEASURED)
    stands = known("last_plant", last, Unit.READING, source=Source.MEASURED)
    keeps = known("end_margin", behind, Unit.SPACING, source=RULES)
    over = worked("foot_over", Unit.LENGTH, "ends − last_plant − end_margin", ends, stands, keeps, source=RULES)
    if over.value is not None and over.value > MM:
        yield over


def order_numbers(laid_out: tuple[LaidOut, ...], one: Grown, each: Each | None) -> Iterator[Number]:
    """What must stand for a planting's market day, what stands, and by how much that is more or less."""
    if one.order is None:
        return
    stand = stand_number(one.order, one.crop, each)
    planted = planted_number(laid_out, one.order.id, one.planting.market or 1)
    yield from against(stand, planted)


def against(stand: Number, planted: Number) -> tuple[Number, ...]:
    """What stands against what must: to spare, or short by."""
    if (planted.value or 0) >= (stand.value or 0):
        return stand, planted, worked("over", Unit.COUNT, f"{planted.name} − stand", planted, stand, source=RULES)
    return stand, planted, worked("short", Unit.COUNT, f"stand − {planted.name}", stand, planted, source=RULES)


def to_sell(laid_out: tuple[LaidOut, ...], one: Grown, layout: Layout) -> Number | None:
    """The units that all that stands for a market day leaves to sell."""
    order = one.order
    if order is None:
        return None
    stands = planted_number(laid_out, order.id, one.planting.market or 1)
    return sold_number(order, one.crop, stands, layout.grid.in_row)
