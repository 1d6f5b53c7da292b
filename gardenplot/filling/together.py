"""All that deviates answered in one plan: each answer is the ground for the next.

Setbacks are answered in the plan's order, each looked for anew in the plan that the answers before it made, so that a
second one counts its market days and its room as they then are. An aim chooses answer by answer, which is no search
over all that could be combined.
"""

from collections.abc import Callable, Sequence
from datetime import date
from enum import StrEnum
from fractions import Fraction

from attrs import frozen

from gardenplot.errors import PlanError
from gardenplot.filling.again import plan_again
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.met import met_in
from gardenplot.filling.moved import Moved, moved
from gardenplot.filling.setbacks import Answer, Setback
from gardenplot.plan import Plan, planting_of
from gardenplot.words import _


class Aim(StrEnum):
    """What is looked for in an answer first."""

    FEWEST_MARKS = "fewest marks"
    MOST_MET = "most met"
    NOTHING_BOUGHT = "nothing bought"


@frozen
class Taken:
    """A setback in the plan as it was when its turn came, and what was chosen; None where it was left."""

    setback: Setback
    answer: Answer | None


@frozen
class Met:
    """Units that are wanted of a planting or of the order that it is for, and those that there are."""

    planting: str
    wanted: int
    units: int

    @property
    def short(self) -> int:
        """Units that are lacking."""
        return max(0, self.wanted - self.units)


@frozen
class Together:
    """A plan in which all setbacks had their turn, and the marks that are not where they were in the plan before."""

    before: Plan
    plan: Plan
    taken: tuple[Taken, ...]
    moved: tuple[Moved, ...]

    @property
    def answers(self) -> tuple[Answer, ...]:
        """What was chosen."""
        return tuple(one.answer for one in self.taken if one.answer is not None)

    @property
    def met(self) -> tuple[Met, ...]:
        """What there is in the end of each order on its market day, once, and of what has no order."""
        found: dict[tuple[str, int] | str, Met] = {}
        for one in self.taken:
            planting = planting_of(self.before, one.setback.planting)
            if planting.order is not None:
                (met,) = met_in(self.plan, (planting,))
                found[planting.order, planting.market or 1] = Met(planting.id, met.wanted, met.units)
            elif one.answer is not None:
                units = one.answer.units
                found[planting.id] = Met(planting.id, units + one.answer.short, units)
        return tuple(found.values())

    @property
    def short(self) -> int:
        """Units that are lacking in the end."""
        return sum(one.short for one in self.met)

    @property
    def costs(self) -> int:
        """Market days that all that was chosen costs, each once."""
        days = {
            (planting_of(self.before, one.setback.planting).order, day)
            for one in self.taken
            if one.answer is not None and one.answer.costs
            for day in one.answer.missed[-one.answer.costs :]
        }
        return len(days)

    @property
    def buy(self) -> int:
        """Plants to buy in."""
        return sum(one.buy for one in self.answers)


Choice = Callable[[Setback], Answer | None]


def answer_all(plan: Plan, today: date, loss: Fraction, choose: Choice) -> Together:
    """All setbacks of a plan, one after another, each answered as chosen; what only comes of an answer is none."""
    now, taken = plan, list[Taken]()
    for first in plan_again(plan, today, loss):
        still = plan_again(now, today, loss, frozenset((first.planting,)))
        for one in (each for each in still if each.why is first.why):
            answer = choose(one)
            taken.append(Taken(one, answer))
            now = answer.plan if answer is not None else now
    return Together(plan, now, tuple(taken), moved(as_staked(plan), now))


def by_number(numbers: Sequence[int]) -> Choice:
    """A choice of the first, second ... answer of each setback in turn; 0 and what is not said leave it.

    It raises PlanError where a setback has fewer answers.
    """
    left = iter(numbers)

    def choose(one: Setback) -> Answer | None:
        number, count = next(left, 0), len(one.answers)
        if number > count:
            words = _("{planting}: there is no answer {number}, it has {count}")
            raise PlanError(words.format(planting=one.planting, number=number, count=count))
        return one.answers[number - 1] if number else None

    return choose


def by_aim(aim: Aim) -> Choice:
    """A choice of the answer that an aim likes best; the smallest change where it likes several."""

    def choose(one: Setback) -> Answer | None:
        some = [answer for answer in one.answers if not answer.buy or aim is not Aim.NOTHING_BOUGHT]
        if aim is Aim.FEWEST_MARKS:
            return next(iter(some), None)
        return min(
            some,
            key=lambda answer: (len(answer.crowds), answer.short, answer.costs, len(answer.missed)),
            default=None,
        )

    return choose


def all_together(plan: Plan, today: date, loss: Fraction = Fraction(0)) -> tuple[tuple[Aim, Together], ...]:
    """The plans that the aims come to, those that chose alike once."""
    found: list[tuple[Aim, Together]] = []
    for aim in Aim:
        one = answer_all(plan, today, loss, by_aim(aim))
        if one.taken and all(one.plan != other.plan for _aim, other in found):
            found.append((aim, one))
    return tuple(found)
