"""Blocks that stand in the shadow of a taller one in their bed."""

from collections.abc import Iterator
from itertools import permutations
from typing import TYPE_CHECKING

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout import Grown, LaidOut, Layout, shade
from gardenplot.plan import Plan
from gardenplot.units import CM

if TYPE_CHECKING:
    from gardenplot.layout.shade import Shaded

_LEAST = 30 * CM
"""Less of a block in the shadow is not told; the limit is ours."""


def find_shade(plan: Plan, laid_out: tuple[LaidOut, ...]) -> Iterator[Finding]:
    """Notes about blocks that lie in the noon shadow of a taller one on days when both stand."""
    for laid in laid_out:
        lie = shade.lie_of(plan, laid.bed) if sum(one.crop.height is not None for one in laid.grown) > 1 else None
        if lie is None:
            continue
        every = zip(laid.grown, laid.layouts, strict=True)
        tall = [(layout, each) for one, layout in every if (each := tall_of(one, layout)) is not None]
        for (layout, one), (beside, other) in permutations(tall, 2):
            found = shade.shaded(lie, one, other)
            if found is not None and found.length >= _LEAST:
                yield _at(layout, beside, found)


def tall_of(one: Grown, layout: Layout) -> "shade.Tall | None":
    """A planting as a block with its height and its days; None where one of these is not known."""
    height, dates = one.crop.height, one.dates
    if one.hardened is not None or height is None or dates.in_ground is None or dates.out is None:
        return None
    return shade.Tall(layout.start, layout.end, height.nm, dates.in_ground, dates.out)


def _at(layout: Layout, beside: Layout, found: "Shaded") -> Finding:
    """The stretch of the other block that lies in the shadow."""
    near = beside.start >= layout.end
    start = beside.start if near else beside.end - found.length
    return Finding(
        Kind.SHADE, layout.bed, beside.planting, layout.planting, start=start, end=start + found.length,
        amount=found.length, limit=found.day.toordinal(),
    )  # fmt: skip
