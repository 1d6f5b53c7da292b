"""What keys and menus try: a rank more or less, a nudge, the first gap."""

from datetime import date

import pytest

from gardenplot.errors import PlanError
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.together import try_shift
from gardenplot.gestures.trials import try_first_gap, try_ranks
from gardenplot.plan import crop_of, planting_of
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import Spot, at, block, block_of, ground, planted, spot
from tests.layout.ground import nm


@pytest.mark.parametrize(
    ("more", "end"), [(1, "8.3 m"), (3, "8.9 m"), (-1, "7.7 m"), (0, "8 m"), (-9, "5.3 m"), (-99, "5.3 m")]
)
def test_ranks_come_and_go_at_the_foot_end_and_one_stays(more: int, end: str) -> None:
    trial = try_ranks(ground(block("5 m", "3 m")), "p1", more)
    assert block_of(trial.plan, "p1") == spot("5 m", end)
    assert trial.against == ()


@pytest.mark.parametrize(("more", "end"), [(1, "8.3 m"), (-1, "7.7 m")])
def test_a_block_that_is_no_whole_number_of_ranks_becomes_one(more: int, end: str) -> None:
    assert block_of(try_ranks(ground(block("5 m", "3.1 m")), "p1", more).plan, "p1") == spot("5 m", end)


def test_a_rank_more_adds_a_plant_to_each_row() -> None:
    trial = try_ranks(hand_worked("s1"), "p2", 1)
    assert layout_in(trial.plan, "p2").per_row == (16, 16, 16)
    assert planting_of(trial.plan, "p2").order == "o2"


def test_a_rank_into_the_neighbour_says_what_it_runs_into() -> None:
    trial = try_ranks(ground(block("5 m", "3 m"), block("8.2 m", "1 m")), "p1", 1)
    (finding,) = trial.against
    assert (finding.kind, finding.planting, finding.other, finding.amount) == ("overlap", "p1", "p2", nm("10 cm"))


@pytest.mark.parametrize(("by", "lies"), [("5 cm", spot("5.05 m", "8.05 m")), ("-1 cm", spot("4.99 m", "7.99 m"))])
def test_a_nudge_moves_both_ends(by: str, lies: Spot) -> None:
    trial = try_shift(ground(block("5 m", "3 m")), ["p1"], at(by).x)
    assert block_of(trial.plan, "p1") == lies
    assert trial.against == ()


def test_a_nudge_there_and_back_gives_an_equal_plan() -> None:
    plan = ground(block("5 m", "3 m"))
    there = try_shift(plan, ["p1"], nm("5 cm")).plan
    assert there != plan
    assert try_shift(there, ["p1"], -nm("5 cm")).plan == plan


def test_a_nudge_past_the_tapes_zero_stops_there() -> None:
    trial = try_shift(ground(block("3 cm", "3 m", bed="b2")), ["p1"], -nm("5 cm"))
    assert block_of(trial.plan, "p1") == spot("0 m", "3 m", "b2")


def test_a_nudge_past_the_margin_says_by_how_much() -> None:
    (finding,) = try_shift(ground(block("0.3 m", "3 m")), ["p1"], -nm("5 cm")).against
    assert (finding.kind, finding.amount) == ("outside", nm("5 cm"))


def test_the_first_gap_is_the_first_that_holds_a_rank() -> None:
    plan = ground(block("0.5 m", "3 m"), block("4 m", "2 m"))
    trial = try_first_gap(plan, crop_of(plan, "chard"), "b1", None)
    assert block_of(trial.plan, planted(trial)) == spot("6.2 m", "11.6 m")


def test_the_first_gap_is_filled_up_to_the_neighbour() -> None:
    plan = ground(block("4 m", "2 m"))
    trial = try_first_gap(plan, crop_of(plan, "leek"), "b1", None)
    assert block_of(trial.plan, planted(trial)) == spot("0.3 m", "3.75 m")


def test_the_first_gap_on_a_day_counts_only_what_stands_then() -> None:
    plan = ground(block("0.3 m", "3 m", in_ground="2027-03-01", out="2027-05-01"))
    trial = try_first_gap(plan, crop_of(plan, "chard"), "b1", date(2027, 5, 1))
    assert block_of(trial.plan, planted(trial)) == spot("0.3 m", "11.7 m")
    assert planting_of(trial.plan, planted(trial)).in_ground == date(2027, 5, 1)


def test_a_bed_without_a_gap_says_so() -> None:
    plan = ground(block("0.3 m", "11.3 m"))
    with pytest.raises(PlanError, match="Tunnel has no gap for Chard"):
        try_first_gap(plan, crop_of(plan, "chard"), "b1", None)


@pytest.mark.parametrize(
    ("out", "day", "words"),
    [
        ("2027-05-01", None, "it has one from Sat 1 May 2027 on"),
        ("2027-05-01", date(2027, 4, 30), "it has one from Sat 1 May 2027 on"),
        (None, date(2027, 4, 30), None),
    ],
)
def test_a_bed_that_has_a_gap_on_a_later_day_names_that_day(
    out: str | None, day: date | None, words: str | None
) -> None:
    plan = ground(block("0.3 m", "11.3 m", in_ground="2027-03-01", **({"out": out} if out else {})))
    with pytest.raises(PlanError) as told:
        try_first_gap(plan, crop_of(plan, "chard"), "b1", day)
    assert words in str(told.value) if words else "; " not in str(told.value)
