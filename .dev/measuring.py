"""Timing in turns with all caches empty, and the rows of the table in which times are set against their floors."""

import gc
import sys
from collections.abc import Callable
from time import perf_counter

from attrs import frozen

from gardenplot.plan import Plan


@frozen
class Line:
    """One row of the table, and whether it meets its goal."""

    name: str
    time: str
    floor: str
    ratio: str
    goal: str
    met: bool


@frozen
class Runner:
    """Something to time: what makes it ready, untimed, and the run itself on what that gave."""

    ready: Callable[[], Plan]
    run: Callable[[Plan], object]


def bare(run: Callable[[], object]) -> Runner:
    """A runner that needs no plan."""
    return Runner(Plan, lambda _plan: run())


def race(turns: int, *runners: Runner) -> list[float]:
    """The best time of each in seconds; they take turns, so that a busy machine is busy for all."""
    best = [float("inf")] * len(runners)
    gc.disable()
    try:
        for _turn in range(turns):
            for number, runner in enumerate(runners):
                best[number] = min(best[number], timed(runner))
    finally:
        gc.enable()
    return best


def timed(runner: Runner) -> float:
    """Seconds of one run with nothing remembered from before."""
    plan = runner.ready()
    forget()
    begin = perf_counter()
    kept = runner.run(plan)
    took = perf_counter() - begin
    del kept
    return took


def forget() -> None:
    """Empty every cache of the program."""
    modules = [module for name, module in sys.modules.items() if name.partition(".")[0] == "gardenplot"]
    for member in (member for module in modules for member in vars(module).values()):
        if callable(clear := getattr(member, "cache_clear", None)):
            clear()


def clock(seconds: float) -> str:
    """A time in ms, or in µs where that reads better."""
    return f"{seconds * 1e3:,.2f} ms" if seconds >= 1e-4 else f"{seconds * 1e6:.1f} µs"


def against(name: str, ours: float, floor: float, most: float) -> Line:
    """A row that may take so many times its floor."""
    return Line(name, clock(ours), clock(floor), f"{ours / floor:.2f}", f"<= {most:g}", ours <= most * floor)


def within(name: str, ours: float, most: float, floor: float | None = None) -> Line:
    """A row that may take so many seconds on the reference machine, whatever its floor."""
    beside = (clock(floor), f"{ours / floor:.2f}") if floor is not None else ("", "")
    return Line(name, clock(ours), *beside, f"<= {clock(most)}", ours <= most)


def faster(name: str, ours: float, slow: float, least: float) -> Line:
    """A row that must be so many times as fast as something plain."""
    return Line(name, clock(ours), clock(slow), f"1/{slow / ours:.0f}", f"<= 1/{least:g}", slow >= least * ours)


def best_of(
    turns: int,
    run: Callable[[], object],
    before: Callable[[], object] | None = None,
    now: Callable[[], float] = perf_counter,
) -> float:
    """The best time of one thing in seconds, perhaps after something untimed each turn."""
    best = float("inf")
    for _turn in range(turns):
        if before is not None:
            before()
        begin = now()
        run()
        best = min(best, now() - begin)
    return best
