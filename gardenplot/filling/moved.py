"""The stakes that are not where they were: a block's ends before and after a change."""

from attrs import frozen

from gardenplot.layout import Layout, lay_out_plan
from gardenplot.plan import Plan


@frozen
class Moved:
    """An end of a planting's block in a bed, its old and its new tape reading in nm; None where no stake is."""

    bed: str
    planting: str
    begins: bool
    old: int | None
    new: int | None


def moved(before: Plan, after: Plan) -> tuple[Moved, ...]:
    """All ends of blocks that are not where they were, bed by bed and from the head on; no others."""
    was, now = _blocks(before), _blocks(after)
    found = []
    for bed, planting in dict.fromkeys((*was, *now)):
        old, new = was.get((bed, planting)), now.get((bed, planting))
        for begins in (True, False):
            one = Moved(bed, planting, begins, _end(old, begins), _end(new, begins))
            if one.old != one.new:
                found.append(one)
    order = {bed.id: number for number, bed in enumerate(after.beds)}
    return tuple(sorted(found, key=lambda one: (order[one.bed], one.new if one.new is not None else one.old or 0)))


def _end(layout: Layout | None, begins: bool) -> int | None:
    if layout is None:
        return None
    return layout.start if begins else layout.end


def _blocks(plan: Plan) -> dict[tuple[str, str], Layout]:
    return {(layout.bed, layout.planting): layout for laid in lay_out_plan(plan) for layout in laid.layouts}
