"""`gardenplot check PLAN [--json] [--today YYYY-MM-DD]`: findings; exit status 1 if anything cannot be done."""

from argparse import ArgumentParser, Namespace
from datetime import date

from gardenplot.commands.shape import add_json, add_plan, opened, print_json
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, where
from gardenplot.findings import find_all
from gardenplot.gestures.days_read import date_from
from gardenplot.words import _


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)
    parser.add_argument(
        "--today", metavar="YYYY-MM-DD", help=_("the day on which the plan is looked at; without it, the real one")
    )


def run(arguments: Namespace) -> int:
    """Print the findings; exit status 1 if one of them cannot be done. Raises PlanError where today is no date."""
    today = date_from(arguments.today or "") or date.today()
    plan = opened(arguments.plan)
    look = looks(plan)
    found = find_all(plan, today)
    if arguments.json:
        print_json(
            {
                "today": today.isoformat(),
                "findings": [
                    {
                        "kind": str(finding.kind),
                        "where": where(plan, finding, look),
                        "says": says(plan, finding, look),
                        "cannot_be_done": finding.cannot_be_done,
                        "bed": finding.bed,
                        "planting": finding.planting,
                        "order": finding.order,
                    }
                    for finding in found
                ],
            }
        )
    else:
        for finding in found:
            print(
                f"{'!' if finding.cannot_be_done else '·'} {where(plan, finding, look)}: {says(plan, finding, look)}"
            )
    return 1 if any(finding.cannot_be_done for finding in found) else 0
