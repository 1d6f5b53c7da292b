"""Several plantings moved on the season map at once, and copies dragged there, in time and place."""

from datetime import date, timedelta

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.gestures.day_snap import DayPull
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.season_drawn import try_first_day, try_out
from gardenplot.gestures.season_moved import (
    hold,
    move_in_season,
    try_days,
    try_in_season,
    try_next_turn,
)
from gardenplot.gestures.season_words import no_longer_words, several_season_line
from gardenplot.gestures.stage import Pointer
from gardenplot.plan import Plan, planting_of
from gardenplot.season import dates_of
from gardenplot.units import CM
from tests.drawing.hand_worked import plan_from
from tests.gestures.hand import KeptStage, block, block_of, drag, ground, spot, trouble
from tests.layout.ground import nm

SPRING = {"in_ground": "2027-04-05", "out": "2027-06-01"}
SUMMER = {"in_ground": "2027-06-20", "out": "2027-08-20"}
APRIL, JUNE, LATE_JUNE, AUGUST = date(2027, 4, 5), date(2027, 6, 1), date(2027, 6, 20), date(2027, 8, 20)


def at(
    reading: str,
    day: date,
    *,
    bed: str = "b1",
    reach: int = 0,
    days: int = 0,
    copies: bool = False,
    push: bool = False,
) -> Pointer:
    """The hand on the map of a bed."""
    return Pointer(bed, nm(reading), 0, reach, push=push, copies=copies, day=day, reach_days=days)


def days_of(plan: Plan, planting: str) -> tuple[date | None, date | None]:
    dates = dates_of(plan, planting_of(plan, planting))
    return dates.in_ground, dates.out


def moved(plan: Plan, planting: str, others: tuple[str, ...], *way: Pointer) -> KeptStage:
    stage = KeptStage(plan)
    drag(move_in_season(stage, planting, way[0], others), *way[1:])
    return stage


def two() -> Plan:
    """Chard in spring and another in summer, side by side in the first bed."""
    return ground(block("1 m", "2 m", **SPRING), block("5 m", "2 m", **SUMMER))


def test_what_is_chosen_goes_by_the_same_days_and_the_same_way() -> None:
    stage = moved(two(), "p1", ("p2",), at("2 m", date(2027, 5, 1)), at("3 m", date(2027, 5, 11)))
    assert days_of(stage.after, "p1") == (date(2027, 4, 15), date(2027, 6, 11))
    assert days_of(stage.after, "p2") == (date(2027, 6, 30), date(2027, 8, 30))
    assert block_of(stage.after, "p1") == spot("2 m", "4 m")
    assert block_of(stage.after, "p2") == spot("6 m", "8 m")
    assert stage.committed[0].chosen == ("p1", "p2")
    line = several_season_line(stage.after, ("p1", "p2"))
    assert [one.replace("\u2009", " ") for one in line.split("   ")] == [
        "2 plantings", "15 Apr – 30 Aug 2027, 137 days", "2.00 – 8.00 m", "24 plants",
    ]  # fmt: skip


def test_they_go_to_another_bed_together_and_keep_their_days() -> None:
    stage = moved(two(), "p1", ("p2",), at("2 m", date(2027, 5, 1)), at("2.5 m", date(2027, 5, 2), bed="b2", days=3))
    assert block_of(stage.after, "p1") == spot("1.5 m", "3.5 m", "b2")
    assert block_of(stage.after, "p2") == spot("5.5 m", "7.5 m", "b2")
    assert [days_of(stage.after, one) for one in ("p1", "p2")] == [(APRIL, JUNE), (LATE_JUNE, AUGUST)]


def test_below_the_last_bed_there_is_none_for_all_of_them() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("1 m", "2 m", bed="b2", **SPRING))
    stage = moved(plan, "p1", ("p2",), at("2 m", APRIL), at("2 m", APRIL, bed="b2"))
    assert stage.refused[0].refusal == "there is no bed there for all of them"


def test_one_that_goes_along_is_drawn_to_the_day_on_which_its_own_ground_is_free() -> None:
    plan = ground(
        block("1 m", "2 m", **SPRING),
        block("5 m", "2 m", **SUMMER),
        block("5 m", "2 m", in_ground="2027-03-01", out="2027-05-20"),
    )
    stage = moved(plan, "p1", ("p2",), at("2 m", LATE_JUNE), at("2 m", date(2027, 5, 22), reach=CM, days=3))
    assert days_of(stage.after, "p2")[0] == date(2027, 5, 20)
    assert days_of(stage.after, "p1")[0] == APRIL - (LATE_JUNE - date(2027, 5, 20))
    drawn = stage.committed[0].drawn_day
    assert drawn is not None
    assert (drawn.pull, drawn.planting) == (DayPull.FREE, "p3")


