"""The count sheet: every planting once with its rows as they are laid out, boxes to write in, nothing over others."""

import re
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.count_list import MOST_BOXES, count_turns
from gardenplot.drawing.letters import looks
from gardenplot.errors import PlanError
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Pattern, Plan
from gardenplot.plan.edits import change_crop
from gardenplot.sheets.book import NothingToPrintError
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.paper import Paper
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans
from tests.sheets.made import made
from tests.sheets.pdf_pages import Page, pages_of, plain
from tests.sheets.test_lists import LONG, ODD, assert_legible, each_paper

DAY = date(2027, 5, 3)
BOX = 38.0, 22.0
FOREIGN = ["Μαρούλι", "Капуста белокочанная", "Rau diếp xoăn", "<b>Chard</b> & %s {0}"]


def pages(plan: Plan, paper: Paper = Paper.A4, choices: Choices | None = None) -> tuple[Page, ...]:
    """The pages of a plan's count sheet, read back."""
    return pages_of(made(plan, paper, Kind.COUNTS, choices or Choices(), day=DAY).pdf)


def blanks(page: Page) -> int:
    """How many boxes to write a count in a page has."""
    sides = (path.size for path in page.paths if path.closed)
    return sum(abs(width - BOX[0]) < 0.01 and abs(height - BOX[1]) < 0.01 for width, height in sides)


def said(plan: Plan, paper: Paper = Paper.A4) -> str:
    """All words of a plan's count sheet."""
    return " ".join(page.text for page in pages(plan, paper))


