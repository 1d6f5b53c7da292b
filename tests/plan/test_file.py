"""Plan files are read whole or refused with the place, and written so that nothing in them is lost."""

import json
import re
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import attrs
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import FileError
from gardenplot.plan import MonthDay, Pattern, Plan
from gardenplot.plan.file import LARGEST, plan_of_text, read_plan, text_of, write_plan
from gardenplot.units import CM, Length, M, Units, parse_length, parse_share
from tests.plans import feet_plan, json_values, metric_plan, plans

BY_HAND = """{
  "gardenplot": 1,
  "place": {"name": "Upper Sill", "latitude": 57.2, "longitude": -4.1, "time_zone": "Europe/London",
            "units": "metric", "last_freeze": {"50%": "05-18", "10%": "06-01"}},
  "beds": [{"id": "b1", "name": "Tunnel, east", "length": "15 m", "width": "75 cm",
            "head_margin": "30 cm", "foot_margin": "30 cm", "edge": "7.5 cm"}],
  "crops": [{"id": "pak-choi", "name": "Pak choi", "in_row": "25 cm", "row_spacing": ["30 cm", "45 cm"],
             "establish": "transplant", "edge": "7.5 cm"}],
  "plantings": [{"id": "p1", "bed": "b1", "crop": "pak-choi", "from": "0.3 m", "plants": 120,
                 "pattern": "straight", "in_ground": "2027-04-09", "out": "2027-05-28"},
                {"id": "p2", "bed": "b1", "crop": "pak-choi", "from": "11 m", "length": "2 m",
                 "pattern": "staggered", "rows": 2, "in_ground": "2027-04-09", "out": "2027-05-28"}]
}
"""

