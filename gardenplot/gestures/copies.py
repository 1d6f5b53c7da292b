"""Plantings copied by key: what was copied stands again in the first gap after it that holds it."""

from collections.abc import Iterator, Sequence

from attrs import evolve, frozen

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import kept_without_order, layout_in, size_kept
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.together import try_copies
from gardenplot.layout import Layout, ground_for
from gardenplot.layout.bed import grown_of
from gardenplot.layout.block import length_at, sized
from gardenplot.plan import Plan, planting_of
from gardenplot.units.figures import span
from gardenplot.words import ngettext


@frozen
class _Place:
    """A place to try: the number of the bed of the first block, and by how many nm all of them are shifted."""

    bed: int
    by: int


def try_next_gap(plan: Plan, plantings: Sequence[str]) -> Trial:
    """Copies of plantings in the first gap after them that holds them: in their bed, those below, then from the top.

    They keep their distances. Raises PlanError where no gap holds them.
    """
    blocks = sorted((layout_in(plan, one) for one in plantings), key=lambda one: (_bed_at(plan, one), one.start))
    ids = [one.planting for one in blocks]
    for place in _places(plan, blocks):
        further = place.bed - _bed_at(plan, blocks[0])
        beds = {one.planting: plan.beds[_bed_at(plan, one) + further].id for one in blocks}
        try:
            trial = try_copies(plan, ids, beds, place.by)
        except PlanError:
            continue
        if trial.can_be:
            return trial
    length = max(one.end for one in blocks) - min(one.start for one in blocks)
    sentence = ngettext("no gap holds a copy of {length}", "no gap holds copies of {length} in all", len(ids))
    raise PlanError(sentence.format(length=span(length, plan.place.units)))


def _bed_at(plan: Plan, block: Layout) -> int:
    return next(number for number, bed in enumerate(plan.beds) if bed.id == block.bed)


def _places(plan: Plan, blocks: Sequence[Layout]) -> Iterator[_Place]:
    """All places where one of the blocks would begin with a gap, in the order in which they are tried."""
    first, count = _bed_at(plan, blocks[0]), len(plan.beds)
    spread = _bed_at(plan, blocks[-1]) - first
    home = sorted({one.by for one in _places_in(plan, blocks, first)})
    yield from (_Place(first, by) for by in home if by > 0)
    for step in range(1, count):
        bed = (first + step) % count
        if bed + spread < count:
            yield from (_Place(bed, by) for by in sorted({one.by for one in _places_in(plan, blocks, bed)}))
    yield from (_Place(first, by) for by in home if by < 0)


def _places_in(plan: Plan, blocks: Sequence[Layout], bed: int) -> Iterator[_Place]:
    further = bed - _bed_at(plan, blocks[0])
    least = min(one.start for one in blocks)
    for one in blocks:
        planting, there = planting_of(plan, one.planting), plan.beds[_bed_at(plan, one) + further]
        kept = size_kept(planting, one.length, plan.place.units) | kept_without_order(plan, planting)
        grown = grown_of(plan, evolve(planting, id="", **kept))
        size = sized(there, grown.crop, grown.planting, grown.order)
        ground = ground_for(plan, grown.planting, there.id)
        for start, end in ground.gaps():
            # Without this each of a thousand gaps that are too short would be tried with all of the plan.
            room = end - start + ground.gap
            if start - one.start >= -least and length_at(there, grown.crop, grown.planting, size, start) <= room:
                yield _Place(bed, start - one.start)
