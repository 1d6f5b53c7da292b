"""The row lines of a grid along the bed: how far each lies from the first, and of what kind they are."""

from functools import lru_cache

from gardenplot.layout.along import first_in_row
from gardenplot.layout.value import Ends, Line
from gardenplot.plan import Pattern


def steps_of(pattern: Pattern, rows: int, between: int, twin: int = 0) -> tuple[int, ...]:
    """How far each row line, or each row of cells, lies from the first."""
    if pattern is Pattern.TWIN:
        return tuple(row // 2 * between + row % 2 * twin for row in range(rows))
    return tuple(row * between for row in range(rows))


@lru_cache(maxsize=256)
def kinds_of(pattern: Pattern, strip: int, in_row: int, ends: Ends) -> tuple[Line, ...]:
    """The kinds of lines of plants, with a strip of ground at either side: two where every second one is moved."""
    moves = pattern.staggers
    firsts = (first_in_row(pattern, number, in_row, ends) for number in range(2 if moves else 1))
    return tuple(Line(0, -strip, strip, in_row, ends, first, moves) for first in firsts)


def line_of_cells(cell: int) -> Line:
    """The only kind of line that cells have: it lies where they begin."""
    return Line(0, 0, cell, cell, (0, cell), 0, keeps_phase=True, reach=cell)
