"""`gardenplot sheet PLAN OUT.pdf [--what KIND]... [--bed ID]... [--label SIZE] [--paper ...]`: sheets to print."""

from argparse import ArgumentParser, ArgumentTypeError, Namespace
from datetime import date
from functools import partial
from pathlib import Path

from gardenplot.commands.shape import NO_PAPER, add_plan, asked, named_beds, opened, write_out
from gardenplot.errors import LengthError
from gardenplot.sheets.choices import Choices, Kind, Labelled
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.label_sizes import LABEL_SIZES, STAKES, label_size
from gardenplot.sheets.paper import Paper
from gardenplot.units import Length, parse_length
from gardenplot.words import _

_ALL = "all"
_SMALLEST = 10_000
_MOST_LABELS = 1_000
_RATIO = _("a scale is 1 to a number from 1 to 10000, and not “{typed}”")
_LABEL = _("labels of a sheet are counted from 1, and not “{typed}”")


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, metavar="OUT.pdf", help=_("the PDF to write"))
    parser.add_argument(
        "--paper", type=asked(Paper, NO_PAPER), choices=list(Paper), default=Paper.A4, help=_("a4 or letter")
    )
    kinds = [kind.value for kind in Kind if kind is not Kind.CHANGED]
    what = _("which sheets, the bed sheets if none is named; may be given again, or all")
    parser.add_argument("--what", action="append", choices=[*kinds, _ALL], help=what)
    parser.add_argument(
        "--scale",
        type=asked(partial(_up_to, _SMALLEST), _RATIO),
        metavar="N",
        help=_("the drawing at 1 to N, over as many pages as needed"),
    )
    beside = _("strings that far beside the rows on the bed sheets, as 5 cm")
    parser.add_argument("--string", type=_length, metavar="LENGTH", help=beside)
    board = _("how long a board is that spacing strips are for: 1.2 m or 4 ft where none is named")
    parser.add_argument("--board", type=_length, metavar="LENGTH", help=board)
    parser.add_argument("--bed", action="append", metavar="ID", help=_("only this bed; may be given again"))
    size = _("size of labels: {sizes}; or width x height, columns x rows on A4 or Letter")
    sizes = "; ".join(one.name for one in LABEL_SIZES)
    parser.add_argument("--label", metavar="SIZE", default=STAKES.name, help=size.format(sizes=sizes))
    begun = _("first free label on a sheet that was begun")
    parser.add_argument(
        "--labels-from", type=asked(partial(_up_to, _MOST_LABELS), _LABEL), metavar="N", default=1, help=begun
    )
    labelled = _("labels for blocks, for trays, or both")
    parser.add_argument("--labelled", type=Labelled, choices=list(Labelled), default=Labelled.BOTH, help=labelled)
    slip = _("where a sheet of labels has no margin, leave out the label that says of which plan it is")
    parser.add_argument("--no-slip", dest="slip", action="store_false", help=slip)


def _up_to(most: int, text: str) -> int:
    """A whole number from 1 on."""
    number = int(text)
    if not 1 <= number <= most:
        raise ValueError(text)
    return number


def _length(text: str) -> Length:
    """A length of no less than nothing."""
    try:
        length = parse_length(text)
    except LengthError as error:
        raise ArgumentTypeError(str(error)) from error
    if length.nm < 0:
        raise ArgumentTypeError(_("a string stands beside the rows by a length, not by less than nothing"))
    return length


def run(arguments: Namespace) -> int:
    """Write the sheets; exit status 0. Raises PlanError for an unknown bed, and for labels that do not fit."""
    plan = opened(arguments.plan)
    string = arguments.string.nm if arguments.string is not None else 0
    board = arguments.board.nm if arguments.board is not None else None
    choices = Choices(
        beds=named_beds(plan, arguments.bed), scale=arguments.scale, string=string, board=board,
        label=label_size(arguments.label), labels_from=arguments.labels_from, labelled=arguments.labelled,
        slip=arguments.slip,
    )  # fmt: skip
    asked = arguments.what or [Kind.BEDS]
    kinds = [kind for kind in Kind if kind in asked or _ALL in asked]
    sheets = printed(plan, arguments.paper, kinds, choices=choices, name=arguments.plan.stem, day=date.today())
    write_out(arguments.plan, arguments.out, sheets.pdf)
    return 0
