"""A bed cut into parts for pages of their own, along match lines at round readings.

Each part shows a little of the next ones.

Lengths are whole nanometres in the frame of the bed: along from the head, across from the base line.
"""

from itertools import pairwise

from attrs import evolve, frozen

from gardenplot.layout.zone import clip
from gardenplot.plan.simple import twice_area
from gardenplot.units import CM, FOOT, INCH, MM, M, Units

_STEPS = {
    Units.METRIC: ((M // 2, M // 5, 10 * CM), (CM,), (MM,)),
    Units.FEET_AND_INCHES: ((FOOT,), (INCH,)),
    Units.DECIMAL_FEET: ((FOOT,), (FOOT // 10,)),
}
"""Round steps, those that are as good as each other together; finer ones are for pages that hold no rounder one."""


Corner = tuple[int, int]


@frozen
class Span:
    """A stretch of a bed on one page: what it shows, and the match lines at its ends, None where the bed ends."""

    start: int
    end: int
    before: int | None = None
    after: int | None = None

    @property
    def own(self) -> tuple[int, int]:
        """From where to where a page has the bed for itself."""
        start = self.start if self.before is None else self.before
        return start, self.end if self.after is None else self.after


@frozen
class Tile:
    """A part of a bed on a page of its own, by its number along and across."""

    column: int
    line: int
    along: Span
    across: Span


def cut(length: int, rim: int, room: int, overlap: int, units: Units) -> tuple[Span, ...]:
    """Stretches of a length, with a rim beyond both ends, each of which fits into the room; all in nm.

    Match lines are as far apart as a round step lets them. Beyond each a stretch shows the overlap once more. Neither
    overlap nor rim takes more than a quarter of the room: of a board that is thicker the outer part is left out.
    """
    overlap, rim = min(overlap, room // 4), min(rim, room // 4)
    if length + 2 * rim <= room:
        return (Span(-rim, length + rim),)
    # A match line lies inside the length, also where only its rims are too much for one page.
    most = min(room - overlap - max(overlap, rim), length - 1)
    step = _apart(length, most, units)
    lines = list(range(step, length, step))
    if length + rim - lines[-1] <= overlap:
        # What would be left for a page of its own is on the page before it.
        lines.pop()
    ends: list[int | None] = [None, *lines, None]
    return tuple(
        Span(
            -rim if before is None else before - overlap,
            length + rim if after is None else after + overlap,
            before,
            after,
        )
        for before, after in pairwise(ends)
    )


def _apart(length: int, most: int, units: Units) -> int:
    """How far match lines are apart, at most so much: the roundest step of those that take the fewest pages.

    The parts are as equal as that step lets them be; where it leaves less than half a part for the last page, a
    finer one is taken.
    """
    best = max(1, most)
    for steps in _STEPS[units]:
        found = [_even(length, most, one) for one in steps if one <= most]
        if found:
            best = min(found, key=lambda step: -(-length // step))
            if 2 * ((length - 1) % best + 1) >= best:
                return best
    return best


def _even(length: int, most: int, step: int) -> int:
    """The least multiple of a step that takes no more pages than the largest, which is at most so much."""
    pages = -(-length // (step * (most // step)))
    return step * -(-length // (pages * step))


def tiles(along: tuple[Span, ...], across: tuple[Span, ...], corners: tuple[Corner, ...]) -> tuple[Tile, ...]:
    """The parts in which ground of a bed with such corners lies, along it first and then further from the base line.

    Where no part joins, a part ends at its own ground, without a match line.
    """
    found = {
        (column, line): (one, other)
        for line, other in enumerate(across)
        for column, one in enumerate(along)
        if _has_ground(corners, one, other)
    }
    return tuple(
        Tile(
            column, line,
            _joined(one, (column - 1, line) in found, (column + 1, line) in found),
            _joined(other, (column, line - 1) in found, (column, line + 1) in found),
        )
        for (column, line), (one, other) in found.items()
    )  # fmt: skip


def _has_ground(corners: tuple[Corner, ...], along: Span, across: Span) -> bool:
    """Whether some ground lies between the match lines of a part."""
    turned = tuple((y, x) for x, y in clip(corners, *along.own))
    ground = clip(turned, *across.own)
    return bool(ground) and twice_area(ground) != 0


def _joined(span: Span, before: bool, after: bool) -> Span:
    """A stretch that ends at its match lines where nothing joins it there."""
    if span.before is not None and not before:
        span = evolve(span, start=span.before, before=None)
    if span.after is not None and not after:
        span = evolve(span, end=span.after, after=None)
    return span
