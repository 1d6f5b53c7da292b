"""Plants along a row, with half a spacing at both ends of the block, and the length that a number of plants needs.

Every plant owns its in-row spacing s, half on each side: n = floor(l / s), the first s/2 inside the block. In
staggered and triangular blocks every second row is moved by s/2 and holds floor(l / s - 1/2).
"""

from gardenplot.plan import Pattern

_SHIFTED = (Pattern.STAGGERED, Pattern.TRIANGULAR)


def shifted_rows(pattern: Pattern, rows: int) -> int:
    """How many of the rows are moved by half a spacing: every second one of a staggered block."""
    return rows // 2 if pattern in _SHIFTED else 0


def is_shifted(pattern: Pattern, row: int) -> bool:
    """Whether row number `row`, counted from 0 at the base line, is moved by half a spacing."""
    return pattern in _SHIFTED and row % 2 == 1


def capacity(pattern: Pattern, rows: int, in_row: int, length: int) -> int:
    """Plants that a block of `length` nm holds in all its rows."""
    if length <= 0:
        return 0
    shifted = shifted_rows(pattern, rows)
    straight_row = length // in_row
    shifted_row = (2 * length - in_row) // (2 * in_row) if 2 * length >= in_row else 0
    return (rows - shifted) * straight_row + shifted * shifted_row


def length_for(pattern: Pattern, rows: int, in_row: int, plants: int) -> int:
    """The least length in nm that holds so many plants; 0 for none, and for a bed without rows."""
    if plants <= 0 or rows <= 0:
        return 0
    ranks, rest = divmod(plants, rows)
    straight = rows - shifted_rows(pattern, rows)
    if rest == 0:
        return ranks * in_row + (0 if straight == rows else (in_row + 1) // 2)
    if rest <= straight:
        return (ranks + 1) * in_row
    return (ranks + 1) * in_row + (in_row + 1) // 2


def share_out(pattern: Pattern, rows: int, plants: int) -> tuple[int, ...]:
    """So many plants given to the rows, nearest to the head first, a rank that is not full from the base line on."""
    if rows <= 0:
        return ()
    ranks, rest = divmod(plants, rows)
    straight = rows - shifted_rows(pattern, rows)
    counts, given = [], [0, 0]
    for row in range(rows):
        shifted = is_shifted(pattern, row)
        room = max(0, rest - straight) if shifted else min(rest, straight)
        counts.append(ranks + (1 if given[shifted] < room else 0))
        given[shifted] += 1
    return tuple(counts)


def first_in_row(pattern: Pattern, row: int, in_row: int) -> int:
    """How far inside the block the first plant of a row stands, in nm."""
    return in_row if is_shifted(pattern, row) else in_row // 2
