"""The rows, plants and length of a block as numbers with their workings, pattern by pattern.

Each formula is the rule that the layout keeps (`across`, `along`, `cross`, `grids`), worked out here once more on the
numbers that were put in, and told only where it comes to what the layout counts. Where no closed formula counts the
plants, in a bed that is no rectangle, with rows that were shifted or turned, or with obstacles in their way, the rows
are added up as they stand on the drawing, and their source says so.
"""

from collections.abc import Callable, Iterator
from functools import lru_cache

from attrs import evolve

from gardenplot.layout.bed import Grown
from gardenplot.layout.block_numbers import block_of, rows_filled
from gardenplot.layout.cell_numbers import cells, rings, sown_band
from gardenplot.layout.cross import in_cross_rows
from gardenplot.layout.told import Told, counted, down, drawn, first_true, row_spacing_most, up
from gardenplot.layout.value import Layout
from gardenplot.layout.zone import is_plain
from gardenplot.plan import Bed, Pattern, Reserved
from gardenplot.working import RULES, Number, Source, Unit, known, smaller, worked


@lru_cache(maxsize=256)
def row_numbers(bed: Bed, one: Grown, layout: Layout) -> tuple[Number, ...]:
    """The numbers of a planting from the plants that an order needs to its plants and the length of its block."""
    told = Told(bed, one, layout)
    sums = _cross if layout.grid.runs_across else _SUMS.get(layout.grid.pattern, _rows)
    if layout.grid.turn is not None:
        sums = _turned
    stand = told.wanted if told.is_for_order else None
    return (*([stand] if stand is not None else []), *sums(told), *_by_phase(told))


def plants_number(bed: Bed, one: Grown, layout: Layout) -> Number:
    """The plants of a layout, or the trays that stand there, with their working."""
    return next(each for each in row_numbers(bed, one, layout) if each.name in ("planted", "trays_there"))


def _rows(told: Told) -> Iterator[Number]:
    """Straight, staggered and triangular rows, pairs of rows, and rows at offsets of the grower's own."""
    rows = _how_many(told)
    yield rows
    if told.grid.rows and told.grid.pattern.has_even_rows:
        yield _edge(told, rows)
    here = sum(1 for row in told.layout.rows if row.count)
    if here < told.grid.rows:
        yield known("rows_here", here, Unit.COUNT, source=Source.COUNTED)
    if not is_plain(told.bed) or not told.grid.rows:
        yield counted(told)
        return
    yield from _with_kept(told, rows_filled(told, rows))


def _how_many(told: Told) -> Number:
    """How many rows: as typed, else as many as the width holds."""
    grid = told.grid
    typed = None
    if grid.rows_asked is not None:
        typed = known("rows", grid.rows_asked, Unit.COUNT, source=Source.OF_PLANTING)
    width, edge, between = told.bed_width, told.edge_distance, told.row_spacing
    if grid.pattern is Pattern.TWIN:
        pairs = down("pairs", Unit.COUNT, "(bed_width − 2 × edge_distance − twin_spacing) ÷ row_spacing + 1",
                     width, edge, twin_number(told), between)  # fmt: skip
        fit = worked("rows", Unit.COUNT, "2 × pairs", pairs, source=RULES)
    else:
        fit = down("rows", Unit.COUNT, "(bed_width − 2 × edge_distance) ÷ row_spacing + 1", width, edge, between)
    at_most = down("rows", Unit.COUNT, "bed_width ÷ row_spacing + 1", width, between)
    on_drawing = known("rows", grid.rows, Unit.COUNT, source=Source.COUNTED)
    ways = (fit,) if typed is None else (typed, at_most)
    return first_true(grid.rows, *ways) or on_drawing


def twin_number(told: Told) -> Number:
    """How far apart the rows of a pair stand: as typed, else as plants in the row, at most half the row spacing."""
    twin = told.grid.twin
    if told.one.planting.twin_spacing is not None:
        return known("twin_spacing", twin, Unit.SPACING, source=Source.OF_PLANTING)
    usual = worked("twin_spacing", Unit.SPACING, "smaller(in_row_spacing, row_spacing ÷ 2)", told.narrow,
                   told.row_spacing, using={"smaller": smaller}, source=RULES)  # fmt: skip
    return first_true(twin, usual) or known("twin_spacing", twin, Unit.SPACING, source=Source.MEASURED)


def _edge(told: Told, rows: Number) -> Number:
    """How far the outer rows are from the edges, when they are centred."""
    grid, width, between = told.grid, told.bed_width, told.row_spacing
    if grid.between != grid.between_least:
        room = "smaller(row_spacing_most, (bed_width − 2 × edge_distance) ÷ (rows − 1))"
        wide = worked("rows_apart", Unit.SPACING, room, row_spacing_most(told), width, told.edge_distance, rows,
                      using={"smaller": smaller}, source=RULES)  # fmt: skip
        spread = known("rows_apart", grid.between, Unit.SPACING, source=Source.MEASURED)
        between = spread if wide.whole != grid.between else wide
    centred = down("edge", Unit.SPACING, f"(bed_width − (rows − 1) × {between.name}) ÷ 2", width, rows, between)
    is_centred = not grid.offsets or grid.offsets[0] == (grid.width - (grid.rows - 1) * grid.between) // 2
    shifted = known("edge", grid.edge, Unit.SPACING, source=Source.SEARCH)
    return (first_true(grid.edge, centred) if is_centred else None) or shifted


