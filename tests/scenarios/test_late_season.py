"""The end of a season and the turn of a leap year: days that lie after all others, market days out of order.

Worked by hand from the rules of dates, with a calendar; place, crop and orders are invented.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main
from tests.scenarios.planned_again import Again, again, the_answer, the_setback
from tests.scenarios.test_commands import assert_holds, by_id, dated

__all__ = ["again"]
Fields = dict[str, Any]
Printed = Callable[..., str]
FIRST: Fields = {"id": "p", "bed": "b", "crop": "c", "order": "o"}


def lettuces(*plantings: Fields, order: Fields, **bed: str) -> Fields:
    """54 lettuces for a day: 54 / 0.9 = 60, 20 ranks of 3 in 5 m; ready the day before it, set out 45 days before."""
    return {
        "gardenplot": 1,
        "place": {"name": "Weir Bank", "units": "metric"},
        "beds": [{"id": "b", "name": "Low bed", "length": "12 m", "width": "90 cm"} | bed],
        "crops": [{"id": "c", "name": "Lettuce", "in_row": "25 cm", "row_spacing": "30 cm", "edge": "15 cm",
                   "field_loss": "10 %", "germination": "90 %", "tray_cells": 84, "field_days": 45,
                   "raising_days": 28, "hardening_days": 7, "harvest_days": 5}],
        "orders": [{"id": "o", "crop": "c", "units": 54} | order],
        "plantings": [FIRST | one for one in plantings],
    }  # fmt: skip


@pytest.fixture
def printed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Printed:
    """What a command prints of a plan."""

    def run(command: str, plan: Fields, *words: str) -> str:
        path = tmp_path / "plan.gardenplot"
        path.write_text(json.dumps(plan), encoding="utf-8")
        main([command, str(path), *words])
        return capsys.readouterr().out.replace("\u2009", " ")

    return run


def test_what_is_free_long_after_all_else_is_followed_on_its_ground(again: Again) -> None:
    """Its ground was typed to be free on 15 December; cleared on 20 July it is 148 days early, as all days say.

    What follows for no order is raised in 28 days: asked on 21 July it goes in on 18 August, ready on 2 October.
    """
    came = {"sown": "2027-04-20", "set_out": "2027-05-18", "harvested": "2027-07-01", "cleared": "2027-07-20"}
    after = {"id": "q", "order": None, "plants": 30, "from": "0 m", "in_ground": "2027-12-20"}
    plan = lettuces({"out": "2027-12-15", "actual": came}, after, order={"on": "2027-07-03"})
    found = the_setback(again(plan, "2027-07-21"), "ground free early")
    assert_holds(found, days=148)
    assert found["says"][0].replace("\u2009", " ") == (
        "Lettuce: Low bed, 0.00 – 5.00 m is free from Tue 20 Jul 2027, 148 days early, until 15 Dec"
    )
    assert_holds(the_answer(found, "sooner"), set_out="2027-08-18", ready="2027-10-02")


def test_what_keeps_its_days_comes_before_what_waits_for_the_end_of_the_season(printed: Printed) -> None:
    """30 lettuces stand in those whose ground is free on 15 December, 105 days after their 1 September."""
    second = {"id": "q", "order": None, "plants": 30, "from": "0 m", "in_ground": "2027-09-01"}
    plan = lettuces({"out": "2027-12-15"}, second, order={"on": "2027-07-03"})
    ways = [line for line in printed("fill", plan, "--seconds", "0").splitlines() if line.startswith("  ")]
    assert "Lettuce in Low bed, 2.50 – 7.50 m" in ways[0]
    (late,) = [number for number, way in enumerate(ways) if "30 of 30 Lettuce, 105 days late" in way]
    assert late > max(number for number, way in enumerate(ways) if "late" not in way and "30 of 30" in way)


def test_a_market_day_before_the_sowing_is_missed_by_so_many(printed: Printed) -> None:
    """Sown on 10 May, out on 7 June, ready on 22 July, 83 days after 30 April; 24 July is the 13th Saturday."""
    plan = lettuces({"sow": "2027-05-10"}, order={"on": "2027-05-01"})
    assert "is ready 83 days too late for the market on Sat 1 May 2027" in printed("check", plan)
    assert "60 plants for Sat 24 Jul, too late for 12 market days from 1 May on" in printed("dates", plan, "--weeks")


def test_market_days_out_of_order_have_each_their_own_days(printed: Printed) -> None:
    """For 17, 3 and 10 July 60 are to stand each; 12 m hold 5, 5 and 2 m: 24 of the last, 21 heads."""
    plan = lettuces({"market": 3}, {"id": "p2", "market": 1}, {"id": "p3", "market": 2},
                    order={"on": "2027-07-03", "times": 3, "every_days": 7})  # fmt: skip
    dates = by_id(json.loads(printed("dates", plan, "--json")))
    assert [dates[name]["set_out"] for name in ("p", "p2", "p3")] == ["2027-06-01", "2027-05-18", "2027-05-25"]
    said = printed("fill", plan, "--seconds", "0")
    assert (
        "54 Lettuce for Sat 10 Jul 2027 do not fit Low bed: 36 plants short, 3.00 m of bed, 33 of the order" in said
    )
    whole = {day: f"54 of 54 Lettuce for {day}" for day in ("17 Jul", "3 Jul", "10 Jul")}
    for day in whole:
        met = whole | {day: f"21 of 54 Lettuce for {day} (39 %)"}
        assert f"Less Lettuce for {day}: {', '.join(met.values())}" in said


def test_the_29th_of_february_is_a_market_day_and_its_year_later_the_28th(printed: Printed) -> None:
    """29 February 2028 - 1 - 45 = 14 January, - 28 = 17 December. 365 days later is 28 February 2029: 13 January."""
    plan = lettuces({}, {"id": "p2", "market": 2}, order={"on": "2028-02-29", "times": 2, "every_days": 365})
    dates = by_id(json.loads(printed("dates", plan, "--json")))
    assert_holds(dates["p"], **dated("2027-12-17", "2028-01-07", "2028-01-14", "2028-02-28"), out="2028-03-05")
    assert_holds(dates["p2"], **dated("2028-12-16", "2029-01-06", "2029-01-13", "2029-02-27"), out="2029-03-05")


def test_a_bed_that_is_late_until_the_29th_of_february(again: Again) -> None:
    """46 days after 14 January, 74 after 17 December; ready 45 later, on 14 April, for 18 April, the 8th Tuesday."""
    plan = lettuces({"actual": {"sown": "2027-12-17"}}, order={"on": "2028-02-29"}, usable_from="2028-02-29")
    found = the_setback(again(plan, "2028-01-10"), "seedlings or bed")
    assert_holds(found, bed_late_days=46, age_days=74, ready="2028-04-14", market="2028-04-18")
    assert len(found["missed"]) == 7
