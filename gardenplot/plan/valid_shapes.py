"""What holds for the shape of a bed and for what stands in it: one shape, simple and with an area."""

from gardenplot.plan.checks import SMALLEST, Says, above_nothing
from gardenplot.plan.shapes import FOLLOWS, inside_of, reach_of, shapes_of
from gardenplot.plan.simple import fault_of
from gardenplot.plan.value import Bed, Box, Obstacle
from gardenplot.units import LONGEST
from gardenplot.words import _

MOST_CORNERS = 500


def shape_says(bed: Bed) -> Says:
    """What is wrong with the shape of a bed."""
    first, *others = shapes_of(bed) or ("",)
    for other in others:
        yield other, _("a bed has one shape: {first} or {other}, not both").format(first=first, other=other)
    if bed.outline:
        yield from _outline(bed)
    yield from above_nothing("diameter", bed.diameter)
    if bed.box is not None:
        yield from ((f"box.{name}", says) for name, says in _box(bed.box))
    if bed.map_length is not None:
        yield from _map_length(bed)
    yield from _reach(bed)


def _reach(bed: Bed) -> Says:
    """Nothing is said twice; only beside an outline may length and width stand, if they are right."""
    for name, said in FOLLOWS.items():
        if getattr(bed, name) in (None, ()):
            continue
        for typed in (one for one in said if getattr(bed, one).text and name != "outline"):
            yield name, _("the bed's {said} follows from it: leave {said} out").format(said=typed)
        if (bed.length.nm, bed.width.nm) != reach_of(bed):
            yield name, _("length and width are not what it reaches: leave them out")


def _map_length(bed: Bed) -> Says:
    yield from above_nothing("map_length", bed.map_length)
    if bed.slope is None:
        yield "map_length", _('a length on the map needs a slope, for example "12 %"')
    for shape in shapes_of(bed):
        yield "map_length", _("follows from {field}: leave it out").format(field=shape)
    if bed.length.nm > LONGEST:
        yield "map_length", _("the bed is longer than 10 km on the ground")


def _box(box: Box) -> Says:
    for name in ("length", "width", "board", "post"):
        yield from above_nothing(name, getattr(box, name))
    least = min(inside_of(box))
    if least < SMALLEST:
        yield "board", _("boards of {board} leave nothing between them").format(board=box.board)
    elif box.post is not None and 2 * box.post.nm >= least:
        yield "post", _("posts of {post} leave nothing between them").format(post=box.post)


_OUTLINE_FAULTS = {
    "points": _("an outline needs three points or more"),
    "repeat": _("a point stands twice in the outline"),
    "area": _("the outline has no area"),
    "crossing": _("the outline crosses or touches itself"),
}


def _outline(bed: Bed) -> Says:
    points = [(x.nm, y.nm) for x, y in bed.outline]
    if len(points) > MOST_CORNERS:
        yield "outline", _("more than {most} points").format(most=MOST_CORNERS)
        return
    fault = fault_of(points)
    if fault is not None:
        yield "outline", _OUTLINE_FAULTS[fault]


def obstacle_says(obstacle: Obstacle) -> Says:
    """What is wrong with something that stands in a bed."""
    for name in ("diameter", "length", "width"):
        yield from above_nothing(name, getattr(obstacle, name))
    sides = (obstacle.length, obstacle.width)
    if (obstacle.diameter is None) == (None in sides) or (obstacle.diameter and any(sides)):
        yield "diameter", _("either a diameter, or a length and a width")
    if any(row < 1 for row in obstacle.rows):
        yield "rows", _("rows are counted from 1")
