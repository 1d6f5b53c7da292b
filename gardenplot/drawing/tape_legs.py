"""Beds that no common tape reaches along: these are measured on in legs, from a stake at the end of each."""

from gardenplot.plan import Bed
from gardenplot.plan.shapes import diagonal_of
from gardenplot.units import FOOT, M, Units

_LONGEST = {Units.METRIC: 100 * M, Units.FEET_AND_INCHES: 300 * FOOT, Units.DECIMAL_FEET: 300 * FOOT}
"""The longest tapes that are common (from memory, no source)."""
LEGS = {Units.METRIC: 50 * M, Units.FEET_AND_INCHES: 100 * FOOT, Units.DECIMAL_FEET: 100 * FOOT}
"""Legs by which a longer bed is measured on: what is left of a reading is found without reckoning on paper."""


def is_taped(bed: Bed, units: Units) -> bool:
    """Whether a bed is measured with one tape, which also reaches over the diagonal."""
    return max(bed.length.nm, diagonal_of(bed) or 0) <= _LONGEST[units]


def legs_of(bed: Bed, units: Units) -> int:
    """How many stakes a bed takes that is measured in legs, without those at its ends; else none."""
    return 0 if is_taped(bed, units) else (bed.length.nm - 1) // LEGS[units]
