"""`gardenplot draw PLAN OUT`: the drawing as PNG, SVG or DXF, or the place of every plant as CSV."""

from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from importlib import import_module
from pathlib import Path

from gardenplot.commands.shape import add_plan, opened
from gardenplot.errors import FileError
from gardenplot.plan import Plan
from gardenplot.plan.file import write_whole
from gardenplot.words import _

_WRITERS = {
    ".png": "gardenplot.window.picture",
    ".svg": "gardenplot.exports.svg",
    ".dxf": "gardenplot.exports.dxf",
    ".csv": "gardenplot.exports.places",
}
"""The module that makes each kind of file, loaded when it is wanted: Qt and ezdxf are slow to load."""


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT", help=_("the file to write: .png, .svg, .dxf or .csv"))


def run(arguments: Namespace) -> int:
    """Write the drawing; exit status 0."""
    out: Path = arguments.out
    module = _WRITERS.get(out.suffix.lower())
    if module is None:
        raise FileError(_("{path}: the name must end in .png, .svg, .dxf or .csv").format(path=out))
    made: Callable[[Plan], bytes] = import_module(module).drawn
    write_whole(out, made(opened(arguments.plan)))
    return 0
