"""`gardenplot draw PLAN OUT`: the drawing as PNG, SVG or DXF, or the place of every plant as CSV."""

from argparse import ArgumentParser, Namespace
from pathlib import Path

from gardenplot.commands.shape import add_plan, opened, write_out
from gardenplot.exports.kinds import writer_for
from gardenplot.words import _


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT", help=_("the file to write: .png, .svg, .dxf or .csv"))


def run(arguments: Namespace) -> int:
    """Write the drawing; exit status 0."""
    writer = writer_for(arguments.out)
    write_out(arguments.plan, arguments.out, writer(opened(arguments.plan)))
    return 0
