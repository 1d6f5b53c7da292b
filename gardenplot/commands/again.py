"""`gardenplot again PLAN [OUT] [--take WHICH] [--sheet FILE.pdf] [--json] [--workings]`: what deviates, answers."""

import sys
from argparse import ArgumentParser, Namespace
from datetime import date
from fractions import Fraction
from pathlib import Path

from gardenplot.commands.again_json import setback_json, together_json
from gardenplot.commands.numbers_shape import add_workings, print_workings
from gardenplot.commands.shape import NO_PAPER, add_json, add_plan, asked, opened, out_beside, print_json, write_out
from gardenplot.drawing.again_numbers import numbers_of_answer, setback_numbers
from gardenplot.drawing.again_words import answer_words, done_words, moved_words, setback_words
from gardenplot.drawing.letters import keeping_letters
from gardenplot.drawing.moved_says import remarked_words
from gardenplot.drawing.together_words import together_words
from gardenplot.errors import PlanError
from gardenplot.filling.again import Setback, plan_again
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.together import Aim, Together, all_together, answer_all, by_aim, by_number
from gardenplot.gestures.days_read import date_from
from gardenplot.plan import Plan
from gardenplot.plan.file import write_plan
from gardenplot.sheets.book import NothingToPrintError
from gardenplot.sheets.choices import Choices, Kind
from gardenplot.sheets.kinds import printed
from gardenplot.sheets.paper import Paper
from gardenplot.units import parse_share
from gardenplot.words import _, ngettext


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    parser.add_argument("out", type=Path, nargs="?", metavar="OUT", help=_("the plan file to write the answers to"))
    parser.add_argument(
        "--today", metavar="YYYY-MM-DD", help=_("the day on which it is planned again; without it, the real one")
    )
    parser.add_argument(
        "--loss", metavar="SHARE", default="0 %", help=_("seedlings lost between tray and bed, for example “5 %%”")
    )
    parser.add_argument(
        "--take", metavar="WHICH",
        help=_("the answers to take, one for each setback in turn, for example “2,0,1”, 0 leaving one as it is; "
               "or “fewest marks”, “most met” or “nothing bought”"),
    )  # fmt: skip
    parser.add_argument(
        "--sheet", type=Path, metavar="FILE.pdf", help=_("a PDF of the stakes that move by the answers taken")
    )
    parser.add_argument(
        "--paper", type=asked(Paper, NO_PAPER), choices=list(Paper), default=Paper.A4, help=_("a4 or letter")
    )
    add_json(parser)
    add_workings(parser)


def run(arguments: Namespace) -> int:
    """Print what came about and the answers, take some of them; exit status 0.

    Raises PlanError where a day, a share or an answer is no good.
    """
    today = date_from(arguments.today or "") or date.today()
    loss = parse_share(arguments.loss).part
    if loss >= 1:
        raise PlanError(_("“{typed}” leaves no plant: a share below 100 % is needed").format(typed=arguments.loss))
    if arguments.take is None and (arguments.out or arguments.sheet):
        raise PlanError(_("say which answers to take, for example --take 1"))
    plan = opened(arguments.plan)
    if arguments.take is not None:
        return _take(arguments, plan, today, Fraction(loss))
    found, together = plan_again(plan, today, Fraction(loss)), all_together(plan, today, Fraction(loss))
    if arguments.json:
        whole = [together_json(plan, one, workings=arguments.workings) | {"aim": str(aim)} for aim, one in together]
        setbacks = [setback_json(plan, one, workings=arguments.workings) for one in found]
        print_json({"today": today.isoformat(), "setbacks": setbacks, "together": whole})
        return 0
    if not found:
        print(_("nothing to plan again: as far as it is recorded, all goes as planned"))
    for one in found:
        _print(plan, one)
        if arguments.workings:
            _print_workings(plan, one)
    for aim, each in together if len(found) > 1 else ():
        print(together_words(aim, each))
    return 0


def _print(plan: Plan, one: Setback) -> None:
    for line in setback_words(plan, one):
        print(line)
    for number, answer in enumerate(one.answers, start=1):
        print(f"  {number}. {answer_words(answer)}")
        for line in moved_words(answer, plan):
            print(f"     {line}")


def _print_workings(plan: Plan, one: Setback) -> None:
    """How what came about and each answer to it came about."""
    print_workings(plan, setback_numbers(plan, one))
    for answer in one.answers:
        print(f"\n{answer_words(answer)}")
        print_workings(plan, numbers_of_answer(plan, one, answer))


def _take(arguments: Namespace, plan: Plan, today: date, loss: Fraction) -> int:
    """Write the plan with the answers taken, and the sheet of what changed."""
    out = out_beside(arguments.plan, arguments.out, "again")
    by_aims = arguments.take in list(Aim)
    numbers = [] if by_aims else _numbers(arguments.take)
    found = answer_all(plan, today, loss, by_aim(Aim(arguments.take)) if by_aims else by_number(numbers))
    if len(numbers) > len(found.taken):
        count = len(found.taken)
        raise PlanError(
            ngettext(
                "{count} thing deviates, {typed} answers more", "{count} things deviate, {typed} answers more", count
            ).format(count=count, typed=arguments.take)
        )
    # Stakes and sheets are in somebody's hand by now: what was there keeps its letter.
    before, after = as_staked(plan), keeping_letters(plan, found.plan)
    no_sheet = _write_sheet(arguments, before, after)
    write_plan(out, after)
    if arguments.json:
        whole = together_json(plan, found, workings=arguments.workings)
        print_json({"today": today.isoformat(), "file": str(out)} | whole)
    else:
        _print_taken(plan, before, found, workings=arguments.workings)
        print(_("written to {path}").format(path=out))
    if no_sheet:
        print(no_sheet, file=sys.stderr)
    return 0


def _write_sheet(arguments: Namespace, before: Plan, after: Plan) -> str:
    """Write the sheet of what changed where one is asked for; says why there is none where nothing moves."""
    if arguments.sheet is None:
        return ""
    choices, name = Choices(before=before), arguments.plan.stem
    try:
        sheets = printed(after, arguments.paper, [Kind.CHANGED], choices=choices, name=name, day=date.today())
    except NothingToPrintError as error:
        return str(error)
    write_out(arguments.plan, arguments.sheet, sheets.pdf)
    return ""


def _numbers(which: str) -> list[int]:
    """Numbers of answers as typed; raises PlanError where they are none."""
    parts = [part.strip() for part in which.split(",")]
    if not all(part.isascii() and part.isdigit() and len(part) < 5 for part in parts):
        raise PlanError(_("“{typed}” says no answers: write it like 1 or 2,0,1").format(typed=which[:40]))
    return [int(part) for part in parts]


def _print_taken(plan: Plan, before: Plan, found: Together, *, workings: bool) -> None:
    now = plan
    for one in found.taken:
        for line in setback_words(now, one.setback):
            print(line)
        print(f"  → {_('left as it is') if one.answer is None else done_words(one.answer)}")
        if workings:
            print_workings(now, setback_numbers(now, one.setback))
            print_workings(now, () if one.answer is None else numbers_of_answer(now, one.setback, one.answer))
        now = now if one.answer is None else one.answer.plan
    for each in found.moved:
        print(remarked_words(before, found.plan, each))
