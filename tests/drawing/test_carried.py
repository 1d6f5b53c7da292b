"""What is carried to a bed: the same on its sheet, on the list and from the command, each thing counted once."""

import json
from datetime import date
from pathlib import Path

import pytest

from gardenplot.__main__ import main
from gardenplot.drawing.carried import carried, carried_words, covers_of, tape_number, turn_days
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.drawing.turns import turns
from gardenplot.layout import lay_out_plan
from gardenplot.plan import GoodKind, Plan
from gardenplot.plan.edits import change_place
from gardenplot.plan.file import write_plan
from gardenplot.supplies.shopping import EVERYTHING, Asked
from gardenplot.units import M, Units, parse_length
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.layout.ground import Fields
from tests.sheets.pdf_pages import plain
from tests.sheets.printed import printed

S3_TOMATOES = date(2025, 5, 12)


def words_of(plan: Plan) -> list[list[str]]:
    """What is carried in words, turn by turn."""
    return [
        [carried_words(plan, need) for one in carried(plan, laid, layouts) for need in one.needs]
        for laid in (one.without_trays for one in lay_out_plan(plan))
        for layouts in turns(laid)
    ]


def marking(plan: Plan, asked: Asked = EVERYTHING) -> dict[str, tuple[str, ...]]:
    """The rows of the list that mark beds: needed, in store, to buy, cost."""
    return {
        row.cells[0]: row.cells[1:]
        for group in shop_groups(plan, asked) if group.name == "Marking" for row in group.rows
    }  # fmt: skip


def rows_of_two(**more: object) -> list[Fields]:
    """Two plantings of a crop, 20 cm apart in rows of 30 cm."""
    return [{"id": f"p{number}", "bed": "b1", "crop": "c1", "from": f"{3 * number} m", "plants": 12} | more
            for number in range(2)]  # fmt: skip


def two_blocks(place: Fields | None = None, establish: str = "transplant", **more: object) -> Plan:
    """A bed of 12 x 1.2 m with two blocks."""
    crop = {"id": "c1", "name": "Kale", "in_row": "20 cm", "row_spacing": "30 cm", "establish": establish} | more
    bed = {"id": "b1", "name": "Tunnel", "length": "12 m", "width": "1.2 m"}
    return plan_from(place, beds=[bed], crops=[crop], plantings=rows_of_two())


