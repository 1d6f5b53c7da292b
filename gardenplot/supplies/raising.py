"""Plants to raise, cells, seeds and trays for a planting; seed for a direct-sown one.

Raise T = ceil(planted x (1 + spare)); usable cells u = g for one seed, 1 - (1 - g)^k for k seeds thinned to one;
cells = ceil(T / u); seeds = cells x k; trays = ceil(cells / cells per tray), in this order and with no other
rounding. Seed sown direct: row length x rate x (1 + slack), up; without a rate, or over a band, plants / germination
x (1 + slack), up. Formulas: common practice, no source; that seeds are plants / germination, rounded up, is in the
seed-rate tables of most extension services.
"""

from fractions import Fraction
from functools import lru_cache

from attrs import frozen

from gardenplot.layout import Layout
from gardenplot.plan import Crop, Establish, Pattern
from gardenplot.units import Share
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, worked

UP, DOWN = Rounding.UP, Rounding.DOWN
PACKET = Source.PACKET
"""Where numbers of a crop come from that a person typed from it."""
NOT_TYPED = Source.NOT_TYPED
_USABLE = "(1 − (1 − germination)^seeds_per_cell)"
"""The share of cells in which a plant stands in the end, where there are several seeds in each."""


@frozen
class Spill:
    """What one tray less would still give: about so many plants, and the spare share over those planted."""

    trays: int
    plants: int
    spare: Fraction


@frozen
class Raising:
    """Numbers to raise or sow; each is not known where the crop does not say enough, None where it does not apply.

    `still` are the plants that one tray less would give, `last_tray` the cells that are sown in the last one.
    """

    raised: Number | None = None
    to_sow: Number | None = None
    seed: Number | None = None
    filled: Number | None = None
    weight: Number | None = None
    still: Number | None = None
    planted: int = 0
    last_tray: Number | None = None

    @property
    def plants(self) -> int | None:
        """Plants to raise."""
        return _whole(self.raised)

    @property
    def cells(self) -> int | None:
        """Cells to sow."""
        return _whole(self.to_sow)

    @property
    def seeds(self) -> int | None:
        """Seeds, or clusters where that is what is sown."""
        return _whole(self.seed)

    @property
    def trays(self) -> int | None:
        """Trays."""
        return _whole(self.filled)

    @property
    def grams(self) -> Fraction | None:
        """Grams of seed."""
        return self.weight.value if self.weight else None

    @property
    def spill(self) -> Spill | None:
        """One tray less, where that would still give a plant for every place."""
        trays, plants = _whole(self.filled), _whole(self.still)
        if trays is None or plants is None or trays < 2 or plants < self.planted:
            return None
        return Spill(trays - 1, plants, Fraction(plants - self.planted, self.planted))


def _whole(number: Number | None) -> int | None:
    return number.whole if number else None


def raised_for(crop: Crop, layout: Layout) -> Raising:
    """What to raise or sow for the plants of a layout; nothing for trays that only stand there for a while."""
    if layout.holds_trays:
        return Raising()
    return raising(crop, layout.plants, layout.grid.in_row, is_band=layout.grid.pattern is Pattern.BROADCAST)


@lru_cache(maxsize=4096)
def raising(crop: Crop, planted: int, in_row: int, *, is_band: bool = False) -> Raising:
    """What to raise or sow for so many planted places, each owning `in_row` nm of row, or in a band."""
    places = known("planted", planted, Unit.COUNT, source=Source.COUNTED)
    if crop.establish is Establish.DIRECT:
        return _direct(crop, places, in_row, is_band=is_band)
    spare = part("spare", crop.spare, missing=Fraction(0))
    raised = worked(
        "raised", Unit.COUNT, "planted × (1 + spare)", places, spare, rounding=UP, trust=Trust.GOOD, source=RULES
    )
    germination = part("germination", crop.germination)
    each = known("seeds_per_cell", crop.seeds_per_cell or 1, Unit.COUNT, source=_typed(crop.seeds_per_cell))
    is_single = each.value == 1
    fit = "germination" if is_single else _USABLE
    terms = (germination,) if is_single else (germination, each)
    cells = worked(
        "cells", Unit.COUNT, f"raised ÷ {fit}", raised, *terms, rounding=UP, trust=Trust.GOOD, source=RULES
    )
    seed = worked("seeds", Unit.COUNT, "cells × seeds_per_cell", cells, each, trust=Trust.GOOD, source=RULES)
    in_tray = known("cells_per_tray", crop.tray_cells, Unit.COUNT, source=PACKET)
    trays = worked("trays", Unit.COUNT, "cells ÷ cells_per_tray", cells, in_tray, rounding=UP, source=RULES)
    still = worked(
        "still", Unit.COUNT, f"(trays − 1) × cells_per_tray × {fit}", trays, in_tray, *terms, rounding=DOWN,
        trust=Trust.GOOD, source=RULES,
    )  # fmt: skip
    last = worked(
        "last_tray", Unit.COUNT, "cells − (trays − 1) × cells_per_tray", cells, trays, in_tray, trust=Trust.GOOD,
        source=RULES,
    )  # fmt: skip
    return Raising(raised, cells, seed, trays, _grams(crop, seed), still, planted, last)


def part(name: str, share: Share | None, *, missing: Fraction | None = None, source: Source = PACKET) -> Number:
    """A share of a crop that was put in."""
    if share is None:
        return known(name, missing, Unit.SHARE, source=NOT_TYPED)
    return known(name, share.part, Unit.SHARE, source=source)


def _typed(number: int | None) -> Source:
    return NOT_TYPED if number is None else PACKET


def _direct(crop: Crop, places: Number, in_row: int, *, is_band: bool) -> Raising:
    slack = part("slack", crop.seeder_slack, missing=Fraction(0))
    if crop.seeds_per_row is None or is_band:
        germination = part("germination", crop.germination)
        formula = "planted ÷ germination × (1 + slack)"
        seed = worked(
            "seeds", Unit.COUNT, formula, places, germination, slack, rounding=UP, trust=Trust.GOOD, source=RULES
        )
        return Raising(seed=seed, weight=_grams(crop, seed))
    apart = known("in_row_spacing", in_row, Unit.LENGTH, source=PACKET)
    row = worked("row", Unit.LENGTH, "planted × in_row_spacing", places, apart, source=RULES)
    rate = known("sown", crop.seeds_per_row.per_nm, Unit.PER_LENGTH, source=PACKET)
    seed = worked(
        "seeds", Unit.COUNT, "row × sown × (1 + slack)", row, rate, slack, rounding=UP, trust=Trust.GOOD, source=RULES
    )
    return Raising(seed=seed, weight=_grams(crop, seed))


def _grams(crop: Crop, seed: Number) -> Number:
    each = known("seeds_per_gram", crop.seeds_per_gram, Unit.PER_GRAM, source=PACKET)
    return worked("seed_weight", Unit.GRAMS, "seeds ÷ seeds_per_gram", seed, each, trust=Trust.GOOD, source=RULES)
