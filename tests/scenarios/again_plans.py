"""The plan of S5 with a market day more, and that of S6 as it came about: few seedlings, and a bed that is late."""

import json
from pathlib import Path

from attrs import evolve

from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, read_plan

SCENARIOS = Path(__file__).parent


def two_short() -> Plan:
    """Coriander that does not fit, and cabbage that is ordered for a second day and not planted for it."""
    plan = read_plan(SCENARIOS / "s5.gardenplot").plan
    cabbage, coriander = plan.orders
    return evolve(plan, orders=(evolve(cabbage, times=2, every_days=7), coriander))


def late_and_short(*, is_late: bool = True) -> Plan:
    """161 of 256 cells usable on 21 April, and the bed ten days late or not."""
    plan = json.loads((SCENARIOS / "s6.gardenplot").read_text(encoding="utf-8"))
    plan["plantings"][0]["actual"] = {"sown": "2025-04-07", "stand": 161}
    if is_late:
        plan["beds"][0]["usable_from"] = "2025-05-22"
    return plan_of_text(json.dumps(plan)).plan