def test_one_of_them_in_the_ground_holds_all_but_can_be_copied() -> None:
    plan = ground(block("1 m", "2 m", **SPRING, actual={"set_out": "2027-04-07"}), block("5 m", "2 m", **SUMMER))
    stage = moved(plan, "p2", ("p1",), at("6 m", date(2027, 7, 1)), at("7 m", date(2027, 7, 9)))
    assert stage.committed == []
    assert stage.refused[0].refusal.startswith("Chard has been in the ground since Wed 7 Apr 2027")
    copy = moved(plan, "p1", (), at("2 m", date(2027, 5, 1)), at("2 m", date(2027, 7, 1), reach=CM, copies=True))
    assert days_of(copy.after, "p1-2") == (date(2027, 6, 7), date(2027, 8, 1))
    assert planting_of(copy.after, "p1-2").actual is None


def test_a_copy_follows_in_the_same_ground_drawn_to_the_day_it_is_free() -> None:
    plan = two()
    stage = moved(
        plan,
        "p1",
        (),
        at("2 m", date(2027, 5, 1)),
        at("2.05 m", date(2027, 6, 29), reach=10 * CM, days=5, copies=True),
    )
    assert stage.verbs == ["Copy {crop}"]
    assert days_of(stage.after, "p1-2") == (JUNE, JUNE + (JUNE - APRIL))
    assert block_of(stage.after, "p1-2") == block_of(plan, "p1")
    assert planting_of(stage.after, "p1") == planting_of(plan, "p1")
    assert stage.committed[0].drawn_day is not None
    assert stage.committed[0].drawn_day.planting == "p1"


@pytest.mark.parametrize("copies", [False, True])
def test_along_the_bed_it_is_drawn_to_what_stands_on_its_new_days(copies: bool) -> None:
    """A gap of 20 cm before the one that begins at 5 m; in spring that is not there, and draws nothing."""
    summer, spring = date(2027, 7, 16), date(2027, 5, 2)
    starts = []
    for day in (summer, spring):
        way = at("2 m", date(2027, 5, 1)), at("3.82 m", day, reach=4 * CM, copies=copies)
        trial = try_in_season(hold(two(), ("p1",), way[0], None), way[1])
        assert trial is not None
        assert trial.planting is not None
        starts.append(block_of(trial.plan, trial.planting)[1])
    assert starts == [nm("2.8 m"), nm("2.82 m")]


def test_a_copy_where_it_stands_on_the_same_days_is_refused() -> None:
    stage = moved(two(), "p1", (), at("2 m", APRIL), at("2 m", date(2027, 4, 6), reach=CM, days=3, copies=True))
    assert stage.committed == []
    assert stage.refused[0].against


def ordered() -> Plan:
    return plan_from(
        beds=[{"id": "b1", "name": "B", "length": "10 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": "Pak choi", "in_row": "20 cm", "row_spacing": "20 cm", "field_days": 40}],
        orders=[{"id": "o", "crop": "c", "units": 60, "on": "2027-06-12"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "c", "order": "o", "from": "1 m"}],
    )


def test_a_copy_leaves_the_order_and_keeps_its_plants_and_has_a_day_of_its_own() -> None:
    plan = ordered()
    stage = moved(
        plan, "p1", (), at("1.5 m", date(2027, 5, 10)), at("1.5 m", date(2027, 7, 10), reach=CM, copies=True)
    )
    copy = planting_of(stage.after, "p1-2")
    assert (copy.order, copy.plants, copy.in_ground) == (None, 60, date(2027, 7, 2))
    assert stage.committed[0].leaves_order


def test_days_that_are_taken_back_to_what_their_market_asks_for_are_counted_back_again() -> None:
    plan = ordered()
    later = try_days(plan, ("p1",), 3).plan
    assert planting_of(later, "p1").in_ground == date(2027, 5, 5)
    assert no_longer_words(plan, later, ("p1",)) == "no longer counted back from its market"
    assert try_days(later, ("p1",), -3).plan == plan


def test_pushed_along_where_it_goes_it_makes_room_on_its_new_days() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("3.5 m", "2 m", **SUMMER))
    stage = moved(plan, "p1", (), at("2 m", date(2027, 5, 1)), at("3 m", date(2027, 7, 16), push=True))
    assert block_of(stage.after, "p1") == spot("2 m", "4 m")
    assert [one.planting for one in stage.committed[0].pushed] == ["p2"]
    assert not trouble(stage.after, "p1")


@pytest.mark.parametrize(("way", "first"), [(1, JUNE), (-1, APRIL - (JUNE - APRIL))])
def test_the_next_turn_in_the_same_ground_and_the_one_before(way: int, first: date) -> None:
    plan = ground(block("1 m", "2 m", **SPRING))
    trial = try_next_turn(plan, ("p1",), way)
    assert trial.can_be
    assert trial.copies
    assert trial.planting is not None
    assert days_of(trial.plan, trial.planting)[0] == first
    assert block_of(trial.plan, trial.planting) == block_of(plan, "p1")


