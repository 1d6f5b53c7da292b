"""Whether a closed outline is simple: it has an area, repeats no point and nowhere crosses or touches itself."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from operator import itemgetter

Point = tuple[int, int]
_Side = tuple[Point, Point]
"""A side from the end with the lesser x, or with the lesser y where it runs straight across the bed."""


def fault_of(outline: Sequence[Point]) -> str | None:
    """What is wrong with an outline in nm: "points", "repeat", "area" or "crossing"; None if nothing is."""
    if len(outline) < 3:
        return "points"
    if len(set(outline)) < len(outline):
        return "repeat"
    if twice_area(outline) == 0:
        return "area"
    return "crossing" if _crosses(outline) else None


def twice_area(outline: Sequence[Point]) -> int:
    """Twice the area inside, exactly (shoelace formula)."""
    pairs = zip(outline, [*outline[1:], outline[0]], strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs))


def _crosses(outline: Sequence[Point]) -> bool:
    """Whether sides meet anywhere but at the corner they share; no corner may stand twice.

    A line moves over the outline and keeps the sides that it cuts in order (Shamos and Hoey, Geometric intersection
    problems, 1976). Two sides that cross are neighbours just before; a side that only touches does so at its corner,
    where the line finds it. The line leans a little, so that it meets corners of the same x one by one, by their y.
    """
    cut: list[_Side] = []
    around = zip([outline[-1], *outline[:-1]], outline, [*outline[1:], outline[0]], strict=True)
    for before, corner, after in sorted(around, key=itemgetter(1)):
        begun = _begun(corner, before, after)
        first, end = _place_of(corner, cut)
        folded = len(begun) == 2 and _turn(corner, begun[0][1], begun[1][1]) == 0
        if folded or end - first != 2 - len(begun):
            return True
        cut[first:end] = begun
        new_neighbours = {first, first + len(begun)} - {0, len(cut)}
        if any(_cross(cut[number - 1], cut[number]) for number in new_neighbours):
            return True
    return False


def _begun(corner: Point, before: Point, after: Point) -> list[_Side]:
    """The sides that begin at a corner, from below."""
    below, above = (before, after) if _turn(corner, before, after) > 0 else (after, before)
    return [(corner, far) for far in (below, above) if far > corner]


def _place_of(corner: Point, cut: list[_Side]) -> tuple[int, int]:
    """Where the sides through a corner begin and end among sides in order from below."""

    def height(side: _Side) -> int:
        return _turn(side[1], side[0], corner)

    return bisect_left(cut, 0, key=height), bisect_right(cut, 0, key=height)


def _turn(a: Point, b: Point, c: Point) -> int:
    """Which way a path from a over b to c turns: above nothing to the left, below nothing to the right."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _cross(one: _Side, other: _Side) -> bool:
    """Whether two sides cross between their ends."""
    (a, b), (c, d) = one, other
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0
