"""A bed cut into parts for pages of their own, along match lines at round readings.

Each part shows a little of the next ones.

Lengths are whole nanometres in the frame of the bed: along from the head, across from the base line.
"""

from itertools import pairwise

from attrs import frozen

from gardenplot.units import CM, FOOT, INCH, MM, M, Units

_STEPS = {
    Units.METRIC: (M // 2, 10 * CM, CM, MM),
    Units.FEET_AND_INCHES: (FOOT, INCH),
    Units.DECIMAL_FEET: (FOOT, FOOT // 10),
}


@frozen
class Span:
    """A stretch of a bed on one page: what it shows, and the match lines at its ends, None where the bed ends."""

    start: int
    end: int
    before: int | None = None
    after: int | None = None


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
    most = room - overlap - max(overlap, rim)
    step = next((one * (most // one) for one in _STEPS[units] if one <= most), max(1, most))
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


def tiles(along: tuple[Span, ...], across: tuple[Span, ...]) -> tuple[Tile, ...]:
    """All parts, along the bed first and then further from the base line."""
    return tuple(
        Tile(column, line, one, other) for line, other in enumerate(across) for column, one in enumerate(along)
    )
