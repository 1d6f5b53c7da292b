"""Jobs for the corners of the sums, worked by hand from the rules alone before the program was asked.

Edges typed in three places and in two systems, part-filled shifted rows, pairs, clumps, fruit and row for a unit,
kept places that catch one plant or two, a boarded box. Places, crops and days are invented.
"""

from math import pi, sqrt
from typing import Any

import pytest

from tests.scenarios.test_commands import across, assert_holds, by_id, cm, dated, feet
from tests.scenarios.test_four_more_jobs import Fields, Told, printed, told

__all__ = ["printed", "told"]


def near(*lengths: float) -> Any:
    """Millimetres of centimetres, to a millionth."""
    return pytest.approx([10 * length for length in lengths], abs=1e-6)


def bed(number: int, length: str, width: str, **fields: Any) -> Fields:
    return {"id": f"b{number}", "name": f"Bed {number}", "length": length, "width": width} | fields


# Edges of planting, crop and bed; lengths in feet, inches, metres and decimal feet


def test_the_edge_of_a_planting_goes_before_that_of_its_crop_and_that_before_the_one_of_its_bed(told: Told) -> None:
    """In 110 cm: 6 in: (110 - 30.48) / 30.48 = 2.6, 3 rows; 12 cm: 86 / 20 = 4.3, 5; 4 in: 89.68 / 25 = 3.6, 4.

    75 / 0.93 = 80.6, 81 in 27 ranks of 13.5 cm, 364.5 cm from 9 in on. Of 175 1/2 in 9 in and 20 cm leave 402.91 cm.
    In the last bed, which has no edge, half of 25 cm: 85 / 25 = 3.4, 4 rows; 63 in hold 18 of 3 1/2 in.
    """
    plan: Fields = {
        "place": {"units": "feet and inches"},
        "beds": [bed(1, "14' 7 1/2\"", "1.1 m", head_margin="9 in", foot_margin="20 cm", edge="4 in"),
                 bed(2, "6 m", "1.1 m", edge="4 in"), bed(3, "19.68 ft", "1.1 m", edge="4 in"),
                 bed(4, "6 m", "1.1 m")],
        "crops": [{"id": "a", "name": "Endive", "in_row": "13.5 cm", "row_spacing": "1 ft", "edge": "12 cm",
                   "field_loss": "7 %", "spare": "12.5 %", "germination": "87 %", "tray_cells": 72},
                  {"id": "b", "name": "Rocket", "in_row": "10 cm", "row_spacing": "20 cm", "edge": "12 cm"},
                  {"id": "c", "name": "Cress", "in_row": "3 1/2 in", "row_spacing": "25 cm"}],
        "orders": [{"id": "o", "crop": "a", "units": 25, "plants_per_unit": 3, "on": "2027-06-19"}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "a", "order": "o", "edge": "6 in"},
                      {"id": "p2", "bed": "b2", "crop": "b", "from": "0.5 m", "length": "2.37 m"},
                      {"id": "p3", "bed": "b3", "crop": "c", "from": "0 m", "plants": 101},
                      {"id": "p4", "bed": "b4", "crop": "c", "from": "2 ft", "length": "5 ft 3 in"}],
    }  # fmt: skip
    found, beds = by_id(told("count", plan)), by_id(told("count", plan), "beds")
    assert_holds(found["p1"], rows=3, plants=81, row_offsets_mm=near(24.52, 55, 85.48))
    assert [found["p1"]["from_mm"], found["p1"]["to_mm"]] == near(22.86, 387.36)
    assert [beds["b1"]["leftover_mm"]] == near(402.91 - 364.5)
    assert_holds(found["p2"], rows=5, plants=115, row_offsets_mm=cm(15, 35, 55, 75, 95), last_plant_mm=cm(275))
    assert_holds(found["p3"], rows=4, plants_per_row=[26, 25, 25, 25], row_offsets_mm=cm(17.5, 42.5, 67.5, 92.5))
    assert_holds(found["p4"], rows=4, plants=72, to_mm=feet(7, 3))
    raised = {"raise": 92, "cells": 106, "trays": 2}  # 81 x 1.125 = 91.1; 92 / 0.87 = 105.7; 106 / 72
    assert_holds(by_id(told("supplies", plan))["p1"], **raised)


# Shifted rows and pairs


