"""The sowing list: every sowing once under its day, with the numbers of the supplies, a box and room for the day."""

from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings

from gardenplot.drawing.carried import block_words
from gardenplot.drawing.date_list import Job, date_rows
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.drawing.sowing_list import sow_days
from gardenplot.errors import PlanError
from gardenplot.files import sample
from gardenplot.layout import lay_out_bed, lay_out_plan
from gardenplot.layout.bed import grown_of
from gardenplot.plan import Actual, Establish, Plan, bed_of, crop_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.plan.edits import change_crop, change_planting
from gardenplot.plan.file import read_plan
from gardenplot.season import dates_of
from gardenplot.sheets.choices import USUAL, Choices, Kind
from gardenplot.sheets.paper import Paper
from gardenplot.supplies import raised_for
from gardenplot.units import parse_temperature
from tests.drawing.hand_worked import hand_worked, plan_from
from tests.plans import plans
from tests.sheets.made import made
from tests.sheets.pdf_pages import Page, pages_of, plain
from tests.sheets.test_lists import LONG, ODD, assert_legible, boxes, each_paper, example

DAY = date(2027, 2, 26)
BOX = 12.0
FOREIGN = ["Μαρούλι", "Капуста белокочанная", "Rau diếp xoăn", "<b>Chard</b> & %s {0}"]


def pages(plan: Plan, paper: Paper = Paper.A4, choices: Choices = USUAL) -> tuple[Page, ...]:
    """The pages of a plan's sowing list, read back."""
    return pages_of(made(plan, paper, Kind.SOWING, choices, day=DAY).pdf)


def said(plan: Plan, paper: Paper = Paper.A4) -> str:
    """All words of a plan's sowing list."""
    return " ".join(page.text for page in pages(plan, paper))


