"""Trays on the bench, week by week: how many stand there, and how much room they take.

Trays stand on the bench from the day of sowing until they harden off, or are set out. A tray takes its sides outside,
those of the place's own trays where they are known, else 28 x 54 cm: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.layout import lay_out_plan
from gardenplot.layout.trays import TRAY_LENGTH, TRAY_WIDTH
from gardenplot.plan import GoodKind, Plan
from gardenplot.season import Dates, dates_of
from gardenplot.supplies.raising import raised_for
from gardenplot.working import RULES, Number, Source, Unit, added, known, worked

_WEEK = timedelta(days=7)
_MOST_WEEKS = 60
"""Nothing stands on a bench for longer; a slip in a date would fill the list."""


@frozen
class Bench:
    """What stands on the bench in a week that begins on a Monday."""

    monday: date
    trays: Number
    area: Number


@lru_cache(maxsize=16)
def bench_by_week(plan: Plan) -> tuple[Bench, ...]:
    """The weeks in which trays stand on the bench, each with all that stand there on any of its days."""
    trays: dict[date, list[Number]] = {}
    areas: dict[date, list[Number]] = {}
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            made = raised_for(one, layout)
            if made.filled is None or made.trays is None or not one.crop.tray_cells:
                continue
            label = f"{one.crop.name}, {laid.bed.name}"
            area = worked("bench", Unit.AREA, "trays × tray_area", made.filled, _tray(plan, one.crop.tray_cells))
            for monday in _weeks(dates_of(plan, one.planting)):
                trays.setdefault(monday, []).append(evolve(made.filled, label=label))
                areas.setdefault(monday, []).append(evolve(area, label=label))
    return tuple(
        Bench(
            monday, added("trays", Unit.COUNT, trays[monday], RULES), added("bench", Unit.AREA, areas[monday], RULES)
        )
        for monday in sorted(trays)
    )


def _tray(plan: Plan, cells: int) -> Number:
    own = [good for good in plan.goods if good.kind is GoodKind.TRAY and good.cells == cells]
    for good in own:
        if good.length is not None and good.width is not None:
            return known("tray_area", good.length.nm * good.width.nm, Unit.AREA, source=Source.OF_TRAY)
    return known("tray_area", TRAY_LENGTH.nm * TRAY_WIDTH.nm, Unit.AREA, source=Source.USUAL_TRAY)


def _weeks(dates: Dates) -> Iterator[date]:
    """The Mondays of the weeks in which a planting's trays stand on the bench."""
    until = dates.harden or dates.set_out
    if dates.sow is None or until is None or until <= dates.sow:
        return
    first, last = _monday(dates.sow), _monday(until - timedelta(days=1))
    for number in range(min(_MOST_WEEKS, (last - first) // _WEEK + 1)):
        yield first + number * _WEEK


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday()) if day.toordinal() > day.weekday() else date.min
