"""A new plan from four answers: units, place, beds, and perhaps a first crop; what is left empty has a default."""

import re
from collections.abc import Callable, Mapping

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.reading import length_from, whole_from
from gardenplot.gestures.trials import try_first_gap
from gardenplot.gestures.typed import bed_from
from gardenplot.plan import Crop, Place, Plan
from gardenplot.plan.catalogue import found_crops
from gardenplot.plan.edits import add_bed
from gardenplot.units import Units, unit_of
from gardenplot.units.figures import span
from gardenplot.words import _

MOST_BEDS = 200
_BARE_NUMBER = re.compile(r"[\d.,/ ]*\d")


@frozen
class BedSize:
    """What stands for an answer that is left out, as it would be typed."""

    length: str
    width: str
    margin: str
    beds: str = "3"


SIZES = {
    Units.METRIC: BedSize("15 m", "80 cm", "30 cm"),
    Units.FEET_AND_INCHES: BedSize("50 ft", "30 in", "1 ft"),
    Units.DECIMAL_FEET: BedSize("50 ft", "2.5 ft", "1 ft"),
}
"""Beds of a width that one reaches across from both sides (common practice, no source)."""


@frozen
class Begun:
    """A new plan, and the planting of its first crop, if one was chosen."""

    plan: Plan
    planting: str | None = None


def begin(texts: Mapping[str, str], units: Units, crop: str) -> tuple[Begun | None, dict[str, str]]:
    """The plan that the answers make, or none and the words of what is wrong by the name of the answer.

    `texts` has name, beds, length, width and margin; `crop` is the name of a crop of the catalogue, or nothing.
    """
    typed = _with_defaults(texts, units)
    wrong = {name: words for name, check in _CHECKS.items() if (words := _told(check, typed[name], units))}
    first = next((one for one in found_crops(Plan(), "")[0] if one.name.casefold() == crop.casefold()), None)
    if crop and first is None:
        wrong["crop"] = _("“{typed}” is no crop of the catalogue: choose one of the list, or leave it out").format(
            typed=crop[:40]
        )
    if wrong:
        return None, wrong
    try:
        plan = _with_beds(typed, units)
    except GardenplotError as error:
        return None, {"margin": str(error)}
    try:
        return _planted(plan, first), {}
    except GardenplotError as error:
        return None, {"crop": str(error)}


def _with_defaults(texts: Mapping[str, str], units: Units) -> dict[str, str]:
    size = SIZES[units]
    defaults = {"beds": size.beds, "length": size.length, "width": size.width}
    typed = {name: text.strip() or defaults.get(name, "") for name, text in texts.items()}
    return typed | {name: _with_unit(typed[name], getattr(size, name)) for name in ("length", "width", "margin")}


def _with_unit(text: str, shown: str) -> str:
    """A number alone takes the unit of the size that was shown in its place: a bed 40 long is 40 ft, no 40 in."""
    return f"{text} {unit_of(shown)}" if _BARE_NUMBER.fullmatch(text) else text


def _told(check: Callable[[str, Units], object], text: str, units: Units) -> str:
    try:
        check(text, units)
    except GardenplotError as error:
        return str(error)
    return ""


def _count(text: str, _units: Units) -> int:
    beds = whole_from(text) or 0
    if not 1 <= beds <= MOST_BEDS:
        raise PlanError(_("a plan begins with 1 to {most} beds").format(most=MOST_BEDS))
    return beds


def _size(text: str, units: Units) -> None:
    length = length_from(text, "", units)
    if length is None or length.nm <= 0:
        raise PlanError(_("a bed needs a size, for example {length}").format(length=SIZES[units].length))


def _margin(text: str, units: Units) -> None:
    length_from(text, "", units)


_CHECKS: dict[str, Callable[[str, Units], object]] = {
    "beds": _count,
    "length": _size,
    "width": _size,
    "margin": _margin,
}


def _with_beds(typed: dict[str, str], units: Units) -> Plan:
    plan = Plan(place=Place(name=typed["name"], units=units))
    for number in range(1, _count(typed["beds"], units) + 1):
        plan = add_bed(plan, bed_from(_("Bed {number}").format(number=number), typed, plan))
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
