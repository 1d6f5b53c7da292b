"""Rows across a bed: how many fit, how far apart, how near to the edge.

Rows R = floor((W - 2 e_min) / b) + 1 if W >= 2 e_min, else 0; centred, so that the edge distance is
(W - (R - 1) b) / 2. The least of a packet's range decides how many fit; the rows then spread up to the most.
"""

from math import isqrt

from attrs import frozen

from gardenplot.layout.along import half_spacing
from gardenplot.layout.value import EdgeRule, Grid
from gardenplot.plan import Bed, Crop, Pattern, Planting


@frozen
class RowAnswer:
    """One possible number of rows and the edge distance that it leaves, in nm."""

    rows: int
    edge: int


def rows_that_fit(width: int, edge_least: int, between: int) -> int:
    """Rows that fit across `width` with at least `edge_least` at either side, all in nm."""
    return (width - 2 * edge_least) // between + 1 if width >= 2 * edge_least else 0


def edge_of(width: int, rows: int, between: int) -> int:
    """Edge distance of centred rows in nm, half a nanometre less where it is not whole."""
    return (width - (rows - 1) * between) // 2


def triangular_between(in_row: int) -> int:
    """The least row spacing at which no plant of a shifted row is nearer than `in_row`: s sqrt(3) / 2, rounded up."""
    shift = in_row // 2
    square = in_row * in_row - shift * shift
    root = isqrt(square)
    return root if root * root == square else root + 1


def grid_of(bed: Bed, crop: Crop, planting: Planting) -> Grid:
    """How a planting's plants stand across its bed: what it asks for itself, else what its crop and bed say."""
    in_row = (planting.in_row or crop.in_row).nm
    margin = planting.end_margin.nm if planting.end_margin is not None else None
    spacing = [length.nm for length in planting.row_spacing or crop.row_spacing]
    edge_least, rule = _edge_least(bed, crop, planting, spacing[0])
    triangular = planting.pattern is Pattern.TRIANGULAR
    least = triangular_between(in_row) if triangular else spacing[0]
    most = least if triangular else spacing[-1]
    width = bed.width.nm
    fit = rows_that_fit(width, edge_least, least)
    rows = fit if planting.rows is None else min(planting.rows, width // least + 1)
    between = _spread(width, edge_least, rows, least, most)
    if planting.pattern is Pattern.BROADCAST:
        rows, edge_least = 0, 0 if rule is EdgeRule.HALF_SPACING else edge_least
    return Grid(
        pattern=planting.pattern,
        in_row=in_row,
        between=between,
        between_least=least,
        rows=rows,
        rows_asked=planting.rows,
        edge=edge_of(width, rows, between) if rows else min(edge_least, (width + 1) // 2),
        edge_least=edge_least,
        edge_rule=rule,
        width=width,
        ends=half_spacing(in_row) if margin is None else (margin, margin),
        end_margin=margin,
    )


def _edge_least(bed: Bed, crop: Crop, planting: Planting, between: int) -> tuple[int, EdgeRule]:
    if planting.edge is not None:
        return planting.edge.nm, EdgeRule.PLANTING
    if crop.edge is not None:
        return crop.edge.nm, EdgeRule.CROP
    if bed.edge is not None:
        return bed.edge.nm, EdgeRule.BED
    return between // 2, EdgeRule.HALF_SPACING


def _spread(width: int, edge_least: int, rows: int, least: int, most: int) -> int:
    if rows < 2:
        return least
    room = (width - 2 * edge_least) // (rows - 1)
    return max(least, min(most, room))


def rows_are_closer(grid: Grid, packet: int) -> bool:
    """Whether rows stand closer than the packet's least, `packet` nm.

    Triangular rows may: no plant is nearer to another than its in-row spacing, if that is the packet's row spacing.
    """
    equidistant = grid.pattern is Pattern.TRIANGULAR and grid.in_row >= packet
    return grid.rows > 1 and grid.between < packet and not equidistant


def row_answers(grid: Grid) -> tuple[RowAnswer, ...]:
    """The number of rows as it is and the nearest other one, since the edge distance decides more than all else.

    The other is what half the row spacing at the edge would give, if that differs; else one row more where the bed
    is wide enough for it, else one row less.
    """
    taken = RowAnswer(grid.rows, grid.edge)
    half = rows_that_fit(grid.width, grid.between_least // 2, grid.between_least)
    more = grid.rows + 1
    if grid.rows and half and half != grid.rows:
        other = half
    elif grid.rows * grid.between_least <= grid.width:
        other = more
    else:
        other = grid.rows - 1
    if not grid.rows or other < 1:
        return (taken,)
    return taken, RowAnswer(other, edge_of(grid.width, other, grid.between_least))
