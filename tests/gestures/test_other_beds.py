"""The marks of other beds draw the hand, more weakly than its own bed's, and are named."""

import pytest

from gardenplot.drawing.letters import looks
from gardenplot.gestures.drags import move_block, place_crop
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.snap import Pull, marks_of
from gardenplot.gestures.snap_words import along_words
from gardenplot.plan import Plan, crop_of
from tests.gestures.hand import KeptStage, at, block, drag, ground
from tests.layout.ground import nm

PLAN = ground(block("5 m", "2 m"), block("3.03 m", "1.44 m", bed="b2"))


def let_go_at(plan: Plan, hand: str, *, free: bool = False) -> KeptStage:
    stage = KeptStage(plan)
    drag(move_block(stage, "p1", at("5.5 m")), at(hand, reach=nm("20 cm"), free=free))
    return stage


@pytest.mark.parametrize(
    ("hand", "start"),
    [("3.56 m", "3.03 m"), ("4.93 m", "4.47 m"), ("1.57 m", "1.03 m"), ("3.02 m", "2.47 m")],
    ids=["begin level", "begin at its end", "end at its beginning", "end level"],
)
def test_a_block_begins_or_ends_level_with_one_in_another_bed(hand: str, start: str) -> None:
    (trial,) = let_go_at(PLAN, hand).committed
    assert layout_in(trial.plan, "p1").start == nm(start)
    assert trial.snap is not None
    assert (trial.snap.pull, trial.snap.planting) == (Pull.OTHER_BED, "p2")
    assert along_words(trial.plan, trial.snap, looks(trial.plan)) == "level with B Chard, Field"


def test_beyond_half_the_reach_the_round_reading_is_nearer() -> None:
    (trial,) = let_go_at(PLAN, "3.65 m").committed
    assert layout_in(trial.plan, "p1").start == nm("3.2 m")


def test_its_own_margin_pulls_more_strongly() -> None:
    plan = ground(block("5 m", "2 m"), block("0.33 m", "1.44 m", bed="b2"))
    (trial,) = let_go_at(plan, "0.84 m").committed
    assert trial.snap is not None
    assert trial.snap.pull is Pull.HEAD_MARGIN


def test_a_free_hand_is_not_drawn() -> None:
    (trial,) = let_go_at(PLAN, "3.56 m", free=True).committed
    assert layout_in(trial.plan, "p1").start == nm("3.06 m")


def test_a_crop_from_the_shelf_is_drawn_too() -> None:
    stage = KeptStage(ground(block("3.03 m", "1.44 m", bed="b2")))
    drag(place_crop(stage, crop_of(stage.plan, "chard")), at("3.2 m", reach=nm("20 cm")))
    assert layout_in(stage.after, stage.committed[0].planting or "").start == nm("3.03 m")


def test_of_many_beds_only_those_beside_it_draw() -> None:
    plan = ground(
        block("5 m", "2 m"),
        *(block("3.03 m", "1.44 m", bed=f"b{number}") for number in range(2, 9)),
        beds=[{"id": f"b{number}", "name": "Bed", "length": "12 m", "width": "1 m"} for number in range(1, 9)],
    )
    marks = marks_of(plan, None, without=["p1"])
    found = {snap.planting for snap in marks.level_with(nm("3 m"), nm("20 cm"), "b5")}
    assert found == {"p2", "p3", "p4", "p6", "p7", "p8"} - {"p5"}
