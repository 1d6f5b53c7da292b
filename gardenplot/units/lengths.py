"""Lengths, shares and rates as people write them, exact inside and kept as typed.

A length is a whole number of nanometres. 1 in = 25 400 000 nm exactly (international inch of 1959, NIST SP 811,
appendix B.6), so 1/64 in, 0.01 ft and 1 mm are all whole numbers.
"""

import re
from fractions import Fraction
from functools import lru_cache

from attrs import frozen

from gardenplot.errors import LengthError
from gardenplot.words import _

MM = 1_000_000
CM = 10 * MM
M = 1000 * MM
INCH = 25_400_000
FOOT = 12 * INCH
YARD = 3 * FOOT

LONGEST = 10_000 * M
"""Nothing that a person grows on is longer than 10 km; more is a slip of the finger."""


@frozen(cache_hash=True, slots=False)  # thousands are handed to other processes, in half the time without slots
class Length:
    """A length in whole nanometres together with the text that a person typed for it."""

    nm: int
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Share:
    """A share from 0 to 1 with its text, for example `Share(Fraction(1, 10), "10 %")`."""

    part: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class Rate:
    """A number of things per nanometre with its text, for example `12 / ft`."""

    per_nm: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


@frozen(cache_hash=True)
class AreaRate:
    """A number of things per square nanometre with its text, for example `400 / m2`."""

    per_nm2: Fraction
    text: str

    def __str__(self) -> str:
        return self.text


_UNIT_NM = {
    "mm": MM,
    "millimetre": MM,
    "millimetres": MM,
    "millimeter": MM,
    "millimeters": MM,
    "cm": CM,
    "centimetre": CM,
    "centimetres": CM,
    "centimeter": CM,
    "centimeters": CM,
    "dm": 10 * CM,
    "m": M,
    "metre": M,
    "metres": M,
    "meter": M,
    "meters": M,
    "in": INCH,
    "inch": INCH,
    "inches": INCH,
    '"': INCH,
    "ft": FOOT,
    "foot": FOOT,
    "feet": FOOT,
    "'": FOOT,
    "yd": YARD,
    "yard": YARD,
    "yards": YARD,
}
_FRACTION_SIGNS = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_PLAIN = str.maketrans({"′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"', "⁄": "/", "−": "-", "\u00a0": " ",
                        "\u2009": " ", "\u202f": " "})  # fmt: skip
_NUMBER = re.compile(r"(?:(?P<whole>\d+)[ -]+)?(?P<top>\d+)/(?P<bottom>\d+)|(?P<decimal>\d+(?:[.,]\d+)?|[.,]\d+)")
_MOST_DIGITS = 40
_WORD = re.compile(r"[a-z]+|''|'|\"")


_SIGN = re.compile(r" ?\+ ?|(?<=[a-z'\".]) ?- ?|(?<=\d) - ")
"""A plus, or a minus that is no dash: one in 2-1/2 in belongs to the number."""
_DASHED = re.compile(r"(?<![\d.,/])(\d+)(?: - | -|- )(\d+)/(\d+)")
"""2 - 1/2 in, which is 2 1/2 in to some and 1 1/2 in to others."""
_THOUSANDS = re.compile(r"\d'\d{3}(?!\d)(?! ?/)")
"""1'500 mm, which is 1500 mm where thousands have this sign, and is no way to write feet."""
_MOST_TERMS = 12


def parse_length(text: str, *, bare: str | None = None) -> Length:
    """Read a length as people write it, 8", 2' 6 1/2", 2ft 6in, 53.5 ft, 14,6 m, 2½ in, or a sum, 46' 8" + 16 in.

    `bare` is the unit of a number that stands alone, for example "cm"; without it such a number is an error.
    Raises LengthError for text that is no length, comes to less than nothing, is finer than a nanometre or longer
    than 10 km.
    """
    if not isinstance(text, str):
        raise LengthError(_('a number alone is no length: write it as text with a unit, like "30 cm"'))
    return _read(text, bare)


@lru_cache(maxsize=4096)
def _read(text: str, bare: str | None) -> Length:
    plain = plainly(text)
    if plain.startswith("-"):
        raise LengthError(
            _("“{typed}” is less than nothing: write a length like 30 cm or 1' 6\"").format(typed=_clip(text))
        )
    if _THOUSANDS.search(plain):
        raise _unsure_of_sign(text)
    dashed = _DASHED.search(plain)
    if dashed is not None:
        raise _two_ways(text, "{} {}/{} in".format(*dashed.groups()), "{} in - {}/{} in".format(*dashed.groups()))
    terms, signs = _SIGN.split(plain), [match.group().strip() for match in _SIGN.finditer(plain)]
    if signs:
        return _sum(terms, signs, bare, text)
    nm = _term_nm(plain, bare, text)
    return Length(_whole(nm, text), text.strip() if not _is_bare(plain) else f"{text.strip()} {bare}")


