"""Compost to a depth and amendments by weight over beds.

Volume = area x depth; weight = area x rate. What a rate of a product must be for a rate of a nutrient is its label's
or the soil test's to say; the program only multiplies.
"""

from gardenplot.plan import Feed
from gardenplot.working import RULES, Number, Source, Unit, known, worked

_TYPED = Source.OF_FEED


def fed(feed: Feed, area: int) -> Number:
    """What a bed with so many nm² is given: a volume where there is a depth, else a weight."""
    ground = known("area", area, Unit.AREA, source=Source.SIZE_OF_BED)
    if feed.depth is not None:
        deep = known("depth", feed.depth.nm, Unit.LENGTH, source=_TYPED)
        return worked("compost", Unit.BULK, "area × depth", ground, deep, source=RULES)
    rate = known("rate", feed.rate.per_nm2 if feed.rate else None, Unit.GRAMS_PER_AREA, source=_TYPED)
    return worked("amendment", Unit.GRAMS, "area × rate", ground, rate, source=RULES)
