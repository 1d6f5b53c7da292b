"""Trays that harden off: so many as a planting is raised in, in the middle of a bed that is free on their days."""

from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.together import trial_of
from gardenplot.layout import ground_for, lay_out_bed
from gardenplot.layout.bed import grown_of
from gardenplot.layout.trays import TRAY_LENGTH, TRAY_WIDTH, tray_sides, trays_across
from gardenplot.plan import Bed, Establish, Plan, Planting, bed_of, crop_of, planting_of
from gardenplot.plan.edits import add_planting
from gardenplot.plan.find import fresh_id
from gardenplot.season import dates_of
from gardenplot.supplies import raised_for
from gardenplot.units import length_of
from gardenplot.words import _

HARDEN = _("Harden off {crop}")


def try_trays(plan: Plan, planting_id: str) -> Trial:
    """The trays of a planting in its own bed, else in the first other one that has room on the days of hardening off.

    They stand as near to the middle of the bed as is free, where it is least cold. Raises PlanError where no bed has
    room, or where packet or dates do not say enough.
    """
    planting = planting_of(plan, planting_id)
    trays = trays_of(plan, planting)
    own = bed_of(plan, planting.bed)
    for bed in (own, *(one for one in plan.beds if one is not own)):
        block = _block(plan, planting, bed, trays)
        start = _middlemost(plan, block, bed, trays)
        if start is not None:
            placed = evolve(block, start=length_of(start, plan.place.units))
            return trial_of(add_planting(plan, placed), [placed.id], Snap(start, Pull.MIDDLE))
    raise PlanError(
        _("no bed has room for {count} trays from {first} to {last}").format(
            count=trays, first=dates_of(plan, planting).harden, last=dates_of(plan, planting).set_out
        )
    )


def trays_of(plan: Plan, planting: Planting) -> int:
    """How many trays a planting is raised in; raises PlanError where that, or when they harden off, is not said."""
    crop, dates = crop_of(plan, planting.crop), dates_of(plan, planting)
    if planting.hardens is not None:
        raise PlanError(_("these are trays already"))
    if crop.establish is not Establish.TRANSPLANT:
        raise PlanError(_("{crop} is sown in its bed: no trays of it harden off").format(crop=crop.name))
    layout = lay_out_bed(plan, bed_of(plan, planting.bed)).layout_of(planting.id)
    trays = raised_for(grown_of(plan, planting), layout).trays
    if not trays:
        raise PlanError(_("the packet of {crop} says no germination or no cells of a tray").format(crop=crop.name))
    if dates.harden is None or dates.set_out is None or dates.harden >= dates.set_out:
        raise PlanError(_("it is not known from when {crop} hardens off").format(crop=crop.name))
    return trays


def _block(plan: Plan, planting: Planting, bed: Bed, trays: int) -> Planting:
    """The trays of a planting in a bed, the way they take the least of it, without a place yet."""
    along, across = trays_across(bed.width.nm, tray_sides(plan.goods, crop_of(plan, planting.crop).tray_cells))
    return Planting(
        id=fresh_id(f"{planting.id}-trays", {one.id for one in plan.plantings}),
        bed=bed.id,
        crop=planting.crop,
        plants=trays,
        in_row=along,
        row_spacing=(across,),
        hardens=planting.id,
    )


def _middlemost(plan: Plan, block: Planting, bed: Bed, trays: int) -> int | None:
    """Where trays begin that stand as near to the middle of a bed as there is room, in nm; None without room."""
    along, across = (block.in_row or TRAY_WIDTH).nm, (block.row_spacing or (TRAY_LENGTH,))[0].nm
    rows = bed.width.nm // across
    if not rows:
        return None
    length = -(-trays // rows) * along
    best = (bed.length.nm - length) // 2
    starts = (
        min(max(best, first), last - length)
        for first, last in ground_for(plan, block, bed.id).gaps()
        if last - first >= length
    )
    return min(starts, key=lambda one: abs(one - best), default=None)
