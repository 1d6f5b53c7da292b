"""Plants to raise, cells, seeds and trays for a planting; seed for a direct-sown one; what is thinned out.

Raise T = ceil(planted x (1 + spare)); usable cells u = g for one seed, 1 - (1 - g)^k for k seeds thinned to one;
cells = ceil(T / u); seeds = cells x k; trays = ceil(cells / cells per tray), in this order and with no other
rounding. Where a clump of n is left of k seeds, clusters of c seedlings each, at least ceil(n / c) of k must come up:
the upper tail of the binomial distribution. Where no more can come up than are left (k c <= n, sown in clumps)
nothing is thinned, and a cell with any seedling is usable. Thinned out = seeds x g x c less those that are left.

Where it is recorded how many cells were sown, or typed how many are to be, these are the cells, and the plants to
raise are not reckoned. Plants that are bought in need no raising: places to raise for = planted - bought in, not less
than nothing. What was sown before was sown for all places, unless all are bought in.

Seed sown direct: row length x rate x (1 + slack), up; without a rate so many a place, or plants / germination
x (1 + slack), up, as over a band. Formulas: common practice, no source; that seeds are plants / germination, rounded
up, is in the seed-rate tables of most extension services.
"""

from fractions import Fraction
from functools import lru_cache
from math import comb

from attrs import evolve, frozen

from gardenplot.layout import Grown, Layout
from gardenplot.plan import Crop, Establish, Pattern, Planting
from gardenplot.plan.clumps import is_own
from gardenplot.plan.value import CAME
from gardenplot.season.orders import clump_numbers
from gardenplot.units import Share
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, larger, worked

UP, DOWN = Rounding.UP, Rounding.DOWN
PACKET = Source.PACKET
"""Where numbers of a crop come from that a person typed from it."""
NOT_TYPED = Source.NOT_TYPED


_LEFT = Fraction(4, 3)
"""So many seedlings of a row for each plant that is to stand are left."""


