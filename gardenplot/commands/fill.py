"""`gardenplot fill PLAN OUT [--seconds N] [--json]`: a new plan with the gaps filled by the wishes."""

from argparse import ArgumentParser, Namespace
from pathlib import Path
from typing import Any

from gardenplot.commands.shape import add_json, add_plan, in_mm, opened, print_json
from gardenplot.drawing.sayings import between_readings, name_of
from gardenplot.errors import FileError
from gardenplot.filling import Filling, fill
from gardenplot.plan import Plan, bed_of
from gardenplot.plan.file import write_plan
from gardenplot.words import _

_LOOKS_A_SECOND = 400
"""Beds looked at for a wish in a second, about: seconds become a number of orders of the wishes to try, so that the
same call gives the same plan on every machine."""


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT", help=_("the plan file to write"))
    parser.add_argument("--seconds", type=float, default=12, help=_("how long to look for something better, about"))
    add_json(parser)


def run(arguments: Namespace) -> int:
    """Write the filled plan and print what was placed; exit status 0."""
    if arguments.out.exists() and arguments.out.resolve() == arguments.plan.resolve():
        raise FileError(_("{path}: the filled plan needs a name of its own").format(path=arguments.out))
    plan = opened(arguments.plan)
    looks = max(1, len(plan.wishes) * len(plan.beds))
    filling = fill(plan, orders=max(1, min(round(arguments.seconds * _LOOKS_A_SECOND / looks), 100_000)))
    write_plan(arguments.out, filling.plan)
    if arguments.json:
        print_json(_json(filling))
    else:
        _print(filling, plan)
    return 0


def _json(filling: Filling) -> dict[str, Any]:
    return {
        "worth": filling.worth,
        "bound": filling.bound,
        "proven": filling.proven,
        "placed": [
            {
                "wish": one.wish,
                "planting": one.planting,
                "bed": one.bed,
                "plants": one.plants,
                "from_mm": in_mm(one.start),
                "to_mm": in_mm(one.end),
                "in_ground": one.in_ground.isoformat() if one.in_ground else None,
                "out": one.out.isoformat() if one.out else None,
            }
            for one in filling.placed
        ],
    }


def _print(filling: Filling, plan: Plan) -> None:
    for one in filling.placed:
        readings = between_readings(plan, one.start, one.end)
        days = f"{one.in_ground} – {one.out}" if one.in_ground else _("no dates")
        print(
            f"{name_of(filling.plan, one.planting)}: {bed_of(plan, one.bed).name}, {readings}, {one.plants}, {days}"
        )
    short = len(plan.wishes) - len(filling.placed)
    if short:
        print(_("{count} wishes found no place").format(count=short))
    if filling.proven:
        print(_("worth {worth:g}: the best there is").format(worth=filling.worth))
    else:
        print(
            _("worth {worth:g}; none can be worth more than {bound:g}").format(
                worth=filling.worth, bound=filling.bound
            )
        )
