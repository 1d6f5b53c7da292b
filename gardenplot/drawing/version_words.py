"""What a version of a plan holds, when it was saved, and in what it differs from another one, in words."""

from collections.abc import Callable, Sequence
from datetime import date, datetime
from typing import Protocol

from gardenplot.drawing.days import day_words
from gardenplot.plan import Plan
from gardenplot.units.figures import grouped
from gardenplot.words import _, ngettext


class _Part(Protocol):
    @property
    def id(self) -> str: ...


def _beds(count: int) -> str:
    return ngettext("{count} bed", "{count} beds", count).format(count=grouped(count))


def _plantings(count: int) -> str:
    return ngettext("{count} planting", "{count} plantings", count).format(count=grouped(count))


def _crops(count: int) -> str:
    return ngettext("{count} crop", "{count} crops", count).format(count=grouped(count))


def _orders(count: int) -> str:
    return ngettext("{count} order", "{count} orders", count).format(count=grouped(count))


def _wishes(count: int) -> str:
    return ngettext("{count} wish", "{count} wishes", count).format(count=grouped(count))


def _covers(count: int) -> str:
    return ngettext("{count} cover", "{count} covers", count).format(count=grouped(count))


_PARTS: tuple[tuple[str, Callable[[int], str]], ...] = (
    ("beds", _beds),
    ("plantings", _plantings),
    ("orders", _orders),
    ("wishes", _wishes),
    ("covers", _covers),
    ("crops", _crops),
)


def holds(plan: Plan) -> str:
    """What there is in a plan: "3 beds · 12 plantings · 2 orders"."""
    counts = ((len(getattr(plan, name)), words) for name, words in _PARTS if name != "crops")
    return " · ".join(words(count) for count, words in counts if count) or _("nothing yet")


def differs(plan: Plan, now: Plan) -> str:
    """In what a version differs from the plan as it is now: "2 plantings more, 1 bed otherwise"."""
    if plan == now:
        return _("the same as now")
    said = [part for name, words in _PARTS for part in _parts_differ(getattr(plan, name), getattr(now, name), words)]
    return ", ".join(said) or _("place or ground otherwise")


def _parts_differ(then: Sequence[_Part], now: Sequence[_Part], words: Callable[[int], str]) -> list[str]:
    before, after = {part.id: part for part in then}, {part.id: part for part in now}
    counts = (
        (_("{parts} more"), len(before.keys() - after.keys())),
        (_("{parts} fewer"), len(after.keys() - before.keys())),
        (_("{parts} otherwise"), sum(before[id_] != after[id_] for id_ in before.keys() & after.keys())),
    )
    return [said.format(parts=words(count)) for said, count in counts if count]


def when(saved: datetime, today: date) -> str:
    """A day and a time as a person says them: "today, 14:03"; both in the time of the place where it is read."""
    clock = f"{saved:%H:%M}"
    if saved.date() == today:
        return _("today, {clock}").format(clock=clock)
    return _("{day}, {clock}").format(day=day_words(saved.date()), clock=clock)
