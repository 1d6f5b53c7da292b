"""What the shape of a bed says about its length, its width and its corners, in whole nanometres."""

from collections.abc import Mapping
from math import isqrt, pi

from gardenplot.plan.simple import twice_area
from gardenplot.plan.value import Bed, Box
from gardenplot.units import Share

Point = tuple[int, int]
FOLLOWS: Mapping[str, tuple[str, ...]] = {
    "outline": ("length", "width"),
    "diameter": ("length", "width"),
    "box": ("length", "width"),
    "map_length": ("length",),
}
"""What follows from each field of a bed that says more than itself."""
SHAPES = ("outline", "diameter", "box")
"""The fields without which a bed is a rectangle."""


def shapes_of(bed: Bed) -> tuple[str, ...]:
    """Which of the fields of shape a bed has; a valid bed has one or none."""
    return tuple(name for name in SHAPES if getattr(bed, name) not in (None, ()))


def is_rectangle(bed: Bed) -> bool:
    """Whether a bed is four straight sides and nothing else; a box is, unless posts stand in its corners."""
    return not bed.outline and bed.diameter is None and (bed.box is None or bed.box.post is None)


def reach_of(bed: Bed) -> tuple[int, int]:
    """The length and the width that follow from a bed's shape; those of a rectangle are its own."""
    if bed.outline:
        return max(x.nm for x, _y in bed.outline), max(y.nm for _x, y in bed.outline)
    if bed.diameter is not None:
        return bed.diameter.nm, bed.diameter.nm
    if bed.box is not None:
        return inside_of(bed.box)
    if bed.map_length is not None and bed.slope is not None:
        return on_the_ground(bed.map_length.nm, bed.slope), bed.width.nm
    return bed.length.nm, bed.width.nm


def area_of(bed: Bed) -> int:
    """The ground inside a bed's edge, in nm²; of a round one pi d² / 4."""
    if bed.diameter is not None:
        return round(pi * bed.diameter.nm**2 / 4)
    return twice_area(straight_corners(bed)) // 2


def inside_of(box: Box) -> tuple[int, int]:
    """Length and width between the boards of a box."""
    return box.length.nm - 2 * box.board.nm, box.width.nm - 2 * box.board.nm


def straight_corners(bed: Bed) -> tuple[Point, ...]:
    """The corners of a bed that is not round; those of a box with posts run round each post."""
    if bed.outline:
        return tuple((x.nm, y.nm) for x, y in bed.outline)
    length, width = bed.length.nm, bed.width.nm
    if not posts_of(bed):
        return (0, 0), (length, 0), (length, width), (0, width)
    post = bed.box.post.nm if bed.box and bed.box.post else 0
    right, top = length - post, width - post
    return (
        (post, 0), (right, 0), (right, post), (length, post), (length, top), (right, top),
        (right, width), (post, width), (post, top), (0, top), (0, post), (post, post),
    )  # fmt: skip


def posts_of(bed: Bed) -> tuple[tuple[Point, Point], ...]:
    """The posts in the corners of a boarded box, each from its least to its greatest x and y."""
    if bed.box is None or bed.box.post is None:
        return ()
    post, (length, width) = bed.box.post.nm, (bed.length.nm, bed.width.nm)
    return tuple(((x, y), (x + post, y + post)) for x in (0, length - post) for y in (0, width - post))


def on_the_ground(map_length: int, slope: Share) -> int:
    """Ground distance from map distance, rounded down: m sqrt(1 + p^2) at a rise of p (Pythagoras)."""
    rise, run = slope.part.numerator, slope.part.denominator
    return isqrt(map_length**2 * (rise**2 + run**2) // run**2)


def on_the_map(length: int, slope: Share) -> int:
    """Map distance from ground distance, rounded down: l / sqrt(1 + p^2) at a rise of p (Pythagoras)."""
    rise, run = slope.part.numerator, slope.part.denominator
    return isqrt(length**2 * run**2 // (rise**2 + run**2))


def corners_apart(bed: Bed) -> tuple[int, int] | None:
    """Length and width in nm between the corners by which a bed is squared, or between their posts, or None."""
    if bed.outline or bed.diameter is not None:
        return None
    post = bed.box.post.nm if bed.box and bed.box.post else 0
    return bed.length.nm - 2 * post, bed.width.nm - 2 * post


def diagonal_of(bed: Bed) -> int | None:
    """The diagonal in nm by which a bed of four corners is squared, rounded down; None for any other."""
    apart = corners_apart(bed)
    return None if apart is None else diagonal(*apart)


def ties_of(bed: Bed) -> tuple[tuple[int, int], ...]:
    """How far each corner of an outline lies from both ends of the base line in nm, rounded down (Pythagoras)."""
    along = bed.length.nm
    return tuple((diagonal(x.nm, y.nm), diagonal(along - x.nm, y.nm)) for x, y in bed.outline)


def measured_over(bed: Bed) -> tuple[int, int] | None:
    """Along and across in nm, the longest line measured to square a bed or to tie its corners; None for a disc."""
    if not bed.outline:
        return corners_apart(bed)
    ties = ((max(x.nm, bed.length.nm - x.nm), y.nm) for x, y in bed.outline)
    return max(ties, key=lambda tie: diagonal(*tie))


def diagonal(length: int, width: int) -> int:
    """The diagonal of a rectangle in nm, rounded down (Pythagoras)."""
    return isqrt(length * length + width * width)


def map_length_of(bed: Bed) -> int | None:
    """A bed's length on the map: as it was given, or as it follows from the slope; None without a slope."""
    if bed.slope is None:
        return None
    return bed.map_length.nm if bed.map_length is not None else on_the_map(bed.length.nm, bed.slope)
