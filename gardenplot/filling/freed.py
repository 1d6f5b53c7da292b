"""Ground that comes free before its time, filled with what else is wanted."""

from collections.abc import Iterator
from datetime import date, timedelta

from attrs import evolve

from gardenplot.filling.claims import with_planting, without_planting
from gardenplot.filling.now import fill_now
from gardenplot.filling.placed import Placed
from gardenplot.filling.rescue import Case, told
from gardenplot.filling.setbacks import Answer, AnswerKind
from gardenplot.plan import Actual, Establish, Plan, crop_of, planting_of
from gardenplot.plan.value import CAME


def filled(case: Case, plan: Plan, day: date) -> Iterator[Answer]:
    """The best blocks of what is wanted in the gap round the planting's block, as it is on a day.

    Without what would have to be raised first; none where that does not reach into the block.
    """
    gap = fill_now(plan, case.layout.bed, (case.layout.start + case.layout.end) // 2, day)
    if gap is None:
        return
    after, blocks = gap.plan, tuple(one for one in gap.blocks if _can_be(case, gap.plan, one))
    for one in gap.blocks:
        after = after if one in blocks else without_planting(after, one.planting)
    if any(one.start < case.layout.end and case.layout.start < one.end for one in blocks):
        yield from told(case, AnswerKind.FILL_GAP, after, filled=blocks)


def _can_be(case: Case, plan: Plan, one: Placed) -> bool:
    """Whether there is time to raise it."""
    crop = crop_of(plan, planting_of(plan, one.planting).crop)
    if crop.establish is Establish.DIRECT or one.in_ground is None:
        return True
    return crop.raising_days is None or one.in_ground >= case.today + timedelta(days=crop.raising_days)


def filled_instead(case: Case) -> Iterator[Answer]:
    """The planting cleared today with nothing cut of it, and its ground filled with something else.

    None where it is cleared already, or something of it is recorded for a later day.
    """
    came = case.planting.actual or Actual()
    days = [day for name in CAME if (day := getattr(came, name)) is not None]
    if came.cleared is not None or any(day > case.today for day in days):
        return
    gone = evolve(came, cleared=case.today, standing=0)
    yield from filled(case, with_planting(case.plan, evolve(case.planting, actual=gone)), case.today)
