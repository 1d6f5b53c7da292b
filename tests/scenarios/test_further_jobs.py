"""Five more jobs, worked by hand from the rules alone: decimal feet, pairs and staggered rows, a relay, too much.

Places, crops' days, losses and odds are invented. Each number stands with its sum; fractions are exact until "up".
"""

import json
from collections.abc import Callable
from math import hypot, pi, sqrt
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import PLANS, Told, across, assert_holds, by_id, cm, dated, feet, told

__all__ = ["told"]
Printed = Callable[..., str]


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str]) -> Printed:
    """What a command prints for people."""

    def run(command: str, scenario: str, *words: str) -> str:
        main([command, scenario if scenario.startswith("/") else str(PLANS / f"{scenario}.gardenplot"), *words])
        return capsys.readouterr().out.replace("\u2009", " ")

    return run


# Decimal feet: 62.75 x 4.2 ft, margins 1.5 and 0.75, gap 0.5


def tenths(length: float) -> Any:
    return pytest.approx(length * 304.8, abs=1e-6)


def test_kale_and_carrots_in_decimal_feet(told: Told) -> None:
    """Kale: (4.2 − 1.2) / 1.5 = 2 exactly, so 3 rows; 75 / 0.93 = 80.6, 81 = 27 ranks of 1.25 ft = 33.75 ft.

    Carrots: (4.2 − 0.7) / 0.5 = 7, so 8 rows; 48 / 0.85 = 56.5, 57 bunches of 2.5 ft = 142.5 ft of row, 17.81 of bed,
    179 ranks of 0.1 ft. Radish: 150 in 8 rows is 19 ranks, 3.04 ft, with 0.33 ft of slack 3.37, up to 3.5.
    """
    count = told("count", "further/kale_and_carrots")
    found = by_id(count)
    assert_holds(found["p1"], rows=3, plants=81, from_mm=tenths(1.5), to_mm=tenths(35.25))
    assert found["p1"]["row_offsets_mm"] == [tenths(0.6), tenths(2.1), tenths(3.6)]
    assert_holds(found["p1"], first_plant_mm=tenths(2.125), last_plant_mm=tenths(34.625))
    assert_holds(found["p2"], rows=8, plants=1432, from_mm=tenths(35.75), to_mm=tenths(53.65))
    assert_holds(found["p3"], plants=150, plants_per_row=[19] * 6 + [18] * 2, to_mm=tenths(57.65))
    assert_holds(by_id(count, "beds")["d1"], leftover_mm=tenths(4.35), leftover_pieces=1)


def test_kale_and_carrots_are_raised_sown_and_covered(told: Told, printed: Printed) -> None:
    """81 x 1.12 = 90.7, 91; / 0.88 = 103.4, 104 cells, 3 trays of 50; two give 88 plants. 143.2 ft x 30 x 1.08 =
    4,639.7 seeds. 33.75 ft at most 4 apart: 9 of 3.75; half round 4.2 x π / 2, legs 0.75, aprons 0.8, ends 3.
    """
    supplies = told("supplies", "further/kale_and_carrots")
    assert_holds(by_id(supplies)["p1"], **{"raise": 91, "cells": 104, "seeds": 104, "trays": 3})
    assert_holds(by_id(supplies)["p2"], seeds=4640, grams=pytest.approx(7.48, abs=0.005))
    assert_holds(by_id(supplies)["p3"], seeds=288)
    (cover,) = supplies["covers"]
    assert_holds(cover, hoops=10, hoop_spacing_mm=tenths(3.75), cloth_length_mm=tenths(39.75))
    assert cover["hoop_length_mm"] == pytest.approx((2.1 * pi + 1.5) * 304.8, abs=0.01)
    assert cover["cloth_width_mm"] == pytest.approx((2.1 * pi + 1.6) * 304.8, abs=0.01)
    assert "A Curly kale: 2 trays would still give about 88 plants, 7 to spare" in printed(
        "supplies", "further/kale_and_carrots"
    )


