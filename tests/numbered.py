"""Values that take long to draw, known by a number: each is drawn once and shown to every law that asks for it."""

from collections.abc import Callable
from functools import cache
from typing import TypeVar

from hypothesis import Phase, given, seed, settings
from hypothesis import strategies as st

T = TypeVar("T")
MANY = 200
"""How many of them there are."""


def numbered(drawn: st.SearchStrategy[T]) -> Callable[[int], T]:
    """The values of a strategy by number, the plainest by 0; the same number has the same value in every run.

    A test shows its law a few dozen values that are the same in every run, so it loses nothing when another law is
    shown some of them too, and drawing a plan takes ten times as long as most laws take to look at it.
    """
    found: list[T] = []

    @settings(max_examples=1, phases=(Phase.generate,), database=None)
    @given(drawn)
    def plainest(value: T) -> None:
        found.append(value)

    # The plainest comes first in every run; nothing at all is soon drawn, and then comes any other.
    @settings(max_examples=2, phases=(Phase.generate,), database=None)
    @given(st.none() | drawn)
    def another(value: T | None) -> None:
        if value is not None:
            found.append(value)

    @cache
    def value_of(number: int) -> T:
        seed(number)(another if number else plainest)()
        return found.pop()

    return value_of


def shared(drawn: st.SearchStrategy[T], value_of: Callable[[int], T]) -> st.SearchStrategy[T]:
    """Numbered values where examples are the same in every run, and any others where they are not (`deep`)."""
    return st.integers(0, MANY - 1).map(value_of) if settings().derandomize else drawn
