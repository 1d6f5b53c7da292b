"""`gardenplot dates PLAN [--json] [--workings] [--weeks] [--ics OUT.ics]`: each planting's dates, or jobs by week."""

from argparse import ArgumentParser, Namespace
from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import Any

from gardenplot.commands.numbers_shape import add_workings, print_workings, workings_shape
from gardenplot.commands.shape import add_json, add_plan, opened, print_json, print_table, write_out
from gardenplot.drawing.date_list import by_week
from gardenplot.drawing.date_words import dates_told
from gardenplot.drawing.letters import looks
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.so_many import so_many_days
from gardenplot.exports.kinds import calendar_file
from gardenplot.layout.bed import grown_of
from gardenplot.one_line import one_line
from gardenplot.plan import Plan, Planting, order_of
from gardenplot.season import dates_of, market_day
from gardenplot.words import _
from gardenplot.working import Number

_Days = dict[str, date | None]
_ALWAYS = ("sow", "harden", "set_out", "ready", "out")
_TITLES = {
    "sow": _("sow"),
    "pot_up": _("pot up"),
    "harden": _("harden from"),
    "set_out": _("set out"),
    "ready": _("ready"),
    "last": _("cut until"),
    "market": _("market"),
    "out": _("out"),
}
"""What is printed of a planting, in the order in which it comes; what is not always there only where any has it."""


def add_arguments(parser: ArgumentParser) -> None:
    """The arguments of the command."""
    add_plan(parser)
    add_json(parser)
    add_workings(parser)
    parser.add_argument("--weeks", action="store_true", help=_("print what is to be done, week by week"))
    parser.add_argument("--ics", type=Path, metavar="OUT.ics", help=_("write a calendar file, and print nothing"))


def run(arguments: Namespace) -> int:
    """Print the dates or write them; exit status 0. Raises PlanError for a calendar where no day is known."""
    plan = opened(arguments.plan)
    if arguments.ics is not None:
        write_out(arguments.plan, arguments.ics, calendar_file(plan, arguments.plan.stem))
    elif arguments.json:
        told = [_planting(plan, planting, workings=arguments.workings) for planting in plan.plantings]
        print_json({"plantings": told})
    elif arguments.weeks:
        _print_weeks(plan)
    else:
        _print(plan)
        if arguments.workings:
            _print_workings(plan)
    return 0


def _print(plan: Plan) -> None:
    look = looks(plan)
    days = {planting.id: _days(plan, planting) for planting in plan.plantings}
    shown = [name for name in _TITLES if name in _ALWAYS or any(_is_told(each, name) for each in days.values())]
    rows: list[tuple[str, ...]] = [(_("planting"), *(_TITLES[name] for name in shown))]
    for planting in plan.plantings:
        each = days[planting.id]
        told = (each[name] if name in _ALWAYS or _is_told(each, name) else None for name in shown)
        rows.append((titled(plan, planting.id, look), *(_shown(day) for day in told)))
    print_table(rows)
    for planting in plan.plantings:
        short = _short_days(_numbers(plan, planting))
        if short:
            words = _("{planting}: {days} of less than 10 h of light are left out of the count")
            print(words.format(planting=titled(plan, planting.id, look), days=so_many_days(short)))


def _short_days(numbers: Iterable[Number]) -> int:
    """The short days that were left out in counting the dates of a planting."""
    own = (number.whole or 0 if number.name == "short_days" else _short_days(number.terms) for number in numbers)
    return max(own, default=0)


def _is_told(days: _Days, name: str) -> bool:
    """Whether a day is known; a harvest of one day needs no last one."""
    return days[name] is not None and not (name == "last" and days["last"] == days["ready"])


def _print_weeks(plan: Plan) -> None:
    weeks = by_week(plan)
    if not weeks:
        print(_("no day is known in the plan"))
        return
    rows: list[tuple[str, ...]] = []
    for week in weeks:
        rows += [
            (row.day_words, row.what, row.name, row.amount_told, row.bed_name, _("done") if row.done else "")
            for row in week.rows
        ]
    widths = [max(len(one_line(row[column])) for row in rows) for column in range(len(rows[0]))]
    lines = iter(
        "  ".join(one_line(cell).ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    )
    for number, week in enumerate(weeks):
        print(("\n" if number else "") + " · ".join(part for part in (week.name, week.days, week.bench) if part))
        for _row in week.rows:
            print("  " + next(lines))


def _days(plan: Plan, planting: Planting) -> _Days:
    dates = dates_of(plan, planting)
    days: _Days = {name: getattr(dates, name) for name in (*_ALWAYS, "pot_up", "last")}
    days["market"] = market_day(order_of(plan, planting.order), planting.market) if planting.order else None
    return days


def _planting(plan: Plan, planting: Planting, *, workings: bool) -> dict[str, Any]:
    days: dict[str, Any] = {name: day.isoformat() if day else None for name, day in _days(plan, planting).items()}
    return {"id": planting.id, **days, **workings_shape(plan, _numbers(plan, planting), wanted=workings)}


def _numbers(plan: Plan, planting: Planting) -> tuple[Number, ...]:
    return tuple(dates_told(grown_of(plan, planting)).values())


def _print_workings(plan: Plan) -> None:
    """How each date came about, planting by planting."""
    look = looks(plan)
    for planting in plan.plantings:
        print(f"\n{titled(plan, planting.id, look)}")
        print_workings(plan, _numbers(plan, planting))


def _shown(day: date | None) -> str:
    return day.strftime("%a %Y-%m-%d") if day else "–"
