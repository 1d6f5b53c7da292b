"""How far a long piece of work has come, told while it goes on: so many of so many parts."""

from collections.abc import Callable

Told = Callable[[int, int], None]
"""Is told how many parts are done, and of how many."""


def untold(_done: int, _parts: int) -> None:
    """For work that nobody waits for."""
