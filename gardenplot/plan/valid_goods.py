"""What holds for goods, feeds, jugs and watering: known crops and beds, sizes and counts above nothing."""

import re

from gardenplot.plan.checks import Says, above_nothing, known_id, whole
from gardenplot.plan.choices import HoopShape
from gardenplot.plan.goods import Feed, Good, GoodKind, Jugs, Watering
from gardenplot.plan.value import Cover
from gardenplot.units import Amount
from gardenplot.words import _

_FIRST_YEAR, _LAST_YEAR = 1900, 2200
_MOST = 10_000
_PACKS = re.compile(r"\b(packets?|packs?|sachets?|envelopes?|bags?|tins?|box(es)?|trays?|flats?)\b", re.IGNORECASE)
_HOW_MANY = {
    GoodKind.SEED: _("“{typed}” does not say how many seeds: write it like 500 seeds or 10 g"),
    GoodKind.PLANT: _("“{typed}” does not say how many plants: write it like 24 plants"),
}


def good_says(good: Good, crops: set[str]) -> Says:
    """What is wrong with something that is bought."""
    if good.crop is not None:
        yield from known_id("crop", good.crop, crops)
    if good.kind is GoodKind.SEED and good.crop is None:
        yield "crop", _("seed is that of a crop")
    if good.kind is GoodKind.PLANT and good.crop is None:
        yield "crop", _("plants are those of a crop")
    if good.kind in _HOW_MANY:
        yield from _packs_say(good)
    for name in ("length", "width"):
        yield from above_nothing(name, getattr(good, name))
    yield from whole("cells", good.cells, 1, _MOST)
    yield from whole("year", good.year, _FIRST_YEAR, _LAST_YEAR)
    if good.germination is not None and good.germination.part == 0:
        yield "germination", _("a germination of 0 % gives no plants")
    if good.pack is not None and not _size(good.pack):
        yield "pack", _("a pack of nothing holds nothing")
    if good.mix is not None and not good.mix.nm3:
        yield "mix", _("a tray without mix grows nothing")


def _packs_say(good: Good) -> Says:
    """Packets that would be taken for so many seeds, or trays for so many plants."""
    for name in ("pack", "in_store"):
        amount: Amount | None = getattr(good, name)
        if amount is not None and amount.pieces is not None and _PACKS.search(amount.text):
            yield name, _HOW_MANY[good.kind].format(typed=amount.text)


def _size(amount: Amount) -> bool:
    return any((amount.pieces, amount.nm, amount.nm3, amount.grams))


def feed_says(feed: Feed, beds: set[str]) -> Says:
    """What is wrong with what is given to beds."""
    for bed in feed.beds:
        yield from known_id("beds", bed, beds)
    yield from above_nothing("depth", feed.depth)
    if (feed.rate is None) == (feed.depth is None):
        yield "rate", _("either a rate by weight, or a depth")


def jugs_say(jugs: Jugs, beds: set[str]) -> Says:
    """What is wrong with jugs round a stretch of bed."""
    yield from known_id("bed", jugs.bed, beds)
    if jugs.end.nm <= jugs.start.nm:
        yield "to", _("{end} is not beyond {start}").format(end=jugs.end, start=jugs.start)
    yield from above_nothing("diameter", jugs.diameter)
    yield from whole("count", jugs.count, 1, _MOST)
    if not jugs.volume.nm3:
        yield "volume", _("jugs of nothing hold no water")
    if jugs.warm and jugs.cold and jugs.warm.fahrenheit < jugs.cold.fahrenheit:
        yield "cold", _("{cold} is warmer than {warm}").format(cold=jugs.cold, warm=jugs.warm)


def watering_says(watering: Watering) -> Says:
    """What is wrong with how the place waters."""
    yield from above_nothing("weekly_depth", watering.weekly_depth)
    for name in ("line_flow", "supply", "tank", "efficiency"):
        given = getattr(watering, name)
        if given is not None and not _more_than_nothing(given):
            yield name, _("“{typed}” waters nothing").format(typed=given)


def _more_than_nothing(given: object) -> bool:
    names = ("nm2_per_hour", "nm3_per_hour", "nm3", "part")
    return any(getattr(given, name, 0) for name in names)


def hoop_says(cover: Cover) -> Says:
    """What is wrong with the hoops of a cover; one that is half round has no rise of its own."""
    yield from above_nothing("rise", cover.rise)
    if cover.rise is not None and cover.hoop_shape is HoopShape.HALF_ROUND:
        yield "rise", _("a half-round hoop is half as high as its bed is wide: leave it out, or take a half-ellipse")
