"""Plants along a row, and the length that a number of plants needs, by what is kept free at both ends of a block.

With half a spacing at both ends every plant owns its in-row spacing s, half on each side: n = floor(l / s), the first
s/2 inside the block. With an end margin m, n = floor((l - 2 m) / s) + 1; a margin of nothing plants on the mark. In
staggered and triangular blocks every second row is moved by s/2; with half a spacing it holds floor(l / s - 1/2).
"""

from gardenplot.layout.value import Ends
from gardenplot.plan import Pattern


def shifted_rows(pattern: Pattern, rows: int) -> int:
    """How many of the rows are moved by half a spacing: every second one of a staggered block."""
    return rows // 2 if pattern.staggers else 0


def is_shifted(pattern: Pattern, row: int) -> bool:
    """Whether row number `row`, counted from 0 at the base line, is moved by half a spacing."""
    return pattern.staggers and row % 2 == 1


def half_spacing(in_row: int) -> Ends:
    """Half a spacing at both ends, half a nanometre more at the foot where it is not whole."""
    return in_row // 2, in_row - in_row // 2


def shift(in_row: int) -> int:
    """How far a moved row is moved, in nm: half a spacing, half a nanometre more where it is not whole."""
    return in_row - in_row // 2


def ranks_in(in_row: int, length: int, ends: Ends) -> int:
    """Plants that a row which is not moved holds in `length` nm."""
    free = length - sum(ends)
    return free // in_row + 1 if free >= 0 else 0


def length_of(in_row: int, ranks: int, ends: Ends) -> int:
    """The least length in nm of a row of so many plants."""
    return sum(ends) + (ranks - 1) * in_row if ranks > 0 else 0


def capacity(pattern: Pattern, rows: int, in_row: int, length: int, ends: Ends | None = None) -> int:
    """Plants that a block of `length` nm holds in all its rows."""
    ends = ends or half_spacing(in_row)
    shifted = shifted_rows(pattern, rows)
    straight_row = ranks_in(in_row, length, ends)
    shifted_row = ranks_in(in_row, length - shift(in_row), ends) if shifted else 0
    return (rows - shifted) * straight_row + shifted * shifted_row


def length_for(pattern: Pattern, rows: int, in_row: int, plants: int, ends: Ends | None = None) -> int:
    """The least length in nm that holds so many plants; 0 for none, and for a bed without rows."""
    if plants <= 0 or rows <= 0:
        return 0
    ends = ends or half_spacing(in_row)
    ranks, rest = divmod(plants, rows)
    straight = rows - shifted_rows(pattern, rows)
    in_straight, in_shifted = ranks + (rest > 0), ranks + (rest > straight)
    moved = shift(in_row) + length_of(in_row, in_shifted, ends) if straight < rows and in_shifted else 0
    return max(length_of(in_row, in_straight, ends), moved)


def share_out(pattern: Pattern, rows: int, plants: int) -> tuple[int, ...]:
    """So many plants given to the rows, nearest to the head first, a rank that is not full from the base line on.

    Where all rows of a kind are alike, it is the count for each kind, which rows have by turns.
    """
    if rows <= 0:
        return ()
    ranks, rest = divmod(plants, rows)
    moved = shifted_rows(pattern, rows)
    if not moved:
        return (ranks + 1,) * rest + (ranks,) * (rows - rest) if rest else (ranks,)
    straight = rows - moved
    if rest in (0, straight):
        return ranks + bool(rest), ranks
    in_straight, in_moved = min(rest, straight), max(0, rest - straight)
    return tuple(ranks + (row // 2 < (in_moved if row % 2 else in_straight)) for row in range(rows))


def first_in_row(pattern: Pattern, row: int, in_row: int, ends: Ends | None = None) -> int:
    """How far inside the block the first plant of a row stands, in nm."""
    head, _foot = ends or half_spacing(in_row)
    return head + (shift(in_row) if is_shifted(pattern, row) else 0)
