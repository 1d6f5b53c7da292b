"""A number with its working: how it came about and how far to trust it.

The formula that a number shows is the one that it was worked out by: there is no second way of computing it. What is
not known makes all that hangs on it not known, and a number is trusted no further than the weakest one put in.
"""

import ast
import operator
from collections.abc import Callable, Iterator, Mapping, Sequence
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor

from attrs import evolve, frozen


class Source(StrEnum):
    """Where a formula, or a number that was put in, comes from; `drawing/number_names.py` has the words."""

    NONE = ""
    RULES = "common practice"
    GEOMETRY = "geometry"
    CIRCLE = "circumference of a circle"
    ELLIPSE = "perimeter of an ellipse"
    TRIANGLE = "equilateral triangle"
    PYTHAGORAS = "right-angled triangle"
    CHORDS = "chords of a circle"
    PACKET = "packet"
    NOT_TYPED = "nothing typed"
    COUNTED = "counted on the drawing"
    MEASURED = "measured on the drawing"
    SIZE_OF_BED = "size of the bed"
    LONGEST_BED = "length of the longest bed"
    OF_PLANTING = "typed for the planting"
    OF_ORDER = "typed for the order"
    OF_WISH = "typed for the wish"
    OF_BED = "typed for the bed"
    OF_PLACE = "typed for the place"
    OF_COVER = "typed for the cover"
    OF_FEED = "typed for the feed"
    OF_JUGS = "typed for the jugs"
    OF_TRAY = "typed for the tray"
    USUAL_TRAY = "tray of the usual size"
    HALF_SPACING = "half the row spacing"
    MIDDLE_OF_BED = "middle of the bed"
    SPREAD = "spread on what can be marked"
    CAME_ABOUT = "came about"
    SUN = "sun at the place"
    NOON_SUN = "how high the sun stands at noon"
    SLOPE = "slope of the bed"
    HARDENING = "hardening off"
    EMERGENCE = "days to emerge"
    WEEK = "a week"
    COMPARED = "for comparison"
    GUESS = "a guess"
    LITRE = "weight of a litre"
    SPECIFIC_HEAT = "specific heat"
    LATENT_HEAT = "latent heat"
    HANDBOOK = "handbook"
    BRITISH_UNIT = "heat unit"
    SHOP = "sold like this"
    STORE = "counted in store"
    SHEETS = "stakes of the bed sheets"
    SEARCH_LENGTH = "least length that holds them"
    SEARCH = "found by the search"
    TRIED = "found by laying it out"
    BOUND = "proved by the bound"


RULES = Source.RULES
"""Where a rule of the trade comes from that no publication is known for."""


class Trust(StrEnum):
    """How far to trust a sum, the best first."""

    EXACT = "exact"
    GOOD = "good"
    FAIR = "fair"
    WEAK = "weak"


class Unit(StrEnum):
    """What a number counts or measures; lengths are in nm, so areas in nm² and volumes in nm³.

    A spacing is a length across the bed or between plants, told in centimetres or inches, a reading one off the
    tape; a date is the number of the day in the calendar, counted from 1 January of the year 1.
    """

    COUNT = "count"
    SHARE = "share"
    LENGTH = "length"
    SPACING = "spacing"
    READING = "tape reading"
    AREA = "area"
    VOLUME = "volume"
    BULK = "volume of what is poured"
    FLOW = "nm³ an hour"
    FLOW_PER_LENGTH = "nm³ an hour from each nm"
    PER_LENGTH = "things on each nm"
    PER_AREA = "things on each nm²"
    PER_GRAM = "things in each gram"
    GRAMS = "grams"
    GRAMS_PER_AREA = "grams on each nm²"
    GRAMS_PER_VOLUME = "grams in each nm³"
    JOULES = "joules"
    JOULES_PER_GRAM = "joules for each gram"
    HEAT_OF_WATER = "joules for each gram and kelvin"
    LOSS_OF_HEAT = "joules an hour from each nm²"
    KELVIN = "kelvin"
    HOURS = "hours"
    DAYS = "days"
    DATE = "date"
    DEGREES = "degrees"
    MONEY = "money"


class Rounding(StrEnum):
    """What is made of a number that is no whole one."""

    NONE = "none"
    UP = "up"
    DOWN = "down"


@frozen(cache_hash=True)
class Number:
    """A number, or the want of one: its value in its unit, None where something that it needs is not known.

    `name` is a word of the trade. A number that was worked out has the `formula`, whose words are the names of its
    `terms`, and `exact`, its value before the rounding. One that was put in has neither. `source` tells where the
    formula, or the number that was put in, comes from; `label` names what it is of, where there are several.
    """

    name: str
    value: Fraction | None
    unit: Unit
    formula: str = ""
    terms: tuple["Number", ...] = ()
    exact: Fraction | None = None
    rounding: Rounding = Rounding.NONE
    trust: Trust = Trust.EXACT
    source: Source = Source.NONE
    label: str = ""

    @property
    def whole(self) -> int | None:
        """The value as a whole number, for counts and lengths."""
        return None if self.value is None else round(self.value)

    def lacks(self) -> Iterator[str]:
        """The names of what was to be put in and is not known, each once."""
        if self.value is None and not self.terms:
            yield self.name
            return
        yield from dict.fromkeys(name for term in self.terms if term.value is None for name in term.lacks())


