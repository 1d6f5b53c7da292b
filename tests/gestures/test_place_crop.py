"""A crop carried from the shelf to a bed: plan before, what the hand does, plan after."""

from datetime import date

import pytest
from attrs import evolve

from gardenplot.errors import PlanError
from gardenplot.gestures.drags import place_crop
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Trial
from gardenplot.gestures.trials import try_crop, try_first_gap
from gardenplot.plan import Plan, crop_of, planting_of
from gardenplot.plan.catalogue import entries
from gardenplot.plan.edits import remove_planting
from gardenplot.season import dates_of
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import KeptStage, at, block, block_of, drag, ground, hold, let_go, planted, spot
from tests.layout.ground import Fields, nm

MAY = date(2027, 5, 7)


def dropped(plan: Plan, crop: str, *way: str, reach: str = "10 cm", day: date | None = None) -> KeptStage:
    """A stage on which a crop of the plan was carried along the first bed and let go."""
    stage = KeptStage(plan, day)
    drag(place_crop(stage, crop_of(plan, crop)), *(at(reading, reach=nm(reach)) for reading in way))
    return stage


def new_block(stage: KeptStage) -> tuple[str, int, int]:
    return block_of(stage.after, planted(stage.committed[0]))


def test_a_crop_of_the_catalogue_is_copied_into_the_plan_in_the_same_step() -> None:
    plan = ground()
    crop = next(entry.crop for entry in entries() if entry.crop.id not in {"chard", "leek"})
    stage = KeptStage(plan)
    drag(place_crop(stage, crop), at("3 m", "b2"), at("4 m", "b2"))
    assert stage.after.crops == (*plan.crops, crop)
    (planting,) = stage.after.plantings
    assert (planting.crop, planting.bed) == (crop.id, "b2")
    assert stage.plan is plan
    assert plan.plantings == ()


def test_a_crop_that_the_plan_carries_keeps_the_plans_own_spacing() -> None:
    stage = KeptStage(ground())
    crop = next(entry.crop for entry in entries() if entry.crop.id == "leek")
    drag(place_crop(stage, crop), at("3 m"))
    assert stage.after.crops == stage.plan.crops


def test_the_kohlrabi_of_s1_takes_the_length_of_its_order() -> None:
    before = remove_planting(hand_worked("s1"), "p2")
    stage = KeptStage(before)
    drag(place_crop(stage, crop_of(before, "kohlrabi")), at("1 m", "b2"), at("7.4 m", "b2", reach=nm("10 cm")))
    new = planted(stage.committed[0])
    assert block_of(stage.after, new) == spot("7.30 m", "11.05 m", "b2")
    assert layout_in(stage.after, new).per_row == (15, 15, 15)
    planting = planting_of(stage.after, new)
    assert (planting.order, planting.length, planting.plants) == ("o2", None, None)


def test_the_dates_of_an_order_stand_whatever_day_is_shown() -> None:
    before = remove_planting(hand_worked("s1"), "p2")
    stage = KeptStage(before, MAY)
    drag(place_crop(stage, crop_of(before, "kohlrabi")), at("7.4 m", "b2", reach=nm("10 cm")))
    planting = planting_of(stage.after, planted(stage.committed[0]))
    assert planting.in_ground is None
    assert dates_of(stage.after, planting).set_out == date(2025, 4, 4)


def test_a_crop_without_an_order_goes_in_on_the_day_that_is_shown() -> None:
    stage = dropped(ground(), "chard", "3 m", day=MAY)
    assert stage.after.plantings[0].in_ground == MAY


def test_a_crop_without_an_order_fills_the_bed_in_whole_ranks() -> None:
    stage = dropped(ground(), "chard", "40 cm")
    assert new_block(stage) == spot("0.3 m", "11.7 m")
    assert layout_in(stage.after, planted(stage.committed[0])).per_row == (38, 38)


@pytest.mark.parametrize(
    ("neighbour", "end"),
    [("5.00 m", "4.80 m"), ("4.99 m", "4.50 m"), ("5.29 m", "4.80 m"), ("5.30 m", "5.10 m")],
)
def test_a_crop_without_an_order_fills_its_gap_in_whole_ranks(neighbour: str, end: str) -> None:
    assert new_block(dropped(ground(block(neighbour, "3 m")), "chard", "40 cm")) == spot("0.3 m", end)