def test_kale_and_carrots_have_their_days(told: Told, printed: Printed) -> None:
    """Sat 19 June 2027 − 1 = 18 June; − 52 = 27 April; − 33 = 25 March. Carrots: 18 June − 66 = 13 April."""
    dates = by_id(told("dates", "further/kale_and_carrots"))
    assert_holds(dates["p1"], **dated("2027-03-25", "2027-04-18", "2027-04-27", "2027-06-18"))
    assert_holds(dates["p2"], **dated("2027-04-13", None, None, "2027-06-18"))
    assert "81 plants for Sat 19 Jun" in printed("dates", "further/kale_and_carrots", "--weeks")


# Feet and inches: staggered peppers, peas in pairs


def test_peppers_in_staggered_rows_and_peas_in_pairs(told: Told) -> None:
    """Peppers: (60 − 18) / 18 = 2.33, 3 rows at 12, 30, 48; 40 / 0.95 = 42.1, 43; 14 1/2 spacings hold 14 + 14 + 14,
    15 hold 15 + 14 + 15 = 44: 270 in. Peas: pairs of 6 in, 24 apart: (60 − 18 − 6) / 24 = 1.5, 2 pairs; 132 / 2 = 66.
    """
    count = told("count", "further/peppers_and_peas")
    peppers, peas = by_id(count)["p1"], by_id(count)["p2"]
    assert_holds(peppers, plants=44, plants_per_row=[15, 14, 15], row_offsets_mm=across(12, 30, 48))
    assert_holds(peppers, to_mm=feet(23, 3), first_plant_mm=feet(1, 6), last_plant_mm=feet(22, 6))
    assert_holds(peas, plants=264, row_offsets_mm=across(15, 21, 39, 45), to_mm=feet(34, 9))
    assert by_id(count, "beds")["b1"]["leftover_mm"] == feet(0, 6)


def test_peppers_are_raised_two_to_a_cell_under_half_an_ellipse(told: Told) -> None:
    """44 x 1.15 = 50.6, 51; / (1 − 0.18²) = 52.7, 53 cells, 106 seeds. 279 in at most 48 apart: 6 of 46 1/2. A half
    ellipse of 60 by 24 in is 85.085 in (Ramanujan 1914), legs of 10, aprons of 9, ends of 24. Peas 44 ft x 8 x 1.05.
    """
    supplies = told("supplies", "further/peppers_and_peas")
    assert_holds(by_id(supplies)["p1"], **{"raise": 51, "cells": 53, "seeds": 106, "trays": 1})
    assert_holds(by_id(supplies)["p2"], seeds=370, grams=92.5)
    (cover,) = supplies["covers"]
    assert_holds(cover, hoops=7, hoop_spacing_mm=feet(0, 46.5), cloth_length_mm=feet(0, 327))
    h = (6 / 54) ** 2
    arc = pi * 54 / 2 * (1 + 3 * h / (10 + sqrt(4 - 3 * h)))
    assert cover["hoop_length_mm"] == pytest.approx(feet(0, arc + 20), abs=0.01)
    assert cover["cloth_width_mm"] == pytest.approx(feet(0, arc + 18), abs=0.01)


def test_peppers_have_jugs_for_about_an_hour_and_water_for_a_fortnight(printed: Printed) -> None:
    """16 gal are 133.5 lb and give 2,671 Btu over 20 °F; 22.5 x 5 ft lose 2,250 Btu an hour: 1.19 h, weak. 180 sq ft
    x 1 in x 144 / 231 / 0.85 = 132 gal; 3 x 36 ft at 0.3 gal/h = 32.4 gal/h, 27 % of 120; 300 / 132 x 7 = 15.9 days.
    """
    said = printed("supplies", "further/peppers_and_peas")
    assert "Tunnel left: 0′ 9″ – 23′ 3″, 16 jugs of 1 gal, 134 lb to carry, make up for what the bed loses" in said
    assert "for about 50 minutes to 1½ hours" in said
    water = (
        "132 gal a week, by drip in 4.1 h, drip lines take 32.4 gal/h, 27 % of the supply, a full tank lasts 15 days"
    )
    assert f"Tunnel left: {water}" in said
    assert "2 rows lie on drip lines" in printed("check", "further/peppers_and_peas")


