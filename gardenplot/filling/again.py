"""Planning again: what came about is set against what was planned, and the answers stand side by side.

All that deviates is looked for in the plan as it now is, so what was answered before is the ground for the next
answer. What is in the ground is not changed.
"""

from datetime import date
from fractions import Fraction

from gardenplot.filling.again_ground import ground_setbacks
from gardenplot.filling.again_ordered import ordered_setbacks
from gardenplot.filling.again_raised import raised_setbacks
from gardenplot.filling.again_stand import stand_setbacks
from gardenplot.filling.setbacks import Answer, AnswerKind, Ground, Setback, Sowing, Spread, Why
from gardenplot.plan import Plan

__all__ = ["Answer", "AnswerKind", "Ground", "Setback", "Sowing", "Spread", "Why", "plan_again"]

_WHYS = list(Why)


def plan_again(plan: Plan, today: date, loss: Fraction = Fraction(0)) -> tuple[Setback, ...]:
    """What deviates of each planting, in the plan's order, with its answers, the smallest change first.

    `loss` is the share of seedlings that are lost between tray and bed.
    """
    rank = {one.id: number for number, one in enumerate(plan.plantings)}
    found = [
        *raised_setbacks(plan, today, loss),
        *stand_setbacks(plan, today, loss),
        *ground_setbacks(plan, today, loss),
        *ordered_setbacks(plan, today, loss),
    ]
    return tuple(sorted(found, key=lambda one: (rank[one.planting], _WHYS.index(one.why))))
