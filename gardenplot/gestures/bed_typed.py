"""A bed as it is typed: what is left empty has a usual size, and a number alone takes that size's unit."""

import re
from collections.abc import Callable, Mapping

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.packet import id_from
from gardenplot.gestures.reading import length_from, needed_length
from gardenplot.plan import Bed, Plan
from gardenplot.plan.edits import add_bed
from gardenplot.units import Units, unit_of
from gardenplot.words import _

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


def usual(size: str) -> str:
    """The words for a usual size in the empty field that it stands for."""
    return _("usual: {size}").format(size=size)


def name_for(plan: Plan) -> str:
    """What a bed is called that is given no name."""
    return _("Bed {number}").format(number=len(plan.beds) + 1)


def with_sizes(texts: Mapping[str, str], units: Units) -> dict[str, str]:
    """The texts with the usual length and width where these are left out, and a unit where one is missing."""
    size = SIZES[units]
    typed = {name: text.strip() for name, text in texts.items()}
    typed |= {name: typed[name] or getattr(size, name) for name in ("length", "width")}
    return typed | {name: _with_unit(typed[name], getattr(size, name)) for name in ("length", "width", "margin")}


def _with_unit(text: str, shown: str) -> str:
    """A number alone takes the unit of the size that was shown in its place: a bed 40 long is 40 ft, no 40 in."""
    return f"{text} {unit_of(shown)}" if _BARE_NUMBER.fullmatch(text) else text


def wrong_sizes(typed: Mapping[str, str], units: Units) -> dict[str, str]:
    """What is wrong with the sizes of a bed, by the name of the answer."""
    checks: dict[str, Callable[[str, Units], object]] = {"length": _size, "width": _size, "margin": _length}
    told = {
        name: _told(check, typed[name], units) for name, check in (checks | {"gap": _length}).items() if name in typed
    }
    return {name: words for name, words in told.items() if words}


def _told(check: Callable[[str, Units], object], text: str, units: Units) -> str:
    try:
        check(text, units)
    except GardenplotError as error:
        return error.says
    return ""


def _size(text: str, units: Units) -> None:
    length = length_from(text, "", units)
    if length is None or length.nm <= 0:
        raise PlanError(_("a bed needs a size, for example {length}").format(length=SIZES[units].length))


def _length(text: str, units: Units) -> None:
    length_from(text, "", units)


def bed_from(name: str, texts: Mapping[str, str], plan: Plan) -> Bed:
    """A new bed from typed texts; raises LengthError or PlanError."""
    units = plan.place.units
    margin = length_from(texts.get("margin", ""), "", units)
    return Bed(
        id=id_from(name),
        name=name,
        length=needed_length(texts.get("length", ""), "", units),
        width=needed_length(texts.get("width", ""), "", units),
        head_margin=margin,
        foot_margin=margin,
        gap=length_from(texts.get("gap", ""), "", units),
    )


def type_bed(plan: Plan, texts: Mapping[str, str]) -> tuple[Plan | None, dict[str, str]]:
    """The plan with one more bed, or none and the words of what is wrong by the name of the answer.

    `texts` has name, length, width, margin and gap.
    """
    typed = with_sizes(texts, plan.place.units)
    wrong = wrong_sizes(typed, plan.place.units)
    if wrong:
        return None, wrong
    try:
        return add_bed(plan, bed_from(typed["name"] or name_for(plan), typed, plan)), {}
    except GardenplotError as error:
        return None, {"margin" if error.field == "head_margin" else error.field: error.says}
