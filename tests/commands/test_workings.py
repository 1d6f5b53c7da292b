"""`count`, `dates`, `fill` and `again` tell how each of their numbers came about, as `supplies` does."""

import json
from pathlib import Path
from typing import Any

import pytest

from gardenplot.__main__ import main
from gardenplot.plan.file import write_plan
from tests.scenarios.again_plans import late_and_short

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


def by_name(shape: dict[str, Any]) -> dict[str, Any]:
    """The numbers of a shape by their names."""
    return {number["name"]: number for number in shape["workings"]}


def test_fill_has_the_sums_of_what_it_placed_and_of_the_ways_out(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """S5 by hand: 58 of the 60 bunches lack ground; with less coriander 2 are left."""
    plan, out = S1.with_name("s5.gardenplot"), str(tmp_path / "out.gardenplot")

    def said(*more: str) -> Any:
        assert main(["fill", str(plan), out, "--seconds", "0", *more]) == 0
        return capsys.readouterr().out

    shape = json.loads(said("--json", "--workings"))
    assert "wishes and orders met" in by_name(shape)
    (short,) = shape["ways_out"]
    assert by_name(short)["short by"]["value"] == short["lacks_units"] == 58
    way = next(one for one in short["ways"] if one["says"].startswith("Less Coriander"))
    assert by_name(way)["to sell, Coriander"]["value"] == 2
    assert by_name(way)["to sell, Coriander"]["formula"].startswith("planted for it × (1 − field loss)")
    assert "workings" not in json.loads(said("--json"))
    assert "wishes and orders met = wishes and orders − that lack ground" in said("--workings")


def test_again_has_the_sums_of_what_came_about_and_of_each_answer(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """S6 by hand: 161 x 0.95 = 152.95, 152 to set out, 16 short of 168; 16 / 0.95 = 16.84, 17; / (161 / 256), 28."""
    plan = tmp_path / "s6.gardenplot"
    write_plan(plan, late_and_short())

    def said(*more: str) -> Any:
        assert main(["again", str(plan), "--today", "2025-04-21", "--loss", "5 %", *more]) == 0
        return capsys.readouterr().out

    shape = json.loads(said("--json", "--workings"))
    (found,) = shape["setbacks"]
    told = by_name(found)
    assert told["plants to set out"]["says"].replace("\u2009", " ") == "152 (152.95, down)"
    assert told["short by"]["value"] == found["short"] == 16
    sown = by_name(next(one for one in found["answers"] if one["kind"] == "sow again"))
    names = ("plants to raise again", "cells", "cells with two seeds each")
    assert [sown[name]["value"] for name in names] == [17, 28, 20]
    assert all(one["workings"] for one in found["answers"])
    assert "workings" not in json.loads(said("--json"))["setbacks"][0]
    assert "plants to set out = cells with a usable plant × (1 − lost from tray to bed)" in said("--workings")


def test_answers_taken_have_their_sums_too(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """As above: of the 28 cells that were taken, and of what came about; none where they are not asked for."""
    plan, out = tmp_path / "s6.gardenplot", tmp_path / "out.gardenplot"
    write_plan(plan, late_and_short())

    def said(*more: str) -> Any:
        taking = "--today", "2025-04-21", "--loss", "5 %", "--take", "nothing bought"
        assert main(["again", str(plan), str(out), *taking, *more]) == 0
        return capsys.readouterr().out

    (taken,) = json.loads(said("--json", "--workings"))["taken"]
    assert by_name(taken)["plants to set out"]["value"] == 152
    assert taken["answer"]["kind"] == "sow again"
    assert by_name(taken["answer"])["cells"]["value"] == taken["answer"]["sow"]["cells"] == 28
    (bare,) = json.loads(said("--json"))["taken"]
    assert "workings" not in bare
    assert "workings" not in bare["answer"]
    told = said("--workings").replace("\u2009", " ")
    assert "plants to set out = cells with a usable plant × (1 − lost from tray to bed)" in told
    assert "written to" in told
