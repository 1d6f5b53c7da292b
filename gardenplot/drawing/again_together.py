"""All that deviates answered in one plan as somebody picks: what is chosen of each, and what all of it comes to."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date
from fractions import Fraction
from functools import partial

from attrs import evolve, field, frozen

from gardenplot.drawing.again_numbers import bought_number
from gardenplot.drawing.again_table import trouble_of
from gardenplot.drawing.letters import keeping_letters, looks
from gardenplot.drawing.marked_numbers import moved_numbers
from gardenplot.drawing.remedies import Remedy, Trouble, stake_lines
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.together_words import comes_to
from gardenplot.filling.again import Answer, AnswerKind, Setback, Why
from gardenplot.filling.again_ground import as_staked
from gardenplot.filling.together import Aim, Met, Taken, Together, answer_all, by_aim
from gardenplot.plan import Plan, planting_of
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Number, Source, Unit, added, known, larger, worked

About = tuple[str, Why]
"""What deviates, by its planting and why."""


@frozen
class Pick:
    """An answer by its kind and its place among those of that kind, since others come and go with what is picked."""

    kind: AnswerKind
    nth: int


@frozen
class Picks:
    """What is picked of each that deviates, None leaving it; of others the smallest change, `only` of one planting.

    An `aim` picks of all.
    """

    picked: Mapping[About, Pick | None] = field(factory=dict)
    only: str | None = None
    aim: Aim | None = None


@frozen
class Deviation:
    """One that deviates, in the plan that the answers before it make; `chosen` is the number of its remedy."""

    about: About
    trouble: Trouble
    picks: tuple[Pick, ...]
    chosen: int | None

    @property
    def remedy(self) -> Remedy | None:
        """What is chosen."""
        return None if self.chosen is None else self.trouble.remedies[self.chosen]

    @property
    def pick(self) -> Pick | None:
        """What is picked of it."""
        return None if self.chosen is None else self.picks[self.chosen]


@frozen
class Answered:
    """All that deviates, in the plan's order, and the one remedy that all that is chosen comes to."""

    deviations: tuple[Deviation, ...]
    remedy: Remedy

    @property
    def plantings(self) -> tuple[str, ...]:
        """What deviates."""
        return tuple(planting for planting, _why in (one.about for one in self.deviations))


def answered(plan: Plan, today: date, loss: Fraction, picks: Picks, *, told: object = None) -> Answered:
    """All that deviates, answered as picked; `told` is what long work is handed, and nothing is told."""
    del told
    found = answer_all(plan, today, loss, by_aim(picks.aim) if picks.aim else _choice(picks))
    deviations = tuple(_deviations(plan, found))
    return Answered(deviations, _remedy(plan, found, deviations))


def _choice(picks: Picks) -> Callable[[Setback], Answer | None]:
    """What is picked; the smallest change where that is no answer any more."""

    def choose(one: Setback) -> Answer | None:
        about = (one.planting, one.why)
        first = next(iter(one.answers), None)
        if about not in picks.picked:
            return first if picks.only in (None, one.planting) else None
        pick = picks.picked[about]
        if pick is None:
            return None
        return next((answer for answer, each in zip(one.answers, _picks(one), strict=True) if each == pick), first)

    return choose


def _picks(one: Setback) -> tuple[Pick, ...]:
    kinds = [answer.kind for answer in one.answers]
    return tuple(Pick(kind, kinds[:number].count(kind)) for number, kind in enumerate(kinds))


def _deviations(plan: Plan, found: Together) -> Iterator[Deviation]:
    now = plan
    for one in found.taken:
        back = one.setback
        yield Deviation((back.planting, back.why), trouble_of(now, back), _picks(back), _number(one))
        # Stakes and sheets are in somebody's hand by now: what was there keeps its letter.
        now = now if one.answer is None else keeping_letters(plan, one.answer.plan)


def _number(one: Taken) -> int | None:
    return next((number for number, answer in enumerate(one.setback.answers) if answer is one.answer), None)


def _remedy(plan: Plan, found: Together, deviations: tuple[Deviation, ...]) -> Remedy:
    """All that is chosen as one step; the only one that is chosen keeps its name."""
    steps = [one.remedy.step for one in deviations if one.remedy is not None]
    step = ngettext("Plan again, {count} answer", "Plan again, {count} answers", len(steps)).format(count=len(steps))
    staked, after = as_staked(plan), keeping_letters(plan, found.plan)
    says = _("All together: {comes_to}").format(comes_to=comes_to(found))
    numbers = partial(_numbers, staked, found)
    stakes = stake_lines(staked, after)
    return Remedy((), says, stakes, steps[0] if len(steps) == 1 else step, after, numbers=numbers)


def _numbers(staked: Plan, found: Together) -> Iterator[Number]:
    """What all of it comes to."""
    look = looks(found.before)
    short = [evolve(_short(found.before, one), label=titled(found.before, one.planting, look)) for one in found.met]
    yield added("units_short", Unit.COUNT, short, source=RULES)
    bought = [
        evolve(bought_number(one.setback, one.answer), label=titled(found.before, one.setback.planting, look))
        for one in found.taken
        if one.answer is not None and one.answer.buy
    ]
    yield added("buy", Unit.COUNT, bought, source=RULES)
    yield known("markets_missed", found.costs, Unit.COUNT, source=Source.COUNTED)
    yield from moved_numbers(staked, found.plan)


def _short(plan: Plan, one: Met) -> Number:
    """The units that are lacking of what was ordered, or planted for no order."""
    is_ordered = planting_of(plan, one.planting).order is not None
    name, source = ("ordered", Source.OF_ORDER) if is_ordered else ("planted", Source.COUNTED)
    wanted, units = known(name, one.wanted, Unit.COUNT, source=source), known("to_sell", one.units, Unit.COUNT,
                                                                              source=Source.COUNTED)  # fmt: skip
    formula = f"larger({name} − to_sell, 0)"
    return worked("units_short", Unit.COUNT, formula, wanted, units, using={"larger": larger}, source=RULES)
