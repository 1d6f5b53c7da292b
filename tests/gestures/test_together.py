"""Several plantings moved, copied and shifted as one: they keep their distances, and it is one trial."""

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.gestures.drags import move_block
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.push import FOOT, HEAD
from gardenplot.gestures.snap import Pull, Snap
from gardenplot.gestures.stage import Pointer
from gardenplot.gestures.together import Taken, _snaps, try_butted, try_shift
from gardenplot.gestures.trials import try_resize
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.edits import change_planting
from tests.drawing.hand_worked import hand_worked
from tests.gestures.hand import KeptStage, Spot, at, block, block_of, drag, ground, hold, spot
from tests.layout.ground import nm
from tests.plans import plans

ROW = ground(block("1 m", "1 m"), block("3 m", "1 m"), block("6 m", "2 m"), block("4 m", "3 m", bed="b2"))


def moved(plan: Plan, *way: Pointer, others: tuple[str, ...] = (), taken_at: str = "1.5 m") -> KeptStage:
    """A stage on which p1 was taken, with others, carried along a way and let go."""
    stage = KeptStage(plan)
    drag(move_block(stage, "p1", at(taken_at), others), *way)
    return stage


def copying(pointer: Pointer) -> Pointer:
    return evolve(pointer, copies=True)


def pushing(pointer: Pointer) -> Pointer:
    return evolve(pointer, push=True)


def blocks(plan: Plan) -> list[Spot]:
    """Where all plantings stand, in the plan's order."""
    return [block_of(plan, one.id) for one in plan.plantings]


@pytest.mark.parametrize(
    ("hand", "lie"),
    [
        (at("1.9 m"), [spot("1.4 m", "2.4 m"), spot("3.4 m", "4.4 m")]),
        (at("12.5 m", "b2"), [spot("12 m", "13 m", "b2"), spot("14 m", "15 m", "b2")]),
    ],
)
def test_several_keep_their_distances(hand: Pointer, lie: list[Spot]) -> None:
    stage = moved(ROW, at("1 m"), hand, others=("p2",))
    assert blocks(stage.after) == [*lie, spot("6 m", "8 m"), spot("4 m", "7 m", "b2")]
    assert stage.committed[0].chosen == ("p1", "p2")
    assert stage.verbs == ["Move {crop}"]


def test_in_several_beds_each_goes_as_many_beds_further() -> None:
    plan = ground(block("1 m", "1 m"), block("9 m", "1 m", bed="b2"))
    stage = moved(plan, at("2.5 m", "b1"), others=("p2",))
    assert blocks(stage.after) == [spot("2 m", "3 m"), spot("10 m", "11 m", "b2")]


def test_where_there_are_no_beds_for_all_of_them_it_is_refused_and_said() -> None:
    plan = ground(block("1 m", "1 m"), block("9 m", "1 m", bed="b2"))
    stage = moved(plan, at("2.5 m", "b2"), others=("p2",))
    assert stage.committed == []
    assert stage.refused[0].refusal == "there is no bed there for all of them"


def test_one_of_several_over_a_neighbour_refuses_them_all() -> None:
    stage = moved(ROW, at("4.2 m"), others=("p2",))
    assert stage.committed == []
    assert (stage.refused[0].against[0].planting, stage.refused[0].against[0].other) == ("p2", "p3")


def test_the_one_behind_draws_them_to_its_neighbour() -> None:
    (trial,) = moved(ROW, at("3.25 m", reach=nm("10 cm")), others=("p2",)).committed
    assert blocks(trial.plan)[1] == spot("4.8 m", "5.8 m")
    assert trial.snap is not None
    assert trial.snap.pull is Pull.NEIGHBOUR


def test_none_of_several_goes_before_the_tape_s_zero() -> None:
    plan = ground(block("1 m", "1 m", bed="b2"), block("3 m", "1 m", bed="b2"))
    stage = KeptStage(plan)
    drag(move_block(stage, "p2", at("3.5 m", "b2"), ("p1",)), at("20 cm", "b2"))
    assert blocks(stage.after) == [spot("0 m", "1 m", "b2"), spot("2 m", "3 m", "b2")]


def test_a_copy_leaves_the_first_where_it_stands() -> None:
    stage = moved(ROW, at("1 m"), copying(at("9.5 m")))
    assert blocks(stage.after)[:4] == blocks(ROW)
    assert block_of(stage.after, "p1-2") == spot("9 m", "10 m")
    assert (stage.verbs, stage.committed[0].copies) == (["Copy {crop}"], True)
    assert stage.committed[0].planting == "p1-2"


