"""Square cells: how many, where their sides lie across the bed, and where the plants stand in each."""

from gardenplot.layout import Layout
from gardenplot.layout.cells import sub_row_offsets, sub_rows
from gardenplot.layout.filled import rows_of_cells
from gardenplot.layout.row_ends import block_ground
from gardenplot.layout.value import Row
from gardenplot.plan import Bed
from gardenplot.sheets.section import Section, offsets, sentence, short, table
from gardenplot.units import Units
from gardenplot.units.figures import offset, tape
from gardenplot.words import _, ngettext

_MOST_PLACES = 4


def cell_parts(bed: Bed, layout: Layout, units: Units) -> list[Section]:
    """The number of cells, the lines between them from the left edge, and the places in a cell."""
    grid = layout.grid
    rows = rows_of_cells(bed, grid, *block_ground(bed, layout))
    lines = [line.low for line in grid.lines] + [grid.lines[-1].high]
    size = ngettext(
        "cells of {side}, {count} plant in each", "cells of {side}, {count} plants in each", grid.per_cell
    )
    said = size.format(side=offset(grid.cell, units), count=grid.per_cell)
    counts = {row.count for row in rows}
    parts = [sentence(f"{said}: {_counted(rows)}"), offsets(lines, grid.width, units)]
    if len(counts) > 1 or any(len(row.runs) > 1 for row in rows):
        parts.append(_row_by_row(rows, grid.cell, units))
    return [*parts, _in_a_cell(grid.cell, grid.per_cell, units)]


def _counted(rows: tuple[Row, ...]) -> str:
    """How many cells: along by across where all rows have as many."""
    counts = {row.count for row in rows}
    if len(counts) == 1:
        return _("{along} × {across} cells").format(along=counts.pop(), across=len(rows))
    cells = sum(row.count for row in rows)
    return ngettext("{count} cell", "{count} cells", cells).format(count=cells)


def _row_by_row(rows: tuple[Row, ...], cell: int, units: Units) -> Section:
    """Where the rows of cells begin and end along the bed."""
    lines = []
    for number, row in enumerate(rows, 1):
        for turn, run in enumerate(run for run in row.runs if run.count):
            ends = tape(run.first, units).number, tape(run.last + cell, units).number
            lines.append((f" {number}" if turn == 0 else "", *ends, f" {run.count}"))
    return table((_("row"), _("cells from"), _("to"), _("cells")), (24, 70, 70, 46), lines)


def _in_a_cell(cell: int, plants: int, units: Units) -> Section:
    """The places of a cell: each of its rows from the cell's left side, its plants from the side towards the head."""
    lines = [
        (short(inside, units), _places(cell, count, units))
        for inside, count in zip(sub_row_offsets(cell, plants), sub_rows(plants), strict=True)
    ]
    return table((_("in a cell, from left"), _("plants from its head side")), (84, 136), lines)


def _places(cell: int, count: int, units: Units) -> str:
    if count > _MOST_PLACES:
        first, step = short(cell // (2 * count), units), short(cell // count, units)
        return _("{first}, then every {step}").format(first=first, step=step)
    return "   ".join(short((2 * place + 1) * cell // (2 * count), units) for place in range(count))
