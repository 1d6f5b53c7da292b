"""Planning again: what came about is set against what was planned, and the answers stand side by side.

All that deviates is looked for in the plan as it now is, so what was answered before is the ground for the next
answer. What is in the ground is not changed.
"""

from datetime import date
from fractions import Fraction
from functools import lru_cache

from gardenplot.filling.again_ground import ground_setbacks
from gardenplot.filling.again_ordered import ordered_setbacks
from gardenplot.filling.again_raised import raised_setbacks
from gardenplot.filling.again_stand import stand_setbacks
from gardenplot.filling.rescue import Ask
from gardenplot.filling.setbacks import Answer, AnswerKind, Ground, Setback, Sowing, Spread, Why
from gardenplot.plan import Plan

__all__ = ["Answer", "AnswerKind", "Ground", "Setback", "Sowing", "Spread", "Why", "plan_again"]

_WHYS = list(Why)


@lru_cache(maxsize=16)
def plan_again(
    plan: Plan, today: date, loss: Fraction = Fraction(0), only: frozenset[str] | None = None
) -> tuple[Setback, ...]:
    """What deviates of each planting, in the plan's order, with its answers, the smallest change first.

    `loss` is the share of seedlings that are lost between tray and bed; `only` are the plantings that are asked of,
    without which all are.
    """
    rank = {one.id: number for number, one in enumerate(plan.plantings)}
    ask = Ask(plan, today, loss, rank.keys() if only is None else only)
    found = [*raised_setbacks(ask), *stand_setbacks(ask), *ground_setbacks(ask), *ordered_setbacks(ask)]
    return tuple(sorted(found, key=lambda one: (rank[one.planting], _WHYS.index(one.why))))
