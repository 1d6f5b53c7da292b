"""A crop as its seed packet reads: typed texts into a crop and back."""

import re
import unicodedata
from collections.abc import Callable, Mapping
from math import isfinite, nan
from typing import Any

from attrs import frozen

from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.reading import length_from, needed_length, spacing_from, spacing_text, text_of, whole_from
from gardenplot.plan import Crop, Establish
from gardenplot.units import Units, parse_area_rate, parse_rate, parse_share
from gardenplot.words import _


@frozen
class PacketField:
    """A line of the packet: the crop's attribute, its label, an example, how a text is read, what holds else."""

    attribute: str
    label: str
    example: str
    read: Callable[[str, Units], Any]
    needed: bool = False
    default: str = ""


def _optional(parse: Callable[[str], Any]) -> Callable[[str, Units], Any]:
    return lambda text, _units: parse(text) if text else None


def _name(text: str, _units: Units) -> str:
    if not text:
        raise PlanError(_("a name is needed, for example Kohlrabi"))
    return text


def _number(text: str) -> float:
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        number = nan
    if not isfinite(number):
        raise PlanError(_("“{typed}” is no number: write it like 320").format(typed=text[:40]))
    return number


def _spacing(text: str, units: Units) -> Any:
    if not text:
        raise PlanError(_("a row spacing is needed, for example 30 cm or 30 cm to 45 cm"))
    return spacing_from(text, "", units)


PACKET = (
    PacketField("name", _("Name"), _("Kohlrabi"), _name, needed=True),
    PacketField("in_row", _("In the row"), "25 cm", lambda text, units: needed_length(text, "", units), needed=True),
    PacketField("row_spacing", _("Between rows"), _("25 cm to 40 cm"), _spacing, needed=True),
    PacketField(
        "edge",
        _("Least edge"),
        "7.5 cm",
        lambda text, units: length_from(text, "", units),
        default=_("half the row spacing"),
    ),
    PacketField(
        "spread",
        _("Grows as wide as"),
        "25 cm",
        lambda text, units: length_from(text, "", units),
        default=_("its spacing"),
    ),
    PacketField("family", _("Family"), "Brassicaceae", _optional(str)),
    PacketField("field_days", _("Days in the field"), "42", _optional(whole_from)),
    PacketField("raising_days", _("Days to raise"), "28", _optional(whole_from)),
    PacketField("hardening_days", _("Days to harden off"), "7", _optional(whole_from)),
    PacketField("field_loss", _("Field loss"), "10 %", _optional(parse_share)),
    PacketField("spare", _("Spare plants"), "15 %", _optional(parse_share)),
    PacketField("germination", _("Germination"), "90 %", _optional(parse_share)),
    PacketField("seeds_per_cell", _("Seeds in a cell"), "1", _optional(whole_from)),
    PacketField("tray_cells", _("Cells in a tray"), "84", _optional(whole_from)),
    PacketField("seeds_per_row", _("Seeds sown"), "40 / m", _optional(parse_rate)),
    PacketField("seeder_slack", _("Seeder's slack"), "10 %", _optional(parse_share)),
    PacketField("seeds_per_gram", _("Seeds in a gram"), "320", _optional(_number)),
    PacketField("plants_per_area", _("Broadcast"), "400 / m2", _optional(parse_area_rate)),
)
"""The lines of a packet, in the order in which they are asked for."""


def texts_of(crop: Crop) -> dict[str, str]:
    """A crop's values as they are typed."""
    texts = {field.attribute: text_of(getattr(crop, field.attribute)) for field in PACKET}
    return texts | {"row_spacing": spacing_text(crop.row_spacing)}


def values_from(texts: Mapping[str, str], units: Units) -> tuple[dict[str, Any], dict[str, str]]:
    """The values of typed texts by attribute, and the words of what is wrong by attribute."""
    values: dict[str, Any] = {}
    wrong: dict[str, str] = {}
    for field in PACKET:
        try:
            values[field.attribute] = field.read(texts.get(field.attribute, "").strip(), units)
        except GardenplotError as error:
            wrong[field.attribute] = error.says
    return values, wrong


def crop_from(values: Mapping[str, Any], establish: Establish) -> Crop:
    """A new crop from the values of a packet."""
    return Crop(id=id_from(values["name"]), establish=establish, **values)


def id_from(name: str) -> str:
    """An id that a person can read: "Pak choi" becomes "pak-choi"."""
    plain = unicodedata.normalize("NFKD", name.casefold())
    kept = "".join(letter for letter in plain if not unicodedata.combining(letter))
    return re.sub(r"[^\w]+", "-", kept).strip("-") or "crop"
