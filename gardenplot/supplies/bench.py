"""Trays on the bench, week by week: how many stand there, and how much room they take.

Trays stand on the bench from the day of sowing until they harden off, or are set out. A tray takes its sides outside,
those of the place's own trays where they are known, else 28 x 54 cm: common practice, no source.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from functools import lru_cache

from attrs import evolve, frozen

from gardenplot.layout import lay_out_plan
from gardenplot.layout.trays import TRAY_LENGTH, TRAY_WIDTH, tray_sides
from gardenplot.plan import Plan
from gardenplot.supplies.raising import raised_for
from gardenplot.supplies.sown_together import Sown, filled_together, label_together
from gardenplot.working import RULES, Number, Source, Unit, added, known, worked

_Batch = tuple[str, int, date | None, date | None]
"""What is sown together: crop, cells of a tray, the days of sowing and of leaving the bench."""
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
    batches: dict[_Batch, list[Sown]] = {}
    for laid in lay_out_plan(plan):
        for one, layout in zip(laid.grown, laid.layouts, strict=True):
            made, in_tray, days = raised_for(one, layout), one.crop.tray_cells, one.dates
            if made.to_sow is not None and made.filled is not None and made.trays is not None and in_tray:
                sown = Sown(f"{one.crop.name}, {laid.bed.name}", made.to_sow, made.filled, in_tray)
                batches.setdefault((one.crop.id, in_tray, days.sow, days.harden or days.set_out), []).append(sown)
    trays: dict[date, list[Number]] = {}
    areas: dict[date, list[Number]] = {}
    for (_crop, in_tray, sow, until), ones in batches.items():
        filled, label = filled_together(ones), label_together(ones)
        area = worked("bench", Unit.AREA, "trays × tray_area", filled, _tray(plan, in_tray))
        for monday in _weeks(sow, until):
            trays.setdefault(monday, []).append(evolve(filled, label=label))
            areas.setdefault(monday, []).append(evolve(area, label=label))
    return tuple(
        Bench(
            monday, added("trays", Unit.COUNT, trays[monday], RULES), added("bench", Unit.AREA, areas[monday], RULES)
        )
        for monday in sorted(trays)
    )


def _tray(plan: Plan, cells: int) -> Number:
    own = tray_sides(plan.goods, cells)
    if own is not None:
        return known("tray_area", own[0].nm * own[1].nm, Unit.AREA, source=Source.OF_TRAY)
    return known("tray_area", TRAY_LENGTH.nm * TRAY_WIDTH.nm, Unit.AREA, source=Source.USUAL_TRAY)


def _weeks(sow: date | None, until: date | None) -> Iterator[date]:
    """The Mondays of the weeks in which trays stand on the bench, from sowing until they leave it."""
    if sow is None or until is None or until <= sow:
        return
    first, last = _monday(sow), _monday(until - timedelta(days=1))
    for number in range(min(_MOST_WEEKS, (last - first) // _WEEK + 1)):
        yield first + number * _WEEK


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday()) if day.toordinal() > day.weekday() else date.min
