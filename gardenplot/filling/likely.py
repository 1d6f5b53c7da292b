"""Which wishes can be in the best filling of a gap, by a price for its ground.

At any price for a unit of ground no filling is worth more than all of the ground at that price and what each wish is
worth beyond its own (Lagrangian bound of the knapsack problem: Kellerer, Pferschy and Pisinger, Knapsack Problems,
2004, chapter 3). A wish with which that is less than what is found without it is in no best filling.
"""

from collections.abc import Sequence

import numpy as np
from attrs import frozen

Ends = tuple[tuple[int, int], ...]
"""Of each run of sizes with even steps the first and the last that fits: its length, and what it is worth."""


@frozen
class Priced:
    """What no filling is worth more than, and for each wish by how much its best size is above its price.

    That is less than nothing for a wish that is worth less than its ground, and None for one that fits nowhere.
    """

    most: int
    beyond: tuple[int | None, ...]

    def first(self, count: int) -> list[int]:
        """So many wishes that are furthest above their prices, by their numbers."""
        some = [(-beyond, number) for number, beyond in enumerate(self.beyond) if beyond is not None]
        return sorted(number for _beyond, number in sorted(some)[:count])

    def could_be_in(self, number: int, found: int) -> bool:
        """Whether a filling with that wish can be worth as much as one that is found."""
        beyond = self.beyond[number]
        return beyond is not None and self.most + min(0, beyond) >= found


def priced(units: int, wishes: Sequence[Ends]) -> Priced:
    """Wishes at about the price at which the bound is least; any price would be true."""
    price = int(_least_price(units, [ends for ends in wishes if ends]))
    beyond = tuple(max((worth - price * length for length, worth in ends), default=None) for ends in wishes)
    return Priced(price * units + sum(each for each in beyond if each is not None and each > 0), beyond)


def _least_price(units: int, wishes: Sequence[Ends]) -> float:
    """The price of those at which some wish is worth no more than its ground that has the least bound.

    The bound falls and then rises along prices, so that a third of them is left out at each step.
    """
    if not wishes:
        return 0.0
    lengths, worths = (np.array([end[part] for ends in wishes for end in ends], dtype=float) for part in (0, 1))
    begins = np.cumsum([0, *map(len, wishes[:-1])])
    prices = np.sort(worths / np.maximum(lengths, 1))

    def bound(at: int) -> float:
        beyond = np.maximum.reduceat(worths - prices[at] * lengths, begins)
        return float(prices[at] * units + beyond[beyond > 0].sum())

    low, high = 0, len(prices) - 1
    while high - low > 1:
        step = max(1, (high - low) // 3)
        if bound(low + step) <= bound(max(low + step, high - step)):
            high -= step
        else:
            low += step
    return float(prices[high])
