"""Where the solver is missing a season is filled all the same; only its bound is a poor one."""

import sys

import pytest
from attrs import evolve

from gardenplot.filling import fill
from gardenplot.plan import Wish
from tests.plans import metric_plan


def test_a_season_is_filled_without_the_solver(monkeypatch: pytest.MonkeyPatch) -> None:
    wishes = tuple(Wish(f"w{number}", "leek", 60 + number, 60 + number) for number in range(40))
    plan = evolve(metric_plan(), plantings=(), wishes=wishes)
    there = fill(plan, 60)
    monkeypatch.setitem(sys.modules, "highspy", None)
    found = fill(plan, 60)
    assert found.placed
    assert found.worth <= there.bound <= found.bound
    assert not found.proven
