"""Ground given to nothing on a day: what is left, in which pieces, and the gaps kept between blocks."""

from datetime import date, timedelta
from functools import lru_cache

from attrs import frozen

from gardenplot.layout.bed import LaidOut
from gardenplot.layout.value import Layout
from gardenplot.plan import Bed
from gardenplot.season import grown_on


@frozen
class Stretch:
    """A length of bed between two tape readings, in nm."""

    start: int
    end: int

    @property
    def length(self) -> int:
        """Length in nm."""
        return self.end - self.start


@frozen
class Free:
    """What no planting has on a day: the pieces left over and the gaps between blocks, from the head on."""

    leftover: tuple[Stretch, ...]
    gaps: tuple[Stretch, ...]

    @property
    def total(self) -> int:
        """Leftover length in nm, the gaps between blocks not counted."""
        return sum(stretch.length for stretch in self.leftover)


def standing(laid: LaidOut, day: date | None) -> tuple[Layout, ...]:
    """The layouts that have the ground on a day, from the head on; all of them where no day is given."""
    taken = [layout for one, layout in zip(laid.grown, laid.layouts, strict=True) if grown_on(one.dates, day)]
    return tuple(sorted(taken, key=lambda layout: (layout.start, layout.end)))


@lru_cache(maxsize=4096)
def free_on(laid: LaidOut, day: date | None) -> Free:
    """The free ground of a bed on a day."""
    return free_between(laid.bed, standing(laid, day))


def free_between(bed: Bed, layouts: tuple[Layout, ...]) -> Free:
    """The free ground between some blocks of a bed, which run from the head on.

    Free ground between two blocks is a gap, not leftover, where it is no wider than the gap that the bed asks for
    or, if the bed asks for none, too short for one more plant of the wider spaced of its two neighbours.
    """
    leftover: list[Stretch] = []
    gaps: list[Stretch] = []
    at, before = bed.zone[0], 0
    for layout in layouts:
        if not layout.length:
            continue
        if layout.start > at:
            stretch = Stretch(at, min(layout.start, bed.zone[1]))
            is_gap = before and _is_gap(bed, stretch, max(before, layout.grid.in_row))
            (gaps if is_gap else leftover).append(stretch)
        if layout.end > at:
            at, before = layout.end, layout.grid.in_row
    if at < bed.zone[1]:
        leftover.append(Stretch(at, bed.zone[1]))
    return Free(tuple(one for one in leftover if one.length > 0), tuple(one for one in gaps if one.length > 0))


def _is_gap(bed: Bed, stretch: Stretch, in_row: int) -> bool:
    if bed.gap is not None:
        return stretch.length <= bed.gap.nm
    return stretch.length < in_row


@lru_cache(maxsize=2048)
def fullest_day(laid: LaidOut) -> date | None:
    """The first day on which least of the bed is left; None where no planting has a date."""
    days = {one.dates.in_ground for one in laid.grown if one.dates.in_ground}
    ends = (one.dates.out for one in laid.grown if one.dates.in_ground is None)
    days |= {out - timedelta(days=1) for out in ends if out is not None and out > date.min}
    return min(sorted(days), key=lambda day: free_on(laid, day).total, default=None)
