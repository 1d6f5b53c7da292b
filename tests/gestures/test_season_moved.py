"""Plantings drawn on the season map: in time, along the bed, by their days; what came about stays."""

from collections.abc import Callable
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks
from gardenplot.gestures.day_snap import DayPull
from gardenplot.gestures.season_drawn import draw_end, draw_first_day, draw_out, place_in_season
from gardenplot.gestures.season_moved import hold, move_in_season, try_days, try_in_season
from gardenplot.gestures.season_words import no_longer_words, ready_words, season_line, taken_words
from gardenplot.gestures.stage import Gesture, Pointer
from gardenplot.plan import Plan, crop_of, planting_of
from gardenplot.season import dates_of
from gardenplot.units import CM
from tests.drawing.hand_worked import plan_from
from tests.gestures.hand import KeptStage, block, block_of, drag, ground, spot, trouble
from tests.gestures.hand import hold as held_by
from tests.layout.ground import nm

APRIL, JUNE = date(2027, 4, 5), date(2027, 6, 1)
SPRING = {"in_ground": "2027-04-05", "out": "2027-06-01"}
SUMMER = {"in_ground": "2027-06-20", "out": "2027-08-20"}


def at(reading: str, day: date, *, reach: int = 0, days: int = 0, free: bool = False) -> Pointer:
    """The hand on the map of the first bed."""
    return Pointer("b1", nm(reading), 0, reach, free, day=day, reach_days=days)


def plain(words: str) -> str:
    return "".join(" " if one in "\u2009\u00a0\u202f" else one for one in words)


def days_of(plan: Plan, planting: str = "p1") -> tuple[date | None, date | None]:
    dates = dates_of(plan, planting_of(plan, planting))
    return dates.in_ground, dates.out


def moved(plan: Plan, *way: Pointer, planting: str = "p1", shown: date | None = None) -> KeptStage:
    stage = KeptStage(plan, shown)
    drag(move_in_season(stage, planting, way[0]), *way[1:])
    return stage


def test_one_drag_moves_days_and_readings_and_keeps_how_long_it_is_in_both() -> None:
    plan = ground(block("1 m", "2 m", **SPRING))
    stage = moved(plan, at("2 m", date(2027, 4, 20)), at("5 m", date(2027, 5, 4)))
    assert days_of(stage.after) == (date(2027, 4, 19), date(2027, 6, 15))
    assert block_of(stage.after, "p1") == spot("4 m", "6 m")
    assert stage.verbs == ["Move {crop}"]


def test_within_reach_of_where_it_was_it_keeps_its_reading_and_its_days() -> None:
    plan = ground(block("1.03 m", "2 m", **SPRING))
    day = date(2027, 4, 20)
    up = moved(plan, at("2 m", day), at("2.04 m", date(2027, 5, 4), reach=5 * CM))
    assert block_of(up.after, "p1") == spot("1.03 m", "3.03 m")
    along = moved(plan, at("2 m", day), at("5 m", date(2027, 4, 21), days=2))
    assert days_of(along.after) == (APRIL, JUNE)


def test_it_is_drawn_to_the_day_on_which_the_ground_under_it_is_free() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("5 m", "3 m", **SUMMER), block("9 m", "1 m", **SUMMER))
    stage = moved(plan, at("6 m", date(2027, 7, 1)), at("2 m", date(2027, 6, 14), days=4), planting="p2")
    assert days_of(stage.after, "p2") == (JUNE, date(2027, 8, 1))
    assert stage.committed[0].drawn_day is not None
    assert (stage.committed[0].drawn_day.pull, stage.committed[0].drawn_day.planting) == (DayPull.FREE, "p1")
    beside = moved(plan, at("6 m", date(2027, 7, 1)), at("6.1 m", date(2027, 6, 14), days=4), planting="p2")
    assert days_of(beside.after, "p2")[0] == date(2027, 6, 3)
    free = moved(plan, at("6 m", date(2027, 7, 1)), at("2 m", date(2027, 6, 14), days=4, free=True), planting="p2")
    assert days_of(free.after, "p2")[0] == date(2027, 6, 3)


def test_it_is_drawn_to_be_out_on_the_day_the_next_needs_its_ground() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("1 m", "2 m", **SUMMER))
    stage = moved(plan, at("2 m", APRIL), at("2 m", date(2027, 4, 22), days=3))
    assert days_of(stage.after)[1] == date(2027, 6, 20)
    assert not trouble(stage.after, "p1")


