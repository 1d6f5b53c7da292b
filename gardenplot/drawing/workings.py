"""How the numbers of a layout came about: each sum with the numbers put in."""

from gardenplot.drawing.row_workings import row_workings
from gardenplot.drawing.so_many import so_many_cells, so_many_plants, so_many_seeds
from gardenplot.drawing.trust_words import TRUST
from gardenplot.layout import Grown, Layout
from gardenplot.plan import Plan
from gardenplot.supplies import raised_for
from gardenplot.units.figures import grouped, span
from gardenplot.words import _, ngettext
from gardenplot.working import RULES, Trust, Working


def workings(plan: Plan, one: Grown, layout: Layout) -> tuple[Working, ...]:
    """The sums behind a planting, from the width of its bed to the trays that raise it."""
    return (*row_workings(plan, one, layout), *_raise(plan, one, layout))


def working_line(one: Working) -> str:
    """A sum in a line, with how far to trust it: "trays:  185 ÷ 84  →  3, up  (good)"."""
    return f"{one.name}:  {one.sum}  →  {one.value}  ({TRUST[one.trust]})"


def _raise(plan: Plan, one: Grown, layout: Layout) -> list[Working]:
    made = raised_for(one.crop, layout)
    found = []
    if made.plants is None and made.seeds is not None:
        row = span(layout.plants * layout.grid.in_row, plan.place.units)
        slack = f" × (1 + {one.crop.seeder_slack})" if one.crop.seeder_slack else ""
        sown = f"{row} × {one.crop.seeds_per_row}{slack}"
        found.append(_up(_("seeds"), sown, made.seeds))
    if made.plants is not None and one.crop.spare is not None:
        found.append(_up(_("raise"), f"{grouped(layout.plants)} × (1 + {one.crop.spare})", made.plants))
    if made.cells is not None and one.crop.germination is not None:
        seeds = one.crop.seeds_per_cell or 1
        usable = str(one.crop.germination) if seeds == 1 else f"(1 − (1 − {one.crop.germination})^{seeds})"
        found.append(_up(_("cells"), f"{grouped(made.plants or 0)} ÷ {usable}", made.cells))
    if made.trays is not None:
        found.append(_up(_("trays"), f"{grouped(made.cells or 0)} ÷ {one.crop.tray_cells}", made.trays))
    return found


def _up(name: str, sum_: str, count: int) -> Working:
    """A count that is rounded up."""
    return Working(name, sum_, _("{count}, up").format(count=grouped(count)), Trust.GOOD, RULES)


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
