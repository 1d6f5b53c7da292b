"""The grid of a planting in its bed: what it asks for itself, else what its crop and bed say, pattern by pattern."""

from collections.abc import Callable
from itertools import pairwise
from typing import NamedTuple

from attrs import evolve

from gardenplot.layout.across import edge_of, rows_that_fit, triangular_between
from gardenplot.layout.along import half_spacing, shift
from gardenplot.layout.cells import closest, sub_row_offsets
from gardenplot.layout.lines import kinds_of, line_of_cells, steps_of
from gardenplot.layout.rings import inner_radius, ring_radii
from gardenplot.layout.value import EdgeRule, Ends, Grid, Line
from gardenplot.layout.zone import corners_of, is_metric
from gardenplot.plan import Bed, Crop, Direction, Pattern, Planting
from gardenplot.units import CM, INCH

_MOST_A_SIDE = 10


class _Asked(NamedTuple):
    """The lengths in nm that a planting asks for; `margin` is None for half a spacing at both ends."""

    bed: Bed
    planting: Planting
    width: int
    in_row: int
    least: int
    most: int
    edge: int
    rule: EdgeRule
    margin: int | None

    def ends(self, spacing: int) -> Ends:
        """What is kept free at both ends of ranks so far apart."""
        return half_spacing(spacing) if self.margin is None else (self.margin, self.margin)


def grid_of(bed: Bed, crop: Crop, planting: Planting) -> Grid:
    """How a planting's plants stand across its bed."""
    pattern = planting.pattern
    asked = _asked(bed, crop, planting)
    if planting.direction is Direction.ACROSS and pattern.has_even_rows:
        return _cross_rows(asked)
    return _GRIDS.get(pattern, _rows)(asked)


def _asked(bed: Bed, crop: Crop, planting: Planting) -> _Asked:
    in_row = (planting.in_row or crop.in_row).nm
    spacing = planting.row_spacing or crop.row_spacing
    least, most = spacing[0].nm, spacing[-1].nm
    if planting.pattern is Pattern.TRIANGULAR:
        least = most = triangular_between(in_row)
    edge, rule = least_edge(bed, crop, planting)
    margin = planting.end_margin.nm if planting.end_margin is not None else None
    return _Asked(bed, planting, bed.width.nm, in_row, least, most, edge, rule, margin)


