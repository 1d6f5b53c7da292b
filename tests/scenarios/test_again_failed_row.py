"""A failed row planned again as worked by hand; sums are common practice, no source.

Kohlrabi, 120 wanted for Sat 12 June 2027, loss 10 %: 120 / 0.9 = 133.3, so 134 must stand. The bed is 80 cm wide with
10 cm kept at its edges: (80 - 20) / 25 = 2.4, so 3 rows, 50 cm from first to last, at 15, 40 and 65 cm. 134 / 3 =
44.7, so 45 ranks and 135 plants in 45 x 20 cm = 9.00 m, from 0.30 to 9.30 m; 11.70 - 9.30 = 2.40 m are left. Ready
Fri 11 June, 50 days in the field: set out Thu 22 April; 28 days in trays: sown Thu 25 March.

On Thu 6 May row 2 is gone: 90 stand, 45 are lost, 45 x 20 cm = 9.00 m of row are empty.
"""

from typing import Any

from tests.scenarios.planned_again import Again, again, failed_row, kinds, the_answer, the_setback
from tests.scenarios.test_commands import Numbers, assert_holds, cm

__all__ = ["again"]
TODAY = "2027-05-06"


def lost(again: Again, **more: Any) -> Numbers:
    return the_setback(again(failed_row(**more), TODAY, "--loss", "5 %"), "lost in the bed")


def test_90_of_135_stand_and_nine_metres_of_row_are_empty(again: Again) -> None:
    found = lost(again)
    assert_holds(
        found, planned=135, standing=90, short=45, failed_rows=[2], empty_row_mm=cm(900), market="2027-06-12"
    )
    assert found["says"] == [
        "Kohlrabi: 90 of 135 plants stand, 45 short, counted Thu 6 May 2027",
        "Kohlrabi: row 2 failed, 9.00\u2009m of row are empty",
    ]
    assert kinds(found) == ["buy in", "sow again", "harvest less", "fill the empty rows"]


def test_harvesting_less_leaves_81(again: Again) -> None:
    """90 x 0.9 = 81; 120 - 81 = 39 are short."""
    less = the_answer(lost(again), "harvest less")
    assert_holds(less, units=81, units_short=39, market="2027-06-12", stakes=[], marks=[], leftover_mm=cm(240))


def test_45_bought_in_stand_in_the_gaps_and_cost_two_markets(again: Again) -> None:
    """Set out on 6 May they are ready 50 days later, on Fri 25 June; (90 + 45) x 0.9 = 121.5."""
    bought = the_answer(lost(again), "buy in")
    assert_holds(
        bought, buy=45, units=121, units_short=0, set_out=TODAY, ready="2027-06-25", market="2027-06-26",
        missed=["2027-06-12", "2027-06-19"], costs_markets=2, stakes=[], marks=[], plants_per_row=[45, 45, 45],
    )  # fmt: skip


def test_sown_again_60_cells_come_six_markets_later(again: Again) -> None:
    """45 / 0.95 = 47.4: 48 plants; 48 / 0.8 = 60 cells; of two seeds 1 - 0.2^2 = 0.96, 48 / 0.96 = 50 cells.

    6 May + 28 days = Thu 3 June, + 50 days = Fri 23 July.
    """
    sown = the_answer(lost(again), "sow again")
    assert_holds(sown["sow"], plants=48, cells=60, cells_with_two_seeds=50, seeds_for_these=100)
    assert_holds(
        sown, set_out="2027-06-03", ready="2027-07-23", market="2027-07-24", costs_markets=6, units=121, stakes=[]
    )


def test_radish_fills_the_empty_row_but_beans_stand_too_near(again: Again) -> None:
    """Row 2 lies 25 cm from its neighbours. Radish asks for (25 + 15) / 2 = 20 cm, beans for (25 + 45) / 2 = 35 cm.

    9.00 m / 5 cm = 180 radishes; sown on 6 May, ready 28 days later on 3 June, out the day after.
    """
    filled = the_answer(lost(again), "fill the empty rows")
    (radish,) = filled["filled"]
    assert_holds(radish, wish="wr", plants=180, from_mm=cm(30), to_mm=cm(930), in_ground=TODAY, out="2027-06-04")
    (mark,) = filled["marks"]
    assert_holds(mark, what="spacing", old_mm=None, new_mm=cm(5))
    assert filled["stakes"] == []


def test_what_follows_on_that_ground_leaves_no_time_to_sow_again(again: Again) -> None:
    """Sown again it is out on 24 July; a crop that goes in on 1 July is in its way, and not in that of 25 June."""
    after = {"id": "q", "bed": "b1", "crop": "r", "from": "2 m", "length": "3 m", "in_ground": "2027-07-01"}
    assert kinds(lost(again, plantings=[after])) == ["buy in", "harvest less", "fill the empty rows"]


def test_an_answer_taken_is_not_asked_for_again(again: Again, tmp_path: Any) -> None:
    out = tmp_path / "out.gardenplot"
    said = again(failed_row(), TODAY, str(out), "--loss", "5 %", "--take", "1")
    assert [one["answer"]["kind"] for one in said["taken"]] == ["buy in"]
    assert_holds(said, units_short=0, costs_markets=2, buy=45, stakes=[])
