"""Days from sowing to emerging by the temperature of the soil, from the published table.

The table is Harrington and Minges, Vegetable Seed Germination, University of California Agricultural Extension 1954,
read in the copies that `resources/crops/sources.json` names under HM1954. Between two of its temperatures days are
interpolated in a straight line; beyond them, and where the table has no figure or says that next to nothing emerges,
nothing is claimed.
"""

import csv
from difflib import SequenceMatcher
from fractions import Fraction
from functools import cache

from attrs import frozen

from gardenplot.files import resource
from gardenplot.units import Temperature

_NONE = "NG"
"""How the table writes that next to nothing emerges."""
_LIKE, _LIKE_WORD, _MOST_NAMES = 0.6, 0.85, 3


@frozen
class Emergence:
    """Days from sowing to emerging, between two columns of the table: (degrees Fahrenheit, days) of each."""

    days: Fraction
    cooler: tuple[int, int]
    warmer: tuple[int, int]


@frozen
class NotInTable:
    """Why the table does not tell: it has no such crop, or none for such soil but from one temperature to another.

    `none_at` is the nearest temperature beyond these, on the side of the soil, for which it says that next to nothing
    emerges; all in degrees Fahrenheit. None where it has no such.
    """

    coldest: int | None = None
    warmest: int | None = None
    none_at: int | None = None


def emergence(crop: str | None, soil: Temperature) -> Emergence | NotInTable:
    """Days to emerge for a crop of the table, by its name there, in soil of some temperature."""
    known = emergence_table().get(crop or "")
    if not known:
        return NotInTable()
    cool = max((degrees for degrees in known if degrees <= soil.fahrenheit), default=None)
    warm = min((degrees for degrees in known if degrees >= soil.fahrenheit), default=None)
    if cool is None or warm is None:
        coldest, warmest = min(known), max(known)
        return NotInTable(coldest, warmest, _none_beyond(crop or "", coldest, warmest, is_cold=cool is None))
    along = (soil.fahrenheit - cool) / (warm - cool) if warm > cool else Fraction(0)
    days = known[cool] + (known[warm] - known[cool]) * along
    return Emergence(days, (cool, known[cool]), (warm, known[warm]))


def _none_beyond(crop: str, coldest: int, warmest: int, *, is_cold: bool) -> int | None:
    none_at = [degrees for degrees, cell in _cells()[crop].items() if cell == _NONE]
    if is_cold:
        return max((degrees for degrees in none_at if degrees < coldest), default=None)
    return min((degrees for degrees in none_at if degrees > warmest), default=None)


def nearest_names(name: str) -> tuple[str, ...]:
    """The names of the table that are most like another one, the likest first, at most three; none where none is.

    Capitals and the order of words count for nothing, and one word in both is enough: "Leaf beet" is like "Beets".
    How like is like enough is a choice of this program.
    """
    likeness = {each: _likeness(name, each) for each in emergence_table()}
    near = [each for each, (like, _whole) in likeness.items() if like >= _LIKE]
    return tuple(sorted(near, key=lambda each: likeness[each], reverse=True)[:_MOST_NAMES])


def _likeness(name: str, other: str) -> tuple[float, float]:
    """How like two names are as a whole or, if that is more, the two words of them most alike; and as a whole."""
    mine, others = _words(name), _words(other)
    word = max((_alike(one, each) for one in mine for each in others), default=0.0)
    whole = _alike(" ".join(mine), " ".join(others))
    return max(whole, word if word >= _LIKE_WORD else 0.0), whole


def _alike(one: str, other: str) -> float:
    return SequenceMatcher(None, one, other).ratio()


def _words(name: str) -> list[str]:
    return sorted(name.casefold().replace(",", " ").split())


@cache
def emergence_table() -> dict[str, dict[int, int]]:
    """Days by degrees Fahrenheit for each vegetable, where the table has days."""
    return {
        vegetable: {degrees: int(cell) for degrees, cell in cells.items() if cell.isdigit()}
        for vegetable, cells in _cells().items()
    }


@cache
def _cells() -> dict[str, dict[int, str]]:
    """What is printed for each vegetable, by degrees Fahrenheit."""
    text = resource("crops/tables/emergence_days.csv").read_text(encoding="utf-8")
    return {
        row["vegetable"]: {
            int(name.removeprefix("days_").removesuffix("F")): cell
            for name, cell in row.items()
            if name.startswith("days_")
        }
        for row in csv.DictReader(text.splitlines())
    }
