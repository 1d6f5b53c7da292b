"""How the numbers of a layout came about: each sum with the numbers put in."""

from gardenplot.drawing.number_words import working_of
from gardenplot.drawing.row_workings import row_workings
from gardenplot.drawing.so_many import so_many_cells, so_many_plants, so_many_seeds
from gardenplot.drawing.trust_words import TRUST
from gardenplot.layout import Grown, Layout
from gardenplot.plan import Plan
from gardenplot.supplies import raised_for
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext
from gardenplot.working import Number, Working


def workings(plan: Plan, one: Grown, layout: Layout) -> tuple[Working, ...]:
    """The sums behind a planting, from the width of its bed to the trays that raise it."""
    return (*row_workings(plan, one, layout), *_raise(plan, one, layout))


def working_line(one: Working) -> str:
    """A sum in a line, with how far to trust it: "trays:  185 ÷ 84  →  3, up  (good)"."""
    return f"{one.name}:  {one.sum}  →  {one.value}  ({TRUST[one.trust]})"


def raise_numbers(one: Grown, layout: Layout) -> tuple[Number, ...]:
    """What to raise or sow, as far as it is known: one seed a cell is as many seeds as cells and not told again."""
    made = raised_for(one.crop, layout)
    seed = made.seed if made.to_sow is None or made.seeds != made.cells else None
    raised = made.raised if one.crop.spare is not None else None
    found = (raised, made.to_sow, seed, made.filled, made.weight)
    return tuple(number for number in found if number is not None and number.value is not None)


def _raise(plan: Plan, one: Grown, layout: Layout) -> list[Working]:
    return [working_of(number, plan.place.units) for number in raise_numbers(one, layout)]


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


def sources_line(found: tuple[Working, ...]) -> str:
    """Where the formulas of some workings come from, each source once: "Formulas: common practice, no source"."""
    named = dict.fromkeys(one.source for one in found if one.source)
    return _("Formulas: {sources}").format(sources="; ".join(named)) if named else ""