def test_shifted_rows_with_a_rank_filled_in_part_and_pairs(told: Told) -> None:
    """35 x √3 / 2 = 30.31 cm: (90 - 20) / 30.31 = 2.3, 3 rows. 17 ranks hold 17 + 16 + 17 = 50, 16 1/2 only 48.

    Two rows: 10 and 10 in 10 1/2 spacings. Pairs: (150 - 30 - 20) / 60 = 1.7, 2 of them, 80 cm wide, edge 35.
    """
    plan: Fields = {
        "beds": [bed(1, "10 m", "90 cm"), bed(2, "10 m", "90 cm"), bed(3, "8 m", "1.5 m"), bed(4, "10 m", "90 cm")],
        "crops": [{"id": "a", "name": "Salad", "in_row": "35 cm", "row_spacing": "35 cm", "edge": "10 cm"},
                  {"id": "t", "name": "Bean", "in_row": "15 cm", "row_spacing": "60 cm", "edge": "15 cm"}],
        "plantings": [
            {"id": "p1", "bed": "b1", "crop": "a", "from": "0 m", "length": "10 m", "pattern": "triangular"},
            {"id": "p2", "bed": "b2", "crop": "a", "from": "0 m", "plants": 50, "pattern": "triangular"},
            {"id": "p3", "bed": "b3", "crop": "t", "plants": 77, "pattern": "twin", "twin_spacing": "20 cm"},
            {"id": "p4", "bed": "b4", "crop": "a", "from": "1 m", "plants": 20, "pattern": "staggered", "rows": 2}],
    }  # fmt: skip
    found, between = by_id(told("count", plan)), 35 * sqrt(3) / 2
    assert_holds(found["p1"], plants_per_row=[28, 28, 28], row_offsets_mm=near(45 - between, 45, 45 + between))
    assert_holds(found["p2"], plants_per_row=[17, 16, 17], to_mm=cm(595), last_plant_mm=cm(577.5))
    assert_holds(found["p3"], plants_per_row=[20, 19, 19, 19], row_offsets_mm=cm(35, 55, 95, 115), to_mm=cm(300))
    assert_holds(found["p4"], plants_per_row=[10, 10], row_offsets_mm=cm(27.5, 62.5), to_mm=cm(467.5))


# Clumps, fruit from a plant, a length of row for a bunch


def test_clumps_need_enough_of_their_seeds_to_come_up(told: Told) -> None:
    """60 x 4 / 0.9 / 4 = 66.7, 67 places, 68 in 4 rows; 68 x 1.1 = 74.8, 75. Of 5 seeds at 85 % at least 4 come up in
    5 x 0.85⁴ x 0.15 + 0.85⁵ = 83.52 %: 89.8, 90 cells, 450 seeds, 1.41 g at 320 to the gram. 272 stand in the end.
    """
    plan: Fields = {
        "beds": [bed(1, "9 m", "75 cm", edge="7.5 cm")],
        "crops": [{"id": "a", "name": "Onion", "in_row": "20 cm", "row_spacing": "20 cm", "field_loss": "10 %",
                   "spare": "10 %", "germination": "85 %", "seeds_per_cell": 5, "clump": 4, "tray_cells": 60,
                   "seeds_per_gram": 320}],
        "orders": [{"id": "o", "crop": "a", "units": 60, "plants_per_unit": 4, "on": "2027-06-19"}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "a", "order": "o"}],
    }  # fmt: skip
    assert_holds(by_id(told("count", plan))["p1"], rows=4, plants=68, to_mm=cm(340))
    raised = {"raise": 75, "cells": 90, "seeds": 450, "trays": 2, "final_stand": 272, "grams": 1.41, "thinned": 82}
    assert_holds(by_id(told("supplies", plan))["p1"], **raised)


