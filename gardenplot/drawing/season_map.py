"""The season of one bed as a map: its tape across, on the axis of the drawing above, and dates down."""

from datetime import date
from functools import lru_cache
from itertools import combinations

import numpy as np
from attrs import frozen

from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import counted
from gardenplot.drawing.season_bands import Band, bands, months
from gardenplot.layout import Grown, LaidOut, Layout, compete, followers_of
from gardenplot.layout.positions import positions
from gardenplot.plan import Actual, Cover, Establish, Place
from gardenplot.season import Span
from gardenplot.units import MM
from gardenplot.words import _


@frozen
class Kept:
    """Places that a planting has kept in another's ground: tape readings in mm, the day it goes in, its look."""

    readings: tuple[float, ...]
    until: date | None
    look: Look


@frozen
class MapBlock:
    """A planting on the map: its tape readings in mm, its days (None where it is not said), and its words.

    `line` is all of them in one line, `lines` in two; each has its words from the fullest to the shortest. `ready` is
    the first day that it can be cut, `sow` when it is sown in trays; `begun` says that it is in the ground, `cleared`
    that its ground is free again: what is neither is a plan. `kept` are the places in it of crops that follow.
    """

    planting: str
    start: float
    end: float
    first: date | None
    last: date | None
    look: Look
    line: tuple[str, ...]
    lines: tuple[tuple[str, ...], tuple[str, ...]]
    ready: date | None = None
    sow: date | None = None
    begun: bool = False
    cleared: bool = False
    kept: tuple[Kept, ...] = ()


@frozen
class Stretch:
    """Ground on some days, as MapBlock has it: wanted by two plantings, or under a cover."""

    start: float
    end: float
    first: date | None
    last: date | None


@frozen
class SeasonMap:
    """All that the map of a bed shows."""

    bed: str
    span: Span
    length: float
    zone: tuple[float, float]
    blocks: tuple[MapBlock, ...]
    clashes: tuple[Stretch, ...]
    bands: tuple[Band, ...]
    months: tuple[tuple[date, str], ...]
    covers: tuple[Stretch, ...] = ()


@lru_cache(maxsize=256)
def _map_of(laid: LaidOut, look: tuple[Look, ...], span: Span, place: Place, covers: tuple[Cover, ...]) -> SeasonMap:
    pairs = tuple(zip(laid.grown, laid.layouts, strict=True))
    looks = {layout.planting: each for layout, each in zip(laid.layouts, look, strict=True)}
    blocks = (_block(one, layout, looks[layout.planting], _kept(laid, layout, looks)) for one, layout in pairs)
    clashes = (_clash(one, other) for one, other in combinations(pairs, 2))
    first, last = laid.bed.zone
    return SeasonMap(
        laid.bed.id,
        span,
        laid.bed.length.nm / MM,
        (first / MM, last / MM),
        tuple(blocks),
        tuple(clash for clash in clashes if clash is not None),
        bands(place, span),
        tuple(months(span)),
        tuple(Stretch(one.start.nm / MM, one.end.nm / MM, one.on, one.off) for one in covers),
    )


def draw_season(
    laid: LaidOut, look: dict[str, Look], span: Span, place: Place, covers: tuple[Cover, ...] = ()
) -> SeasonMap:
    """The map of a bed over some days, with those of some covers that it has; the same values give the very same."""
    mine = tuple(one for one in covers if one.bed == laid.bed.id)
    return _map_of(laid, tuple(look[layout.planting] for layout in laid.layouts), span, place, mine)


def _kept(laid: LaidOut, layout: Layout, looks: dict[str, Look]) -> tuple[Kept, ...]:
    """The places that are kept in the ground of a planting, along the tape, for each crop that follows it there."""
    days = {one.planting.id: one.dates.in_ground for one in laid.grown}
    kept = []
    for follower in followers_of(laid, layout.planting):
        who, along = follower.layout.planting, np.unique(positions(follower.layout)[:, 0])
        inside = along[(along >= layout.start) & (along <= layout.end)]
        kept.append(Kept(tuple(x / MM for x in inside.tolist()), days[who], looks[who]))
    return tuple(kept)


def _block(one: Grown, layout: Layout, look: Look, kept: tuple[Kept, ...]) -> MapBlock:
    dates, came = one.dates, one.planting.actual or Actual()
    out = _("out by {day}").format(day=short_day(dates.out)) if dates.out else _("until it is taken out")
    day = (short_day(dates.out),) if dates.out else ()
    name, count = one.crop.name, counted(layout, clump=one.crop.stand)
    line = (f"{name}   {count}   {out}", f"{name}   {out}", f"{name}   {count}", name, *day)
    lines = (f"{name}   {count}", name), (out, *day)
    raised = one.crop.establish is Establish.TRANSPLANT
    return MapBlock(
        layout.planting,
        layout.start / MM,
        layout.end / MM,
        dates.in_ground,
        dates.out,
        look,
        line,
        lines,
        ready=dates.ready,
        sow=dates.sow if raised else None,
        begun=came.set_out is not None or (came.sown is not None and not raised),
        cleared=came.cleared is not None,
        kept=kept,
    )


_Pair = tuple[Grown, Layout]


def _clash(one: _Pair, other: _Pair) -> Stretch | None:
    start, end = max(one[1].start, other[1].start), min(one[1].end, other[1].end)
    if start >= end or not compete(one[0], other[0]):
        return None
    firsts = [pair[0].dates.in_ground for pair in (one, other) if pair[0].dates.in_ground is not None]
    lasts = [pair[0].dates.out for pair in (one, other) if pair[0].dates.out is not None]
    return Stretch(start / MM, end / MM, max(firsts, default=None), min(lasts, default=None))
