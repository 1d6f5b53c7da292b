"""Days from sowing to emerging by the temperature of the soil, from the published table.

The table is Harrington and Minges, Vegetable Seed Germination, University of California Agricultural Extension 1954,
read in the copies that `resources/crops/sources.json` names under HM1954. Between two of its temperatures days are
interpolated in a straight line; beyond them, and where the table has no figure or says that next to nothing emerges,
nothing is claimed.
"""

import csv
from fractions import Fraction
from functools import cache

from attrs import frozen

from gardenplot.files import resource
from gardenplot.units import Temperature


@frozen
class Emergence:
    """Days from sowing to emerging, between two columns of the table: (degrees Fahrenheit, days) of each."""

    days: Fraction
    cooler: tuple[int, int]
    warmer: tuple[int, int]


@frozen
class NotInTable:
    """Why the table does not tell: it has no such crop, or none for such soil but from one temperature to another."""

    coldest: int | None = None
    warmest: int | None = None


def emergence(crop: str | None, soil: Temperature) -> Emergence | NotInTable:
    """Days to emerge for a crop of the table, by its name there, in soil of some temperature."""
    known = emergence_table().get(crop or "")
    if not known:
        return NotInTable()
    cool = max((degrees for degrees in known if degrees <= soil.fahrenheit), default=None)
    warm = min((degrees for degrees in known if degrees >= soil.fahrenheit), default=None)
    if cool is None or warm is None:
        return NotInTable(min(known), max(known))
    along = (soil.fahrenheit - cool) / (warm - cool) if warm > cool else Fraction(0)
    days = known[cool] + (known[warm] - known[cool]) * along
    return Emergence(days, (cool, known[cool]), (warm, known[warm]))


@cache
def emergence_table() -> dict[str, dict[int, int]]:
    """Days by degrees Fahrenheit for each vegetable, where the table has days."""
    text = resource("crops/tables/emergence_days.csv").read_text(encoding="utf-8")
    return {
        row["vegetable"]: {
            int(name.removeprefix("days_").removesuffix("F")): int(cell)
            for name, cell in row.items()
            if name.startswith("days_") and cell.isdigit()
        }
        for row in csv.DictReader(text.splitlines())
    }
