"""The shopping list on paper: every thing once with what to buy, a box each, legible, the same bytes each time."""

from datetime import date
from pathlib import Path

import pytest
from attrs import evolve

from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.errors import PlanError
from gardenplot.plan import Good, GoodKind, Jugs, Plan
from gardenplot.plan.edits import change_crop
from gardenplot.plan.file import read_plan
from gardenplot.sheets.paper import Paper
from gardenplot.units import parse_amount, parse_length, parse_price, parse_volume
from tests.drawing.hand_worked import hand_worked
from tests.sheets.made import shopping_sheet
from tests.sheets.pdf_pages import pages_of, plain
from tests.sheets.test_lists import LONG, ODD, assert_legible, boxes, each_paper, example

DAY = date(2027, 2, 26)
SAMPLES = Path(__file__).parents[2] / "samples"
BOX = 12.0


def stocked() -> Plan:
    """The first example with seed and weights in store, and prices."""
    plan = example()
    seed = Good("g1", GoodKind.SEED, crop=plan.crops[0].id, pack=parse_amount("250 seeds"), price=parse_price("4.20"))
    return evolve(plan, goods=(seed, Good("g2", GoodKind.WEIGHT, in_store=parse_amount("200"))))


@each_paper
def test_every_thing_stands_on_the_list_once_with_a_box_and_what_to_buy(paper: Paper) -> None:
    plan = stocked()
    pages = pages_of(shopping_sheet(plan, paper, printed=DAY).pdf)
    words = [plain(one.text) for page in pages for one in page.words]
    rows = [row for group in shop_groups(plan) for row in group.rows]
    for row in rows:
        assert words.count(plain(row.cells[0])) == 1
        assert plain(row.cells[3] or row.cells[1]) in words
    assert sum(boxes(page, BOX) for page in pages) == len(rows)
    for page in pages:
        assert_legible(page, paper)


def test_what_it_costs_and_what_has_no_price_is_told_below() -> None:
    (page,) = pages_of(shopping_sheet(stocked(), Paper.A4, printed=DAY).pdf)
    told = plain(" ".join(one.text for one in page.words))
    assert "Cost: " in told
    assert "that have no price" in told
    assert "Treated seed is no food" in told


@pytest.mark.parametrize("name", [LONG, ODD])
def test_names_of_any_kind_are_printed_as_they_were_typed_or_cut(name: str) -> None:
    plan = change_crop(stocked(), stocked().crops[0].id, name=name)
    for page in pages_of(shopping_sheet(plan, Paper.LETTER, printed=DAY).pdf):
        assert_legible(page, Paper.LETTER)


def test_the_same_plan_and_day_give_the_same_bytes() -> None:
    first, second = (shopping_sheet(stocked(), Paper.A4, printed=DAY).pdf for _turn in range(2))
    assert first == second


def test_what_a_number_needs_is_told_whole_where_there_is_room_beside_it() -> None:
    (page,) = pages_of(shopping_sheet(hand_worked("s1"), Paper.A4).pdf)
    (words,) = [one for one in page.words if one.text.startswith("not in the plan")]
    assert (words.text, words.size) == ("not in the plan: cloth beyond each end", 14)


def test_where_nothing_is_needed_there_is_no_list() -> None:
    with pytest.raises(PlanError, match="nothing is needed"):
        shopping_sheet(Plan(), Paper.A4)


@each_paper
def test_jugs_on_the_list_bring_their_caution(paper: Paper) -> None:
    along = parse_length("0 m"), parse_length("5 m")
    jugs = Jugs("j1", example().beds[0].id, *along, parse_volume("4 l"), parse_length("17 cm"))
    with_jugs = evolve(example(), jugs=(jugs,))
    for plan, is_said in ((example(), False), (with_jugs, True)):
        text = plain(" ".join(page.text for page in pages_of(shopping_sheet(plan, paper, printed=DAY).pdf)))
        assert ("bleach against algae never on plants" in text) is is_said
        assert ("No jugs that held chemicals" in text) is is_said


@each_paper
def test_covers_and_drip_lines_on_the_list_bring_their_cautions_above_which_it_ends(paper: Paper) -> None:
    kestrel_howe = read_plan(SAMPLES / "kestrel-howe.gardenplot").plan
    cautions = {"Snow and wind bring covers down", "Water on food crops has to be clean"}
    for plan, said in ((kestrel_howe, cautions), (hand_worked("s4"), set[str]())):
        for page in pages_of(shopping_sheet(plan, paper, printed=DAY).pdf):
            assert {words for words in cautions if words in plain(page.text)} == said
            feet = [one.box[3] for one in page.words if one.size == pytest.approx(9)]
            assert max(feet) < min(one.box[1] for one in page.words if one.size > 11)


def test_seed_is_told_with_its_weight_and_what_is_not_known_by_the_plants_that_it_is_for() -> None:
    """S2 by hand: 832 clusters at 60 to a gram are 13.9 g. Without germination it is seed for 100 broccoli plants."""
    plan = hand_worked("s2")
    broccoli = next(crop.id for crop in plan.crops if crop.name == "Broccoli")
    (page,) = pages_of(shopping_sheet(change_crop(plan, broccoli, germination=None), Paper.A4).pdf)
    words = [plain(one.text) for one in page.words]
    assert "832 seeds, 13.9 g" in words
    assert "seed for 100 plants; not in the plan: germination" in words


def test_what_is_bought_is_told_beside_what_is_needed_and_in_store() -> None:
    """1 packet of 250 for S1's 175 seeds; of 200 weights in store none is to be bought."""
    plan = hand_worked("s1")
    seed = Good("g1", GoodKind.SEED, crop=plan.crops[0].id, pack=parse_amount("250 seeds"), price=parse_price("4.20"),
                in_store=parse_amount("20 seeds"))  # fmt: skip
    (page,) = pages_of(shopping_sheet(evolve(plan, goods=(seed,)), Paper.A4).pdf)
    words = [plain(one.text) for one in page.words]
    row = words.index("1 × 250 seeds")
    assert words[row + 1 : row + 4] == ["needed: 175 seeds", "in store: 20 seeds", "4.20"]
    assert_legible(page, Paper.A4)


def test_trays_stand_on_the_list_from_small_to_large() -> None:
    sizes = [int(row.cells[0].split()[2]) for group in shop_groups(example()) for row in group.rows
             if row.item.kind is GoodKind.TRAY]  # fmt: skip
    assert len(sizes) > 2
    assert sizes == sorted(sizes)
