"""Water jugs round a stretch of bed: how many find room, what they weigh, and how long their heat would last.

Jugs stand side by side round the outside of a rectangle, corners too: 2 x floor((length + 2 d) / d) + 2 x
floor(width / d), geometry; so many as were typed stand evenly all round it. Water has 1 g / cm³ and 4.1868 J / (g K)
(the international table calorie, 1956; 1 Btu / (lb °F)), and gives off 333.5 J / g as it freezes (heat of fusion of
ice: CRC Handbook of Chemistry and Physics). A bed's loss on a clear night is a guess of the grower's; what comes of
it is weak, in minutes or hours, never degrees.
"""

from collections.abc import Iterator
from fractions import Fraction

from attrs import frozen

from gardenplot.plan import Bed, Jugs
from gardenplot.units import CM, Temperature
from gardenplot.working import RULES, Number, Rounding, Source, Trust, Unit, known, worked

WATER = Fraction(1, CM**3)
"""Grams in each nm³."""
HEAT_OF_WATER = Fraction("4.1868")
HEAT_OF_FREEZING = Fraction("333.5")
_TYPED = Source.OF_JUGS
_GUESS = Source.GUESS
_FREEZES = 32


@frozen
class JugHeat:
    """What jugs hold, weigh and give off, and for how long that makes up for a bed's loss."""

    count: Number
    water: Number
    weight: Number
    cooling: Number
    freezing: Number
    lasts: Number

    @property
    def numbers(self) -> tuple[Number, ...]:
        """All of them, in their order."""
        return self.count, self.water, self.weight, self.cooling, self.freezing, self.lasts


def jug_heat(bed: Bed, jugs: Jugs) -> JugHeat:
    """What the jugs round a stretch of a bed come to."""
    count = _count(bed, jugs)
    each = known("jug_volume", jugs.volume.nm3, Unit.VOLUME, source=_TYPED)
    water = worked("water", Unit.VOLUME, "jugs × jug_volume", count, each, source=RULES)
    dense = known("water_density", WATER, Unit.GRAMS_PER_VOLUME, source=Source.LITRE)
    weight = worked("weight", Unit.GRAMS, "water × water_density", water, dense, source=RULES)
    cooling = _cooling(weight, jugs)
    fusion = known("heat_of_freezing", HEAT_OF_FREEZING, Unit.JOULES_PER_GRAM, source=Source.HANDBOOK)
    freezing = worked("freezing", Unit.JOULES, "weight × heat_of_freezing", weight, fusion, trust=Trust.FAIR,
                      source=Source.LATENT_HEAT)  # fmt: skip
    loss = known(
        "night_loss", None if jugs.loss is None else jugs.loss.per_nm2, Unit.LOSS_OF_HEAT, trust=Trust.WEAK,
        source=_GUESS,
    )  # fmt: skip
    area = worked(
        "area", Unit.AREA, "stretch × bed_width",
        known("stretch", jugs.end.nm - jugs.start.nm, Unit.LENGTH, source=_TYPED),
        known("bed_width", bed.width.nm, Unit.LENGTH, source=Source.SIZE_OF_BED), source=RULES,
    )  # fmt: skip
    lasts = worked("lasts", Unit.HOURS, "cooling ÷ (area × night_loss)", cooling, area, loss, trust=Trust.WEAK,
                   source=RULES)  # fmt: skip
    return JugHeat(count, water, weight, cooling, freezing, lasts)


def jugs_at(bed: Bed, jugs: Jugs) -> tuple[tuple[Fraction, Fraction], ...]:
    """Where the middles of the jugs are that are counted: tape readings and offsets from the base line, in nm."""
    count, across = _count(bed, jugs), jugs.diameter.nm
    first, last, width = jugs.start.nm, jugs.end.nm, bed.width.nm
    half = Fraction(across, 2)
    if not count.terms:
        return tuple(_evenly_round((first - half, -half), (last + half, width + half), count.whole or 0))
    along, ends = (term.whole or 0 for term in count.terms)
    xs, ys = _side_by_side(first - across, last + across, along), _side_by_side(0, width, ends)
    sides = ((x, y) for y in (-half, width + half) for x in xs)
    return (*sides, *((x, y) for x in (first - half, last + half) for y in ys))


def _side_by_side(start: int, end: int, count: int) -> tuple[Fraction, ...]:
    """The middles of so many equal parts of a length."""
    return tuple(start + Fraction((2 * number + 1) * (end - start), 2 * count) for number in range(count))


def _evenly_round(
    low: tuple[Fraction, Fraction], high: tuple[Fraction, Fraction], count: int
) -> Iterator[tuple[Fraction, Fraction]]:
    """So many points equally far apart along the sides of a rectangle, from its first corner on."""
    long, wide = high[0] - low[0], high[1] - low[1]
    for number in range(count):
        way = Fraction(2 * number, count) * (long + wide)
        if way <= long:
            yield low[0] + way, low[1]
        elif way <= long + wide:
            yield high[0], low[1] + way - long
        elif way <= 2 * long + wide:
            yield high[0] - (way - long - wide), high[1]
        else:
            yield low[0], high[1] - (way - 2 * long - wide)


def _cooling(weight: Number, jugs: Jugs) -> Number:
    """What they give off until they are cold, or begin to freeze."""
    heat = known("heat_of_water", HEAT_OF_WATER, Unit.HEAT_OF_WATER, source=Source.BRITISH_UNIT)
    warm, cold = _kelvin(jugs.warm), _kelvin(jugs.cold)
    fall = None if warm is None or cold is None else max(Fraction(0), warm - max(cold, Fraction(0)))
    by = known("cooled_by", fall, Unit.KELVIN, trust=Trust.FAIR, source=_TYPED)
    return worked(
        "cooling", Unit.JOULES, "weight × heat_of_water × cooled_by", weight, heat, by, trust=Trust.FAIR,
        source=Source.SPECIFIC_HEAT,
    )  # fmt: skip


def _kelvin(temperature: Temperature | None) -> Fraction | None:
    """Kelvins above freezing."""
    return None if temperature is None else (temperature.fahrenheit - _FREEZES) * Fraction(5, 9)


def _count(bed: Bed, jugs: Jugs) -> Number:
    if jugs.count is not None:
        return known("jugs", jugs.count, Unit.COUNT, source=_TYPED)
    long = known("stretch", jugs.end.nm - jugs.start.nm, Unit.LENGTH, source=_TYPED)
    wide = known("bed_width", bed.width.nm, Unit.LENGTH, source=Source.SIZE_OF_BED)
    across = known("jug_diameter", jugs.diameter.nm, Unit.LENGTH, source=_TYPED)
    along = worked("jugs_along", Unit.COUNT, "(stretch + 2 × jug_diameter) ÷ jug_diameter", long, across,
                   rounding=Rounding.DOWN, source=Source.GEOMETRY)  # fmt: skip
    ends = worked("jugs_across", Unit.COUNT, "bed_width ÷ jug_diameter", wide, across, rounding=Rounding.DOWN,
                  source=Source.GEOMETRY)  # fmt: skip
    return worked("jugs", Unit.COUNT, "2 × jugs_along + 2 × jugs_across", along, ends, source=Source.GEOMETRY)
