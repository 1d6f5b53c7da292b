"""What stands in clumps is counted in clumps wherever it is told, worked by hand."""

from datetime import date
from pathlib import Path

import pytest
from attrs import evolve

from gardenplot.__main__ import main
from gardenplot.drawing.captions import captions, drag_line
from gardenplot.drawing.compare_words import best_words, measure_lines, reading_words
from gardenplot.drawing.hand_words import joined_words, parts_words, several_parts, short_words
from gardenplot.drawing.label_words import plant_labels
from gardenplot.drawing.letters import looks
from gardenplot.drawing.needed_words import needed_for_orders
from gardenplot.drawing.setback_words import setback_words
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.drawing.sowing_list import sow_days, spill_words
from gardenplot.drawing.tables import counts_by_bed, counts_by_crop, order_rows, summary
from gardenplot.drawing.ways_table import lack_title
from gardenplot.drawing.ways_words import shortage_words
from gardenplot.drawing.workings import bought_words
from gardenplot.filling.again import plan_again
from gardenplot.filling.ways_out import lacks, shortages
from gardenplot.gestures.season_words import several_season_line
from gardenplot.layout import lay_out_bed, lay_out_plan
from gardenplot.layout.proposals import proposals
from gardenplot.plan import Actual, GoodKind, Plan
from gardenplot.plan.edits import change_planting
from gardenplot.plan.file import write_plan
from gardenplot.supplies import raised_for
from gardenplot.units import parse_length, parse_share
from gardenplot.window.ledger_lines import count_lines, crop_lines
from tests.drawing.hand_worked import plan_from


def onions(clump: int = 4) -> Plan:
    """Two orders of onions, of which the bed of 9 m holds the first and a part of the second."""
    crop = {"id": "a", "name": "Onion", "in_row": "20 cm", "row_spacing": "20 cm", "field_loss": "10 %",
            "clump": clump, "field_days": 90, "raising_days": 50}  # fmt: skip
    orders = [{"id": "o", "crop": "a", "units": 60, "plants_per_unit": 4, "on": "2027-06-19"},
              {"id": "o2", "crop": "a", "units": 400, "plants_per_unit": 4, "on": "2027-07-19"}]  # fmt: skip
    return plan_from(
        beds=[{"id": "b1", "name": "Bed 1", "length": "9 m", "width": "75 cm", "edge": "7.5 cm"}],
        crops=[crop], orders=orders,
        plantings=[{"id": "p1", "bed": "b1", "crop": "a", "order": "o"},
                   {"id": "p2", "bed": "b1", "crop": "a", "order": "o2"}],
    )  # fmt: skip


def plain(words: str) -> str:
    return words.replace("\u2009", " ")


def test_what_an_order_of_clumps_needs_and_lacks_is_told_in_clumps() -> None:
    """60 × 4 / 0.9 / 4 = 66.7, 67, and 68 in 4 rows; 400 / 0.9 = 444.4, 445, of which 28 ranks of 4 have ground."""
    plan = onions()
    needed = needed_for_orders(plan)
    assert "67 clumps of 4 must be planted with 10 % loss, 1 to spare" in plain(needed["p1"].in_full)
    assert "445 clumps of 4 must be planted with 10 % loss, 333 clumps short" in plain(needed["p2"].in_full)
    (found,) = shortages(plan)
    assert "333 clumps of 4 short, 16.80 m of bed" in plain(shortage_words(plan, found))
    (lack,) = lacks(plan)
    assert lack_title(plan, lack) == "Onion for Mon 19 Jul 2027: 333 clumps of 4 short"


def test_what_is_sown_for_clumps_is_told_with_how_many_they_are_where_its_seed_is_not_known() -> None:
    assert [row.amount for day in sow_days(onions()) for row in day.rows] == [
        "for 68 clumps of 4",
        "for 112 clumps of 4",
    ]


def test_what_stands_alone_is_told_in_plants() -> None:
    """60 × 4 / 0.9 = 266.7, 267 in 13.40 m, of which the bed holds 45 ranks of 4."""
    plan = onions(clump=1)
    assert "267 must be planted with 10 % loss" in plain(needed_for_orders(plan)["p1"].in_full)
    assert sow_days(plan)[0].rows[0].amount == "for 180 plants"


def one_row(clump: int = 4) -> Plan:
    """A single row of 34 onions in 6.8 m, beside what is typed."""
    crop = {"id": "a", "name": "Onion", "in_row": "20 cm", "row_spacing": "20 cm", "clump": clump}
    kale = {"id": "k", "name": "Kale", "in_row": "50 cm", "row_spacing": "50 cm"}
    return plan_from(
        beds=[{"id": "b1", "name": "Bed 1", "length": "12 m", "width": "75 cm", "edge": "7.5 cm"}],
        crops=[crop, kale],
        plantings=[{"id": "p1", "bed": "b1", "crop": "a", "from": "0 m", "plants": 34, "rows": 1},
                   {"id": "p2", "bed": "b1", "crop": "k", "from": "7 m", "plants": 3, "rows": 1}],
    )  # fmt: skip


def test_a_row_of_clumps_is_counted_in_clumps_wherever_it_is_named() -> None:
    plan = one_row()
    laid = lay_out_bed(plan, plan.beds[0])
    said = [one.words[0] for one in captions(plan, laid, None, looks(plan))]
    assert "34 clumps of 4" in said[0]
    assert "3 plants" in said[1]
    assert "34 clumps of 4" in drag_line(plan, "p1", laid, None)
    assert "34 of 40 clumps of 4" in drag_line(plan, "p1", laid, None, asked=40)
    assert plant_labels(plan)[0].lines[1] == "34 clumps of 4 · 20\u2009cm apart"
    shorter = change_planting(plan, "p1", length=parse_length("1 m"), plants=None)
    assert short_words(plan, shorter, "p1") == "Onion: 5 of 34 clumps of 4"