EVERY_FIELD = """{
  "gardenplot": 1,
  "place": {"name": "Låg Äng", "latitude": -41.5, "longitude": 172.8, "time_zone": "Pacific/Auckland",
            "units": "decimal feet", "last_freeze": {"50%": "10-02", "10 %": "10-20"},
            "markable_in_row": ["3 in", "4 in"], "markable_rows": "12 in",
            "north": "-15 deg", "last_hard_freeze": {"50%": "09-12"}, "first_freeze": {"50%": "04-20"},
            "first_hard_freeze": {"50%": "05-10"}, "short_days_count": true, "family_gap": 4, "cover_before": 45,
            "watering": {"line_flow": "30 gal/h / 100 ft", "supply": "4 gal/min", "tank": "275 gal",
                         "weekly_depth": "1 in", "efficiency": "90 %"}, "money": "$"},
  "beds": [{"id": "b1", "name": "Oben", "length": "53.5 ft", "width": "30\\"", "head_margin": "1'",
            "foot_margin": "1 ft", "edge": "3 in", "gap": "½ ft", "note": "wet\\nfoot",
            "outline": [["0 ft", "0 ft"], ["53.5 ft", "0 ft"], ["53.5 ft", "30 in"], ["10 ft", "30 in"]],
            "obstacles": [{"name": "post", "x": "20 ft", "y": "15 in", "diameter": "4 in", "keep_clear": "3 in",
                           "rows": [1]}], "slope": "2.5 %", "drip_lines": ["8 in", "22 in"],
            "history": [{"season": 2026, "family": "Solanaceae", "crop": "Tomato"}],
            "usable_from": "2027-04-02"}],
  "crops": [{"id": "beet", "name": "Beetroot", "in_row": "3 in", "row_spacing": ["12 in", "1' 6\\""],
             "family": "Amaranthaceae", "establish": "direct", "edge": "6 in", "plants_per_area": "40 / sq ft",
             "spread": "8 in", "field_loss": "20 %", "spare": "12.5%", "germination": "92 %", "seeds_per_cell": 2,
             "clump": 4, "seedlings_per_seed": 2.5,
             "tray_cells": 128, "field_days": 65, "raising_days": 30, "hardening_days": 7,
             "seeds_per_row": "12 / ft", "seeder_slack": "10 %", "seeds_per_gram": 60, "note": "thin early",
             "days_from": "setting out", "cool_days": 10, "harvest_days": 14, "pot_up_days": 12, "oldest_days": 50,
             "frost": "half-hardy", "emerges_like": "Beets", "height": "16 in"}],
  "plantings": [{"id": "p1", "bed": "b1", "crop": "beet", "from": "1 ft", "order": "o1", "pattern": "staggered",
                 "rows": 2, "in_row": "4 in", "row_spacing": ["12 in", "15 in"], "edge": "5 in", "slack": "6 in",
                 "round_up_to": "1 ft", "in_ground": "2028-02-29", "out": "2028-05-28", "note": "first", "plants": 9,
                 "keep_clear": "6 in", "reserved": "leave row empty", "end_margin": "2 in",
                 "direction": "across", "twin_spacing": "4 in", "offsets": ["6 in", "1 ft"], "cell": "1 ft",
                 "plants_per_cell": 4, "remainder": "spread", "phase": "best", "sow": "2028-02-29",
                 "ready": "2028-05-05", "cool_days": 7, "soil": "10 °C", "market": 2, "series": "s1", "wish": "w1",
                 "sow_cells": 28, "letter": "C", "clump": 3, "seeds_per_cell": 5,
                 "actual": {"sown": "2028-03-01", "emerged": "2028-03-14", "stand": 90, "potted_up": "2028-03-16",
                            "hardened": "2028-03-20",
                            "set_out": "2028-03-28", "planted": 88, "harvested": "2028-05-06",
                            "cleared": "2028-05-30", "cells": 128, "stand_row": "6 ft", "standing": 80,
                            "counted": "2028-04-02", "failed_rows": [2, 3]}},
                {"id": "p2", "bed": "b1", "crop": "beet", "length": "2 ft", "pattern": "straight", "from": "4 ft",
                 "gaps_of": "p1"}],
  "orders": [{"id": "o1", "crop": "beet", "units": 40, "on": "2028-05-06", "plants_per_unit": 5, "lead_days": 2,
              "note": "bunches", "times": 3, "every_days": 14}],
  "wishes": [{"id": "w1", "crop": "beet", "least": 20, "most": 90, "days": 60, "earliest": "2028-06-01",
              "latest": "2028-09-01", "worth": 0.25, "beds": ["b1"], "pattern": "triangular", "rows": 3,
              "piece": 10, "times": 3, "every_days": 10}],
  "covers": [{"id": "c1", "bed": "b1", "from": "1 ft", "to": "20 ft", "on": "2028-03-01", "off": "2028-05-01",
              "hoop_spacing": "4 ft", "hoop_shape": "half-ellipse", "rise": "30 in",
              "leg": "8 in", "sheeting": "clear film over cloth", "buried": "6 in", "apron": "10 in", "end": "2 ft",
              "layers": 2}],
  "ground": [{"bed": "b1", "x": "12 ft", "y": "3' 6\\"", "turn": "92.5°"}],
  "tunnels": [{"id": "t1", "name": "Polythene", "x": "10 ft", "y": "2 ft", "length": "70 ft", "width": "16 ft",
               "turn": "92.5", "cold_edge": "18 in"}],
  "paths": [{"id": "w1", "name": "Cart way", "x": "0 ft", "y": "0 ft", "length": "90 ft", "width": "6 ft",
             "turn": "90°"}],
  "goods": [{"id": "g1", "kind": "tray", "name": "wide", "crop": "beet", "pack": "10", "in_store": "7 trays",
             "price": "12.50", "year": 2027, "germination": "85 %", "cells": 128, "length": "21.4 in",
             "width": "11 in", "mix": "1/4 cu ft"}],
  "feeds": [{"id": "f1", "name": "Feather meal", "rate": "3 lb / 100 sq ft", "beds": ["b1"]}],
  "jugs": [{"id": "j1", "bed": "b1", "from": "1 ft", "to": "9 ft", "volume": "1 gal", "diameter": "6 in",
            "count": 12, "warm": "55 F", "cold": "40 °F", "loss": "20 Btu / sq ft h"}]
}
"""

