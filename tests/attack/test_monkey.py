"""Whatever a monkey does at the window, the plan stays valid and counted, and there is a way back."""

import pytest

from tests.attack import monkey, turns
from tests.attack.monkey import Came


def test_whatever_a_monkey_does_all_laws_hold() -> None:
    seeds, events = turns(2, 10), turns(130, 5000)
    came = monkey.attack(0, seeds, events)
    assert came["events"] == seeds * events
    assert came["changes of the plan"] > 5
    assert came["events at QMenu"] > 5


def test_a_run_that_breaks_is_made_short(monkeypatch: pytest.MonkeyPatch) -> None:
    def breaks(_seed: int, numbers: list[int]) -> Came:
        return Came({}, "KeyError: 'p1'" if {7, 31} <= set(numbers) else "", max(numbers))

    monkeypatch.setattr(monkey, "run", breaks)
    assert monkey.shortened(0, Came({}, "at 0x7f\nKeyError: 'p12'", 40), list(range(100))) == [7, 31]


def test_a_fault_is_told_with_its_seed_and_the_few_events(monkeypatch: pytest.MonkeyPatch) -> None:
    came = Came({}, "KeyError: 'p1'", 3)
    monkeypatch.setattr(monkey, "run", lambda _seed, _numbers: came)
    with pytest.raises(AssertionError, match=r"seed 5, event 3; .*monkey_run 5 '\[\d\]'"):
        monkey.attack(5, 1, 10)
