"""What a plan risks on the day on which it is looked at, from the command."""

import json
from datetime import date
from pathlib import Path

import pytest

from gardenplot.__main__ import main

SCENARIO = str(Path(__file__).parents[1] / "scenarios" / "s6.gardenplot")
"""Sown on 7 April 2025 for the market of 12 July."""


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["check", SCENARIO, *words]) == 0
    return capsys.readouterr().out.replace("\u2009", " ")


def test_a_sowing_day_past_is_a_risk_with_its_place(capsys: pytest.CaptureFixture[str]) -> None:
    out = printed(capsys, "--today", "2025-04-17")
    assert "0.15 – 14.15 m: sowing day Mon 7 Apr 2025, 10 days ago, is not recorded; sown today" in out
    assert "sowing day" not in printed(capsys, "--today", "2025-04-07")


def test_json_names_the_kind_the_planting_and_the_day(capsys: pytest.CaptureFixture[str]) -> None:
    told = json.loads(printed(capsys, "--json", "--today", "2025-04-17"))
    assert told["today"] == "2025-04-17"
    (one,) = [one for one in told["findings"] if one["kind"] == "sowing day past"]
    assert (one["planting"], one["bed"], one["cannot_be_done"]) == ("p1", "f1", False)


def test_without_a_day_the_real_one_is_taken_and_a_plan_of_long_ago_is_past(
    capsys: pytest.CaptureFixture[str],
) -> None:
    told = json.loads(printed(capsys, "--json"))
    assert date.fromisoformat(told["today"]) > date(2026, 1, 1)
    (one,) = [one for one in told["findings"] if one["kind"] == "plan of a season that is over"]
    assert one["where"] == "plan"
    assert one["says"].startswith("all days of this plan are past, the last was ")


@pytest.mark.parametrize("typed", ["yesterday", "2025-02-29", "20250407", "2025-W15-1"])
def test_a_day_that_is_none_ends_with_status_2_and_one_line(typed: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", SCENARIO, "--today", typed]) == 2
    assert capsys.readouterr().err == f"gardenplot: “{typed}” is no date: write it like 2027-04-09 or 9 Apr 2027\n"
