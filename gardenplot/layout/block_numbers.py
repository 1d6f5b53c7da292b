"""The plants in a row, all plants, and the length of a block in a bed that is a plain rectangle, with their workings.

From an order: plants in a row = stand / rows, up; planted = that x rows; block = that x in-row spacing. From a length
the other way round: in a row = whole part of length / in-row spacing. A row that is moved by half a spacing holds the
whole part of length / spacing - 1/2.
"""

from attrs import evolve

from gardenplot.layout.along import shifted_rows
from gardenplot.layout.told import Told, counted, down, drawn, first_true, up
from gardenplot.plan import Reserved
from gardenplot.working import RULES, Number, Source, Unit, known, larger, worked


def rows_filled(told: Told, rows: Number) -> tuple[Number, ...]:
    """Plants in a row, in a moved one, in all, and the length of the block."""
    for found in (_from_plants(told, rows), _from_length(told, rows)):
        if found and _fits(told, found):
            return found
    plants = counted(told)
    typed = told.wanted
    if typed is not None and not told.is_for_order and typed.value == told.layout.plants:
        plants = evolve(typed, name=told.name)
    return (plants, *block_of(told))


def _fits(told: Told, found: tuple[Number, ...]) -> bool:
    """Whether numbers come to what the layout has: its plants, or more of them where places are left empty."""
    by_name = {one.name: one for one in found}
    plants, block = by_name[told.name].value, by_name["block"].value
    if block != told.layout.length or plants is None:
        return False
    if plants == told.layout.plants:
        return by_name["a_row"].value == max(told.layout.per_row, default=0)
    leaves_some = told.one.planting.reserved is not Reserved.CUT_FIRST and told.inside == told.layout.length
    return leaves_some and plants > told.layout.plants


def _from_plants(told: Told, rows: Number) -> tuple[Number, ...]:
    """Where plants were asked for: shared out to the rows, which gives the length."""
    wanted = told.wanted
    if wanted is None or not rows.value:
        return ()
    row = up("a_row", Unit.COUNT, f"{wanted.name} ÷ rows", wanted, rows)
    moved = None
    parted = _parted(told, rows)
    if parted is not None:
        straight, _half = parted
        moved = up("moved_row", Unit.COUNT, f"({wanted.name} − straight_rows) ÷ rows", wanted, straight, rows)
    plants = evolve(wanted, name=told.name)
    if told.is_for_order:
        plants = _all(told, rows, row, moved)
    needed, others = _needed(told, row, moved), [moved] if moved is not None else _short_rows(told, rows)
    return (row, *others, plants, *_with_slack(told, needed))


def _short_rows(told: Told, rows: Number) -> list[Number]:
    """What rows hold that have a plant less, since not all can have as many, and how many of either there are."""
    counts = [count for count in told.layout.per_row if count]
    if told.wanted is None or told.is_for_order or len({*counts}) != 2:
        return []
    short = down("short_row", Unit.COUNT, f"{told.wanted.name} ÷ rows", told.wanted, rows)
    if short.value != min(counts):
        return []
    rest = f"{told.wanted.name} − rows × short_row"
    whole = worked("whole_rows", Unit.COUNT, rest, told.wanted, rows, short, source=RULES)
    return [short, whole, worked("short_rows", Unit.COUNT, "rows − whole_rows", rows, whole, source=RULES)]


def _from_length(told: Told, rows: Number) -> tuple[Number, ...]:
    """Where a length rules: its whole part by the spacing."""
    block, step = drawn(told), told.in_row
    terms: tuple[Number, ...] = (block, step)
    if told.grid.end_margin is None:
        ranks = f"{block.name} ÷ {step.name}"
        row, half = down("a_row", Unit.COUNT, ranks, *terms), f"{ranks} − ½"
    else:
        ranks, terms = f"({block.name} − 2 × end_margin) ÷ {step.name}", (block, told.end_margin, step)
        row, half = down("a_row", Unit.COUNT, f"{ranks} + 1", *terms), f"{ranks} + ½"
    moved = down("moved_row", Unit.COUNT, half, *terms) if _parted(told, rows) is not None else None
    spread = _spread(told, row)
    plants = _all(told, rows, row, moved)
    whole = known("block", told.layout.length, Unit.LENGTH, source=Source.MEASURED)
    return (*spread, row, *([moved] if moved is not None else []), plants,
            block if block.name == "block" else whole)  # fmt: skip