def test_peppers_are_set_out_before_the_last_freeze_and_pairs_are_no_crowding(told: Told, printed: Printed) -> None:
    """Sat 31 July 2027 − 2 = 29 July; − 70 = 20 May, 8 days before the 50 % day; − 56 = 25 March. Covered until
    15 June, the day after the 10 % day."""
    dates = by_id(told("dates", "further/peppers_and_peas"))
    assert_holds(dates["p1"], **dated("2027-03-25", "2027-05-10", "2027-05-20", "2027-07-29"))
    said = printed("check", "further/peppers_and_peas")
    assert "tender, 8 days before Fri 28 May 2027" in said
    assert "keep the cover on" in said
    assert "rows 6″ apart in a pair, the packet says 24″ for rows: see that it is a crop for twin rows" in said


# Metric: a relay in which many stand in the way


def test_batavia_stands_in_the_way_of_cucumbers_as_counted_plant_by_plant(told: Told, printed: Printed) -> None:
    """Lettuce: (100 − 24) / 25 = 3.04, 4 rows from 12.5 cm; 10.2 m / 25 cm = 40.8: 40, and 40 in moved rows too.
    Cucumbers: (100 − 50) / 50 = 1, 2 rows; 10.2 / 0.6 = 17. Whoever is less than 20 cm from one is in the way.
    """
    found = by_id(told("count", "further/batavia_then_cucumber"))
    assert_holds(found["p1"], plants=160, plants_per_row=[40] * 4, row_offsets_mm=cm(12.5, 37.5, 62.5, 87.5))
    assert_holds(found["p2"], plants=34, row_offsets_mm=cm(25, 75), first_plant_mm=cm(80), last_plant_mm=cm(1040))
    lettuces = [(62.5 + 12.5 * (row % 2) + 25 * plant, 12.5 + 25 * row) for row in range(4) for plant in range(40)]
    cucumbers = [(80 + 60 * plant, 25 + 50 * row) for row in range(2) for plant in range(17)]
    near = sum(any(hypot(x - a, y - b) < 20 for a, b in cucumbers) for x, y in lettuces)
    assert near == 88
    said = printed("check", "further/batavia_then_cucumber")
    assert "88 plants stand within 20 cm of places of B Cucumber: cut them by Wed 19 May 2027" in said
    assert "with 1 season in between; 3 are meant" in said
    assert "in the ground until Tue 19 Oct 2027: by Sun 10 Oct 2027 it has frozen" in said
    row = next(line for line in printed("dates", "further/batavia_then_cucumber").splitlines() if "Cucumber" in line)
    assert row.split()[-3:] == ["–", "Wed", "2027-10-20"]


# Metric: posts, a bed that is too short, an L


def test_cabbages_keep_clear_of_posts_and_beans_turn_the_corner(told: Told) -> None:
    """Row 2 of 11.4 m: 8 up to the post at 3 m, 19 from 3.20 to 8.60 m, 8 from 9.20 m on: what a post keeps clear is
    kept from the plant itself. Beans: 4 rows 30 cm apart, 8 m and 4 m long, 8 cm: 100 + 100 + 50 + 50.
    """
    found = by_id(told("count", "further/cabbage_and_posts"))
    assert_holds(found["p1"], plants=111, plants_per_row=[38, 35, 38])
    assert_holds(found["p2"], rows=3, plants=54, wanted=69)
    assert_holds(found["p3"], plants=300, plants_per_row=[100, 100, 50, 50], row_offsets_mm=cm(15, 45, 75, 105))


