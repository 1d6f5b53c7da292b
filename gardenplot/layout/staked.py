"""Where the two stakes of a block are driven, and what of it lies beyond them."""

from gardenplot.layout.value import Layout
from gardenplot.plan import Bed


def staked(bed: Bed, layout: Layout) -> tuple[int, int]:
    """The tape readings in nm of a block's two stakes: its ends, none of them beyond the margins of its bed."""
    first, last = bed.zone
    return min(max(layout.start, first), last), max(min(layout.end, last), first)


def beyond(bed: Bed, layout: Layout) -> tuple[int, int]:
    """How much of a block in nm lies before its first stake and behind its last one, since it does not fit."""
    start, end = staked(bed, layout)
    return max(0, start - layout.start), max(0, layout.end - end)
