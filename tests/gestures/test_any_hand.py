"""Laws of what the hand does with several, copying and pushing: whatever the plan and wherever it goes."""

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.errors import PlanError
from gardenplot.gestures.drags import move_block, resize_block
from gardenplot.gestures.kept import layout_in
from gardenplot.gestures.stage import Gesture, Pointer
from gardenplot.plan import Plan, planting_of
from gardenplot.plan.file import text_of
from gardenplot.plan.valid import faults
from tests.gestures.hand import KeptStage, block, drag, ground, trouble
from tests.gestures.test_any_drag import pointers
from tests.plans import plans


def ways(plan: Plan) -> st.SearchStrategy[list[Pointer]]:
    """The hand anywhere with any keys held."""
    held = st.builds(
        lambda pointer, push, copies: evolve(pointer, push=push, copies=copies),
        pointers(plan),
        st.booleans(),
        st.booleans(),
    )
    return st.lists(held, min_size=1, max_size=3)


def tried(plan: Plan, data: st.DataObject) -> tuple[KeptStage, tuple[str, ...]]:
    """A stage after any drag of any plantings."""
    stage = KeptStage(plan)
    chosen = tuple(data.draw(st.lists(st.sampled_from([one.id for one in plan.plantings]), min_size=1, unique=True)))
    gesture: Gesture
    if data.draw(st.booleans()):
        gesture = move_block(stage, chosen[0], data.draw(pointers(plan)), chosen[1:])
    else:
        chosen = chosen[:1]
        gesture = resize_block(stage, chosen[0], foot=data.draw(st.booleans()))
    try:
        drag(gesture, *data.draw(ways(plan)))
    except PlanError:
        assert not stage.committed
    return stage, chosen


@settings(max_examples=max(70, settings().max_examples))
@given(plans(least_plantings=1), st.data())
def test_what_is_committed_is_valid_without_new_trouble_and_touches_nothing_else(
    plan: Plan, data: st.DataObject
) -> None:
    before = text_of(plan)
    stage, chosen = tried(plan, data)
    assert text_of(plan) == before
    assert len(stage.committed) + len(stage.refused) <= 1
    for trial in stage.committed:
        assert list(faults(trial.plan)) == []
        touched = {*chosen, *trial.chosen, *(one.planting for one in trial.pushed)}
        assert not any(trouble(trial.plan, one) for one in {*trial.chosen, *(one.planting for one in trial.pushed)})
        together = {one.series for one in plan.plantings if one.id in touched and one.series is not None}
        touched |= {one.id for one in plan.plantings if one.series in together}
        kept = {one.id: one for one in trial.plan.plantings}
        assert all(kept[one.id] is one for one in plan.plantings if one.id not in touched)
        assert evolve(trial.plan, plantings=plan.plantings) == plan


@settings(max_examples=80)
@given(st.data())
def test_several_keep_their_distances_and_copies_leave_the_first_alone(data: st.DataObject) -> None:
    lengths = data.draw(st.lists(st.integers(3, 20), min_size=2, max_size=4))
    starts = [30 + 30 * number + sum(lengths[:number]) * 10 for number in range(len(lengths))]
    plan = ground(*(block(f"{at} cm", f"{long * 10} cm") for at, long in zip(starts, lengths, strict=True)))
    stage, chosen = tried(plan, data)
    for trial in stage.committed:
        pushed = {one.planting for one in trial.pushed}
        if trial.copies:
            left = [one for one in plan.plantings if one.id not in pushed]
            assert all(planting_of(trial.plan, one.id) is one for one in left)
        if len(trial.chosen) == len(chosen) > 1:
            steps = {
                layout_in(trial.plan, now).start - layout_in(plan, was).start
                for was, now in zip(chosen, trial.chosen, strict=True)
            }
            assert len(steps) == 1
        for one in pushed:
            assert layout_in(trial.plan, one).length == layout_in(plan, one).length
