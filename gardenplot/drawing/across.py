"""Which plantings of other beds lie beside a planting: in the strips under one another, and on the ground.

Only those that stand on some day together, over the same stretch of the tape or of the ground.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import TypeVar

import numpy as np

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.ground import Frame, frames_of
from gardenplot.season import share_days
from gardenplot.units import M

_NEAR = M
"""Beds between which so much ground lies in nm are beside one another still; ours."""
_Box = tuple[float, float, float, float]
_P = TypeVar("_P")


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
    ones, others = ([(each.start, each.end) for each in laid.layouts] for laid in (one, other))
    return tuple(_together(one, ones, other, others, lambda a, b: max(a[0], b[0]) < min(a[1], b[1])))


def _together(
    one: LaidOut, ones: Sequence[_P], other: LaidOut, others: Sequence[_P], beside: Callable[[_P, _P], bool]
) -> Iterator[tuple[str, str]]:
    """Those of two beds whose places, in the order of their plantings, are beside one another on some day."""
    for grown, place in zip(one.grown, ones, strict=True):
        for other_grown, other_place in zip(other.grown, others, strict=True):
            if beside(place, other_place) and share_days(grown.dates, other_grown.dates):
                yield grown.planting.id, other_grown.planting.id


def _on_ground(plan: Plan, laid_out: tuple[LaidOut, ...]) -> Iterator[tuple[str, str]]:
    """Those that lie beside one another on the ground."""
    frames = frames_of(plan)
    boxes = np.array([_box(frames[one.bed.id], 0, one.bed.length.nm, one.bed.width.nm) for one in laid_out])
    left, top, right, bottom = boxes.T
    near = (left[:, None] < right + _NEAR) & (left < right[:, None] + _NEAR)
    near &= (top[:, None] < bottom + _NEAR) & (top < bottom[:, None] + _NEAR)
    for first, second in np.argwhere(np.triu(near, 1)):
        one, other = laid_out[first], laid_out[second]
        yield from _near(one, frames[one.bed.id], other, frames[other.bed.id])


@lru_cache(maxsize=4096)
def _near(one: LaidOut, lies: Frame, other: LaidOut, other_lies: Frame) -> tuple[tuple[str, str], ...]:
    """Those that are near on the ground in two beds that lie there so."""
    return tuple(_together(one, _boxes(one, lies), other, _boxes(other, other_lies), _is_near))


@lru_cache(maxsize=2048)
def _boxes(laid: LaidOut, frame: Frame) -> tuple[_Box, ...]:
    """What each block of a bed takes of the ground."""
    return tuple(_box(frame, layout.start, layout.end, laid.bed.width.nm) for layout in laid.layouts)


def _box(frame: Frame, start: int, end: int, width: int) -> _Box:
    """What a stretch of a bed takes of the ground at most, in nm: left, top, right, bottom."""
    right, down = frame.along
    across, beside = (start * right, end * right), (start * down, end * down)
    aslant, level = -width * down, width * right
    return (
        frame.x + min(across) + min(0, aslant), frame.y + min(beside) + min(0, level),
        frame.x + max(across) + max(0, aslant), frame.y + max(beside) + max(0, level),
    )  # fmt: skip


def _is_near(one: _Box, other: _Box) -> bool:
    (left, top, right, bottom), (its_left, its_top, its_right, its_bottom) = one, other
    level = left < its_right + _NEAR and its_left < right + _NEAR
    return level and top < its_bottom + _NEAR and its_top < bottom + _NEAR
