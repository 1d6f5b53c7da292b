"""What cannot be on the ground: beds that lie on one another, beds that a tunnel's wall runs through.

Only beds that have a place are looked at. Trigonometry works in floats; less than a millimetre counts as nothing.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache

import numpy as np
from attrs import frozen

from gardenplot.findings.finding import Finding, Kind
from gardenplot.layout.zone import corners_of
from gardenplot.plan import Bed, Plan, Standing, Tunnel
from gardenplot.plan.ground import Frame, frame_of
from gardenplot.units import MM

Spot = tuple[float, float]
Shape = tuple[Spot, ...]
Box = tuple[float, float, float, float]
"""The least x and y, and the greatest."""


@frozen
class Placed:
    """A bed that has a place on the ground, with its outer corners there and the box around them in nm."""

    bed: Bed
    frame: Frame
    corners: Shape
    box: Box


def find_on_ground(plan: Plan) -> tuple[Finding, ...]:
    """What stands against the places of beds on the ground, in the order of the beds."""
    return _found(plan.beds, plan.ground, plan.tunnels)


@lru_cache(maxsize=64)
def _found(beds: tuple[Bed, ...], ground: tuple[Standing, ...], tunnels: tuple[Tunnel, ...]) -> tuple[Finding, ...]:
    frames = {one.bed: frame_of(one) for one in ground}
    placed = [_placed(bed, frames[bed.id]) for bed in beds if bed.id in frames]
    overlaps = (found for one, other in _near(placed) for found in _overlap(one, other))
    walls = (found for one in placed for tunnel in tunnels for found in _through(one, tunnel))
    return (*overlaps, *walls)


def find_about(plan: Plan, bed_id: str) -> tuple[Finding, ...]:
    """What stands against the place of one bed, told along its own tape."""
    frames, beds = {one.bed: frame_of(one) for one in plan.ground}, {bed.id: bed for bed in plan.beds}
    if bed_id not in frames:
        return ()
    one = _placed(beds[bed_id], frames[bed_id])
    others = (_placed(bed, frames[bed.id]) for bed in plan.beds if bed.id in frames and bed.id != bed_id)
    overlaps = (found for other in others if _are_near(one, other) for found in _overlap(one, other))
    return (*overlaps, *(found for tunnel in plan.tunnels for found in _through(one, tunnel)))


def _near(placed: list[Placed]) -> Iterator[tuple[Placed, Placed]]:
    """Pairs whose boxes share ground, in the order of the beds."""
    if len(placed) < 2:
        return
    left, top, right, bottom = np.array([one.box for one in placed]).T
    wide = np.minimum(right[:, None], right) - np.maximum(left[:, None], left)
    high = np.minimum(bottom[:, None], bottom) - np.maximum(top[:, None], top)
    for one, other in np.argwhere(np.triu((wide >= MM) & (high >= MM), 1)).tolist():
        yield placed[one], placed[other]


def _are_near(one: Placed, other: Placed) -> bool:
    (left, top, right, bottom), (left2, top2, right2, bottom2) = one.box, other.box
    return min(right, right2) - max(left, left2) >= MM and min(bottom, bottom2) - max(top, top2) >= MM


@lru_cache(maxsize=1024)
def _placed(bed: Bed, frame: Frame) -> Placed:
    corners = tuple(frame.to_ground(x, y) for x, y in footprint(bed))
    return Placed(bed, frame, corners, _box(corners))


@lru_cache(maxsize=256)
def footprint(bed: Bed) -> Shape:
    """The outer corners of a bed in its own frame, in nm; those of a box go round its boards."""
    if bed.box is None:
        return corners_of(bed)
    board, (length, width) = bed.box.board.nm, (bed.length.nm, bed.width.nm)
    return (-board, -board), (length + board, -board), (length + board, width + board), (-board, width + board)


def _overlap(one: Placed, other: Placed) -> Iterator[Finding]:
    """The ground that two beds share, told along the tape of the first."""
    beside = tuple(one.frame.from_ground(x, y) for x, y in other.corners)
    parts = [_shared(part, piece) for part in pieces(footprint(one.bed)) for piece in pieces(beside)]
    shared = [spot for part in parts if _area(part) > MM * MM for spot in part]
    if not shared:
        return
    start, low, end, high = _box(shared)
    deep = round(min(end - start, high - low))
    if deep >= MM:
        yield _told(Kind.ON_ANOTHER_BED, one.bed, other.bed.id, (start, end), deep)


def _through(one: Placed, tunnel: Tunnel) -> Iterator[Finding]:
    """A bed that lies partly in a tunnel: how far it sticks out, and over which stretch of its tape."""
    frame, (length, width) = frame_of(tunnel), (tunnel.length.nm, tunnel.width.nm)
    walls = tuple(
        one.frame.from_ground(*frame.to_ground(x, y)) for x, y in ((0, 0), (length, 0), (length, width), (0, width))
    )
    inside = [_shared(part, walls) for part in pieces(footprint(one.bed))]
    if not any(_area(part) > MM * MM for part in inside):
        return
    beyond = {
        corner: max(-x, x - length, -y, y - width)
        for corner, (x, y) in ((each, frame.from_ground(*each)) for each in one.corners)
    }
    out = round(max(beyond.values()))
    if out >= MM:
        stretch = [one.frame.from_ground(*corner)[0] for corner, by in beyond.items() if by >= MM]
        yield _told(Kind.THROUGH_A_WALL, one.bed, tunnel.id, (min(stretch), max(stretch)), out)


def _told(kind: Kind, bed: Bed, lies_on: str, stretch: tuple[float, float], amount: int) -> Finding:
    start, end = max(0, round(stretch[0])), min(bed.length.nm, round(stretch[1]))
    return Finding(kind, bed.id, lies_on=lies_on, start=start, end=end, amount=amount)


def _box(corners: Sequence[Spot]) -> Box:
    xs, ys = [x for x, _y in corners], [y for _x, y in corners]
    return min(xs), min(ys), max(xs), max(ys)


def _area(corners: Sequence[Spot]) -> float:
    """The area inside, above nothing where the corners go round clockwise on the drawing (shoelace formula)."""
    pairs = zip(corners, (*corners[1:], *corners[:1]), strict=True)
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs) / 2


@lru_cache(maxsize=512)
def pieces(corners: Shape) -> tuple[Shape, ...]:
    """An outline as convex pieces, all going round the same way: itself, else triangles (ear clipping)."""
    left = list(corners if _area(corners) > 0 else corners[::-1])
    if all(_side(left[at - 2], left[at - 1], left[at]) >= 0 for at in range(len(left))):
        return (tuple(left),)
    found: list[Shape] = []
    while len(left) > 3:
        at = next((number for number in range(len(left)) if _is_ear(left, number)), 0)
        found.append((left[at - 1], left[at], left[(at + 1) % len(left)]))
        del left[at]
    return (*found, tuple(left))


def _is_ear(corners: list[Spot], at: int) -> bool:
    """Whether a corner can be cut off: it points outwards and no other corner lies in what is cut."""
    before, corner, after = corners[at - 1], corners[at], corners[(at + 1) % len(corners)]
    if _side(before, corner, after) <= 0:
        return False
    sides = ((before, corner), (corner, after), (after, before))
    return not any(
        all(_side(one, other, spot) >= 0 for one, other in sides)
        for spot in corners
        if spot not in (before, corner, after)
    )


def _side(one: Spot, other: Spot, spot: Spot) -> float:
    return (other[0] - one[0]) * (spot[1] - one[1]) - (other[1] - one[1]) * (spot[0] - one[0])


def _shared(piece: Shape, other: Shape) -> Shape:
    """What two convex pieces share (Sutherland and Hodgman's clipping)."""
    kept = list(piece)
    for one, two in zip(other, (*other[1:], *other[:1]), strict=True):
        before, kept = kept, []
        for spot, after in zip(before, [*before[1:], *before[:1]], strict=True):
            here, there = _side(one, two, spot), _side(one, two, after)
            if here >= 0:
                kept.append(spot)
            if (here >= 0) != (there >= 0):
                part = here / (here - there)
                kept.append((spot[0] + part * (after[0] - spot[0]), spot[1] + part * (after[1] - spot[1])))
    return tuple(kept)
