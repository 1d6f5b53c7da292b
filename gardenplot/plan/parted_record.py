"""What came about of a planting in trays, shared between two parts of it, and added up again.

Each part has its share of what was counted and of what was bought in. The first one has at least ceil(plants /
(1 - loss)) of the seedlings, so that it is whole. Where nobody knows the loss yet, both have so many for each of
their plants that they are whole at as high a loss as two parts can be. Formulas: common practice, no source.
"""

from fractions import Fraction
from math import ceil, floor
from typing import Any

from attrs import evolve

from gardenplot.plan.value import Actual, Planting


def shared(
    came: Actual | None, plants: int, all_plants: int, loss: Fraction | None = None
) -> tuple[Actual | None, Actual | None]:
    """What came about of a planting, shared between so many of all plants and the rest; with a loss, if known."""
    if came is None:
        return None, None
    part = rest = came
    bought, share = came.bought or 0, Fraction(plants, all_plants)
    taken = floor(bought * share)
    if came.stand is not None:
        stays = 1 - (loss or Fraction(0))
        fair = came.stand * plants // all_plants if loss is not None else evenly(came.stand, plants, all_plants)
        stand = min(came.stand, max(ceil(plants / stays), fair))
        taken = min(bought, max(0, plants - floor(stand * stays)))
        part, rest = evolve(part, stand=stand), evolve(rest, stand=came.stand - stand)
        share = Fraction(stand, came.stand) if came.stand else share
    if came.cells is not None:
        # As many as of what stood in them, so that neither part has more seedlings than cells.
        cells = ceil(came.cells * share) if came.stand else evenly(came.cells, plants, all_plants)
        part, rest = evolve(part, cells=cells), evolve(rest, cells=came.cells - cells)
    return evolve(part, bought=taken or None), evolve(rest, bought=bought - taken or None)


def evenly(count: int, plants: int, all_plants: int) -> int:
    """How many of a count so many of all plants have, so that the part that has less for each plant has most."""
    rest, few = all_plants - plants, count * plants // all_plants
    if not plants or not rest:
        return few
    return max((few, few + 1), key=lambda one: min(Fraction(one, plants), Fraction(count - one, rest)))


def parted_records(one: Planting, first: int, rest: int) -> tuple[dict[str, Any], dict[str, Any]]:
    """What each part of so many plants has of the cells to sow for a planting, and of what came about of it."""
    if not first + rest:
        return {}, {}
    goes, stays = shared(one.actual, first, first + rest)
    if one.sow_cells is None:
        return {"actual": goes}, {"actual": stays}
    cells = max(1, evenly(one.sow_cells, first, first + rest))
    return {"actual": goes, "sow_cells": cells}, {"actual": stays, "sow_cells": max(1, one.sow_cells - cells)}


def added_up(one: Actual | None, other: Actual | None) -> Actual | None:
    """What came about of two parts together; None where nothing did, or not the same but for its counts."""
    if one is None or other is None or _uncounted(one) != _uncounted(other):
        return None
    return evolve(
        one, stand=_sum(one.stand, other.stand), cells=_sum(one.cells, other.cells),
        bought=_sum(one.bought, other.bought),
    )  # fmt: skip


def _uncounted(came: Actual) -> tuple[Actual, bool, bool]:
    """What came about without its counts, and which of these are not there; plants bought in may be for one alone."""
    return evolve(came, stand=None, cells=None, bought=None), came.stand is None, came.cells is None


def _sum(one: int | None, other: int | None) -> int | None:
    return None if one is None and other is None else (one or 0) + (other or 0)
