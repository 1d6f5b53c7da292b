"""Where the hand is drawn to in time: days on which ground is free or needed, the day shown, the market day."""

from collections.abc import Collection, Iterable, Iterator
from datetime import date, timedelta
from enum import StrEnum

from attrs import frozen

from gardenplot.layout import lay_out_bed
from gardenplot.plan import Plan, bed_of


class DayPull(StrEnum):
    """What a day is drawn to."""

    FREE = "the ground falls free"
    NEEDED = "another needs the ground"
    SHOWN = "the day shown"
    MARKET = "counted back from its market"
    FOLLOWS = "follows from the crop"
    KEPT = "as it was"
    DAY = "a day"


@frozen
class DaySnap:
    """A day and what drew the hand there, where it is another planting: that one."""

    on: date
    pull: DayPull
    planting: str | None = None


def snap_day(day: date, candidates: Iterable[DaySnap], reach: int, *, free: bool = False) -> DaySnap:
    """The nearest candidate within so many days of a day, the first of those that are as near; else that day."""
    near = [] if free else [one for one in candidates if abs((one.on - day).days) <= reach]
    return min(near, key=lambda one: abs((one.on - day).days), default=DaySnap(day, DayPull.DAY))


def turns_of(plan: Plan, bed: str, start: int, end: int, without: Collection[str] = ()) -> Iterator[DaySnap]:
    """The days on which ground of a bed between two tape readings in nm is taken, and on which it is free again.

    Some plantings do not count.
    """
    laid = lay_out_bed(plan, bed_of(plan, bed))
    for one, layout in zip(laid.grown, laid.layouts, strict=True):
        if layout.planting in without or layout.start >= end or layout.end <= start:
            continue
        if one.dates.out is not None:
            yield DaySnap(one.dates.out, DayPull.FREE, layout.planting)
        if one.dates.in_ground is not None:
            yield DaySnap(one.dates.in_ground, DayPull.NEEDED, layout.planting)


def moved(day: date, days: int) -> date:
    """A day so many days later, no further than the calendar goes."""
    try:
        return day + timedelta(days=days)
    except OverflowError:
        return date.max if days > 0 else date.min