def _with_kept(told: Told, found: tuple[Number, ...]) -> Iterator[Number]:
    """The numbers of full rows, less the places that are left empty for what follows; else the rows as they stand.

    Where places are left empty, the rows as they stand are told as well, since their counts are.
    """
    plants = next(one for one in found if one.name == told.name)
    if plants.value == told.layout.plants:
        yield from found
        return
    short = int(plants.value or 0) - told.layout.plants
    answered = told.one.planting.reserved is not Reserved.CUT_FIRST
    if short < 0 or not answered:
        yield from (one for one in found if one.name not in (told.name, "a_row", "moved_row"))
        yield counted(told)
        return
    for one in found:
        if one is plants:
            full = evolve(plants, name="full")
            empty = known("left_empty", short, Unit.COUNT, source=Source.COUNTED)
            yield worked(told.name, Unit.COUNT, "full − left_empty", full, empty, source=RULES)
            yield evolve(counted(told), name="row_by_row")
        else:
            yield one


def _cross(told: Told) -> Iterator[Number]:
    """Rows across the bed: plants in one, how many there are, and all of them."""
    width, edge, step = told.bed_width, told.edge_distance, told.in_row
    straight, moved = in_cross_rows(told.grid)
    room = "(bed_width − 2 × edge_distance) ÷ in_row_spacing"
    row = first_true(straight, down("a_row", Unit.COUNT, f"{room} + 1", width, edge, step))
    other, is_moved = None, moved != straight and len(told.layout.rows) > 1
    if is_moved:
        other = first_true(moved, down("moved_row", Unit.COUNT, f"{room} + ½", width, edge, step))
    if not is_plain(told.bed) or not told.layout.rows or row is None or (is_moved and other is None):
        yield known("rows", len(told.layout.rows), Unit.COUNT, source=Source.COUNTED)
        yield counted(told)
        return
    yield row
    if other is not None:
        yield other
    rows = _ranks(told, row, None if other is None else other)
    yield rows
    yield from _with_kept(told, (*_all_across(told, rows, row, other), *block_of(told)))


def _ranks(told: Told, row: Number, moved: Number | None) -> Number:
    """How many rows lie across: as many as the plants ask for, or as the block holds."""
    count, between, block = len(told.layout.rows), told.row_spacing, drawn(told)
    wanted = told.wanted
    asked = None
    if wanted is not None and moved is None:
        asked = up("rows", Unit.COUNT, f"{wanted.name} ÷ a_row", wanted, row)
    if told.grid.end_margin is None:
        fit = down("rows", Unit.COUNT, f"{block.name} ÷ row_spacing", block, between)
    else:
        free = f"({block.name} − 2 × end_margin) ÷ row_spacing + 1"
        fit = down("rows", Unit.COUNT, free, block, told.end_margin, between)
    return first_true(count, asked, fit) or known("rows", count, Unit.COUNT, source=Source.COUNTED)


def _all_across(told: Told, rows: Number, row: Number, moved: Number | None) -> tuple[Number, ...]:
    """All plants of rows across."""
    if told.wanted is not None and not told.is_for_order and told.wanted.value == told.layout.plants:
        return (evolve(told.wanted, name=told.name),)
    if moved is None:
        return (worked(told.name, Unit.COUNT, "rows × a_row", rows, row, source=RULES),)
    half = down("moved_rows", Unit.COUNT, "rows ÷ 2", rows)
    formula = "(rows − moved_rows) × a_row + moved_rows × moved_row"
    return (worked(told.name, Unit.COUNT, formula, rows, half, row, moved, source=RULES),)


def _turned(told: Told) -> Iterator[Number]:
    """Rows along an edge of the bed: no width of the bed tells how many there are."""
    if told.grid.pattern is not Pattern.CELLS:
        yield known("rows", len(told.layout.rows), Unit.COUNT, source=Source.COUNTED)
    yield counted(told)


def _cells(told: Told) -> Iterator[Number]:
    yield from _with_kept(told, cells(told))


_SUMS: dict[Pattern, Callable[[Told], Iterator[Number]]] = {
    Pattern.CELLS: _cells,
    Pattern.RINGS: rings,
    Pattern.BROADCAST: sown_band,
}


def _by_phase(told: Told) -> Iterator[Number]:
    """What shifting the rows brought, and how far they are turned."""
    turn, gain = told.grid.turn, told.layout.gain
    if turn is not None:
        yield known("rows_turned", abs(turn.degrees), Unit.DEGREES, source=Source.SEARCH)
    if gain is not None:
        plants = known(told.name, told.layout.plants, Unit.COUNT, source=Source.COUNTED)
        centred = known("centred", told.layout.plants - gain, Unit.COUNT, source=Source.COUNTED)
        yield worked("more_by_phase", Unit.COUNT, f"{told.name} − centred", plants, centred, source=Source.SEARCH)
