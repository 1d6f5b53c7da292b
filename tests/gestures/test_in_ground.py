"""What is in the ground: recorded as it came about, and from then on no edit changes its block."""

from datetime import date

import pytest
from attrs import evolve
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gardenplot.errors import LengthError, PlanError
from gardenplot.gestures.actual_typed import ACTUAL_FIELDS, record
from gardenplot.gestures.copies import try_next_gap
from gardenplot.gestures.drags import move_block
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.orders import drop_order
from gardenplot.gestures.split import try_split
from gardenplot.gestures.stage import Pointer
from gardenplot.gestures.swap import try_swap
from gardenplot.gestures.together import try_beds, try_shift
from gardenplot.gestures.trials import try_ranks
from gardenplot.layout import lay_out_plan, planted_for_orders
from gardenplot.plan import Actual, Plan, planting_of
from gardenplot.plan.edits import change_bed, change_crop, change_planting, remove_bed, remove_planting
from gardenplot.season import dates_of
from gardenplot.units import CM, MM, parse_length
from tests.gestures.hand import KeptStage, at, block, block_of, drag, ground, spot
from tests.plan.test_edits import EVERY_ATTEMPT, attempted, id_in
from tests.plans import plans

APRIL = date(2027, 4, 12)
SENTENCE = "Chard is in the ground since Mon 12 Apr 2027: its block stays; clear the day first if that was a slip"
ACTUAL = {field.name: field for field in ACTUAL_FIELDS}
COUNTS = ("actual_stand", "actual_planted", "actual_cells", "actual_bought", "actual_standing")
TEXTS = dict.fromkeys(COUNTS, "12") | {"actual_failed_rows": "1; 2", "actual_stand_row": "2 m"}

DONE = [
    *(attempt for name, attempt in EVERY_ATTEMPT.items() if name not in ("suppose_planting", "remove_order")),
    lambda plan, data: drop_order(plan, id_in(data, plan.orders)),
]
"""Every edit but the one that only supposes, and orders taken away as the window does it."""


def in_ground(plan: Plan, planting: str = "p1") -> Plan:
    """The plan with a planting set out on 12 April."""
    return record(plan, planting, "set_out", APRIL)


@pytest.fixture
def there() -> Plan:
    """A block from 1 to 2 m that is in the ground, and one from 3 to 4 m that is not."""
    return in_ground(ground(block("1 m", "1 m", in_ground="2027-04-09"), block("3 m", "1 m")))


@pytest.mark.parametrize(
    "changes",
    [
        {"start": parse_length("2 m")},
        {"length": parse_length("2 m")},
        {"plants": 4},
        {"bed": "b2"},
        {"crop": "leek"},
        {"rows": 1},
        {"in_row": parse_length("20 cm")},
        {"row_spacing": (parse_length("20 cm"),)},
        {"in_ground": date(2027, 4, 20)},
    ],
)
def test_what_is_in_the_ground_is_not_moved_or_planted_otherwise(there: Plan, changes: dict[str, object]) -> None:
    with pytest.raises(PlanError) as refused:
        change_planting(there, "p1", **changes)
    assert refused.value.says == SENTENCE
    cleared = record(there, "p1", "set_out", None)
    assert change_planting(cleared, "p1", **changes) != cleared


def test_notes_the_end_and_what_came_about_may_still_change(there: Plan) -> None:
    after = change_planting(there, "p1", note="slugs", out=date(2027, 7, 1))
    after = record(record(after, "p1", "harvested", date(2027, 6, 1)), "p1", "planted", 9)
    assert planting_of(after, "p1").actual == Actual(set_out=APRIL, harvested=date(2027, 6, 1), planted=9)
    assert planting_of(after, "p1").in_ground == date(2027, 4, 9)
    assert dates_of(after, planting_of(after, "p1")).in_ground == APRIL


def test_it_is_removed_only_once_its_ground_is_free(there: Plan) -> None:
    free = record(there, "p1", "cleared", date(2027, 7, 1))
    with pytest.raises(PlanError, match="is in the ground since"):
        remove_planting(there, "p1")
    with pytest.raises(PlanError, match="is in the ground since"):
        remove_bed(there, "b1")
    assert [one.id for one in remove_planting(free, "p1").plantings] == ["p2"]
    assert remove_bed(free, "b1").plantings == ()


def test_no_hand_moves_it(there: Plan) -> None:
    for tried in (
        lambda: try_shift(there, ["p1"], 10 * CM),
        lambda: try_shift(there, ["p2", "p1"], 10 * CM),
        lambda: try_beds(there, ["p1"], 1),
        lambda: try_ranks(there, "p1", 1),
        lambda: try_swap(there, "p2", -1),
        lambda: try_split(there, "p1"),
    ):
        with pytest.raises(PlanError, match="is in the ground since"):
            tried()
    stage = KeptStage(there)
    with pytest.raises(PlanError, match="is in the ground since"):
        drag(move_block(stage, "p1", at("1.5 m")), at("5 m"))
    assert not stage.committed


