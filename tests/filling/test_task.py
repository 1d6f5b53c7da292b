"""Search, bound and exact method on small tasks, with a referee that tries everything."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gardenplot.filling.bound import most_worth
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.model import Answer, Strip, Task, Way, wrongs
from gardenplot.filling.search import WISHES_A_TURN, Search
from gardenplot.filling.season import solve
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


@settings(max_examples=40)
@given(tasks(wishes=3), st.integers(1, 40))
def test_a_season_that_is_told_to_stop_asks_no_more_and_has_its_best_so_far(task: Task, calls: int) -> None:
    asked: list[int] = []

    def turned() -> bool:
        asked.append(1)
        return len(asked) < calls

    answer, bound = solve(task, 50, lambda _better, _bound: True, turned)
    assert len(asked) <= calls
    assert wrongs(task, answer) == []
    assert answer.worth <= best_worth(task) <= bound


def test_it_is_asked_whether_to_go_on_before_more_than_a_few_wishes_are_let_in(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    ways = [tuple(Way(bed, day, day + 4, (3 + day % 5,), (7,)) for bed in range(4)) for day in range(40)]
    let_in, since = Search._let_in, list[int]([0])

    def counted(search: Search, wish: int, tries: int) -> None:
        since[-1] += 1
        let_in(search, wish, tries)

    monkeypatch.setattr(Search, "_let_in", counted)
    solve(Task((Strip(10),) * 4, tuple(ways)), 40, lambda _better, _bound: True, lambda: since.append(0))
    assert sum(since) > 3 * len(ways)
    assert max(since) <= 2 * WISHES_A_TURN


def test_trying_all_fillings_ends_when_it_is_told_to() -> None:
    assert best_of_all(Task((), ()), NOTHING, steps=501, turned=lambda: False) is None
    assert best_of_all(Task((), ()), NOTHING, steps=501, turned=lambda: True) == NOTHING


def test_too_large_a_task_is_given_up() -> None:
    task = Task((), ())
    assert best_of_all(task, NOTHING, steps=0) is None
    assert best_of_all(task, NOTHING, steps=1) == NOTHING