def test_over_another_it_is_refused_with_whom_and_from_when_to_when() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("1 m", "2 m", **SUMMER))
    stage = moved(plan, at("2 m", APRIL), at("2 m", date(2027, 5, 10)))
    assert stage.committed == []
    (refused,) = stage.refused
    words = taken_words(refused.plan, refused.against[0], refused.chosen, looks(refused.plan))
    assert plain(words) == "stands 2.00 m into B Chard, there 20 Jun – 20 Aug 2027, 61 days"


def ordered(**more: object) -> Plan:
    return plan_from(
        beds=[{"id": "b1", "name": "B", "length": "10 m", "width": "80 cm"}],
        crops=[{"id": "c", "name": "Pak choi", "in_row": "20 cm", "row_spacing": "20 cm", "field_days": 40}],
        orders=[{"id": "o", "crop": "c", "units": 60, "on": "2027-06-12"}],
        plantings=[{"id": "p1", "bed": "b1", "crop": "c", "order": "o", "from": "1 m"} | more],
    )


def test_a_day_counted_back_from_a_market_is_typed_then_and_counted_again_when_it_is_drawn_back() -> None:
    plan = ordered()
    assert days_of(plan)[0] == date(2027, 5, 2)
    later = moved(plan, at("1.5 m", date(2027, 5, 10)), at("1.5 m", date(2027, 5, 15), reach=CM)).after
    assert planting_of(later, "p1").in_ground == date(2027, 5, 7)
    assert no_longer_words(plan, later, ("p1",)) == "no longer counted back from its market"
    assert ready_words(later, "p1") == "ready 4 days after the market on Sat 12 Jun 2027"
    back = moved(later, at("1.5 m", date(2027, 5, 15)), at("1.5 m", date(2027, 5, 11), days=2, reach=CM))
    assert back.committed[0].drawn_day is not None
    assert back.committed[0].drawn_day.pull is DayPull.MARKET
    assert planting_of(back.after, "p1") == planting_of(plan, "p1")


def test_its_line_tells_crop_days_readings_and_plants() -> None:
    line = season_line(ground(block("1 m", "2 m", **SPRING)), "p1")
    assert plain(line).split("   ") == ["Chard", "5 Apr – 1 Jun 2027, 57 days", "1.00 – 3.00 m", "2 × 6 = 12"]


def test_what_fills_a_gap_keeps_its_place_and_length_when_its_days_move() -> None:
    plan = ground(block("1 m", "2 m", **SPRING), {"in_ground": "2027-04-10", "out": "2027-05-20"})
    was = block_of(plan, "p2")
    stage = moved(plan, at("5 m", date(2027, 4, 20)), at("5 m", date(2027, 7, 20), reach=CM), planting="p2")
    assert block_of(stage.after, "p2") == was


def test_its_first_day_and_its_last_are_drawn_each_alone() -> None:
    plan = ground(block("1 m", "2 m", **SPRING))
    first, out = KeptStage(plan), KeptStage(plan)
    drag(draw_first_day(first, "p1"), at("2 m", date(2027, 4, 20)))
    drag(draw_out(out, "p1"), at("2 m", date(2027, 7, 1)))
    assert days_of(first.after) == (date(2027, 4, 20), JUNE)
    assert days_of(out.after) == (APRIL, date(2027, 7, 1))
    assert [*first.verbs, *out.verbs] == ["Day in the ground of {crop}", "Day out of the ground of {crop}"]


def test_neither_day_passes_the_other() -> None:
    plan = ground(block("1 m", "2 m", **SPRING))
    first, out = KeptStage(plan), KeptStage(plan)
    drag(draw_first_day(first, "p1"), at("2 m", date(2027, 9, 1)))
    drag(draw_out(out, "p1"), at("2 m", date(2026, 9, 1)))
    assert days_of(first.after) == (date(2027, 5, 31), JUNE)
    assert days_of(out.after) == (APRIL, date(2027, 4, 6))


def test_an_open_end_is_closed_by_drawing_it_and_an_open_beginning_begun() -> None:
    plan = ground(block("1 m", "2 m", in_ground="2027-04-05"), block("5 m", "2 m", out="2027-06-01"))
    out, first = KeptStage(plan), KeptStage(plan)
    drag(draw_out(out, "p1"), at("2 m", date(2027, 7, 1)))
    drag(draw_first_day(first, "p2"), at("6 m", date(2027, 5, 1)))
    assert days_of(out.after) == (APRIL, date(2027, 7, 1))
    assert days_of(first.after, "p2") == (date(2027, 5, 1), JUNE)


