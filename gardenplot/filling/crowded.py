"""What loses its ground by an answer: plantings that overlap on their days in one plan and did not in another."""

from collections.abc import Iterator
from itertools import combinations

from gardenplot.layout import LaidOut, compete, lay_out_plan
from gardenplot.plan import Plan


def crowded(before: Plan, after: Plan) -> tuple[str, ...]:
    """The ids of plantings that share ground and days with one that goes in sooner, in the later plan alone."""
    was = lay_out_plan(before)
    same, shared = {*was}, {pair for laid in was for pair in _sharing(laid)}
    found = (pair for laid in lay_out_plan(after) if laid not in same for pair in _sharing(laid))
    return tuple(dict.fromkeys(later for sooner, later in found if (sooner, later) not in shared))


def _sharing(laid: LaidOut) -> Iterator[tuple[str, str]]:
    """The pairs that share ground and days in a bed, the one that goes in sooner first."""
    there = [each for each in zip(laid.grown, laid.layouts, strict=True) if each[0].hardened is None]
    for (one, mine), (other, beside) in combinations(there, 2):
        if mine.start < beside.end and beside.start < mine.end and compete(one, other):
            first, last = one.dates.in_ground, other.dates.in_ground
            turned = first is not None and last is not None and last < first
            yield (mine.planting, beside.planting) if not turned else (beside.planting, mine.planting)
