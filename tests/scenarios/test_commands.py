"""Whole jobs worked out by hand, from plan files through the commands that print their numbers."""

import json
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main

PLANS = Path(__file__).parent
Numbers = dict[str, Any]
Told = Callable[[str, str], Numbers]


@pytest.fixture
def told(capsys: pytest.CaptureFixture[str]) -> Told:
    """What a command prints as JSON for a scenario; it must end with status 0 and say nothing else."""

    def run(command: str, scenario: str) -> Numbers:
        status = main([command, str(PLANS / f"{scenario}.gardenplot"), "--json"])
        printed = capsys.readouterr()
        assert (status, printed.err) == (0, "")
        numbers: Numbers = json.loads(printed.out)
        return numbers

    return run


def by_id(numbers: Numbers, name: str = "plantings") -> dict[str, Numbers]:
    return {one["id"]: one for one in numbers[name]}


def assert_holds(found: Numbers, **expected: object) -> None:
    """Fail unless those fields have those values, and say which has not."""
    assert {name: found[name] for name in expected} == expected


def cm(*lengths: float) -> Any:
    """Millimetres of centimetres, one or a list of them."""
    millimetres = [float(Fraction(str(length)) * 10) for length in lengths]
    return millimetres[0] if len(millimetres) == 1 else millimetres


def feet(whole: float | Fraction, inches: float = 0) -> float:
    """Millimetres of feet and inches."""
    return float((12 * Fraction(whole) + Fraction(inches)) * Fraction(254, 10))


def across(*inches: float) -> list[float]:
    """Millimetres of inches."""
    return [feet(0, one) for one in inches]


def dated(sow: str, harden: str | None, set_out: str | None, ready: str | None) -> Numbers:
    return {"sow": sow, "harden": harden, "set_out": set_out, "ready": ready}


def test_s1_counts_both_crops_of_the_tunnel_bed(told: Told) -> None:
    count = told("count", "s1")
    assert_holds(
        by_id(count)["p1"], bed="b2", crop="pak-choi", rows=4, plants=136, plants_per_row=[34] * 4,
        row_offsets_mm=cm(7.5, 27.5, 47.5, 67.5), from_mm=cm(30), to_mm=cm(710), first_plant_mm=cm(40),
        last_plant_mm=cm(700),
    )  # fmt: skip
    assert_holds(
        by_id(count)["p2"], bed="b2", crop="kohlrabi", rows=3, plants=45, plants_per_row=[15] * 3,
        row_offsets_mm=cm(12.5, 37.5, 62.5), from_mm=cm(730), to_mm=cm(1105), first_plant_mm=cm(742.5),
        last_plant_mm=cm(1092.5),
    )  # fmt: skip
    assert_holds(by_id(count, "beds")["b2"], plants=181, leftover_mm=cm(65), leftover_pieces=1)
    assert by_id(count, "beds")["b2"]["leftover"] == [{"from_mm": cm(1105), "to_mm": cm(1170)}]
    assert count["plants"] == 181


def test_s1_dates_run_back_from_the_market_of_17_may(told: Told) -> None:
    dates = by_id(told("dates", "s1"))
    assert_holds(dates["p1"], **dated("2025-03-18", "2025-04-04", "2025-04-11", "2025-05-16"))
    assert_holds(dates["p2"], **dated("2025-03-07", "2025-03-28", "2025-04-04", "2025-05-16"))


def test_s1_supplies_are_trays_and_hoops(told: Told) -> None:
    supplies = told("supplies", "s1")
    assert_holds(by_id(supplies)["p1"], **{"raise": 157, "cells": 175, "seeds": 175, "trays": 3})
    assert_holds(by_id(supplies)["p2"], **{"raise": 52, "cells": 58, "seeds": 58, "trays": 1})
    assert_holds(by_id(supplies, "covers")["c1"], hoops=11, hoop_spacing_mm=cm(120))


def test_s1_offers_a_tray_less_for_the_pak_choi_only(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["supplies", str(PLANS / "s1.gardenplot")]) == 0
    offers = [line for line in capsys.readouterr().out.splitlines() if "would still give" in line]
    assert offers == ["A Pak choi: 2 trays would still give about 151 plants, 15 to spare"]


