"""The hand-worked scenarios as plans, and small beds put together in a few words."""

import json
from pathlib import Path

from gardenplot.layout import LaidOut, lay_out_plan
from gardenplot.plan import Plan
from gardenplot.plan.file import plan_of_text, read_plan
from tests.layout.ground import Fields

_SCENARIOS = Path(__file__).parents[1] / "scenarios"


def hand_worked(name: str) -> Plan:
    """A scenario by its name, s1 to s6."""
    return read_plan(_SCENARIOS / f"{name}.gardenplot").plan


def plan_from(place: Fields | None = None, **parts: list[Fields]) -> Plan:
    """A plan from its parts, their fields as in a plan file."""
    return plan_of_text(json.dumps({"gardenplot": 1, "place": place or {}} | parts)).plan


def only_bed(plan: Plan) -> LaidOut:
    """The one bed of a plan, laid out."""
    (laid,) = lay_out_plan(plan)
    return laid