def test_the_table_of_counts_tells_clumps_from_plants(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "onions.gardenplot"
    write_plan(path, one_row())
    assert main(["count", str(path)]) == 0
    lines = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert lines[1].endswith("34 34 clumps of 4")
    assert lines[2].endswith("3 3")
    assert "3 plants and 34 clumps in all" in lines
    write_plan(path, onions())
    assert main(["count", str(path)]) == 0
    assert "180 clumps in all" in capsys.readouterr().out


def test_layouts_of_clumps_are_compared_in_clumps() -> None:
    """Of 445 clumps that the second order needs 112 have ground (above)."""
    found = proposals(onions(), "p2")
    lines = {plain(line.heading): line.cells for line in measure_lines(found)}
    assert lines["Order of 400"][0].trouble == "333 clumps short"
    assert lines["Clumps of 4"][0].figure == "112"
    assert "Clumps a metre" in lines
    assert not any("lant" in heading for heading in lines)
    typed = proposals(one_row(), "p1")
    headings = [plain(line.heading) for line in measure_lines(typed)]
    assert "Clumps asked for" in headings
    assert "Clumps in 6.80 m" in headings
    assert reading_words(typed[0]) == "Each as long as the clumps asked for need."
    assert best_words(typed[0], typed).startswith("holds all clumps")
    assert "Plants" in [line.heading for line in measure_lines(proposals(one_row(clump=1), "p1"))]


def test_an_order_of_clumps_is_short_by_clumps_in_its_table() -> None:
    assert [row.met for row in order_rows(onions())] == ["met", "short by 333 clumps"]


def test_sums_tell_clumps_from_plants() -> None:
    """34 onions in clumps and 3 kale, in all 37 places."""
    plan = one_row()
    assert summary(plan).split(" · ")[1] == "3 plants and 34 clumps"
    assert "3 plants and 34 clumps" in several_parts(plan, ("p1", "p2"), None)
    assert "34 clumps" in several_parts(plan, ("p1",), None)
    assert "3 plants and 34 clumps" in several_season_line(plan, ("p1", "p2"))
    (bed,) = counts_by_bed(plan)
    assert (bed.told, bed.plants) == ("3 plants and 34 clumps", 37)
    assert [row.told for row in bed.inner] == ["34 clumps", "3"]
    assert [(row.name, row.told) for row in counts_by_crop(plan)] == [("Kale", "3"), ("Onion", "34 clumps")]
    assert parts_words(plan, "p1", 20, 14, 34) == "Onion: 20 + 14 clumps"
    assert joined_words(plan, "p2", 2, 1, 3) == "Kale: 2 + 1 plants = 3"
    assert summary(one_row(clump=1)).split(" · ")[1] == "37 plants"


def test_the_tables_of_the_window_and_its_panel_tell_them_so() -> None:
    plan = one_row()
    assert [line.cells[-1] for line in (*count_lines(plan), *crop_lines(plan))] == [
        "3 plants and 34 clumps", "3 plants and 34 clumps", "3", "34 clumps",
    ]  # fmt: skip


def test_what_is_bought_in_for_clumps_is_told_and_listed_in_clumps() -> None:
    """Of 68 places 20 are bought in: 20 clumps of 4, 80 plants, and not 20 plants."""
    plan = onions()
    first, second = plan.plantings
    plan = evolve(plan, plantings=(evolve(first, actual=Actual(bought=20)), second))
    (laid,) = lay_out_plan(plan)
    made = raised_for(laid.grown[0], laid.layouts[0])
    assert bought_words(laid.grown[0].crop, made) == ("20 clumps of 4 bought in",)
    (row,) = [row for group in shop_groups(plan) for row in group.rows if row.item.kind is GoodKind.PLANT]
    assert row.cells[0].replace("\u2009", " ") == "Onion: clumps of 4 for A by 20 Mar"
    assert row.cells[1:4] == ("20", "", "20")


def test_one_tray_less_gives_clumps_not_plants() -> None:
    """68 clumps of 4 of seed that all comes up, 10 % more: 75 cells, 2 trays of 72; one gives 72, 4 to spare."""
    plan = onions()
    crop = evolve(plan.crops[0], spare=parse_share("10 %"), germination=parse_share("100 %"), seeds_per_cell=4,
                  tray_cells=72)  # fmt: skip
    plan = evolve(plan, crops=(crop,))
    (laid,) = lay_out_plan(plan)
    made = raised_for(laid.grown[0], laid.layouts[0])
    assert (made.cells, made.trays) == (75, 2)
    assert spill_words(crop, made) == "1 tray would still give about 72 clumps of 4, 4 to spare"


def test_what_is_ordered_more_of_than_is_planted_is_told_in_clumps() -> None:
    """400 × 4 / 0.9 / 4 = 444.4, 445 clumps, where 60 stand."""
    plan = onions()
    first, second = plan.plantings
    came = Actual(sown=date(2027, 3, 1), set_out=date(2027, 4, 20), planted=60)
    there = evolve(second, plants=60, start=parse_length("3.6 m"), actual=came)
    (found, *_rest) = plan_again(evolve(plan, plantings=(first, there)), date(2027, 5, 1), only=frozenset({"p2"}))
    words = " ".join(plain(line) for line in setback_words(plan, found))
    assert "445 clumps of 4" in words
    assert "60 clumps of 4" in words