def test_fruit_and_bunches_beside_each_other_under_a_cover(told: Told) -> None:
    """333 / (5 x 0.87) = 76.6, 77: (95 - 16) / 37.5 = 2.1, 3 rows, 26 ranks, 78. 70 / 0.82 = 85.4, 86 x 45 cm / 7 =
    552.9, 553: 79 / 22 = 3.6, 4 rows, 139 ranks, 556 in 9.73 m. 78 x 1.175 = 91.65, 92 / (1 - 0.21²) = 96.2, 97.
    38.92 m x 24 x 1.15 = 1,074.2. 16.5 m at most 1.35 apart: 13 of 126.9 cm; arc 47.5 π, legs 22, aprons 30, ends 80.
    """
    plan: Fields = {
        "beds": [bed(1, "21.5 m", "95 cm", gap="15 cm", edge="8 cm")],
        "crops": [{"id": "a", "name": "Pepper", "in_row": "42.5 cm", "row_spacing": "37.5 cm", "field_loss": "13 %",
                   "spare": "17.5 %", "germination": "79 %", "seeds_per_cell": 2, "tray_cells": 77, "field_days": 75,
                   "raising_days": 63, "hardening_days": 10},
                  {"id": "b", "name": "Beet", "in_row": "7 cm", "row_spacing": "22 cm", "establish": "direct",
                   "field_loss": "18 %", "field_days": 60, "seeds_per_row": "24 / m", "seeder_slack": "15 %",
                   "seeds_per_gram": 52.5}],
        "orders": [{"id": "o", "crop": "a", "units": 333, "units_per_plant": 5, "on": "2027-07-24"},
                   {"id": "o2", "crop": "b", "units": 70, "row_per_unit": "45 cm", "on": "2027-07-03",
                    "lead_days": 0}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "a", "order": "o"},
                      {"id": "p2", "bed": "b1", "crop": "b", "order": "o2"}],
        "covers": [{"id": "c", "bed": "b1", "from": "0 m", "to": "16.5 m", "hoop_spacing": "1.35 m", "leg": "22 cm",
                    "apron": "30 cm", "end": "80 cm"}],
    }  # fmt: skip
    found, supplies, dates = by_id(told("count", plan)), told("supplies", plan), by_id(told("dates", plan))
    assert_holds(found["p1"], plants=78, row_offsets_mm=cm(10, 47.5, 85), to_mm=cm(1105))
    assert_holds(found["p2"], plants=556, row_offsets_mm=cm(14.5, 36.5, 58.5, 80.5), from_mm=cm(1120), to_mm=cm(2093))
    raised = {"raise": 92, "cells": 97, "seeds": 194, "trays": 2}
    assert_holds(by_id(supplies)["p1"], **raised)
    assert_holds(by_id(supplies)["p2"], seeds=1075, grams=20.48)
    assert_holds(dates["p1"], **dated("2027-03-07", "2027-04-29", "2027-05-09", "2027-07-23"))
    assert_holds(dates["p2"], sow="2027-05-04", ready="2027-07-03")
    cover, arc = by_id(supplies, "covers")["c"], 47.5 * pi
    assert_holds(cover, hoops=14)
    sizes = [cover[f"{name}_mm"] for name in ("hoop_spacing", "hoop_length", "cloth_width", "cloth_length")]
    assert sizes == near(1650 / 13, arc + 44, arc + 60, 1810)


# Kept places, a box


@pytest.mark.parametrize(
    ("reserved", "plants"), [("cut first", 160), ("leave places empty", 139), ("leave row empty", 128)]
)
def test_places_kept_at_sixty_cm_catch_one_plant_or_two(told: Told, reserved: str, plants: int) -> None:
    """Places at 80, 140, 200, 260, 320 cm; less than 20 from them row 3 has 2, 1, 2, 1, 2 plants at 62.5 + 25 k.

    So again from 380 and from 680 cm on, where there are three more: 8 + 8 + 5 = 21. Rows beside it are 20 cm away.
    """
    plan: Fields = {
        "beds": [bed(1, "9 m", "1 m", head_margin="50 cm", foot_margin="50 cm")],
        "crops": [{"id": "a", "name": "Salad", "in_row": "25 cm", "row_spacing": "20 cm", "edge": "10 cm"},
                  {"id": "t", "name": "Tomato", "in_row": "60 cm", "row_spacing": "1 m", "edge": "50 cm"}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "a", "from": "50 cm", "length": "8 m", "reserved": reserved,
                       "in_ground": "2027-03-20", "out": "2027-06-01"},
                      {"id": "t1", "bed": "b1", "crop": "t", "from": "50 cm", "length": "8 m", "rows": 1,
                       "in_ground": "2027-05-15", "out": "2027-10-01", "keep_clear": "20 cm"}],
    }  # fmt: skip
    found = by_id(told("count", plan))
    assert (found["p1"]["plants"], sum(found["p1"]["plants_per_row"])) == (plants, plants)
    assert_holds(found["t1"], plants=13, first_plant_mm=cm(80), last_plant_mm=cm(800))


def test_the_outer_rows_of_a_box_are_as_long_as_its_posts_leave_them(told: Told) -> None:
    """8 x 4 ft outside, boards of 1 1/2 in: 93 x 45 in; (45 - 8) / 9 = 4.1, 5 rows from 4 1/2 in on. Of 93 in posts
    of 3 1/2 in leave the outer ones 86: 10 of 8 in from 7 1/2 in; the others have 11.
    """
    plan: Fields = {
        "place": {"units": "feet and inches"},
        "beds": [{"id": "b1", "name": "Box",
                  "box": {"length": "8 ft", "width": "4 ft", "board": "1.5 in", "post": "3.5 in"}}],
        "crops": [{"id": "a", "name": "Basil", "in_row": "8 in", "row_spacing": "9 in", "edge": "4 in"}],
        "plantings": [{"id": "p1", "bed": "b1", "crop": "a"}],
    }  # fmt: skip
    offsets = across(4.5, 13.5, 22.5, 31.5, 40.5)
    assert_holds(by_id(told("count", plan))["p1"], plants_per_row=[10, 11, 11, 11, 10], row_offsets_mm=offsets)
