"""The row lines of a grid along the bed, from the offset of the first one on."""

from gardenplot.layout.along import first_in_row
from gardenplot.layout.value import Ends, Line
from gardenplot.plan import Pattern


def steps_of(pattern: Pattern, rows: int, between: int, twin: int = 0) -> tuple[int, ...]:
    """How far each row line, or each row of cells, lies from the first."""
    if pattern is Pattern.TWIN:
        return tuple(row // 2 * between + row % 2 * twin for row in range(rows))
    return tuple(row * between for row in range(rows))


def row_lines(pattern: Pattern, offsets: tuple[int, ...], strip: int, in_row: int, ends: Ends) -> tuple[Line, ...]:
    """Lines of plants at some offsets, with a strip of ground at either side."""
    keeps = pattern.staggers
    firsts = [first_in_row(pattern, number, in_row, ends) for number in (0, 1)]
    return tuple(
        Line(offset, offset - strip, offset + strip, in_row, ends, firsts[number % 2], keeps)
        for number, offset in enumerate(offsets)
    )


def cell_lines(tops: tuple[int, ...], cell: int, first: int = 0) -> tuple[Line, ...]:
    """Lines of cells that begin at some offsets."""
    return tuple(Line(top, top, top + cell, cell, (0, cell), first, keeps_phase=True, reach=cell) for top in tops)
