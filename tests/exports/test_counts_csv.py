"""Counts as CSV: a line a row, the counts of the layout, read back with the standard module."""

import csv
import io
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given, settings

from gardenplot.__main__ import main
from gardenplot.exports.counts_csv import COLUMNS, write_counts
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.edits import change_crop
from tests.drawing.hand_worked import hand_worked
from tests.plans import plans

SCENARIOS = Path(__file__).parents[1] / "scenarios"


def rows_of(plan: Plan) -> list[dict[str, str]]:
    """The lines of a plan's counts, read back."""
    return list(csv.DictReader(io.StringIO(write_counts(plan).decode(), newline="")))


@settings(max_examples=max(30, settings().max_examples // 10), deadline=None)
@given(plans())
def test_the_lines_of_a_planting_add_up_to_what_is_laid_out(plan: Plan) -> None:
    layouts = {layout.planting: layout for laid in lay_out_plan(plan) for layout in laid.without_trays.layouts}
    found: Counter[str] = Counter()
    for row in rows_of(plan):
        found[row["planting"].removeprefix("'")] += int(row["plants"])
    assert found == {planting: layout.plants for planting, layout in layouts.items()}


def test_rows_that_differ_stand_one_by_one() -> None:
    rows = rows_of(hand_worked("s4"))
    # S4, by hand: 137 = 46 + 45 + 46 between 0.50 and 18.90 m; leeks 4 x 79.
    assert [tuple(row.values()) for row in rows[:3]] == [
        ("f1", "p1", "Summer cabbage", "A", "500", "18900", "3", str(number), plants)
        for number, plants in ((1, "46"), (2, "45"), (3, "46"))
    ]
    assert [row["plants"] for row in rows[3:]] == ["79"] * 4


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\t", "\r"])
def test_no_name_runs_as_a_formula(sign: str) -> None:
    plan = hand_worked("s1")
    name = f'{sign}HYPERLINK("x"), é'
    first = rows_of(change_crop(plan, plan.crops[0].id, name=name))[0]
    assert first["crop"] == f"'{name}"


def test_lines_end_as_the_standard_says() -> None:
    text = write_counts(hand_worked("s1")).decode()
    assert text.startswith(",".join(COLUMNS) + "\r\n")
    assert text.count("\r\n") == text.count("\n") == 1 + 4 + 3


def test_the_command_writes_it(tmp_path: Path) -> None:
    out = tmp_path / "counts.csv"
    assert main(["count", str(SCENARIOS / "s1.gardenplot"), "--csv", str(out)]) == 0
    assert out.read_bytes() == write_counts(hand_worked("s1"))