_ORDER = [*Trust]
_SIGNS = str.maketrans({"×": "*", "÷": "/", "−": "-", "^": "**", "½": "(1/2)"})
_STEPS: Mapping[type[ast.operator], Callable[[Fraction, Fraction], Fraction]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}
_ROUNDED: Mapping[Rounding, Callable[[Fraction], Fraction]] = {
    Rounding.NONE: lambda value: value,
    Rounding.UP: lambda value: Fraction(ceil(value)),
    Rounding.DOWN: lambda value: Fraction(floor(value)),
}
Function = Callable[..., Fraction]
"""A function that a formula may call by its name, of fractions."""


def known(
    name: str, value: Fraction | float | None, unit: Unit, *, trust: Trust = Trust.EXACT, source: Source = Source.NONE
) -> Number:
    """A number that is put in: typed by a person, measured, or read from a table."""
    exact = None if value is None else Fraction(str(value)) if isinstance(value, float) else Fraction(value)
    return Number(name, exact, unit, trust=trust, source=source)


def worked(
    name: str, unit: Unit, formula: str, *terms: Number, rounding: Rounding = Rounding.NONE,
    trust: Trust = Trust.EXACT, source: Source = Source.NONE, using: Mapping[str, Function] | None = None,
) -> Number:  # fmt: skip
    """A number from a formula like "planted × (1 + spare)", whose words are the names of the terms.

    `using` are functions that the formula calls by name. The number is not known where a term is not, nor where it
    would be divided by nothing.
    """
    trust = max((trust, *(term.trust for term in terms)), key=_ORDER.index)
    exact = _value(formula, terms, using or {})
    value = None if exact is None else _ROUNDED[rounding](exact)
    return Number(name, value, unit, formula, terms, exact, rounding, trust, source)


def added(
    name: str, unit: Unit, parts: Sequence[Number], source: Source = Source.NONE, *, labels: Sequence[str] = ()
) -> Number:
    """The sum of numbers of one kind, each with a label of its own, or given one; of none it is nothing."""
    terms = [
        evolve(part, name=f"{part.name}_{place}", label=label)
        for place, (part, label) in enumerate(zip(parts, labels or [part.label for part in parts], strict=True), 1)
    ]
    return worked(name, unit, " + ".join(term.name for term in terms) or "0", *terms, source=source)


def larger(one: Fraction, other: Fraction) -> Fraction:
    """The larger of two, for formulas."""
    return max(one, other)


def smaller(one: Fraction, other: Fraction) -> Fraction:
    """The smaller of two, for formulas."""
    return min(one, other)


def put_in(number: Number, *better: Number) -> Number:
    """The number with a working of their own for numbers of the same name and value that were put into it."""
    known_as = {(one.name, one.value): one for one in better}

    def put(one: Number) -> Number:
        if not one.terms:
            return evolve(known_as.get((one.name, one.value), one), label=one.label)
        return evolve(one, terms=tuple(map(put, one.terms)))

    return put(number)


def _value(formula: str, terms: tuple[Number, ...], using: Mapping[str, Function]) -> Fraction | None:
    names = {term.name: term.value for term in terms if term.value is not None}
    if len(names) < len(terms):
        return None
    try:
        return _worked_out(_tree(formula), names, using)
    except ZeroDivisionError:
        return None


def _worked_out(part: ast.expr, names: Mapping[str, Fraction], using: Mapping[str, Function]) -> Fraction:
    """The value of a part of a formula: a number, a name, a function's name with what it is given, or a step."""
    match part:
        case ast.Constant(value=int(number)):
            return Fraction(number)
        case ast.Name(id=name):
            return names[name]
        case ast.Call(func=ast.Name(id=name), args=given):
            return using[name](*(_worked_out(one, names, using) for one in given))
        case ast.BinOp(left=left, op=step, right=right):
            return _STEPS[type(step)](_worked_out(left, names, using), _worked_out(right, names, using))
        case _:
            raise ValueError(ast.unparse(part))


@lru_cache(maxsize=256)
def _tree(formula: str) -> ast.expr:
    return ast.parse(formula.translate(_SIGNS), mode="eval").body


def numbers_in(number: Number) -> Iterator[Number]:
    """A number and all that went into it, each before what it was made of."""
    yield number
    for term in number.terms:
        yield from numbers_in(term)
