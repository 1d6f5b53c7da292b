"""What the shape of a bed is called: its size, its middle, its boards, its slope."""

from collections.abc import Callable

from gardenplot.plan import Bed, Box
from gardenplot.plan.shapes import map_length_of
from gardenplot.units import Units
from gardenplot.units.figures import Figure, offset, tape
from gardenplot.words import _


def size_words(bed: Bed, units: Units, figure: Callable[[int, Units], Figure] = tape) -> str:
    """A bed's reach: "15.00 m × 0.75 m", or "3.00 m round"."""
    if bed.diameter is not None:
        return _("{diameter} round").format(diameter=figure(bed.diameter.nm, units))
    # What follows from a length on the map is no round figure; it is told as the foot stake has it.
    along = tape if bed.map_length is not None else figure
    return f"{along(bed.length.nm, units)} × {figure(bed.width.nm, units)}"


def shape_lines(bed: Bed, units: Units) -> tuple[str, ...]:
    """What a grower must know of a circle, a box or a slope before the first reading, a line each."""
    lines = [] if bed.box is None else [_box_line(bed.box, units)]
    if bed.diameter is not None:
        words = _("centre at {radius}, {radius} from the left edge; radius {radius}")
        lines.append(words.format(radius=tape(bed.diameter.nm // 2, units)))
    if bed.slope is not None:
        on_map, ground = map_words(bed, units), tape(bed.length.nm, units)
        words = _("slope {slope}: {ground} on the ground, {map}")
        lines.append(words.format(slope=bed.slope, ground=ground, map=on_map))
    return tuple(lines)


def _box_line(box: Box, units: Units) -> str:
    outside = f"{tape(box.length.nm, units).number} × {tape(box.width.nm, units)}"
    words = _("boards {board}, outside {outside}; all readings from the inner face")
    return words.format(board=offset(box.board.nm, units), outside=outside)


def map_words(bed: Bed, units: Units) -> str:
    """A bed's length on the map, "19.86 m on the map"; nothing for level ground."""
    length = map_length_of(bed)
    return "" if length is None else _("{length} on the map").format(length=tape(length, units))
