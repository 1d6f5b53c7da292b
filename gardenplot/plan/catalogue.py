"""The crops that come with the program, each value with its source, searchable by any of their names."""

import json
import unicodedata
from functools import cache, lru_cache
from typing import Any

from attrs import field, frozen

from gardenplot.files import resource
from gardenplot.plan.choices import DaysFrom, Establish, Frost
from gardenplot.plan.value import Crop, Plan
from gardenplot.units import parse_length


@frozen
class Entry:
    """A crop of the catalogue, its other names, and where each of its values comes from."""

    crop: Crop
    also: tuple[str, ...] = ()
    sources: dict[str, str] = field(factory=dict, hash=False)
    note: str = ""


@cache
def entries() -> tuple[Entry, ...]:
    """All crops of the catalogue, by name."""
    raw = json.loads(resource("crops/catalogue.json").read_text(encoding="utf-8"))
    return tuple(_entry(one) for one in raw["crops"])


def search(text: str) -> tuple[Entry, ...]:
    """The entries one of whose names holds every word of the text; all of them for none."""
    words = _folded(text).split()
    return tuple(entry for entry in entries() if _holds(entry, words))


def found_crops(plan: Plan, text: str) -> tuple[tuple[Crop, ...], frozenset[str]]:
    """The crops that a text finds, the plan's own first and then the catalogue's, and the ids of the plan's own."""
    return _found(plan.crops, text)


@lru_cache(maxsize=64)
def _found(crops: tuple[Crop, ...], text: str) -> tuple[tuple[Crop, ...], frozenset[str]]:
    words = _folded(text).split()
    own = tuple(crop for crop in crops if _holds(Entry(crop), words))
    ids = frozenset(crop.id for crop in crops)
    return (*own, *(entry.crop for entry in search(text) if entry.crop.id not in ids)), ids


def with_words(crops: tuple[Crop, ...], text: str) -> tuple[Crop, ...]:
    """Those of some crops one of whose names holds every word of the text."""
    words = _folded(text).split()
    return tuple(crop for crop in crops if _holds(entry_of(crop) or Entry(crop), words))


def entry_of(crop: Crop) -> Entry | None:
    """The entry that a crop was taken from unchanged; None for the grower's own."""
    return next((entry for entry in entries() if entry.crop == crop), None)


def _holds(entry: Entry, words: list[str]) -> bool:
    names = _folded(" ".join((entry.crop.name, *entry.also, entry.crop.family or "")))
    return all(word in names for word in words)


def _folded(text: str) -> str:
    """Text without case and accents, so that "Spätkohl" is found by "spatkohl"."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    return "".join(letter for letter in plain if not unicodedata.combining(letter))


def _entry(raw: dict[str, Any]) -> Entry:
    crop = Crop(
        id=raw["id"],
        name=raw["name"],
        in_row=parse_length(raw["in_row"]),
        row_spacing=tuple(parse_length(text) for text in raw["row_spacing"]),
        family=raw.get("family"),
        establish=Establish(raw["establish"]),
        field_days=raw.get("field_days"),
        days_from=_days_from(raw),
        raising_days=raw.get("raising_days"),
        hardening_days=raw.get("hardening_days"),
        seeds_per_gram=raw.get("seeds_per_gram"),
        frost=Frost(raw["frost"]) if "frost" in raw else None,
        emerges_like=raw.get("emerges_like"),
    )
    return Entry(crop, tuple(raw.get("also", ())), raw.get("sources", {}), raw.get("note", ""))


def _days_from(raw: dict[str, Any]) -> DaysFrom | None:
    """Where the days begin, if that is not the day on which the crop goes into its bed."""
    raised = raw["establish"] == Establish.TRANSPLANT
    return DaysFrom.SOWING if raised and raw.get("days_from") == "sowing" else None
