"""The words for what drew the hand along a bed and across it."""

from gardenplot.drawing.letters import Look, looks
from gardenplot.drawing.sayings import titled
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.words import _

_PULLS = {
    Pull.HEAD_MARGIN: _("from the head margin"),
    Pull.FOOT_MARGIN: _("up to the foot margin"),
    Pull.NEIGHBOUR: _("beside its neighbour"),
    Pull.CORNER: _("a side straight across"),
    Pull.KEPT: _("reading as it was"),
}
_PULLS_ACROSS = {Pull.CORNER: _("a side straight along"), Pull.KEPT: _("offset as it was")}


def along_words(plan: Plan, snap: Snap | None, look: dict[str, Look]) -> str:
    """What drew a block or a corner along its bed; nothing for a round reading."""
    if snap is not None and snap.pull is Pull.OTHER_BED and snap.planting is not None:
        bed = bed_of(plan, planting_of(plan, snap.planting).bed).name
        return _("level with {planting}, {bed}").format(planting=titled(plan, snap.planting, look), bed=bed)
    return _PULLS.get(snap.pull, "") if snap is not None else ""


def across_words(snap: Snap | None) -> str:
    """What drew a corner or an obstacle across its bed."""
    return _PULLS_ACROSS.get(snap.pull, "") if snap is not None else ""


def place_words(plan: Plan, snap: Snap | None) -> str:
    """What a place that is measured from lies at; nothing for a round reading."""
    if snap is None or snap.pull is Pull.READING:
        return ""
    if snap.pull is Pull.OTHER_BED:
        return along_words(plan, snap, looks(plan))
    names = {
        Pull.HEAD_MARGIN: _("at the head margin"),
        Pull.FOOT_MARGIN: _("at the foot margin"),
        Pull.END: _("at the end of the bed"),
        Pull.EDGE: _("on the bed's edge"),
        Pull.MIDDLE: _("on the centre line"),
    }
    if snap.planting is not None:
        planting = titled(plan, snap.planting, looks(plan))
        row, end = _("on a row of {planting}"), _("at an end of {planting}")
        return (row if snap.pull is Pull.ROW else end).format(planting=planting)
    return names.get(snap.pull, "")
