"""What stands in the gaps of another planting shares that ground, takes none from others' days, and is counted."""

import json
from datetime import date
from typing import Any

import pytest

from gardenplot.errors import FileError
from gardenplot.findings import Kind, find_all
from gardenplot.layout import fullest_day, lay_out_plan, planted_for_orders
from gardenplot.layout.bed import failed_rows, row_of, stood
from gardenplot.layout.leftover import free_on
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.edits import change_planting, move_planting, record_actual, remove_planting
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.sheets.paper import Paper
from gardenplot.units import M, parse_length
from tests.sheets.made import bed_sheets
from tests.sheets.pdf_pages import pages_of

Fields = dict[str, Any]
SET_OUT: Fields = {"set_out": "2027-04-22", "failed_rows": [2]}


def plan_of(gaps: Fields, *more: Fields, actual: Fields = SET_OUT, direct: bool = False) -> Plan:
    """Three rows of 30 in 6 m, of which the second failed, and what stands in its gaps."""
    crop: Fields = {"id": "k", "name": "Kohlrabi", "in_row": "20 cm", "row_spacing": "25 cm", "edge": "10 cm",
                    "field_days": 50, "raising_days": 28}  # fmt: skip
    gap: Fields = {"id": "g", "bed": "b1", "crop": "k", "from": "0 m", "length": "6 m", "pattern": "offsets",
                   "offsets": "40 cm", "in_ground": "2027-05-06", "gaps_of": "p", "order": "o"}  # fmt: skip
    parts: Fields = {
        "beds": [{"id": "b1", "name": "Upper bed", "length": "10 m", "width": "80 cm"},
                 {"id": "b2", "name": "Lower bed", "length": "10 m", "width": "80 cm"}],
        "crops": [crop | ({"establish": "direct"} if direct else {})],
        "orders": [{"id": "o", "crop": "k", "units": 90, "on": "2027-06-12"}],
        "plantings": [{"id": "p", "bed": "b1", "crop": "k", "from": "0 m", "length": "6 m", "order": "o",
                       "actual": actual},
                      {name: value for name, value in (gap | gaps).items() if value is not None}, *more],
    }  # fmt: skip
    return plan_of_text(json.dumps({"gardenplot": 1} | parts)).plan


def test_it_shares_the_ground_of_its_planting_and_both_are_counted() -> None:
    plan = plan_of({})
    assert not [one for one in find_all(plan) if one.kind is Kind.OVERLAP]
    assert planted_for_orders(lay_out_plan(plan)) == {("o", 1): 90}
    laid = lay_out_plan(plan)[0]
    assert free_on(laid, fullest_day(laid)).total == 4 * M
    assert plan_of_text(text_of(plan)).plan == plan


def test_without_that_word_both_claim_the_ground() -> None:
    plan = change_planting(plan_of({}), "g", gaps_of=None)
    assert [one.planting for one in find_all(plan) if one.kind is Kind.OVERLAP]


def test_it_keeps_the_ground_from_what_would_follow() -> None:
    """The kohlrabi is out on 12 June, what stands in its gaps on 26 June: nothing goes in before that."""
    after = {"id": "q", "bed": "b1", "crop": "k", "from": "0 m", "length": "2 m", "in_ground": "2027-06-20"}
    found = [one for one in find_all(plan_of({}, after)) if one.kind is Kind.OVERLAP]
    assert [{one.planting, one.other} for one in found] == [{"g", "q"}]


def test_in_another_bed_or_once_its_planting_is_gone_it_has_ground_of_its_own() -> None:
    plan = plan_of({})
    assert planting_of(move_planting(plan, "g", "b2", parse_length("1 m")), "g").gaps_of is None
    gone = remove_planting(record_actual(plan, "p", {"cleared": date(2027, 6, 12)}, {}), "p")
    assert planting_of(gone, "g").gaps_of is None


@pytest.mark.parametrize(
    ("gaps", "says"),
    [
        ({"gaps_of": "x"}, "there is no planting “x”"),
        ({"gaps_of": "g"}, "has no gaps"),
        ({"bed": "b2"}, "has no gaps"),
        ({"from": None}, "begins at a tape reading"),
        ({"hardens": "p", "order": None, "in_ground": None}, "is planted"),
    ],
)
def test_what_has_no_gaps_to_stand_in_is_refused(gaps: Fields, says: str) -> None:
    with pytest.raises(FileError, match=says):
        plan_of(gaps)


@pytest.mark.parametrize(
    ("actual", "direct", "stands"),
    [
        ({}, False, 90),
        ({"failed_rows": [2, 2, 9]}, False, 60),
        ({"planted": 80, "failed_rows": [2]}, False, 50),
        ({"planted": 80, "failed_rows": [2], "standing": 41}, False, 41),
        ({"failed_rows": [1, 2, 3], "planted": 80}, False, 0),
        ({"stand": 200}, True, 90),
        ({"stand": 70}, True, 70),
        ({"stand": 8, "stand_row": "2 m"}, True, 72),
        ({"stand": 12, "stand_row": "2 m"}, True, 90),
        ({"stand": 8, "stand_row": "2 m", "failed_rows": [2]}, True, 42),
    ],
)
def test_so_many_stand_of_what_was_counted(actual: Fields, direct: bool, stands: int) -> None:
    """Of 90 places, 30 in a row; 8 in 2 m where 10 were meant are 72."""
    plan = plan_of({}, actual={"set_out": "2027-04-22"} | actual, direct=direct)
    laid = lay_out_plan(plan)[0]
    assert stood(laid.grown[0], laid.layouts[0]) == stands
    assert row_of(laid.layouts[0]) == 18 * M
    assert set(failed_rows(laid.grown[0], laid.layouts[0])) <= {1, 2, 3}


def test_what_was_set_out_is_drawn_and_counted_as_it_was_set_out() -> None:
    """A row that failed is said, not taken out: screen, paper and lists count the same plants."""
    layouts = lay_out_plan(plan_of({}))[0].layouts
    assert [(one.plants, one.per_row) for one in layouts] == [(90, (30, 30, 30)), (30, (30,))]


@pytest.mark.parametrize("paper", Paper)
def test_on_paper_both_are_named_over_their_block(paper: Paper) -> None:
    (page, _other) = pages_of(bed_sheets(plan_of({}), paper).pdf)
    assert "A Kohlrabi · B Kohlrabi" in page.text
