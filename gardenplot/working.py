"""A number with its working: how it came about and how far to trust it."""

from enum import StrEnum

from attrs import frozen

RULES = "common practice, no source"
"""Where a rule of the trade comes from that no publication is known for."""


class Trust(StrEnum):
    """How far to trust a sum."""

    EXACT = "exact"
    GOOD = "good"
    FAIR = "fair"
    WEAK = "weak"


@frozen
class Working:
    """A named number, the sum that gave it with the numbers put in, and where the formula comes from."""

    name: str
    sum: str
    value: str
    trust: Trust = Trust.EXACT
    source: str = ""
