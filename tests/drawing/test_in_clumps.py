"""What stands in clumps is counted in clumps wherever an order lacks or has it, worked by hand."""

from gardenplot.drawing.needed_words import needed_for_orders
from gardenplot.drawing.sowing_list import sow_days
from gardenplot.drawing.ways_table import lack_title
from gardenplot.drawing.ways_words import shortage_words
from gardenplot.filling.ways_out import lacks, shortages
from gardenplot.plan import Plan
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
