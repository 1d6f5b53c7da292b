"""Plants to raise, cells, seeds and trays for a planting; seed for a direct-sown one.

Raise T = ceil(planted x (1 + spare)); usable cells u = g for one seed, 1 - (1 - g)^k for k seeds thinned to one;
cells = ceil(T / u); seeds = cells x k; trays = ceil(cells / cells per tray), in this order and with no other
rounding. Seed sown direct: row length x rate x (1 + slack), up. Formulas: common practice, no source; that seeds are
plants / germination, rounded up, is in the seed-rate tables of most extension services.
"""

from fractions import Fraction
from math import ceil

from attrs import frozen

from gardenplot.layout import Layout
from gardenplot.plan import Crop, Establish


@frozen
class Spill:
    """What one tray less would still give: about so many plants, and the spare share over those planted."""

    trays: int
    plants: int
    spare: Fraction


@frozen
class Raising:
    """Numbers to raise or sow; None where the crop does not say enough or it does not apply."""

    plants: int | None = None
    cells: int | None = None
    seeds: int | None = None
    trays: int | None = None
    grams: Fraction | None = None
    spill: Spill | None = None


def raised_for(crop: Crop, layout: Layout) -> Raising:
    """What to raise or sow for the plants of a layout; nothing for trays that only stand there for a while."""
    return Raising() if layout.holds_trays else raising(crop, layout.plants, layout.grid.in_row)


def raising(crop: Crop, planted: int, in_row: int) -> Raising:
    """What to raise or sow for so many planted places, each owning `in_row` nm of row."""
    if crop.establish is Establish.DIRECT:
        return _direct(crop, planted * in_row)
    wanted = ceil(planted * (1 + (crop.spare.part if crop.spare else 0)))
    if crop.germination is None:
        return Raising(plants=wanted)
    seeds_per_cell = crop.seeds_per_cell or 1
    usable = 1 - (1 - crop.germination.part) ** seeds_per_cell
    cells = ceil(wanted / usable)
    return Raising(
        plants=wanted,
        cells=cells,
        seeds=cells * seeds_per_cell,
        trays=-(-cells // crop.tray_cells) if crop.tray_cells else None,
        grams=_grams(crop, cells * seeds_per_cell),
        spill=_spill(crop.tray_cells, cells, usable, planted) if crop.tray_cells else None,
    )


def _direct(crop: Crop, row_length: int) -> Raising:
    if crop.seeds_per_row is None:
        return Raising()
    slack = crop.seeder_slack.part if crop.seeder_slack else Fraction(0)
    seeds = ceil(row_length * crop.seeds_per_row.per_nm * (1 + slack))
    return Raising(seeds=seeds, grams=_grams(crop, seeds))


def _grams(crop: Crop, seeds: int) -> Fraction | None:
    return Fraction(seeds) / Fraction(str(crop.seeds_per_gram)) if crop.seeds_per_gram else None


def _spill(tray_cells: int, cells: int, usable: Fraction, planted: int) -> Spill | None:
    """One tray less, where that would still give a plant for every place."""
    trays = -(-cells // tray_cells) - 1
    plants = int(trays * tray_cells * usable)
    if trays < 1 or plants < planted:
        return None
    return Spill(trays, plants, Fraction(plants - planted, planted))