@settings(max_examples=max(15, settings().max_examples // 20), deadline=None)
@given(plans())
def test_what_is_counted_is_what_is_laid_out(plan: Plan) -> None:
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.without_trays.layouts}
    blocks = [block for turn in count_turns(plan) for block in turn.blocks]
    assert sorted(block.planting for block in blocks) == sorted(layouts)
    for block in blocks:
        layout = layouts[block.planting]
        assert block.plants == layout.plants
        assert block.letter == looks(plan)[block.planting].letter
        assert len(block.boxes) <= MOST_BOXES
        if layout.grid.pattern is Pattern.BROADCAST:
            assert not block.boxes
            assert block.sample
        else:
            assert sum(box.plants for box in block.boxes) == layout.plants
            assert all(box.plants for box in block.boxes)


@settings(max_examples=max(10, settings().max_examples // 40), deadline=None)
@given(plans())
def test_the_words_on_paper_are_the_counts_of_the_layout(plan: Plan) -> None:
    turns = count_turns(plan)
    if not turns:
        with pytest.raises(NothingToPrintError):
            made(plan, Paper.A4, Kind.COUNTS)
        return
    read = pages(plan)
    figures = [plain(one.text) for page in read for one in page.words]
    expected = [
        plain(f"{count:,}".replace(",", " "))
        for turn in turns for block in turn.blocks for count in (*(box.plants for box in block.boxes), block.plants)
    ]  # fmt: skip
    for count in set(expected):
        assert figures.count(count) >= expected.count(count)
    boxes = sum(len(block.boxes) + 1 + block.sample.count("□") for turn in turns for block in turn.blocks)
    assert sum(map(blanks, read)) == boxes
    for page in read:
        assert_legible(page, Paper.A4)


SCENARIOS = {
    "s1": ["0.30 – 7.10 m 4 × 34 = 136", "120 ordered for Sat 17 May: 134 must be planted with 10 % loss, 2 to spare",
           "1 of 34 2 of 34 3 of 34 4 of 34 in all of 136",
           "7.30 – 11.05 m 3 × 15 = 45", "40 ordered for Sat 17 May: 43 must be planted with 5 % loss, 2 to spare"],
    "s2": ["2′ 0″ – 77′ 0″ 2 × 50 = 100",
           "90 ordered for Sat 5 Jul: 100 must be planted with 10 % loss, none to spare",
           "4 × 63 = 252", "252"],
    "s3": ["Tunnel bed, turn 1 of 2 on this ground", "3 × 69 = 207",
           "160 ordered for Sat 10 May: 174 must be planted with 8 % loss, 33 to spare",
           "Tunnel bed, turn 2 of 2 on this ground", "23 plants"],
    "s4": ["2 × 46 + 45 = 137", "1 of 46 2 of 45 3 of 46 in all of 137", "4 × 79 = 316",
           "300 ordered for Sat 30 Sep: 316 must be planted with 5 % loss"],
    "s5": ["2 × 29 = 58", "48 ordered for Sat 21 Jun: 57 must be planted with 15 % loss, 1 to spare"],
    "s6": ["0.15 – 14.15 m 3 × 56 = 168",
           "150 ordered for Sat 12 Jul: 167 must be planted with 10 % loss, 1 to spare"],
}  # fmt: skip
"""From the hand-worked scenarios S1 to S6."""


@each_paper
@pytest.mark.parametrize("name", SCENARIOS)
def test_the_hand_worked_counts_stand_on_it(name: str, paper: Paper) -> None:
    text = said(hand_worked(name), paper)
    for words in SCENARIOS[name]:
        assert words in text


def test_figures_are_at_least_14_pt() -> None:
    for page in pages(hand_worked("s4")):
        head = page.size[1] - 80
        for words in page.words:
            if re.search(r"\d", words.text) and words.box[1] < head:
                assert words.size >= 14 or "plants" in words.text, words.text


def test_two_plantings_for_one_market_day_name_each_other() -> None:
    one = hand_worked("s1")
    order, first = one.orders[0], one.plantings[0]
    more = evolve(first, id="more", plants=20, start=None)
    text = said(evolve(one, plantings=(first, more), orders=(order,)))
    assert "120 ordered for Sat 17 May, with B: 134 must be planted with 10 % loss, 22 to spare" in text
    assert "120 ordered for Sat 17 May, with A: 134 must be planted with 10 % loss, 22 to spare" in text


def test_an_order_that_runs_short_says_by_how_much() -> None:
    plan = hand_worked("s1")
    short = evolve(plan.plantings[0], plants=120)
    assert "120 ordered for Sat 17 May: 134 must be planted with 10 % loss, 14 plants short" in said(
        evolve(plan, plantings=(short,))
    )


def test_rows_across_are_told_with_their_readings_and_many_at_once() -> None:
    plan = plan_from(
        beds=[{"id": "b1", "name": "Bank", "length": "10 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": "Radish", "in_row": "10 cm", "row_spacing": "20 cm"}],
        plantings=[{"id": "p", "bed": "b1", "crop": "c", "direction": "across", "length": "8 m"}],
    )
    (turn,) = count_turns(plan)
    (block,) = turn.blocks
    # Rows 20 cm apart, the first half a spacing inside: row 5 at 0.90, row 10 at 1.90; 10 cm from both edges there is
    # room for 80 - 20 = 60 cm, 7 plants in each.
    assert [(box.rows, box.at, box.plants) for box in block.boxes][:2] == [
        ("1–5", "to 0.90", 35),
        ("6–10", "to 1.90", 35),
    ]
    assert block.boxes[-1].rows == "36–40"
    assert "1–5 to 0.90 of 35" in said(plan)


@pytest.mark.parametrize("name", [LONG, ODD, "Ω" * 300, *FOREIGN])
@each_paper
def test_names_of_any_kind_are_printed_as_they_were_typed_or_cut(name: str, paper: Paper) -> None:
    plan = change_crop(hand_worked("s1"), hand_worked("s1").crops[0].id, name=name)
    read = pages(plan, paper)
    for page in read:
        assert_legible(page, paper)
    if name in FOREIGN:
        assert plain(name) in {words.text for page in read for words in page.words}


def test_only_the_beds_that_were_chosen_are_on_it() -> None:
    plan = hand_worked("s4")
    (page,) = pages(plan, choices=Choices(beds=frozenset([plan.beds[1].id])))
    assert "Leeks" in page.text
    assert "Summer cabbage" not in page.text


def test_the_same_plan_and_day_give_the_same_bytes() -> None:
    first, second = (made(hand_worked("s3"), Paper.A4, Kind.COUNTS, day=DAY).pdf for _turn in range(2))
    assert first == second


def test_where_nothing_is_planted_there_is_no_sheet() -> None:
    with pytest.raises(PlanError, match="nothing is planted"):
        made(Plan(), Paper.A4, Kind.COUNTS)
