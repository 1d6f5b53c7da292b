"""What opens when it is asked how a number of something proposed came about: of a candidate, of a filling."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from attrs import evolve

from gardenplot.drawing.compare_supplies import supply_numbers
from gardenplot.drawing.compare_words import candidate_name
from gardenplot.drawing.opened import Opened, found_numbers
from gardenplot.drawing.sayings import name_of
from gardenplot.drawing.workings import bed_numbers, planting_numbers
from gardenplot.filling import Filling
from gardenplot.findings import find_in_bed
from gardenplot.layout import lay_out_bed, lay_out_plan
from gardenplot.layout.candidate import Candidate
from gardenplot.layout.close_numbers import closer_numbers
from gardenplot.layout.told import first_true
from gardenplot.plan import bed_of, by_id, crop_of, order_of, planting_of
from gardenplot.words import _
from gardenplot.working import RULES, Number, Source, Unit, added, known, worked


def of_candidate(candidate: Candidate, now: Candidate) -> Opened:
    """One way to lay a block out: its rows, plants and length, what it takes, and how all that differs from now."""
    planting = candidate.layout.planting
    faults = [each for each in find_in_bed(candidate.laid) if each.cannot_be_done]
    numbers = (
        *planting_numbers(candidate.laid, planting, lay_out_plan(candidate.plan)),
        *_measures(candidate).values(),
        *_differences(candidate, now),
        *_against_packet(candidate),
        *(number for each in faults for number in found_numbers(candidate.plan, each)),
        *bed_numbers(candidate.laid),
    )
    return Opened(candidate_name(candidate), numbers)


def _measures(candidate: Candidate) -> dict[str, Number]:
    """What candidates are compared by, each by a name of its own."""
    layout = candidate.layout
    plants = known("planted", layout.plants, Unit.COUNT, source=Source.COUNTED)
    block = known("block", layout.length, Unit.LENGTH, source=Source.MEASURED)
    found = {
        "planted": plants,
        "block": block,
        "longest": known("longest", candidate.piece, Unit.LENGTH, source=Source.MEASURED),
        "left": known("left", candidate.left, Unit.LENGTH, source=Source.MEASURED),
        "per_length": worked("per_length", Unit.PER_LENGTH, "planted ÷ block", plants, block, source=RULES),
        "rows": known("rows", layout.grid.rows, Unit.COUNT, source=Source.COUNTED),
        "rows_apart": known("rows_apart", layout.grid.between, Unit.SPACING, source=Source.MEASURED),
        "in_row": known("in_row_spacing", layout.grid.in_row, Unit.SPACING, source=Source.MEASURED),
        "edge": known("edge", layout.grid.edge, Unit.SPACING, source=Source.MEASURED),
    }
    if candidate.other is not None:
        found["else_planted"] = known("else_planted", candidate.other.plants, Unit.COUNT, source=Source.COUNTED)
        found["else_block"] = known("else_block", candidate.other.length, Unit.LENGTH, source=Source.SEARCH_LENGTH)
    found |= {number.name: number for number in supply_numbers(candidate)}
    return {name: number for name, number in found.items() if number.value is not None}


def _differences(candidate: Candidate, now: Candidate) -> Iterator[Number]:
    """How much more each measure is than now."""
    here, there = _measures(candidate), _measures(now)
    for name, number in here.items():
        if name in there and number.value != there[name].value:
            terms = evolve(number, name="here"), evolve(there[name], name="now")
            more = worked("differs", number.unit, "here − now", *terms, source=RULES)
            yield evolve(more, label=number.name)


def _against_packet(candidate: Candidate) -> Iterator[Number]:
    """What stands beyond what is asked for, what is closer than the packet, near the edge or in the way."""
    planting = planting_of(candidate.plan, candidate.layout.planting)
    if planting.order is not None:
        units = order_of(candidate.plan, planting.order).units
        yield known("ordered", units, Unit.COUNT, source=Source.OF_ORDER)
    if candidate.over is not None:
        yield known("asked_over", candidate.over, Unit.COUNT, source=Source.COUNTED)
    yield from _closer(candidate)
    if candidate.layout.grid.twin:
        yield known("twin_spacing", candidate.layout.grid.twin, Unit.SPACING, source=Source.MEASURED)
    for one in (candidate.marking.in_row, candidate.marking.rows):
        if one is not None:
            yield known("markable", one.nearest, Unit.SPACING, source=Source.OF_PLACE)
    if candidate.in_the_way:
        yield known("in_the_way", candidate.in_the_way, Unit.COUNT, source=Source.COUNTED)


def _closer(candidate: Candidate) -> Iterator[Number]:
    """What is closer than the packet, and nearer to the edge than is asked for now."""
    layout = candidate.layout
    one = next(each for each in candidate.laid.grown if each.planting.id == layout.planting)
    found = {number.name: number for number in closer_numbers(candidate.laid.bed, one, layout)}
    for name, nm in (("closer_in_row", candidate.closer_in_row), ("closer_rows", candidate.closer_rows),
                     ("near_edge", candidate.near_edge)):  # fmt: skip
        if nm:
            yield first_true(nm, found.get(name)) or known(name, nm, Unit.SPACING, source=Source.MEASURED)


def of_filling(filling: Filling) -> Opened:
    """How much of what is wanted a filling meets, what its wishes are worth, and how far from the best it is."""
    wanted = known("wanted_all", filling.wanted, Unit.COUNT, source=Source.COUNTED)
    lacking = known("lack_ground", len(filling.lacking), Unit.COUNT, source=Source.TRIED)
    met = worked("met", Unit.COUNT, "wanted_all − lack_ground", wanted, lacking, source=RULES)
    worth = known("worth", filling.worth, Unit.COUNT, source=Source.TRIED)
    bound = known("bound", filling.bound, Unit.COUNT, source=Source.BOUND)
    short = worked("short_of_bound", Unit.SHARE, "in_tenths(1 − worth ÷ bound)", worth, bound, source=RULES,
                   using={"in_tenths": _in_tenths})  # fmt: skip
    numbers = (met, *_wishes_worth(filling), *([] if filling.proven else [short]), worth, bound)
    return Opened(_("What is proposed"), numbers)


def _in_tenths(part: Fraction) -> Fraction:
    """A share up to a tenth of a hundredth, so that it never says less than it is."""
    return Fraction(ceil(1000 * part), 1000)


def _wishes_worth(filling: Filling) -> Iterator[Number]:
    """What the plants for wishes are worth, each planting with its own."""
    parts = []
    for one in filling.placed:
        wish = planting_of(filling.plan, one.planting).wish
        if wish is not None:
            each = known("worth_each", by_id(filling.plan.wishes, wish).worth, Unit.COUNT, source=Source.OF_WISH)
            plants = known("wish_plants", one.plants, Unit.COUNT, source=Source.TRIED)
            part = worked("wish_worth", Unit.COUNT, "wish_plants × worth_each", plants, each, source=RULES)
            parts.append(evolve(part, label=name_of(filling.plan, one.planting)))
    if parts:
        yield added("wishes_worth", Unit.COUNT, parts, RULES)


def of_placed(filling: Filling, number: int) -> Opened:
    """A row of what a filling placed and what it did not: the planting as it would stand, or what is lacking."""
    if number >= len(filling.lacking):
        one = filling.placed[number - len(filling.lacking)]
        laid = lay_out_bed(filling.plan, bed_of(filling.plan, one.bed))
        numbers = planting_numbers(laid, one.planting, lay_out_plan(filling.plan))
        return Opened(name_of(filling.plan, one.planting), numbers)
    lack = filling.lacking[number]
    has = known("planted", lack.plants, Unit.COUNT, source=Source.TRIED)
    lacks = known("lacks", lack.lacks, Unit.COUNT, source=Source.TRIED)
    wanted = worked("wanted_plants", Unit.COUNT, "planted + lacks", has, lacks, source=RULES)
    return Opened(crop_of(filling.plan, lack.crop).name, (wanted,))
