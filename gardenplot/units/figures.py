"""Lengths as a person reads them off a tape: rounded once, half up, from the exact value."""

from fractions import Fraction

from attrs import frozen

from gardenplot.units.exact import Units
from gardenplot.units.lengths import CM, FOOT, INCH, MM, M

THIN = "\u2009"
MINUS = "−"
_SIGNS = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(5, 8): "⅝",
    Fraction(3, 4): "¾",
    Fraction(7, 8): "⅞",
}


@frozen
class Figure:
    """A number and its unit apart, since the unit is set smaller; feet and inches carry theirs as primes."""

    number: str
    unit: str

    def __str__(self) -> str:
        return f"{self.number}{THIN}{self.unit}" if self.unit else self.number


def grouped(count: int) -> str:
    """A count as it is read anywhere, its thousands apart: "1 620"."""
    return f"{count:,}".replace(",", THIN).replace("-", MINUS)


def rounded(value: Fraction) -> int:
    """The nearest whole number, halves away from zero; with whole numbers alone, as there are thousands."""
    over, under = value.numerator, value.denominator
    whole = (2 * abs(over) + under) // (2 * under)
    return whole if over >= 0 else -whole


_FINER = {1: 16, 2: 64}
"""The parts of an inch that are shown one and two steps finer than usual."""


def tape(nm: int, units: Units, *, inch_parts: int = 4, finer: int = 0) -> Figure:
    """A tape reading: metres to the centimetre, feet and inches to 1/`inch_parts` in, or feet to 0.01 ft.

    Up to two steps `finer` it has as many decimals more, or 1/16 and 1/64 in.
    """
    match units:
        case Units.METRIC:
            return Figure(_decimal(nm, M, 2 + finer), "m")
        case Units.DECIMAL_FEET:
            return Figure(_decimal(nm, FOOT, 2 + finer), "ft")
        case Units.FEET_AND_INCHES:
            return Figure(_feet_and_inches(nm, _FINER.get(finer, inch_parts)), "")


def offset(nm: int, units: Units, *, inch_parts: int = 8, finer: int = 0) -> Figure:
    """A short distance, across the bed or between plants: centimetres to the millimetre, inches, or feet.

    Up to two steps `finer` it has as many decimals more, or 1/16 and 1/64 in.
    """
    match units:
        case Units.METRIC:
            return Figure(_trimmed(nm, CM, 1 + finer), "cm")
        case Units.DECIMAL_FEET:
            return Figure(_decimal(nm, FOOT, 2 + finer), "ft")
        case Units.FEET_AND_INCHES:
            return Figure(_inches(nm, _FINER.get(finer, inch_parts)), "")


_FINEST = {
    Units.METRIC: (MM, MM // 2),
    Units.FEET_AND_INCHES: (INCH // 8, INCH // 16, INCH // 32),
    Units.DECIMAL_FEET: (FOOT // 100, FOOT // 1000),
}
"""The steps in nm of an offset, and what is told one or two steps finer; no tape has more."""


def apart(nm: int, units: Units) -> Figure:
    """From plant to plant: an offset, or finer where that tells it exactly, to 1/32 in or half a millimetre.

    What is laid out again and again adds up: a rounding of 1/16 in is 4 in after 64 plants.
    """
    exact = (finer for finer, step in enumerate(_FINEST[units]) if nm % step == 0)
    return offset(nm, units, finer=next(exact, 0))


def unlike(one: int, other: int, units: Units) -> tuple[Figure, Figure]:
    """Two offsets, both as much finer as it takes to read that they are not alike, where a step finer tells that."""
    pairs = [tuple(offset(nm, units, finer=finer) for nm in (one, other)) for finer in range(3)]
    first, second = next((pair for pair in pairs if str(pair[0]) != str(pair[1])), pairs[0])
    return first, second


def exactly(nm: int, units: Units) -> Figure:
    """A tape reading with as much more of it as it needs, to the millimetre, 1/16 in or 0.001 ft: "0.762 m"."""
    match units:
        case Units.METRIC:
            return Figure(_decimal(nm, M, 2 if nm % CM == 0 else 3), "m")
        case Units.DECIMAL_FEET:
            return Figure(_decimal(nm, FOOT, 2 if nm % (FOOT // 100) == 0 else 3), "ft")
        case Units.FEET_AND_INCHES:
            return tape(nm, units, inch_parts=4 if nm % (INCH // 4) == 0 else 16)


_FINEST_ON_TAPE = {Units.METRIC: MM, Units.FEET_AND_INCHES: INCH // 16, Units.DECIMAL_FEET: FOOT // 1000}
"""The steps in nm that a tape reading tells exactly."""


def span(nm: int, units: Units, *, finer: int = 0) -> Figure:
    """A length of ground: as a tape reading from one metre or foot on, as an offset below."""
    return tape(nm, units, finer=finer) if is_long(nm, units) else offset(nm, units, finer=finer)


def as_measured(nm: int, units: Units) -> Figure:
    """A span, or finer where that tells it exactly, as `apart` and `exactly` do."""
    if not is_long(nm, units):
        return apart(nm, units)
    return exactly(nm, units) if nm % _FINEST_ON_TAPE[units] == 0 else span(nm, units)


def is_long(nm: int, units: Units) -> bool:
    """Whether a length of ground is told as a tape reading."""
    return abs(nm) >= (M if units is Units.METRIC else FOOT)


def _decimal(nm: int, unit: int, places: int) -> str:
    """A length in units of so many nm, halves away from zero; with whole numbers alone, as there are thousands."""
    scaled = (2 * abs(nm) * 10**places + unit) // (2 * unit)
    digits = str(scaled).rjust(places + 1, "0")
    return f"{MINUS if nm < 0 and scaled else ''}{digits[:-places]}.{digits[-places:]}"


def _trimmed(nm: int, unit: int, places: int) -> str:
    text = _decimal(nm, unit, places)
    return text.rstrip("0").rstrip(".")


def _feet_and_inches(nm: int, parts: int) -> str:
    steps = rounded(Fraction(abs(nm) * parts, INCH))
    feet, rest = divmod(steps, 12 * parts)
    sign = MINUS if nm < 0 and steps else ""
    inches = _with_sign(Fraction(rest, parts))
    return f"{sign}{feet}′{THIN}{inches if inches[0].isdecimal() else f'0{inches}'}″"


def _inches(nm: int, parts: int) -> str:
    steps = rounded(Fraction(abs(nm) * parts, INCH))
    return f"{MINUS if nm < 0 and steps else ''}{_with_sign(Fraction(steps, parts))}″"


def _with_sign(inches: Fraction) -> str:
    whole, part = divmod(inches, 1)
    if not part:
        return str(whole)
    sign = _SIGNS.get(part, f"{THIN}{part.numerator}/{part.denominator}")
    return f"{whole or ''}{sign}"
