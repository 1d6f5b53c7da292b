"""A task filled in rounds: what would stand if places did not count, that placed, and then what else finds ground.

A programme without places chooses the wishes and their days (`bound.py`), a placer tries to lay them out, asked again
with less ground where it cannot, and a search goes on from the best of these with all wishes and days.
"""

from collections.abc import Callable
from random import Random

from gardenplot.filling.bound import Asked, Relaxed, Sizes, relaxed, worth_alone
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.model import Answer, Task, Way
from gardenplot.filling.programme import Programme, programme_of
from gardenplot.filling.search import Search
from gardenplot.filling.valleys import BLOCKS_A_TURN, Valleys

Told = Callable[[Answer, int], bool]
"""Is told of each better filling with the bound so far, and says whether to go on."""

_FEW_KINDS, _NODES = 200, 200
"""With so few kinds of ways the solver has so many nodes of its tree, and a search begins with nothing too."""

_NEAR = 0.003
"""How near to the best without places the solver comes else, as a part of it, when it chooses what is placed."""

_FEW_WISHES = 20
"""All fillings are tried of no more."""

_CHOICES, _SPARED = 24, 0.01
"""How often the programme chooses anew where beds are laid out whole, and the part of the ground left."""

_TURNS_A_CHOICE = 1500
"""The solver takes about as long to choose anew."""

_MANY = 12
"""Blocks for each strip from which on strips that are alike are laid out whole."""

_STEPS, _STEPS_A_TURN = 5000, 20
"""Blocks tried when all fillings of a small task are: at once, before the solver is loaded, and for each turn."""

_TURNS_A_NODE, _FEW_NODES = 1000, 20
"""There is a node for so many turns when the search has ended, unless that makes a few, and a few where all that was
chosen as near to the best has a place."""


class Rounds:
    """The best filling so far, and the bound; each round adds to one of them and says whether to go on."""

    def __init__(self, task: Task, turns: int, told: Told, turned: Callable[[], object]) -> None:
        self._task, self._turns, self._told, self._turned = task, turns, told, turned
        self._chance, self._goes_on = Random(1).random, True
        self.best, self.bound = Search(task, turned=self._turn).best, worth_alone(task)
        self._programme: Programme | None = None
        self._is_small = sum(map(_kinds, task.wishes)) <= _FEW_KINDS
        self._asked = Asked(_NODES) if self._is_small else Asked(1, _NEAR)

    @property
    def is_best(self) -> bool:
        """Whether no filling can be worth more."""
        return self.best.worth >= self.bound

    def all(self) -> None:
        """Every round, until the bound is met or somebody says to stop."""
        if not self._told(self.best, self.bound) or not self._goes_on or self._all_tried(_STEPS):
            return
        if self._relaxed(Asked()) and self._searched() and not self._all_tried(_STEPS_A_TURN * self._turns):
            nodes = self._turns // _TURNS_A_NODE
            if nodes > _FEW_NODES and not self.is_best:
                self._relaxed(Asked(nodes))

    def _all_tried(self, steps: int) -> bool:
        """Whether all fillings are tried in so many steps, or need not be."""
        if self.is_best:
            return True
        is_small = sum(map(bool, self._task.wishes)) <= _FEW_WISHES
        proved = best_of_all(self._task, self.best, steps, self._turn) if is_small else None
        if proved is not None:
            self.bound = proved.worth
            self._better(proved)
        return proved is not None

    def _better(self, answer: Answer) -> bool:
        if answer.worth <= self.best.worth:
            return True
        self.best = answer
        return self._told(answer, self.bound)

    def _relaxed(self, asked: Asked) -> Relaxed | None:
        """The programme without places solved; None if somebody said to stop."""
        if self._programme is None:
            self._programme = programme_of(self._task, self._turn)
            if not self._goes_on:
                return None
        found = relaxed(self._task, asked, self._turn, self._programme)
        self.bound = min(self.bound, found.bound)
        return found if self._goes_on else None

    def _searched(self) -> bool:
        """What the programme chooses placed, and the search from there."""
        if self.is_best:
            return True
        chosen = self._relaxed(self._asked)
        if chosen is None:
            return False
        left = self._turns
        if any(chosen.stand):
            if _is_laid(self._task, chosen.stand):
                left //= 8
                goes_on = self._laid(chosen.stand, self._turns - left)
            else:
                left //= 2
                goes_on = self._run(Search(self._task, only=chosen.stand, turned=self._turn), self._turns - left)
            if not goes_on:
                return False
        anew = left // 2 if self._is_small else 0
        return self._run(Search(self._task, seed=3, turned=self._turn), anew) and self._run(
            Search(self._task, seed=2, start=self.best, turned=self._turn), left - anew
        )

    def _run(self, search: Search, turns: int) -> bool:
        if self.is_best:
            return True
        return self._better(search.best) and self._goes_on and search.run(turns, self.bound, self._better, self._turn)

    def _laid(self, stand: tuple[Sizes, ...], turns: int) -> bool:
        """What was chosen laid out and searched from, with less of the ground where not all of it finds a place, and
        with more where it does."""
        spared, step, is_near = 0.0, _SPARED, not self._is_small
        choices = min(_CHOICES, 1 + turns // _TURNS_A_CHOICE)
        each = turns // choices
        for _number in range(choices):
            valleys = self._in_valleys(stand, each // 2)
            search = Search(self._task, start=valleys.best, turned=self._turn)
            if not self._goes_on or not self._run(search, each - each // 2):
                return False
            if valleys.is_whole:
                step /= 2
            spared = max(0.0, spared - step if valleys.is_whole else spared + step)
            if self.is_best or (not spared and not is_near):
                break
            is_near = is_near and spared > 0
            found = self._relaxed(Asked(1, _NEAR, 1 - spared) if spared else Asked(_FEW_NODES))
            if found is None or not any(found.stand):
                return found is not None
            stand = found.stand
        return True

    def _in_valleys(self, stand: tuple[Sizes, ...], turns: int) -> Valleys:
        """What was chosen laid out anew, until all of it has a place or so many turns are taken."""
        valleys = Valleys(self._task, stand, self._chance, self._turn)
        for _number in range(1 + turns * BLOCKS_A_TURN // sum(map(bool, stand))):
            valleys.try_again()
            if valleys.is_whole or not self._goes_on:
                break
        return valleys

    def _turn(self) -> bool:
        """A turn is taken; whether to go on."""
        self._goes_on = self._goes_on and self._turned() is not False
        return self._goes_on


def _is_laid(task: Task, stand: tuple[Sizes, ...]) -> bool:
    """Whether what was chosen is laid out as a whole: where strips have many blocks each, or no two are alike."""
    return sum(map(bool, stand)) >= _MANY * len(task.strips) or len(set(task.strips)) == len(task.strips)


def _kinds(ways: tuple[Way, ...]) -> int:
    return len({(way.first, way.last, way.lengths, way.worths) for way in ways})