def test_s2_counts_broccoli_and_beets_in_feet_and_inches(told: Told) -> None:
    count = told("count", "s2")
    assert_holds(
        by_id(count)["p1"], bed="f1", crop="broccoli", rows=2, plants=100, plants_per_row=[50, 50],
        row_offsets_mm=across(12, 36), from_mm=feet(2), to_mm=feet(77), first_plant_mm=feet(2, 9),
        last_plant_mm=feet(76, 3),
    )  # fmt: skip
    assert_holds(
        by_id(count)["p2"], bed="f1", crop="beets", rows=4, plants=252, plants_per_row=[63] * 4,
        row_offsets_mm=across(6, 18, 30, 42), from_mm=feet(78), to_mm=feet(93, 9), first_plant_mm=feet(78, 1.5),
        last_plant_mm=feet(93, 7.5),
    )  # fmt: skip
    assert by_id(count, "beds")["f1"]["leftover"] == [{"from_mm": feet(93, 9), "to_mm": feet(98)}]
    assert_holds(by_id(count, "beds")["f1"], leftover_mm=feet(4, 3), leftover_pieces=1)


def test_s2_sets_broccoli_out_and_sows_beets(told: Told) -> None:
    dates = by_id(told("dates", "s2"))
    assert_holds(dates["p1"], **dated("2025-04-02", "2025-04-29", "2025-05-07", "2025-07-04"))
    assert_holds(dates["p2"], **dated("2025-04-30", None, None, "2025-07-04"))


def test_s2_supplies_are_trays_seed_hoops_and_cloth(told: Told) -> None:
    supplies = told("supplies", "s2")
    assert_holds(by_id(supplies)["p1"], **{"raise": 120, "cells": 131, "seeds": 131, "trays": 2})
    assert_holds(by_id(supplies)["p2"], **{"raise": None, "cells": None, "seeds": 832, "trays": None})
    assert by_id(supplies)["p2"]["grams"] == pytest.approx(13.9, abs=0.05)
    wide, narrow = (by_id(supplies, "covers")[cover] for cover in ("c1", "c2"))
    assert_holds(wide, hoops=16, hoop_spacing_mm=feet(5), cloth_length_mm=feet(83))
    assert wide["hoop_length_mm"] == pytest.approx(feet(0, 91.4), abs=feet(0, 0.05))
    assert wide["cloth_width_mm"] == pytest.approx(feet(0, 95.4), abs=feet(0, 0.05))
    assert_holds(narrow, hoops=20, hoop_spacing_mm=feet(Fraction(75, 19)))


def test_s3_fills_the_bed_with_lettuce_and_tomatoes_after_it(told: Told) -> None:
    count = by_id(told("count", "s3"))
    assert_holds(
        count["p1"], rows=3, plants=207, plants_per_row=[69] * 3, row_offsets_mm=across(5, 15, 25),
        first_plant_mm=feet(1, 4), last_plant_mm=feet(46, 8),
    )  # fmt: skip
    assert_holds(
        count["p2"], rows=1, plants=23, row_offsets_mm=across(15), first_plant_mm=feet(2), last_plant_mm=feet(46)
    )


def test_s3_dates_and_hoops(told: Told) -> None:
    dates = by_id(told("dates", "s3"))
    assert_holds(dates["p1"], **dated("2025-02-25", "2025-03-19", "2025-03-25", "2025-05-09"))
    assert dates["p2"]["set_out"] == "2025-05-12"
    assert_holds(by_id(told("supplies", "s3"), "covers")["c1"], hoops=13, hoop_spacing_mm=feet(4))


