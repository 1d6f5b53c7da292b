"""The season of one bed as a map: its tape across, on the axis of the drawing above, and dates down."""

from datetime import date, timedelta
from functools import lru_cache
from itertools import combinations

from attrs import frozen

from gardenplot.drawing.days import short_day
from gardenplot.drawing.letters import Look
from gardenplot.drawing.sayings import counted
from gardenplot.layout import Grown, LaidOut, Layout, compete
from gardenplot.plan import MonthDay, Place
from gardenplot.season import Span
from gardenplot.units import MM
from gardenplot.words import _

_LONGEST_COLD = 150
"""Days before the last freeze that are drawn as cold: nobody plants further back on its account."""


@frozen
class MapBlock:
    """A planting on the map: its tape readings in mm, its days (None where it is not said), and its words.

    `line` is all of them in one line, `lines` in two; each has its words from the fullest to the shortest.
    """

    planting: str
    start: float
    end: float
    first: date | None
    last: date | None
    look: Look
    line: tuple[str, ...]
    lines: tuple[tuple[str, ...], tuple[str, ...]]


@frozen
class Clash:
    """Ground that two plantings want on the same days, as MapBlock has it."""

    start: float
    end: float
    first: date | None
    last: date | None


@frozen
class Cold:
    """Days in which it still freezes with some chance, up to the last of them, and the words for that."""

    first: date
    last: date
    words: str


@frozen
class SeasonMap:
    """All that the map of a bed shows."""

    span: Span
    length: float
    zone: tuple[float, float]
    blocks: tuple[MapBlock, ...]
    clashes: tuple[Clash, ...]
    cold: tuple[Cold, ...]
    months: tuple[tuple[date, str], ...]


@lru_cache(maxsize=256)
def _map_of(laid: LaidOut, look: tuple[Look, ...], span: Span, place: Place) -> SeasonMap:
    pairs = tuple(zip(laid.grown, laid.layouts, strict=True))
    blocks = (_block(one, layout, each) for (one, layout), each in zip(pairs, look, strict=True))
    clashes = (_clash(one, other) for one, other in combinations(pairs, 2))
    first, last = laid.bed.zone
    return SeasonMap(
        span,
        laid.bed.length.nm / MM,
        (first / MM, last / MM),
        tuple(blocks),
        tuple(clash for clash in clashes if clash is not None),
        tuple(cold(place, span)),
        tuple(months(span)),
    )


def draw_season(laid: LaidOut, look: dict[str, Look], span: Span, place: Place) -> SeasonMap:
    """The map of a bed over some days; the same values give the very same map."""
    return _map_of(laid, tuple(look[layout.planting] for layout in laid.layouts), span, place)


def _block(one: Grown, layout: Layout, look: Look) -> MapBlock:
    dates = one.dates
    out = _("out by {day}").format(day=short_day(dates.out)) if dates.out else _("until it is taken out")
    day = (short_day(dates.out),) if dates.out else ()
    name, count = one.crop.name, counted(layout)
    line = (f"{name}   {count}   {out}", f"{name}   {out}", f"{name}   {count}", name, *day)
    lines = (f"{name}   {count}", name), (out, *day)
    start, end = layout.start / MM, layout.end / MM
    return MapBlock(layout.planting, start, end, dates.in_ground, dates.out, look, line, lines)


_Pair = tuple[Grown, Layout]


def _clash(one: _Pair, other: _Pair) -> Clash | None:
    start, end = max(one[1].start, other[1].start), min(one[1].end, other[1].end)
    if start >= end or not compete(one[0], other[0]):
        return None
    firsts = [pair[0].dates.in_ground for pair in (one, other) if pair[0].dates.in_ground is not None]
    lasts = [pair[0].dates.out for pair in (one, other) if pair[0].dates.out is not None]
    return Clash(start / MM, end / MM, max(firsts, default=None), min(lasts, default=None))


def cold(place: Place, span: Span) -> list[Cold]:
    """The days of a span before each year's last freeze, for each chance that the place knows, longest first."""
    found = []
    for share, day in place.last_freeze:
        for year in range(span.first.year, span.last.year + 1):
            last = _on(day, year)
            first = last - timedelta(days=_LONGEST_COLD) if last.year > 1 else date.min
            if last >= span.first and first <= span.last:
                words = _("frost after {day}: {share}").format(share=share, day=short_day(last))
                found.append(Cold(max(first, span.first), min(last, span.last), words))
    return sorted(found, key=lambda one: (one.first, one.last), reverse=True)


def _on(day: MonthDay, year: int) -> date:
    """A day of a year; 29 February is the 28th where there is none."""
    try:
        return date(year, day.month, day.day)
    except ValueError:
        return date(year, day.month, day.day - 1)


def months(span: Span) -> list[tuple[date, str]]:
    """The first of each month in a span, with its name; January, and the first one, with the year."""
    found: list[tuple[date, str]] = []
    year, month = span.first.year, span.first.month + (span.first.day > 1)
    while True:
        year, month = year + (month - 1) // 12, (month - 1) % 12 + 1
        if year > date.max.year or date(year, month, 1) > span.last:
            return found
        first = date(year, month, 1)
        found.append((first, f"{first:%b %Y}" if month == 1 or not found else f"{first:%b}"))
        month += 1
