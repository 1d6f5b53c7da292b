"""A task filled in rounds: what would stand if places did not count, that placed, and then what else finds ground.

A programme without places chooses the wishes and their days (`bound.py`), a placer tries to lay them out, asked again
with less ground where it cannot, and a search goes on from the best of these with all wishes and days.
"""

from collections.abc import Callable, Iterator
from functools import partial
from random import Random

from gardenplot.filling.bound import Asked, Relaxed, Sizes, relaxed, worth_alone
from gardenplot.filling.exact import best_of_all
from gardenplot.filling.ground import block_of
from gardenplot.filling.laying import laid_anew
from gardenplot.filling.model import Answer, Block, Task, Way
from gardenplot.filling.programme import Programme, programme_of
from gardenplot.filling.search import Search

Told = Callable[[Answer, int], bool]
"""Is told of each better filling with the bound so far, and says whether to go on."""

_FEW_KINDS, _NODES = 200, 200
"""With so few kinds of ways the solver has so many nodes of its tree, and a search begins with nothing too."""

_NEAR = 0.003
"""How near to the best without places the solver comes else, as a part of it, when it chooses what is placed."""

_FEW_WISHES = 20
"""All fillings are tried of no more."""

_CHOICES, _SPARED = 8, 0.01
"""How often the programme chooses anew where beds are laid out whole, and the part of the ground left."""

_TURNS_A_CHOICE = 1000
"""The solver takes about as long to choose anew."""

_BLOCKS_A_TURN = 60
"""Blocks laid one after another that take about as long as a turn of the search."""

_STEPS, _STEPS_A_TURN = 5000, 20
"""Blocks tried when all fillings of a small task are: at once, before the solver is loaded, and for each turn."""

_TURNS_A_NODE, _FEW_NODES = 1000, 20
"""There is a node for so many turns when the search has ended, unless that makes a few."""


class Rounds:
    """The best filling so far, and the bound; each round adds to one of them and says whether to go on."""

    def __init__(self, task: Task, turns: int, told: Told, turned: Callable[[], object]) -> None:
        self._task, self._turns, self._told, self._turned = task, turns, told, turned
        self._chance, self._blocks, self._goes_on = Random(1).random, 0, True
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
        if chosen.stand:
            if len(set(self._task.strips)) == len(self._task.strips):
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
        """Beds laid out whole, with less of the ground where what was chosen finds no place, and with more where it
        does."""
        spared, step = 0.0, _SPARED
        choices = min(_CHOICES, 1 + turns // _TURNS_A_CHOICE)
        for _number in range(choices):
            answer, is_whole = self._placed(stand, turns * _BLOCKS_A_TURN // choices)
            if not self._better(Search(self._task, start=answer, turned=self._turn).best) or not self._goes_on:
                return False
            if is_whole:
                step /= 2
            spared += -step if is_whole else step
            if self.is_best or spared <= 0:
                break
            found = self._relaxed(Asked(1, _NEAR, part=1 - spared))
            if found is None or not found.stand:
                return found is not None
            stand = found.stand
        return True

    def _placed(self, stand: tuple[Sizes, ...], most: int) -> tuple[Answer, bool]:
        """What was chosen, placed as far as can be when so many blocks are laid, and whether all has a place."""
        blocks: list[Block] = []
        by_strip: dict[int, list[Block]] = {}
        for strip, block in _chosen(self._task, stand):
            by_strip.setdefault(strip, []).append(block)
        is_whole, count = True, sum(map(len, by_strip.values()))
        for strip, mine in by_strip.items():
            mine.sort(key=lambda one: (one[2] - one[3]) * (one[1] - one[0]))
            passed = partial(self._laid_blocks, len(mine))
            found = laid_anew(self._task, strip, mine, 1 + most // count, self._chance, passed)
            blocks += [one for one in found.standing if isinstance(one, Block)]
            is_whole = is_whole and not found.out
        return Answer(tuple(blocks), 0), is_whole

    def _laid_blocks(self, count: int) -> bool:
        """So many blocks more are laid: a turn is taken when it is enough of them; whether to go on."""
        self._blocks += count
        while self._blocks >= _BLOCKS_A_TURN:
            self._blocks -= _BLOCKS_A_TURN
            self._turn()
        return self._goes_on

    def _turn(self) -> bool:
        """A turn is taken; whether to go on."""
        self._goes_on = self._goes_on and self._turned() is not False
        return self._goes_on


def _chosen(task: Task, stand: tuple[Sizes, ...]) -> Iterator[tuple[int, Block]]:
    """Each block that the programme chose, with its strip."""
    for wish, sizes in enumerate(stand):
        for number, count in sizes.items():
            way = task.wishes[wish][number]
            yield way.strip, block_of(way, wish, number, count - 1, 0)


def _kinds(ways: tuple[Way, ...]) -> int:
    return len({(way.first, way.last, way.lengths, way.worths) for way in ways})