def test_s4_staggers_cabbage_and_fills_part_of_the_leek_bed(told: Told) -> None:
    count = told("count", "s4")
    assert_holds(
        by_id(count)["p1"], bed="f1", pattern="staggered", rows=3, plants=137, plants_per_row=[46, 45, 46],
        row_offsets_mm=cm(20, 60, 100), from_mm=cm(50), to_mm=cm(1890), first_plant_mm=cm(70),
        last_plant_mm=cm(1870),
    )  # fmt: skip
    assert_holds(
        by_id(count)["p2"], bed="f2", rows=4, plants=316, plants_per_row=[79] * 4,
        row_offsets_mm=cm(15, 45, 75, 105), from_mm=cm(50), to_mm=cm(1235),
    )  # fmt: skip
    assert_holds(by_id(count, "beds")["f1"], leftover_mm=cm(60), leftover_pieces=1)
    assert_holds(by_id(count, "beds")["f2"], leftover_mm=cm(715), leftover_pieces=1)


def test_s4_sows_leeks_across_the_leap_day(told: Told) -> None:
    dates = by_id(told("dates", "s4"))
    assert_holds(dates["p1"], **dated("2028-03-22", "2028-04-25", "2028-05-03", "2028-07-07"))
    assert_holds(dates["p2"], **dated("2028-02-18", None, "2028-05-03", None))


def test_s4_raises_cabbage_and_leeks(told: Told) -> None:
    supplies = by_id(told("supplies", "s4"))
    assert_holds(supplies["p1"], **{"raise": 151, "cells": 172, "trays": 3})
    assert_holds(supplies["p2"], **{"raise": 348, "cells": 435, "trays": 2})


def test_s5_lays_out_more_than_the_bed_holds(told: Told) -> None:
    count = by_id(told("count", "s5"))
    assert_holds(
        count["p1"], rows=2, plants=58, row_offsets_mm=across(10.5, 25.5), from_mm=feet(1), to_mm=feet(37, 3)
    )
    assert_holds(
        count["p2"], rows=6, row_offsets_mm=across(3, 9, 15, 21, 27, 33), from_mm=feet(38, 3), to_mm=feet(55)
    )


def test_s5_dates_and_hoops(told: Told) -> None:
    dates = by_id(told("dates", "s5"))
    assert_holds(dates["p1"], **dated("2025-04-01", "2025-04-24", "2025-05-01", "2025-06-20"))
    assert_holds(dates["p2"], **dated("2025-05-06", None, None, "2025-06-20"))
    assert_holds(by_id(told("supplies", "s5"), "covers")["c1"], hoops=11, hoop_spacing_mm=feet(3.8))


def test_s5_is_sixteen_feet_short_and_check_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(PLANS / "s5.gardenplot"), "--json"]) == 1
    findings = json.loads(capsys.readouterr().out)["findings"]
    (outside,) = [one for one in findings if one["kind"] == "outside"]
    assert_holds(outside, bed="t1", planting="p2", cannot_be_done=True)
    assert "16′\u20090″ past the foot margin" in outside["says"]
    assert "39′\u20090″ – 55′\u20090″" in outside["where"]
    assert [one["kind"] for one in findings if one["cannot_be_done"]] == ["outside"]


def test_s6_plans_fennel_in_centimetres_on_a_bed_in_feet(told: Told) -> None:
    count = told("count", "s6")
    assert_holds(
        by_id(count)["p1"], rows=3, plants=168, plants_per_row=[56] * 3, row_offsets_mm=cm(8.1, 38.1, 68.1),
        from_mm=cm(15), to_mm=cm(1415), first_plant_mm=cm(27.5), last_plant_mm=cm(1402.5),
    )  # fmt: skip
    assert_holds(by_id(count, "beds")["f1"], leftover_mm=cm(94), leftover_pieces=1)


def test_s6_dates_and_trays(told: Told) -> None:
    dates = by_id(told("dates", "s6"))
    assert_holds(dates["p1"], **dated("2025-04-07", "2025-05-05", "2025-05-12", "2025-07-11"))
    assert_holds(by_id(told("supplies", "s6"))["p1"], **{"raise": 202, "cells": 238, "seeds": 238, "trays": 2})


@pytest.mark.parametrize("scenario", ["s1", "s2", "s3", "s4", "s6"])
def test_check_finds_nothing_that_cannot_be_done(told: Told, scenario: str) -> None:
    assert [one for one in told("check", scenario)["findings"] if one["cannot_be_done"]] == []
