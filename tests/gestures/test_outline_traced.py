"""A bed traced corner by corner: clicks, corners taken back, the outline closed or given up."""

from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.gestures.outline_traced import trace_bed
from gardenplot.gestures.snap import Pull
from gardenplot.gestures.stage import Event, Finished, Gesture, Pointer, Released, Sketch, TakenBack
from gardenplot.plan import Plan
from gardenplot.plan.valid import faults
from gardenplot.units import CM, M
from tests.gestures.hand import KeptStage
from tests.gestures.shaped import ELL, box, ell, over, places, reach_of, written


def clicks(*corners: str) -> list[Event]:
    """A click at each of some places."""
    return [event for corner in corners for event in (over(corner, bed=None), Released())]


def traced(*events: Event, plan: Plan | None = None) -> KeptStage:
    """A stage on which a bed was traced to its end."""
    stage = KeptStage(plan or box())
    assert played(trace_bed(stage), *events), "the tracing goes on"
    return stage


def played(gesture: Gesture, *events: Event) -> bool:
    """Whether the tracing is over after these events."""
    next(gesture)
    for event in events:
        try:
            gesture.send(event)
        except StopIteration:
            return True
    return False


def test_an_l_is_traced_and_closed_on_its_first_corner() -> None:
    stage = traced(*clicks("2 cm by 1 cm", "7.96 m by 2 cm", *ELL[2:], "3 cm by 2 cm"))
    assert places(stage.after, 1) == written(*ELL)
    assert [length.nm for length in reach_of(stage.after, 1)] == [8 * M, 2 * M]
    assert stage.after.beds[1].name == "Bed 2"
    assert stage.committed[0].bed == stage.after.beds[1].id
    assert stage.verbs == ["Trace {bed}"]
    assert stage.after.beds[0] is stage.plan.beds[0]


def test_enter_closes_what_is_set_whether_or_not_the_hand_is_elsewhere() -> None:
    stage = traced(*clicks(*ELL), over("6 m by 3 m"), Finished())
    assert places(stage.after, 1) == written(*ELL)


def test_the_last_corner_is_taken_back() -> None:
    stage = traced(*clicks(*ELL[:3]), *clicks("1 m by 3 m"), TakenBack(), *clicks(*ELL[3:]), Finished())
    assert places(stage.after, 1) == written(*ELL)


def test_a_place_clicked_twice_is_one_corner() -> None:
    stage = traced(*clicks(*ELL[:3], ELL[2], *ELL[3:]), Finished())
    assert places(stage.after, 1) == written(*ELL)


def test_two_corners_are_refused_and_the_tracing_goes_on() -> None:
    stage = KeptStage(box())
    assert not played(trace_bed(stage), *clicks(*ELL[:2]), Finished())
    assert [trial.refusal for trial in stage.refused] == ["an outline needs three corners or more"]
    assert stage.committed == []


def test_an_outline_that_crosses_itself_is_refused_and_can_be_mended() -> None:
    crossed = clicks("0 m by 0 m", "4 m by 2 m", "4 m by 0 m", "0 m by 1 m")
    stage = traced(*crossed, Finished(), TakenBack(), Finished())
    assert [trial.refusal for trial in stage.refused] == ["the outline crosses or touches itself"]
    assert places(stage.after, 1) == written("0 m by 0 m", "4 m by 2 m", "4 m by 0 m")


def test_the_name_of_a_bed_that_is_there_is_not_given_twice() -> None:
    plan = traced(*clicks(*ELL), Finished(), plan=Plan()).after
    assert [bed.name for bed in plan.beds] == ["Bed 1"]
    two = traced(*clicks(*ELL), Finished(), plan=plan).after
    assert [bed.name for bed in two.beds] == ["Bed 1", "Bed 2"]
    kept = Plan(beds=two.beds[1:])
    assert [bed.name for bed in traced(*clicks(*ELL), Finished(), plan=kept).after.beds] == ["Bed 2", "Bed 3"]


def test_under_the_hand_stand_the_corner_and_what_drew_it_there() -> None:
    stage = KeptStage(ell())
    played(trace_bed(stage), *clicks("0 m by 0 m", "5 m by 0 m"), over("5.06 m by 1.51 m", bed=None))
    trial = stage.shown[-1]
    assert trial is not None
    assert trial.plan is stage.plan
    assert trial.sketch is not None
    assert trial.sketch.points == written("0 m by 0 m", "5 m by 0 m", "5 m by 1.5 m")
    assert trial.snap is not None
    assert trial.snap.pull is Pull.CORNER


def test_over_the_corner_that_was_just_set_stands_the_side_that_leads_to_it() -> None:
    stage = KeptStage(box())
    played(trace_bed(stage), *clicks("0 m by 0 m", "5 m by 0 m"))
    trial = stage.shown[-1]
    assert trial is not None
    assert trial.sketch == Sketch(written("0 m by 0 m", "5 m by 0 m"), 1, closed=False)


hands = st.builds(
    Pointer,
    bed=st.none(),
    x=st.integers(-M, 12 * M) | st.integers(0, 8).map(M.__mul__),
    y=st.integers(-M, 4 * M) | st.integers(0, 8).map((50 * CM).__mul__),
    reach=st.integers(0, M // 2),
    free=st.booleans(),
    reach_across=st.integers(0, M // 4),
)
events = st.lists(
    hands | st.builds(Released) | st.builds(Released) | st.builds(TakenBack) | st.builds(Finished), max_size=24
)


@settings(max_examples=150)
@given(events)
def test_what_comes_of_any_tracing_is_a_valid_plan_with_one_bed_more_or_nothing(done: list[Event]) -> None:
    stage = KeptStage(box())
    is_over = played(trace_bed(stage), *done)
    assert len(stage.committed) == is_over
    for trial in stage.committed:
        assert list(faults(trial.plan)) == []
        assert trial.plan.beds[:-1] == stage.plan.beds
    assert all(trial.plan is stage.plan for trial in stage.shown if trial)


@settings(max_examples=40)
@given(events)
def test_a_tracing_that_is_given_up_leaves_nothing(done: list[Event]) -> None:
    stage = KeptStage(box())
    gesture = trace_bed(stage)
    if not played(gesture, *(event for event in done if not isinstance(event, Finished))):
        gesture.close()
        assert stage.committed == []