def parse_place(text: str, *, bare: str | None = None) -> Length:
    """Read how far something lies from a mark, with a minus to the other side of it: 3 m, -2 m, -6' 3".

    A sum comes to nothing or more. Raises LengthError as for a length.
    """
    plain = plainly(text) if isinstance(text, str) else ""
    beyond = plain[1:].lstrip()
    if not plain.startswith("-") or beyond.startswith("-") or _SIGN.search(beyond):
        return parse_length(text, bare=bare)
    length = parse_length(beyond, bare=bare)
    typed = text.strip()
    return Length(-length.nm, typed if not _is_bare(beyond) else f"{typed} {bare}")


def _sum(terms: list[str], signs: list[str], bare: str | None, text: str) -> Length:
    """A sum of lengths, kept as typed; numbers alone take the unit of their field only where no term has one."""
    if len(terms) > _MOST_TERMS or not all(terms):
        raise _no_length(text)
    if bare is not None and all(map(_is_bare, terms)):
        return _sum([f"{term} {bare}" for term in terms], signs, None, _joined(terms, signs, bare))
    total = Fraction(0)
    for sign, term in zip(("+", *signs), terms, strict=True):
        nm = _named_nm(term, text)
        total += nm if sign == "+" else -nm
    for sign, before, after in zip(signs, terms, terms[1:], strict=False):
        if sign == "-":
            _refuse_dash(before, after, text)
    if total < 0:
        raise LengthError(_("“{typed}” comes to less than nothing").format(typed=_clip(text)))
    return Length(_whole(total, text), text.strip())


def _joined(terms: list[str], signs: list[str], unit: str) -> str:
    """A sum of numbers with a unit behind each."""
    return " ".join([f"{terms[0]} {unit}", *(f"{a} {b} {unit}" for a, b in zip(signs, terms[1:], strict=True))])


def _named_nm(term: str, text: str) -> Fraction:
    """A term of a sum in nm; raises LengthError with the term that is wrong."""
    if _is_bare(term):
        sentence = _("in “{typed}”: {term} has no unit, write it like {term} cm or {term} in")
        raise LengthError(sentence.format(typed=_clip(text), term=_clip(term)))
    try:
        return _term_nm(term, None, term)
    except LengthError as error:
        raise LengthError(_("in “{typed}”: {wrong}").format(typed=_clip(text), wrong=error)) from None


def _refuse_dash(before: str, after: str, text: str) -> None:
    """Refuse 6' - 2", which is 6' 2" to a builder and 5' 10" to a reckoner."""
    feet, inches = _parts(before, None, text), _parts(after, None, text)
    if _UNIT_NM[feet[-1][1]] == FOOT and _UNIT_NM[inches[0][1]] == INCH and inches[0][0] < 12:
        raise _two_ways(text, f"{before} {after}", f"{before} 0 in - {after}")


def _two_ways(text: str, one: str, other: str) -> LengthError:
    sentence = _("“{typed}” can be read in two ways: write {one} or {other}")
    return LengthError(sentence.format(typed=_clip(text), one=_clip(one), other=_clip(other)))


def _term_nm(plain: str, bare: str | None, text: str) -> Fraction:
    return sum((_part_nm(part, unit, text) for part, unit in _parts(plain, bare, text)), Fraction(0))


def _whole(nm: Fraction, text: str) -> int:
    """Whole nanometres within what a person grows on; raises LengthError."""
    if nm.denominator != 1:
        raise LengthError(
            _("“{typed}” is finer than a nanometre: write a fraction like 1/8 or fewer digits").format(
                typed=_clip(text)
            )
        )
    if nm > LONGEST:
        raise LengthError(_("“{typed}” is longer than 10 km").format(typed=_clip(text)))
    return int(nm)


def unit_of(text: str) -> str | None:
    """The unit of a length in a single unit, "cm" for "20 cm"; None for feet and inches together or no length."""
    words = set(_WORD.findall(plainly(text)))
    return next(iter(words)) if len(words) == 1 and words <= _UNIT_NM.keys() else None


def _clip(text: str) -> str:
    return text if len(text) <= 40 else text[:39] + "…"


def plainly(text: str) -> str:
    """A text with its signs as on any keyboard, "2 1/2 in" for "2½ in", in small letters, blanks one by one."""
    plain = text.translate(_PLAIN).strip().lower()
    for sign, fraction in _FRACTION_SIGNS.items():
        plain = plain.replace(sign, f" {fraction}")
    return " ".join(plain.replace("''", '"').split())


def _is_bare(plain: str) -> bool:
    return _NUMBER.fullmatch(plain) is not None


def _no_length(text: str) -> LengthError:
    return LengthError(
        _("“{typed}” is no length: write it like 30 cm, 2.5 m, 8 in or 2' 6 1/2\"").format(typed=_clip(text))
    )


