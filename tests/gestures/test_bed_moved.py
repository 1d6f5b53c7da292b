"""Beds moved and turned on the ground: what draws them, and that nothing in them ever changes."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.gestures.bed_moved import (
    MOVE,
    MOVE_ALL,
    TURN,
    move_on_ground,
    try_bed_at,
    try_bed_by,
    try_bed_towards,
    try_turn_by,
    turn_on_ground,
)
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Pointer, Trial
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, edits
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.ground import Frame, frames_of, standing_of
from gardenplot.plan.valid import faults
from gardenplot.units import CM, LONGEST, M
from tests.drawing.hand_worked import plan_from
from tests.gestures.hand import KeptStage, drag, hold
from tests.layout.ground import Fields, nm
from tests.plans import plans

BEDS: list[Fields] = [
    {"id": "a", "name": "Alder", "length": "10 m", "width": "80 cm"},
    {"id": "b", "name": "Birch", "length": "6 m", "width": "1 m"},
]
TUNNEL: Fields = {
    "id": "t", "name": "Glass", "x": "20 m", "y": "20 m", "length": "15 m", "width": "6 m", "cold_edge": "40 cm",
}  # fmt: skip


def laid(turn: str = "0°", units: str = "metric") -> Plan:
    """Alder at 4 m by 4 m, turned; Birch at 4 m by 10 m; a tunnel farther off."""
    ground: list[Fields] = [{"bed": "a", "x": "4 m", "y": "4 m", "turn": turn}, {"bed": "b", "x": "4 m", "y": "10 m"}]
    return plan_from({"units": units}, beds=BEDS, ground=ground, tunnels=[TUNNEL])


def over(x: str, y: str, *, reach: str = "20 cm", free: bool = False) -> Pointer:
    """The hand at a place on the ground."""
    at = [-nm(one[1:]) if one.startswith("-") else nm(one) for one in (x, y)]
    return Pointer(None, at[0], at[1], nm(reach), free, nm(reach))


def spot(plan: Plan, bed: str = "b") -> tuple[int, int]:
    """Where a bed lies."""
    frame = frames_of(plan)[bed]
    return frame.x, frame.y


def pulls(trial: Trial) -> tuple[str, str]:
    """What drew a bed along and across."""
    assert trial.snap is not None
    assert trial.across is not None
    return trial.snap.pull, trial.across.pull


@pytest.mark.parametrize(
    ("x", "y", "at", "drawn"),
    [
        ("4.1 m", "5.3 m", (4 * M, 525 * CM), (Pull.ALIGNED, Pull.PATH)),
        ("8.05 m", "2.6 m", (8 * M, 255 * CM), (Pull.ALIGNED, Pull.PATH)),
        ("14.5 m", "4.1 m", (1445 * CM, 4 * M), (Pull.PATH, Pull.ALIGNED)),
        ("20.5 m", "20.3 m", (2040 * CM, 2040 * CM), (Pull.TUNNEL, Pull.TUNNEL)),
        ("20.1 m", "25.1 m", (20 * M, 25 * M), (Pull.TUNNEL, Pull.TUNNEL)),
        ("40.04 m", "40.06 m", (40 * M, 4010 * CM), (Pull.READING, Pull.READING)),
    ],
)
def test_a_bed_is_drawn_to_neighbours_paths_tunnels_and_round_distances(
    x: str, y: str, at: tuple[int, int], drawn: tuple[Pull, Pull]
) -> None:
    trial = try_bed_at(laid(), "b", over(x, y))
    assert spot(trial.plan) == at
    assert pulls(trial) == drawn


def test_a_free_hand_goes_past_all_that_draws() -> None:
    assert spot(try_bed_at(laid(), "b", over("4.11 m", "5.23 m", free=True)).plan) == (411 * CM, 523 * CM)


def test_a_path_draws_only_beside_its_neighbour() -> None:
    trial = try_bed_at(laid(), "b", over("30 m", "5.25 m", reach="4 cm"))
    assert Pull.PATH not in pulls(trial)


def test_a_bed_square_to_its_neighbour_is_drawn_by_its_own_edges() -> None:
    plan = edits.turn_bed(laid(), "b", plan_from({"north": "90°"}).place.north or pytest.fail("no turn"))
    trial = try_bed_at(plan, "b", over("5.1 m", "5.3 m"))
    assert spot(trial.plan) == (5 * M, 525 * CM)
    assert pulls(trial) == (Pull.PATH, Pull.ALIGNED)


def test_a_bed_aslant_is_drawn_only_by_what_lies_aslant_with_it() -> None:
    plan = laid("30°")
    assert pulls(try_bed_at(plan, "a", over("4.1 m", "14 m"))) == (Pull.READING, Pull.READING)
    assert spot(try_bed_at(plan, "a", over("4.12 m", "14.04 m")).plan, "a") == (410 * CM, 14 * M)


def test_beds_go_left_of_the_peg_and_above_it_but_no_further_than_10_km() -> None:
    assert spot(try_bed_at(laid(), "b", over("-3 m", "-70 cm")).plan) == (-3 * M, -70 * CM)
    assert spot(try_bed_by(laid(), "b", (-50 * M, 0)).plan) == (spot(laid())[0] - 50 * M, 10 * M)
    assert spot(try_bed_by(laid(), "b", (-5 * LONGEST, 0)).plan) == (-LONGEST, 10 * M)


def test_a_drag_takes_the_bed_where_it_was_held_and_is_one_step() -> None:
    stage = KeptStage(laid())
    drag(move_on_ground(stage, "b", over("6 m", "10.5 m")), over("8 m", "9 m"), over("12 m", "13.5 m"))
    assert spot(stage.after) == (10 * M, 13 * M)
    assert stage.verbs == [MOVE]
    assert stage.committed[0].bed == "b"


def test_the_hand_that_gives_up_leaves_nothing_and_the_one_that_comes_back_the_very_same_plan() -> None:
    stage, press = KeptStage(laid()), over("6 m", "10.5 m")
    hold(move_on_ground(stage, "b", press), over("9 m", "9 m")).close()
    hold(turn_on_ground(stage, "b", press), over("9 m", "9 m")).close()
    assert stage.committed == []
    drag(move_on_ground(stage, "b", press), over("9 m", "9 m"), press)
    assert stage.after is stage.plan


def test_a_bed_swings_round_its_head_by_the_place_where_it_is_held() -> None:
    stage = KeptStage(laid())
    drag(turn_on_ground(stage, "b", over("10 m", "10 m")), over("4 m", "14 m"))
    standing = standing_of(stage.after, "b")
    assert standing is not None
    assert (spot(stage.after), str(standing.turn)) == ((4 * M, 10 * M), "90°")
    assert stage.verbs == [TURN]


@pytest.mark.parametrize(
    ("x", "y", "turn", "pull"),
    [
        ("14 m", "12.9 m", "15°", Pull.SQUARE),
        ("14 m", "14.1 m", "22.5°", Pull.PARALLEL),
        ("14 m", "14.9 m", "26.1°", Pull.READING),
    ],
)
def test_a_turn_is_drawn_to_round_directions_and_to_those_of_neighbours(
    x: str, y: str, turn: str, pull: Pull
) -> None:
    trial = try_bed_towards(laid("22.5°"), "b", over(x, y))
    standing = standing_of(trial.plan, "b")
    assert standing is not None
    assert str(standing.turn) == turn
    assert trial.snap is not None
    assert trial.snap.pull is pull


def test_a_free_hand_turns_to_a_tenth_of_a_degree() -> None:
    trial = try_bed_towards(laid(), "b", over("14 m", "12.9 m", free=True))
    assert frames_of(trial.plan)["b"].turn == Fraction(162, 10)


def test_a_bed_without_a_place_gets_one_with_all_others_and_none_of_these_moves() -> None:
    plan = plan_from(beds=BEDS)
    before = frames_of(plan)
    after = try_bed_by(plan, "b", (10 * CM, 0)).plan
    assert spot(after, "a") == (before["a"].x, before["a"].y)
    assert spot(after, "b") == (before["b"].x + 10 * CM, before["b"].y)
    assert len(after.ground) == 2


hands = st.builds(
    Pointer,
    bed=st.none(),
    x=st.integers(-5 * M, 90 * M),
    y=st.integers(-5 * M, 90 * M),
    reach=st.integers(0, 2 * M),
    free=st.booleans(),
    reach_across=st.integers(0, 2 * M),
)


@settings(max_examples=60)
@given(plans(least_beds=1), st.lists(hands, min_size=1, max_size=3), st.booleans(), st.data())
def test_any_drag_on_the_ground_changes_places_alone_and_outlives_the_file(
    plan: Plan, way: list[Pointer], moves: bool, data: st.DataObject
) -> None:
    stage, press = KeptStage(plan), data.draw(hands)
    bed = data.draw(st.sampled_from(plan.beds)).id
    drag((move_on_ground if moves else turn_on_ground)(stage, bed, press), *way)
    after = stage.after
    assert list(faults(after)) == []
    assert all(one is other for one, other in zip(lay_out_plan(after), lay_out_plan(plan), strict=True))
    assert (after.beds, after.plantings, after.tunnels, after.paths) == (
        plan.beds,
        plan.plantings,
        plan.tunnels,
        plan.paths,
    )
    assert {name: frame for name, frame in frames_of(after).items() if name != bed} == {
        name: frame for name, frame in frames_of(plan).items() if name != bed
    }
    assert plan_of_text(text_of(after)).plan == after


@given(plans(least_beds=1), st.integers(0, 50), st.integers(0, 50), st.integers(-30, 30))
def test_nudged_and_turned_there_and_back_is_where_it_was(plan: Plan, right: int, down: int, steps: int) -> None:
    bed = plan.beds[0].id
    there = try_bed_by(plan, bed, (right * CM, down * CM)).plan
    assert frames_of(try_bed_by(there, bed, (-right * CM, -down * CM)).plan) == frames_of(plan)
    turned = try_turn_by(plan, bed, Fraction(15 * steps)).plan
    assert frames_of(try_turn_by(turned, bed, Fraction(-15 * steps)).plan) == frames_of(plan)


@given(plans(least_beds=2), st.data())
def test_beds_that_go_along_keep_their_place_to_one_another(plan: Plan, data: st.DataObject) -> None:
    lead, *beside = data.draw(st.permutations([bed.id for bed in plan.beds]))
    right, down = data.draw(st.tuples(st.integers(-(10**10), 10**10), st.integers(-(10**10), 10**10)))
    before, quarters = frames_of(plan), data.draw(st.integers(1, 3))
    moved = try_bed_by(plan, lead, (right, down), tuple(beside)).plan
    for bed, frame in frames_of(moved).items():
        assert (frame.x - before[bed].x, frame.y - before[bed].y, frame.turn) == (right, down, before[bed].turn)
    turned = try_turn_by(moved, lead, Fraction(90 * quarters), tuple(beside)).plan
    seen = {bed: as_seen_from(frames_of(turned)[lead], frame) for bed, frame in frames_of(turned).items()}
    for bed, frame in frames_of(moved).items():
        assert seen[bed] == pytest.approx(as_seen_from(frames_of(moved)[lead], frame), abs=2)
    back = try_turn_by(turned, lead, Fraction(-90 * quarters), tuple(beside)).plan
    assert frames_of(back) == frames_of(moved)
    assert [laid.layouts for laid in lay_out_plan(turned)] == [laid.layouts for laid in lay_out_plan(plan)]


def as_seen_from(lead: Frame, frame: Frame) -> tuple[float, ...]:
    """Where a bed lies and how it is turned, seen in the frame of another one."""
    return (*lead.from_ground(frame.x, frame.y), float((frame.turn - lead.turn) % 360))


def test_beds_turned_aslant_turn_about_the_one_that_leads() -> None:
    trial = try_turn_by(laid(), "a", Fraction(30), ("b",))
    lead, other = (frames_of(trial.plan)[bed] for bed in ("a", "b"))
    assert (lead.x, lead.y) == (4 * M, 4 * M)
    assert lead.turn == other.turn == 30
    assert (other.x, other.y) == (1 * M, 9_196_152_423)  # 4 m − 6 m · sin 30°, 4 m + 6 m · cos 30°


def test_several_beds_stop_where_the_first_of_them_reaches_the_farthest_that_ground_goes() -> None:
    moved = frames_of(try_bed_by(laid(), "b", (2 * LONGEST, 0), ("a",)).plan)
    assert moved["a"].x == moved["b"].x == LONGEST
    moved = frames_of(try_bed_by(laid(), "b", (0, -2 * LONGEST), ("a",)).plan)
    assert (moved["a"].y, moved["b"].y) == (-LONGEST, -LONGEST + 6 * M)


def test_beds_that_go_along_do_not_draw_the_one_that_leads() -> None:
    at = over("4.1 m", "5.3 m")
    assert pulls(try_bed_at(laid(), "b", at)) == (Pull.ALIGNED, Pull.PATH)
    assert pulls(try_bed_at(laid(), "b", at, beside=("a",))) == (Pull.KEPT, Pull.READING)


def test_several_beds_are_moved_in_one_step() -> None:
    stage = KeptStage(laid())
    drag(move_on_ground(stage, "a", over("5 m", "4 m"), ("b",)), over("7 m", "9.2 m"))
    assert stage.verbs == [MOVE_ALL]
    assert stage.committed[0].beds == ("a", "b")
    assert (spot(stage.after, "a"), spot(stage.after, "b")) == ((6 * M, 920 * CM), (6 * M, 1520 * CM))
