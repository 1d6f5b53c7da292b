"""Numbers in words: their names, their values in the plan's units, and the sums that they came from."""

import re
from collections.abc import Collection, Iterable, Iterator
from fractions import Fraction
from functools import lru_cache

from attrs import frozen

from gardenplot.drawing.number_names import NAMES
from gardenplot.drawing.number_sources import SOURCES
from gardenplot.drawing.trust_words import trust_words
from gardenplot.drawing.unit_figures import figure, followed, shown_as
from gardenplot.units import Units
from gardenplot.units.figures import rounded
from gardenplot.words import _, ngettext
from gardenplot.working import Number, Rounding, Trust, Unit

_WORD = re.compile(r"[a-z_]+\d*")
_SQUARE = re.compile(r"([a-z_]+\d*) ?\^ ?2|\) ?\^ ?2")
_SQUARED = re.compile(r"\^2(?![\d.])")
_PLACE = re.compile(r"_\d+$")
_SHORT = 24
"""Letters of a result that has room in one line of a narrow column."""
_LENGTHS = (Unit.LENGTH, Unit.SPACING, Unit.READING)
_LOW, _HIGH = Fraction(7, 10), Fraction(14, 10)
"""What a weak number is told to lie between, of its value: ours, since nothing is published for it."""


@frozen
class Line:
    """A number and how it came about: its name, the formula in words, the same in figures, its value, its trust.

    `depth` is how deep it lies in the sum of the first; one that `is_weak` hangs on a guess; the name of one that
    `is_labelled` ends in what it is of.
    """

    depth: int
    name: str
    formula: str
    sum: str
    value: str
    trust: str
    source: str
    is_weak: bool = False
    is_labelled: bool = False

    @property
    def is_sum(self) -> bool:
        """Whether it was worked out of something; what was put in was not, nor is nothing added up to nothing."""
        return any(map(str.isalpha, self.formula))

    @property
    def says(self) -> tuple[str, str, str]:
        """What its sum says, whatever it is the sum of."""
        return self.formula, self.sum, self.value


@lru_cache(maxsize=1024)
def name_words(name: str) -> str:
    """The name of a number as it is read: "cells in a tray"; of one of several, that of its kind."""
    return NAMES.get(_PLACE.sub("", name), name)


def labelled(number: Number) -> str:
    """A number's name with what it is of: "seeds, pak choi"."""
    return f"{name_words(number.name)}, {number.label}" if number.label else name_words(number.name)


def value_words(number: Number, units: Units, money: str = "") -> str:
    """A value in the plan's units, rounded once; a weak one as a range; "not known: needs the leg in the ground"."""
    if number.value is None:
        lacks = ", ".join(name_words(name) for name in number.lacks()) if number.terms else ""
        return _("not known: needs {lacks}").format(lacks=lacks) if lacks else _("not known")
    if number.trust is Trust.WEAK and number.terms:
        return _range(number, units)
    return figure(number.value, number.unit, units, money)


def _range(number: Number, units: Units) -> str:
    """A weak number: between about so much and so much, without digits that mean nothing."""
    value = number.value or Fraction(0)
    low, high = _coarse(value * _LOW, number.unit, units), _coarse(value * _HIGH, number.unit, units)
    return _("about {low} to {high}").format(low=low, high=high) if low != high else _("about {low}").format(low=low)


def _coarse(value: Fraction, unit: Unit, units: Units) -> str:
    if unit is Unit.HOURS:
        return _coarse_hours(value)
    return figure(_two_digits(value, unit, units), unit, units)


def _coarse_hours(hours: Fraction) -> str:
    """Minutes to the ten up to an hour and a half, then halves of hours."""
    if hours < Fraction(3, 2):
        minutes = rounded(hours * 6) * 10
        return ngettext("{count} minute", "{count} minutes", minutes).format(count=minutes)
    halves = rounded(hours * 2)
    whole, half = divmod(halves, 2)
    return ngettext("{count} hour", "{count} hours", whole + half).format(count=f"{whole}{'½' if half else ''}")


def _two_digits(value: Fraction, unit: Unit, units: Units) -> Fraction:
    """Two digits of a value in the unit that it is shown in."""
    size = shown_as(value, unit, units).size
    step = Fraction(1)
    while abs(value) >= 100 * step * size:
        step *= 10
    return rounded(value / size / step) * step * size


def formula_words(number: Number) -> str:
    """The formula with names for its words: "planted × (1 + spare)"; of several of a kind, with what each is of."""
    labels = {term.name: term.label for term in number.terms if term.label}
    return _WORD.sub(lambda word: labels.get(word.group()) or name_words(word.group()), _on_paper(number.formula))


@lru_cache(maxsize=1024)
def _on_paper(formula: str) -> str:
    """A formula with its squares as they are written by hand: "(1 − loss)²"."""
    return _SQUARE.sub(lambda found: f"({found[1]})²" if found[1] else ")²", formula)