def _spread(told: Told, row: Number) -> tuple[Number, ...]:
    """What a wider spacing that takes up the remainder could be at most."""
    if told.grid.in_row_least is None or not row.value:
        return ()
    block = drawn(told)
    return (worked("could_spread", Unit.SPACING, f"{block.name} ÷ a_row", block, row, source=RULES),)


def _parted(told: Told, rows: Number) -> tuple[Number, Number] | None:
    """How many rows are not moved, and how many are; None where none is."""
    if not shifted_rows(told.grid.pattern, int(rows.value or 0)):
        return None
    moved = down("moved_rows", Unit.COUNT, "rows ÷ 2", rows)
    return worked("straight_rows", Unit.COUNT, "rows − moved_rows", rows, moved, source=RULES), moved


def _all(told: Told, rows: Number, row: Number, moved: Number | None) -> Number:
    """The plants of all rows."""
    parted = _parted(told, rows)
    if moved is None or parted is None:
        return worked(told.name, Unit.COUNT, "rows × a_row", rows, row, source=RULES)
    formula = "straight_rows × a_row + moved_rows × moved_row"
    return worked(told.name, Unit.COUNT, formula, *parted, row, moved, source=RULES)


def _needed(told: Told, row: Number, moved: Number | None) -> Number:
    """The least length of block that holds so many in a row."""
    step, margin = told.narrow, told.end_margin
    terms: tuple[Number, ...] = (row, step)
    if told.grid.end_margin is None:
        straight, half = "a_row × in_row_spacing", "(moved_row + ½) × in_row_spacing"
    else:
        straight = "2 × end_margin + (a_row − 1) × in_row_spacing"
        half = "2 × end_margin + (moved_row − ½) × in_row_spacing"
        terms = (row, step, margin)
    if moved is None or not moved.value:
        return worked("block", Unit.LENGTH, straight, *terms, source=RULES)
    return worked("block", Unit.LENGTH, f"larger({straight}, {half})", *terms, moved, using={"larger": larger},
                  source=RULES)  # fmt: skip


def _with_slack(told: Told, needed: Number) -> tuple[Number, ...]:
    """The length of the block: what its plants need, with slack, up to a step."""
    planting, block = told.one.planting, needed
    if planting.slack is not None and planting.slack.nm:
        slack = known("block_slack", planting.slack.nm, Unit.LENGTH, source=Source.OF_PLANTING)
        bare = evolve(needed, name="bare_block")
        block = worked("block", Unit.LENGTH, "bare_block + block_slack", bare, slack, source=RULES)
    if planting.round_up_to is not None and planting.round_up_to.nm:
        step = known("block_step", planting.round_up_to.nm, Unit.LENGTH, source=Source.OF_PLANTING)
        long = evolve(block, name="long_block")
        steps = up("block_steps", Unit.COUNT, "long_block ÷ block_step", long, step)
        block = worked("block", Unit.LENGTH, "block_steps × block_step", steps, step, source=RULES)
    return (block,)


def block_of(told: Told, needed: Number | None = None) -> tuple[Number, ...]:
    """The length of the block: what its plants need where that is so, else as it was typed or is drawn."""
    typed = told.one.planting.length is not None
    drawn = known("block", told.layout.length, Unit.LENGTH, source=Source.OF_PLANTING if typed else Source.MEASURED)
    if needed is None:
        return (drawn,)
    return (first_true(told.layout.length, *_with_slack(told, needed)) or drawn,)
