"""A bound from what a programme's rows are priced at, in whole numbers: whoever set the prices, none is above it.

Prices are paid for all that the rows allow, and of each column what it is worth beyond what it costs at them (weak
duality). The solver works in floating point and may miss its own optimum by a little; its prices taken as they are
and all else worked out exactly make the bound safe (Neumaier and Shcherbina 2004, "Safe bounds in linear and
mixed-integer linear programming").
"""

from collections.abc import Sequence
from math import gcd

from gardenplot.filling.programme import Programme

_BITS = 80
"""Prices are counted in parts of one, each so many times halved: finer than a price of floating point matters."""


def most_at(programme: Programme, prices: Sequence[float]) -> int:
    """What nothing that fulfils a programme can be worth more than, by a price for each of its rows as it is posed.

    A price below nothing counts as nothing. What things are worth together is a multiple of what divides all worths.
    """
    one = 1 << _BITS
    rest = [worth * one for worth in programme.worths]
    paid = 0
    for row, price in zip(programme.rows, prices, strict=True):
        each = int(max(0.0, price) * one) // row.unit
        if each:
            paid += each * row.limit
            for column, factor in zip(row.columns, row.factors, strict=True):
                rest[column] -= each * factor
    paid += sum(most * left for most, left in zip(programme.limits, rest, strict=True) if left > 0)
    return whole_worth(programme, paid // one)


def whole_worth(programme: Programme, most: int) -> int:
    """The largest worth up to one that whole numbers of the columns of a programme can have together."""
    step = gcd(*programme.worths)
    return most // step * step if step else 0
