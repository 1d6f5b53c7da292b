"""Rows across a bed: how many fit, how far apart, how near to the edge.

Rows R = floor((W - 2 e_min) / b) + 1 if W >= 2 e_min, else 0; centred, so that the edge distance is
(W - (R - 1) b) / 2. The least of a packet's range decides how many fit; the rows then spread up to the most.
"""

from itertools import pairwise
from math import isqrt

from attrs import frozen

from gardenplot.layout.value import Grid, Layout
from gardenplot.plan import Crop, Pattern


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


def rows_are_closer(grid: Grid, packet: int) -> bool:
    """Whether rows stand closer than the packet's least, `packet` nm.

    Triangular rows may: no plant is nearer to another than its in-row spacing, if that is the packet's row spacing.
    Cells have no rows of their own.
    """
    equidistant = grid.pattern is Pattern.TRIANGULAR and grid.in_row >= packet
    has_two = (grid.rows > 1 or grid.runs_across) and grid.pattern is not Pattern.CELLS
    return has_two and nearest_rows(grid) < packet and not equidistant


def nearest_rows(grid: Grid) -> int:
    """How far the nearest two rows stand apart, in nm: those of a pair where there are pairs."""
    return min([grid.between, *(after - one for one, after in pairwise(grid.offsets))])


def closer_than_packet(crop: Crop, layout: Layout) -> tuple[int, int]:
    """How much closer than the packet plants stand in the row, and rows to one another, in nm."""
    grid, packet = layout.grid, crop.row_spacing[0].nm
    in_row = max(0, crop.in_row.nm - grid.in_row)
    if grid.pattern is Pattern.BROADCAST or not rows_are_closer(grid, packet):
        return in_row, 0
    return in_row, packet - nearest_rows(grid)


def row_answers(grid: Grid) -> tuple[RowAnswer, ...]:
    """The number of rows as it is and the nearest other one, since the edge distance decides more than all else.

    The other is what half the row spacing at the edge would give, if that differs; else one row more where the bed
    is wide enough for it, else one row less.
    """
    taken = RowAnswer(grid.rows, grid.edge)
    if grid.runs_across or not grid.pattern.has_even_rows:
        return (taken,)
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
