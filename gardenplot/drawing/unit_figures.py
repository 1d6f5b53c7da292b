"""Values of every unit as a person reads them, in the plan's units, each rounded once from its exact value."""

from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from gardenplot.drawing.days import day_words
from gardenplot.units import BTU, CM, FOOT, GALLON, INCH, LITRE, POUND, M, Units
from gardenplot.units.figures import MINUS, THIN, grouped, is_long, offset, rounded, span, tape
from gardenplot.words import ngettext
from gardenplot.working import Unit


class Shown(NamedTuple):
    """How a unit is shown from so much on: what one of what is shown is, the most decimals, and its sign."""

    size: Fraction
    decimals: int
    sign: str
    since: Fraction = Fraction(0)


def _shown(size: Fraction | float, decimals: int, sign: str, since: float = 0) -> Shown:
    size = Fraction(str(size)) if isinstance(size, float) else Fraction(size)
    return Shown(size, decimals, sign, size * Fraction(str(since)))


_PER = Fraction(1)
_LENGTHS = (Unit.LENGTH, Unit.SPACING, Unit.READING)
_WHOLE_FROM = 100
"""From so many of what is shown on a figure has no decimals."""
_METRIC: Mapping[Unit, tuple[Shown, ...]] = {
    Unit.SHARE: (_shown(Fraction(1, 100), 1, "%"),),
    Unit.AREA: (_shown(M**2, 2, "m²"),),
    Unit.VOLUME: (_shown(LITRE, 1, "l"), _shown(1000 * LITRE, 1, "m³", 10)),
    Unit.BULK: (_shown(LITRE, 1, "l"), _shown(1000 * LITRE, 2, "m³", 1)),
    Unit.FLOW: (_shown(LITRE, 1, "l/h"),),
    Unit.FLOW_PER_LENGTH: (_shown(_PER * LITRE / M, 1, "l/h / m"),),
    Unit.PER_LENGTH: (_shown(_PER / M, 1, "/ m"),),
    Unit.PER_AREA: (_shown(_PER / M**2, 1, "/ m²"),),
    Unit.PER_GRAM: (_shown(1, 1, "/ g"),),
    Unit.GRAMS: (_shown(1, 1, "g"), _shown(1000, 2, "kg", 1)),
    Unit.GRAMS_PER_AREA: (_shown(_PER / M**2, 1, "g / m²"),),
    Unit.GRAMS_PER_VOLUME: (_shown(Fraction(1000) / LITRE, 3, "kg / l"),),
    Unit.JOULES: (_shown(3600, 0, "Wh"), _shown(3_600_000, 1, "kWh", 10)),
    Unit.JOULES_PER_GRAM: (_shown(1, 1, "kJ / kg"),),
    Unit.HEAT_OF_WATER: (_shown(1, 2, "kJ / kg K"),),
    Unit.LOSS_OF_HEAT: (_shown(Fraction(3600, M**2), 0, "W / m²"),),
    Unit.KELVIN: (_shown(1, 1, "°C"),),
    Unit.DEGREES: (_shown(1, 1, "°"),),
    Unit.HOURS: (_shown(Fraction(1, 60), 0, "min"), _shown(1, 1, "h", 1)),
}
_FEET: Mapping[Unit, tuple[Shown, ...]] = {
    **_METRIC,
    Unit.AREA: (_shown(FOOT**2, 1, "sq ft"),),
    Unit.VOLUME: (_shown(GALLON, 1, "gal"),),
    Unit.BULK: (_shown(FOOT**3, 1, "cu ft"), _shown(27 * FOOT**3, 2, "cu yd", 1)),
    Unit.FLOW: (_shown(GALLON, 1, "gal/h"),),
    Unit.FLOW_PER_LENGTH: (_shown(_PER * GALLON / (100 * FOOT), 1, "gal/h / 100 ft"),),
    Unit.PER_LENGTH: (_shown(_PER / FOOT, 1, "/ ft"),),
    Unit.PER_AREA: (_shown(_PER / FOOT**2, 1, "/ sq ft"),),
    Unit.GRAMS: (_shown(1, 1, "g"), _shown(POUND, 1, "lb", 1)),
    Unit.GRAMS_PER_AREA: (_shown(POUND / (1000 * FOOT**2), 1, "lb / 1000 sq ft"),),
    Unit.GRAMS_PER_VOLUME: (_shown(POUND / GALLON, 3, "lb / gal"),),
    Unit.JOULES: (_shown(BTU, 0, "Btu"),),
    Unit.JOULES_PER_GRAM: (_shown(BTU / POUND, 1, "Btu / lb"),),
    Unit.HEAT_OF_WATER: (_shown(BTU / POUND * Fraction(9, 5), 2, "Btu / lb °F"),),
    Unit.LOSS_OF_HEAT: (_shown(BTU / FOOT**2, 0, "Btu / sq ft h"),),
    Unit.KELVIN: (_shown(Fraction(5, 9), 1, "°F"),),
}
"""Feet have grams for seed: packets tell seeds in a gram or an ounce, and half an ounce is 14.2 g."""