def test_out_drawn_to_where_it_follows_from_its_crop_follows_again() -> None:
    plan = ordered(out="2027-06-30")
    stage = KeptStage(plan)
    drag(draw_out(stage, "p1"), at("2 m", date(2027, 6, 13), days=2))
    assert planting_of(stage.after, "p1").out is None
    assert days_of(stage.after)[1] == date(2027, 6, 12)


IN_GROUND = {"in_ground": "2027-04-05", "out": "2027-06-01", "actual": {"set_out": "2027-04-07"}}


@pytest.mark.parametrize(
    "gesture",
    [
        lambda stage: move_in_season(stage, "p1", at("2 m", APRIL)),
        lambda stage: draw_first_day(stage, "p1"),
        lambda stage: draw_end(stage, "p1", foot=True),
        lambda stage: draw_end(stage, "p1", foot=False),
    ],
)
def test_what_is_in_the_ground_stays_but_for_the_day_it_is_out(gesture: Callable[[KeptStage], Gesture]) -> None:
    plan = ground(block("1 m", "2 m", **IN_GROUND))
    stage, out = KeptStage(plan), KeptStage(plan)
    drag(gesture(stage), at("5 m", date(2027, 5, 1)))
    assert stage.committed == []
    assert stage.refused[0].refusal == (
        "Chard has been in the ground since Wed 7 Apr 2027: only the day on which it is out can be moved"
    )
    drag(draw_out(out, "p1"), at("2 m", date(2027, 6, 9)))
    assert days_of(out.after) == (date(2027, 4, 7), date(2027, 6, 9))
    assert not try_days(plan, ("p1",), 1).can_be


def test_ground_that_was_cleared_stays_so() -> None:
    plan = ground(block("1 m", "2 m", **{**IN_GROUND, "actual": {"set_out": "2027-04-07", "cleared": "2027-05-30"}}))
    stage = KeptStage(plan)
    drag(draw_out(stage, "p1"), at("2 m", date(2027, 6, 9)))
    assert stage.refused[0].refusal == "the ground of Chard has been free since Sun 30 May 2027"


def test_typed_days_of_sowing_and_of_being_ready_move_along() -> None:
    plan = ground(block("1 m", "2 m", sow="2027-03-01", ready="2027-05-20", **SPRING))
    after = moved(plan, at("2 m", APRIL), at("2 m", date(2027, 4, 12), reach=CM)).after
    one = planting_of(after, "p1")
    assert (one.sow, one.ready) == (date(2027, 3, 8), date(2027, 5, 27))


def test_a_crop_from_the_shelf_goes_in_where_and_when_it_is_let_go_drawn_to_free_ground() -> None:
    plan = ground(block("1 m", "2 m", **SPRING))
    stage = KeptStage(plan)
    drag(place_in_season(stage, crop_of(plan, "chard")), at("1.15 m", date(2027, 6, 3), days=4))
    assert days_of(stage.after, "chard") == (JUNE, None)
    assert block_of(stage.after, "chard")[1] == nm("1 m")
    taken = KeptStage(plan)
    drag(place_in_season(taken, crop_of(plan, "chard")), at("1.15 m", date(2027, 5, 3)))
    assert taken.committed == []


def test_a_hand_that_gives_up_leaves_the_plan_alone() -> None:
    stage = KeptStage(ground(block("1 m", "2 m", **SPRING)))
    held_by(move_in_season(stage, "p1", at("2 m", APRIL)), at("4 m", JUNE)).close()
    assert stage.committed == stage.refused == []
    assert stage.shown[-1] is not None


@settings(max_examples=60)
@given(st.integers(-400, 400), st.integers(0, 900), st.booleans())
def test_a_drag_keeps_days_and_length_wherever_it_goes(by: int, along: int, free: bool) -> None:
    plan = ground(block("1 m", "2 m", **SPRING), block("7 m", "2 m", **SUMMER))
    press = at("2 m", date(2027, 5, 1))
    there = evolve(press, x=along * CM, day=date.fromordinal(press.day.toordinal() + by) if press.day else None,
                   free=free, reach=4 * CM, reach_days=3)  # fmt: skip
    held = hold(plan, ("p1",), press, None)
    trial = try_in_season(held, there)
    assert trial is not None
    first, out = days_of(trial.plan)
    assert first is not None
    assert out is not None
    assert (out - first).days == (JUNE - APRIL).days
    _bed, start, end = block_of(trial.plan, "p1")
    assert end - start == nm("2 m")
    assert start >= 0
    assert abs((first - APRIL).days - by) <= 3
    assert (not trial.against) == (not trouble(trial.plan, "p1"))
