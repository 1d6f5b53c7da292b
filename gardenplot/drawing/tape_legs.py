"""Beds that no common tape reaches along: these are measured on in legs, from a stake at the end of each."""

from gardenplot.plan import Bed
from gardenplot.plan.shapes import diagonal, measured_over
from gardenplot.units import FOOT, M, Units

_LONGEST = {Units.METRIC: 100 * M, Units.FEET_AND_INCHES: 300 * FOOT, Units.DECIMAL_FEET: 300 * FOOT}
"""The longest tapes that are common (from memory, no source)."""
LEGS = {Units.METRIC: 50 * M, Units.FEET_AND_INCHES: 100 * FOOT, Units.DECIMAL_FEET: 100 * FOOT}
"""Legs by which a longer bed is measured on: what is left of a reading is found without reckoning on paper."""


def is_taped(bed: Bed, units: Units) -> bool:
    """Whether a bed is measured with one tape, which also reaches over the diagonal or to the farthest corner."""
    return max(bed.length.nm, diagonal(*(measured_over(bed) or (0, 0)))) <= _LONGEST[units]


def legs_of(bed: Bed, units: Units) -> tuple[int, ...]:
    """The readings in nm at which a bed that is measured in legs takes a stake, without those at its ends."""
    return () if is_taped(bed, units) else tuple(range(LEGS[units], bed.length.nm, LEGS[units]))
