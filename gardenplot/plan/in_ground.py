"""What is in the ground stays as it was planted: what would move it or plant it otherwise raises PlanError."""

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.plan.choices import Establish
from gardenplot.plan.find import crop_of
from gardenplot.plan.value import Plan, Planting
from gardenplot.words import _

BLOCK_FIELDS = (
    "bed", "crop", "start", "plants", "length", "pattern", "rows", "in_row", "row_spacing", "edge", "slack",
    "round_up_to", "in_ground", "reserved", "end_margin", "direction", "twin_spacing", "offsets", "cell",
    "plants_per_cell", "remainder", "phase", "gaps_of",
)  # fmt: skip
"""What says where a planting stands and how; an order says it too where neither plants nor length were typed."""


def is_in_ground(planting: Planting) -> bool:
    """Whether it was set out, or sown in its bed."""
    return planting.actual is not None and planting.actual.set_out is not None


def sown_in_bed(plan: Plan) -> Plan:
    """The plan in which what was sown in its bed is in the ground since then, also where only that was written."""
    direct = {crop.id for crop in plan.crops if crop.establish is Establish.DIRECT}
    there = tuple(_in_ground_if_sown(one) if one.crop in direct else one for one in plan.plantings)
    return plan if there == plan.plantings else evolve(plan, plantings=there)


def _in_ground_if_sown(planting: Planting) -> Planting:
    came = planting.actual
    if came is None or came.sown is None or came.set_out is not None:
        return planting
    return evolve(planting, actual=evolve(came, set_out=came.sown))


def stays_words(plan: Plan, planting: Planting) -> str:
    """Why the block of a planting can no longer be changed; nothing where it can."""
    if planting.actual is None or planting.actual.set_out is None:
        return ""
    day = planting.actual.set_out
    words = _("{crop} is in the ground since {day}: its block stays; clear the day first if that was a slip")
    return words.format(crop=crop_of(plan, planting.crop).name, day=f"{day:%a} {day.day} {day:%b %Y}")


def check_stays(before: Plan, after: Plan) -> Plan:
    """The plan after an edit; raises PlanError where a planting in the ground was moved, planted otherwise or lost.

    One whose ground is free again may be removed, and one whose day in the ground is cleared may be changed.
    """
    there = [one for one in before.plantings if is_in_ground(one)]
    if there and before.plantings is not after.plantings:
        now = {one.id: one for one in after.plantings}
        for one in there:
            if not _may_become(one, now.get(one.id)):
                raise PlanError(stays_words(before, one))
    return after


def _may_become(one: Planting, then: Planting | None) -> bool:
    if then is None:
        return one.actual is not None and one.actual.cleared is not None
    if then is one or not is_in_ground(then):
        return True
    by_order = ("order", "market", "clump") if one.plants is None and one.length is None else ()
    return all(getattr(one, name) == getattr(then, name) for name in (*BLOCK_FIELDS, *by_order))
