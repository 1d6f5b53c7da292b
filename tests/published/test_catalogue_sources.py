"""The crop catalogue gives a known source for every value and agrees with the table it was made from."""

import csv
import json
import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

CROPS_DIR = Path(__file__).parents[2] / "resources" / "crops"
TABLE = Path(__file__).parent / "tables" / "crops.csv"

Crop = dict[str, Any]
Row = dict[str, str]

COMMON_PRACTICE = "common practice, no source"
UNSOURCED_FIELDS = {"id", "name", "also", "note", "ranges", "sources"}
FIELDS_LEFT_TO_THE_GROWER = {"edge", "field_loss", "spare", "germination"}
FROST_CLASSES = {"hardy", "half-hardy", "tender", "very tender"}
DAYS_FROM = {"transplanting", "sowing", "field planting"}
NOT_IN_TABLE = {"cos-lettuce-small"}
KEYS_OF_RENAMED_CROPS = {
    "aubergine": "eggplant",
    "beetroot": "beet",
    "bulb-fennel": "fennel_florence",
    "chinese-cabbage": "napa_cabbage",
    "coriander": "cilantro",
    "courgette": "summer_squash",
    "endive": "endive_escarole",
    "french-bean-climbing": "bean_pole",
    "french-bean-dwarf": "bean_bush",
    "globe-artichoke": "artichoke",
    "onion": "onion_bulb",
    "rocket": "arugula",
    "spring-onion": "scallion",
    "sunflower-cut": "sunflower_cut",
    "sweet-pepper": "pepper_sweet",
    "sweetcorn": "sweet_corn",
    "tomato-bush": "tomato_determinate",
    "tomato-cordon": "tomato_indeterminate",
}
SOURCE_COLUMNS = {
    "species": "taxon_source",
    "family": "taxon_source",
    "establish": "establishment_source",
    "in_row": "spacing_source",
    "field_days": "dtm_source",
    "days_from": "dtm_source",
    "raising_days": "nursery_source",
    "seeds_per_gram": "seeds_source",
    "height": "height_source",
    "depth": "depth_source",
    "frost": "frost_source",
    "germination_f": "germ_source",
}
RANGE_COLUMNS = {
    "in_row": ("inrow_{}_in", 1),
    "row_spacing": ("row_{}_in", 1),
    "block": ("block_{}_in", 1),
    "field_days": ("dtm_{}", 1),
    "raising_days": ("nursery_weeks_{}", 7),
    "seeds_per_gram": ("seeds_per_gram_{}", 1),
}
CROPS_IN_THE_SCENARIOS = [
    "Beetroot",
    "Broccoli",
    "Bulb fennel",
    "Chinese cabbage",
    "Coriander",
    "Cos lettuce, small",
    "Cucumber",
    "Kohlrabi",
    "Leek",
    "Lettuce, head",
    "Pak choi",
    "Spinach",
    "Summer cabbage",
    "Tomato, bush",
    "Tomato, cordon",
]


def read_json(name: str) -> dict[str, Any]:
    """Read one of the catalogue's files."""
    found: dict[str, Any] = json.loads((CROPS_DIR / name).read_text(encoding="utf-8"))
    return found


def read_rows(path: Path) -> list[Row]:
    """Read a table with a heading line."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


CROPS: list[Crop] = read_json("catalogue.json")["crops"]
SOURCES: dict[str, dict[str, str]] = read_json("sources.json")
ROWS = {row["key"]: row for row in read_rows(TABLE)}
each_crop = pytest.mark.parametrize("crop", CROPS, ids=[crop["id"] for crop in CROPS])
each_crop_in_the_table = pytest.mark.parametrize(
    "crop",
    [crop for crop in CROPS if crop["id"] not in NOT_IN_TABLE],
    ids=[crop["id"] for crop in CROPS if crop["id"] not in NOT_IN_TABLE],
)


def key_of(crop: Crop) -> str:
    """Return the crop's key in the table."""
    plain: str = crop["id"].replace("-", "_")
    return KEYS_OF_RENAMED_CROPS.get(crop["id"], plain)


def row_of(crop: Crop) -> Row:
    """Return the crop's row in the table."""
    return ROWS[key_of(crop)]


def ids_in(source: str) -> list[str]:
    """Split "A (min)+B; memory (max)" into A, B and memory."""
    without_remarks = re.sub(r"\([^)]*\)", "", source)
    return [part.split()[0] for part in re.split(r"[+;]", without_remarks) if part.strip()]


def is_known(source: str) -> bool:
    """Tell whether a source text names only sources that are listed, or says that there is none."""
    if source == COMMON_PRACTICE:
        return True
    return bool(ids_in(source)) and all(one == "memory" or one in SOURCES for one in ids_in(source))


