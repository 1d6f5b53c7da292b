"""Where in a bed a crop may stand on its days: covered while it may freeze, and no tender crop in a cold edge.

Nowhere in a bed that cannot be used yet when the crop goes in.
"""

from functools import lru_cache

from gardenplot.layout.cold_edge import Stretch, both, out_of_cold_edges
from gardenplot.plan import Bed, Crop, Plan
from gardenplot.plan.ground import standing_of
from gardenplot.season import Dates
from gardenplot.season.frost import frosty, is_covered, is_tender


def stretches_for(plan: Plan, bed: Bed, crop: Crop, dates: Dates) -> tuple[Stretch, ...]:
    """The stretches of a bed's zone, in tape readings in nm, in one of which a block of a crop must lie."""
    if is_too_early(bed, dates):
        return ()
    covered = under_cover(plan, bed, crop, dates)
    warm = warm_stretches(plan, bed) if is_tender(crop) else ()
    if not covered or not is_tender(crop):
        return covered
    return tuple(both([*covered], [*warm]))


def is_too_early(bed: Bed, dates: Dates) -> bool:
    """Whether something goes in before its bed can be used."""
    return bed.usable_from is not None and dates.in_ground is not None and dates.in_ground < bed.usable_from


def under_cover(plan: Plan, bed: Bed, crop: Crop, dates: Dates) -> tuple[Stretch, ...]:
    """The stretches in which frost finds no crop in the open on its days: under one cover for each time of frost."""
    found = [bed.zone]
    for span in frosty(plan.place, crop, dates):
        over = [one for one in plan.covers if one.bed == bed.id and is_covered(one, span)]
        found = both(found, [(one.start.nm, one.end.nm) for one in over])
    return tuple(found)


@lru_cache(maxsize=256)
def warm_stretches(plan: Plan, bed: Bed) -> tuple[Stretch, ...]:
    """The stretches of a bed's zone that lie in no tunnel's cold edge."""
    return tuple(both([bed.zone], [*out_of_cold_edges(bed, standing_of(plan, bed.id), plan.tunnels)]))
