"""Filling a season with word of how far it has come, a few times a second; the filling itself asks no clock."""

from collections.abc import Callable
from time import monotonic

from gardenplot.filling.filled import Filling, filled
from gardenplot.filling.others import Other, others, turns_for_others
from gardenplot.filling.wanted import Weights
from gardenplot.plan import Plan

Told = Callable[[int, int, Filling | None], object]
"""Is told how many turns of how many are done, and the best filling so far where it is another one than before."""

_EVERY = 0.25
"""Seconds between two words: making a filling and sending it costs time that the search lacks."""


def fill_and_others(plan: Plan, turns: int, weights: Weights, *, told: Told) -> tuple[Filling, tuple[Other, ...]]:
    """The very filling that `fill` gives and others that differ in kind, with word of turns and the best so far."""
    # What may be split is looked for once more, in pieces.
    rounds = 2 if any(wish.piece is not None for wish in plan.wishes) else 1
    teller = _Teller(rounds * (turns + turns_for_others(plan, weights, turns)), told)
    filling = filled(plan, turns, weights, teller.better, teller.turned)
    return filling, others(plan, filling, weights, turns, teller.turned)


class _Teller:
    """Keeps what makes the best filling until it is time for a word."""

    def __init__(self, turns: int, told: Told) -> None:
        self._turns, self._told = turns, told
        self._done, self._last = 0, float("-inf")
        self._made: Callable[[], Filling] | None = None

    def better(self, made: Callable[[], Filling]) -> bool:
        """There is a better filling."""
        self._made = made
        self._tell()
        return True

    def turned(self) -> None:
        """One more turn is taken."""
        self._done += 1
        self._tell()

    def _tell(self) -> None:
        if monotonic() - self._last < _EVERY:
            return
        self._told(min(self._done, self._turns), self._turns, self._made() if self._made is not None else None)
        self._made, self._last = None, monotonic()
