"""What is said about a bed on the ground: where it lies, how it is turned, and what is wrong there."""

from collections.abc import Sequence

from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import find_about
from gardenplot.plan import Plan, Tunnel, Walk, bed_of
from gardenplot.plan.ground import frames_of, path_width
from gardenplot.units import Units, degrees_of
from gardenplot.units.figures import offset, span, tape
from gardenplot.words import _


def place_line(plan: Plan, bed_id: str) -> str:
    """Where a bed lies: "Field 1   4.20 m from the left   3.10 m from the top   90°"."""
    frame, units = frames_of(plan)[bed_id], plan.place.units
    parts = [
        bed_of(plan, bed_id).name,
        _("{distance} from the left").format(distance=span(frame.x, units)),
        _("{distance} from the top").format(distance=span(frame.y, units)),
    ]
    if frame.turn:
        parts.append(degrees_of(frame.turn).text)
    return "   ".join(parts)


def trouble_line(plan: Plan, bed_id: str) -> str:
    """The first thing that stands against the place of a bed; nothing where all is well."""
    found = find_about(plan, bed_id)
    return says(plan, found[0], looks(plan)) if found else ""


def beds_line(plan: Plan, beds: Sequence[str]) -> str:
    """Where the first of some beds lies, and how many there are where it is not alone."""
    line = place_line(plan, beds[0])
    return line if len(beds) == 1 else _("{count} beds   {first}").format(count=len(beds), first=line)


def first_trouble(plan: Plan, beds: Sequence[str]) -> str:
    """The first thing that stands against the place of any of some beds; nothing where all is well."""
    return next((line for line in (trouble_line(plan, bed) for bed in beds) if line), "")


def loose_line(plan: Plan) -> str:
    """How beds without a place are drawn; nothing where every bed has one."""
    loose = len(plan.beds) - len(plan.ground)
    if not loose:
        return ""
    path = offset(path_width(plan.place.units), plan.place.units)
    if loose == len(plan.beds):
        return _("No bed has a place yet: all lie side by side with paths of {path}. Drag one to place them.").format(
            path=path
        )
    return _("Dashed beds have no place yet: they lie side by side with paths of {path}.").format(path=path)


def scale_line(scale: float, dots_per_inch: float) -> str:
    """The scale of the drawing: "the ground · scale 1 : 120"."""
    times = dots_per_inch / 25.4 / scale
    return _("the ground · scale 1 : {scale}").format(scale=round(times) if times >= 10 else round(times, 1))


def peg_words(away: int, units: Units) -> str:
    """How far away the peg lies while it is out of sight: "peg, 12.30 m"."""
    return _("peg, {distance}").format(distance=span(away, units))


def strip_words(strip: Tunnel | Walk, units: Units) -> str:
    """A tunnel or a path in one line: "Polytunnel   20.00 m × 5.00 m   cold edge 50 cm"."""
    words = f"{strip.name}   {tape(strip.length.nm, units)} × {tape(strip.width.nm, units)}"
    if isinstance(strip, Tunnel) and strip.cold_edge is not None:
        words += "   " + _("cold edge {width}").format(width=offset(strip.cold_edge.nm, units))
    return words
