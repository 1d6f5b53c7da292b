"""Three more jobs, worked by hand from the rules alone: south of the line and over a winter, corners, things to buy.

Places, crops' days, losses, odds and prices are invented. Each number stands with its sum; fractions are exact until
"up".
"""

from collections.abc import Callable
from math import asin, floor, pi, sin, sqrt

import pytest

from gardenplot.__main__ import main
from tests.scenarios.test_commands import PLANS, Told, assert_holds, by_id, cm, dated, told

__all__ = ["told"]
Printed = Callable[..., str]


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str]) -> Printed:
    """What a command prints for people."""

    def run(command: str, scenario: str, *words: str) -> str:
        main([command, str(PLANS / f"{scenario}.gardenplot"), *words])
        return capsys.readouterr().out.replace("\u2009", " ")

    return run


# Tasmania: tomatoes over the year's turn, garlic over a winter, endive for June


def test_tomatoes_and_garlic_share_a_bed_in_the_south(told: Told) -> None:
    """Tomatoes: (110 − 50) / 60 = 1, 2 rows; 54 / 0.92 = 58.7, 59 in 30 ranks of 45 cm = 13.50 m. Garlic: (110 − 18)
    / 22 = 4.2, 5 rows; 612 / 0.94 = 651.1, 652 in 131 ranks of 12.5 cm = 16.375 m from 14.20 m on, 7.525 m too long:
    8.85 m hold 70 ranks. Endive: rows 28 x √3 / 2 apart, (82 − 24) / 24.25 = 2.4, 3; 83 / 0.91 = 91.2: 31 + 30 + 31.
    """
    count = told("count", "further/tomato_and_garlic")
    tomato, garlic, endive = (by_id(count)[name] for name in ("p1", "p2", "p3"))
    assert_holds(tomato, rows=2, plants=60, row_offsets_mm=cm(25, 85), to_mm=cm(1385), first_plant_mm=cm(57.5))
    assert_holds(garlic, rows=5, plants=350, wanted=655, from_mm=cm(1420), to_mm=cm(3057.5))
    assert_holds(endive, plants_per_row=[31, 30, 31], to_mm=cm(893), last_plant_mm=cm(879))
    edge = (82 - 28 * sqrt(3)) / 2
    assert endive["row_offsets_mm"] == pytest.approx([10 * edge, 410, 820 - 10 * edge], abs=1e-3)


def test_days_are_counted_back_over_the_turn_of_the_year_and_the_southern_winter(told: Told) -> None:
    """14 January 2028 − 74 = 1 November, − 49 = 13 September. 4 December 2027 − 235 days − 89 of less than ten hours
    of light (8 May to 4 August at 42.3° S, by astral 3.2) = 14 January. 9 June − 50 − 33 = 18 March, ready 7 May.
    """
    dates = by_id(told("dates", "further/tomato_and_garlic"))
    assert_holds(dates["p1"], **dated("2027-09-13", "2027-10-22", "2027-11-01", "2028-01-14"), out="2028-02-24")
    assert_holds(dates["p2"], **dated("2027-01-14", None, None, "2027-12-04"))
    assert_holds(dates["p3"], **dated("2028-02-14", "2028-03-11", "2028-03-18", "2028-05-07"), out="2028-06-10")


# Lower Saxony: garlic from October to July, a second turn, an L, a wedge, rings


def test_garlic_planted_in_october_is_followed_by_beans_in_its_bed(told: Told, printed: Printed) -> None:
    """5 July 2028 − 275 = 4 October 2027, over 29 February. 435 / 0.95 = 457.9, 458; (120 − 25) / 25 = 3.8, 4 rows of
    115 at 15 cm, 17.25 m; 12.40 m hold 82. Beans: 41 / 0.9 = 45.6, 46 x 0.8 m; (120 − 28) / 30 = 3.1, 4 rows: 9.20 m.
    """
    found, dates = (
        by_id(told("count", "further/garlic_and_corners")),
        by_id(told("dates", "further/garlic_and_corners")),
    )
    assert_holds(found["p1"], rows=4, plants=328, wanted=460, from_mm=cm(40), to_mm=cm(1765))
    assert_holds(found["p2"], rows=4, plants=460, from_mm=cm(40), to_mm=cm(960), last_plant_mm=cm(956))
    assert_holds(dates["p1"], sow="2027-10-04", ready="2028-07-05", out="2028-07-06")
    assert_holds(dates["p2"], sow="2028-07-19", ready="2028-09-15")
    said = printed("check", "further/garlic_and_corners")
    assert "F Garlic, Twice, 12.80 – 17.65 m: runs 4.85 m past the foot margin" in said
    assert "29 Garlic for Sat 15 Jul 2028: 130 plants short of 458" in said