def test_a_pushed_row_of_blocks_ends_at_it() -> None:
    plan = in_ground(ground(block("1 m", "1 m"), block("3 m", "1 m"), block("6 m", "1 m")), "p3")
    stage = KeptStage(plan)
    drag(move_block(stage, "p1", at("1.5 m")), evolve(at("5.5 m"), push=True))
    assert block_of(stage.after, "p3") == block_of(plan, "p3")
    assert block_of(stage.after, "p2") == spot("4.8 m", "5.8 m")
    assert block_of(stage.after, "p1") == spot("3.6 m", "4.6 m")


def test_a_copy_is_planned_anew(there: Plan) -> None:
    after = try_next_gap(there, ["p1"]).plan
    assert after.plantings[-1].actual is None
    assert planting_of(after, "p1") == planting_of(there, "p1")


def test_its_block_stays_when_its_crop_bed_and_neighbours_change() -> None:
    plan = ground(block("1 m", "1 m"), {"bed": "b1", "crop": "chard"}, {"plants": 30, "bed": "b2"})
    places = {one: block_of(plan, one) for one in ("p2", "p3")}
    plan = in_ground(in_ground(plan, "p2"), "p3")
    counts = {one: layout_in(plan, one).plants for one in places}
    plan = change_crop(plan, "chard", in_row=parse_length("10 cm"), row_spacing=(parse_length("60 cm"),))
    plan = remove_planting(plan, "p1")
    assert {one: block_of(plan, one) for one in places} == places
    assert {one: layout_in(plan, one).plants for one in places} == counts
    narrow = change_bed(plan, "b2", width=parse_length("50 cm"))
    assert block_of(narrow, "p3") == places["p3"]


def test_a_part_filled_last_rank_is_kept_as_the_plants_that_were_set_out() -> None:
    plan = ground({"plants": 13, "bed": "b2"}, {"plants": 16, "bed": "b1"})
    after = in_ground(in_ground(plan, "p1"), "p2")
    assert block_of(after, "p1") == block_of(plan, "p1")
    actual = planting_of(after, "p1").actual
    assert actual is not None
    assert (layout_in(plan, "p1").plants, actual.planted) == (13, 13)
    assert planting_of(after, "p2").actual == Actual(set_out=APRIL)


def test_the_plants_that_were_set_out_are_those_that_stand_for_its_order() -> None:
    plan = ground({"order": "o1"}, orders=[{"id": "o1", "crop": "chard", "units": 20, "on": "2027-06-12"}])
    before = planted_for_orders(lay_out_plan(plan))["o1", 1]
    after = record(in_ground(plan), "p1", "planted", 14)
    assert before >= 20
    assert planted_for_orders(lay_out_plan(after)) == {("o1", 1): 14}
    without = drop_order(after, "o1")
    assert block_of(without, "p1") == block_of(plan, "p1")


@pytest.mark.parametrize("name", ACTUAL)
def test_what_came_about_is_typed_shown_and_cleared(there: Plan, name: str) -> None:
    field = ACTUAL[name]
    plan = record(there, "p1", "set_out", None)
    text = TEXTS.get(name, "12 Apr 2027")
    after = field.apply(plan, "p1", text)
    assert (field.shown(plan, "p1"), field.shown(after, "p1")) == ("", text)
    assert planting_of(field.apply(after, "p1", ""), "p1").actual is None
    with pytest.raises((PlanError, LengthError), match="is no"):
        field.apply(after, "p1", "some time")


@settings(max_examples=60)
@given(st.data(), plans(least_plantings=1), st.dates(date(2026, 1, 1), date(2028, 12, 31)))
def test_no_edit_changes_the_block_of_what_is_in_the_ground(data: st.DataObject, plan: Plan, day: date) -> None:
    one = data.draw(st.sampled_from(plan.plantings)).id
    plan = evolve(plan, plantings=tuple(evolve(each, actual=None) for each in plan.plantings))
    assume(layout_in(plan, one).length >= MM)
    there = record(plan, one, "set_out", day)
    assert block_of(there, one) == block_of(plan, one)
    after = attempted(data.draw(st.sampled_from(DONE)), there, data)
    actual = planting_of(after, one).actual
    if actual is not None and actual.set_out is not None:
        assert block_of(after, one) == block_of(there, one)


@settings(max_examples=40)
@given(st.data(), plans(least_plantings=1))
def test_no_drag_changes_it_either(data: st.DataObject, plan: Plan) -> None:
    ids = [each.id for each in plan.plantings]
    one, dragged = data.draw(st.sampled_from(ids)), data.draw(st.sampled_from(ids))
    plan = evolve(plan, plantings=tuple(evolve(each, actual=None) for each in plan.plantings))
    assume(layout_in(plan, one).length >= MM)
    there, stage = record(plan, one, "set_out", APRIL), KeptStage(record(plan, one, "set_out", APRIL))
    to = Pointer(
        planting_of(plan, dragged).bed, data.draw(st.integers(0, 30)) * 100 * CM, 0, 0, push=data.draw(st.booleans())
    )
    try:
        drag(move_block(stage, dragged, evolve(to, x=layout_in(there, dragged).start)), to)
    except PlanError:
        assert not stage.committed
    for trial in stage.committed:
        assert block_of(trial.plan, one) == block_of(there, one)
