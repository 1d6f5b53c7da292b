"""Spacings that no tool of the place can mark are found, with the nearest and its cost in plants."""

import json
from typing import Any

import pytest

from gardenplot.drawing.finding_numbers import finding_numbers
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says
from gardenplot.findings import Kind, find_all, find_unmarkable
from gardenplot.gestures.reading import list_from, list_text
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.units import Units, parse_length

Fields = dict[str, Any]


def plan_of(place: Fields, planting: Fields) -> Plan:
    """Fennel at 25 x 30 cm in a bed of 15 m."""
    parts: Fields = {
        "place": place,
        "beds": [{"id": "b", "name": "Bed", "length": "15 m", "width": "76 cm"}],
        "crops": [{"id": "c", "name": "Fennel", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "7.5 cm"}],
        "plantings": [{"id": "p", "bed": "b", "crop": "c", "length": "14 m"} | planting],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def found(place: Fields, planting: Fields) -> list[tuple[Kind, str, int]]:
    """Kind, nearest spacing in cm and cost in plants of what cannot be marked."""
    unmarkable = find_unmarkable(plan_of(place, planting))
    return [(one.kind, f"{one.limit / 1e7:g} cm", one.plants) for one in unmarkable]


IN_ROW, ROWS, PAIR = Kind.NOT_MARKABLE_IN_ROW, Kind.NOT_MARKABLE_ROWS, Kind.NOT_MARKABLE_PAIR
TWIN: Fields = {"pattern": "twin", "row_spacing": "40 cm", "twin_spacing": "15 cm"}


@pytest.mark.parametrize(
    ("place", "planting", "kinds"),
    [
        ({}, {"in_row": "29.3 cm"}, []),
        ({"markable_in_row": ["20 cm", "25 cm"]}, {}, []),
        ({"markable_in_row": ["20 cm", "30 cm"]}, {}, [(IN_ROW, "30 cm", 3 * (46 - 56))]),
        ({"markable_in_row": "10 in"}, {}, [(IN_ROW, "25.4 cm", 3 * (55 - 56))]),
        ({"markable_rows": ["20 cm"]}, {}, [(ROWS, "20 cm", 56)]),
        ({"markable_rows": ["20 cm"]}, {"rows": 1}, []),
        ({"markable_rows": ["20 cm"]}, {"pattern": "broadcast"}, []),
        ({"markable_rows": ["30 cm"]}, {"pattern": "triangular"}, [(ROWS, "30 cm", 167 - 167)]),
    ],
)
def test_what_is_off_the_list_is_found_with_its_cost(
    place: Fields, planting: Fields, kinds: list[tuple[Kind, str, int]]
) -> None:
    assert found(place, planting) == kinds


@pytest.mark.parametrize(
    ("rows", "more", "kinds"),
    [
        (["15 cm", "40 cm"], {}, []),
        (["20 cm", "40 cm"], {}, [(PAIR, "20 cm", 0)]),
        (["25 cm", "40 cm"], {}, [(PAIR, "25 cm", 2 * 56 - 4 * 56)]),
        (["10 cm", "40 cm"], {}, [(PAIR, "10 cm", 0)]),
        (["40 cm", "45 cm"], {}, [(PAIR, "0 cm", 0)]),
        (["15 cm"], {"rows": 2}, []),
        (["20 cm"], {"rows": 2}, [(PAIR, "20 cm", 0)]),
    ],
)
def test_rows_of_a_pair_are_marked_as_others_are(
    rows: list[str], more: Fields, kinds: list[tuple[Kind, str, int]]
) -> None:
    """Pairs 40 cm apart in 76 cm, 7.5 cm at the edge: (76 - 15 - 15) / 40 = 1.15, 2 pairs of 15 cm, 4 rows of 56.

    With 20 cm in a pair (76 - 15 - 20) / 40 = 1.03 are 2 pairs as well, with 25 cm it is one. A single pair asks
    nothing of the rows between pairs.
    """
    assert found({"markable_rows": rows}, TWIN | more) == kinds


def test_what_no_tool_marks_in_a_pair_is_told_with_the_nearest() -> None:
    plan = plan_of({"markable_rows": ["10 cm", "40 cm"]}, TWIN)
    (one,) = find_unmarkable(plan)
    words = "rows 15 cm apart in a pair cannot be marked; the nearest is 10 cm: as many plants"
    assert says(plan, one, looks(plan)).replace("\u2009", " ") == words
    plan = plan_of({"markable_rows": ["40 cm"]}, TWIN)
    (one,) = find_unmarkable(plan)
    words = "rows 15 cm apart in a pair cannot be marked, nor any that are closer than the pairs"
    assert says(plan, one, looks(plan)).replace("\u2009", " ") == words


def test_it_is_no_reason_why_a_plan_cannot_be_done() -> None:
    plan = plan_of({"markable_in_row": "20 cm"}, {})
    assert IN_ROW in {one.kind for one in find_all(plan)}
    assert not any(one.cannot_be_done for one in find_all(plan))


def test_a_list_is_typed_as_it_is_shown() -> None:
    lengths = list_from("20 cm; 25; 30", Units.METRIC)
    assert lengths == tuple(parse_length(text) for text in ("20 cm", "25 cm", "30 cm"))
    assert list_from(list_text(lengths), Units.METRIC) == lengths
    assert list_from("", Units.METRIC) == ()


def test_what_is_sown_by_the_row_has_no_places_to_mark() -> None:
    """As its sheet says: "sow 30 / m". Seed that is put into places one by one is marked, and rows always are."""
    place = {"markable_in_row": ["20 cm"], "markable_rows": ["20 cm"]}
    for fields, marks in (({"seeds_per_row": "30 / m"}, {ROWS}), ({"seeds_per_cell": 2}, {IN_ROW, ROWS})):
        raw = json.loads(text_of(plan_of(place, {})))
        raw["crops"][0] |= {"establish": "direct"} | fields
        assert {one.kind for one in find_unmarkable(plan_of_text(json.dumps(raw)).plan)} == marks


@pytest.mark.parametrize("planting", [{"order": "o"}, {}])
def test_a_block_without_a_plant_has_nothing_to_mark(planting: Fields) -> None:
    """One whose order was withdrawn, and one that fills a gap where nothing is left."""
    place: Fields = {"markable_in_row": ["20 cm"], "markable_rows": ["20 cm"]}
    whole = plan_of({}, {"length": "15 m"})
    raw = json.loads(text_of(whole)) | {"place": place}
    raw["orders"] = [{"id": "o", "crop": "c", "units": 0, "on": "2027-06-05"}]
    raw["plantings"].append({"id": "q", "bed": "b", "crop": "c"} | planting)
    plan = plan_of_text(json.dumps(raw)).plan
    assert {one.planting for one in find_unmarkable(plan)} == {"p"}


@pytest.mark.parametrize(
    ("markable", "nearest", "plants", "says_it"),
    [
        (["30 cm", "36 cm"], "30 cm", 0, "30 cm can, within the packet's range: as many plants"),
        (["33 cm", "36 cm"], "33 cm", 0, "the nearest is 33 cm: as many plants"),
        (["25 cm", "36 cm"], "36 cm", -45, "the nearest is 36 cm: −45 plants"),
        (["20 cm", "28 cm", "36 cm"], "28 cm", 0, "28 cm can, within the packet's range: as many plants"),
    ],
)
def test_rows_that_a_range_was_spread_over_may_lie_as_the_packet_says(
    markable: list[str], nearest: str, plants: int, says_it: str
) -> None:
    """(76 − 8) / 28 = 2.4, 3 rows, spread over 68 cm to 34; 36 cm apart there are 2 rows, one of 45 plants less."""
    plan = plan_of(
        {"markable_rows": markable}, {"row_spacing": ["28 cm", "40 cm"], "edge": "4 cm", "length": "11.25 m"}
    )
    (one,) = find_unmarkable(plan)
    assert (f"{one.limit / 1e7:g} cm", one.plants) == (nearest, plants)
    words = says(plan, one, looks(plan)).replace("\u2009", " ")
    assert words == f"rows 34 cm apart cannot be marked; {says_it}"


@pytest.mark.parametrize(
    ("size", "place", "plants", "says_it"),
    [
        # Of 3 rows 10 stand in 4 ranks of 25 cm, 12 places: 1 m holds 5 ranks of 20 cm, 15, and 3 of 30 cm, 9.
        ({"plants": 10}, {"markable_rows": ["28 cm"]}, 0, "the nearest is 28 cm: as many plants"),
        ({"plants": 10}, {"markable_in_row": ["20 cm"]}, 3, "the nearest is 20 cm: +3 plants"),
        ({"plants": 10}, {"markable_in_row": ["30 cm"]}, -1, "the nearest is 30 cm: −1 plant"),
        # 166 stand in 56 ranks, 1 m more holds 60, 180 plants: 57 of 26 cm are 171, 53 of 28 cm 159.
        ({"plants": 166, "slack": "1 m"}, {"markable_rows": ["28 cm"]}, 0, "the nearest is 28 cm: as many plants"),
        ({"plants": 166, "slack": "1 m"}, {"markable_in_row": ["26 cm"]}, 0, "the nearest is 26 cm: as many plants"),
        ({"plants": 166, "slack": "1 m"}, {"markable_in_row": ["28 cm"]}, -7, "the nearest is 28 cm: −7 plants"),
    ],
)
def test_places_that_are_left_empty_are_none_that_another_spacing_gives(
    size: Fields, place: Fields, plants: int, says_it: str
) -> None:
    """Worked by hand; (76 - 15) / 28 = 2.2 are 3 rows as well."""
    plan = plan_of(place, {"length": None} | size)
    (one,) = find_unmarkable(plan)
    assert one.plants == plants
    assert says_it in says(plan, one, looks(plan)).replace("\u2009", " ")
    (more,) = [number for number in finding_numbers(plan, one) if number.name == "more_plants"]
    assert more.value == plants
