"""A crop as its seed packet reads: typed texts into a crop and back."""

import re
import unicodedata
from collections.abc import Callable, Mapping
from enum import StrEnum
from typing import Any

from attrs import frozen

from gardenplot.drawing.timing_words import FROSTS
from gardenplot.errors import GardenplotError, PlanError
from gardenplot.gestures.reading import length_from, needed_length, spacing_from, spacing_text, text_of, whole_from
from gardenplot.plan import Crop, DaysFrom, Establish, Frost
from gardenplot.units import Units, number_in, parse_area_rate, parse_rate, parse_share
from gardenplot.words import _

DAYS_FROM = {DaysFrom.SETTING_OUT: _("setting out"), DaysFrom.SOWING: _("sowing")}


@frozen
class PacketField:
    """A line of the packet: the crop's attribute, its label, an example, how a text is read, what holds else.

    `group` is the heading that it begins a group with; `choices` are words with the values that they stand for.
    `way` is the way into the ground without which the line says nothing.
    """

    attribute: str
    label: str
    example: str
    read: Callable[[str, Units], Any]
    needed: bool = False
    default: str = ""
    group: str = ""
    choices: tuple[tuple[str, Any], ...] = ()
    way: Establish | None = None


def _optional(parse: Callable[[str], Any]) -> Callable[[str, Units], Any]:
    return lambda text, _units: parse(text) if text else None


def _name(text: str, _units: Units) -> str:
    if not text:
        raise PlanError(_("a name is needed, for example Kohlrabi"))
    return text


def _number(text: str) -> float:
    number = number_in(text)
    if number is None:
        raise PlanError(_("“{typed}” is no number: write it like 320").format(typed=text[:40]))
    return float(number)


def _spacing(text: str, units: Units) -> Any:
    if not text:
        raise PlanError(_("a row spacing is needed, for example 30 cm or 30 cm to 45 cm"))
    return spacing_from(text, "", units)


def _length(text: str, units: Units) -> Any:
    return length_from(text, "", units)


def _chosen(kind: type[StrEnum], example: str) -> Callable[[str, Units], Any]:
    """A choice by its word in a plan's file."""

    def read(text: str, _units: Units) -> Any:
        if text and text not in tuple(kind):
            raise PlanError(_("“{typed}” is not known here: {example}").format(typed=text[:40], example=example))
        return kind(text) if text else None

    return read


_days = _optional(whole_from)
_NOT_SAID = (_("not said"), None)
_COUNT_FROM = ((_("when it goes into its bed"), None), *((words, one) for one, words in DAYS_FROM.items()))
_TAKES_FROST = (_NOT_SAID, *((words, one) for one, words in FROSTS.items()))
_RAISED, _SOWN = Establish.TRANSPLANT, Establish.DIRECT
_SPACING, _TIMES, _PLANTS = _("Spacing"), _("Days"), _("Plants and seed")
PACKET = (
    PacketField("name", _("Name"), _("Kohlrabi"), _name, needed=True),
    PacketField("family", _("Family"), "Brassicaceae", _optional(str)),
    PacketField("frost", _("Takes frost as"), "", _chosen(Frost, "hardy"), choices=_TAKES_FROST),
    PacketField(
        "in_row",
        _("In the row"),
        "25 cm",
        lambda text, units: needed_length(text, "", units),
        needed=True,
        group=_SPACING,
    ),
    PacketField("row_spacing", _("Between rows"), _("25 cm to 40 cm"), _spacing, needed=True),
    PacketField("edge", _("Least edge"), "7.5 cm", _length, default=_("half the row spacing")),
    PacketField("spread", _("Grows as wide as"), "25 cm", _length, default=_("its spacing")),
    PacketField("height", _("Grows as high as"), "60 cm", _length, default=_("not known")),
    PacketField("plants_per_area", _("Broadcast"), "400 / m2", _optional(parse_area_rate)),
    PacketField("field_days", _("Days until ready"), "42", _days, group=_TIMES),
    PacketField("days_from", _("Counted from"), "", _chosen(DaysFrom, "sowing"), choices=_COUNT_FROM),
    PacketField("cool_days", _("More days when cool"), "14", _days, default=_("none")),
    PacketField("harvest_days", _("Days it can be cut"), "21", _days, default=_("one day")),
    PacketField("raising_days", _("Days to raise"), "28", _days, way=_RAISED),
    PacketField("pot_up_days", _("Days to potting up"), "14", _days, default=_("not potted up"), way=_RAISED),
    PacketField("hardening_days", _("Days to harden off"), "7", _days, way=_RAISED),
    PacketField(
        "oldest_days", _("Oldest to set out, days"), "35", _days, default=_("7 more than to raise"), way=_RAISED
    ),
    PacketField("field_loss", _("Field loss"), "10 %", _optional(parse_share), group=_PLANTS),
    PacketField("spare", _("Spare plants"), "15 %", _optional(parse_share), way=_RAISED),
    PacketField("germination", _("Germination"), "90 %", _optional(parse_share)),
    PacketField("seeds_per_cell", _("Seeds in a cell"), "1", _optional(whole_from)),
    PacketField("seedlings_per_seed", _("Seedlings of a seed"), "2.5", _optional(_number), default=_("one")),
    PacketField("clump", _("Left in a place"), "4", _optional(whole_from), default=_("one plant")),
    PacketField("tray_cells", _("Cells in a tray"), "84", _optional(whole_from), way=_RAISED),
    PacketField("seeds_per_row", _("Seeds sown"), "40 / m", _optional(parse_rate), way=_SOWN),
    PacketField("seeder_slack", _("Seeder's slack"), "10 %", _optional(parse_share), way=_SOWN),
    PacketField("seeds_per_gram", _("Seeds in a gram"), "320", _optional(_number)),
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