def test_rows_end_where_an_l_and_a_wedge_end_and_rings_keep_their_spacing(told: Told) -> None:
    """L: rows at 15, 45 of 8.60 m hold 28, at 75, 105, 135 up to 5.40 m 17. Wedge, 1.40 m at the head and 7.5 cm
    narrower each metre: 60 x 8 / 0.92 = 521.7, 522 plants in clumps of 4 are 131 places; row 9 at 126 cm ends where
    134 cm are left, 0.80 m, row 8 at 2.667 m, row 7 at 4.533 m.
    """
    found = by_id(told("count", "further/garlic_and_corners"))
    assert_holds(found["p3"], plants_per_row=[28, 28, 17, 17, 17], first_plant_mm=cm(35), last_plant_mm=cm(845))
    assert_holds(found["p4"], plants_per_row=[16] * 8 + [5], to_mm=cm(190))
    assert_holds(found["p5"], plants_per_row=[18] * 7 + [7, 0], to_mm=cm(370))
    assert_holds(found["p6"], plants_per_row=[21] * 6 + [8, 0, 0], to_mm=cm(580))
    radii = [148, 118, 88, 58, 28]
    assert found["p7"]["plants_per_row"] == [floor(pi / asin(15 / radius)) for radius in radii]
    assert min(2 * radius * sin(pi / count) for radius, count in zip(radii, (30, 24, 18, 12, 5), strict=True)) >= 30


def test_clusters_and_clumps_are_raised_as_many_as_come_up(told: Told) -> None:
    """107 x 1.18 = 126.3, 127 / (1 − 0.28²) = 137.8, 138 cells. 133 x 1.09 = 145.0, 145 / (5 x 0.8⁴ x 0.2 + 0.8⁵) =
    196.7, 197 cells of 5 for clumps of 4. Garlic 49.2 m x 6.7 x 1.04 = 342.8; beans 36.8 x 15 x 1.06 = 585.1.
    """
    supplies = by_id(told("supplies", "further/garlic_and_corners"))
    assert_holds(supplies["p3"], **{"raise": 127, "cells": 138, "seeds": 276, "trays": 3})
    assert_holds(supplies["p4"], **{"raise": 145, "cells": 197, "seeds": 985, "trays": 2, "final_stand": 532})
    assert_holds(supplies["p1"], seeds=343)
    assert_holds(supplies["p2"], seeds=586)


# Salzburg: peppers by the fruit, film over two layers, jugs, water, compost and what they cost


def test_peppers_are_covered_watered_and_paid_for(told: Told, printed: Printed) -> None:
    """310 / (6 x 0.93) = 55.6, 56; 56 x 1.13 = 63.3, 64 / (1 − 0.32²) = 71.3, 72 cells. 12.55 m at most 1.30: 10 of
    1.255. Half round over 95 cm 149.2, legs 22, aprons 20, film 15; cloth 14.05 m, film 14.35 m. 37 x 5 kg cool by 14
    degrees: 185 x 4.1868 x 14 = 10,844 kJ against 7.1725 m² x 55 W: 7.6 h, as 5.3 to 10.7. 16.34 m² x 22 mm / 0.88.
    """
    supplies = told("supplies", "further/peppers_in_two_layers")
    assert_holds(by_id(supplies)["p1"], **{"raise": 64, "cells": 72, "seeds": 144, "trays": 2})
    assert_holds(by_id(supplies)["p2"], seeds=942, grams=16.53)
    (cover,) = supplies["covers"]
    assert_holds(cover, hoops=11, hoop_spacing_mm=cm(125.5), cloth_layers=2, weights=24)
    assert_holds(cover, cloth_length_mm=cm(1405), film_length_mm=cm(1435))
    arc = 475 * pi
    widths = [cover[name] for name in ("hoop_length_mm", "cloth_width_mm", "film_width_mm")]
    assert widths == pytest.approx([arc + 440, arc + 400, arc + 300], abs=0.01)
    said = printed("supplies", "further/peppers_in_two_layers")
    assert (
        "37 jugs of 5 l, 185 kg to carry, make up for what the bed loses on a clear night for about 5½ hours" in said
    )
    assert "Upper: 409 l a week, by drip in 2.3 h, drip lines take 175 l/h, 27 % of the supply" in said
    assert "compost: 294 l" in said


def test_what_is_bought_is_less_what_is_in_store_and_in_packs(printed: Printed) -> None:
    """144 seeds less 11 that come up to 64 in place of 68 of a hundred, as 10: 134 / 25 = 5.4, 6 x 3.40. Beet 16.5 g
    less 12: 1 x 6.10. 11 hoops less 4: 1 x 18. 28.1 m of cloth: 2 x 31. 294 l: 5 x 5.50. Horn meal 2.62 kg less 0.4:
    1 x 14.20. A tray of 2 and 7.8 l of mix: 2.80 and 9.90. Together 160.90.
    """
    said = printed("supplies", "further/peppers_in_two_layers", "--list")
    rows = {
        line.split("  ")[1].strip(): " ".join(line.split()) for line in said.splitlines() if line.startswith("  ")
    }
    assert rows["Pepper"].endswith("144 seeds 10 seeds 6 × 25 seeds € 20.40")
    assert rows["cloth, 2.10 m wide"].endswith("28.10 m 2 × 25 m € 62.00")
    assert rows["Horn meal"].endswith("2.62 kg 400 g 1 × 2.5 kg € 14.20")
    assert "cost: € 160.90, without 8 things that have no price" in said
