"""A round bed cut by straight lines, in whole nanometres.

The disc touches x = 0 and y = 0, and its middle may lie on half a nanometre, so all is reckoned twice over:
(2 x - D)^2 + (2 y - D)^2 <= D^2 (equation of a circle). A point on the circle belongs to the bed.
"""

from math import cos, isqrt, sin, tau

Point = tuple[int, int]
Interval = tuple[int, int]
CORNERS = 96
"""Corners of the polygon that a disc is drawn as; it lies within 0.06 % of the radius of the circle."""


def chord(diameter: int, offset: int) -> tuple[Interval, ...]:
    """The tape readings between which the disc holds a line at an offset, rounded inwards; none where it misses.

    The disc is the same either way, so this is also the offsets that it holds at a tape reading.
    """
    square = diameter**2 - (2 * offset - diameter) ** 2
    if square < 0:
        return ()
    root = isqrt(square)
    first, last = (diameter - root + 1) // 2, (diameter + root) // 2
    return ((first, last),) if first <= last else ()


def strip_held(diameter: int, low: int, high: int) -> tuple[Interval, ...]:
    """The tape readings at which the disc holds everything from offset `low` to `high`.

    A disc is convex and all its chords have one middle, so that is the chord further out.
    """
    return chord(diameter, max(low, high, key=lambda offset: abs(2 * offset - diameter)))


def corners(diameter: int) -> tuple[Point, ...]:
    """The disc as a polygon to draw, each corner to the nearest nanometre."""
    half = diameter / 2
    turns = (number * tau / CORNERS for number in range(CORNERS))
    return tuple((round(half + half * cos(turn)), round(half + half * sin(turn))) for turn in turns)
