"""The numbers of a planting and of a bed, each with its working: what is shown of them, and what opens it."""

from attrs import evolve

from gardenplot.drawing.date_words import dates_told
from gardenplot.drawing.so_many import so_many_cells, so_many_plants, so_many_seeds
from gardenplot.layout import Grown, LaidOut, Layout, plants_number, row_numbers
from gardenplot.plan import Bed
from gardenplot.supplies import raised_for
from gardenplot.units.figures import grouped
from gardenplot.words import ngettext
from gardenplot.working import Number, put_in


def planting_numbers(laid: LaidOut, planting: str) -> tuple[Number, ...]:
    """All numbers of a planting: rows and plants, what to raise, and its dates."""
    layout = laid.layout_of(planting)
    one = next(each for each in laid.grown if each.planting.id == planting)
    return (*counted_numbers(laid.bed, one, layout), *dates_told(one).values())


def counted_numbers(bed: Bed, one: Grown, layout: Layout) -> tuple[Number, ...]:
    """The numbers behind a planting, from the width of its bed to the trays that raise it."""
    return (*row_numbers(bed, one, layout), *raise_numbers(bed, one, layout))


def raise_numbers(bed: Bed, one: Grown, layout: Layout) -> tuple[Number, ...]:
    """What to raise or sow, as far as it is known: one seed a cell is as many seeds as cells and not told again."""
    made = raised_for(one.crop, layout)
    seed = made.seed if made.to_sow is None or made.seeds != made.cells else None
    raised = made.raised if one.crop.spare is not None else None
    still = made.still if made.spill is not None else None
    found = (raised, made.to_sow, seed, made.filled, still, made.weight)
    plants = evolve(plants_number(bed, one, layout), name="planted")
    return tuple(put_in(number, plants) for number in found if number is not None and number.value is not None)


def trays_line(one: Grown, layout: Layout) -> str:
    """What to raise in words: "157 plants, 175 cells, 3 trays of 84; 2 trays still give about 151"."""
    made = raised_for(one.crop, layout)
    parts = []
    if made.plants is not None:
        parts.append(so_many_plants(made.plants))
    if made.cells is not None:
        parts.append(so_many_cells(made.cells))
    if made.trays is not None:
        trays = ngettext("{count} tray of {cells}", "{count} trays of {cells}", made.trays)
        parts.append(trays.format(count=made.trays, cells=one.crop.tray_cells))
    if made.plants is None and made.seeds is not None:
        parts.append(so_many_seeds(made.seeds))
    words = ", ".join(parts)
    if made.spill is not None:
        still = ngettext(
            "{trays} tray still gives about {plants}", "{trays} trays still give about {plants}", made.spill.trays
        )
        words += "; " + still.format(trays=made.spill.trays, plants=grouped(made.spill.plants))
    return words
