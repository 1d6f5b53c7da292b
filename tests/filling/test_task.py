"""Search, bound and exact method on small tasks, with a referee that tries everything."""

from hypothesis import given, settings

from gardenplot.filling.bound import most_worth
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.model import Answer, Task, wrongs
from gardenplot.filling.search import Search
from tests.filling.tasks import best_worth, tasks

NOTHING = Answer((), 0)


def found(task: Task, turns: int = 60) -> Answer:
    """What the search finds in a few turns."""
    search = Search(task)
    search.run(turns, 10**9, lambda _better: True)
    return search.best


@given(tasks())
def test_the_search_finds_a_filling_in_which_nothing_overlaps(task: Task) -> None:
    assert wrongs(task, found(task)) == []


@given(tasks(wishes=3))
def test_the_bound_is_never_below_the_best_and_the_search_never_above(task: Task) -> None:
    best = best_worth(task)
    assert found(task).worth <= best <= most_worth(task, nodes=50)


@given(tasks(wishes=3))
def test_the_best_of_all_is_what_the_referee_says(task: Task) -> None:
    proved = best_of_all(task, NOTHING, steps=100_000)
    assert proved is not None
    assert wrongs(task, proved) == []
    assert proved.worth == best_worth(task)


@given(tasks())
def test_the_same_task_gives_the_same_filling_and_the_same_bound(task: Task) -> None:
    assert found(task) == found(task)
    assert most_worth(task, nodes=5) == most_worth(task, nodes=5)


@settings(max_examples=40)
@given(tasks())
def test_a_search_that_is_told_to_stop_has_its_best_so_far(task: Task) -> None:
    search = Search(task)
    told: list[Answer] = []

    def stop(better: Answer) -> bool:
        told.append(better)
        return False

    goes_on = search.run(200, 10**9, stop)
    assert goes_on == (not told)
    assert search.best == (told[0] if told else search.best)
    assert len(told) <= 1
    assert wrongs(task, search.best) == []


def test_too_large_a_task_is_given_up() -> None:
    task = Task((), ())
    assert best_of_all(task, NOTHING, steps=0) is None
    assert best_of_all(task, NOTHING, steps=1) == NOTHING
