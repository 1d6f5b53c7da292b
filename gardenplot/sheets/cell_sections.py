"""Square cells: how many, where their sides lie across the bed, and where the plants stand in each."""

from gardenplot.layout import Layout
from gardenplot.layout.cells import sub_row_offsets, sub_rows
from gardenplot.layout.filled import rows_of_cells
from gardenplot.layout.row_ends import block_ground
from gardenplot.layout.staked import staked
from gardenplot.layout.value import Row
from gardenplot.plan import Bed
from gardenplot.sheets.figure_table import table
from gardenplot.sheets.section import Section, measured, offsets, sentence, short
from gardenplot.units import Units
from gardenplot.units.figures import offset, span, tape
from gardenplot.words import _, ngettext

_MOST_PLACES = 4


def cell_parts(bed: Bed, layout: Layout, units: Units) -> list[Section]:
    """The number of cells, the lines between them from the left edge, and the places in a cell."""
    grid = layout.grid
    lines = [*grid.offsets, grid.offsets[-1] + grid.cell]
    size = ngettext(
        "cells of {side}, {count} plant in each: {cells}", "cells of {side}, {count} plants in each: {cells}",
        grid.per_cell,
    )  # fmt: skip
    rows = rows_of_cells(bed, grid, *block_ground(bed, layout))
    cells = _counted(rows)
    said = size.format(side="{side}", count=grid.per_cell, cells=cells)
    return [
        measured(said, side=offset(grid.cell, units)),
        *_left_behind(bed, layout, rows, units),
        sentence(_("sides of the cells:"), 9),
        offsets(lines, grid.width, units),
        _in_a_cell(grid.cell, grid.per_cell, units),
    ]


def _left_behind(bed: Bed, layout: Layout, rows: tuple[Row, ...], units: Units) -> list[Section]:
    """Where the last cells end, if their block does not end there too, and how much of it is left behind them."""
    last = max((run.last + layout.grid.cell for row in rows for run in row.runs if run.count), default=None)
    _start, end = staked(bed, layout)
    if last is None or tape(last, units).number == tape(end, units).number:
        return []
    words = _("cells end at {last}, {left} left after them")
    return [measured(words, last=tape(last, units).number, left=span(end - last, units))]


def _counted(rows: tuple[Row, ...]) -> str:
    """How many cells: along by across where all rows have as many."""
    counts = {row.count for row in rows}
    if len(counts) == 1:
        return _("{along} × {across} cells").format(along=counts.pop(), across=len(rows))
    cells = sum(row.count for row in rows)
    return ngettext("{count} cell", "{count} cells", cells).format(count=cells)


def cell_tables(bed: Bed, layout: Layout, units: Units, most: int) -> list[Section]:
    """Where the rows of cells begin and end along the bed, a table for so many lines; none where all are alike."""
    rows = rows_of_cells(bed, layout.grid, *block_ground(bed, layout))
    if len({row.runs for row in rows}) == 1 and len(rows[0].runs) == 1:
        return []
    lines = []
    for number, row in enumerate(rows, 1):
        for turn, run in enumerate(run for run in row.runs if run.count):
            ends = tape(run.first, units).number, tape(run.last + layout.grid.cell, units).number
            lines.append((f" {number}" if turn == 0 else "", *ends, f" {run.count}"))
    names = (_("row"), _("cells from"), _("to"), _("cells"))
    return [table(names, lines[at : at + most]) for at in range(0, len(lines), most)]


def _in_a_cell(cell: int, plants: int, units: Units) -> Section:
    """The places of a cell: each of its rows from the cell's left side, its plants from the side towards the head."""
    lines = [
        (short(inside, units), _places(cell, count, units))
        for inside, count in zip(sub_row_offsets(cell, plants), sub_rows(plants), strict=True)
    ]
    return table((_("in a cell, from left"), _("plants from its head side")), lines)


def _places(cell: int, count: int, units: Units) -> str:
    if count > _MOST_PLACES:
        first, step = short(cell // (2 * count), units), short(cell // count, units)
        return _("{first}, then every {step}").format(first=first, step=step)
    return "   ".join(short((2 * place + 1) * cell // (2 * count), units) for place in range(count))