def test_an_order_longer_than_the_gap_is_cut_to_whole_ranks() -> None:
    order: Fields = {"id": "o1", "crop": "chard", "units": 60, "on": "2027-07-03"}
    stage = dropped(ground(block("5 m", "3 m"), orders=[order]), "chard", "40 cm")
    new = planted(stage.committed[0])
    assert new_block(stage) == spot("0.3 m", "4.8 m")
    assert planting_of(stage.after, new).order == "o1"
    assert layout_in(stage.after, new).plants == 30


def test_an_order_that_is_planted_already_is_not_planted_twice() -> None:
    order: Fields = {"id": "o1", "crop": "chard", "units": 10, "on": "2027-07-03"}
    stage = dropped(ground({"from": "0.3 m", "order": "o1"}, orders=[order]), "chard", "5.15 m")
    new = planting_of(stage.after, planted(stage.committed[0]))
    assert new.order is None
    assert new_block(stage) == spot("5 m", "11.6 m")


def test_the_first_plant_stands_under_the_hand() -> None:
    stage = KeptStage(ground())
    drag(place_crop(stage, crop_of(stage.plan, "chard")), at("5.07 m", free=True))
    assert layout_in(stage.after, "chard").first_plant == nm("5.07 m")


@pytest.mark.parametrize(
    ("hand", "start", "pull"),
    [
        ("40 cm", "30 cm", Pull.HEAD_MARGIN),
        ("50 cm", "30 cm", Pull.HEAD_MARGIN),
        ("8.30 m", "8.20 m", Pull.NEIGHBOUR),
        ("8.48 m", "8.30 m", Pull.READING),
    ],
)
def test_the_hand_is_drawn_to_margin_neighbour_and_round_readings(hand: str, start: str, pull: Pull) -> None:
    (trial,) = dropped(ground(block("5 m", "3 m")), "chard", hand).committed
    assert layout_in(trial.plan, planted(trial)).start == nm(start)
    assert trial.snap is not None
    assert (trial.snap.at, trial.snap.pull) == (nm(start), pull)


@pytest.mark.parametrize("hand", ["5.3 m", "7.9 m", "4.95 m"])
def test_over_ground_that_is_taken_it_is_refused_and_nothing_becomes_the_plan(hand: str) -> None:
    stage = dropped(ground(block("5 m", "3 m")), "chard", hand, reach="0 cm")
    assert stage.committed == []
    (trial,) = stage.refused
    assert [finding.kind for finding in trial.against] == ["overlap"]


def test_over_ground_that_is_free_again_by_then_it_is_taken() -> None:
    spring = block("5 m", "3 m", in_ground="2027-03-01", out="2027-05-01")
    stage = dropped(ground(spring), "chard", "5.15 m", day=MAY)
    assert new_block(stage) == spot("5 m", "11.6 m")


SLIM: Fields = {"id": "b1", "name": "Slim", "length": "5 m", "width": "20 cm"}


def test_a_bed_narrower_than_the_row_spacing_takes_one_row_in_its_middle() -> None:
    stage = dropped(ground(beds=[SLIM]), "chard", "1 m")
    layout = layout_in(stage.committed[0].plan, planted(stage.committed[0]))
    assert [row.offset for row in layout.rows] == [nm("10 cm")]


def test_a_bed_too_narrow_for_the_edge_distance_that_was_typed_refuses_it() -> None:
    slim = SLIM | {"edge": "10.5 cm"}
    stage = dropped(ground(beds=[slim]), "chard", "1 m")
    assert [finding.kind for finding in stage.refused[0].against] == ["no row fits"]
    assert stage.committed == []


