"""The shape of a bed as it is typed: one kind of shape takes the place of another in one edit.

A box is "2.4 m by 1.2 m, boards 4 cm, posts 9 cm": its size outside, its boards, and its posts if it has any.
"""

import re
from typing import Any

from attrs import evolve

from gardenplot.errors import LengthError, PlanError
from gardenplot.plan import Bed, Box, Plan, bed_of
from gardenplot.plan.edits import change_bed
from gardenplot.plan.shapes import reach_of, shapes_of
from gardenplot.units import Length, length_of, parse_length, parse_share
from gardenplot.words import _

BY = " by "
BOX_EXAMPLE = _("2.4 m by 1.2 m, boards 4 cm, posts 9 cm")
_NO_SHAPE: dict[str, Any] = {"outline": (), "diameter": None, "box": None, "map_length": None}
_TYPE_INSTEAD = {
    "outline": _("this bed has an outline: type its Outline, for example 0 m by 0 m; 8 m by 0 m; 8 m by 1 m"),
    "diameter": _("this bed is round: type its Diameter, for example 3 m"),
    "box": _("this bed is a boarded box: type its Box, for example {example}").format(example=BOX_EXAMPLE),
}


def give_shape(plan: Plan, bed_id: str, **shape: Any) -> Plan:
    """Give a bed a shape in place of the one that it has; length and width follow. Raises PlanError."""
    changes = _NO_SHAPE | shape
    length, width = reach_of(evolve(bed_of(plan, bed_id), **changes))
    return change_bed(plan, bed_id, **changes, length=Length(length, ""), width=Length(width, ""))


def take_shape(plan: Plan, bed_id: str, name: str) -> Plan:
    """Make a bed the rectangle that it reached, if the shape of that name is the one that it has."""
    bed, units = bed_of(plan, bed_id), plan.place.units
    if name not in shapes_of(bed):
        return plan
    length, width = (length_of(nm, units) for nm in (bed.length.nm, bed.width.nm))
    return change_bed(plan, bed_id, **_NO_SHAPE, length=length, width=width)


def type_side(plan: Plan, bed_id: str, name: str, length: Length) -> Plan:
    """Give a rectangle another length or width; a length on the ground takes the place of one on the map.

    Raises PlanError where the bed has a shape that they follow from.
    """
    for shape in shapes_of(bed_of(plan, bed_id)):
        raise PlanError(_TYPE_INSTEAD[shape])
    return change_bed(plan, bed_id, **{name: length}, **({"map_length": None} if name == "length" else {}))


def type_diameter(plan: Plan, bed_id: str, diameter: Length | None) -> Plan:
    """Make a bed round; without a diameter it becomes the square round it. Raises PlanError."""
    if diameter is None:
        return take_shape(plan, bed_id, "diameter")
    return give_shape(plan, bed_id, diameter=diameter)


def box_text(plan: Plan, bed_id: str) -> str:
    """A bed's box as it is typed; empty for any other bed."""
    box = bed_of(plan, bed_id).box
    if box is None:
        return ""
    posts = "" if box.post is None else ", " + _("posts {post}").format(post=box.post)
    return f"{box.length}{BY}{box.width}, " + _("boards {board}").format(board=box.board) + posts


def type_box(plan: Plan, bed_id: str, text: str) -> Plan:
    """Give a bed another box; fields of a file that are not known stay with it. An empty text leaves its inside.

    Raises LengthError or PlanError.
    """
    if not text.strip():
        return take_shape(plan, bed_id, "box")
    before = bed_of(plan, bed_id).box
    return give_shape(plan, bed_id, box=evolve(_box(text), unknown=before.unknown if before else ()))


def _box(text: str) -> Box:
    pattern = r"(?P<length>.+?) by (?P<width>.+?), *boards (?P<board>.+?)(?:, *posts (?P<post>.+))?"
    match = re.fullmatch(pattern, text.strip())
    if match is None:
        raise PlanError(
            _("“{typed}” is no box: write it like {example}").format(typed=text.strip()[:40], example=BOX_EXAMPLE)
        )
    length, width, board = (parse_length(match[name]) for name in ("length", "width", "board"))
    return Box(length, width, board, parse_length(match["post"]) if match["post"] else None)


def type_slope(plan: Plan, bed_id: str, text: str) -> Plan:
    """Give a bed another slope; a length on the map stays and the ground follows, level again the ground stays.

    Raises PlanError.
    """
    bed = bed_of(plan, bed_id)
    if not text.strip():
        return change_bed(plan, bed_id, slope=None, **_measured_on_the_ground(plan, bed))
    try:
        slope = parse_share(text)
    except LengthError:
        raise PlanError(
            _("“{typed}” is no slope: write the rise over the distance on the map like 12 %, up to 100 %").format(
                typed=text.strip()[:40]
            )
        ) from None
    if bed.map_length is None:
        return change_bed(plan, bed_id, slope=slope)
    length, _width = reach_of(evolve(bed, slope=slope))
    return change_bed(plan, bed_id, slope=slope, length=Length(length, ""))


def type_map_length(plan: Plan, bed_id: str, length: Length | None) -> Plan:
    """Give a sloping rectangle its length on the map, from which that on the ground follows.

    Without one the ground stays as it is. Raises PlanError on level ground, and where the bed has a shape that its
    length follows from.
    """
    bed = bed_of(plan, bed_id)
    if length is None:
        return change_bed(plan, bed_id, **_measured_on_the_ground(plan, bed))
    for shape in shapes_of(bed):
        raise PlanError(_TYPE_INSTEAD[shape])
    if bed.slope is None:
        raise PlanError(_("a length on the map needs a slope first, for example 12 %"))
    ground, _width = reach_of(evolve(bed, map_length=length))
    return change_bed(plan, bed_id, map_length=length, length=Length(ground, ""))


def _measured_on_the_ground(plan: Plan, bed: Bed) -> dict[str, Any]:
    if bed.map_length is None:
        return {}
    return {"map_length": None, "length": length_of(bed.length.nm, plan.place.units)}
