"""Where a bed lies on the ground as it is typed, and its drip lines."""

from gardenplot.gestures.reading import list_from, list_text, place_from
from gardenplot.gestures.typed import Edit, Shown, TypedField
from gardenplot.plan import Plan, bed_of
from gardenplot.plan.edits import change_bed, move_bed, turn_bed
from gardenplot.plan.ground import frames_of, standing_of
from gardenplot.units import Length, degrees_of, length_of, parse_degrees
from gardenplot.words import _


def _place_shown(axis: str) -> Shown:
    """A distance from the peg as it was typed; nothing for a bed that has no place yet."""

    def shown(plan: Plan, bed_id: str) -> str:
        standing = standing_of(plan, bed_id)
        return "" if standing is None else str(getattr(standing, axis))

    return shown


def _place_edit(axis: str) -> Edit:
    def edit(plan: Plan, bed_id: str, text: str, shown: str) -> Plan:
        standing, frame = standing_of(plan, bed_id), frames_of(plan)[bed_id]
        units = plan.place.units
        place: dict[str, Length] = {
            "x": standing.x if standing else length_of(frame.x, units),
            "y": standing.y if standing else length_of(frame.y, units),
        }
        place[axis] = place_from(text, shown or place[axis].text, units)
        return move_bed(plan, bed_id, **place)

    return edit


def _turn_shown(plan: Plan, bed_id: str) -> str:
    standing = standing_of(plan, bed_id)
    if standing is None:
        return ""
    return str(standing.turn or degrees_of(frames_of(plan)[bed_id].turn))


def _turn(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return turn_bed(plan, bed_id, parse_degrees(text))


def _drip_shown(plan: Plan, bed_id: str) -> str:
    return list_text(bed_of(plan, bed_id).drip_lines)


def _drip(plan: Plan, bed_id: str, text: str, _shown: str) -> Plan:
    return change_bed(plan, bed_id, drip_lines=list_from(text, plan.place.units))


NO_PLACE = _("no place yet")
GROUND_FIELDS = (
    TypedField("x", _("From the left"), _place_shown("x"), _place_edit("x"), held=NO_PLACE),
    TypedField("y", _("From the top"), _place_shown("y"), _place_edit("y"), held=NO_PLACE),
    TypedField("turn", _("Turned clockwise"), _turn_shown, _turn, held=NO_PLACE),
    TypedField("drip_lines", _("Drip lines, from the left edge"), _drip_shown, _drip, "20 cm; 60 cm"),
)
"""Where a bed lies on the ground and where its drip lines do, in the order of the panel."""
