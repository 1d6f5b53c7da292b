"""The ground round a planting: the blocks beside it on its days, and the room they leave."""

from collections.abc import Collection

from attrs import frozen

from gardenplot.layout.bed import Grown, compete, lay_out_bed
from gardenplot.plan import Plan, Planting, bed_of, crop_of, order_of
from gardenplot.season import counting_site


@frozen
class Ground:
    """The planting zone, the blocks in it from the head on, and the gap kept between blocks, in nm."""

    zone: tuple[int, int]
    blocks: tuple[tuple[int, int], ...]
    gap: int

    def end_of_room(self, start: int) -> int:
        """How far a block that begins at `start` may reach."""
        return min([self.zone[1], *(first - self.gap for first, _last in self.blocks if first >= start)])

    def start_of_room(self, end: int) -> int:
        """How far towards the head a block that ends at `end` may begin."""
        return max([self.zone[0], *(last + self.gap for _first, last in self.blocks if last <= end)])

    def gaps(self) -> tuple[tuple[int, int], ...]:
        """The stretches where a block may stand, from the head on."""
        found, at = [], self.zone[0]
        for first, last in self.blocks:
            end = min(first - self.gap, self.zone[1])
            if end > at:
                found.append((at, end))
            at = max(at, last + self.gap)
        return (*found, (at, self.zone[1])) if at < self.zone[1] else tuple(found)


def ground_for(plan: Plan, planting: Planting, bed_id: str, without: Collection[str] = ()) -> Ground:
    """The ground for a planting in a bed of the plan: all that shares its days there, but itself and some more."""
    bed = bed_of(plan, bed_id)
    order = order_of(plan, planting.order) if planting.order else None
    itself = Grown(planting, crop_of(plan, planting.crop), order, site=counting_site(plan.place))
    laid = lay_out_bed(plan, bed)
    blocks = (
        (layout.start, layout.end)
        for one, layout in zip(laid.grown, laid.layouts, strict=True)
        if layout.planting != planting.id and layout.planting not in without and compete(itself, one)
    )
    return Ground(bed.zone, tuple(sorted(blocks)), bed.gap.nm if bed.gap else 0)