def inches(text: str) -> Fraction:
    """Turn "1 1/2 in" into a number of inches."""
    number, unit = text.rsplit(" ", 1)
    assert unit == "in"
    return sum((Fraction(part) for part in number.split()), Fraction(0))


def number(text: str) -> Fraction:
    """Turn "8 in" or "62" into a number."""
    return inches(text) if text.endswith(" in") else Fraction(text)


def ends(text: str) -> tuple[Fraction, Fraction]:
    """Turn "6 in - 12 in" or "55 - 85" into its two ends."""
    least, most = text.split(" - ")
    return number(least), number(most)


def table_ends(row: Row, columns: str) -> tuple[Fraction, Fraction]:
    """Return the two ends of a range in the table, its column names given as "dtm_{}"."""
    return Fraction(row[columns.format("min")]), Fraction(row[columns.format("max")])


def middle(least: Fraction, most: Fraction) -> int:
    """Return the whole number nearest to the middle, halves rounded up."""
    return int((least + most) / 2 + Fraction(1, 2))


def test_the_file_names_its_format() -> None:
    assert read_json("catalogue.json")["gardenplot_crops"] == 1


def test_every_source_is_described() -> None:
    for source in SOURCES.values():
        assert set(source) == {"author", "title", "year", "found", "taken", "licence"}
        assert all(source.values())


def test_ids_are_unique_and_plain() -> None:
    ids = [crop["id"] for crop in CROPS]
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch(r"[a-z]+(-[a-z]+)*", one) for one in ids)


def test_no_two_crops_share_a_name() -> None:
    names = [name.casefold() for crop in CROPS for name in [crop["name"], *crop["also"]]]
    assert len(set(names)) == len(names)


def test_crops_are_in_order_of_name() -> None:
    names = [crop["name"].casefold() for crop in CROPS]
    assert names == sorted(names)


@pytest.mark.parametrize("name", CROPS_IN_THE_SCENARIOS)
def test_crop_is_there(name: str) -> None:
    assert any(name in [crop["name"], *crop["also"]] for crop in CROPS)


def test_every_row_of_the_table_became_a_crop() -> None:
    assert {key_of(crop) for crop in CROPS if crop["id"] not in NOT_IN_TABLE} == set(ROWS)


@each_crop
def test_every_value_has_a_known_source(crop: Crop) -> None:
    assert set(crop["sources"]) == set(crop) - UNSOURCED_FIELDS
    assert [field for field, source in crop["sources"].items() if not is_known(source)] == []


@each_crop
def test_crop_has_what_a_layout_needs(crop: Crop) -> None:
    assert crop["establish"] in {"transplant", "direct"}
    assert inches(crop["in_row"]) > 0
    spacings = [inches(text) for text in crop["row_spacing"]]
    assert len(spacings) in {1, 2}
    assert spacings == sorted(set(spacings))
    assert spacings[0] > 0


@each_crop
def test_the_growers_own_fields_are_left_out(crop: Crop) -> None:
    assert not FIELDS_LEFT_TO_THE_GROWER & set(crop)


@each_crop
def test_days_are_whole_and_say_where_they_start(crop: Crop) -> None:
    assert ("field_days" in crop) == ("days_from" in crop)
    assert ("raising_days" in crop) == ("hardening_days" in crop)
    assert crop.get("days_from", "sowing") in DAYS_FROM
    for field in ["field_days", "raising_days", "hardening_days"]:
        assert isinstance(crop.get(field, 1), int)
    if "raising_days" in crop:
        assert crop["establish"] == "transplant"
        assert 0 < crop["hardening_days"] < crop["raising_days"]


@each_crop
def test_frost_class_is_one_of_four(crop: Crop) -> None:
    assert crop["frost"] in FROST_CLASSES


@each_crop
def test_germination_temperatures_rise(crop: Crop) -> None:
    known = crop.get("germination_f", {})
    temperatures = [known.get("min"), *known.get("opt", []), known.get("max")]
    seen = [one for one in temperatures if one is not None]
    assert seen == sorted(seen)


@each_crop
def test_ranges_contain_the_chosen_values(crop: Crop) -> None:
    ranges = crop.get("ranges", {})
    for field in {"in_row", "field_days", "raising_days", "seeds_per_gram"} & set(ranges):
        least, most = ends(ranges[field])
        assert least <= number(str(crop[field])) <= most, field