def test_ctrl_pressed_or_let_go_on_the_way_counts_where_the_hand_lets_go() -> None:
    there = at("9.5 m")
    assert len(moved(ROW, there, copying(there), there).after.plantings) == 4
    assert len(moved(ROW, copying(there), there, copying(there)).after.plantings) == 5


def test_copies_of_several_keep_their_distances() -> None:
    stage = moved(ROW, copying(at("12.5 m", "b2")), others=("p2",))
    assert blocks(stage.after)[4:] == [spot("12 m", "13 m", "b2"), spot("14 m", "15 m", "b2")]
    assert stage.committed[0].chosen == ("p1-2", "p2-2")


def test_a_copy_over_the_first_is_refused() -> None:
    stage = moved(ROW, copying(at("1.9 m")))
    assert stage.refused[0].against[0].other == "p1"


def test_a_copy_never_carries_the_order_but_its_plants_and_days() -> None:
    plan = hand_worked("s1")
    whole, block_whole = planting_of(plan, "p2"), layout_in(plan, "p2")
    stage = KeptStage(plan)
    drag(move_block(stage, "p2", at("8 m", "b2")), copying(at("15 m", "b2")))
    (trial,) = [*stage.committed, *stage.refused]
    copy = planting_of(trial.plan, trial.planting or "")
    assert whole.order is not None
    assert copy.order is None
    assert copy.plants == block_whole.plants
    assert copy.in_ground is not None


PUSHES = [
    ("2.9 m", ["2.4 m", "3.6 m", "6 m"], [("p2", "60 cm")]),
    ("4.9 m", ["4.4 m", "5.6 m", "6.8 m"], [("p2", "2.6 m"), ("p3", "80 cm")]),
]


@pytest.mark.parametrize(("hand", "starts", "pushed"), PUSHES)
def test_neighbours_ahead_are_pushed_to_a_gap_behind_one_another(
    hand: str, starts: list[str], pushed: list[tuple[str, str]]
) -> None:
    (trial,) = moved(ROW, pushing(at(hand))).committed
    assert [layout_in(trial.plan, one).start for one in ("p1", "p2", "p3")] == [nm(start) for start in starts]
    assert [(one.planting, one.by) for one in trial.pushed] == [(one, nm(by)) for one, by in pushed]
    assert trial.stopped is None


def test_nothing_is_pushed_past_the_margin_and_what_stands_there_is_said() -> None:
    (trial,) = moved(ROW, pushing(at("9 m"))).committed
    assert block_of(trial.plan, "p3") == spot("9.7 m", "11.7 m")
    assert block_of(trial.plan, "p1") == spot("7.3 m", "8.3 m")
    assert trial.stopped == "p3"


def test_towards_the_head_they_are_pushed_up_to_the_head_margin() -> None:
    stage = KeptStage(ROW)
    drag(move_block(stage, "p3", at("7 m")), pushing(at("1 m")))
    (trial,) = stage.committed
    assert [block_of(trial.plan, one) for one in ("p1", "p2", "p3")] == [
        spot("0.3 m", "1.3 m"), spot("1.5 m", "2.5 m"), spot("2.7 m", "4.7 m")
    ]  # fmt: skip
    assert trial.stopped == "p1"
    assert all(one.by < 0 for one in trial.pushed)


def test_a_neighbour_of_other_days_is_not_pushed() -> None:
    early, late = {"in_ground": "2027-03-01", "out": "2027-05-01"}, {"in_ground": "2027-06-01", "out": "2027-09-01"}
    plan = ground(block("1 m", "1 m", **early), block("3 m", "1 m", **late))
    (trial,) = moved(plan, pushing(at("3.5 m"))).committed
    assert block_of(trial.plan, "p2") == spot("3 m", "4 m")
    assert trial.pushed == ()


def test_in_another_bed_neighbours_make_room_each_its_own_way() -> None:
    plan = ground(block("1 m", "2 m"), block("3 m", "3 m", bed="b2"), block("6.5 m", "3 m", bed="b2"))
    (trial,) = moved(plan, pushing(at("5.6 m", "b2"))).committed
    assert block_of(trial.plan, "p1") == spot("5.1 m", "7.1 m", "b2")
    assert block_of(trial.plan, "p2") == spot("2.1 m", "5.1 m", "b2")
    assert block_of(trial.plan, "p3") == spot("7.1 m", "10.1 m", "b2")


