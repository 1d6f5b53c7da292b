"""The answers to what came about otherwise, side by side: what each takes and gives, as differences to the plan."""

from datetime import date
from functools import partial

from gardenplot.drawing.again_numbers import numbers_of_answer, setback_numbers
from gardenplot.drawing.again_words import answer_words, done_words, is_in_trays, setback_words, so_many
from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import looks
from gardenplot.drawing.remedies import Remedy, Trouble, days_more, stake_lines, stakes_cell, without_empty
from gardenplot.drawing.sayings import name_of, titled
from gardenplot.drawing.so_many import so_many_cells
from gardenplot.drawing.ways_words import name_of_way
from gardenplot.filling.again import Answer, AnswerKind, Setback
from gardenplot.plan import Plan, bed_of, planting_of
from gardenplot.season import dates_of
from gardenplot.units.figures import MINUS, apart, grouped, span
from gardenplot.words import _

GOES_AS_PLANNED = _("Nothing to plan again: as far as it is recorded, all goes as planned.")
_NAMES = {
    AnswerKind.BUY_IN: _("Buy in"),
    AnswerKind.SHORT: _("Plant short"),
    AnswerKind.SPREAD: _("Spread out"),
    AnswerKind.LATER: _("Set out late"),
    AnswerKind.SOW_AGAIN: _("Sow again today"),
}
"""Answers in few words; what is missing here is said in full."""


def trouble_of(plan: Plan, one: Setback) -> Trouble:
    """What deviates, with its answers."""
    bed = bed_of(plan, planting_of(plan, one.planting).bed).name
    title = _("{planting} in {bed}").format(planting=titled(plan, one.planting, looks(plan)), bed=bed)
    says = [*setback_words(plan, one)]
    if not one.answers:
        says.append(_("No answer was found that the plan can hold."))
    columns = (
        _("answer"), _("takes"), _("to sell"), _("set out"), _("ready"), _("market"), _("bed left"), _("stakes"),
    )  # fmt: skip
    remedies = tuple(_remedy(plan, one, answer) for answer in one.answers)
    numbers = partial(setback_numbers, plan, one)
    return without_empty(Trouble(one.planting, title, tuple(says), columns, remedies, numbers))


def _remedy(plan: Plan, one: Setback, answer: Answer) -> Remedy:
    planned, stakes = dates_of(plan, planting_of(plan, one.planting)), stake_lines(plan, answer.plan)
    market = answer.missed[0] if answer.missed else answer.market
    short = f" ({MINUS}{grouped(answer.short)})" if answer.short else ""
    name = name_of_way(answer.way) if answer.way else _name(answer)
    cells = (
        name, _takes(answer), f"{grouped(answer.units)}{short}",
        _day(answer.set_out, planned.in_ground), _day(answer.ready, planned.ready), _day(answer.market, market),
        str(span(answer.free, plan.place.units)) if answer.free else _("none"), stakes_cell(plan, answer.plan),
    )  # fmt: skip
    step = _("{crop}: {done}").format(crop=name_of(plan, one.planting), done=name)
    numbers = partial(numbers_of_answer, plan, one, answer)
    return Remedy(cells, answer_words(answer), stakes, step, answer.plan, numbers=numbers)


def _name(answer: Answer) -> str:
    """An answer in few words; what is not in trays is not set out late."""
    in_full = answer.kind is AnswerKind.LATER and not is_in_trays(answer)
    return done_words(answer) if in_full else _NAMES.get(answer.kind, done_words(answer))


def _takes(answer: Answer) -> str:
    """What is to be brought: "+16 plants", "+28 cells", or a spacing: "29 cm in the row"."""
    if answer.buy:
        return f"+{so_many(answer, answer.buy)}"
    if answer.sowing is not None and not answer.sowing.cells:
        return _("+{length} of row").format(length=span(answer.sowing.row, answer.plan.place.units))
    if answer.sowing is not None:
        return f"+{so_many_cells(answer.sowing.cells)}"
    if answer.spread is not None:
        return _("{spacing} in the row").format(spacing=apart(answer.spread.marked, answer.plan.place.units))
    return ""


def _day(day: date | None, planned: date | None) -> str:
    """A day with its difference to the one that was planned: "22 May (+10 days)"."""
    if day is None:
        return ""
    late = (day - planned).days if planned is not None else 0
    return f"{short_day(day)} ({days_more(late)})" if late else short_day(day)
