"""What the foot of the window says about the place under the pointer and about the scale."""

from typing import TYPE_CHECKING

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.strips import Strips, Under
from gardenplot.plan import Plan, bed_of
from gardenplot.units import Units
from gardenplot.units.figures import offset, span, tape
from gardenplot.words import _

if TYPE_CHECKING:
    from gardenplot.drawing.ground_under import OnGround

_NAMES = {
    Units.METRIC: _("metres"),
    Units.FEET_AND_INCHES: _("feet and inches"),
    Units.DECIMAL_FEET: _("decimal feet"),
}


def under_words(plan: Plan, found: "Under | OnGround") -> str:
    """The place under the pointer: "Tunnel, east · tape 4.20 m · 31 cm from the base line"."""
    bed, units = bed_of(plan, found.bed), plan.place.units
    if not 0 <= found.x <= bed.length.nm:
        return bed.name
    where = _("{bed} · tape {reading}").format(bed=bed.name, reading=tape(found.x, units))
    if 0 <= found.y <= bed.width.nm:
        where += " · " + _("{offset} from the base line").format(offset=offset(found.y, units))
    return where


def turn_words(plan: Plan, planting_id: str, here: tuple[str, ...]) -> str:
    """Which of the blocks at a spot is chosen: "E Butterhead lettuce: 2 of 3 here"."""
    planting = titled(plan, planting_id, looks(plan))
    return _("{planting}: {number} of {count} here").format(
        planting=planting, number=here.index(planting_id) + 1, count=len(here)
    )


def zero_words(away: int, units: Units) -> tuple[str, str]:
    """How far towards the head the tape's zero lies while it is out of sight, in full and short."""
    distance = span(away, units)
    return _("0 at head, {distance}").format(distance=distance), _("0, {distance}").format(distance=distance)


def scale_words(units: Units, strips: Strips, dots_per_inch: float) -> str:
    """The scale of the drawing: "metres · scale 1 : 62, across enlarged × 2"; or across flattened to a share."""
    scale = dots_per_inch / 25.4 / strips.along
    words = _("{units} · scale 1 : {scale}").format(
        units=_NAMES[units], scale=round(scale) if scale >= 10 else round(scale, 1)
    )
    if strips.stretch > 1:
        words += ", " + _("across enlarged × {times}").format(times=f"{strips.stretch:.3g}")
    elif strips.stretch < 1:
        words += ", " + _("across flattened to {share} %").format(share=max(1, round(100 * strips.stretch)))
    return words
