"""Ground that comes free before its time, filled with what else is wanted."""

from collections.abc import Iterator
from datetime import date

from attrs import evolve

from gardenplot.filling.claims import with_planting
from gardenplot.filling.now import fill_now
from gardenplot.filling.placed import Placed
from gardenplot.filling.rescue import Case, told
from gardenplot.filling.setbacks import Answer, AnswerKind
from gardenplot.plan import Actual, Plan


def filled(case: Case, plan: Plan, day: date) -> Iterator[Answer]:
    """The best blocks of what is wanted in the gap round the planting's block, as it is on a day.

    None where that does not reach into the block.
    """
    gap = fill_now(plan, case.layout.bed, (case.layout.start + case.layout.end) // 2, day)
    if gap is not None and any(_lies_there(case, block) for block in gap.blocks):
        yield from told(case, AnswerKind.FILL_GAP, gap.plan, filled=gap.blocks)


def _lies_there(case: Case, block: Placed) -> bool:
    return block.start < case.layout.end and case.layout.start < block.end


def filled_instead(case: Case) -> Iterator[Answer]:
    """The planting cleared today with nothing cut of it, and its ground filled with something else."""
    came = evolve(case.planting.actual or Actual(), cleared=case.today, standing=0)
    yield from filled(case, with_planting(case.plan, evolve(case.planting, actual=came)), case.today)