Where = tuple[str | int, ...]
FIELDS: list[Where] = [
    (name, *inside, key)
    for name, part in json.loads(EVERY_FIELD).items()
    if name != "gardenplot"
    for inside, fields in ([((), part)] if isinstance(part, dict) else [((0,), part[0])])
    for key in fields
]
OBJECTS: list[Where] = [(), ("place",), *(where[:2] for where in FIELDS if where[-1] == "id")]


def place_of(where: Where) -> str:
    """A place as it is named to a person: beds[0].length."""
    return "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in where).lstrip(".")


def part_at(raw: Any, where: Where) -> Any:
    """What stands at a place of a raw plan."""
    for step in where:
        raw = raw[step]
    return raw


def changed(text: str, where: Where, value: Any) -> str:
    """The text of a plan with another value at one place."""
    raw = json.loads(text)
    part_at(raw, where[:-1])[where[-1]] = value
    return json.dumps(raw)


def refusal(text: str) -> str:
    """The sentence with which a text is refused as a plan."""
    with pytest.raises(FileError) as refused:
        plan_of_text(text)
    return str(refused.value)


def test_a_plan_written_by_hand_opens_as_it_was_meant() -> None:
    opened = plan_of_text(BY_HAND)
    plan = opened.plan
    assert opened.problems == ()
    assert plan.place.units is Units.METRIC
    assert plan.place.last_freeze[0] == (parse_share("50%"), MonthDay(5, 18))
    assert plan.beds[0].length == Length(15 * M, "15 m")
    assert plan.crops[0].row_spacing == (Length(30 * CM, "30 cm"), Length(45 * CM, "45 cm"))
    assert [(one.plants, one.length, one.pattern, one.rows) for one in plan.plantings] == [
        (120, None, Pattern.STRAIGHT, None),
        (None, parse_length("2 m"), Pattern.STAGGERED, 2),
    ]
    assert plan.plantings[1].out == date(2027, 5, 28)


def test_a_plan_with_every_field_says_none_of_them_is_unknown() -> None:
    opened = plan_of_text(EVERY_FIELD)
    assert not opened.problems
    parts = [opened.plan.place, *(part_at(attrs.asdict(opened.plan, recurse=False), where) for where in OBJECTS[2:])]
    asked_elsewhere = {
        "unknown", "depth", "length", "diameter", "box", "map_length",
        "units_per_plant", "row_per_unit", "hardens", "gaps_of",
    }  # fmt: skip
    left_out = [
        field.name
        for part in parts
        for field in attrs.fields(type(part))
        if getattr(part, field.name) == field.default and field.name not in asked_elsewhere
    ]
    assert left_out == []


def test_the_least_plan_is_a_version() -> None:
    assert plan_of_text('{"gardenplot": 1}').plan == Plan()


@pytest.mark.parametrize("text", [BY_HAND, EVERY_FIELD])
def test_what_was_typed_is_written_back_as_it_was_typed(text: str) -> None:
    typed = json.loads(text.replace(', "hoop_shape": "half-round"', ""))
    saved = json.loads(text_of(plan_of_text(text).plan))
    assert json.dumps(saved, sort_keys=True) == json.dumps(typed, sort_keys=True)


@given(plans())
def test_a_saved_plan_loads_equal(plan: Plan) -> None:
    assert plan_of_text(text_of(plan)).plan == plan


@given(plans())
def test_a_loaded_plan_is_saved_with_the_very_same_text(plan: Plan) -> None:
    text = text_of(plan)
    assert text_of(plan_of_text(text).plan) == text
    assert json.dumps(json.loads(text), ensure_ascii=False, indent=2) + "\n" == text


@pytest.mark.parametrize("make", [metric_plan, feet_plan])
def test_a_plan_saved_twice_gives_the_same_bytes(make: Callable[[], Plan], tmp_path: Path) -> None:
    first, second = tmp_path / "first.gardenplot", tmp_path / "second.gardenplot"
    write_plan(first, make())
    write_plan(second, read_plan(first).plan)
    assert read_plan(second).plan == make()
    assert first.read_bytes() == second.read_bytes()


