"""When what is not in the ground yet can go in: on no day that is past, and not before its bed can be used."""

from datetime import date, timedelta

from attrs import evolve

from gardenplot.plan import Establish, Plan, Planting, bed_of, crop_of
from gardenplot.plan.in_ground import is_in_ground
from gardenplot.season import dates_of


def in_ground_on(one: Planting, day: date, late: int) -> Planting:
    """A planting that goes in on a day, so many days later than it was to; a typed day of its end moves along."""
    out = one.out + timedelta(days=late) if one.out else None
    return evolve(one, in_ground=day, ready=None, out=out)


def begun_by(plan: Plan, one: Planting, today: date, least: date | None = None) -> Planting:
    """A planting on the first day from its own on that is not past and on which its bed can be used.

    `least` is a day before which it cannot go in either. One that is in the ground, or has no day, stays as it is.
    What was sown by then was sown on its day, though nobody wrote that down.
    """
    was = dates_of(plan, one)
    if was.in_ground is None or is_in_ground(one):
        return one
    first = max(was.in_ground, today, bed_of(plan, one.bed).usable_from or date.min, least or date.min)
    if first == was.in_ground:
        return one
    there = in_ground_on(one, first, (first - was.in_ground).days)
    sow = dates_of(plan, there).sow
    if crop_of(plan, one.crop).establish is Establish.DIRECT or sow is None or sow == was.sow:
        return there
    return evolve(there, sow=was.sow) if sow < today or one.actual is not None else there
