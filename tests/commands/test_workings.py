"""`count` and `dates` tell how each of their numbers came about, as `supplies` does."""

import json
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main

S1 = Path(__file__).parents[1] / "scenarios" / "s1.gardenplot"


def told(capsys: pytest.CaptureFixture[str], command: str, *more: str) -> Any:
    assert main([command, str(S1), *more]) == 0
    return capsys.readouterr().out


def workings(capsys: pytest.CaptureFixture[str], command: str) -> dict[str, Any]:
    """The numbers of the pak choi by their names."""
    shape = json.loads(told(capsys, command, "--json", "--workings"))
    return {number["name"]: number for number in shape["plantings"][0]["workings"]}


def test_count_has_the_sum_of_each_count_and_of_what_is_left(capsys: pytest.CaptureFixture[str]) -> None:
    """S1 by hand: 134 in 4 rows are 34 each, 136, 6.80 m; 11.40 m less 6.80, 0.20 and 3.75 leaves 0.65 m."""
    found = workings(capsys, "count")
    assert {name: found[name]["value"] for name in ("rows", "plants in a row", "planted", "length of block")} == {
        "rows": 4, "plants in a row": 34, "planted": 136, "length of block": 6_800_000_000,
    }  # fmt: skip
    assert found["planted"]["trust"] == "exact"
    assert [one["name"] for one in found["plants in a row"]["of"]] == ["stand", "rows"]
    shape = json.loads(told(capsys, "count", "--json", "--workings"))
    left = next(one for one in shape["beds"][0]["workings"] if one["name"].startswith("left over"))
    assert left["value"] == 650_000_000
    assert "workings" not in json.loads(told(capsys, "count", "--json"))["plantings"][0]


def test_dates_has_the_sum_of_each_date_down_to_the_market_day(capsys: pytest.CaptureFixture[str]) -> None:
    """S1 by hand: set out 35 days before Friday 16 May, sown 24 days before that."""
    found = workings(capsys, "dates")
    assert found["sow"]["value"] == "2025-03-18"
    assert found["set out"]["value"] == "2025-04-11"
    assert found["set out"]["trust"] == "fair"
    assert found["ready"]["of"][0]["value"] == "2025-05-17"
    assert "workings" not in json.loads(told(capsys, "dates", "--json"))["plantings"][0]


def test_both_print_their_sums_below_the_table(capsys: pytest.CaptureFixture[str]) -> None:
    assert "stand ÷ rows = 134 ÷ 4 = 34 (33.5, up)" in told(capsys, "count", "--workings").replace("\u2009", " ")
    assert "sow = set out − days of raising" in told(capsys, "dates", "--workings")
