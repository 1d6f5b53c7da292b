"""The crops that come with the program are found by any of their names and can be planted as they are."""

import json
from typing import Any

import pytest

from gardenplot.files import resource
from gardenplot.plan import DaysFrom, Plan, catalogue
from gardenplot.plan.catalogue import Entry, entries, search
from gardenplot.plan.edits import carry_crop
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.valid import faults
from gardenplot.season.dates import packet_days
from gardenplot.season.emergence import emergence_table
from tests.plans import metric_plan

RAW: list[dict[str, Any]] = json.loads(resource("crops/catalogue.json").read_text(encoding="utf-8"))["crops"]
RAISED_BUT_COUNTED_FROM_SOWING = [
    raw
    for raw in RAW
    if raw["establish"] == "transplant" and raw.get("days_from") == "sowing" and "field_days" in raw
]

every_entry = pytest.mark.parametrize("entry", entries(), ids=lambda entry: entry.crop.id)


def found(text: str) -> list[str]:
    """The ids of the crops that a search finds."""
    return [entry.crop.id for entry in search(text)]


@every_entry
def test_a_crop_is_found_by_each_of_its_names(entry: Entry) -> None:
    for name in (entry.crop.name, *entry.also):
        assert entry in search(name)
        assert entry in search(name.upper())
        assert entry in search(name[:3].lower())


@pytest.mark.parametrize(
    ("typed", "crop"),
    [
        ("Eggplant", "aubergine"),
        ("brinjal", "aubergine"),
        ("EGGPL", "aubergine"),
        ("choi pak", "pak-choi"),
        ("  pak   choi ", "pak-choi"),
        ("pák chöi", "pak-choi"),
        ("PAK CHOI\u0301", "pak-choi"),
        ("Solanaceae", "aubergine"),
    ],
)
def test_a_search_needs_neither_case_nor_accents_nor_order(typed: str, crop: str) -> None:
    assert crop in found(typed)


@pytest.mark.parametrize("typed", ["spatkohl", "SPÄTKOHL", "Spa\u0308tkohl", "grosser", "GROẞER"])
def test_a_name_with_accents_is_found_without_them(typed: str, monkeypatch: pytest.MonkeyPatch) -> None:
    late = Entry(metric_plan().crops[0], also=("Großer Spätkohl",))
    monkeypatch.setattr(catalogue, "entries", lambda: (late,))
    assert search(typed) == (late,)


def test_a_search_for_what_is_not_there_finds_nothing() -> None:
    assert found("pak choi aubergine") == []
    assert found("qqq") == []


def test_a_search_for_nothing_shows_the_whole_shelf() -> None:
    assert search(" ") == entries()
    assert len(entries()) == len(RAW)


@every_entry
def test_a_crop_can_be_carried_into_a_plan_and_saved_in_it(entry: Entry) -> None:
    plan = carry_crop(Plan(), entry.crop)
    assert plan.crops == (entry.crop,)
    assert list(faults(plan)) == []
    assert plan_of_text(text_of(plan)).plan == plan


@every_entry
def test_a_crop_that_is_raised_hardens_within_its_raising_days(entry: Entry) -> None:
    assert (entry.crop.hardening_days or 0) <= (entry.crop.raising_days or 0)


@pytest.mark.parametrize("raw", RAISED_BUT_COUNTED_FROM_SOWING, ids=lambda raw: raw["id"])
def test_a_raised_crop_counted_from_sowing_spends_its_raising_days_elsewhere(raw: dict[str, Any]) -> None:
    entry = next(entry for entry in entries() if entry.crop.id == raw["id"])
    assert entry.crop.raising_days
    assert (entry.crop.days_from, entry.crop.field_days) == (DaysFrom.SOWING, raw["field_days"])
    assert packet_days(entry.crop) == raw["field_days"] - entry.crop.raising_days


def test_a_cucumber_of_60_days_from_sowing_raised_for_25_stands_for_35() -> None:
    cucumber = next(entry.crop for entry in search("cucumber") if entry.crop.id == "cucumber")
    assert (cucumber.raising_days, cucumber.field_days, packet_days(cucumber)) == (25, 60, 35)


def test_all_other_crops_keep_the_days_of_their_packet() -> None:
    counted = {raw["id"]: raw.get("field_days") for raw in RAW if raw not in RAISED_BUT_COUNTED_FROM_SOWING}
    assert {entry.crop.id: entry.crop.field_days for entry in entries() if entry.crop.id in counted} == counted


@every_entry
def test_a_crop_tells_where_its_spacing_comes_from(entry: Entry) -> None:
    assert {"in_row", "row_spacing"} <= set(entry.sources)


def test_names_in_the_table_of_days_to_emerge_stand_in_it() -> None:
    named = [entry.crop.emerges_like for entry in entries() if entry.crop.emerges_like is not None]
    assert len(named) > 20
    assert set(named) <= set(emergence_table())
