"""How many of what, in words: "1 plant", "1 620 plants"."""

from gardenplot.plan import Crop
from gardenplot.supplies.raising import is_seed
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


def so_many_plants(count: int) -> str:
    """ "45 plants"."""
    return ngettext("{count} plant", "{count} plants", count).format(count=grouped(count))


def so_many_clumps(count: int, clump: int) -> str:
    """ "45 plants", or "45 clumps of 4" where so many are left in each place."""
    if clump == 1:
        return so_many_plants(count)
    return ngettext("{count} clump of {clump}", "{count} clumps of {clump}", count).format(
        count=grouped(count), clump=grouped(clump)
    )


def so_many_in_all(plants: int, clumps: int) -> str:
    """A sum of what stands alone and of what stands in clumps: "45 plants", "45 plants and 34 clumps"."""
    told = ngettext("{count} clump", "{count} clumps", clumps).format(count=grouped(clumps))
    if not clumps:
        return so_many_plants(plants)
    return _("{plants} and {clumps}").format(plants=so_many_plants(plants), clumps=told) if plants else told


def so_many_of(count: int, asked: int, clump: int) -> str:
    """ "64 of 90 plants", or "64 of 90 clumps of 4"."""
    if clump == 1:
        words = ngettext("{count} of {asked} plant", "{count} of {asked} plants", asked)
    else:
        words = ngettext("{count} of {asked} clump of {clump}", "{count} of {asked} clumps of {clump}", asked)
    return words.format(count=grouped(count), asked=grouped(asked), clump=grouped(clump))


def so_many_short(count: int, clump: int) -> str:
    """ "36 plants short", or "36 clumps short" of what stands in clumps."""
    words = ngettext("{count} plant short", "{count} plants short", count)
    if clump > 1:
        words = ngettext("{count} clump short", "{count} clumps short", count)
    return words.format(count=grouped(count))


def so_many_trays(count: int) -> str:
    """ "3 trays"."""
    return ngettext("{count} tray", "{count} trays", count).format(count=grouped(count))


def so_many_cells(count: int) -> str:
    """ "175 cells"."""
    return ngettext("{count} cell", "{count} cells", count).format(count=grouped(count))


def so_many_seeds(count: int) -> str:
    """ "832 seeds"."""
    return ngettext("{count} seed", "{count} seeds", count).format(count=grouped(count))


def so_many_sown(crop: Crop, count: int) -> str:
    """ "832 seeds", or "80 to plant" of what is planted where it grows and is no seed, as far as its packet says."""
    if is_seed(crop):
        return so_many_seeds(count)
    return ngettext("{count} to plant", "{count} to plant", count).format(count=grouped(count))


def so_many_days(count: int) -> str:
    """ "28 days"."""
    return ngettext("{count} day", "{count} days", count).format(count=grouped(count))