def test_each_place_of_the_hand_is_shown_and_the_plan_again_before_it_is_changed() -> None:
    stage = KeptStage(ground())
    gesture = hold(place_crop(stage, crop_of(stage.plan, "chard")), at("1 m"), at("2 m"))
    starts = [layout_in(trial.plan, planted(trial)).start for trial in stage.shown if trial]
    assert starts == [nm("85 cm"), nm("1.85 m")]
    let_go(gesture)
    assert stage.shown[-1] is None
    assert stage.verbs == ["Place {crop}"]


def test_two_drops_of_a_crop_are_two_plantings() -> None:
    before = dropped(ground(block("5 m", "3 m")), "chard", "40 cm").after
    after = dropped(before, "chard", "8.35 m").after
    assert [planting.id for planting in after.plantings] == ["p1", "chard", "chard-2"]


def test_past_the_tapes_zero_it_begins_at_zero_and_still_ends_in_its_bed() -> None:
    stage = KeptStage(ground())
    drag(place_crop(stage, crop_of(stage.plan, "leek")), at("-1 m", "b2", free=True))
    assert block_of(stage.after, "leek") == spot("0 m", "19.95 m", "b2")


def test_a_block_beyond_the_foot_margin_does_not_widen_the_bed() -> None:
    stage = dropped(ground(block("11.95 m", "5 cm", crop="leek")), "chard", "5.9 m", reach="0 cm")
    assert new_block(stage) == spot("5.75 m", "11.45 m")


SPRING: Fields = {"in_ground": "2027-04-01", "out": "2027-05-28"}
EARLY: Fields = {"in_ground": "2027-04-01", "out": "2027-05-20"}
SHOWN, FREE = date(2027, 4, 20), date(2027, 5, 28)


def carried(plan: Plan, reading: str, *, waits: bool) -> Trial:
    """What comes of leek held over the first bed."""
    trial = try_crop(plan, crop_of(plan, "leek"), evolve(at(reading), waits=waits), SHOWN)
    assert trial is not None
    return trial


def test_on_ground_that_is_taken_a_crop_is_offered_the_first_day_on_which_that_is_free() -> None:
    plan = ground(block("1 m", "2 m", **EARLY), block("4 m", "6 m", **SPRING))
    trial = carried(plan, "5 m", waits=False)
    assert not trial.can_be
    assert trial.later == FREE
    assert carried(plan, "1.5 m", waits=False).later == date(2027, 5, 20)
    assert carried(plan, "10.8 m", waits=False).later is None


def test_a_crop_that_waits_goes_in_on_that_day_and_the_spring_crop_stays_as_it_is() -> None:
    plan = ground(block("1 m", "2 m", **EARLY), block("4 m", "6 m", **SPRING))
    trial = carried(plan, "5 m", waits=True)
    assert trial.can_be
    assert trial.later == FREE
    assert planting_of(trial.plan, planted(trial)).in_ground == FREE
    assert trial.plan.plantings[:-1] == plan.plantings


def test_a_crop_that_waits_goes_in_at_once_where_the_ground_is_free() -> None:
    plan = ground(block("4 m", "6 m", **SPRING))
    trial = carried(plan, "1 m", waits=True)
    assert trial.later is None
    assert planting_of(trial.plan, planted(trial)).in_ground == SHOWN


def test_ground_that_never_falls_free_and_an_order_with_its_own_days_are_offered_no_day() -> None:
    order: Fields = {"id": "o", "crop": "leek", "units": 20, "on": "2027-05-01"}
    for plan in (ground(block("4 m", "6 m")), ground(block("4 m", "6 m", **SPRING), orders=[order])):
        trial = carried(plan, "5 m", waits=True)
        assert not trial.can_be
        assert trial.later is None


def test_by_key_a_crop_waits_for_the_first_gap_of_its_bed() -> None:
    plan = ground(block("30 cm", "11.4 m", **SPRING))
    with pytest.raises(PlanError, match="it has one from Fri 28 May 2027 on"):
        try_first_gap(plan, crop_of(plan, "leek"), "b1", SHOWN)
    trial = try_first_gap(plan, crop_of(plan, "leek"), "b1", SHOWN, waits=True)
    assert trial.later == FREE
    assert planting_of(trial.plan, planted(trial)).in_ground == FREE
    assert layout_in(trial.plan, planted(trial)).start == nm("30 cm")
