"""Laws of every drag: whatever the plan and wherever the hand goes, what is committed can be done."""

from collections.abc import Callable

from attrs import evolve, frozen
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gardenplot.drawing.letters import looks, looks_in_hand
from gardenplot.errors import PlanError
from gardenplot.gestures.drags import move_block, place_crop, resize_block
from gardenplot.gestures.stage import Gesture, Pointer
from gardenplot.plan import Plan
from gardenplot.plan.catalogue import entries
from gardenplot.plan.valid import faults
from gardenplot.units import CM, M
from tests.gestures.hand import KeptStage, drag, planted, trouble
from tests.plans import plans


@frozen
class Drag:
    """A plan, a gesture on it, and the way that the hand goes."""

    plan: Plan
    begin: Callable[[KeptStage], Gesture]
    way: tuple[Pointer, ...]

    def done(self) -> KeptStage:
        """The stage after the hand let go; a request that cannot be met ends the drag."""
        stage = KeptStage(self.plan)
        try:
            drag(self.begin(stage), *self.way)
        except PlanError:
            assert not stage.committed
        return stage


def pointers(plan: Plan) -> st.SearchStrategy[Pointer]:
    """The hand anywhere: over a bed, beside all of them, past the head, far past the foot."""
    return st.builds(
        Pointer,
        bed=st.sampled_from([None, *(bed.id for bed in plan.beds)]),
        x=st.integers(-M, 80 * M) | st.integers(-10, 800).map((10 * CM).__mul__),
        y=st.integers(-M, 3 * M),
        reach=st.integers(0, M),
        free=st.booleans(),
    )


@st.composite
def drags(draw: st.DrawFn) -> Drag:
    """Any of the three drags on any plan."""
    plan = draw(plans(least_beds=1))
    pointer = pointers(plan)
    way = tuple(draw(st.lists(pointer, min_size=1, max_size=4)))
    placed, moved, foot = draw(st.tuples(st.booleans(), st.booleans(), st.booleans()))
    if plan.plantings and not placed:
        planting, press = draw(st.sampled_from(plan.plantings)).id, draw(pointer)
        if moved:
            return Drag(plan, lambda stage: move_block(stage, planting, press), way)
        return Drag(plan, lambda stage: resize_block(stage, planting, foot=foot), way)
    crop = draw(st.sampled_from([*plan.crops, entries()[0].crop]))
    return Drag(plan, lambda stage: place_crop(stage, crop), way)


@settings(max_examples=70)
@given(drags())
def test_what_is_committed_is_a_valid_plan_without_new_trouble(tried: Drag) -> None:
    stage = tried.done()
    assert len(stage.committed) + len(stage.refused) <= 1
    for trial in stage.committed:
        assert list(faults(trial.plan)) == []
        known = {one.id for one in tried.plan.plantings}
        before = trouble(tried.plan, planted(trial)) if planted(trial) in known else set()
        assert trouble(trial.plan, planted(trial)) <= before


@settings(max_examples=40)
@given(drags())
def test_a_drag_changes_one_planting_and_at_most_adds_its_crop(tried: Drag) -> None:
    for trial in tried.done().committed:
        before, after = tried.plan, trial.plan
        assert [one for one in after.plantings if one.id != planted(trial)] == [
            one for one in before.plantings if one.id != planted(trial)
        ]
        assert after.crops[: len(before.crops)] == before.crops
        assert len(after.crops) <= len(before.crops) + 1
        assert evolve(after, plantings=before.plantings, crops=before.crops) == before


@settings(max_examples=40)
@given(drags())
def test_whatever_the_hand_holds_each_planting_keeps_its_look_and_what_is_new_has_a_letter_of_its_own(
    tried: Drag,
) -> None:
    before = looks(tried.plan)
    for trial in filter(None, tried.done().shown):
        look = looks_in_hand(tried.plan, trial.plan)
        assert set(look) >= {one.id for one in trial.plan.plantings}
        assert {planting: look[planting] for planting in before} == before
        assert len({one.letter for one in look.values()}) == len(look)
        after = looks(trial.plan)
        assert all(look[new] == after[new] for new in look.keys() - before if after[new].letter == look[new].letter)


@settings(max_examples=40)
@given(drags())
def test_only_where_the_hand_lets_go_counts(tried: Drag) -> None:
    direct = Drag(tried.plan, tried.begin, tried.way[-1:]).done()
    wandering = tried.done()
    assume(len(wandering.shown) > len(tried.way))  # no place on the way was one that cannot be asked for
    assert wandering.committed == direct.committed
    assert wandering.refused == direct.refused
