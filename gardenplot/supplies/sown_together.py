"""Trays filled with what is sown together: a tray that one planting leaves part-empty is filled up with the next.

Together is what is of one crop, with the same days: plantings in several beds, or the parts of one that was split.
Their cells are added up before trays are counted: trays = ceil(sum of cells / cells per tray). Common practice, no
source.
"""

from collections.abc import Sequence

from attrs import frozen

from gardenplot.supplies.raising import PACKET
from gardenplot.working import RULES, Number, Rounding, Unit, added, known, worked


@frozen(cache_hash=True)
class Sown:
    """What one planting has sown: its cells, the trays that these fill on their own, and how many one holds.

    `label` says which planting it is.
    """

    label: str
    cells: Number
    trays: Number
    in_tray: int


def filled_together(ones: Sequence[Sown]) -> Number:
    """The trays that are filled by what is sown together, of which there is something."""
    if len(ones) == 1:
        return ones[0].trays
    labels = [one.label for one in ones]
    cells = added("cells", Unit.COUNT, [one.cells for one in ones], RULES, labels=labels)
    in_tray = known("cells_per_tray", ones[0].in_tray, Unit.COUNT, source=PACKET)
    return worked("trays", Unit.COUNT, "cells ÷ cells_per_tray", cells, in_tray, rounding=Rounding.UP, source=RULES)


def label_together(ones: Sequence[Sown]) -> str:
    """Which plantings they are."""
    return "; ".join(dict.fromkeys(one.label for one in ones))
