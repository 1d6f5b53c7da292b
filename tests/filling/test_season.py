"""Wishes are placed whole in ground that is free on all their days, and the bound is never beaten."""

import json
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.__main__ import main
from gardenplot.filling import fill
from gardenplot.findings import find_all
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, read_plan, text_of
from gardenplot.plan.valid import faults

Fields = dict[str, Any]


def plan_of(wishes: list[Fields], plantings: list[Fields] | None = None) -> Plan:
    """Two beds of 10 m and 6 m, two rows of leeks at 20 cm in each."""
    parts: Fields = {
        "beds": [
            {"id": "long", "name": "Long", "length": "10 m", "width": "80 cm"},
            {"id": "short", "name": "Short", "length": "6 m", "width": "80 cm"},
        ],
        "crops": [{"id": "c", "name": "Leek", "in_row": "20 cm", "row_spacing": "40 cm", "edge": "20 cm"}],
        "plantings": plantings or [],
        "wishes": [{"crop": "c"} | wish for wish in wishes],
    }
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def test_a_wish_goes_where_most_of_it_fits() -> None:
    filling = fill(plan_of([{"id": "w", "most": 90}]))
    (placed,) = filling.placed
    assert (placed.bed, placed.plants, filling.proven) == ("long", 90, True)


def test_two_wishes_share_the_beds_so_that_both_are_met() -> None:
    filling = fill(plan_of([{"id": "v", "most": 60}, {"id": "w", "most": 100}]))
    assert {(one.wanted, one.bed, one.plants) for one in filling.placed} == {("v", "short", 60), ("w", "long", 100)}
    assert filling.proven


def test_what_stands_is_not_touched_and_its_ground_is_used_when_it_is_free() -> None:
    stands = {"id": "p", "bed": "long", "crop": "c", "length": "10 m", "in_ground": "2027-04-01", "out": "2027-06-01"}
    wish = {"id": "w", "most": 100, "days": 40, "earliest": "2027-05-01", "latest": "2027-08-01", "beds": ["long"]}
    filling = fill(plan_of([wish], [stands]))
    (placed,) = filling.placed
    assert (str(placed.in_ground), str(placed.out), placed.plants) == ("2027-06-01", "2027-07-11", 100)
    assert filling.plan.plantings[0] == plan_of([wish], [stands]).plantings[0]


@pytest.mark.parametrize(
    "wish",
    [
        {"least": 500},
        {"beds": ["short"], "least": 61},
        {"days": 90, "earliest": "2027-05-01", "latest": "2027-06-01"},
    ],
)
def test_a_wish_that_cannot_be_met_is_left_out(wish: Fields) -> None:
    filling = fill(plan_of([{"id": "w", "most": 600} | wish]))
    assert filling.placed == ()
    assert filling.worth == 0
    (lack,) = filling.lacking
    assert (lack.wanted, lack.plants) == ("w", 0)


@settings(max_examples=40)
@given(
    st.lists(st.tuples(st.integers(1, 30), st.integers(0, 90), st.integers(1, 3)), min_size=1, max_size=4),
    st.booleans(),
)
def test_a_filling_is_a_plan_that_can_be_done_and_never_beats_its_bound(
    sizes: list[tuple[int, int, int]], dated: bool
) -> None:
    days: Fields = {"days": 50, "earliest": "2027-04-01", "latest": "2027-06-20"} if dated else {}
    wishes = [
        {"id": f"w{number}", "least": least, "most": least + more, "worth": worth} | days
        for number, (least, more, worth) in enumerate(sizes)
    ]
    plan = plan_of(wishes)
    filling = fill(plan, turns=60)
    assert not list(faults(filling.plan))
    assert not [one for one in find_all(filling.plan) if one.cannot_be_done]
    assert filling.worth <= filling.bound
    assert filling.worth == sum(
        wish.worth * one.plants for wish, one in product(plan.wishes, filling.placed) if wish.id == one.wanted
    )
    assert fill(plan, turns=60) == filling


def test_the_command_writes_a_new_plan_and_says_what_it_is_worth(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    old, new = tmp_path / "old.gardenplot", tmp_path / "new.gardenplot"
    old.write_text(text_of(plan_of([{"id": "w", "most": 90}])), encoding="utf-8")
    assert main(["fill", str(old), str(new), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert (told["worth"], told["bound"], told["proven"]) == (90, 90, True)
    assert [(one["wish"], one["bed"], one["from_mm"], one["to_mm"]) for one in told["placed"]] == [
        ("w", "long", 0, 9000)
    ]
    assert len(read_plan(new).plan.plantings) == 1
    assert main(["fill", str(old), str(old)]) == 2
    assert len(read_plan(old).plan.plantings) == 0


def test_the_filled_plan_gets_a_name_of_its_own_beside_the_plan(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    old = tmp_path / "old.gardenplot"
    old.write_text(text_of(plan_of([{"id": "w", "most": 90}])), encoding="utf-8")
    for name in ("old-filled", "old-filled-2", "old-filled-3"):
        assert main(["fill", str(old)]) == 0
        assert str(tmp_path / f"{name}.gardenplot") in capsys.readouterr().out
        assert len(read_plan(tmp_path / f"{name}.gardenplot").plan.plantings) == 1