def test_the_next_turn_waits_until_the_ground_is_free_for_as_long_as_it_takes() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("2 m", "2 m", **SUMMER))
    trial = try_next_turn(plan, ("p1",), 1)
    assert trial.planting is not None
    assert days_of(trial.plan, trial.planting)[0] == AUGUST
    endless = try_next_turn(ground(block("1 m", "2 m", in_ground="2027-04-05")), ("p1",), 1)
    assert endless.refusal == "no day is known after it on which its ground is free"


def test_trays_stay_on_the_days_of_what_they_harden() -> None:
    trays = {"id": "t", "bed": "b2", "crop": "c", "from": "1 m", "hardens": "p1", "plants": 2, "in_row": "60 cm",
             "row_spacing": "30 cm"}  # fmt: skip
    plan = plan_from(
        beds=[{"id": one, "name": one, "length": "10 m", "width": "80 cm"} for one in ("b1", "b2")],
        crops=[{"id": "c", "name": "Pak choi", "in_row": "20 cm", "row_spacing": "20 cm", "field_days": 40,
                "raising_days": 30, "hardening_days": 7}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "c", "from": "1 m", "length": "2 m", "in_ground": "2027-05-01"},
                   trays],
    )  # fmt: skip
    assert try_days(plan, ("t",), 3).refusal == "these trays harden off on the days of Pak choi: move that"
    stage = moved(plan, "t", (), at("1.5 m", date(2027, 4, 26), bed="b2"), at("3.5 m", date(2027, 5, 9), bed="b2"))
    assert planting_of(stage.after, "t").in_ground is None
    assert block_of(stage.after, "t")[1] == nm("3 m")
    both = try_days(plan, ("p1", "t"), 3)
    assert days_of(both.plan, "t") == (date(2027, 4, 27), date(2027, 5, 4))


_WAYS = st.tuples(st.integers(-400, 400), st.integers(-900, 900), st.sampled_from(["b1", "b2"]), st.booleans())


@settings(max_examples=80)
@given(_WAYS, st.booleans())
def test_wherever_they_go_days_and_distances_between_them_stay(way: tuple[int, int, str, bool], copies: bool) -> None:
    by, along, bed, free = way
    plan = two()
    press = at("6 m", date(2027, 7, 1))
    assert press.day is not None
    there = evolve(
        press, bed=bed, x=press.x + along * CM, day=press.day + timedelta(days=by), free=free, copies=copies,
        reach=4 * CM, reach_days=3,
    )  # fmt: skip
    trial = try_in_season(hold(plan, ("p2", "p1"), press, None), there)
    assert trial is not None
    lead, other = trial.chosen
    was = [days_of(plan, one) for one in ("p2", "p1")]
    now = [days_of(trial.plan, one) for one in (lead, other)]
    shifts = {(after - before).days for one, two in zip(was, now, strict=True)
              for before, after in zip(one, two, strict=True) if before and after}  # fmt: skip
    assert len(shifts) == 1
    assert abs(shifts.pop() - by) <= 3
    first, second = block_of(trial.plan, lead), block_of(trial.plan, other)
    assert first[1] - second[1] == nm("4 m")
    assert {first[2] - first[1], second[2] - second[1]} == {nm("2 m")}
    assert {first[0], second[0]} == {bed}
    assert second[1] >= 0
    assert copies == (lead != "p2")
    if copies:
        assert trial.plan.plantings[: len(plan.plantings)] == plan.plantings
    clean = not (trouble(trial.plan, lead) | trouble(trial.plan, other))
    assert (not trial.against) == clean


@settings(max_examples=60)
@given(st.integers(-300, 300), st.permutations(["p1", "p2", "p3"]))
def test_what_moves_in_time_keeps_its_ground_also_where_that_was_the_next_free(by: int, order: list[str]) -> None:
    """Plantings without a place or a size lie where there is room on their days: moved, they stay where they lay."""
    plan = ground({"length": "2 m", **SPRING}, {"length": "3 m", **SPRING}, {**SPRING})
    before = {one: layout_in(plan, one) for one in order}
    after = try_days(plan, order[:2], by).plan
    for one in order[:2]:
        now = layout_in(after, one)
        assert (now.start, now.end) == (before[one].start, before[one].end)
    assert (after is plan) == (by == 0)


@settings(max_examples=60)
@given(st.dates(date(2026, 9, 1), date(2028, 2, 1)), st.sampled_from(["p1", "p2", "p3"]), st.booleans())
def test_what_is_drawn_by_a_day_keeps_its_ground_and_its_other_day(day: date, one: str, first: bool) -> None:
    early = {"in_ground": "2027-04-05", "out": "2027-04-20"}
    plan = ground({"length": "2 m", **early}, {"length": "3 m", **SPRING}, {**SPRING})
    block_before, was = layout_in(plan, one), days_of(plan, one)
    pointer = at("2 m", day)
    trial = try_first_day(plan, one, pointer, None) if first else try_out(plan, one, pointer, None)
    assert trial is not None
    now, days = layout_in(trial.plan, one), days_of(trial.plan, one)
    assert (now.start, now.end) == (block_before.start, block_before.end)
    assert days[first] == was[first]
    assert (trial.plan is plan) == (days == was)
