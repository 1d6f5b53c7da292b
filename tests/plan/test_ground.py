"""Where beds lie on the ground: a bed moved or turned keeps its layouts, and all others stay where they are shown."""

from math import hypot

from hypothesis import assume, given
from hypothesis import strategies as st

from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, edits
from gardenplot.plan.file import plan_of_text, text_of
from gardenplot.plan.ground import Frame, corners_on_ground, frames_of, path_width, standing_of
from gardenplot.units import Degrees, M, parse_degrees
from tests.plans import lengths, metric_plan, plans, turns

PLACED = plans(least_beds=1)


@given(PLACED, st.data())
def test_a_bed_moved_and_turned_keeps_the_very_same_layouts(plan: Plan, data: st.DataObject) -> None:
    before = lay_out_plan(plan)
    bed = data.draw(st.sampled_from(plan.beds)).id
    moved = edits.move_bed(plan, bed, data.draw(lengths(0, 60 * M)), data.draw(lengths(0, 60 * M)))
    after = lay_out_plan(edits.turn_bed(moved, bed, data.draw(turns())))
    assert all(one is other for one, other in zip(after, before, strict=True))


@given(PLACED, st.data())
def test_a_bed_moved_leaves_all_others_where_they_are_shown(plan: Plan, data: st.DataObject) -> None:
    bed = data.draw(st.sampled_from(plan.beds)).id
    x, y = data.draw(lengths(0, 60 * M)), data.draw(lengths(0, 60 * M))
    before, after = frames_of(plan), frames_of(edits.move_bed(plan, bed, x, y))
    assert {**before, bed: after[bed]} == after
    assert (after[bed].x, after[bed].y, after[bed].turn) == (x.nm, y.nm, before[bed].turn)


@given(PLACED, st.data())
def test_moved_and_turned_there_and_back_is_the_same_plan(plan: Plan, data: st.DataObject) -> None:
    placed = edits.place_beds(plan)
    standing = data.draw(st.sampled_from(placed.ground))
    moved = edits.move_bed(placed, standing.bed, data.draw(lengths(0, 60 * M)), data.draw(lengths(0, 60 * M)))
    assert edits.move_bed(moved, standing.bed, standing.x, standing.y) == placed
    assume(standing.turn is None or standing.turn.text != "0°")
    turned = edits.turn_bed(placed, standing.bed, data.draw(turns()))
    assert edits.turn_bed(turned, standing.bed, standing.turn or parse_degrees("0°")) == placed


@given(PLACED)
def test_places_outlive_the_file(plan: Plan) -> None:
    placed = edits.place_beds(plan)
    assert plan_of_text(text_of(placed)).plan == placed
    assert edits.place_beds(placed) is placed
    assert frames_of(placed) == frames_of(plan)


@given(plans())
def test_beds_without_a_place_lie_a_path_apart_and_beyond_all_that_has_one(plan: Plan) -> None:
    frames, path = frames_of(plan), path_width(plan.place.units)
    assert [*frames] == [bed.id for bed in plan.beds]
    loose = [bed for bed in plan.beds if standing_of(plan, bed.id) is None]
    boxes = [(frames[bed.id].x, frames[bed.id].y, bed.length.nm, bed.width.nm) for bed in loose]
    for number, (x, y, length, width) in enumerate(boxes):
        for x2, y2, length2, width2 in boxes[:number]:
            across, along = max(y, y2) - min(y + width, y2 + width2), max(x, x2) - min(x + length, x2 + length2)
            assert max(across, along) >= path
    placed = [bed for bed in plan.beds if bed not in loose]
    lowest = [max(y for _x, y in corners_on_ground(frames[one.id], one.length.nm, one.width.nm)) for one in placed]
    assert all(y > max(lowest, default=0) for _x, y, _length, _width in boxes)


@given(turns(), st.integers(-(10**10), 10**10), st.integers(-(10**10), 10**10))
def test_a_frame_leads_there_and_back_and_keeps_lengths(turn: Degrees, x: int, y: int) -> None:
    frame = Frame(3 * M, 5 * M, turn.turn)
    right, down = frame.to_ground(x, y)
    back = frame.from_ground(right, down)
    assert hypot(back[0] - x, back[1] - y) < 1e-3
    assert abs(hypot(right - 3 * M, down - 5 * M) - hypot(x, y)) < 1e-3
    if frame.is_square:
        assert back == (x, y)
        assert isinstance(right, int)


def test_turned_by_a_quarter_a_bed_runs_down_the_drawing_with_its_base_line_on_the_right() -> None:
    quarter = Frame(0, 0, parse_degrees("90").turn)
    assert quarter.to_ground(10, 0) == (0, 10)
    assert quarter.to_ground(0, 1) == (-1, 0)


def test_a_copied_bed_has_no_place_and_a_removed_one_takes_its_place_along() -> None:
    plan = edits.place_beds(metric_plan())
    assert standing_of(edits.copy_bed(plan, "b1"), "b1-2") is None
    assert [one.bed for one in edits.remove_bed(plan, "b1").ground] == ["b2"]
