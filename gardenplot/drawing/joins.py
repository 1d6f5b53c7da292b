"""Where something that is longer than the paper is cut into pieces, so that no mark is cut through."""

from itertools import pairwise

from gardenplot.units import MM

_CLEAR = 6 * MM
"""How far from a mark a cut keeps, where marks leave so much room."""


def cuts(begin: int, end: int, marks: tuple[int, ...], most: int) -> tuple[int, ...]:
    """Where pieces of at most `most` nm begin and end, both ends included: about even, between marks. All in nm."""
    gaps = list(pairwise(sorted({begin, *(at for at in marks if begin < at < end), end})))
    found = [begin]
    while end - found[-1] > most:
        at = found[-1]
        pieces = -(-(end - at) // most)
        even = at + (end - at) // pieces
        near = (_in_gap(gap, even) for gap in gaps if gap[0] <= at + most and gap[1] > at)
        found.append(min((cut for cut in near if at < cut <= at + most), key=lambda cut: abs(cut - even)))
    return (*found, end)


def _in_gap(gap: tuple[int, int], wanted: int) -> int:
    """The place between two marks nearest to the wanted one, clear of both or halfway between them."""
    clear = min(_CLEAR, (gap[1] - gap[0]) // 2)
    return max(gap[0] + clear, min(wanted, gap[1] - clear))