def test_a_plan_file_is_good_to_read_and_to_compare() -> None:
    text = text_of(plan_of_text(EVERY_FIELD).plan)
    assert text.startswith('{\n  "gardenplot": 1,\n  "place": {\n    "name": "Låg Äng",\n')
    assert text.endswith("}\n")
    assert '      "length": "53.5 ft",\n      "width": "30\\"",\n' in text


@pytest.mark.parametrize("where", OBJECTS, ids=place_of)
def test_an_unknown_field_is_said_and_kept_and_written_back(where: Where) -> None:
    value = {"z": [1, None, 2.5], "a": "é", "big": 10**30}
    opened = plan_of_text(changed(EVERY_FIELD, (*where, "colour"), value))
    assert opened.problems == (f"{place_of((*where, 'colour'))}: is not known; it is kept as it is",)
    kept = part_at(json.loads(text_of(opened.plan)), (*where, "colour"))
    assert json.dumps(kept) == json.dumps(value)


def test_every_cut_off_file_names_line_and_column() -> None:
    whole = BY_HAND.rstrip()
    for end in range(len(whole)):
        assert re.match(r"line \d+, column \d+: \w", refusal(whole[:end])), whole[:end]


def test_a_forgotten_comma_is_found_at_its_line_and_column() -> None:
    assert refusal('{\n  "gardenplot": 1\n     "beds": []\n}').startswith("line 3, column 6: ")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('{"gardenplot": 2}', "a newer gardenplot made it"),
        ('{"gardenplot": 0}', "0 is no format version"),
        ('{"gardenplot": "1"}', '"1" is no format version'),
        ('{"gardenplot": true}', "true is no format version"),
        ('{"beds": []}', "this is no plan"),
        ("[1]", "this is no plan"),
        ("null", "this is no plan"),
        ('{"gardenplot": 1, "beds": {}}', "beds: a list"),
        ('{"gardenplot": 1, "beds": [1]}', "beds[0]: an object"),
        ('{"gardenplot": 1, "place": []}', "place: an object"),
        ('{"gardenplot": 1, "place": {"name": "a", "name": "b"}}', "“name” stands twice"),
        ('{"gardenplot": 1, "x": NaN}', "NaN is no number"),
        ('{"gardenplot": 1, "x": -Infinity}', "-Infinity is no number"),
        ('{"gardenplot": 1, "x": 1e999}', "1e999 is no number"),
        ('{"gardenplot": 1, "x": ' + "9" * 5000 + "}", "digits"),
        ('{"gardenplot": 1, "place": {"name": "\\ud800"}}', "half "),
        ('{"gardenplot": 1, "x": {"\\udc00": 1}}', "half "),
        ('{"gardenplot": 1, "x": ' + "[" * 100_000 + "]" * 100_000 + "}", "nested deeper"),
    ],
    ids=lambda text: text[:40],
)
def test_what_is_no_plan_is_refused_with_its_place(text: str, says: str) -> None:
    assert says in refusal(text)


