"""A new plan from four answers: units, place, beds, and perhaps a first crop; what is left empty has a default."""

from collections.abc import Mapping

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.bed_typed import SIZES, bed_from, name_for, with_sizes, wrong_sizes
from gardenplot.gestures.crop_named import crop_named
from gardenplot.gestures.reading import whole_from
from gardenplot.gestures.trials import try_first_gap
from gardenplot.plan import Crop, Place, Plan
from gardenplot.plan.catalogue import found_crops
from gardenplot.plan.edits import add_bed
from gardenplot.units import Units
from gardenplot.units.figures import span
from gardenplot.words import _

MOST_BEDS = 200
_UNKNOWN = _("“{typed}” is no crop of the catalogue: choose one of the list, or leave it out")


@frozen
class Begun:
    """A new plan, and the planting of its first crop, if one was chosen."""

    plan: Plan
    planting: str | None = None


def begin(texts: Mapping[str, str], units: Units, crop: str) -> tuple[Begun | None, dict[str, str]]:
    """The plan that the answers make, or none and the words of what is wrong by the name of the answer.

    `texts` has name, beds, length, width and margin; `crop` is the name of a crop of the catalogue, words of it, or
    nothing.
    """
    typed = with_sizes(texts, units)
    wrong = wrong_sizes(typed, units)
    beds = 0
    try:
        beds = _count(typed["beds"], units)
    except GardenplotError as error:
        wrong["beds"] = error.says
    first = None
    try:
        first = crop_named(found_crops(Plan(), "")[0], crop, unknown=_UNKNOWN) if crop else None
    except PlanError as error:
        wrong["crop"] = error.says
    if wrong:
        return None, wrong
    try:
        plan = _with_beds(typed, units, beds)
    except GardenplotError as error:
        return None, {"margin": error.says}
    try:
        return _planted(plan, first), {}
    except GardenplotError as error:
        return None, {"crop": error.says}


def _count(text: str, units: Units) -> int:
    beds = whole_from(text or SIZES[units].beds) or 0
    if not 1 <= beds <= MOST_BEDS:
        raise PlanError(_("a plan begins with 1 to {most} beds").format(most=MOST_BEDS))
    return beds


def _with_beds(typed: dict[str, str], units: Units, beds: int) -> Plan:
    plan = Plan(place=Place(name=typed["name"], units=units))
    for _number in range(beds):
        plan = add_bed(plan, bed_from(name_for(plan), typed, plan))
    return plan


def _planted(plan: Plan, crop: Crop | None) -> Begun:
    if crop is None:
        return Begun(plan)
    needed, width = 2 * (crop.edge.nm if crop.edge else crop.row_spacing[0].nm // 2), plan.beds[0].width
    if width.nm < needed:
        narrow = _("{crop} needs {needed} of width, half its row spacing on both sides; the beds have {width}")
        least = span(needed, plan.place.units)
        raise PlanError(narrow.format(crop=crop.name, needed=least, width=span(width.nm, plan.place.units)))
    trial = try_first_gap(plan, crop, plan.beds[0].id, None)
    return Begun(trial.plan, trial.planting)
