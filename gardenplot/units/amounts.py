"""Volumes, masses, flows, losses of heat and prices as people write them, exact inside and kept as typed.

1 US gallon = 231 in³, 1 lb = 453.592 37 g, 1 ft³, 1 yd³ from the international foot: all exact (NIST SP 811,
appendix B.8). 1 Btu (international table) = 1 055.055 852 62 J, exact (the same). Volumes are in nm³.
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from unicodedata import category

from attrs import frozen

from gardenplot.errors import LengthError
from gardenplot.units.lengths import CM, FOOT, INCH, YARD, M, number_in, parse_length, plainly
from gardenplot.words import _

LITRE = (10 * CM) ** 3
GALLON = 231 * INCH**3
POUND = Fraction("453.59237")
OUNCE = POUND / 16
BTU = Fraction("1055.05585262")


@frozen(cache_hash=True)
class Volume:
    """A volume in nm³ together with the text that a person typed for it."""

    nm3: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Mass:
    """A mass in grams together with its text."""

    grams: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Flow:
    """A volume an hour, in nm³, with its text: "600 l/h", "4 gal/min"."""

    nm3_per_hour: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class LineFlow:
    """What a length of drip line gives: nm³ an hour from each nm, with its text: "5 l/h / m", "30 gal/h / 100 ft"."""

    nm2_per_hour: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class MassRate:
    """Grams on each nm² of ground with their text: "50 g / m2", "3 lb / 1000 sq ft"."""

    per_nm2: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class HeatLoss:
    """Joules an hour that each nm² loses, with its text: "60 W / m2", "20 Btu / sq ft h"."""

    per_nm2: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Price:
    """What something costs, in the money of the place, with its text."""

    money: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Amount:
    """So much of something as a shop sells it: pieces, nm, nm³ or grams, one of them, with its text."""

    text: str
    pieces: int | None = None
    nm: int | None = None
    nm3: Fraction | None = None
    grams: Fraction | None = None

    def __str__(self) -> str:
        return self.text


_VOLUMES: Mapping[str, Fraction] = {
    name: Fraction(nm3)
    for names, nm3 in (
        (("ml", "millilitre", "millilitres", "milliliter", "milliliters"), LITRE // 1000),
        (("l", "litre", "litres", "liter", "liters"), LITRE),
        (("m3", "m³", "cubic metre", "cubic metres", "cubic meter", "cubic meters"), M**3),
        (("gal", "gallon", "gallons", "us gal"), GALLON),
        (("qt", "quart", "quarts"), GALLON // 4),
        (("cu ft", "ft3", "ft³", "cubic foot", "cubic feet"), FOOT**3),
        (("cu yd", "yd3", "yd³", "cubic yard", "cubic yards"), YARD**3),
    )
    for name in names
}
_MASSES: Mapping[str, Fraction] = {
    name: grams
    for names, grams in (
        (("mg", "milligram", "milligrams"), Fraction(1, 1000)),
        (("g", "gram", "grams", "gramme", "grammes"), Fraction(1)),
        (("kg", "kilogram", "kilograms", "kilo", "kilos"), Fraction(1000)),
        (("t", "tonne", "tonnes"), Fraction(10**6)),
        (("oz", "ounce", "ounces"), OUNCE),
        (("lb", "lbs", "pound", "pounds"), POUND),
    )
    for name in names
}
_AREAS: Mapping[str, int] = {
    "m2": M**2, "m²": M**2, "sq m": M**2, "ha": (100 * M) ** 2, "sq ft": FOOT**2, "ft2": FOOT**2, "ft²": FOOT**2,
    "acre": 43_560 * FOOT**2, "sq yd": YARD**2,
}  # fmt: skip
_TIMES: Mapping[str, Fraction] = {
    "h": Fraction(1), "hour": Fraction(1), "min": Fraction(1, 60), "s": Fraction(1, 3600), "day": Fraction(24),
}  # fmt: skip
_COUNTED = re.compile(r"(\d{1,7})(?: (?P<things>[a-z][a-z ]{0,20}))?")
_NO_THINGS = re.compile(
    r"(sq|square|cu|cubic|fl)\b.*|km|kilomet(er|re)s?|miles?|gr|gms?|kgs|ozs|cwt|tons?|ltrs?|pts?|pints?|gals|ha|acres?"
)
"""Measures that are not read here; taken for the name of things, they would be counted."""
_WITH_UNIT = re.compile(r"(?P<number>[\d.,/ ]*\d(?:-\d+/\d+)?) ?(?P<unit>[^\W\d_][^\d/]*[23²³]?)")
_STROKE = re.compile(r"(?<!\d)/|/(?!\d)")
_PRICE = re.compile(r"(?P<before>\D*?)(?P<number>\d{1,9}(?:[.,]\d{1,2})?|[.,]\d{1,2})(?:[.,][-–—])?(?P<behind>\D*)")
_PARTS = frozenset({"c", "ct", "cts", "p", "¢"})
"""Hundredths of the money of a place: 50 p is half of what 50 says."""


def parse_volume(text: str) -> Volume:
    """Read "40 l", "2.5 gal", "2½ gal", "1/2 cu yd"; raises LengthError for anything else."""
    return Volume(_of(text, _VOLUMES, _("“{typed}” is no volume: write it like 40 l or 2.5 gal")), text.strip())


def parse_mass(text: str) -> Mass:
    """Read "2.5 kg", "14 g", "3 lb", "½ oz"; raises LengthError for anything else."""
    return Mass(_of(text, _MASSES, _("“{typed}” is no weight: write it like 250 g or 2 lb")), text.strip())


def parse_flow(text: str) -> Flow:
    """Read "600 l/h", "4 gal/min"; raises LengthError for anything else."""
    wrong = _("“{typed}” is no flow: write it like 600 l/h or 4 gal/min")
    volume, per = _divided(text, wrong)
    return Flow(_of(volume, _VOLUMES, wrong, text) / _unit(per, _TIMES, wrong, text), text.strip())


def parse_line_flow(text: str) -> LineFlow:
    """Read "5 l/h / m", "30 gal/h / 100 ft"; raises LengthError for anything else."""
    wrong = _("“{typed}” is no flow of a drip line: write it like 5 l/h / m or 30 gal/h / 100 ft")
    flow, per = _divided(text, wrong)
    volume, time = _divided(flow, wrong, text)
    per = _plain(per)
    length = _length(per if per[:1].isdigit() else f"1 {per}", wrong, text)
    each = _of(volume, _VOLUMES, wrong, text) / _unit(time, _TIMES, wrong, text)
    return LineFlow(each / length, text.strip())


def parse_mass_rate(text: str) -> MassRate:
    """Read "50 g / m2", "3 lb / 1000 sq ft"; raises LengthError for anything else."""
    wrong = _("“{typed}” is no rate by weight: write it like 50 g / m2 or 3 lb / 1000 sq ft")
    mass, per = _divided(text, wrong)
    return MassRate(_of(mass, _MASSES, wrong, text) / _area(per, wrong, text), text.strip())


def parse_heat_loss(text: str) -> HeatLoss:
    """Read "60 W / m2" or "20 Btu / sq ft h"; raises LengthError for anything else."""
    wrong = _("“{typed}” is no loss of heat: write it like 60 W / m2 or 20 Btu / sq ft h")
    heat, per = _divided(text, wrong)
    plain = _plain(per)
    joules = {"w": Fraction(3600), "btu": BTU, "btu/h": BTU}
    is_hourly = plain.removesuffix(" h").strip() != plain
    number = _of(heat, joules, wrong, text)
    if ("btu" in heat.lower() and "/h" not in heat.lower()) != is_hourly:
        raise _wrong(wrong, text)
    return HeatLoss(number / _area(plain.removesuffix(" h"), wrong, text), text.strip())


def parse_price(text: str) -> Price:
    """Read "3.50", "3,50", ".50", "5,-" or "€ 3.50"; raises LengthError for anything else, also for thousands."""
    match = _PRICE.fullmatch(text.strip()) if isinstance(text, str) else None
    if match is None or not _is_money(match["before"]) or not _is_money(match["behind"]):
        raise _no_price(text)
    if match["number"][0] in ".," and match["before"][-1:].isalpha():
        raise _no_price(text)  # "kr.50" may mean 50 or 0.50
    return Price(Fraction(match["number"].replace(",", ".")), text.strip())


def _no_price(text: object) -> LengthError:
    return _wrong(_("“{typed}” is no price: write it like 3.50, without signs for thousands"), text)


def _is_money(text: str) -> bool:
    """Whether a text is nothing or names money, "€", "kr." or "A$"; a minus, a fraction or a cent does not."""
    plain = text.strip().lower()
    letters = "".join(sign for sign in plain if category(sign) != "Sc").removesuffix(".")
    is_short = len(letters) <= 3 and len(plain) - len(letters) <= 2
    return is_short and plain not in _PARTS and (not letters or letters.isalpha()) and plain != "."


def parse_amount(text: str) -> Amount:
    """Read "500", "500 seeds", "50 m", "40 l" or "10 g"; raises LengthError for anything else."""
    plain, typed = _plain(text), text.strip() if isinstance(text, str) else ""
    unit = _WITH_UNIT.fullmatch(plain)
    named = unit["unit"].strip() if unit else ""
    wrong = _("“{typed}” is no amount: write it like 500 seeds, 50 m, 40 l or 10 g")
    if named in _VOLUMES:
        return Amount(typed, nm3=_of(text, _VOLUMES, wrong))
    if named in _MASSES:
        return Amount(typed, grams=_of(text, _MASSES, wrong))
    try:
        return Amount(typed, nm=parse_length(text).nm)
    except LengthError:
        counted = _COUNTED.fullmatch(plain)
        if counted is None or _NO_THINGS.fullmatch(counted["things"] or ""):
            raise _wrong(wrong, text) from None
        return Amount(typed, pieces=int(counted[1]))


def _plain(text: str) -> str:
    return plainly(text) if isinstance(text, str) else ""


def _wrong(wrong: str, text: object) -> LengthError:
    shown = text if isinstance(text, str) else str(text)
    return LengthError(wrong.format(typed=shown if len(shown) <= 40 else shown[:39] + "…"))


def _of(text: str, units: Mapping[str, Fraction], wrong: str, whole: str | None = None) -> Fraction:
    """A number with one of some units."""
    match = _WITH_UNIT.fullmatch(_plain(text))
    number = number_in(match["number"]) if match else None
    unit = units.get(match["unit"].strip()) if match else None
    if number is None or unit is None:
        raise _wrong(wrong, text if whole is None else whole)
    return number * unit


def _unit(text: str, units: Mapping[str, Fraction], wrong: str, whole: str) -> Fraction:
    unit = units.get(_plain(text))
    if unit is None:
        raise _wrong(wrong, whole)
    return unit


def _divided(text: str, wrong: str, whole: str | None = None) -> tuple[str, str]:
    """What stands before the last stroke and behind it; one between two digits belongs to a fraction."""
    strokes = [match.start() for match in _STROKE.finditer(text)] if isinstance(text, str) else []
    if not strokes:
        raise _wrong(wrong, text if whole is None else whole)
    return text[: strokes[-1]], text[strokes[-1] + 1 :]


def _length(text: str, wrong: str, whole: str) -> int:
    try:
        nm = parse_length(text).nm
    except LengthError:
        nm = 0
    if not nm:
        raise _wrong(wrong, whole)
    return nm


def _area(text: str, wrong: str, whole: str) -> Fraction:
    """An area in nm²: one of some units, or so many of them."""
    plain = _plain(text)
    if plain in _AREAS:
        return Fraction(_AREAS[plain])
    area = _of(plain, {name: Fraction(nm2) for name, nm2 in _AREAS.items()}, wrong, whole)
    if not area:
        raise _wrong(wrong, whole)
    return area