@settings(max_examples=max(15, settings().max_examples // 20), deadline=None)
@given(plans())
def test_every_planting_is_sown_once_on_its_day(plan: Plan) -> None:
    found = {row.planting: (one.day, row) for one in sow_days(plan) for row in one.rows}
    planted = {
        layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts if not layout.holds_trays
    }
    assert set(found) == set(planted)
    for planting in plan.plantings:
        if planting.id in found:
            day, row = found[planting.id]
            assert day == row.day == dates_of(plan, planting).sow
            assert row.in_trays is (crop_of(plan, planting.crop).establish is Establish.TRANSPLANT)
    days = [one.day or date.max for one in sow_days(plan)]
    assert days == sorted(days)


@settings(max_examples=max(10, settings().max_examples // 40), deadline=None)
@given(plans())
def test_the_numbers_on_paper_are_those_of_the_supplies(plan: Plan) -> None:
    rows = [row for one in sow_days(plan) for row in one.rows]
    if not rows:
        with pytest.raises(PlanError, match="nothing is to be sown"):
            made(plan, Paper.A4, Kind.SOWING)
        return
    read = pages(plan, Paper.LETTER)
    assert sum(boxes(page, BOX) for page in read) == len(rows)
    for page in read:
        assert_legible(page, Paper.LETTER)
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.layouts}
    words = [plain(one.text) for page in read for one in page.words]
    for row in rows:
        number = raised_for(grown_of(plan, planting_of(plan, row.planting)), layouts[row.planting])
        known = number.cells if row.in_trays else number.seeds
        plants = f"{layouts[row.planting].plants:,}".replace(",", " ")
        crop = crop_of(plan, planting_of(plan, row.planting).crop)
        is_sure = crop.germination is not None and crop.germination.part == 1
        is_sown = crop.seeds_per_gram or crop.seeds_per_row or crop.plants_per_area or not is_sure
        what = "cell" if row.in_trays else "seed" if is_sown else "to plant"
        place = "plant" if crop_as_planted(plan, planting_of(plan, row.planting)).stand == 1 else "clump"
        begin = f"for {plants} {place}" if known is None else f"{known:,} {what}"
        assert plain(row.amount).startswith(begin.replace(",", " "))
        assert any(plain(row.amount)[:20] in one for one in words)


SCENARIOS = {
    "s1": [
        "Fri 7 Mar 2025 week 10", "58 cells in 1 tray of 84", "52 to raise for 45 places",
        "harden from Fri 28 Mar · set out Fri 4 Apr", "Tue 18 Mar 2025 week 12", "175 cells in 3 trays of 84",
        "157 to raise for 136 places · 1 seed in a cell, 175 seeds",
        "2 full trays, 7 cells in the last; 2 trays would still give about 151 plants, 15 to spare",
        "harden from Fri 4 Apr · set out Fri 11 Apr", "Tunnel, second bed, 0.30 – 7.10 m",
    ],
    "s2": [
        "Wed 2 Apr 2025", "131 cells in 2 trays of 128", "120 to raise for 100 places",
        "1 full tray, 3 cells in the last; 1 tray would still give about 117 plants, 17 to spare",
        "harden from Tue 29 Apr · set out Wed 7 May", "Wed 30 Apr 2025", "832 seeds, 13.9 g",
        "63′ 0″ of row at 12 / ft, slack 10 %", "4 × 63 = 252", "78′ 0″ – 93′ 9″",
    ],
    "s3": ["Tue 25 Feb 2025", "harden from Wed 19 Mar · set out Tue 25 Mar", "No day yet", "for 23 plants",
           "cells not known: needs"],
    "s4": ["Wed 22 Mar 2028", "172 cells in 3 trays of 60", "harden from Tue 25 Apr · set out Wed 3 May",
           "Fri 18 Feb 2028", "435 cells in 2 trays of 240", "348 to raise for 316 places"],
    "s5": ["Tue 1 Apr 2025", "harden from Thu 24 Apr · set out Thu 1 May", "Tue 6 May 2025"],
    "s6": ["Mon 7 Apr 2025", "238 cells in 2 trays of 128", "202 to raise for 168 places",
           "harden from Mon 5 May · set out Mon 12 May"],
}  # fmt: skip
"""From the hand-worked scenarios S1 to S6."""


@each_paper
@pytest.mark.parametrize("name", SCENARIOS)
def test_the_hand_worked_sowings_stand_on_it(name: str, paper: Paper) -> None:
    text = said(hand_worked(name), paper)
    for words in SCENARIOS[name]:
        assert words in text


def test_trays_that_are_all_full_are_told_so() -> None:
    text = said(read_plan(sample("kestrel-howe.gardenplot")).plan)
    # 34 x 1.15 = 39.1, 40 to raise; 40 / 0.85 = 47.06, 48 cells, which are two trays of 24.
    assert "48 cells in 2 trays of 24" in text
    assert "2 full trays harden from" in text


def test_days_to_emerge_are_told_where_the_soil_is_known() -> None:
    plan = change_crop(hand_worked("s2"), hand_worked("s2").crops[1].id, emerges_like="Beets")
    warm = change_planting(plan, "p2", soil=parse_temperature("68 °F"))
    # Harrington and Minges 1954: beet at 68 °F emerges in 6 days.
    assert "emerges after about 6 days" in said(warm)
    assert "emerges" not in said(plan)


def test_what_was_sown_is_ticked_and_told() -> None:
    plan = hand_worked("s1")
    done = change_planting(plan, "p1", actual=Actual(sown=date(2025, 3, 19)))
    before, after = pages(plan)[0], pages(done)[0]
    assert boxes(after, BOX) == boxes(before, BOX)
    assert len(after.paths) == len(before.paths) + 2
    assert "sown on 19 Mar" in after.text


def test_only_beds_and_days_that_were_chosen_are_on_it() -> None:
    plan = hand_worked("s1")
    (page,) = pages(plan, choices=Choices(first=date(2025, 3, 8), last=date(2025, 3, 31)))
    assert "Pak choi" in page.text
    assert "Kohlrabi" not in page.text
    four = hand_worked("s4")
    (page,) = pages(four, choices=Choices(beds=frozenset([four.beds[1].id])))
    assert "Summer cabbage" not in page.text


@pytest.mark.parametrize("name", [LONG, ODD, "Ω" * 300, *FOREIGN])
@each_paper
def test_names_of_any_kind_are_printed_as_they_were_typed_or_cut(name: str, paper: Paper) -> None:
    plan = change_crop(hand_worked("s1"), hand_worked("s1").crops[0].id, name=name)
    bed = evolve(plan.beds[0], name=name)
    read = pages(evolve(plan, beds=(bed,)), paper)
    for page in read:
        assert_legible(page, paper)
    if name in FOREIGN:
        assert plain(name) in {words.text for page in read for words in page.words}


def test_the_same_plan_and_day_give_the_same_bytes() -> None:
    first, second = (made(hand_worked("s2"), Paper.A4, Kind.SOWING, day=DAY).pdf for _turn in range(2))
    assert first == second


def test_where_nothing_is_to_be_sown_there_is_no_list() -> None:
    with pytest.raises(PlanError, match="nothing is to be sown"):
        made(Plan(), Paper.A4, Kind.SOWING)


def test_clumps_of_clusters_are_thinned_to_what_is_left() -> None:
    """By hand: 40 places, 44 clumps; two of 3 clusters come up in 78.4 % of cells: 57; 239 seedlings less 176."""
    crop = {"id": "c", "name": "Beet", "in_row": "25 cm", "row_spacing": "30 cm", "spare": "10 %",
            "germination": "70 %", "seeds_per_cell": 3, "seedlings_per_seed": 2, "clump": 4}  # fmt: skip
    plan = plan_from(
        beds=[{"id": "b", "name": "Tunnel", "length": "9 m", "width": "90 cm"}], crops=[crop],
        plantings=[{"id": "p", "bed": "b", "crop": "c", "from": "0 m", "plants": 40}],
    )  # fmt: skip
    ((row,),) = [day.rows for day in sow_days(plan)]
    assert row.amount == "57 cells"
    assert "44 to raise for 40 places · 3 seeds in a cell, 171 seeds" in row.more
    assert "thin to 4, about 63 out" in row.more


def test_what_is_no_seed_is_told_as_so_many_to_plant_everywhere_alike() -> None:
    """Potatoes of the first example: a packet without grams and a rate by the row; 80 places, all come up."""
    plan = example()
    (row,) = (row for day in sow_days(plan) for row in day.rows if row.name == "Early potato")
    assert row.amount == "80 to plant"
    (job,) = (one for one in date_rows(plan) if one.planting == row.planting and one.job is Job.SOW)
    assert (job.what, job.amount) == ("plant", "80 to plant")
    listed = [one.cells[3] for group in shop_groups(plan) for one in group.rows if one.cells[0] == "Early potato"]
    assert listed == ["80 to plant"]
    laid = lay_out_bed(plan, bed_of(plan, "field-2"))
    one = next(each for each in laid.grown if each.planting.id == row.planting)
    assert block_words(one, laid.layout_of(row.planting), plan.place.units) == "80 to plant"


def test_a_last_tray_that_is_not_full_says_how_many_cells_more_fill_it() -> None:
    """S6 by hand: 238 cells in 2 trays of 128; 256 - 238 = 18."""
    (row,) = (row for day in sow_days(hand_worked("s6")) for row in day.rows)
    assert "1 full tray, 110 cells in the last; 18 more fill it" in row.more
