"""The names of an outline's corners beside them in its drawing; those on the base line stand among the stakes."""

from math import hypot

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfgen.canvas import Canvas

from gardenplot.drawing.corner_names import named_corners
from gardenplot.drawing.stakes import Stake
from gardenplot.layout.staked import MOST_STAKED
from gardenplot.plan import Bed
from gardenplot.plan.shapes import Point
from gardenplot.sheets.free_paper import Box, meet
from gardenplot.sheets.paper import FACE
from gardenplot.sheets.render import Frame
from gardenplot.units import MM

BELOW_CORNERS = 9.0
"""Points below an outline for the names of its corners."""
_SIZE, _LARGER = 8, 10
"""Sizes in points of names on a bed sheet, and on the drawing over pages."""
_AWAY = 3.0
"""Points from a corner to its name."""


def labels_above(bed: Bed, driven: tuple[Stake, ...]) -> list[tuple[str, int]]:
    """What stands over the base line, each with its tape reading in nm: stakes, and corners that lie on it."""
    words, corners = {stake.at: [str(stake.number)] for stake in driven}, _corners(bed)
    for number, name in named_corners(bed).items() if corners else ():
        x, y = corners[number]
        if y == 0:
            words.setdefault(x, []).append(name)
    return [(" ".join(said), at) for at, said in sorted(words.items())]


def corners_room(bed: Bed) -> float:
    """Points outside an outline, on each side of it, for the names of its corners."""
    return BELOW_CORNERS if _corners(bed) else 0.0


def draw_corners(page: Canvas, bed: Bed, frame: Frame, *, over_pages: bool = False) -> float:
    """Draw the names of the other corners outside the bed; gives the points of height that they take below it.

    Of a bed `over_pages` those of the base line are drawn too. Elsewhere a name that would stand upon another or upon
    the base line is left out: its neighbours tell which it is.
    """
    corners, taken, line = _corners(bed), list[Box](), frame.place(0, 0)[1]
    size = _LARGER if over_pages else _SIZE
    page.setFont(FACE, size)
    for number, words in named_corners(bed).items() if corners else ():
        before, at, after = corners[number - 1], corners[number], corners[(number + 1) % len(corners)]
        half = pdfmetrics.stringWidth(words, FACE, size) / 2, 0.36 * size
        out = _outward(before, at, after, is_clockwise=_is_clockwise(corners))
        x, y = frame.place(at[0] / MM, at[1] / MM)
        x += out[0] * (_AWAY + half[0])
        y -= out[1] * (_AWAY + half[1])
        box = x - half[0] - 1, y - half[1] - 1, x + half[0] + 1, y + half[1] + 1
        clear = over_pages or (at[1] > 0 and box[3] < line)
        if clear and _is_seen(at, frame) and not any(meet(box, other) for other in taken):
            page.drawCentredString(x, y - half[1], words)
            taken.append(box)
    return corners_room(bed)


def _is_seen(at: Point, frame: Frame) -> bool:
    """Whether a corner lies in the part of the bed that a page shows."""
    window = frame.window
    return window is None or (
        window.left <= at[0] / MM <= window.right and window.top <= at[1] / MM <= window.bottom
    )  # fmt: skip


def _corners(bed: Bed) -> tuple[Point, ...]:
    """The corners that have names."""
    return tuple((x.nm, y.nm) for x, y in bed.outline) if len(bed.outline) <= MOST_STAKED else ()


def _with_neighbours(corners: tuple[Point, ...]) -> list[tuple[Point, Point, Point]]:
    return list(zip((*corners[-1:], *corners[:-1]), corners, (*corners[1:], *corners[:1]), strict=True))


def _is_clockwise(corners: tuple[Point, ...]) -> bool:
    """Whether corners go round with the bed at their right as seen from above, y growing downwards (shoelace)."""
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2), _after in _with_neighbours(corners)) > 0


def _outward(before: Point, at: Point, after: Point, *, is_clockwise: bool) -> tuple[float, float]:
    """The direction of a length of 1 in which a name stands clear of both edges at a corner."""
    one, other = _unit(before, at), _unit(at, after)
    right = (-one[1] - other[1], one[0] + other[0])
    length = hypot(*right) or 1.0
    sign = -1 if is_clockwise else 1
    return sign * right[0] / length, sign * right[1] / length


def _unit(one: Point, other: Point) -> tuple[float, float]:
    along, across = other[0] - one[0], other[1] - one[1]
    length = hypot(along, across)
    return along / length, across / length
