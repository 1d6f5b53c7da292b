"""A bed's plantings turn by turn: what stands side by side, until ground is cleared and replanted."""

from datetime import date
from functools import lru_cache

from gardenplot.layout import Grown, LaidOut, Layout
from gardenplot.layout.reserved import follows
from gardenplot.season import share_days

_EARLY = date.min


def turns(laid: LaidOut) -> tuple[tuple[Layout, ...], ...]:
    """The layouts of each turn, from the head on; a bed without plantings has one empty turn.

    A planting opens a new turn where it takes ground that one of the turn has had before it; what still stands then
    beside it belongs to both turns.
    """
    pairs = sorted(
        zip(laid.grown, laid.layouts, strict=True),
        key=lambda pair: (pair[0].dates.in_ground or _EARLY, pair[1].start),
    )
    found: list[list[tuple[Grown, Layout]]] = [[]]
    for pair in pairs:
        if any(_follows(pair, earlier) for earlier in found[-1]):
            stays = [
                one for one in found[-1] if share_days(one[0].dates, pair[0].dates) and not _share_ground(one, pair)
            ]
            found.append(stays)
        found[-1].append(pair)
    return tuple(tuple(sorted((layout for _one, layout in turn), key=lambda one: one.start)) for turn in found)


@lru_cache(maxsize=2048)
def walked(laid: LaidOut) -> tuple[Layout, ...]:
    """All layouts of a bed, turn by turn and from the head on, each once."""
    return tuple(dict.fromkeys(layout for turn in turns(laid) for layout in turn))


def _follows(later: tuple[Grown, Layout], earlier: tuple[Grown, Layout]) -> bool:
    """Whether one takes ground after the other, which is out of it then or leaves it place by place."""
    relay = follows(later[0].planting, later[0].dates, earlier[0].dates)
    return _share_ground(later, earlier) and (relay or not share_days(later[0].dates, earlier[0].dates))


def _share_ground(one: tuple[Grown, Layout], other: tuple[Grown, Layout]) -> bool:
    return max(one[1].start, other[1].start) < min(one[1].end, other[1].end)