def test_what_stands_nearer_to_the_edge_than_its_bed_asks_for_says_so(printed: Printed, tmp_path: Path) -> None:
    """Four rows in 1 m are 25 cm apart with 12.5 cm at the edge, where the bed keeps 20. Beans: 2 m of bed have
    4 rows of 25. What is named after a switch is still the file to write."""
    plan = json.loads((PLANS / "further/cabbage_and_posts.gardenplot").read_text(encoding="utf-8"))
    plan |= {"beds": plan["beds"][1:2], "plantings": plan["plantings"][1:2], "orders": plan["orders"][1:2]}
    plot = {"id": "b4", "name": "Plot", "length": "2 m", "width": "1.2 m", "usable_from": "2027-07-04"}
    plan["beds"].append(plot)  # after the cabbages, so that none of these go there
    plan["wishes"][0] |= {"beds": ["b4"], "most": 100, "least": 100}
    less, out = tmp_path / "less.gardenplot", tmp_path / "filled.gardenplot"
    less.write_text(json.dumps(plan), encoding="utf-8")
    said = printed("fill", str(less), "--seconds", "0", str(out))
    assert out.exists()
    (closer,) = [line for line in said.splitlines() if "closer, 4" in line]
    assert "outer row 12.5 cm from the edge, 20 cm is the least" in closer
    assert "Dwarf bean: Plot, 0.00 – 2.00 m, 100 plants, " in said


# Feet and inches: two orders for more than a bed holds, and a shorter bed beside it


def test_savoy_and_dill_are_more_than_their_bed_holds(told: Told) -> None:
    """Savoy: (40 − 14) / 16 = 1.6: 2 rows at 12, 28; 45 / 0.88 = 51.1, 52 in 26 ranks of 16 in = 34 ft 8 in from 10
    in on, 3 ft 2 in past the foot margin at 32 ft 4 in; inside are 378 / 16 = 23 ranks, 46. Dill: (40 − 6) / 6
    = 5.7, 6 rows; 75 / 0.92 = 81.5, 82 x 15 in = 1,230 in of row, 615 places of 2 in, 103 ranks.
    """
    found = by_id(told("count", "further/savoy_and_dill"))
    assert_holds(found["p1"], rows=2, plants=46, wanted=52, row_offsets_mm=across(12, 28), to_mm=feet(35, 6))
    assert_holds(found["p2"], rows=6, plants=0, wanted=618, from_mm=feet(36, 4), to_mm=feet(53, 6))


def test_the_ways_out_for_savoy_and_dill_count_what_the_other_bed_takes(printed: Printed, tmp_path: Path) -> None:
    """The far bed, 13 ft, takes the 6 Savoy that lack, 4 ft, and 10 in on 49 ranks of dill, 294 in 8 ft 2 in. So 46
    Savoy, 30 ft 8 in, 10 in and 54 ranks of dill for 321, 9 ft, are asked of 31 ft 6 in: 9 ft too much. Beside the
    dill 260 in are left, 16 ranks, 32 and 6 = 38 Savoy: 14 short of 52, 33 heads, 12 short of 45.
    """
    said = printed("fill", "further/savoy_and_dill", str(tmp_path / "filled.gardenplot"))
    assert "Savoy: Far, 0′ 6″ – 4′ 6″, 6 plants" in said
    assert "Dill: Far, 5′ 4″ – 13′ 6″, 294 plants" in said
    assert "Savoy for Sat 24 Jul 2027 do not fit Glass side: 14 plants short, 9′ 0″ of bed, 12 of the order" in said
    assert "Dill for Sat 24 Jul 2027 do not fit Glass side: 321 plants short, 9′ 0″ of bed, 40 of the order" in said
    assert "Dill in a further bed of 10′ 6″ with its margins: 75 of 75 Dill, 45 of 45 Savoy; 10″ of bed left" in said
    assert "Less Savoy: 75 of 75 Dill, 33 of 45 Savoy (73 %)" in said
