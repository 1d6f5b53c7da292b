"""Checks that many fields of a plan share, each giving the field's name and what is wrong with it."""

from collections.abc import Iterator

from gardenplot.units import MM, Length
from gardenplot.words import _

Says = Iterator[tuple[str, str]]
"""The name of a field and what is wrong with it."""

SMALLEST = MM


def above_nothing(name: str, length: Length | None) -> Says:
    """Says that a length is less than a millimetre."""
    if length is not None and length.nm < SMALLEST:
        yield name, _("“{typed}” is too small: at least 1 mm is needed").format(typed=length.text)


def whole(name: str, number: int | None, least: int, most: int) -> Says:
    """Says that a whole number does not lie between two others."""
    if number is not None and not least <= number <= most:
        yield name, _("{typed} does not lie between {least} and {most}").format(typed=number, least=least, most=most)


def known_id(name: str, wanted: str, ids: set[str]) -> Says:
    """Says that an id is not among those that the plan has."""
    if wanted not in ids:
        yield name, _("there is no “{id}” in the plan").format(id=wanted)