@pytest.mark.parametrize("name", ["s1", "s2", "s3", "s4", "s5", "s6"])
def test_sheet_and_command_tell_the_same_things(
    name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    plan = hand_worked(name)
    path = tmp_path / "plan.gardenplot"
    write_plan(path, plan)
    assert main(["supplies", str(path), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)["carry"]
    assert [[thing["says"] for thing in turn["things"]] for turn in told] == words_of(plan)
    pages = printed(plan)
    for words, page in zip(words_of(plan), pages, strict=True):
        for one in words:
            assert plain(one) in page.text


def test_the_list_adds_up_the_stakes_of_all_sheets_and_has_one_string_and_one_tape() -> None:
    """S4 by hand: 5 and 5 stakes and two far corners each; 20 m of string; over 20.04 m of diagonal reaches 21 m."""
    rows = marking(hand_worked("s4"))
    assert rows["stakes"][0] == "14"
    assert rows["string, one for all beds"][0].replace("\u2009", " ") == "21 m"
    assert {"tape of 21\u2009m or more", "dibble"} <= rows.keys()


def test_kept_places_are_pegged_at_both_edges_on_the_sheet_and_on_the_list() -> None:
    """S3 by hand: 23 places of tomatoes, so 46 pegs."""
    plan = hand_worked("s3")
    assert "46 pegs" in words_of(plan)[0]
    assert marking(plan)["pegs for kept places"][0] == "46"


def test_the_list_of_some_days_has_what_marks_the_turns_that_begin_then() -> None:
    plan = hand_worked("s3")
    (laid,) = lay_out_plan(plan)
    assert turn_days(laid) == (date(2025, 3, 25), S3_TOMATOES)
    assert "pegs for kept places" not in marking(plan, Asked(first=S3_TOMATOES, last=S3_TOMATOES))
    assert marking(plan, Asked(first=S3_TOMATOES, last=S3_TOMATOES))["stakes"][0] == "6"
    assert not marking(plan, Asked(first=date(2025, 6, 1)))


def test_a_cover_goes_with_the_turn_that_has_begun_by_its_day() -> None:
    plan = hand_worked("s3")
    (laid,) = lay_out_plan(plan)
    first, second = turns(laid)
    (cover,) = plan.covers
    assert covers_of(plan, laid, first) == (cover,)
    assert covers_of(plan, laid, second) == ()


@pytest.mark.parametrize(
    ("layers", "cloth"), [(1, "7.65 m of cloth, 2.04 m wide"), (3, "3 × 7.65 m of cloth, 2.04 m wide")]
)
def test_each_layer_of_cloth_is_a_piece_of_its_own(layers: int, cloth: str) -> None:
    """By hand: 6.25 m and 70 cm at both ends; half-round over 1.2 m is 1.885 m, and 8 cm at both sides 2.045."""
    cover: Fields = {"id": "c", "bed": "b1", "from": "0 m", "to": "6.25 m", "hoop_spacing": "1.3 m", "apron": "8 cm",
                     "end": "70 cm", "leg": "20 cm", "layers": layers}  # fmt: skip
    bed = {"id": "b1", "name": "Tunnel", "length": "12 m", "width": "1.2 m"}
    crop = {"id": "c1", "name": "Kale", "in_row": "20 cm", "row_spacing": "30 cm"}
    plan = plan_from(beds=[bed], crops=[crop], plantings=rows_of_two(), covers=[cover])
    assert cloth in [plain(words) for words in words_of(plan)[0]]
    assert cloth in printed(plan)[0].text


@pytest.mark.parametrize(
    ("bed", "reach"),
    [
        ({"length": "12 m", "width": "75 cm"}, 13),
        ({"length": "12 m", "width": "1 mm"}, 13),
        ({"diameter": "3 m"}, 3),
        ({"box": {"length": "4.4 m", "width": "3.4 m", "board": "10 cm", "post": "10 cm"}}, 5),
    ],
)
def test_a_tape_reaches_over_the_diagonal_in_whole_metres(bed: Fields, reach: int) -> None:
    """By hand: 12 x 0.75 m has 12.02 m of diagonal; between posts 4 x 3 m have 5 m."""
    (found,) = plan_from(beds=[{"id": "b1", "name": "Bed"} | bed]).beds
    assert tape_number(found, Units.METRIC).value == reach * M


def test_spacing_tools_are_those_of_the_growers_own_list_and_what_it_lacks_is_a_strip() -> None:
    own = two_blocks({"markable_in_row": ["20 cm", "25 cm"], "markable_rows": ["40 cm"]})
    assert {"spacing tool 20\u2009cm", "spacing strip 30\u2009cm"} <= set(words_of(own)[0])
    rows = marking(own)
    assert rows["spacing tool, every 20\u2009cm"] == ("1", "1", "nothing", "")
    assert rows["row marker, rows 30\u2009cm apart"] == ("1", "", "1, or a printed strip", "")
    assert not any("spacing" in words for words in words_of(two_blocks())[0])


def test_what_a_seeder_drops_is_not_marked_plant_by_plant() -> None:
    own = change_place(
        two_blocks(establish="direct", seeds_per_row="30 / m"),
        markable_in_row=(parse_length("20 cm"),), markable_rows=(parse_length("30 cm"),),
    )  # fmt: skip
    assert words_of(own)[0][-1] == "row marker 30\u2009cm"


def test_a_tape_in_store_counts_where_it_is_long_enough() -> None:
    goods = [{"id": "g1", "kind": "tape", "length": "10 m", "in_store": "1"}]
    bed: Fields = {"id": "b1", "name": "Tunnel", "length": "12 m", "width": "1.2 m"}
    crop: Fields = {"id": "c1", "name": "Kale", "in_row": "20 cm", "row_spacing": "30 cm"}
    for length, buy in (("10 m", "1"), ("30 m", "nothing")):
        goods[0]["length"] = length
        plan = plan_from(beds=[bed], crops=[crop], plantings=rows_of_two(), goods=goods)
        assert marking(plan)["tape of 13\u2009m or more"][2] == buy


def test_a_number_of_what_is_carried_is_that_of_the_list() -> None:
    plan = hand_worked("s1")
    (laid,) = lay_out_plan(plan)
    carried_here = {need.kind: need.number.value for one in carried(plan, laid, laid.layouts) for need in one.needs}
    listed = {row.item.kind: row.item.needed.value for group in shop_groups(plan) for row in group.rows}
    for kind in (GoodKind.STAKE, GoodKind.STRING, GoodKind.HOOP, GoodKind.WEIGHT, GoodKind.TAPE, GoodKind.DIBBLE):
        assert carried_here[kind] == listed[kind]
