"""The cells, rings and sown bands of a layout as numbers with their workings."""

from collections.abc import Iterator
from fractions import Fraction

from attrs import evolve

from gardenplot.layout.band import band_area
from gardenplot.layout.block import band_width
from gardenplot.layout.block_numbers import block_of
from gardenplot.layout.cells import sub_row_offsets
from gardenplot.layout.grids import radii_of
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
    """How many rings there are, and the plants of each: as many as keep their spacing along the chord."""
    filled = [ring for ring in told.layout.rings if ring.count]
    outer = _outer_radius(told)
    yield _how_many_rings(told, outer, len(filled))
    yield told.row_spacing
    parts = []
    for number, ring in enumerate(told.layout.rings):
        if ring.count:
            radius = _radius(told, outer, number, ring.radius)
            whole = worked("ring", Unit.COUNT, "on_a_ring(ring_radius, in_row_spacing)", radius, told.in_row,
                           using=_ON_A_RING, source=Source.CHORDS)  # fmt: skip
            on_drawing = known("ring", ring.count, Unit.COUNT, source=Source.COUNTED)
            parts.append(first_true(ring.count, whole) or on_drawing)
    yield added(told.name, Unit.COUNT, parts, RULES)


def _outer_radius(told: Told) -> Number:
    """The radius of the outer ring: what the bed has round its middle, less the edge distance."""
    edge = told.edge_distance
    if told.bed.diameter is not None:
        across = known("bed_diameter", told.bed.diameter.nm, Unit.SPACING, source=Source.SIZE_OF_BED)
        radius = down("bed_radius", Unit.SPACING, "bed_diameter ÷ 2", across)
    else:
        radii = radii_of(told.bed, 0, told.grid.between, told.grid.in_row)
        radius = known("bed_radius", radii[0] if radii else 0, Unit.SPACING, source=Source.MEASURED)
    return worked("outer_radius", Unit.SPACING, "bed_radius − edge_distance", radius, edge, source=RULES)


def _how_many_rings(told: Told, outer: Number, filled: int) -> Number:
    """As typed, else as many as lie a row spacing apart until less than an in-row spacing is left across.

    Where the middle itself is left, one plant stands in it.
    """
    typed = None
    if told.grid.rows_asked is not None:
        typed = known("rings", told.grid.rows_asked, Unit.COUNT, source=Source.OF_PLANTING)
    room = "(outer_radius − in_row_spacing ÷ 2) ÷ row_spacing + 1"
    whole = down("rings", Unit.COUNT, room.replace("in_row_spacing", told.in_row.name), outer, told.in_row,
                 told.row_spacing)  # fmt: skip
    round_it = evolve(whole, name="rings_round")
    middle = known("in_middle", 1, Unit.COUNT, source=RULES)
    ways = typed, whole, worked("rings", Unit.COUNT, "rings_round + in_middle", round_it, middle, source=RULES)
    on_drawing = known("rings", filled, Unit.COUNT, source=Source.COUNTED)
    return first_true(filled, *ways) or on_drawing


def _radius(told: Told, outer: Number, number: int, drawn_at: int) -> Number:
    """The radius of a ring: so many row spacings inside the outer one."""
    before = known("rings_before", number, Unit.COUNT, source=Source.COUNTED)
    inside = worked("ring_radius", Unit.SPACING, "outer_radius − rings_before × row_spacing", outer, before,
                    told.row_spacing, source=RULES)  # fmt: skip
    ways = (
        evolve(outer, name="ring_radius") if not number else inside,
        known("ring_radius", 0, Unit.SPACING, source=RULES),
    )
    on_drawing = known("ring_radius", drawn_at, Unit.SPACING, source=Source.MEASURED)
    return first_true(drawn_at, *ways) or on_drawing


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