def least_edge(bed: Bed, crop: Crop, planting: Planting) -> tuple[int, EdgeRule]:
    """How near to the bed's edge an outer row of a planting may stand, in nm, and who said so.

    Nobody asks for one: half the row spacing. Where that leaves no row, half of the bed: one row, or pair of rows,
    stands on the centre line, as crops are planted whose rows lie further apart than a bed is wide (common practice,
    no source).
    """
    if planting.edge is not None:
        return planting.edge.nm, EdgeRule.PLANTING
    if crop.edge is not None:
        return crop.edge.nm, EdgeRule.CROP
    if bed.edge is not None:
        return bed.edge.nm, EdgeRule.BED
    between = (planting.row_spacing or crop.row_spacing)[0].nm
    in_pair = _in_pair(planting, (planting.in_row or crop.in_row).nm, between)
    half, room = between // 2, bed.width.nm - (in_pair if planting.pattern is Pattern.TWIN else 0)
    return (half, EdgeRule.HALF_SPACING) if 2 * half <= room else (max(0, room // 2), EdgeRule.MIDDLE)


def _in_pair(planting: Planting, in_row: int, between: int) -> int:
    """How far apart the rows of a pair stand, in nm."""
    return planting.twin_spacing.nm if planting.twin_spacing is not None else min(in_row, between // 2)


def _grid(
    asked: _Asked, kinds: tuple[Line, ...] = (), offsets: tuple[int, ...] = (), *, rows: int, rows_asked: int | None,
    edge: int, between: int, rank: int, ends: Ends,
) -> Grid:  # fmt: skip
    """A grid of what was asked for and what came about."""
    return Grid(
        pattern=asked.planting.pattern,
        in_row=asked.in_row,
        between=between,
        between_least=asked.least,
        rows=rows,
        rows_asked=rows_asked,
        edge=edge,
        edge_least=asked.edge,
        edge_rule=asked.rule,
        width=asked.width,
        rank=rank,
        ends=ends,
        end_margin=asked.margin,
        offsets=offsets,
        kinds=kinds,
    )


def _rows(asked: _Asked) -> Grid:
    """Straight, staggered and triangular rows along the bed, centred."""
    width, planting = asked.width, asked.planting
    fit = rows_that_fit(width, asked.edge, asked.least)
    rows = fit if planting.rows is None else min(planting.rows, width // asked.least + 1)
    between = asked.least
    if rows > 1:
        between = max(asked.least, min(asked.most, (width - 2 * asked.edge) // (rows - 1)))
    edge = edge_of(width, rows, between)
    return _along(asked, tuple(range(edge, edge + rows * between, between)), between, planting.rows)


def _along(asked: _Asked, offsets: tuple[int, ...], between: int, rows_asked: int | None) -> Grid:
    """Rows along the bed at some offsets."""
    least, width, ends = asked.edge, asked.width, asked.ends(asked.in_row)
    edge = min(offsets[0], width - offsets[-1]) if offsets else min(least, (width + 1) // 2)
    kinds = kinds_of(asked.planting.pattern, max(0, min(least, edge)), asked.in_row, ends)
    return _grid(
        asked, kinds, offsets, rows=len(offsets), rows_asked=rows_asked, edge=edge, between=between,
        rank=asked.in_row, ends=ends,
    )  # fmt: skip


def _twin_rows(asked: _Asked) -> Grid:
    """Pairs of rows, centred: P = floor((W - 2 e - t) / b) + 1 pairs, b from the middle of a pair to the next."""
    twin = _in_pair(asked.planting, asked.in_row, asked.least)
    room = asked.width - twin
    asked_rows = asked.planting.rows
    pairs = rows_that_fit(room, asked.edge, asked.least) if room >= 0 else 0
    rows = 2 * pairs if asked_rows is None else min(asked_rows, 2 * (room // asked.least + 1) if room >= 0 else 0)
    between = asked.least
    if pairs > 1 and asked_rows is None:
        between = max(asked.least, min(asked.most, (room - 2 * asked.edge) // (pairs - 1)))
    steps = steps_of(Pattern.TWIN, rows, between, twin)
    first = (asked.width - steps[-1]) // 2 if steps else 0
    return evolve(_along(asked, tuple(first + step for step in steps), between, asked_rows), twin=twin)


def _own_offsets(asked: _Asked) -> Grid:
    """Rows where the grower wants them, as far as they lie in the bed; an edge distance only if one was asked for."""
    offsets = tuple(one.nm for one in asked.planting.offsets if 0 <= one.nm <= asked.width)
    steps = [after - one for one, after in pairwise(offsets)]
    own = asked._replace(edge=0) if asked.rule.is_usual else asked
    return _along(own, offsets, min(steps, default=asked.least), len(asked.planting.offsets))


def _cross_rows(asked: _Asked) -> Grid:
    """Rows across the bed, a rank each; the plants of a row are centred between the edges."""
    step, edge = asked.in_row, asked.edge
    moves = asked.planting.pattern is not Pattern.STRAIGHT
    plants = rows_that_fit(asked.width, edge, step)
    span = max(0, plants - 1) * step
    if moves and plants and span + shift(step) + 2 * edge <= asked.width:
        span += shift(step)
    first = (asked.width - span) // 2 if plants else edge
    head, foot = asked.ends(asked.least)
    kinds = tuple(
        Line(0, -head, foot, step, (edge, edge), first + moved, keeps_phase=moves, centred=not moves)
        for moved in ((0, shift(step)) if moves else (0,))
    )
    grid = _grid(
        asked, kinds if plants else (), rows=plants, rows_asked=None, edge=first, between=asked.least,
        rank=asked.least, ends=(head, foot),
    )  # fmt: skip
    return evolve(grid, direction=Direction.ACROSS)


def _cells(asked: _Asked) -> Grid:
    """Whole square cells, centred across the bed; half a plant's own spacing is kept inside every cell."""
    planting = asked.planting
    cell = planting.cell.nm if planting.cell is not None else _usual_cell(asked)
    plants = planting.plants_per_cell or max(1, min(cell // asked.in_row, _MOST_A_SIDE)) ** 2
    inside = sub_row_offsets(cell, plants)[0]
    keep = 0 if asked.rule.is_usual else max(0, asked.edge - inside)
    fit = max(0, asked.width - 2 * keep) // cell
    rows = fit if planting.rows is None else min(planting.rows, asked.width // cell)
    edge = (asked.width - rows * cell) // 2
    offsets = tuple(edge + row * cell for row in range(rows))
    inner = asked._replace(in_row=closest(cell, plants), edge=min(asked.edge, keep + inside))
    grid = _grid(
        inner, (line_of_cells(cell),), offsets, rows=rows, rows_asked=planting.rows, edge=edge + inside,
        between=cell, rank=cell, ends=asked.ends(cell),
    )  # fmt: skip
    return evolve(grid, cell=cell, per_cell=plants)


def _usual_cell(asked: _Asked) -> int:
    """A cell of 12 in where the bed was measured in inches or feet, else of 30 cm."""
    return 30 * CM if is_metric(asked.bed) else 12 * INCH


def _rings(asked: _Asked) -> Grid:
    """Rings round the middle of the bed."""
    radii = radii_of(asked.bed, asked.edge, asked.least, asked.in_row)
    wanted = asked.planting.rows
    rows = len(radii) if wanted is None else min(wanted, len(radii))
    on_mark = asked._replace(margin=0)
    return _grid(
        on_mark,
        rows=rows,
        rows_asked=wanted,
        edge=asked.edge,
        between=asked.least,
        rank=asked.in_row,
        ends=(0, 0),
    )


def radii_of(bed: Bed, edge: int, between: int, in_row: int) -> tuple[int, ...]:
    """The radii of the rings that a bed has room for, from outside in."""
    middle = (bed.length.nm // 2, bed.width.nm // 2)
    inner = bed.diameter.nm // 2 if bed.diameter is not None else inner_radius(middle, corners_of(bed))
    return ring_radii(inner, edge, between, in_row)


def _band(asked: _Asked) -> Grid:
    """A broadcast band between the edge distances that were asked for."""
    least = 0 if asked.rule.is_usual else asked.edge
    return _grid(
        asked._replace(edge=least), rows=0, rows_asked=asked.planting.rows, edge=min(least, (asked.width + 1) // 2),
        between=asked.least, rank=asked.in_row, ends=asked.ends(asked.in_row),
    )  # fmt: skip


_GRIDS: dict[Pattern, Callable[[_Asked], Grid]] = {
    Pattern.TWIN: _twin_rows,
    Pattern.OFFSETS: _own_offsets,
    Pattern.CELLS: _cells,
    Pattern.RINGS: _rings,
    Pattern.BROADCAST: _band,
}
