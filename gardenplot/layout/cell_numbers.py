"""The cells, rings and sown bands of a layout as numbers with their workings."""

from collections.abc import Iterator
from fractions import Fraction

from attrs import evolve

from gardenplot.layout.band import band_area
from gardenplot.layout.block import band_width
from gardenplot.layout.block_numbers import block_of
from gardenplot.layout.cells import sub_row_offsets
from gardenplot.layout.rings import on_ring
from gardenplot.layout.told import Told, counted, down, drawn, first_true, up
from gardenplot.layout.zone import is_plain
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, added, known, worked


def cells(told: Told) -> tuple[Number, ...]:
    """Whole cells across and along, and the plants in them."""
    grid, wanted = told.grid, told.wanted
    across, cell, each = _across(told), _cell(told), _in_each(told)
    if not is_plain(told.bed) or not grid.rows:
        return across, each, counted(told), *block_of(told)
    block = drawn(told)
    along = down("cells_along", Unit.COUNT, f"{block.name} ÷ cell", block, cell)
    needed = None
    if wanted is not None and told.is_for_order:
        asked = up(
            "cells_along", Unit.COUNT, f"{wanted.name} ÷ (cells_across × plants_per_cell)", wanted, across, each
        )
        if asked.value is not None and asked.value * across_value(across, each) == told.layout.plants:
            along = asked
            needed = worked("block", Unit.LENGTH, "cells_along × cell", along, cell, source=RULES)
    plants = worked(told.name, Unit.COUNT, "cells_across × cells_along × plants_per_cell", across, along, each,
                    source=RULES)  # fmt: skip
    if wanted is not None and not told.is_for_order and wanted.value == told.layout.plants:
        plants = evolve(wanted, name=told.name)
        filled = up("whole_cells", Unit.COUNT, f"{told.name} ÷ plants_per_cell", plants, each)
        return across, each, filled, plants, *block_of(told)
    return across, along, each, plants, *block_of(told, needed)


def across_value(across: Number, each: Number) -> Fraction:
    """The plants of one cell's length of bed."""
    return (across.value or Fraction(0)) * (each.value or Fraction(0))


def _cell(told: Told) -> Number:
    source = Source.OF_PLANTING if told.one.planting.cell is not None else RULES
    return known("cell", told.grid.cell, Unit.SPACING, source=source)


def _in_each(told: Told) -> Number:
    source = Source.OF_PLANTING if told.one.planting.plants_per_cell is not None else RULES
    return known("plants_per_cell", told.grid.per_cell, Unit.COUNT, source=source)


def _across(told: Told) -> Number:
    """Cells across the bed: as typed, else as many whole ones as its width holds."""
    grid, cell, width = told.grid, _cell(told), told.bed_width
    if grid.rows_asked == grid.rows:
        return known("cells_across", grid.rows, Unit.COUNT, source=Source.OF_PLANTING)
    keep = known("kept_clear", max(0, grid.edge_least - sub_row_offsets(grid.cell, grid.per_cell)[0]), Unit.SPACING,
                 source=told.edge_distance.source)  # fmt: skip
    return first_true(
        grid.rows,
        down("cells_across", Unit.COUNT, "bed_width ÷ cell", width, cell) if not keep.value else None,
        down("cells_across", Unit.COUNT, "(bed_width − 2 × kept_clear) ÷ cell", width, keep, cell),
        down("cells_across", Unit.COUNT, "bed_width ÷ cell", width, cell),
    ) or known("cells_across", grid.rows, Unit.COUNT, source=Source.COUNTED)


def rings(told: Told) -> Iterator[Number]:
    """Plants of each ring: as many as keep their spacing along the chord."""
    filled = [ring for ring in told.layout.rings if ring.count]
    yield known("rings", len(filled), Unit.COUNT, source=Source.COUNTED)
    yield told.row_spacing
    parts = []
    for ring in filled:
        radius = known("ring_radius", ring.radius, Unit.SPACING, source=Source.MEASURED)
        whole = worked("ring", Unit.COUNT, "on_a_ring(ring_radius, in_row_spacing)", radius, told.in_row,
                       using=_ON_A_RING, source=Source.CHORDS)  # fmt: skip
        on_drawing = known("ring", ring.count, Unit.COUNT, source=Source.COUNTED)
        parts.append(first_true(ring.count, whole) or on_drawing)
    yield added(told.name, Unit.COUNT, parts, RULES)


_ON_A_RING = {"on_a_ring": lambda radius, in_row: Fraction(on_ring(int(radius), int(in_row)))}


def sown_band(told: Told) -> Iterator[Number]:
    """A broadcast band: its width, and its area times its rate."""
    width, edge = told.bed_width, known("edge", told.grid.edge, Unit.SPACING, source=told.edge_distance.source)
    across = worked("band_width", Unit.SPACING, "bed_width − 2 × edge", width, edge, source=RULES)
    across = first_true(band_width(told.grid), across) or known("band_width", band_width(told.grid), Unit.SPACING)
    yield across
    rate, wanted, needed = _rate(told), told.wanted, None
    ways: list[Number] = []
    if wanted is not None and not told.is_for_order:
        ways.append(evolve(wanted, name=told.name))
    elif wanted is not None and is_plain(told.bed) and across.value:
        needed = up("block", Unit.LENGTH, f"{wanted.name} ÷ (band_width × plants_per_area)", wanted, across, rate)
        ways.append(_sown(told, evolve(needed, name="bare_block"), across, rate))
    ways.append(_sown(told, drawn(told), across, rate) if is_plain(told.bed) else _measured(told, rate))
    on_drawing = known(told.name, told.layout.plants, Unit.COUNT, trust=Trust.GOOD, source=Source.COUNTED)
    yield first_true(told.layout.plants, *ways) or on_drawing
    yield from block_of(told, needed)


def _rate(told: Told) -> Number:
    """Plants on an area: the packet's, else one in each in-row x row spacing."""
    typed = told.one.crop.plants_per_area
    if typed is not None:
        return known("plants_per_area", typed.per_nm2, Unit.PER_AREA, source=Source.PACKET)
    spacings = told.in_row, told.row_spacing
    return worked("plants_per_area", Unit.PER_AREA, "1 ÷ (in_row_spacing × row_spacing)", *spacings, source=RULES)


def _sown(told: Told, block: Number, across: Number, rate: Number) -> Number:
    formula = f"{block.name} × band_width × plants_per_area"
    return worked(told.name, Unit.COUNT, formula, block, across, rate, rounding=Rounding.DOWN, trust=Trust.GOOD,
                  source=RULES)  # fmt: skip


def _measured(told: Told, rate: Number) -> Number:
    """In a bed that is no rectangle the ground of the band is measured."""
    first, last = told.bed.zone
    start, end = max(told.layout.start, first), min(told.layout.end, last)
    ground = band_area(told.bed, told.grid.edge, start, max(start, end))
    area = known("band_area", ground, Unit.AREA, source=Source.MEASURED)
    return worked(told.name, Unit.COUNT, "band_area × plants_per_area", area, rate, rounding=Rounding.DOWN,
                  trust=Trust.GOOD, source=RULES)  # fmt: skip