def _parts(plain: str, bare: str | None, text: str) -> list[tuple[Fraction, str]]:
    """Split `2' 6 1/2"` into numbers and units, each unit smaller than the one before."""
    parts: list[tuple[Fraction, str]] = []
    at = 0
    while at < len(plain):
        number = _NUMBER.match(plain, at)
        if number is None:
            raise _no_length(text)
        word = _WORD.match(plain, _skip_blank(plain, number.end()))
        if word is None and (bare is None or parts or number.end() < len(plain)):
            raise _no_length(text)
        unit = word.group() if word else bare or ""
        if unit not in _UNIT_NM or (parts and _UNIT_NM[unit] >= _UNIT_NM[parts[-1][1]]):
            raise _no_length(text)
        if word and re.match(r"\.\d", plain[word.end() :]):
            raise _no_length(text)  # "2ft.6in" may mean 6 in or 0.6 in
        parts.append((_number(number, text), unit))
        at = _skip_blank(plain, word.end() if word else len(plain))
    if not parts:
        raise _no_length(text)
    return parts


def _skip_blank(plain: str, at: int) -> int:
    """Past blanks, and past the point of "ft." where no number can begin with it."""
    while at < len(plain) and (plain[at] == " " or (plain[at] == "." and not plain[at + 1 : at + 2].isdigit())):
        at += 1
    return at


def _part_nm(number: Fraction, unit: str, text: str) -> Fraction:
    if unit not in _UNIT_NM:
        raise _no_length(text)
    return number * _UNIT_NM[unit]


def number_in(text: str) -> Fraction | None:
    """A number alone, 2.5, 2,5, 1/2 or 2 1/2; None for anything else, and for what can be read in two ways."""
    match = _NUMBER.fullmatch(plainly(text))
    try:
        return _number(match, text) if match else None
    except LengthError:
        return None


def _number(match: re.Match[str], text: str) -> Fraction:
    if len(match.group()) > _MOST_DIGITS:
        raise _no_length(text)
    if match["decimal"] is not None:
        return _decimal(match["decimal"], text)
    if int(match["bottom"]) == 0:
        raise _no_length(text)
    return int(match["whole"] or 0) + Fraction(int(match["top"]), int(match["bottom"]))


def _decimal(digits: str, text: str) -> Fraction:
    """Read 14.6 or 14,6; "1,000" could mean one or a thousand, so it is refused."""
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        raise _unsure_of_sign(text)
    return Fraction(digits.replace(",", "."))


def _unsure_of_sign(text: str) -> LengthError:
    sentence = _("“{typed}” can be read in two ways: write a point for decimals and no sign for thousands")
    return LengthError(sentence.format(typed=_clip(text)))


_SHARE = re.compile(r"(\d{1,3}(?:[.,]\d{1,6})?)\s*%")


def parse_share(text: str) -> Share:
    """Read a share like "10 %"; raises LengthError if it is none or lies outside 0 to 100 %."""
    match = _SHARE.fullmatch(text.strip()) if isinstance(text, str) else None
    part = Fraction(match[1].replace(",", ".")) / 100 if match else None
    if part is None or part > 1:
        raise LengthError(
            _("“{typed}” is no share: write it like 10 %").format(
                typed=_clip(text if isinstance(text, str) else str(text))
            )
        )
    return Share(part, text.strip())


def parse_rate(text: str) -> Rate:
    """Read a rate like "12 / ft" or "40 / m"; raises LengthError if it is none."""
    number, slash, per = text.rpartition("/") if isinstance(text, str) else ("", "", "")
    match = _NUMBER.fullmatch(number.strip())
    unit = per.strip().lower()
    if not slash or match is None or unit not in _UNIT_NM:
        raise LengthError(
            _("“{typed}” is no rate: write it like 12 / ft or 40 / m").format(
                typed=_clip(text if isinstance(text, str) else str(text))
            )
        )
    return Rate(_number(match, text) / _UNIT_NM[unit], text.strip())


_SQUARES = re.compile(r"(?:sq\.? ?|square )(?P<before>[a-z]+)|(?P<after>[a-z]+) ?[2²]")


def parse_area_rate(text: str) -> AreaRate:
    """Read a rate like "400 / m2" or "40 / sq ft"; raises LengthError if it is none."""
    number, slash, per = text.rpartition("/") if isinstance(text, str) else ("", "", "")
    match = _NUMBER.fullmatch(number.strip())
    square = _SQUARES.fullmatch(per.strip().lower())
    unit = (square["before"] or square["after"]) if square else ""
    if not slash or match is None or unit not in _UNIT_NM:
        raise LengthError(
            _("“{typed}” is no rate for an area: write it like 400 / m2 or 40 / sq ft").format(
                typed=_clip(text if isinstance(text, str) else str(text))
            )
        )
    return AreaRate(_number(match, text) / _UNIT_NM[unit] ** 2, text.strip())