def test_where_one_side_has_no_room_they_go_the_other_way() -> None:
    plan = ground(block("1 m", "2 m"), block("1 m", "8 m", bed="b2"))
    (trial,) = moved(plan, pushing(at("6.6 m", "b2"))).committed
    assert block_of(trial.plan, "p1") == spot("6.1 m", "8.1 m", "b2")
    assert block_of(trial.plan, "p2") == spot("8.1 m", "16.1 m", "b2")


def test_where_neither_side_has_room_nothing_is_pushed_and_it_is_refused() -> None:
    plan = ground(block("1 m", "2 m"), block("1 m", "18.5 m", bed="b2"))
    stage = moved(plan, pushing(at("6.6 m", "b2")))
    assert stage.committed == []
    assert stage.refused[0].pushed == ()
    assert block_of(stage.refused[0].plan, "p2") == block_of(plan, "p2")


def test_a_block_drawn_longer_with_shift_pushes_and_stops_at_the_margin() -> None:
    trial = try_resize(ROW, "p1", True, pushing(at("3 m")))
    assert trial is not None
    assert block_of(trial.plan, "p1") == spot("1 m", "3.1 m")
    assert block_of(trial.plan, "p2") == spot("3.3 m", "4.3 m")
    trial = try_resize(ROW, "p1", True, pushing(at("11 m")))
    assert trial is not None
    assert block_of(trial.plan, "p1") == spot("1 m", "8.2 m")
    assert block_of(trial.plan, "p3") == spot("9.6 m", "11.6 m")
    assert trial.stopped == "p3"


def test_without_shift_it_butts_up_against_its_neighbour() -> None:
    assert block_of(try_butted(ROW, ["p1"], FOOT).plan, "p1") == spot("1.8 m", "2.8 m")
    assert block_of(try_butted(ROW, ["p1"], HEAD).plan, "p1") == spot("0.3 m", "1.3 m")
    assert block_of(try_butted(ROW, ["p1", "p2"], FOOT).plan, "p1") == spot("2.8 m", "3.8 m")
    assert try_butted(ROW, ["p1", "p2", "p3"], HEAD).can_be


def test_keys_shift_several_and_push_their_neighbours() -> None:
    trial = try_shift(ROW, ["p1", "p2"], nm("2 m"), pushes=True)
    assert trial.can_be
    assert blocks(trial.plan)[:3] == [spot("3 m", "4 m"), spot("5 m", "6 m"), spot("6.2 m", "8.2 m")]


def test_a_block_that_filled_its_gap_keeps_its_length_when_it_is_pushed() -> None:
    plan = ground(block("1 m", "1 m"), {"from": "3 m"}, block("6.2 m", "1 m"))
    (trial,) = moved(plan, pushing(at("2.9 m"))).committed
    assert block_of(trial.plan, "p2") == spot("3.6 m", "6.6 m")


def test_moved_to_where_it_stood_it_leaves_the_very_same_plan_whatever_is_held() -> None:
    plan = change_planting(ROW, "p1", note="as typed")
    stage = KeptStage(plan)
    hold(move_block(stage, "p1", at("1.5 m"), ("p2",)), pushing(at("4 m")), pushing(at("1.5 m")))
    assert stage.shown[-1] is not None
    assert stage.shown[-1].plan is plan


class Whole(Taken):
    """Plantings that are looked at among all others."""

    @property
    def alone(self) -> "Whole":
        return self


def snaps(taken: Taken, by: int, *, copies: bool) -> list[Snap] | str:
    """What draws plantings that stay in their beds, or why they cannot be moved."""
    try:
        beds = {one: planting_of(taken.plan, one).bed for one in taken.plantings}
        return list(_snaps(taken, beds, by, copies=copies))
    except PlanError as why:
        return why.says


@settings(max_examples=60)
@given(plans(least_plantings=1), st.data())
def test_what_draws_them_is_found_in_their_bed_alone_as_among_all_others(plan: Plan, data: st.DataObject) -> None:
    ids = [one.id for one in plan.plantings]
    taken = tuple(data.draw(st.lists(st.sampled_from(ids), min_size=1, max_size=3, unique=True)))
    by, copies = data.draw(st.integers(-2 * nm("1 m"), 2 * nm("1 m"))), data.draw(st.booleans())
    assert snaps(Taken(plan, taken), by, copies=copies) == snaps(Whole(plan, taken), by, copies=copies)