def sum_words(number: Number, units: Units, money: str = "") -> str:
    """The formula with values for its words: "136 × (1 + 15 %)"; empty where a value is not known.

    Values stand in it as they are and not as they are read off a tape, so that it comes out by the pencil.
    """
    values = {term.name: term for term in number.terms}
    if any(term.value is None for term in number.terms):
        return ""

    def shown(word: re.Match[str]) -> str:
        term = values.get(word.group())
        if term is None or term.value is None:
            return name_words(word.group())
        return followed(term.value, term.unit, units, money)

    return _SQUARED.sub("²", _WORD.sub(shown, _on_paper(number.formula)))


def result_words(number: Number, units: Units, money: str = "") -> str:
    """The value, and what it was before it was rounded: "157 (156.4, up)"; all of a length: "1.63 m (1.625 m)"."""
    value = value_words(number, units, money)
    if number.value is None or number.exact is None:
        return _with_all(number, value, units)
    before = figure(number.exact, number.unit, units, money)
    if number.rounding is Rounding.NONE or number.exact == number.value or before == value:
        return _with_all(number, value, units)
    way = _("up") if number.rounding is Rounding.UP else _("down")
    return _("{value} ({before}, {way})").format(value=value, before=before, way=way)


def _with_all(number: Number, value: str, units: Units) -> str:
    """A length as it is read off a tape, and all of it where that is more and ends."""
    if number.value is None or number.unit not in _LENGTHS:
        return value
    whole = followed(number.value, number.unit, units)
    return value if whole == value or whole.startswith("≈") else f"{value} ({whole})"


def working_lines(number: Number, units: Units, money: str = "") -> Iterator[Line]:
    """A number and all that went into it, each once, as lines of its working."""
    return workings_of((number,), units, money)


def workings_of(
    numbers: Iterable[Number], units: Units, money: str = "", told: Collection[tuple[str, str, str]] = ()
) -> Iterator[Line]:
    """Numbers and all that went into them, each told only once: those asked for in their order, the rest below.

    Sums that went into them and say what was `told` elsewhere are left out, with what went into these.
    """
    asked = {_key(number): number for number in numbers}
    seen = _Seen({*asked}, told)
    for number in asked.values():
        yield _line(number, 0, units, money)
        for term in number.terms:
            yield from _lines(term, 1, seen, units, money)


_Key = tuple[str, Fraction | None, Unit]


@frozen
class _Seen:
    """The numbers that are told by now, and what sums said elsewhere."""

    keys: set[_Key]
    told: Collection[tuple[str, str, str]]


def _key(number: Number) -> _Key:
    return labelled(number), number.value, number.unit


def _lines(number: Number, depth: int, seen: _Seen, units: Units, money: str) -> Iterator[Line]:
    if _key(number) in seen.keys:
        return
    line = _line(number, depth, units, money)
    if line.is_sum and line.says in seen.told:
        return
    seen.keys.add(_key(number))
    yield line
    for term in number.terms:
        yield from _lines(term, depth + 1, seen, units, money)


def _line(number: Number, depth: int, units: Units, money: str) -> Line:
    formula, sum_ = formula_words(number), sum_words(number, units, money)
    return Line(
        depth, labelled(number), formula, sum_ if sum_ != formula else "", result_words(number, units, money),
        trust_words(number), SOURCES[number.source], number.trust is Trust.WEAK, bool(number.label),
    )  # fmt: skip


def in_short(number: Number, units: Units, money: str = "") -> str:
    """A number with its sum in a line: "trays:  185 ÷ 84  →  3, up  (good)", "set out:  typed  →  Fri 9 Apr 2027"."""
    value = value_words(number, units, money)
    if number.rounding is not Rounding.NONE and result_words(number, units, money) != _with_all(number, value, units):
        words = _("{count}, up") if number.rounding is Rounding.UP else _("{count}, whole part")
        value = words.format(count=value)
    sum_ = sum_words(number, units, money) if number.terms else SOURCES[number.source]
    return f"{labelled(number)}:  {sum_}  →  {value}  ({trust_words(number)})"


def results_whole(line: str) -> str:
    """A number with its sum as `in_short` tells it, for a narrow column: a short result is never broken."""
    sum_, arrow, rest = line.rpartition("→")
    result, bracket, trust = rest.rpartition("  (")
    if not bracket or len(result) > _SHORT:
        return line
    return sum_ + (arrow + result).replace(" ", "\u00a0") + bracket + trust


def sources_line(numbers: Iterable[Number]) -> str:
    """Where some formulas come from, each source once: "Formulas: common practice, no source"."""
    named = dict.fromkeys(SOURCES[one.source] for one in numbers if one.terms and one.source)
    return _("Formulas: {sources}").format(sources="; ".join(named)) if named else ""