@pytest.mark.parametrize(
    ("where", "value", "says"),
    [
        (("beds", 0, "length"), "0 m", "“0 m” is too small"),
        (("beds", 0, "length"), "-5 m", "“-5 m” is less than nothing"),
        (("beds", 0, "length"), "1e30 m", "“1e30 m” is no length"),
        (("beds", 0, "length"), "20000 m", "longer than 10 km"),
        (("beds", 0, "length"), "9" * 5000 + "/1 m", "is no length"),
        (("beds", 0, "length"), 15, "write it as text with a unit"),
        (("beds", 0, "width"), "75", "“75” is no length"),
        (("beds", 0, "head_margin"), "60 ft", "leave nothing of the bed"),
        (("beds", 0, "id"), "", "an id is needed"),
        (("crops", 0, "in_row"), "0.5 mm", "“0.5 mm” is too small"),
        (("crops", 0, "row_spacing"), ["45 cm", "30 cm"], "is more than the most"),
        (("crops", 0, "field_loss"), "100 %", "leaves nothing"),
        (("crops", 0, "field_loss"), "101 %", "“101 %” is no share"),
        (("crops", 0, "germination"), "0 %", "gives no plants"),
        (("crops", 0, "tray_cells"), 0, "0 does not lie between"),
        (("crops", 0, "field_days"), -1, "-1 does not lie between"),
        (("crops", 0, "seeds_per_gram"), 10**400, "is no number"),
        (("crops", 0, "establish"), "sown", '"sown" is none of'),
        (("plantings", 0, "bed"), "b9", "there is no “b9”"),
        (("plantings", 0, "crop"), "kale", "there is no “kale”"),
        (("plantings", 0, "order"), "o9", "there is no “o9”"),
        (("plantings", 0, "plants"), 0, "0 does not lie between"),
        (("plantings", 1, "plants"), 5, "not both"),
        (("plantings", 0, "in_ground"), "2027-02-29", '"2027-02-29" is no date'),
        (("plantings", 0, "out"), "2028-02-29", "is not after"),
        (("plantings", 1, "id"), "p1", "“p1” is there twice"),
        (("orders", 0, "crop"), "kale", "there is no “kale”"),
        (("orders", 0, "units"), -3, "-3 does not lie between"),
        (("wishes", 0, "beds"), ["b9"], "there is no “b9”"),
        (("wishes", 0, "crop"), "kale", "there is no “kale”"),
        (("covers", 0, "bed"), "b9", "there is no “b9”"),
        (("wishes", 0, "most"), 10, "10 does not lie between 20"),
        (("covers", 0, "to"), "1 ft", "is not beyond"),
        (("place", "latitude"), 91, "does not lie between"),
        (("place", "longitude"), -181, "does not lie between"),
        (("place", "last_freeze"), {"50%": "02-30"}, '"02-30" is no day of the year'),
        (("place", "last_freeze"), {"50%": "W20-4"}, '"W20-4" is no day of the year'),
        (("place", "last_freeze"), {"50%": "05-18", "50% ": "05-19"}, "twice"),
        (("place", "last_freeze"), {"half": "05-18"}, "“half” is no share"),
    ],
    ids=lambda value: place_of(value) if isinstance(value, tuple) else str(value)[:20],
)
def test_a_value_that_makes_no_sense_is_refused_with_its_place(where: Where, value: Any, says: str) -> None:
    sentence = refusal(changed(EVERY_FIELD, where, value))
    assert sentence.startswith((f"{place_of(where)}: ", f"{place_of(where)}."))
    assert says in sentence


VALUES: tuple[Any, ...] = ([[]], {"x": 1}, True)
WRONG_KINDS: list[tuple[Where, Any]] = [
    (where, value)
    for where in FIELDS
    for value in VALUES
    if (where[-1], value) not in (("actual", {"x": 1}), ("watering", {"x": 1}), ("short_days_count", True))
]
"""A value of some other kind for each field; objects may hold what is not known, and short days may count."""


@pytest.mark.parametrize(
    ("where", "value"), WRONG_KINDS, ids=lambda one: place_of(one) if one in FIELDS else str(one)
)
def test_a_value_of_the_wrong_kind_is_refused_with_its_place(where: Where, value: Any) -> None:
    assert refusal(changed(EVERY_FIELD, where, value)).startswith(place_of(where))


@pytest.mark.parametrize("where", [("beds", 0, "name"), ("crops", 0, "name"), ("orders", 0, "on")], ids=place_of)
def test_a_field_that_must_be_there_is_missed(where: Where) -> None:
    raw = json.loads(EVERY_FIELD)
    del part_at(raw, where[:-1])[where[-1]]
    assert refusal(json.dumps(raw)) == f"{place_of(where)}: is missing"


ODD = [
    -1,
    0,
    10**400,
    1e-300,
    "-5 cm",
    "0 cm",
    "1e30 m",
    "1/" + "9" * 5000 + " in",
    "\ud800",
    "a\nb",
    "",
    "p1",
    [],
    {},
]


