"""The bound without places is exact: no price makes it too low, and what has all ground alone is told to the unit."""

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from gardenplot.filling import fill
from gardenplot.filling.bound import most_worth
from gardenplot.filling.model import Strip, Task, Way
from gardenplot.filling.prices import most_at
from gardenplot.filling.programme import programme_of
from gardenplot.plan.file import read_plan
from tests.filling.tasks import best_worth, tasks

PLANS = Path(__file__).parents[1] / "scenarios/further"


@given(tasks(wishes=3), st.data())
def test_at_no_price_is_the_bound_below_the_best(task: Task, data: st.DataObject) -> None:
    programme = programme_of(task)
    some = st.floats(-1, 20) | st.sampled_from((0.0, 1.0, 3.0))
    prices = data.draw(st.lists(some, min_size=len(programme.rows), max_size=len(programme.rows)))
    assert best_worth(task) <= most_at(programme, prices)


def one_place(length: int, worths: list[int]) -> Task:
    """Each thing takes all of the one strip on the same days."""
    return Task((Strip(length),), tuple((Way(0, 1, 9, (length,), (worth,)),) for worth in worths))


@given(st.lists(st.integers(1, 10**12), min_size=1, max_size=12), st.integers(1, 10**11))
def test_where_one_thing_takes_all_the_ground_the_bound_is_the_dearest_to_the_last_unit(
    worths: list[int], length: int
) -> None:
    assert most_worth(one_place(length, worths), nodes=0) == max(worths)


@given(st.lists(st.integers(1, 9), min_size=1, max_size=12))
def test_what_divides_all_worths_makes_up_for_the_margin_of_a_tree(worths: list[int]) -> None:
    assert most_worth(one_place(7, [10**8 * worth for worth in worths]), nodes=5) == 10**8 * max(worths)


def test_a_filling_that_nothing_can_beat_is_said_to_be_the_best() -> None:
    filling = fill(read_plan(PLANS / "cabbage_and_posts.gardenplot").plan)
    assert (filling.worth, filling.bound, filling.proven) == (200, 200, True)


@given(tasks(wishes=3))
def test_the_bound_of_parts_of_wishes_is_never_below_the_best(task: Task) -> None:
    assert best_worth(task) <= most_worth(task, nodes=0)
