"""How many turns of looking come to so many seconds, about.

Seconds become a number of turns, so that the same call gives the same plan on every machine. A turn takes the longer
the more wishes there are for each bed, and a little for each wish: measured with 50 to 200 wishes on 1 to 40 beds, on
two busy cores.
"""

from gardenplot.plan import Plan
from gardenplot.season import market_days

_A_SECOND = 50_000
_MOST = 10_000_000
_LEAST = 5.0
"""However few wishes there are, a turn takes as long as with so many."""


def turns_in(plan: Plan, seconds: float) -> int:
    """The turns that a filling of the plan takes in so many seconds, about."""
    wanted = len(plan.wishes) + sum(len(market_days(order)) for order in plan.orders)
    weight = wanted / max(1, len(plan.beds)) + wanted / 20
    return max(1, min(round(seconds * _A_SECOND / max(weight, _LEAST)), _MOST))
