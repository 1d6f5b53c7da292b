"""`gardenplot sheet PLAN OUT.pdf [--what KIND ...] [--bed ID ...] [--paper a4 or letter]`: sheets to print."""

from argparse import ArgumentParser, Namespace
from datetime import date
from pathlib import Path

from gardenplot.commands.shape import add_plan, named_beds, opened
from gardenplot.plan.file import write_whole
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper
from gardenplot.words import _

_ALL = "all"


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT.pdf", help=_("the PDF to write"))
    parser.add_argument("--paper", type=Paper, choices=list(Paper), default=Paper.A4, help=_("a4 or letter"))
    kinds = [kind.value for kind in Kind if kind is not Kind.CHANGED]
    what = _("which sheets, the bed sheets if none is named; may be given again, or all")
    parser.add_argument("--what", action="append", choices=[*kinds, _ALL], help=what)
    parser.add_argument("--bed", action="append", metavar="ID", help=_("only this bed; may be given again"))


def run(arguments: Namespace) -> int:
    """Write the sheets; exit status 0. Raises PlanError for a bed that the plan does not have."""
    plan = opened(arguments.plan)
    choices = Choices(beds=named_beds(plan, arguments.bed))
    asked = arguments.what or [Kind.BEDS]
    kinds = [kind for kind in Kind if kind in asked or _ALL in asked]
    sheets = printed(plan, arguments.paper, kinds, choices=choices, name=arguments.plan.stem, day=date.today())
    write_whole(arguments.out, sheets.pdf)
    return 0
