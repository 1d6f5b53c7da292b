"""Numbers with their workings as JSON and as printed lines."""

from argparse import ArgumentParser
from collections.abc import Iterable
from datetime import date
from typing import Any

from gardenplot.drawing.number_sources import SOURCES
from gardenplot.drawing.number_words import Line, formula_words, labelled, result_words, sum_words, workings_of
from gardenplot.plan import Plan
from gardenplot.words import _
from gardenplot.working import Number, Unit


def working_shape(plan: Plan, number: Number) -> dict[str, Any]:
    """A number with its sum: its value is null where it is not known, and `lacks` says what it needs.

    Values are in the number's own unit: lengths in nm, areas in nm², volumes in nm³, shares as parts of one,
    dates as ISO 8601 has them.
    """
    units, money = plan.place.units, plan.place.money
    return {
        "name": labelled(number),
        "value": _value(number),
        "unit": str(number.unit),
        "says": result_words(number, units, money),
        "formula": formula_words(number),
        "sum": sum_words(number, units, money),
        "trust": str(number.trust),
        "source": SOURCES[number.source],
        "lacks": [*number.lacks()],
        "of": [working_shape(plan, term) for term in number.terms],
    }


def _value(number: Number) -> float | str | None:
    if number.value is None:
        return None
    if number.unit is Unit.DATE:
        return date.fromordinal(int(number.value)).isoformat()
    return float(number.value)


def workings_shape(plan: Plan, numbers: Iterable[Number], *, wanted: bool) -> dict[str, Any]:
    """The field with numbers and their sums, where they are wanted."""
    return {"workings": [working_shape(plan, number) for number in numbers]} if wanted else {}


def add_workings(parser: ArgumentParser) -> None:
    """The argument that asks how each number came about."""
    parser.add_argument("--workings", action="store_true", help=_("print how each number came about"))


def print_workings(plan: Plan, numbers: Iterable[Number]) -> None:
    """Print numbers and all that went into them, each once."""
    for line in workings_of(numbers, plan.place.units, plan.place.money):
        _print_line(line)


def print_working(plan: Plan, number: Number) -> None:
    """Print a number and all that went into it, a line each, what went in below what came of it."""
    print_workings(plan, (number,))


def _print_line(line: Line) -> None:
    sums = " = ".join(part for part in (line.formula, line.sum, line.value) if part)
    print(f"{'  ' * (line.depth + 1)}{line.name} = {sums}  ({line.trust}; {line.source})")
