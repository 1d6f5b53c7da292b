"""The numbers of beds, their blocks and all that is needed, each with its sum, as a list to be read on paper.

The lines are those that open for a bed, a block or a thing on the shopping list (`workings_of`). What was put in is
told together below them, by where it comes from; a sum that went into several numbers is told once.
"""

from collections.abc import Iterable, Iterator

from attrs import frozen

from gardenplot.drawing.letters import looks
from gardenplot.drawing.number_words import Line, workings_of
from gardenplot.drawing.opened import of_cost, of_item, of_plan
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.shopping_list import shop_groups
from gardenplot.drawing.supply_words import covers_apart, numbers_of
from gardenplot.drawing.trust_words import EXACT
from gardenplot.drawing.turns import walked
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan
from gardenplot.supplies.shopping import Asked
from gardenplot.words import _
from gardenplot.working import Number

WorkingRow = Line | tuple[str, ...]
"""A number with its sum, or what was put in, source by source: "seed packet: in-row spacing 20 cm; spare 15 %"."""


@frozen
class WorkingPart:
    """The numbers of a bed, a block or a thing that is needed; `beside` is its bed or what kind of thing it is.

    One of a bed has the bed's id.
    """

    name: str
    beside: str
    rows: tuple[WorkingRow, ...]
    bed: str = ""
    is_needed: bool = False


_Told = set[tuple[str, str, str]]
"""What sums said that are on the list by now."""


def working_parts(plan: Plan, asked: Asked) -> tuple[WorkingPart, ...]:
    """Bed by bed its own numbers and those of its blocks; then what is needed, group by group, and the whole plan.

    The plan as a whole is told only where all beds are asked for.
    """
    told: _Told = set()
    parts = [part for number in range(len(plan.beds)) for part in _bed(plan, number, asked, told)]
    parts += _needed(plan, asked, told)
    if not asked.beds and plan.beds:
        parts.append(WorkingPart(_("The plan"), plan.place.name, tuple(_rows(plan, of_plan(plan).numbers, told))))
    return tuple(part for part in parts if part.rows)


def _bed(plan: Plan, number: int, asked: Asked, told: _Told) -> Iterator[WorkingPart]:
    """A bed, each of several covers, then its blocks as somebody comes to them who walks along it."""
    laid, look = lay_out_plan(plan)[number], looks(plan)
    if not asked.has(laid.bed.id):
        return
    blocks = []
    for layout in walked(laid):
        rows = tuple(_rows(plan, numbers_of(plan, laid.bed.id, layout.planting), told))
        blocks.append(WorkingPart(titled(plan, layout.planting, look), laid.bed.name, rows))
    covers = covers_apart(plan, laid.bed)
    apart = [number for _name, numbers in covers for number in numbers]
    own = (number for number in numbers_of(plan, laid.bed.id, None) if number not in apart)
    yield WorkingPart(laid.bed.name, "", tuple(_rows(plan, own, told)), laid.bed.id)
    for name, numbers in covers:
        yield WorkingPart(name, laid.bed.name, tuple(_rows(plan, numbers, told)))
    yield from blocks


def _needed(plan: Plan, asked: Asked, told: _Told) -> Iterator[WorkingPart]:
    """What is to be bought and carried, and what it costs."""
    groups = shop_groups(plan, asked)
    for group in groups:
        for row in group.rows:
            opened = of_item(plan, row.item)
            rows = tuple(_rows(plan, opened.numbers, told))
            yield WorkingPart(opened.title, group.name, rows, is_needed=True)
    cost = of_cost(plan, groups)
    if cost.numbers[0].terms:
        yield WorkingPart(cost.title, "", tuple(_rows(plan, cost.numbers, told)), is_needed=True)


def _rows(plan: Plan, numbers: Iterable[Number], told: _Told) -> Iterator[WorkingRow]:
    """Numbers with their sums, without those that went into them and were told before; then what was put in."""
    lines = [*workings_of(numbers, plan.place.units, plan.place.money, told)]
    told |= {line.says for line in lines if line.is_sum}
    yield from (line for line in lines if _is_worked_out(line))
    put_in = tuple(_put_in(line for line in lines if not _is_worked_out(line)))
    if put_in:
        yield put_in


def _is_worked_out(line: Line) -> bool:
    """Whether there is something to work out; a sum of one thing alone is told by that: "Field bed: needed 14"."""
    return line.is_sum and line.sum != line.value


def _put_in(lines: Iterable[Line]) -> Iterator[str]:
    """What was put in, source by source."""
    by_source: dict[str, list[str]] = {}
    for line in lines:
        name = f"{line.name}:" if line.is_labelled else line.name
        words, source = f"{name} {line.value}", line.formula if line.is_sum else line.source
        by_source.setdefault(source, []).append(words if line.trust == EXACT else f"{words} ({line.trust})")
    for source, told in by_source.items():
        numbers = "; ".join(dict.fromkeys(told))
        yield _("{source}: {numbers}").format(source=source, numbers=numbers) if source else numbers
