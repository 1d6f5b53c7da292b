"""What can be chosen in a plan, by the words that its file has for it."""

from enum import StrEnum
from functools import cached_property


class Pattern(StrEnum):
    """How plants stand in a block."""

    STRAIGHT = "straight"
    STAGGERED = "staggered"
    TRIANGULAR = "triangular"
    TWIN = "twin"
    OFFSETS = "offsets"
    CELLS = "cells"
    RINGS = "rings"
    BROADCAST = "broadcast"

    @cached_property
    def has_even_rows(self) -> bool:
        """Whether rows lie evenly apart; such rows may run along the bed or across it."""
        return self in (Pattern.STRAIGHT, Pattern.STAGGERED, Pattern.TRIANGULAR)

    @cached_property
    def staggers(self) -> bool:
        """Whether every second row is moved by half a spacing."""
        return self in (Pattern.STAGGERED, Pattern.TRIANGULAR)


class Direction(StrEnum):
    """Which way the rows of a block run."""

    ALONG = "along"
    ACROSS = "across"


class Remainder(StrEnum):
    """What becomes of the length that no further plant of a row needs."""

    FOOT = "foot"
    SPREAD = "spread"


class Phase(StrEnum):
    """Where the rows of a block lie in its bed: centred, or shifted so that its ground holds the most plants.

    Grids that keep one phase may also be turned to an edge of a bed that has an outline, where that holds more.
    """

    CENTRED = "centred"
    BEST = "best"
    TURNED = "best, turned"


class Establish(StrEnum):
    """How a crop gets into its bed."""

    TRANSPLANT = "transplant"
    DIRECT = "direct"


class Reserved(StrEnum):
    """What a planting does about the places of the crop that follows it."""

    CUT_FIRST = "cut first"
    PLACES_EMPTY = "leave places empty"
    ROW_EMPTY = "leave row empty"


class HoopShape(StrEnum):
    """The curve of a hoop over a bed."""

    HALF_ROUND = "half-round"
    HALF_ELLIPSE = "half-ellipse"


class Sheeting(StrEnum):
    """What lies over the hoops of a cover."""

    CLOTH = "cloth"
    FILM = "clear film"
    FILM_OVER_CLOTH = "clear film over cloth"

    @property
    def has_cloth(self) -> bool:
        """Whether there is cloth."""
        return self is not Sheeting.FILM

    @property
    def has_film(self) -> bool:
        """Whether there is film."""
        return self is not Sheeting.CLOTH


class DaysFrom(StrEnum):
    """Where the days that a packet gives begin."""

    SETTING_OUT = "setting out"
    SOWING = "sowing"


class Frost(StrEnum):
    """How a crop takes frost, in the four classes of extension tables."""

    HARDY = "hardy"
    HALF_HARDY = "half-hardy"
    TENDER = "tender"
    VERY_TENDER = "very tender"
