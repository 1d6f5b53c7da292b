"""Numbers with their workings as JSON and as printed lines."""

from typing import Any

from gardenplot.drawing.number_names import SOURCES
from gardenplot.drawing.number_words import formula_words, labelled, result_words, sum_words, working_lines
from gardenplot.plan import Plan
from gardenplot.working import Number


def working_shape(plan: Plan, number: Number) -> dict[str, Any]:
    """A number with its sum: its value is null where it is not known, and `lacks` says what it needs.

    Values are in the number's own unit: lengths in nm, areas in nm², volumes in nm³, shares as parts of one.
    """
    units, money = plan.place.units, plan.place.money
    return {
        "name": labelled(number),
        "value": None if number.value is None else float(number.value),
        "unit": str(number.unit),
        "says": result_words(number, units, money),
        "formula": formula_words(number),
        "sum": sum_words(number, units, money),
        "trust": str(number.trust),
        "source": SOURCES[number.source],
        "lacks": [*number.lacks()],
        "of": [working_shape(plan, term) for term in number.terms],
    }


def print_working(plan: Plan, number: Number) -> None:
    """Print a number and all that went into it, a line each, what went in below what came of it."""
    for line in working_lines(number, plan.place.units, plan.place.money):
        sums = " = ".join(part for part in (line.formula, line.sum, line.value) if part)
        print(f"{'  ' * (line.depth + 1)}{line.name} = {sums}  ({line.trust}; {line.source})")
