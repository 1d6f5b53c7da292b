"""`gardenplot check PLAN [--json]`: findings; exit status 1 if anything in the plan cannot be done."""

from argparse import ArgumentParser, Namespace

from gardenplot.commands.shape import add_json, add_plan, opened, print_json
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import says, where
from gardenplot.findings import find_all


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Print the findings; exit status 1 if one of them cannot be done."""
    plan = opened(arguments.plan)
    look = looks(plan)
    found = find_all(plan)
    if arguments.json:
        print_json(
            {
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
                ]
            }
        )
    else:
        for finding in found:
            print(
                f"{'!' if finding.cannot_be_done else '·'} {where(plan, finding, look)}: {says(plan, finding, look)}"
            )
    return 1 if any(finding.cannot_be_done for finding in found) else 0
