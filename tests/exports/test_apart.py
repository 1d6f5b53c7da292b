"""Work in a process of its own: nobody waits for its end, and none is left over."""

import multiprocessing
import time
from multiprocessing.process import BaseProcess

import pytest

from gardenplot.exports import svg
from gardenplot.exports.apart import Apart, Result, Work
from tests.plans import metric_plan

PATIENCE = 60
"""Seconds after which a process is taken to hang."""


def asleep(told: object) -> None:
    """Work that does not end by itself."""
    assert told
    time.sleep(PATIENCE)


def waited_for(monkeypatch: pytest.MonkeyPatch) -> list[BaseProcess]:
    """The processes that are waited for from now on."""
    waited: list[BaseProcess] = []
    join = BaseProcess.join

    def joined(process: BaseProcess, timeout: float | None = None) -> None:
        waited.append(process)
        join(process, timeout)

    monkeypatch.setattr(BaseProcess, "join", joined)
    return waited


def none_left() -> bool:
    """Whether all processes are gone, before patience is."""
    end = time.monotonic() + PATIENCE
    while multiprocessing.active_children():
        if time.monotonic() > end:
            return False
        time.sleep(0.01)
    return True


def test_nobody_waits_for_a_process_that_has_told_its_result(monkeypatch: pytest.MonkeyPatch) -> None:
    waited, plan = waited_for(monkeypatch), metric_plan()
    work = Apart(Work(svg.__name__, "drawn", (plan,)))
    end = time.monotonic() + PATIENCE
    while not isinstance(told := work.told(), Result):
        assert time.monotonic() < end
        time.sleep(0.01)
    work.end()
    assert told.value == svg.drawn(plan)
    assert waited == []
    assert none_left()


def test_nobody_waits_for_a_process_that_is_stopped(monkeypatch: pytest.MonkeyPatch) -> None:
    waited = waited_for(monkeypatch)
    work = Apart(Work(__name__, "asleep"))
    work.end()
    assert waited == []
    assert none_left()
