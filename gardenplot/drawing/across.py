"""Which plantings of other beds lie beside a planting: in the strips under one another, and on the ground.

Only those that stand on some day together, over the same stretch of the tape or of the ground.
"""

from collections.abc import Callable, Iterator
from functools import lru_cache
from itertools import pairwise

import numpy as np

from gardenplot.layout import LaidOut, Layout, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.ground import Frame, frames_of
from gardenplot.season import share_days
from gardenplot.units import M

_NEAR = M
"""Beds between which so much ground lies in nm are beside one another still; ours."""
_Box = tuple[float, float, float, float]


@lru_cache(maxsize=16)
def across(plan: Plan) -> dict[str, tuple[str, ...]]:
    """By the id of a planting those beside it in beds before its own, in the plan's order."""
    found: dict[str, dict[str, None]] = {}
    laid_out = lay_out_plan(plan)
    pairs = [pair for one, other in pairwise(laid_out) for pair in _under(one, other)]
    if plan.ground:
        pairs += _on_ground(plan, laid_out)
    for earlier, later in pairs:
        found.setdefault(later, {})[earlier] = None
    return {one: tuple(others) for one, others in found.items()}


@lru_cache(maxsize=2048)
def _under(one: LaidOut, other: LaidOut) -> tuple[tuple[str, str], ...]:
    """Those that stand under one another in two strips."""
    return tuple(_together(one, other, lambda a, b: max(a.start, b.start) < min(a.end, b.end)))


def _together(one: LaidOut, other: LaidOut, beside: Callable[[Layout, Layout], bool]) -> Iterator[tuple[str, str]]:
    """Those of two beds that are beside one another on some day."""
    for grown, layout in zip(one.grown, one.layouts, strict=True):
        for other_grown, other_layout in zip(other.grown, other.layouts, strict=True):
            if beside(layout, other_layout) and share_days(grown.dates, other_grown.dates):
                yield layout.planting, other_layout.planting


def _on_ground(plan: Plan, laid_out: tuple[LaidOut, ...]) -> Iterator[tuple[str, str]]:
    """Those that lie beside one another on the ground."""
    frames = frames_of(plan)
    boxes = np.array([_box(frames[one.bed.id], 0, one.bed.length.nm, one.bed.width.nm) for one in laid_out])
    left, top, right, bottom = boxes.T
    near = (left[:, None] < right + _NEAR) & (left < right[:, None] + _NEAR)
    near &= (top[:, None] < bottom + _NEAR) & (top < bottom[:, None] + _NEAR)
    for first, second in np.argwhere(np.triu(near, 1)):
        one, other = laid_out[first], laid_out[second]

        def beside(a: Layout, b: Layout, one: LaidOut = one, other: LaidOut = other) -> bool:
            return _is_near(*(_box(frames[laid.bed.id], layout.start, layout.end, laid.bed.width.nm)
                              for laid, layout in ((one, a), (other, b))))  # fmt: skip

        yield from _together(one, other, beside)


def _box(frame: Frame, start: int, end: int, width: int) -> _Box:
    """What a stretch of a bed takes of the ground at most, in nm: left, top, right, bottom."""
    corners = [frame.to_ground(x, y) for x, y in ((start, 0), (end, 0), (start, width), (end, width))]
    across, down = [x for x, _y in corners], [y for _x, y in corners]
    return min(across), min(down), max(across), max(down)


def _is_near(one: _Box, other: _Box) -> bool:
    return all(one[side] < other[side + 2] + _NEAR and other[side] < one[side + 2] + _NEAR for side in range(2))