@st.composite
def damaged_plans(draw: st.DrawFn) -> str:
    """The text of a plan with every field, one value of which is another or gone."""
    part = raw = json.loads(EVERY_FIELD)
    while True:
        step = draw(st.sampled_from(sorted(part) if isinstance(part, dict) else range(len(part))))
        if not part[step] or not isinstance(part[step], dict | list) or draw(st.integers(0, 4)) == 0:
            break
        part = part[step]
    if draw(st.booleans()):
        part[step] = draw(st.sampled_from(ODD) | json_values())
    else:
        del part[step]
    return json.dumps(raw)


def plan_or_none(text: str) -> Plan | None:
    """The plan in a text, or None where it is refused as it should be."""
    try:
        return plan_of_text(text).plan
    except FileError:
        return None


@settings(max_examples=max(600, settings().max_examples))
@given(damaged_plans())
def test_a_damaged_plan_is_refused_or_opens_and_saves(text: str) -> None:
    if plan := plan_or_none(text):
        saved = text_of(plan)
        assert plan_of_text(saved).plan == plan
        assert saved.encode().decode() == saved


@pytest.mark.parametrize("depth", [1, 20, 100, 700, 900, 950, 5000])
def test_what_opens_can_be_saved_however_deep_it_is_nested(depth: int) -> None:
    def saved_below(frames: int, plan: Plan) -> str:
        return saved_below(frames - 1, plan) if frames else text_of(plan)

    plan = plan_or_none('{"gardenplot": 1, "x": ' + "[" * depth + "]" * depth + "}")
    assert plan or depth > 50
    assert plan is None or plan_of_text(saved_below(200, plan)).plan == plan


def test_a_file_of_very_many_fields_opens_without_a_wait() -> None:
    text = json.dumps({"gardenplot": 1, **{f"x{number}": number for number in range(40_000)}})
    began = time.process_time()
    assert len(plan_of_text(text).problems) == 40_000
    assert time.process_time() - began < 3


@pytest.mark.parametrize(
    "content",
    [
        BY_HAND.encode()[:300],
        BY_HAND.replace("Upper Sill", "Låg").encode("latin-1"),
        BY_HAND.encode("utf-16"),
        b"",
        b"\x00\x01",
        b'{"gardenplot": 9}',
        b'{"gardenplot": 1, "a\\nb": 1, "a\\nb": 2}',
        BY_HAND.replace('"crop": "pak-choi"', '"crop": "a\\nb\\u001b[2J"').encode(),
        BY_HAND.replace("15 m", "a\\nb").encode(),
    ],
    ids=range(9),
)
def test_a_bad_file_is_refused_in_one_line_that_names_it(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "spring.gardenplot"
    path.write_bytes(content)
    with pytest.raises(FileError) as refused:
        read_plan(path)
    assert str(refused.value).startswith(f"{path}: ")
    assert str(refused.value).isprintable()


@pytest.mark.parametrize("name", ["", "missing", "missing/plan", "file/plan", "x" * 300, "nought\0"])
def test_what_is_no_file_is_refused_by_its_name(name: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text(BY_HAND)
    with pytest.raises(FileError, match="cannot be read: ") as refused:
        read_plan(tmp_path / name)
    assert str(refused.value).startswith(f"{tmp_path}")


def test_a_file_that_may_not_be_read_says_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> str:
        raise PermissionError(13, "Permission denied")

    path = tmp_path / "spring.gardenplot"
    path.write_text(BY_HAND)
    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(FileError, match=re.escape(f"{path}: cannot be read: permission is refused")):
        read_plan(path)


def test_a_file_larger_than_any_plan_is_not_even_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.gardenplot"
    with path.open("wb") as file:
        file.truncate(LARGEST + 1)
    with pytest.raises(FileError, match="larger than 16 MB"):
        read_plan(path)


def test_a_byte_order_mark_before_the_plan_does_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "spring.gardenplot"
    path.write_text(BY_HAND, encoding="utf-8-sig")
    assert read_plan(path).plan == plan_of_text(BY_HAND).plan