@each_crop
def test_row_spacing_lies_in_a_printed_range(crop: Crop) -> None:
    ranges = crop.get("ranges", {})
    printed = [ends(ranges[field]) for field in ["block", "row_spacing"] if field in ranges]
    for spacing in [inches(text) for text in crop["row_spacing"]]:
        assert not printed or any(least <= spacing <= most for least, most in printed)


@each_crop_in_the_table
def test_spacings_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    least, most = table_ends(row, "inrow_{}_in")
    assert least <= inches(crop["in_row"]) <= most
    seen = [columns for columns in ["row_{}_in", "block_{}_in"] if row[columns.format("min")]]
    printed = [table_ends(row, columns) for columns in seen]
    if not printed:
        assert crop["sources"]["row_spacing"] == "memory"
    for spacing in [inches(text) for text in crop["row_spacing"]]:
        assert not printed or any(low <= spacing <= high for low, high in printed)


@each_crop_in_the_table
def test_row_spacing_names_the_sources_of_its_numbers(crop: Crop) -> None:
    row = row_of(crop)
    named = set(ids_in(crop["sources"]["row_spacing"]))
    if row["block_min_in"]:
        assert set(ids_in(row["block_source"])) <= named
        assert named <= set(ids_in(row["block_source"] + "+" + row["spacing_source"]))
    elif row["row_min_in"]:
        assert crop["sources"]["row_spacing"] == row["spacing_source"]


@each_crop_in_the_table
def test_ranges_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    for field, text in crop.get("ranges", {}).items():
        columns, factor = RANGE_COLUMNS[field]
        least, most = table_ends(row, columns)
        assert ends(text) == (least * factor, most * factor), field


@each_crop_in_the_table
def test_no_printed_range_is_lost(crop: Crop) -> None:
    row = row_of(crop)
    for field, (columns, _) in RANGE_COLUMNS.items():
        chosen = field in crop or field == "block"
        if chosen and row[columns.format("min")] != row[columns.format("max")]:
            assert field in crop["ranges"], field


@each_crop_in_the_table
def test_seeds_per_gram_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    assert ("seeds_per_gram" in crop) == bool(row["seeds_per_gram_min"])
    if row["seeds_per_gram_min"]:
        assert crop["seeds_per_gram"] == middle(*table_ends(row, "seeds_per_gram_{}"))


@each_crop_in_the_table
def test_days_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    assert ("field_days" in crop) == bool(row["dtm_min"])
    if row["dtm_min"]:
        assert crop["field_days"] == middle(*table_ends(row, "dtm_{}"))
        expected = row["dtm_from"] if row["dtm_from"] in DAYS_FROM else "field planting"
        assert crop["days_from"] == expected
    if "raising_days" in crop:
        least, most = table_ends(row, "nursery_weeks_{}")
        assert crop["raising_days"] == middle(least * 7, most * 7)


@each_crop_in_the_table
def test_depth_and_height_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    if "depth" in crop:
        assert tuple(inches(text) for text in crop["depth"]) == table_ends(row, "depth_{}_in")
    if "height" in crop:
        assert crop["height"] == [f"{row['height_min_cm']} cm", f"{row['height_max_cm']} cm"]


@each_crop_in_the_table
def test_frost_and_germination_agree_with_the_table(crop: Crop) -> None:
    row = row_of(crop)
    known = crop.get("germination_f", {})
    found = [known.get("min", ""), *known.get("opt", ["", ""]), known.get("max", "")]
    printed = [row[f"germ_{part}_f"] for part in ["min", "opt_min", "opt_max", "max"]]
    assert [str(one) for one in found] == printed
    assert crop["frost"] == row["frost_class"]


@each_crop_in_the_table
def test_sources_are_written_as_in_the_table(crop: Crop) -> None:
    row = row_of(crop)
    for field in set(SOURCE_COLUMNS) & set(crop):
        assert crop["sources"][field] == row[SOURCE_COLUMNS[field]], field


@each_crop_in_the_table
def test_a_choice_between_two_methods_has_a_note(crop: Crop) -> None:
    row = row_of(crop)
    assert (crop["species"], crop["family"]) == (row["species"], row["family"])
    if row["establishment"] == "either":
        assert crop["note"]
    if row["establishment"] in {"direct", "set"}:
        assert crop["establish"] == "direct"
    if row["establishment"] == "transplant":
        assert crop["establish"] == "transplant"


@pytest.mark.parametrize(
    ("table", "column"),
    [("germination_temps.csv", "use_source"), ("frost_temps.csv", "source"), ("rowcover.csv", "source")],
)
def test_tables_name_known_sources(table: str, column: str) -> None:
    for row in read_rows(CROPS_DIR / "tables" / table):
        assert is_known(row[column]), row
