"""`gardenplot dates PLAN [--json]`: the dates of each planting."""

from argparse import ArgumentParser, Namespace
from datetime import date
from typing import Any

from gardenplot.commands.shape import add_json, add_plan, opened, print_json, print_table
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.plan import Plan, Planting
from gardenplot.season import dates_of
from gardenplot.words import _

_NAMES = ("sow", "harden", "set_out", "ready", "out")


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Print the dates; exit status 0."""
    plan = opened(arguments.plan)
    if arguments.json:
        print_json({"plantings": [_planting(plan, planting) for planting in plan.plantings]})
        return 0
    look = looks(plan)
    rows: list[tuple[str, ...]] = [(_("planting"), _("sow"), _("harden from"), _("set out"), _("ready"), _("out"))]
    for planting in plan.plantings:
        days = _days(plan, planting)
        rows.append((titled(plan, planting.id, look), *(_shown(days[name]) for name in _NAMES)))
    print_table(rows)
    return 0


def _days(plan: Plan, planting: Planting) -> dict[str, date | None]:
    dates = dates_of(plan, planting)
    return {name: getattr(dates, name) for name in _NAMES}


def _planting(plan: Plan, planting: Planting) -> dict[str, Any]:
    days = {name: day.isoformat() if day else None for name, day in _days(plan, planting).items()}
    return {"id": planting.id, **days}


def _shown(day: date | None) -> str:
    return day.strftime("%a %Y-%m-%d") if day else "–"
