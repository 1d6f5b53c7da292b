"""What is marked anew as numbers: where each mark was and is, by how much it moves; and those of blocks."""

from collections.abc import Iterable, Iterator

from attrs import evolve

from gardenplot.drawing.changed_list import stakes_moved
from gardenplot.drawing.letters import looks
from gardenplot.drawing.moved_says import remarked
from gardenplot.drawing.sayings import titled
from gardenplot.drawing.workings import planting_numbers
from gardenplot.filling.moved import Moved, moved
from gardenplot.layout import lay_out_plan
from gardenplot.plan import Plan, bed_of
from gardenplot.working import RULES, Number, Source, Unit, known, worked


def moved_numbers(before: Plan, after: Plan) -> Iterator[Number]:
    """The marks that move from one plan to another, and how many stakes that takes."""
    yield known("stakes", stakes_moved(before, after), Unit.COUNT, source=Source.COUNTED)
    for one in moved(before, after):
        yield from _of_mark(before, after, one)


def _of_mark(before: Plan, after: Plan, one: Moved) -> Iterator[Number]:
    mark, unit = remarked(before, after, one), Unit.READING if one.on_tape else Unit.SPACING
    label = " ".join(part for part in (mark.letter, mark.name, mark.what) if part)
    label = f"{bed_of(after, one.bed).name}: {label}"
    old, new = known("marked_at", one.old, unit, source=Source.MEASURED), known("marked_now", one.new, unit,
                                                                               source=Source.MEASURED)  # fmt: skip
    if one.old is not None and one.new is not None:
        by = Unit.LENGTH if one.on_tape else Unit.SPACING
        yield evolve(worked("moves", by, "marked_now − marked_at", new, old, source=RULES), label=label)
    else:
        yield evolve(new if one.old is None else old, label=label)


def blocks_numbers(plan: Plan, plantings: Iterable[str]) -> Iterator[Number]:
    """All numbers of some plantings as they would stand, each with the name of its planting."""
    look, laid_out = looks(plan), lay_out_plan(plan)
    there = {layout.planting: laid for laid in laid_out for layout in laid.layouts}
    for planting in dict.fromkeys(one for one in plantings if one in there):
        for number in planting_numbers(there[planting], planting, laid_out):
            yield evolve(number, label=titled(plan, planting, look))