def is_seed(crop: Crop) -> bool:
    """Whether seed is sown: potatoes and sets have neither grams nor rows nor areas, no trays, and all come up."""
    is_sure = crop.germination is not None and crop.germination.part == 1
    is_direct = crop.establish is Establish.DIRECT
    return not (is_direct and is_sure) or any((crop.seeds_per_gram, crop.seeds_per_row, crop.plants_per_area))


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
    Of a crop that stands in clumps, plants to raise are clumps, and `stand` are the plants that all of them have in
    the end. `thinned` are about the seedlings that are thinned out. `planted` are the places that are raised for,
    `bought` the plants that are bought in for others.
    """

    raised: Number | None = None
    to_sow: Number | None = None
    seed: Number | None = None
    filled: Number | None = None
    weight: Number | None = None
    still: Number | None = None
    planted: int = 0
    last_tray: Number | None = None
    stand: Number | None = None
    thinned: Number | None = None
    bought: Number | None = None

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
    def is_all_bought(self) -> bool:
        """Whether nothing is raised or sown, since all plants are bought in."""
        return self.bought is not None and self.to_sow is None and self.seed is None

    @property
    def spill(self) -> Spill | None:
        """One tray less, where that would still give a plant for every place."""
        trays, plants = _whole(self.filled), _whole(self.still)
        if trays is None or plants is None or trays < 2 or plants < self.planted:
            return None
        return Spill(trays - 1, plants, Fraction(plants - self.planted, self.planted))


def _whole(number: Number | None) -> int | None:
    return number.whole if number else None


def raised_for(one: Grown, layout: Layout) -> Raising:
    """What to raise or sow for the plants of a layout; nothing for trays that only stand there for a while."""
    if layout.holds_trays:
        return Raising()
    is_band, bought = layout.grid.pattern is Pattern.BROADCAST, bought_in(one.planting)
    needs_less = bought and (bought >= layout.plants or not was_sown(one.planting))
    made = raising(
        one.crop, layout.plants, layout.grid.in_row, is_band=is_band, given=given_cells(one.planting),
        bought=bought if needs_less else 0,
    )  # fmt: skip
    return evolve(made, bought=_bought(bought)) if bought else made


def bought_in(planting: Planting) -> int:
    """The plants that are bought in for a planting."""
    return (planting.actual.bought or 0) if planting.actual is not None else 0


def _bought(plants: int) -> Number:
    return known("bought_in", plants, Unit.COUNT, source=Source.CAME_ABOUT)


def was_sown(planting: Planting) -> bool:
    """Whether it is recorded that a planting was sown, or anything that comes later."""
    return planting.actual is not None and any(getattr(planting.actual, name) is not None for name in CAME)


def given_cells(planting: Planting) -> Number | None:
    """The cells that were sown, as they were recorded, else those that were typed; None where these are reckoned."""
    if planting.actual is not None and planting.actual.cells is not None:
        return known("cells", planting.actual.cells, Unit.COUNT, source=Source.CAME_ABOUT)
    if planting.sow_cells is not None:
        return known("cells", planting.sow_cells, Unit.COUNT, source=Source.OF_PLANTING)
    return None


@lru_cache(maxsize=4096)
def raising(
    crop: Crop, planted: int, in_row: int, *, is_band: bool = False, given: Number | None = None, bought: int = 0
) -> Raising:
    """What to raise or sow for so many planted places, each owning `in_row` nm of row, or in a band.

    `given` are the cells, where these are not reckoned, `bought` the plants that need no raising.
    """
    places = known("planted", planted, Unit.COUNT, source=Source.COUNTED)
    stand = None if is_band else _stand(crop, places)
    if bought:
        places = worked("raised_for", Unit.COUNT, "larger(planted − bought_in, 0)", places, _bought(bought),
                        using={"larger": larger}, source=RULES)  # fmt: skip
    made = Raising(planted=places.whole or 0, stand=stand)
    if bought and not made.planted and given is None:
        return made
    if crop.establish is Establish.DIRECT:
        return _direct(crop, made, places, in_row, is_band=is_band)
    if given is not None:
        return _in_cells(crop, evolve(made, to_sow=given), given, places)
    spare = part("spare", crop.spare, missing=Fraction(0))
    raised = worked(
        "raised", Unit.COUNT, f"{places.name} × (1 + spare)", places, spare, rounding=UP, trust=Trust.GOOD,
        source=RULES,
    )  # fmt: skip
    fit, terms = _fit(crop)
    cells = worked(
        "cells", Unit.COUNT, f"raised ÷ {fit}", raised, *terms, rounding=UP, trust=Trust.GOOD, source=RULES,
        using=_USING,
    )  # fmt: skip
    made = _in_cells(crop, evolve(made, raised=raised, to_sow=cells), cells, raised)
    if made.filled is None:
        return made
    still = worked(
        "still", Unit.COUNT, f"(trays − 1) × cells_per_tray × {fit}", made.filled, _in_tray(crop), *terms,
        rounding=DOWN, trust=Trust.GOOD, source=RULES, using=_USING,
    )  # fmt: skip
    return evolve(made, still=still)


def _in_cells(crop: Crop, made: Raising, cells: Number, kept: Number) -> Raising:
    """What so many cells take, of which so many places or plants are kept."""
    each = seeds_number(crop)
    seed = worked("seeds", Unit.COUNT, "cells × seeds_per_cell", cells, each, trust=Trust.GOOD, source=RULES)
    trays = worked("trays", Unit.COUNT, "cells ÷ cells_per_tray", cells, _in_tray(crop), rounding=UP, source=RULES)
    last = worked(
        "last_tray", Unit.COUNT, "cells − (trays − 1) × cells_per_tray", cells, trays, _in_tray(crop),
        trust=Trust.GOOD, source=RULES,
    )  # fmt: skip
    thinned = _thinned(crop, seed, kept) if is_thinned(crop) else None
    return evolve(made, seed=seed, filled=trays, weight=seed_grams(crop, seed), last_tray=last, thinned=thinned)


def _in_tray(crop: Crop) -> Number:
    return known("cells_per_tray", crop.tray_cells, Unit.COUNT, source=PACKET)


def seeds_number(crop: Crop) -> Number:
    """The seeds that are sown in each cell, one where nobody says."""
    return known("seeds_per_cell", crop.seeds_per_cell or 1, Unit.COUNT, source=_typed(crop, "seeds_per_cell"))


def is_thinned(crop: Crop) -> bool:
    """Whether more seedlings can come up in a cell than are left in a place."""
    return (crop.seeds_per_cell or 1) * seedlings_of(crop) > crop.stand


def is_row_thinned(crop: Crop, in_row: int) -> bool:
    """Whether a crop sown by the row comes up so much thicker than a plant each so many nm that it is thinned.

    Seed is sown somewhat thicker than it is to stand, since not all of it comes up, and nobody thins 6 to 5: common
    practice, no source. That up to a third more seedlings are left is our limit; where nobody knows how many of the
    seeds germinate, all of them are counted.
    """
    if crop.seeds_per_row is None:
        return False
    germinate = crop.germination.part if crop.germination is not None else 1
    return crop.seeds_per_row.per_nm * in_row * seedlings_of(crop) * germinate > _LEFT * crop.stand


def seedlings_of(crop: Crop) -> Fraction:
    """How many seedlings one seed gives."""
    return Fraction(str(crop.seedlings_per_seed or 1))


def usable_share(crop: Crop) -> Number:
    """The share of cells in which what is left in a place comes up; the germination where one seed is sown."""
    formula, terms = _fit(crop)
    return worked("usable_share", Unit.SHARE, formula, *terms, using=_USING, source=RULES)


def _fit(crop: Crop) -> tuple[str, tuple[Number, ...]]:
    """The formula of that share, and its terms."""
    germination = part("germination", crop.germination)
    if (crop.seeds_per_cell or 1) == 1:
        return "germination", (germination,)
    each = seeds_number(crop)
    if not is_thinned(crop) or crop.stand <= seedlings_of(crop):
        return "(1 − (1 − germination)^seeds_per_cell)", (germination, each)
    must = worked("seeds_needed", Unit.COUNT, "clump ÷ seedlings_per_seed", *clump_numbers(crop), _of_a_seed(crop),
                  rounding=UP, source=RULES)  # fmt: skip
    return "at_least(seeds_needed, seeds_per_cell, germination)", (must, each, germination)


def _at_least(needed: Fraction, sown: Fraction, comes_up: Fraction) -> Fraction:
    """The chance that so many or more of those sown come up, each by itself (binomial distribution)."""
    many = int(sown)
    return sum(
        (comb(many, up) * comes_up**up * (1 - comes_up) ** (many - up) for up in range(int(needed), many + 1)),
        Fraction(0),
    )


_USING = {"at_least": _at_least}


def _of_a_seed(crop: Crop) -> Number:
    source = NOT_TYPED if crop.seedlings_per_seed is None else PACKET
    return known("seedlings_per_seed", seedlings_of(crop), Unit.COUNT, source=source)


def _stand(crop: Crop, places: Number) -> Number | None:
    """The plants that stand in all places in the end, where they are more than one in each."""
    if crop.stand == 1:
        return None
    return worked("final_stand", Unit.COUNT, "planted × clump", places, *clump_numbers(crop), source=RULES)


def _thinned(crop: Crop, seed: Number, kept: Number) -> Number:
    """About how many seedlings are thinned out: all that come up less those that are left in the places kept."""
    left = known("clump", crop.stand, Unit.COUNT, source=_typed(crop, "clump"))
    return worked(
        "thinned", Unit.COUNT, f"larger(seeds × germination × seedlings_per_seed − {kept.name} × clump, 0)", seed,
        part("germination", crop.germination), _of_a_seed(crop), kept, left, rounding=DOWN, trust=Trust.FAIR,
        source=RULES, using={"larger": larger},
    )  # fmt: skip


def part(name: str, share: Share | None, *, missing: Fraction | None = None, source: Source = PACKET) -> Number:
    """A share of a crop that was put in."""
    if share is None:
        return known(name, missing, Unit.SHARE, source=NOT_TYPED)
    return known(name, share.part, Unit.SHARE, source=source)


def _typed(crop: Crop, name: str) -> Source:
    if is_own(crop, name):
        return Source.OF_PLANTING
    return NOT_TYPED if getattr(crop, name) is None else PACKET


def _direct(crop: Crop, made: Raising, places: Number, in_row: int, *, is_band: bool) -> Raising:
    slack = part("slack", crop.seeder_slack, missing=Fraction(0))
    seed = _seed_sown(crop, places, in_row, slack, is_band=is_band)
    more = is_thinned(crop) if crop.seeds_per_row is None else is_row_thinned(crop, in_row)
    thinned = _thinned(crop, seed, places) if more and not is_band else None
    return evolve(made, seed=seed, weight=seed_grams(crop, seed), thinned=thinned)


def _seed_sown(crop: Crop, places: Number, in_row: int, slack: Number, *, is_band: bool) -> Number:
    """Seed by the row; without a rate so many a place, or as many as come up; over a band as many as come up."""
    if crop.seeds_per_row is not None and not is_band:
        apart = known("in_row_spacing", in_row, Unit.LENGTH, source=PACKET)
        row = worked("row", Unit.LENGTH, f"{places.name} × in_row_spacing", places, apart, source=RULES)
        rate = known("sown", crop.seeds_per_row.per_nm, Unit.PER_LENGTH, source=PACKET)
        return _up("row × sown × (1 + slack)", row, rate, slack)
    if (crop.seeds_per_cell or 1) > 1 and not is_band:
        each = seeds_number(crop)
        return _up(f"{places.name} × seeds_per_cell × (1 + slack)", places, each, slack)
    germination = part("germination", crop.germination)
    if is_band or (crop.stand == 1 and crop.seedlings_per_seed is None):
        return _up(f"{places.name} ÷ germination × (1 + slack)", places, germination, slack)
    left = known("clump", crop.stand, Unit.COUNT, source=_typed(crop, "clump"))
    must = worked("seeds_needed", Unit.COUNT, "clump ÷ seedlings_per_seed", left, _of_a_seed(crop), rounding=UP,
                  source=RULES)  # fmt: skip
    return _up(f"{places.name} × seeds_needed ÷ germination × (1 + slack)", places, must, germination, slack)


def _up(formula: str, *terms: Number) -> Number:
    return worked("seeds", Unit.COUNT, formula, *terms, rounding=UP, trust=Trust.GOOD, source=RULES)


def seed_grams(crop: Crop, seed: Number) -> Number:
    """What so much seed of a crop weighs."""
    each = known("seeds_per_gram", crop.seeds_per_gram, Unit.PER_GRAM, source=PACKET)
    return worked(
        "seed_weight", Unit.GRAMS, f"{seed.name} ÷ seeds_per_gram", seed, each, trust=Trust.GOOD, source=RULES
    )
