"""`gardenplot sheet PLAN OUT.pdf [--paper a4 or letter]`: the bed sheets with their stake tables."""

from argparse import ArgumentParser, Namespace
from datetime import date
from pathlib import Path

from gardenplot.commands.shape import add_plan, opened
from gardenplot.plan.file import write_whole
from gardenplot.sheets.bed_sheet import bed_sheets
from gardenplot.sheets.paper import Paper
from gardenplot.words import _


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT.pdf", help=_("the PDF to write"))
    parser.add_argument("--paper", type=Paper, choices=list(Paper), default=Paper.A4, help=_("a4 or letter"))


def run(arguments: Namespace) -> int:
    """Write the sheets; exit status 0."""
    plan = opened(arguments.plan)
    today = date.today()
    write_whole(arguments.out, bed_sheets(plan, arguments.paper, name=arguments.plan.stem, printed=today).pdf)
    return 0