def figure(value: Fraction, unit: Unit, units: Units, money: str = "", *, finer: int = 0) -> str:
    """A value in the plan's units: "157", "14.6 m", "832 Btu", "€ 12.50"; in up to two steps `finer` than usual."""
    match unit:
        case Unit.COUNT:
            return grouped(int(value)) if value.denominator == 1 else trimmed(value, 2 + finer, whole_from=None)
        case Unit.LENGTH:
            return str(span(rounded(value), units, finer=finer))
        case Unit.SPACING:
            return str(offset(rounded(value), units, finer=finer))
        case Unit.READING:
            return str(tape(rounded(value), units, finer=finer))
        case Unit.DATE:
            return day_words(date.fromordinal(rounded(value)))
        case Unit.MONEY:
            return f"{money}{THIN if money else ''}{placed(value, 2 + finer)}"
        case Unit.DAYS:
            days = trimmed(value, 1 + finer, whole_from=_whole_from(finer))
            return ngettext("{count} day", "{count} days", int(value)).format(count=days)
        case _:
            shown = shown_as(value, unit, units)
            figures = trimmed(value / shown.size, shown.decimals + finer, whole_from=_whole_from(finer))
            return f"{figures}{THIN}{shown.sign}"


def followed(value: Fraction, unit: Unit, units: Units, money: str = "") -> str:
    """A value as it stands in a sum, to be followed with a pencil: all of it, with "≈" before it where it is rounded.

    It is no finer than `figure` where that tells all of it, else up to two steps; a rounded length goes to the mm.
    """
    whole = next((finer for finer in range(3) if _tells_all(value, unit, units, finer)), None)
    most = 1 if unit in _LENGTHS else 2
    told = figure(value, unit, units, money, finer=most if whole is None else whole)
    return f"≈{THIN}{told}" if whole is None else told


def _tells_all(value: Fraction, unit: Unit, units: Units, finer: int) -> bool:
    """Whether nothing of a value is rounded away; of lengths nothing that is a nanometre or more."""
    if unit in _LENGTHS:
        value = Fraction(rounded(value))
    grain = _grain(value, unit, units, finer)
    return value.numerator * grain.denominator % (value.denominator * grain.numerator) == 0


def _grain(value: Fraction, unit: Unit, units: Units, finer: int) -> Fraction:
    """The least that a figure tells."""
    match unit:
        case Unit.DATE:
            return Fraction(1)
        case Unit.COUNT | Unit.MONEY:
            return Fraction(1, 10 ** (2 + finer))
        case Unit.LENGTH | Unit.SPACING | Unit.READING:
            is_tape = unit is Unit.READING or (unit is Unit.LENGTH and is_long(rounded(value), units))
            return _length_grain(units, finer, is_tape=is_tape)
        case Unit.DAYS:
            size, decimals = Fraction(1), 1
        case _:
            shown = shown_as(value, unit, units)
            size, decimals = shown.size, shown.decimals
    is_whole = not finer and abs(value / size) >= _WHOLE_FROM
    return size if is_whole else size / 10 ** (decimals + finer)


def _length_grain(units: Units, finer: int, *, is_tape: bool) -> Fraction:
    match units:
        case Units.METRIC:
            return Fraction(CM if is_tape else CM // 10, 10**finer)
        case Units.DECIMAL_FEET:
            return Fraction(FOOT, 100 * 10**finer)
        case Units.FEET_AND_INCHES:
            return Fraction(INCH, (4 if is_tape else 8, 16, 64)[finer])


def shown_as(value: Fraction, unit: Unit, units: Units) -> Shown:
    """How a value of its unit is shown, by its size."""
    ways = (_METRIC if units is Units.METRIC else _FEET)[unit]
    return next(way for way in reversed(ways) if abs(value) >= way.since)


def placed(value: Fraction, decimals: int) -> str:
    """A value with so many decimals."""
    scaled = rounded(value * 10**decimals)
    whole, rest = divmod(abs(scaled), 10**decimals)
    sign = MINUS if scaled < 0 else ""
    return f"{sign}{grouped(whole)}.{rest:0{decimals}}" if decimals else f"{sign}{grouped(whole)}"


def _whole_from(finer: int) -> int | None:
    return None if finer else _WHOLE_FROM


def trimmed(value: Fraction, most: int, *, whole_from: int | None = _WHOLE_FROM) -> str:
    """A value with as many decimals as it has, at most so many, and none from a hundred on, or from never on."""
    text = placed(value, 0 if whole_from is not None and abs(value) >= whole_from else most)
    return text.rstrip("0").rstrip(".") if "." in text else text
