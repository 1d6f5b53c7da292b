"""What candidates for a block take of trays, seed, hoops and cloth, and what that costs."""

from collections.abc import Callable, Iterator
from fractions import Fraction

from attrs import evolve

from gardenplot.drawing.measure_line import Cell, MeasureLine
from gardenplot.drawing.unit_figures import figure
from gardenplot.layout.bed import grown_of
from gardenplot.layout.candidate import Candidate
from gardenplot.plan import Cover, bed_of, order_of, planting_of
from gardenplot.plan.clumps import crop_as_planted
from gardenplot.season.orders import units_from
from gardenplot.supplies import CoverCut, cover_cut, raised_for
from gardenplot.supplies.shopping import Asked, shopping, total_cost
from gardenplot.units import Units, length_of
from gardenplot.units.figures import MINUS, THIN
from gardenplot.words import _
from gardenplot.working import RULES, Number, Unit, known, worked

Candidates = tuple[Candidate, ...]


def supply_lines(candidates: Candidates) -> Iterator[MeasureLine]:
    """Trays, seed, hoops, cloth, film and cost, each where it is known of what is there now."""
    measures: tuple[tuple[str, Callable[[Candidate], Number | None]], ...] = (
        (_("Trays"), lambda one: _made(one)[0]),
        (_("Seed"), lambda one: _made(one)[1]),
        (_("Hoops over it"), _hoops),
        (_("Cloth over it"), _cloth),
        (_("Film over it"), _film),
        (_("Cost of seed and trays"), cost),
        (_("Cost of a unit"), cost_of_unit),
    )
    for heading, measured in measures:
        numbers = [measured(one) for one in candidates]
        if numbers[0] is not None and numbers[0].value is not None:
            yield _line(heading, candidates, numbers)


def supply_numbers(candidate: Candidate) -> Iterator[Number]:
    """The same of one candidate, each with its working."""
    measured = (_hoops, _cloth, _film, cost, cost_of_unit)
    found = (*_made(candidate), *(each(candidate) for each in measured))
    yield from (number for number in found if number is not None and number.value is not None)


def _made(candidate: Candidate) -> tuple[Number | None, Number | None]:
    planting = planting_of(candidate.plan, candidate.layout.planting)
    made = raised_for(grown_of(candidate.plan, planting), candidate.layout)
    return made.filled, made.seed


def _cut(candidate: Candidate) -> CoverCut | None:
    """The cover that stands over the block, cut for the block alone."""
    layout, units = candidate.layout, candidate.plan.place.units
    over = [one for one in candidate.plan.covers if one.bed == layout.bed and _overlaps(one, candidate)]
    if not over or layout.end <= layout.start:
        return None
    alone = evolve(over[0], start=length_of(layout.start, units), end=length_of(layout.end, units))
    return cover_cut(bed_of(candidate.plan, layout.bed), alone)


def _overlaps(cover: Cover, candidate: Candidate) -> bool:
    return cover.start.nm < candidate.layout.end and candidate.layout.start < cover.end.nm


def _hoops(candidate: Candidate) -> Number | None:
    cut = _cut(candidate)
    return cut.count if cut else None


def _cloth(candidate: Candidate) -> Number | None:
    cut = _cut(candidate)
    return cut.cloth.length if cut and cut.cloth else None


def _film(candidate: Candidate) -> Number | None:
    cut = _cut(candidate)
    return cut.film.length if cut and cut.film else None


def cost(candidate: Candidate) -> Number:
    """What the seed, the trays and the mix of a candidate cost, as far as they have a price."""
    layout = candidate.layout
    items = shopping(candidate.plan, Asked(frozenset({layout.bed}), planting=layout.planting))
    if not any(item.cost.value is not None for item in items):
        return known("cost", None, Unit.MONEY)
    return total_cost(items)


def cost_of_unit(candidate: Candidate) -> Number:
    """The same for each unit of its order that stands, or for each plant without an order."""
    plan, layout = candidate.plan, candidate.layout
    planting = planting_of(plan, layout.planting)
    units = layout.planted
    if planting.order is not None:
        units = units_from(order_of(plan, planting.order), crop_as_planted(plan, planting), units, layout.grid.in_row)
    sold = known("units_sold", units, Unit.COUNT, source=RULES)
    return worked("cost_per_unit", Unit.MONEY, "cost ÷ units_sold", cost(candidate), sold, source=RULES)


def _line(heading: str, candidates: Candidates, numbers: list[Number | None]) -> MeasureLine:
    place = candidates[0].plan.place
    now = numbers[0].value if numbers[0] else None
    return MeasureLine(heading, tuple(_cell(number, now, place.units, place.money) for number in numbers))


def _cell(number: Number | None, now: Fraction | None, units: Units, money: str) -> Cell:
    if number is None or number.value is None or now is None:
        return Cell("–")
    more = number.value - now
    shown, none = figure(abs(more), number.unit, units), figure(Fraction(0), number.unit, units)
    difference = "" if shown == none else f"{'+' if more > 0 else MINUS}{shown.replace(THIN, ' ').strip()}"
    return Cell(figure(number.value, number.unit, units, money), difference, worse=more > 0 and shown != none)
